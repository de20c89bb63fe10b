#include "mobile/viewmodels/layout_view_model.hpp"

#include <QRandomGenerator>
#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/typed.hpp"
#include "mobile/viewmodels/way_view_model.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::DesignRequest;
using oaklight::ErrorCode;
using oaklight::Result;

namespace {

QString figure(double value, int decimals) {
  return QString::fromStdString(oaklight::number_text(value, decimals));
}

// Where a person begins: 30 plots in all, a plot on two acres, a day (judgement).
constexpr const char* kUsual[] = {"", "30", "0.5", "8"};

}  // namespace

LayoutViewModel::LayoutViewModel(TractDesk& desk, Settings& settings, TurnsViewModel& turns,
                                 QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings), turns_(turns) {
  begin();
  connect(&turns, &TurnsViewModel::chose, this, &LayoutViewModel::forget);
  connect(&settings, &Settings::changed, this, &LayoutViewModel::changed);
}

void LayoutViewModel::begin() {
  goal_ = Error;
  amount_ = QString::number(settings_.allowableError());
  azimuth_ = QStringLiteral("0");
  // Six digits can be typed again from paper.
  constexpr int kSeeds = 1'000'000;
  seed_ = QString::number(QRandomGenerator::global()->bounded(1, kSeeds));
  turns_.begin();
  forget();
}

void LayoutViewModel::forget() {
  layout_.reset();
  problem_.clear();
  emit changed();
}

QStringList LayoutViewModel::goals() const {
  return {tr("an error, %"), tr("plots in all"), tr("plots an acre"), tr("hours")};
}

void LayoutViewModel::setGoal(int goal) {
  if (goal_ == goal) return;
  goal_ = std::clamp(goal, 0, static_cast<int>(Hours));
  amount_ = goal_ == Error ? QString::number(settings_.allowableError())
                           : QString::fromLatin1(kUsual[goal_]);
  forget();
}

QStringList LayoutViewModel::kinds() const {
  return {tr("even"), tr("mixed hardwoods"), tr("patchy or cut over")};
}

Result<oaklight::CruiseGoal> LayoutViewModel::wish() const {
  const auto amount = number_typed(amount_);
  if (!amount) return amount.error();
  switch (goal_) {
    case Plots:
      return oaklight::CruiseGoal(oaklight::PlotsInAll{static_cast<int>(*amount)});
    case PlotsAnAcre:
      return oaklight::CruiseGoal(oaklight::PlotsAnAcre{*amount});
    case Hours:
      return oaklight::CruiseGoal(oaklight::HoursInAll{*amount});
    default:
      return oaklight::CruiseGoal(oaklight::ErrorGoal{oaklight::Percent{*amount}, {}});
  }
}

Result<DesignRequest> LayoutViewModel::request() const {
  DesignRequest request;
  const auto goal = wish();
  if (!goal) return goal.error();
  const auto azimuth = number_typed(azimuth_);
  if (!azimuth) return azimuth.error();
  const auto seed = oaklight::whole_from_text(seed_.trimmed().toStdString());
  if (!seed) return seed.error();
  if (*seed < 0) {
    return oaklight::Error{ErrorCode::out_of_range, tr("A seed is a whole number.").toStdString(),
                           "seed", tr("Give one without a sign.").toStdString()};
  }
  const auto& cruises = desk_.data().cruises;
  if (cruises.empty()) {
    return oaklight::Error{ErrorCode::no_data, tr("There is no cruise yet.").toStdString(), "",
                           tr("Choose the design of the cruise first.").toStdString()};
  }
  request.cruise = cruises.back().name;
  request.goal = *goal;
  request.kind =
      oaklight::kWords<oaklight::StandKind>[static_cast<std::size_t>(std::clamp(kind_, 0, 2))]
          .value;
  request.allocation =
      by_spread_ ? oaklight::Allocation::neyman : oaklight::Allocation::proportional;
  request.measure_every = turns_.every();
  request.pattern = random_ ? oaklight::PlotPattern::random : oaklight::PlotPattern::grid;
  request.azimuth = oaklight::Degrees{*azimuth};
  request.seed = static_cast<std::uint64_t>(*seed);
  return request;
}

void LayoutViewModel::layOut() {
  forget();
  const auto asked = request();
  if (!asked) {
    problem_ = sentence_of(asked.error());
  } else {
    auto laid = oaklight::lay_out_cruise(desk_.live(), desk_.knowledge(), desk_.ids(), *asked);
    if (laid) {
      layout_ = *std::move(laid);
    } else {
      problem_ = sentence_of(laid.error());
    }
  }
  emit changed();
}

QString LayoutViewModel::standLine(const oaklight::StandLayout& stand) const {
  const QString area = QString::fromStdString(oaklight::area_text(stand.acres, settings_.system()));
  QString line = tr("%1: %2 plots on %3")
                     .arg(QString::fromStdString(stand.name))
                     .arg(stand.plots.size())
                     .arg(area);
  if (stand.spacing) line += tr(", every %1").arg(distance_words(*stand.spacing, settings_));
  return line + tr("; spread %1 %, %2")
                    .arg(figure(stand.cv.value, 0), QString::fromStdString(stand.cv_source));
}

QStringList LayoutViewModel::rows() const {
  QStringList lines;
  if (!layout_) return lines;
  lines << tr("%1 plots, %2; expected error %3 % at 95 %; about %4 hours on the ground")
               .arg(layout_->plots)
               .arg(figure_of(oaklight::design_text(layout_->design)),
                    figure(layout_->half_width.value, 0), figure(layout_->hours, 1));
  for (const oaklight::StandLayout& stand : layout_->stands) lines << standLine(stand);
  for (const std::string& note : layout_->notes) lines << QString::fromStdString(note);
  return lines;
}

void LayoutViewModel::keep() {
  if (!layout_) return;
  const auto asked = request();
  if (!asked) return;
  desk_.submit(
      [this, asked = *asked]() -> Result<oaklight::Action> {
        auto laid = oaklight::lay_out_cruise(desk_.live(), desk_.knowledge(), desk_.ids(), asked);
        if (!laid) return laid.error();
        return std::move(laid->action);
      },
      [this](const oaklight::Status& done) {
        problem_ = done ? QString() : sentence_of(done.error());
        if (done) layout_.reset();
        emit changed();
        if (done) emit kept();
      });
}
