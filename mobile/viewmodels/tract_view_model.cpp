#include "mobile/viewmodels/tract_view_model.hpp"

#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/place/geodesy.hpp"
#include "core/session/cards_left.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/tract_work.hpp"
#include "core/session/walk.hpp"
#include "mobile/desk/unwalked.hpp"
#include "mobile/viewmodels/ground_shown.hpp"
#include "mobile/viewmodels/typed.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Acres;
using oaklight::Result;
using oaklight::Stand;
using oaklight::StandId;
using oaklight::TractData;
using oaklight::UnitSystem;

namespace {

constexpr int kAreaDecimals = 2;
constexpr std::size_t kSizesKept = 4;

oaklight::Goal goal_at(int row) {
  const auto& words = oaklight::kWords<oaklight::Goal>;
  return words[static_cast<std::size_t>(std::clamp(row, 0, static_cast<int>(words.size()) - 1))]
      .value;
}

int row_of(oaklight::Goal goal) {
  const auto& words = oaklight::kWords<oaklight::Goal>;
  const auto found = std::ranges::find(words, goal, &oaklight::Word<oaklight::Goal>::value);
  return static_cast<int>(found - words.begin());
}

}  // namespace

TractViewModel::TractViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                               Locator& locator, WalkViewModel& walk, TurnsViewModel& turns,
                               QObject* parent)
    : QObject(parent),
      desk_(desk),
      current_(plot),
      settings_(settings),
      locator_(locator),
      walk_(walk),
      turns_(turns),
      design_(desk, settings),
      facts_(desk) {
  connect(&desk, &TractDesk::changed, this, [this](const auto& changes) {
    if (reach_beyond_tally(changes)) follow();
  });
  connect(&settings, &Settings::changed, this, &TractViewModel::follow);
  connect(&locator, &Locator::moved, this, &TractViewModel::move);
  connect(walk.route(), &RouteViewModel::ordered, this, &TractViewModel::follow);
  refresh();
}

void TractViewModel::show(bool shown) {
  if (shown_ != shown) locator_.want(shown);
  shown_ = shown;
  if (!shown_) chooseNothing();
  if (shown_ && stale_) refresh();
}

void TractViewModel::follow() {
  stale_ = true;
  if (shown_) refresh();
}

/// The map is drawn anew when the person has gone on so far that it shows.
void TractViewModel::move() {
  constexpr oaklight::Metres kShows{20.0};
  if (!shown_) return;
  const auto& fix = locator_.here();
  const bool appeared = fix.has_value() != here_.has_value();
  const bool went =
      fix && here_ && to_metres(oaklight::leg_between(*here_, fix->at).distance) >= kShows;
  if (appeared || went) drawMap();
}

void TractViewModel::refresh() {
  stale_ = false;
  drawMap();
  listStands();
  emit changed();
  emit chosenChanged();
}

void TractViewModel::drawMap() {
  oaklight::TractMapFocus focus;
  here_.reset();
  if (locator_.here()) here_ = locator_.here()->at;
  focus.here = here_;
  focus.walk = walk_.route()->line();
  const auto start = way_start(desk_.live(), walk_.stood(), here_);
  if (const auto next = oaklight::next_stop(desk_.live(), std::nullopt, start.from))
    focus.next = next->plot;
  auto drawn = std::make_shared<std::vector<Drawn>>();
  auto draw = [ground = ground_of(desk_.data()), focus, drawn](oaklight::PictureFrame frame) {
    frame.head = false;
    auto picture = oaklight::draw_tract(*ground, focus, frame);
    const oaklight::Drawing drawing = picture.drawing;
    std::erase_if(*drawn, [&](const Drawn& before) { return before.size == frame.size; });
    if (drawn->size() >= kSizesKept) drawn->erase(drawn->begin());
    drawn->push_back({frame.size, std::move(picture)});
    return drawing;
  };
  drawn_ = drawn;
  map_ = Picture(std::move(draw), tr("Map of the tract. %1").arg(figure()));
  emit mapChanged();
}

QString TractViewModel::figure() const {
  const auto progress = oaklight::walk_progress(desk_.live(), std::nullopt);
  const int plots = progress.done() + progress.planned;
  return plots == 0 ? QString() : tr("%1 of %2").arg(progress.done()).arg(plots);
}

