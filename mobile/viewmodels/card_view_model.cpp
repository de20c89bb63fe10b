#include "mobile/viewmodels/card_view_model.hpp"

#include <algorithm>
#include <array>

#include "core/measure/local_curves.hpp"
#include "core/paper/crown_chart.hpp"
#include "core/session/card_work.hpp"
#include "mobile/viewmodels/mark_words.hpp"

using oaklight::Action;
using oaklight::CardView;
using oaklight::Result;
using oaklight::SideState;
using oaklight::Verdict;
using oaklight::WalkTree;

namespace {

constexpr std::array kSideOrder = {oaklight::Side::north, oaklight::Side::east,
                                   oaklight::Side::south, oaklight::Side::west};
constexpr std::array kVerdictOrder = {Verdict::take, Verdict::keep, Verdict::kill_standing,
                                      Verdict::look_again};

bool is_side(int side) { return side >= 0 && side < static_cast<int>(kSideOrder.size()); }

bool is_gone(const oaklight::NeighbourView& tree) {
  const Verdict verdict = tree.marked.value_or(tree.recommended);
  return verdict == Verdict::take || verdict == Verdict::kill_standing;
}

oaklight::CrownEdge edge_of(const std::array<SideState, 4>& states) {
  oaklight::CrownEdge edge;
  for (std::size_t i = 0; i < states.size(); ++i) {
    oaklight::Sides& set = states[i] == SideState::free     ? edge.open
                           : states[i] == SideState::shared ? edge.shared
                           : states[i] == SideState::closed ? edge.closed
                                                            : edge.unknown;
    set.add(kSideOrder[i]);
  }
  return edge;
}

Picture picture_of(const CardView& card, const oaklight::SpeciesTable& species,
                   const std::vector<oaklight::LocalCurve>& curves, const QString& words) {
  auto crowns = oaklight::crown_card(card.tag, card.facts, card.taped, species, curves);
  for (const oaklight::NeighbourView& tree : card.neighbours) {
    crowns.neighbours.push_back(oaklight::crown_neighbour(tree.tag, tree.facts, tree.taped,
                                                          tree.standing, tree.sides, is_gone(tree),
                                                          species, curves));
    crowns.neighbours.back().arcs = tree.closes;
  }
  crowns.now = edge_of(card.sides_before);
  // Before anything is marked, what would open is told by the contacts of those that would go.
  crowns.after = is_marked(card) ? edge_of(card.sides_after)
                                 : oaklight::edge_of(crowns.neighbours, card.looked, true);
  return Picture(
      [crowns = std::move(crowns)](const oaklight::PictureFrame& frame) {
        oaklight::PictureFrame bare = frame;
        bare.head = false;
        return oaklight::draw_crowns(crowns, bare);
      },
      words);
}

}  // namespace

CardViewModel::CardViewModel(TractDesk& desk, QObject* parent) : QObject(parent), desk_(desk) {}

const CardView* CardViewModel::card() const {
  return crop_ && decision_ ? decision_->card_of(*crop_) : nullptr;
}

QString CardViewModel::title() const {
  const WalkTree* tree = crop_ ? desk_.live().find(*crop_) : nullptr;
  if (tree == nullptr) return {};
  return QString::fromStdString(tree->tag) + QStringLiteral("  ") +
         tree_words(desk_.knowledge(), tree->facts);
}

QStringList CardViewModel::light() const {
  if (card() == nullptr) return {QStringLiteral("-"), QStringLiteral("-")};
  return {light_words(card()->before), light_words(shown_after(*card()))};
}

QStringList CardViewModel::lightWords() const {
  if (card() == nullptr) return {QString(), QString()};
  const QString after = sides_words(shown_after(*card()));
  return {tr("light now: %1").arg(sides_words(card()->before)),
          is_marked(*card()) ? tr("as marked: %1").arg(after) : tr("as advised: %1").arg(after)};
}

QString CardViewModel::sideWords(std::size_t side) const {
  const CardView* shown = card();
  if (shown == nullptr) return {};
  QStringList tags;
  for (const oaklight::NeighbourView& tree : shown->neighbours) {
    const bool crowds =
        tree.standing.seen != oaklight::Seen::none && tree.standing.seen != oaklight::Seen::below;
    if (crowds && tree.sides.has(kSideOrder[side])) tags << QString::fromStdString(tree.tag);
  }
  const QString by = tags.join(QStringLiteral(", "));
  const bool opens = shown->sides_after[side] == SideState::free;
  switch (shown->sides_before[side]) {
    case SideState::free:
      return tr("open");
    case SideState::shared:
      return tr("shared with %1").arg(by);
    case SideState::closed:
      return opens ? tr("opens: %1 goes").arg(by) : tr("closed by %1").arg(by);
    case SideState::unknown:
      break;
  }
  return tags.isEmpty() ? tr("not looked") : tr("not sure: %1").arg(by);
}

