#include "mobile/viewmodels/card_list_model.hpp"

#include "mobile/viewmodels/mark_words.hpp"

using oaklight::WalkTree;
using oaklight::WalkTreeId;

void CardListModel::follow(oaklight::StandId stand) {
  std::vector<WalkTreeId> crops;
  for (const WalkTree* tree : desk_.live().walk_trees_of(stand)) {
    if (tree->crop) crops.push_back(tree->id);
  }
  if (crops == crops_) {
    if (!crops_.empty()) emit dataChanged(index(0), index(rowCount() - 1));
    return;
  }
  beginResetModel();
  crops_ = std::move(crops);
  endResetModel();
  emit countChanged();
}

void CardListModel::set(std::shared_ptr<const StandDecision> decision) {
  decision_ = std::move(decision);
  if (!crops_.empty()) emit dataChanged(index(0), index(rowCount() - 1));
}

WalkTreeId CardListModel::at(int row) const {
  return row >= 0 && row < rowCount() ? crops_[static_cast<std::size_t>(row)] : WalkTreeId{};
}

int CardListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(crops_.size());
}

QVariant CardListModel::figure(std::size_t row, int role) const {
  if (decision_ == nullptr) return QString();
  // A decision made before the newest card came has the same order without it.
  const oaklight::CardView* card = row < decision_->cards.size() ? &decision_->cards[row] : nullptr;
  if (card == nullptr || card->crop != crops_[row]) card = decision_->card_of(crops_[row]);
  if (card == nullptr) return QString();
  const oaklight::Light& after = shown_after(*card);
  if (role == BeforeRole) return light_words(card->before);
  if (role == AfterRole) return light_words(after);
  return tr("%1 \u2192 %2").arg(sides_words(card->before)).arg(after.sides_free);
}

QVariant CardListModel::data(const QModelIndex& index, int role) const {
  const WalkTree* tree = desk_.live().find(at(index.row()));
  if (tree == nullptr) return QString();
  switch (role) {
    case TagRole:
      return QString::fromStdString(tree->tag);
    case TreeRole:
    case Qt::DisplayRole:
      return tree_words(desk_.knowledge(), tree->facts);
    case BeforeRole:
    case AfterRole:
    case SidesRole:
      return figure(static_cast<std::size_t>(index.row()), role);
    default:
      return {};
  }
}

QHash<int, QByteArray> CardListModel::roleNames() const {
  return {{TagRole, "tag"},
          {TreeRole, "tree"},
          {BeforeRole, "before"},
          {AfterRole, "after"},
          {SidesRole, "sides"}};
}
