#include "mobile/viewmodels/centre_view_model.hpp"

#include "core/session/plot_centre.hpp"
#include "mobile/viewmodels/way_view_model.hpp"
#include "mobile/viewmodels/words.hpp"

CentreViewModel::CentreViewModel(TractDesk& desk, Locator& locator, Settings& settings,
                                 QObject* parent)
    : QObject(parent), desk_(desk), locator_(locator), settings_(settings) {
  connect(&locator, &Locator::moved, this, [this] {
    if (begun_) refresh();
  });
}

void CentreViewModel::begin() {
  begun_ = true;
  problem_.clear();
  locator_.gather();
  refresh();
}

void CentreViewModel::end() {
  begun_ = false;
  locator_.stopGathering();
}

void CentreViewModel::refresh() {
  mean_ = oaklight::mean_fix(locator_.gathered(),
                             oaklight::Metres{static_cast<double>(settings_.poorBeyond())});
  emit changed();
}

QString CentreViewModel::fixes() const {
  return mean_ ? QString::number(mean_->fixes) : QStringLiteral("0");
}

QString CentreViewModel::spread() const {
  return mean_ ? give_or_take(mean_->spread, settings_) : QString::fromUtf8("\u2014");
}

QString CentreViewModel::accuracy() const {
  return mean_ && mean_->accuracy ? give_or_take(*mean_->accuracy, settings_)
                                  : QString::fromUtf8("\u2014");
}

QString CentreViewModel::words() const {
  constexpr int kEnough = 30;  // half a minute; common practice for a plot centre
  if (!mean_) return tr("No fix yet. Without one the plot keeps the position it has, or none.");
  if (mean_->poor && !mean_->accuracy)
    return tr("POOR: the receiver does not say how good its fixes are. Kept, it is marked so.");
  if (mean_->poor)
    return tr("POOR: no fix was within %1. Wait, or keep it marked so.")
        .arg(
            give_or_take(oaklight::Metres{static_cast<double>(settings_.poorBeyond())}, settings_));
  QString words = mean_->fixes < kEnough ? tr("Wait for %1 fixes, half a minute.").arg(kEnough)
                                         : tr("Enough to keep.");
  if (mean_->poor_fixes == 1) words += QLatin1Char(' ') + tr("1 poor fix was left out.");
  if (mean_->poor_fixes > 1)
    words += QLatin1Char(' ') + tr("%1 poor fixes were left out.").arg(mean_->poor_fixes);
  return words;
}

void CentreViewModel::keep() {
  if (!mean_ || !plot_) return;
  desk_.submit(
      [this, plot = *plot_, mean = *mean_] {
        return oaklight::record_centre(desk_.live(), desk_.knowledge(), plot, mean);
      },
      [this](const oaklight::Status& kept) {
        problem_ = kept ? QString() : sentence_of(kept.error());
        emit changed();
        if (kept) emit saved();
      });
}
