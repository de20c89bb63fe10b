#include "mobile/viewmodels/walk_tree_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/viewmodels/mark_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Action;
using oaklight::Condition;
using oaklight::ContactDraft;
using oaklight::CrownClass;
using oaklight::Result;
using oaklight::Seen;
using oaklight::Side;
using oaklight::TreeFacts;
using oaklight::TreeStatus;
using oaklight::WalkTree;
using oaklight::WalkTreeDraft;

namespace {

const Chip* chosen_of(const ChipListModel& chips) {
  for (int row = 0; row < chips.rowCount(); ++row) {
    if (chips.at(row)->on) return chips.at(row);
  }
  return nullptr;
}

void choose_one(ChipListModel& chips, int row) {
  for (int other = 0; other < chips.rowCount(); ++other) chips.setOn(other, other == row);
}

void toggle(ChipListModel& chips, int row) {
  if (const Chip* chip = chips.at(row)) chips.setOn(row, !chip->on);
}

bool same(const ContactDraft& a, const ContactDraft& b) {
  return a.sides == b.sides && a.seen == b.seen;
}

bool same(const TreeFacts& a, const TreeFacts& b) {
  return a.species == b.species && a.dbh == b.dbh && a.status == b.status &&
         a.crown_class == b.crown_class && a.conditions == b.conditions;
}

}  // namespace

WalkTreeViewModel::WalkTreeViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings), search_(desk.knowledge().species()) {}

oaklight::UnitSystem WalkTreeViewModel::system() const {
  return dbh_ && again_ ? dbh_->system() : settings_.system();
}

std::vector<Chip> WalkTreeViewModel::chipsOf(const char* list) const {
  std::vector<Chip> chips;
  const auto* choices = desk_.knowledge().form.find_choices(list);
  if (choices == nullptr) return chips;
  for (const oaklight::Choice& choice : choices->choices)
    chips.push_back(
        {choice.group, choice.word, form_words(choice.label), form_words(choice.help), false});
  return chips;
}

void WalkTreeViewModel::begin(oaklight::StandId stand) {
  stand_ = stand;
  crop_.reset();
  again_.reset();
  contact_.reset();
  tag_ = oaklight::next_tag(desk_.live());
  species_.reset();
  dbh_.reset();
}

void WalkTreeViewModel::fill(const TreeFacts& facts, const ContactDraft& standing) {
  auto sides = chipsOf("side");
  for (Chip& chip : sides) {
    const auto side = oaklight::from_word<Side>(chip.word);
    chip.on = side && standing.sides.has(*side);
  }
  sides_.set(std::move(sides));
  auto seen = chipsOf("seen");
  for (Chip& chip : seen) chip.on = oaklight::from_word<Seen>(chip.word) == standing.seen;
  seen_.set(std::move(seen));
  auto crown = chipsOf("crown_class");
  for (Chip& chip : crown)
    chip.on = facts.crown_class && oaklight::from_word<CrownClass>(chip.word) == facts.crown_class;
  crown_.set(std::move(crown));
  std::vector<Chip> conditions{{"", std::string(oaklight::word_of(TreeStatus::dead)), tr("Dead"),
                                QString(), facts.status == TreeStatus::dead}};
  for (Chip& chip : chipsOf("condition")) {
    const auto condition = oaklight::from_word<Condition>(chip.word);
    chip.on = condition && facts.conditions.has(*condition);
    conditions.push_back(std::move(chip));
  }
  conditions_.set(std::move(conditions));
  emit changed();
}

void WalkTreeViewModel::beginCropTree(oaklight::StandId stand) {
  begin(stand);
  fill(TreeFacts{{}, *oaklight::Dbh::from_tenths(1, settings_.system())}, {});
}

