#include "mobile/viewmodels/tally_view_model.hpp"

#include <algorithm>

#include "mobile/desk/species_order.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Dbh;
using oaklight::Plot;
using oaklight::PlotStatus;
using oaklight::Species;
using oaklight::SpeciesCode;
using oaklight::TallyClasses;
using oaklight::Tree;
using oaklight::UnitSystem;

namespace {

// Row T13 of tests/app/field_rows.md: nobody measures a second tree so soon, a bouncing finger
// does.
constexpr qint64 kDoubleTapMs = 350;
// The class field ends at 60 in, or 150 cm, and the keypad goes on.
constexpr std::int32_t kLargestClassTenthInches = 600;
constexpr std::size_t kLastTrees = 3;

Dbh largest_class(UnitSystem system) {
  const std::int32_t tenths =
      system == UnitSystem::us ? kLargestClassTenthInches : kLargestClassTenthInches * 5 / 2;
  return *Dbh::from_tenths(tenths, system);
}

}  // namespace

TallyViewModel::TallyViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                               QObject* parent)
    : QObject(parent), desk_(desk), plot_(plot), settings_(settings) {
  timer_.start();
  now_ = [this] { return timer_.elapsed(); };
  connect(&plot, &CurrentPlot::changed, this, &TallyViewModel::enterPlot);
  connect(&desk, &TractDesk::changed, this, [this](const auto&) {
    last_ = lastText();  // also when that tree is undone or corrected
    const std::size_t trees = count();
    if (trees < counted_) last_touch_.reset();  // whoever undoes a tree does not bounce
    counted_ = trees;
    doubt_.clear();
    emit readingChanged();
    emit figuresChanged();
    emit plotChanged();
  });
  connect(&desk, &TractDesk::damageFound, this, &TallyViewModel::plotChanged);
  connect(&settings, &Settings::changed, this, [this] {
    species_.retranslate();
    enterPlot();
  });
  enterPlot();
}

const Plot* TallyViewModel::plot() const {
  return plot_.id() ? desk_.live().find(*plot_.id()) : nullptr;
}

const oaklight::Cruise* TallyViewModel::cruise() const {
  const Plot* here = plot();
  return here == nullptr ? nullptr : desk_.live().find(here->cruise);
}

UnitSystem TallyViewModel::system() const { return settings_.system(); }

QString TallyViewModel::plotName() const {
  const Plot* here = plot();
  if (here == nullptr) return {};
  const oaklight::Stand* stand = desk_.live().find(here->stand);
  const QString name = tr("%1, plot %2")
                           .arg(stand == nullptr ? QString() : QString::fromStdString(stand->name),
                                QString::fromStdString(here->label));
  if (counting()) return tr("%1: count point").arg(name);
  return sampledTwice() ? tr("%1: measure point").arg(name) : name;
}

bool TallyViewModel::counting() const {
  const Plot* here = plot();
  const oaklight::Cruise* design = cruise();
  return here != nullptr && design != nullptr &&
         std::holds_alternative<oaklight::PointDesign>(design->design) &&
         oaklight::taken_at(*here).task == oaklight::PlotTask::count;
}

bool TallyViewModel::sampledTwice() const {
  const Plot* here = plot();
  return here != nullptr && oaklight::measured_every(desk_.live(), here->cruise) > 1;
}

QString TallyViewModel::closed() const {
  const Plot* here = plot();
  if (here == nullptr) return tr("No plot is chosen. Choose one on the page Walk or Tract.");
  if (here->status == PlotStatus::skipped)
    return tr("This plot was skipped. Plan it again on the page Walk to tally it.");
  if (desk_.damage()) return tr("This file is damaged. Nothing more is recorded in it.");
  if (desk_.readOnly()) return tr("This tract is open for looking only.");
  return {};
}

void TallyViewModel::enterPlot() {
  const oaklight::Cruise* design = cruise();
  const auto width = settings_.metric() ? TallyClasses::five_centimetres : TallyClasses::two_inches;
  classes_ = oaklight::tally_classes(width, design == nullptr ? std::nullopt : design->min_dbh,
                                     largest_class(system()));
  if (classes_.size() > static_cast<std::size_t>(class_room_))
    classes_.erase(classes_.begin() + class_room_, classes_.end());
  fillSpecies();
  last_touch_.reset();
  counted_ = count();
  say(lastText(), {});
  emit plotChanged();
  emit figuresChanged();
}

void TallyViewModel::fillSpecies() {
  // The order is decided once for each visit, and not moved while hands are on it.
  const Order order{plot_.id(), species_room_, settings_.tallySet()};
  if (order_ == order) return;
  order_ = order;
  const Plot* here = plot();
  species_.set(here == nullptr ? std::vector<const Species*>()
                               : tally_order(desk_.live(), desk_.knowledge(), here->stand,
                                             settings_.tallySet().toStdString(),
                                             static_cast<std::size_t>(species_room_)));
  emit pinnedChanged();
}

