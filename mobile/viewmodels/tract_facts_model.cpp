#include "mobile/viewmodels/tract_facts_model.hpp"

#include <array>

#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Tract;

namespace {

struct Fact {
  const char* field;  ///< of the form's record "tract"
  std::string Tract::*value;
};
constexpr std::array<Fact, 7> kFacts = {{{"name", &Tract::name},
                                         {"directions", &Tract::directions},
                                         {"meeting_place", &Tract::meeting_place},
                                         {"phone_place", &Tract::phone_place},
                                         {"contact", &Tract::contact},
                                         {"county", &Tract::county},
                                         {"state", &Tract::state}}};

}  // namespace

TractFactsModel::TractFactsModel(TractDesk& desk, QObject* parent)
    : QAbstractListModel(parent), desk_(desk) {
  begin();
}

void TractFactsModel::begin() {
  beginResetModel();
  draft_.clear();
  for (const Fact& fact : kFacts) draft_ << QString::fromStdString(desk_.data().tract.*fact.value);
  endResetModel();
  problem_.clear();
  emit problemChanged();
}

void TractFactsModel::type(int row, const QString& text) {
  if (row >= 0 && row < draft_.size()) draft_[row] = text;
}

void TractFactsModel::save() {
  desk_.submit(
      [this] {
        Tract tract = desk_.data().tract;
        for (std::size_t i = 0; i < kFacts.size(); ++i)
          tract.*kFacts[i].value = draft_[static_cast<int>(i)].trimmed().toStdString();
        tract.state = QString::fromStdString(tract.state).toUpper().toStdString();
        return oaklight::change_tract(desk_.live(), desk_.knowledge(), std::move(tract));
      },
      [this](const oaklight::Status& changed) {
        problem_ = changed ? QString() : sentence_of(changed.error());
        emit problemChanged();
        if (changed) emit saved();
      });
}

int TractFactsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(draft_.size());
}

QVariant TractFactsModel::data(const QModelIndex& index, int role) const {
  if (index.row() < 0 || index.row() >= draft_.size()) return {};
  if (role == ValueRole) return draft_[index.row()];
  const auto* record = desk_.knowledge().form.find_record("tract");
  const auto* field = record == nullptr
                          ? nullptr
                          : record->find(kFacts[static_cast<std::size_t>(index.row())].field);
  if (field == nullptr) return {};
  return form_words(role == LabelRole ? field->label : field->help);
}

QHash<int, QByteArray> TractFactsModel::roleNames() const {
  return {{LabelRole, "label"}, {HelpRole, "help"}, {ValueRole, "value"}};
}