void WalkTreeViewModel::beginNeighbour(oaklight::WalkTreeId crop, Side side) {
  const WalkTree* tree = desk_.live().find(crop);
  if (tree == nullptr) return;
  begin(tree->stand);
  crop_ = crop;
  ContactDraft standing;
  standing.sides.add(side);
  standing.seen = Seen::touches;
  fill(TreeFacts{{}, *oaklight::Dbh::from_tenths(1, settings_.system())}, standing);
}

void WalkTreeViewModel::beginAgain(oaklight::WalkTreeId id,
                                   std::optional<oaklight::ContactId> contact) {
  const WalkTree* tree = desk_.live().find(id);
  if (tree == nullptr) return;
  begin(tree->stand);
  again_ = id;
  contact_ = contact;
  tag_ = tree->tag;
  species_ = tree->facts.species;
  dbh_ = tree->facts.dbh;
  const oaklight::Contact* standing = contact ? desk_.live().find(*contact) : nullptr;
  if (standing != nullptr) crop_ = standing->crop;
  fill(tree->facts, standing == nullptr ? ContactDraft{} : oaklight::draft_of(*standing));
}

QString WalkTreeViewModel::title() const {
  if (again_) return tr("Tree %1").arg(tag());
  const WalkTree* crop = crop_ ? desk_.live().find(*crop_) : nullptr;
  return crop == nullptr ? tr("New crop tree")
                         : tr("Neighbour of %1").arg(QString::fromStdString(crop->tag));
}

void WalkTreeViewModel::setTag(const QString& tag) {
  const std::string trimmed = tag.trimmed().toStdString();
  if (trimmed == tag_) return;
  tag_ = trimmed;
  emit changed();
}

const WalkTree* WalkTreeViewModel::wearer() const {
  const WalkTree* tree = desk_.live().by_tag(tag_);
  return tree == nullptr || (again_ && tree->id == *again_) ? nullptr : tree;
}

QString WalkTreeViewModel::known() const {
  const WalkTree* tree = wearer();
  if (tree == nullptr || again_) return {};
  return tree_words(desk_.knowledge(), tree->facts);
}

QString WalkTreeViewModel::species() const {
  const auto* species = species_ ? desk_.knowledge().species().find(*species_) : nullptr;
  return species == nullptr ? QString() : name_of(*species);
}

QString WalkTreeViewModel::dbh() const {
  return dbh_ ? QString::fromStdString(oaklight::dbh_text(*dbh_)) : QString();
}

QString WalkTreeViewModel::missing() const {
  if (tag_.empty()) return tr("Give it the number that hangs on it.");
  if (wearer() != nullptr && !again_) return {};
  if (!species_) return tr("Choose its species.");
  if (!dbh_) return tr("Enter its diameter.");
  return {};
}

void WalkTreeViewModel::chooseSpecies(int row) {
  if (const auto code = search_.codeAt(row)) species_ = *code;
  emit changed();
}

QString WalkTreeViewModel::readDigits(const QString& digits) const {
  if (digits.isEmpty()) return {};
  const auto dbh = oaklight::dbh_from_digits(digits.toStdString(), system());
  return dbh ? QString::fromStdString(oaklight::dbh_text(*dbh)) : sentence_of(dbh.error());
}

void WalkTreeViewModel::enterDigits(const QString& digits) {
  const auto dbh = oaklight::dbh_from_digits(digits.toStdString(), system());
  if (!dbh) return;
  dbh_ = *dbh;
  emit changed();
}

void WalkTreeViewModel::toggleSide(int row) { toggle(sides_, row); }
void WalkTreeViewModel::chooseSeen(int row) { choose_one(seen_, row); }
void WalkTreeViewModel::chooseCrown(int row) {
  const Chip* chip = crown_.at(row);
  choose_one(crown_, chip != nullptr && chip->on ? -1 : row);
}
void WalkTreeViewModel::toggleCondition(int row) { toggle(conditions_, row); }