QStringList CardViewModel::sides() const {
  QStringList words;
  for (std::size_t side = 0; side < kSideOrder.size(); ++side) words << sideWords(side);
  return words;
}

QList<bool> CardViewModel::looked() const {
  const WalkTree* tree = crop_ ? desk_.live().find(*crop_) : nullptr;
  QList<bool> looked;
  for (const oaklight::Side side : kSideOrder)
    looked << (tree != nullptr && tree->looked.has(side));
  return looked;
}

QStringList CardViewModel::verdicts() const {
  QStringList words;
  for (const Verdict verdict : kVerdictOrder) words << verdict_words(verdict);
  return words;
}

QStringList CardViewModel::verdictIcons() const {
  QStringList icons;
  for (const Verdict verdict : kVerdictOrder) icons << verdict_icon(verdict);
  return icons;
}

void CardViewModel::choose(std::optional<oaklight::WalkTreeId> crop) {
  crop_ = crop;
  fill();
}

void CardViewModel::set(std::shared_ptr<const StandDecision> decision) {
  decision_ = std::move(decision);
  fill();
}

void CardViewModel::fill() {
  if (crop_ && desk_.live().find(*crop_) == nullptr) crop_.reset();
  const CardView* shown = card();
  if (shown == nullptr) {
    trees_.set({});
    picture_ = {};
  } else {
    trees_.set(rows_of(*shown, desk_.knowledge()));
    picture_ = picture_of(*shown, desk_.knowledge().species(),
                          oaklight::crown_curves(desk_.data().walk_trees, shown->stand),
                          lightWords().join(QStringLiteral(". ")));
  }
  emit changed();
}

void CardViewModel::lookOpen(int side) {
  if (!crop_ || !is_side(side)) return;
  desk_.submit([this, crop = *crop_, side] {
    return oaklight::look_open(desk_.live(), crop, kSideOrder[static_cast<std::size_t>(side)]);
  });
}

void CardViewModel::unlook(int side) {
  if (!crop_ || !is_side(side)) return;
  desk_.submit([this, crop = *crop_, side] {
    return oaklight::unlook(desk_.live(), crop, kSideOrder[static_cast<std::size_t>(side)]);
  });
}

QStringList CardViewModel::reasons(int verdict) const {
  switch (static_cast<Verdict>(verdict)) {
    case Verdict::take:
      return {tr("It leans into the crop tree."), tr("Its stem is poor."),
              tr("The owner wants it out.")};
    case Verdict::keep:
      return {tr("It feeds wildlife here."), tr("A den or nest is in it."),
              tr("It shelters the stem of the crop tree."), tr("The owner wants it kept.")};
    case Verdict::kill_standing:
      return {tr("Felling it would hurt the crop tree."), tr("A snag is wanted here."),
              tr("It can not be felled safely.")};
    case Verdict::look_again:
      break;
  }
  return {tr("The leaves were off."), tr("I could not see the crown."),
          tr("I want a second opinion.")};
}

void CardViewModel::overrule(int row, int verdict, const QString& reason) {
  const CardTreeModel::Row* tree = trees_.at(row);
  if (tree == nullptr || verdict < 0 || verdict >= static_cast<int>(kVerdictOrder.size())) return;
  desk_.submitLong(
      [&knowledge = desk_.knowledge(), id = tree->tree,
       chosen = kVerdictOrder[static_cast<std::size_t>(verdict)],
       why = reason.toStdString()](const oaklight::TractData& data, oaklight::IdSource& ids) {
        return oaklight::overrule(oaklight::LiveTract(data), knowledge, ids, id, chosen, why);
      });
}

void CardViewModel::takeBack(int row) {
  const CardTreeModel::Row* tree = trees_.at(row);
  if (tree == nullptr) return;
  desk_.submitLong([&knowledge = desk_.knowledge(), id = tree->tree](
                       const oaklight::TractData& data, oaklight::IdSource& ids) {
    return oaklight::take_back_overrule(oaklight::LiveTract(data), knowledge, ids, id);
  });
}

void CardViewModel::remove(int row) {
  const CardTreeModel::Row* tree = trees_.at(row);
  if (tree == nullptr) return;
  desk_.submit([this, id = tree->tree, contact = tree->contact] {
    return contact ? oaklight::remove_neighbour(desk_.live(), desk_.knowledge(), *contact)
                   : oaklight::remove_crop_tree(desk_.live(), desk_.knowledge(), id);
  });
}

void CardViewModel::makeCropTree(int row) {
  const CardTreeModel::Row* tree = trees_.at(row);
  if (tree == nullptr) return;
  desk_.submit([this, id = tree->tree] {
    return oaklight::make_crop_tree(desk_.live(), desk_.knowledge(), id);
  });
}