void TallyViewModel::setRoom(int speciesCells, int classCells) {
  if (speciesCells == species_room_ && classCells == class_room_) return;
  species_room_ = std::max(1, speciesCells);
  class_room_ = std::max(1, classCells);
  enterPlot();
}

QStringList TallyViewModel::classes() const {
  if (counting()) return {tr("Count")};
  QStringList labels;
  for (const oaklight::TallyClass& one : classes_) labels << QString::fromStdString(one.label);
  return labels;
}

QString TallyViewModel::beyond() const {
  if (classes_.empty() || counting()) return {};
  const QString largest = QString::fromStdString(classes_.back().label);
  return system() == UnitSystem::us ? tr("over %1 in").arg(largest) : tr("over %1 cm").arg(largest);
}

int TallyViewModel::pinned() const { return pinned_ ? species_.rowOf(*pinned_) : -1; }

QString TallyViewModel::pinnedName() const {
  const Species* species = pinned_ ? desk_.knowledge().species().find(*pinned_) : nullptr;
  return species == nullptr ? QString() : name_of(*species);
}

void TallyViewModel::pin(int speciesRow) {
  if (const Species* species = species_.at(speciesRow)) pinCode(species->code);
}

void TallyViewModel::pinCode(SpeciesCode code) {
  pinned_ = code;
  emit pinnedChanged();
}

void TallyViewModel::point(int speciesRow, int classRow) {
  const Species* species = species_.at(speciesRow);
  QString text;
  if (species != nullptr) text = name_of(*species);
  if (counting()) {
    // The species is all there is to read.
  } else if (classRow >= 0 && static_cast<std::size_t>(classRow) < classes_.size()) {
    const SpeciesCode code = species != nullptr ? species->code : pinned_.value_or(SpeciesCode{});
    text = textOf(code, classes_[static_cast<std::size_t>(classRow)].middle);
  }
  if (text == pointed_) return;
  pointed_ = text;
  emit readingChanged();
}

void TallyViewModel::tally(int speciesRow, int classRow) {
  const std::size_t most = counting() ? 1 : classes_.size();
  if (locked_ || classRow < 0 || static_cast<std::size_t>(classRow) >= most) return;
  const Species* species = species_.at(speciesRow);
  if (species != nullptr) pinCode(species->code);
  if (!pinned_) return say(last_, tr("Choose a species first."));
  if (counting()) return countOne(Place::classes, *pinned_);
  record(Place::classes, *pinned_, classes_[static_cast<std::size_t>(classRow)].middle);
}

void TallyViewModel::tallyDigits(const QString& digits) {
  if (locked_) return;
  if (!pinned_) return say(last_, tr("Choose a species first."));
  const auto dbh = oaklight::dbh_from_digits(digits.toStdString(), system());
  if (!dbh) return say(last_, sentence_of(dbh.error()));
  record(Place::keypad, *pinned_, *dbh);
}

QString TallyViewModel::readDigits(const QString& digits) const {
  if (digits.isEmpty()) return {};
  const auto dbh = oaklight::dbh_from_digits(digits.toStdString(), system());
  return dbh ? QString::fromStdString(oaklight::dbh_text(*dbh)) : sentence_of(dbh.error());
}

bool TallyViewModel::bounced() {
  if (!last_touch_ || last_touch_->place != Place::classes ||
      now_() - last_touch_->at >= kDoubleTapMs)
    return false;
  say(last_, tr("double?"));
  return true;
}

void TallyViewModel::again() {
  if (counting()) {
    if (pinned_) countOne(Place::again, *pinned_);
    return;
  }
  const auto trees =
      plot() == nullptr ? std::vector<const Tree*>() : desk_.live().trees_of(*plot_.id());
  if (trees.empty()) return;
  record(Place::again, trees.back()->facts.species, trees.back()->facts.dbh);
}

void TallyViewModel::record(Place place, SpeciesCode species, Dbh dbh) {
  // Digits are never the bounce of a finger: whoever typed them meant them.
  if (place != Place::keypad && isBounce(place, species, dbh.tenths())) return;
  if (!plot_.id()) return say(last_, closed());
  last_touch_ = Touch{place, species, dbh.tenths(), now_()};
  const auto plot = *plot_.id();
  desk_.submit(
      [this, plot, species, dbh] {
        oaklight::TreeDraft draft{{species, dbh, {}, {}, {}, {}, {}, {}, {}, {}}};
        return oaklight::tally_tree(desk_.live(), desk_.knowledge(), desk_.ids(), plot, draft);
      },
      [this, species, dbh](const oaklight::Status& saved) {
        if (!saved) return say(last_, {});
        say(textOf(species, dbh), doubtOf(species, dbh));
        emit recorded();
      });
}