WalkTreeDraft WalkTreeViewModel::draft() const {
  const WalkTree* tree = again_ ? desk_.live().find(*again_) : nullptr;
  WalkTreeDraft draft = tree != nullptr ? oaklight::draft_of(*tree)
                                        : WalkTreeDraft{tag_, TreeFacts{*species_, *dbh_}, {}, {}};
  draft.tag = tag_;
  TreeFacts& facts = draft.facts;
  facts.species = *species_;
  facts.dbh = *dbh_;
  facts.status = TreeStatus::live;
  facts.crown_class.reset();
  facts.conditions = {};
  if (const Chip* crown = chosen_of(crown_))
    facts.crown_class = *oaklight::from_word<CrownClass>(crown->word);
  for (int row = 0; row < conditions_.rowCount(); ++row) {
    const Chip& chip = *conditions_.at(row);
    if (!chip.on) continue;
    if (row == 0) {
      facts.status = TreeStatus::dead;
    } else if (const auto condition = oaklight::from_word<Condition>(chip.word)) {
      facts.conditions.add(*condition);
    }
  }
  return draft;
}

ContactDraft WalkTreeViewModel::standing() const {
  const oaklight::Contact* contact = contact_ ? desk_.live().find(*contact_) : nullptr;
  ContactDraft draft = contact == nullptr ? ContactDraft{} : oaklight::draft_of(*contact);
  draft.sides = {};
  for (int row = 0; row < sides_.rowCount(); ++row) {
    const auto side = oaklight::from_word<Side>(sides_.at(row)->word);
    if (side && sides_.at(row)->on) draft.sides.add(*side);
  }
  if (const Chip* seen = chosen_of(seen_)) draft.seen = *oaklight::from_word<Seen>(seen->word);
  return draft;
}

void WalkTreeViewModel::save() {
  if (!missing().isEmpty()) return;
  again_ ? saveAgain() : saveNew();
}

void WalkTreeViewModel::saveNew() {
  const auto then = [this](const oaklight::Status& done) {
    const WalkTree* tree = done ? desk_.live().by_tag(tag_) : nullptr;
    if (tree != nullptr) emit saved(crop_.value_or(tree->id));
  };
  if (const WalkTree* tree = wearer()) {
    const auto id = tree->id;
    return desk_.submit(
        [this, id]() -> Result<Action> {
          if (!crop_) return oaklight::make_crop_tree(desk_.live(), desk_.knowledge(), id);
          return oaklight::add_known_neighbour(desk_.live(), desk_.knowledge(), desk_.ids(), *crop_,
                                               id, standing());
        },
        then);
  }
  desk_.submit(
      [this, tree = draft(), standing = standing()] {
        return crop_ ? oaklight::add_neighbour(desk_.live(), desk_.knowledge(), desk_.ids(), *crop_,
                                               tree, standing)
                     : oaklight::add_crop_tree(desk_.live(), desk_.knowledge(), desk_.ids(), stand_,
                                               tree);
      },
      then);
}

void WalkTreeViewModel::saveAgain() {
  const WalkTree* tree = desk_.live().find(*again_);
  if (tree == nullptr) return;
  const WalkTreeDraft changed = draft();
  const auto done_with = [this](const oaklight::Status& done) {
    if (done) emit saved(crop_.value_or(*again_));
  };
  const oaklight::Contact* contact = contact_ ? desk_.live().find(*contact_) : nullptr;
  const bool tree_changed = changed.tag != tree->tag || !same(changed.facts, tree->facts);
  if (contact != nullptr && !same(standing(), oaklight::draft_of(*contact))) {
    desk_.submit(
        [this, id = contact->id, standing = standing()] {
          return oaklight::change_contact(desk_.live(), desk_.knowledge(), id, standing);
        },
        tree_changed ? TractDesk::Then() : done_with);
  } else if (!tree_changed) {
    return done_with(oaklight::Done{});
  }
  if (!tree_changed) return;
  desk_.submit(
      [this, id = tree->id, changed] {
        return oaklight::correct_walk_tree(desk_.live(), desk_.knowledge(), id, changed);
      },
      done_with);
}
