#include "mobile/viewmodels/card_tree_model.hpp"

#include <QCoreApplication>
#include <algorithm>

#include "mobile/viewmodels/mark_words.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::CardView;
using oaklight::NeighbourView;
using Row = CardTreeModel::Row;

namespace {

QString words(const char* text) { return QCoreApplication::translate("CardTreeModel", text); }

QString origin_words(bool marked, bool by_hand) {
  if (by_hand) return words(QT_TRANSLATE_NOOP("CardTreeModel", "decided by hand"));
  return marked ? words(QT_TRANSLATE_NOOP("CardTreeModel", "decided by the rules"))
                : words(QT_TRANSLATE_NOOP("CardTreeModel", "advised, not decided yet"));
}

QString title_of(const std::string& tag, const oaklight::TreeFacts& facts,
                 const oaklight::TractKnowledge& knowledge) {
  return QString::fromStdString(tag) + QStringLiteral("  ") + tree_words(knowledge, facts);
}

QString standing_words(const NeighbourView& tree, const oaklight::TractKnowledge& knowledge) {
  QStringList parts;
  if (const auto* list = knowledge.form.find_choices("seen")) {
    for (const oaklight::Choice& choice : list->choices) {
      if (choice.word == oaklight::word_of(tree.standing.seen))
        parts << form_words(choice.label).toLower();
    }
  }
  QString letters;
  for (const oaklight::Side side : oaklight::kSides) {
    if (tree.sides.has(side)) letters += side_letter(side) + QLatin1Char(' ');
  }
  parts << (letters.isEmpty() ? words(QT_TRANSLATE_NOOP("CardTreeModel", "side not known"))
                              : letters.trimmed());
  return parts.join(QStringLiteral(", "));
}

Row crop_row(const CardView& card, const oaklight::TractKnowledge& knowledge) {
  Row row;
  row.tree = card.crop;
  row.title = title_of(card.tag, card.facts, knowledge);
  row.standing = words(QT_TRANSLATE_NOOP("CardTreeModel", "the crop tree"));
  row.verdict = card.mark ? card.mark->verdict : card.verdict.verdict;
  row.by_hand = card.mark && card.mark->by_hand;
  row.origin = origin_words(card.mark.has_value(), row.by_hand);
  row.reason = QString::fromStdString(card.mark ? card.mark->reason : card.verdict.reason);
  row.rules = rule_words(card.mark ? card.mark->rules : card.verdict.rules);
  if (!row.by_hand) row.change = QString::fromStdString(card.verdict.what_would_change_it);
  return row;
}

Row neighbour_row(const NeighbourView& tree, const oaklight::TractKnowledge& knowledge) {
  Row row;
  row.tree = tree.tree;
  row.contact = tree.contact;
  row.title = title_of(tree.tag, tree.facts, knowledge);
  row.standing = standing_words(tree, knowledge);
  row.verdict = tree.marked.value_or(tree.recommended);
  row.by_hand = tree.by_hand;
  row.origin = origin_words(tree.marked.has_value(), tree.by_hand);
  row.reason = QString::fromStdString(tree.reason);
  row.rules = rule_words(tree.rules);
  if (!row.by_hand) row.change = QString::fromStdString(tree.what_would_change_it);
  // The facts changed since it was decided, or a person knows better.
  if (tree.marked && *tree.marked != tree.recommended) {
    row.change = words(QT_TRANSLATE_NOOP("CardTreeModel", "The rules now say: %1"))
                     .arg(verdict_words(tree.recommended));
  }
  return row;
}

}  // namespace

std::vector<Row> rows_of(const CardView& card, const oaklight::TractKnowledge& knowledge) {
  std::vector<Row> rows{crop_row(card, knowledge)};
  for (const NeighbourView& tree : card.neighbours) rows.push_back(neighbour_row(tree, knowledge));
  return rows;
}

void CardTreeModel::set(std::vector<Row> rows) {
  const bool same_trees = std::ranges::equal(rows, rows_, {}, &Row::tree, &Row::tree);
  if (!same_trees) beginResetModel();
  rows_.swap(rows);
  if (!same_trees) return endResetModel();
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const QModelIndex changed = index(static_cast<int>(i));
    if (rows_[i] != rows[i]) emit dataChanged(changed, changed);
  }
}

const Row* CardTreeModel::at(int row) const {
  return row >= 0 && row < rowCount() ? &rows_[static_cast<std::size_t>(row)] : nullptr;
}

QString CardTreeModel::titleOf(int row) const {
  return at(row) == nullptr ? QString() : at(row)->title;
}
QString CardTreeModel::nowOf(int row) const {
  const Row* tree = at(row);
  return tree == nullptr ? QString() : tr("%1, %2").arg(verdict_words(tree->verdict), tree->origin);
}
QString CardTreeModel::iconOf(int row) const {
  return at(row) == nullptr ? QString() : verdict_icon(at(row)->verdict);
}
QString CardTreeModel::reasonOf(int row) const {
  return at(row) == nullptr ? QString() : at(row)->reason;
}
bool CardTreeModel::isCrop(int row) const { return at(row) != nullptr && !at(row)->contact; }
bool CardTreeModel::isByHand(int row) const { return at(row) != nullptr && at(row)->by_hand; }

int CardTreeModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant CardTreeModel::data(const QModelIndex& index, int role) const {
  const Row* row = at(index.row());
  if (row == nullptr) return {};
  switch (role) {
    case TitleRole:
    case Qt::DisplayRole:
      return row->title;
    case StandingRole:
      return row->standing;
    case IconRole:
      return verdict_icon(row->verdict);
    case VerdictRole:
      return verdict_words(row->verdict);
    case OriginRole:
      return row->origin;
    case ReasonRole:
      return row->reason;
    case RulesRole:
      return row->rules;
    case ChangeRole:
      return row->change;
    case ByHandRole:
      return row->by_hand;
    default:
      return {};
  }
}

QHash<int, QByteArray> CardTreeModel::roleNames() const {
  return {{TitleRole, "title"},     {StandingRole, "standing"}, {IconRole, "shape"},
          {VerdictRole, "verdict"}, {OriginRole, "origin"},     {ReasonRole, "reason"},
          {RulesRole, "rules"},     {ChangeRole, "change"},     {ByHandRole, "byHand"}};
}