TractViewModel::Step TractViewModel::step() const {
  const TractData& data = desk_.data();
  if (data.tract.name.empty()) return Step::NameTract;
  if (data.stands.empty()) return Step::AddStand;
  if (data.cruises.empty()) return Step::ChooseDesign;
  if (data.plots.empty()) return Step::AddPlots;
  if (oaklight::walk_progress(desk_.live(), std::nullopt).planned > 0) return Step::Walk;
  const auto cards = oaklight::cards_left(desk_.live());
  if (unwalked() >= 0) return Step::SayWalked;
  return cards.sides_open + cards.undecided + cards.look_again > 0 ? Step::Decide : Step::Rest;
}

QString TractViewModel::todo() const {
  switch (step()) {
    case Step::NameTract:
      return tr("Say what the owner calls this tract.");
    case Step::AddStand:
      return tr("Add a stand: a part of the tract that is one wood, with one aim.");
    case Step::ChooseDesign:
      return tr("Choose how the plots are laid out: by points, or by circles of one size.");
    case Step::AddPlots:
      return tr("Add the plots of each stand.");
    default:
      break;
  }
  QStringList lines;
  for (const Stand& stand : desk_.data().stands) {
    const int plots = oaklight::walk_progress(desk_.live(), stand.id).planned;
    const QString name = QString::fromStdString(stand.name);
    if (plots == 1) lines << tr("1 plot to do in %1").arg(name);
    if (plots > 1) lines << tr("%1 plots to do in %2").arg(plots).arg(name);
    if (is_unwalked(desk_.live(), stand))
      lines << tr("%1: nobody said how much ground the marking walk covered").arg(name);
  }
  const auto cards = oaklight::cards_left(desk_.live());
  if (cards.sides_open == 1) lines << tr("1 crop tree has a side at which nobody looked up");
  if (cards.sides_open > 1)
    lines << tr("%1 crop trees have a side at which nobody looked up").arg(cards.sides_open);
  if (cards.undecided == 1) lines << tr("1 crop tree has no verdict yet");
  if (cards.undecided > 1) lines << tr("%1 crop trees have no verdict yet").arg(cards.undecided);
  if (cards.look_again == 1) lines << tr("1 tree to look at again");
  if (cards.look_again > 1) lines << tr("%1 trees to look at again").arg(cards.look_again);
  if (lines.isEmpty()) lines << tr("Nothing is left to do.");
  if (lines.size() == 1) return lines.front();
  const QString bullet = QString::fromUtf8("\u2022 ");
  return bullet + lines.join(QLatin1Char('\n') + bullet);
}

QStringList TractViewModel::goals() const {
  QStringList goals;
  const auto* choices = desk_.knowledge().form.find_choices("goal");
  for (const auto& word : oaklight::kWords<oaklight::Goal>) {
    QString label = QString::fromStdString(std::string(word.word));
    if (choices != nullptr) {
      const auto found = std::ranges::find(choices->choices, word.word, &oaklight::Choice::word);
      if (found != choices->choices.end()) label = form_words(found->label);
    }
    goals << label;
  }
  return goals;
}

QString TractViewModel::designText() const {
  const auto& cruises = desk_.data().cruises;
  return cruises.empty() ? QString() : figure_of(oaklight::design_text(cruises.back().design));
}

QString TractViewModel::areaText(Acres area) const {
  const double value =
      settings_.system() == UnitSystem::us ? area.value : oaklight::to_hectares(area).value;
  QString text = QString::fromStdString(oaklight::number_text(value, kAreaDecimals));
  while (text.endsWith(QLatin1Char('0'))) text.chop(1);
  if (text.endsWith(QLatin1Char('.'))) text.chop(1);
  return text;
}

void TractViewModel::listStands() {
  std::vector<StandRow> rows;
  for (const Stand& stand : desk_.data().stands) {
    const auto progress = oaklight::walk_progress(desk_.live(), stand.id);
    QString plots = tr("%1 done, %2 to do").arg(progress.done()).arg(progress.planned);
    if (progress.skipped > 0) plots = tr("%1, %2 skipped").arg(plots).arg(progress.skipped);
    if (progress.all() == 0) plots = tr("no plots yet");
    const QString area =
        QString::fromStdString(oaklight::area_text(stand.acres, settings_.system()));
    rows.push_back({stand.id, QString::fromStdString(stand.name), tr("%1; %2").arg(area, plots),
                    areaText(stand.acres), stand.walked ? areaText(*stand.walked) : QString(),
                    row_of(stand.goal)});
  }
  stands_.set(std::move(rows));
}

void TractViewModel::tap(QPointF at, double reach, QPointF corner) {
  const auto tapped = std::ranges::find_if(*drawn_, [&](const Drawn& one) {
    const QPointF apart = corner - QPointF(one.size.width(), one.size.height());
    return apart.manhattanLength() < 1.0;
  });
  const auto plot = tapped == drawn_->end() ? std::nullopt : tapped->picture.plot_at(at, reach);
  if (!plot) return chooseNothing();
  chosen_ = plot;
  current_.set(plot);
  emit chosenChanged();
}

