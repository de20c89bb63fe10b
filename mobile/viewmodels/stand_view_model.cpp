#include "mobile/viewmodels/stand_view_model.hpp"

#include <algorithm>

#include "core/paper/composition_chart.hpp"
#include "core/paper/dbh_chart.hpp"
#include "core/paper/stocking_chart.hpp"
#include "mobile/viewmodels/stand_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::CompositionChart;
using oaklight::DbhChart;
using oaklight::PictureFrame;
using oaklight::Result;
using oaklight::StandView;
using oaklight::StockingChart;

namespace {

// The page has titles of its own, so the pictures go without their heads.

template <class Chart, class Draw>
Picture picture_of(Chart chart, Draw draw, const QString& words) {
  return Picture(
      [chart = std::move(chart), draw](const PictureFrame& room) {
        PictureFrame frame = room;
        frame.head = false;
        return draw(chart, frame);
      },
      words);
}

StockingChart stocking_chart_of(const StandView& view) {
  StockingChart chart;
  if (view.stocking.qmd) chart.now = stocking_point(view.stocking, &view.area);
  chart.fit = view.stocking.fit;
  // "Before" and "after" of a plan are plain means of the same trees; the arrow needs both ends
  // alike, so "now" keeps its error and only the end comes from the plan.
  if (view.after && chart.now) chart.after = oaklight::stocking_point(*view.after);
  return chart;
}

}  // namespace

StandViewModel::StandViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                               QObject* parent)
    : QObject(parent), desk_(desk), plot_(plot), settings_(settings) {
  choosePlotsStand();
  connect(&desk, &TractDesk::changed, this, [this] {
    emit standsChanged();
    refresh();
  });
  connect(&plot, &CurrentPlot::changed, this, &StandViewModel::choosePlotsStand);
  connect(&settings, &Settings::changed, this, &StandViewModel::refresh);
  connect(&background_, &Background::lateChanged, this, &StandViewModel::viewChanged);
}

StandViewModel::~StandViewModel() = default;

/// Until a person chooses, the stand in which that person works is the one to show.
void StandViewModel::choosePlotsStand() {
  if (chosen_ || !plot_.id()) return;
  const oaklight::Plot* plot = desk_.live().find(*plot_.id());
  if (plot == nullptr || stand_ == plot->stand) return;
  stand_ = plot->stand;
  emit standsChanged();
  refresh();
}

QStringList StandViewModel::stands() const {
  QStringList names{tr("Whole tract")};
  for (const oaklight::Stand& stand : desk_.data().stands) {
    names << QString::fromStdString(stand.name);
  }
  return names;
}

int StandViewModel::stand() const {
  const auto& stands = desk_.data().stands;
  if (!stand_) return 0;
  const auto found = std::ranges::find(stands, *stand_, &oaklight::Stand::id);
  return found == stands.end() ? 0 : 1 + static_cast<int>(found - stands.begin());
}

void StandViewModel::setStand(int row) {
  const auto& stands = desk_.data().stands;
  if (row < 0 || row > static_cast<int>(stands.size())) return;
  chosen_ = true;
  if (row == stand()) return;
  stand_ = row == 0 ? std::nullopt : std::optional(stands[static_cast<std::size_t>(row) - 1].id);
  // Figures of another stand must not stand under this one's name, not even for a moment.
  answer_.reset();
  shown_ = {};
  figures_.set({});
  emit standsChanged();
  emit viewChanged();
  refresh();
}

QString StandViewModel::problem() const {
  return background_.late() ? tr("Computing ...") : shown_.problem;
}

void StandViewModel::setShown(bool shown) {
  looked_at_ = shown;
  if (shown) {
    refresh();
  } else {
    background_.drop();
  }
}

void StandViewModel::refresh() {
  if (!looked_at_) return;
  // The knowledge of an open tract never changes, and the desk outlives this view model.
  background_.ask([this, data = desk_.snapshot(), &knowledge = desk_.knowledge(), stand = stand_,
                   options = options_of(settings_)]() -> Background::Answer {
    auto view = oaklight::stand_view(*data, knowledge, stand, options);
    Result<std::shared_ptr<const Answer>> answer =
        view ? Result<std::shared_ptr<const Answer>>(std::make_shared<const Answer>(
                   Answer{options, *view, area_figures(*view, options)}))
             : view.error();
    return [this, answer = std::move(answer)] { take(answer); };
  });
}

void StandViewModel::take(const Result<std::shared_ptr<const Answer>>& answer) {
  shown_ = {};
  if (answer) {
    answer_ = *answer;
    say();
  } else {
    answer_.reset();
    shown_.problem = sentence_of(answer.error());
    figures_.set({});
  }
  emit viewChanged();
}

void StandViewModel::say() {
  const StandView& view = answer_->view;
  const StandWords words(settings_.system(), answer_->options);
  shown_.summary = words.summary(view);
  shown_.need = words.need(view.area.need);
  shown_.advice = StandWords::advice(view);
  std::vector<FigureRow> rows;
  for (const oaklight::AreaFigure& figure : answer_->figures) {
    rows.push_back(words.row(figure, view));
  }
  figures_.set(std::move(rows));
  const oaklight::SpeciesTable& species = desk_.knowledge().species();
  if (view.composition) {
    shown_.composition =
        picture_of(composition_chart_of(*view.composition, species), oaklight::draw_composition,
                   tr("Bars: the share of each species in the basal area of live trees"));
  }
  if (view.area.live.stems > 0) {
    shown_.diameters =
        picture_of(dbh_chart_of(view.area, species, answer_->options.class_width,
                                oaklight::ChartAmount::trees),
                   oaklight::draw_dbh_chart, tr("Bars: how many trees there are of which size"));
  }
  if (view.stands == 1 && view.stocking.qmd) {
    shown_.stocking = picture_of(
        stocking_chart_of(view), oaklight::draw_stocking_chart,
        view.after ? tr("The stand on the stocking guide, now and after the recommended release")
                   : tr("The stand on the stocking guide"));
  }
}

void StandViewModel::explain(int row) {
  const FigureRow* figure = figures_.at(row);
  if (figure == nullptr || !answer_) return;
  const StandWords words(settings_.system(), answer_->options);
  showNote(figure->name,
           words.note(answer_->figures[static_cast<std::size_t>(row)], answer_->view));
}

void StandViewModel::explainNeed() {
  if (!answer_) return;
  const StandWords words(settings_.system(), answer_->options);
  showNote(tr("Plots still needed"), words.needNote(answer_->view));
}

void StandViewModel::explainAdvice() {
  if (!answer_) return;
  const StandWords words(settings_.system(), answer_->options);
  showNote(tr("What this stand needs"),
           words.adviceNote(answer_->view, desk_.knowledge().release.rules));
}

void StandViewModel::showNote(const QString& title, std::vector<NoteRow> rows) {
  note_title_ = title;
  note_.set(std::move(rows));
  emit noteChanged();
}
