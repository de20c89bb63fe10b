#include "mobile/viewmodels/mark_list_model.hpp"

#include <QCoreApplication>

#include "mobile/viewmodels/mark_words.hpp"

using oaklight::Mark;
using oaklight::MarkRow;
using oaklight::MarksView;

namespace {

QString words(const char* text) { return QCoreApplication::translate("MarkListModel", text); }

bool shows(const MarkRow& row, const MarkFilter& filter) {
  if (filter.undecided && row.mark) return false;
  if (filter.verdict && (!row.mark || row.mark->verdict != *filter.verdict)) return false;
  if (filter.reader && (!row.mark || row.mark->destination != filter.reader)) return false;
  return filter.tag.empty() || row.tag.find(filter.tag) != std::string::npos;
}

}  // namespace

void MarkListModel::set(std::shared_ptr<const MarksView> view, const MarkFilter& filter) {
  beginResetModel();
  view_ = std::move(view);
  rows_.clear();
  if (view_ != nullptr) {
    for (std::uint32_t i = 0; i < view_->rows.size(); ++i) {
      if (shows(view_->rows[i], filter)) rows_.push_back(i);
    }
  }
  endResetModel();
  emit countChanged();
}

const MarkRow* MarkListModel::at(int row) const {
  if (row < 0 || row >= rowCount()) return nullptr;
  return &view_->rows[rows_[static_cast<std::size_t>(row)]];
}

int MarkListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant MarkListModel::data(const QModelIndex& index, int role) const {
  const MarkRow* row = at(index.row());
  if (row == nullptr) return {};
  const Mark* mark = row->mark ? &*row->mark : nullptr;
  switch (role) {
    case TagRole:
      return QString::fromStdString(row->tag);
    case TreeRole:
    case Qt::DisplayRole:
      return tree_words(knowledge_, row->facts);
    case IconRole:
      return mark == nullptr ? QStringLiteral("minus") : verdict_icon(mark->verdict);
    case VerdictRole:
      return mark == nullptr ? words(QT_TRANSLATE_NOOP("MarkListModel", "Not decided"))
                             : verdict_words(mark->verdict);
    case WorkRole:
      return mark == nullptr ? QString() : work_words(*mark);
    case PlacedRole:
      return row->position ? words(QT_TRANSLATE_NOOP("MarkListModel", "on the map"))
                           : words(QT_TRANSLATE_NOOP("MarkListModel", "no position"));
    default:
      return {};
  }
}

QHash<int, QByteArray> MarkListModel::roleNames() const {
  return {{TagRole, "tag"},         {TreeRole, "tree"}, {IconRole, "shape"},
          {VerdictRole, "verdict"}, {WorkRole, "work"}, {PlacedRole, "placed"}};
}

QString work_words(const Mark& mark) {
  QStringList parts{method_words(mark.method), product_words(mark.product)};
  if (mark.destination)
    parts << words(QT_TRANSLATE_NOOP("MarkListModel", "for the %1"))
                 .arg(reader_name(*mark.destination));
  if (mark.by_hand) parts << words(QT_TRANSLATE_NOOP("MarkListModel", "by hand"));
  parts.removeAll(QString());
  return parts.join(QStringLiteral(", "));
}
