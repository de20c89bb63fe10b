#include "mobile/viewmodels/stand_now_view_model.hpp"

#include "core/session/plot_figures.hpp"
#include "mobile/viewmodels/stand_words.hpp"

using oaklight::ErrorCode;
using oaklight::Plot;

namespace {

/// Records of trees that a full computation may have to take between two touches: about 2 ms.
constexpr std::size_t kAtOnce = 2000;

}  // namespace

StandNowViewModel::StandNowViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                                     QObject* parent)
    : QObject(parent), desk_(desk), plot_(plot), settings_(settings) {
  connect(&desk, &TractDesk::changed, this, [this](const auto&) {
    if (kept_) kept_->follow();  // also when nobody looks: a step that is missed costs the stand
    refresh();
  });
  connect(&plot, &CurrentPlot::changed, this, &StandNowViewModel::refresh);
  connect(&settings, &Settings::changed, this, &StandNowViewModel::refresh);
}

QString StandNowViewModel::text() { return shown().text; }
QString StandNowViewModel::need() { return shown().need; }

const StandNowViewModel::Shown& StandNowViewModel::shown() {
  if (!shown_) shown_ = say();
  return *shown_;
}

void StandNowViewModel::refresh() {
  if (!shown_) return;
  const Shown before = *std::exchange(shown_, say());
  if (before != *shown_) emit changed();
}

StandNowViewModel::Shown StandNowViewModel::say() {
  const Plot* here = plot_.id() ? desk_.live().find(*plot_.id()) : nullptr;
  if (here == nullptr) return {};
  if (!kept_ || kept_->stand() != here->stand) {
    kept_.emplace(desk_.live(), desk_.knowledge().species(), here->stand);
  }
  const auto options = options_of(settings_);
  auto now = kept_->now(options);
  if (!now && kept_->records() <= kAtOnce) {
    const auto full = running_figures(desk_.live(), desk_.knowledge(), here->stand, options);
    if (!full && full.error().code == ErrorCode::no_data) return {};
    if (full) now = stand_now(*full);
  }
  // Too many trees to compute at once, or a record to mend: that page computes and tells it.
  if (!now) return {tr("Stand: see page Stand"), {}};
  const StandWords words(settings_.system(), options);
  return {words.now(*now), now->need ? words.need(now->need) : QString()};
}