/// At a measure point a tree of sawlog size is worth its logs: they tell the volumes of all points.
QString TallyViewModel::doubtOf(SpeciesCode species, Dbh dbh) const {
  if (const auto doubt = oaklight::unusual(desk_.knowledge(), species, dbh)) {
    return QString::fromStdString(*doubt);
  }
  const Species* known = desk_.knowledge().species().find(species);
  const bool sawn =
      known != nullptr && known->min_sawlog_dbh && dbh.inches() >= *known->min_sawlog_dbh;
  return sawn && !counting() && sampledTwice() ? tr("logs, height? tap the tree") : QString();
}

bool TallyViewModel::isBounce(Place place, SpeciesCode species, std::int32_t tenths) {
  const bool twice = last_touch_ && last_touch_->place == place &&
                     last_touch_->species == species && last_touch_->tenths == tenths &&
                     now_() - last_touch_->at < kDoubleTapMs;
  if (twice) say(last_, tr("double?"));
  return twice;
}

void TallyViewModel::countOne(Place place, SpeciesCode species) {
  if (isBounce(place, species, 0)) return;
  last_touch_ = Touch{place, species, 0, now_()};
  desk_.submit(
      [this, plot = *plot_.id(), species] {
        return oaklight::count_tree(desk_.live(), desk_.knowledge(), plot, species, 1);
      },
      [this, species](const oaklight::Status& saved) {
        if (!saved) return say(last_, {});
        const Species* known = desk_.knowledge().species().find(species);
        say(known == nullptr ? QString() : name_of(*known), {});
        emit recorded();
      });
}

void TallyViewModel::say(const QString& last, const QString& doubt) {
  pointed_.clear();
  last_ = last;
  doubt_ = doubt;
  emit readingChanged();
}

QString TallyViewModel::textOf(SpeciesCode species, Dbh dbh) const {
  const Species* known = desk_.knowledge().species().find(species);
  return tr("%1 %2").arg(known == nullptr ? QString() : name_of(*known),
                         QString::fromStdString(oaklight::dbh_text(dbh)));
}

QString TallyViewModel::textOf(const Tree& tree) const {
  const QString text = textOf(tree.facts.species, tree.facts.dbh);
  return tree.facts.status == oaklight::TreeStatus::dead ? tr("%1, dead").arg(text) : text;
}

/// A size that is seldom met stays doubted as long as the tree is in sight.
QString TallyViewModel::listedText(const Tree& tree) const {
  const auto doubt = oaklight::unusual(desk_.knowledge(), tree.facts.species, tree.facts.dbh);
  return doubt ? tr("%1, large?").arg(textOf(tree)) : textOf(tree);
}

std::size_t TallyViewModel::count() const {
  if (plot() == nullptr) return 0;
  std::size_t trees = desk_.live().trees_of(*plot_.id()).size();
  for (const auto& one : oaklight::taken_at(*plot()).counted) {
    trees += static_cast<std::size_t>(one.stems);
  }
  return trees;
}

QString TallyViewModel::lastText() const {
  if (counting()) return count() == 0 ? QString() : tr("%1 counted").arg(count());
  const auto trees =
      plot() == nullptr ? std::vector<const Tree*>() : desk_.live().trees_of(*plot_.id());
  return trees.empty() ? QString() : textOf(*trees.back());
}

QStringList TallyViewModel::lastTrees() const {
  QStringList lines;
  if (plot() == nullptr) return lines;
  const auto trees = desk_.live().trees_of(*plot_.id());
  for (std::size_t back = 1; back <= std::min(kLastTrees, trees.size()); ++back)
    lines << listedText(*trees[trees.size() - back]);
  return lines;
}

oaklight::TreeId TallyViewModel::treeAt(int row) const {
  if (plot() == nullptr || row < 0) return {};
  const auto trees = desk_.live().trees_of(*plot_.id());
  const auto back = static_cast<std::size_t>(row) + 1;
  return back > trees.size() ? oaklight::TreeId{} : trees[trees.size() - back]->id;
}

QStringList TallyViewModel::figures() const {
  if (plot() == nullptr) return {};
  const auto figures = oaklight::plot_figures(desk_.live(), *plot_.id());
  if (!figures) return {QStringLiteral("0"), QStringLiteral("-")};
  return {QString::number(figures->stems),
          figures->ba ? figure_of(oaklight::ba_text(*figures->ba, system())) : QStringLiteral("-")};
}

void TallyViewModel::setLocked(bool locked) {
  if (locked_ == locked) return;
  locked_ = locked;
  emit lockedChanged();
}