void TractViewModel::chooseNothing() {
  if (!chosen_) return;
  chosen_.reset();
  emit chosenChanged();
}

QString TractViewModel::chosen() const {
  const oaklight::Plot* plot = chosen_ ? desk_.live().find(*chosen_) : nullptr;
  if (plot == nullptr) return {};
  return tr("%1: %2").arg(name_of(desk_.live(), *plot), status_words(plot->status));
}

QString TractViewModel::chosenMark() const {
  const oaklight::Plot* plot = chosen_ ? desk_.live().find(*chosen_) : nullptr;
  return plot == nullptr ? QString() : icon_of(plot->status);
}

Result<Acres> TractViewModel::areaTyped(const QString& text) const {
  const auto value = number_typed(text);
  if (!value) return value.error();
  return settings_.system() == UnitSystem::us ? Acres{*value}
                                              : oaklight::to_acres(oaklight::SquareMetres{
                                                    *value * oaklight::kSquareMetresPerHectare});
}

void TractViewModel::addStand(const QString& name, const QString& area, int goal) {
  submit([this, name, area, goal]() -> Result<oaklight::Action> {
    const auto acres = areaTyped(area);
    if (!acres) return acres.error();
    Stand stand;
    stand.name = name.trimmed().toStdString();
    stand.acres = *acres;
    stand.goal = goal_at(goal);
    return oaklight::add_stand(desk_.live(), desk_.knowledge(), desk_.ids(), std::move(stand));
  });
}

void TractViewModel::changeStand(int row, const QString& name, const QString& area,
                                 const QString& walked, int goal) {
  if (stands_.at(row) == nullptr) return;
  submit([this, shown = *stands_.at(row), name, area, walked, goal]() -> Result<oaklight::Action> {
    const Stand* before = desk_.live().find(shown.id);
    Stand stand = before == nullptr ? Stand{} : *before;
    stand.id = shown.id;
    stand.name = name.trimmed().toStdString();
    stand.goal = goal_at(goal);
    // An area that was not typed over keeps all its digits.
    if (area != shown.area) {
      const auto acres = areaTyped(area);
      if (!acres) return acres.error();
      stand.acres = *acres;
    }
    if (walked.trimmed().isEmpty()) {
      stand.walked.reset();
    } else if (walked != shown.walked) {
      const auto acres = areaTyped(walked);
      if (!acres) return acres.error();
      stand.walked = *acres;
    }
    return oaklight::change_stand(desk_.live(), desk_.knowledge(), std::move(stand));
  });
}

/// The cruise that the stand's plots belong to, or else the one set up last.
std::optional<oaklight::CruiseId> TractViewModel::cruiseFor(StandId stand) const {
  const auto plots = desk_.live().plots_of(stand);
  if (!plots.empty()) return plots.back()->cruise;
  const auto& cruises = desk_.data().cruises;
  return cruises.empty() ? std::nullopt : std::optional(cruises.back().id);
}

void TractViewModel::beginPlots(int standRow) {
  const StandRow* row = stands_.at(standRow);
  turns_.beginWith(row == nullptr ? std::nullopt : cruiseFor(row->id));
}

void TractViewModel::addPlots(int standRow, const QString& count) {
  const StandRow* row = stands_.at(standRow);
  if (row == nullptr) return;
  submit([this, stand = row->id, count, every = turns_.every()]() -> Result<oaklight::Action> {
    const auto cruise = cruiseFor(stand);
    const auto plots = oaklight::whole_from_text(count.trimmed().toStdString());
    if (!plots) return plots.error();
    constexpr std::int64_t kFarTooMany = 1000;  // refused there, with words
    const int number = static_cast<int>(std::clamp(*plots, -kFarTooMany, kFarTooMany));
    return oaklight::add_plots(desk_.live(), desk_.knowledge(), desk_.ids(), stand,
                               cruise.value_or(oaklight::CruiseId{}), number, every);
  });
}

void TractViewModel::submit(TractDesk::Maker make) {
  desk_.submit(std::move(make), [this](const oaklight::Status& done) {
    say(done ? QString() : sentence_of(done.error()));
    if (done) emit saved();
  });
}

int TractViewModel::unwalked() const { return unwalked_row(desk_.live()); }
void TractViewModel::dismissProblem() { say({}); }

void TractViewModel::say(const QString& problem) {
  problem_ = problem;
  emit problemChanged();
}
