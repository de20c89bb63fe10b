#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "core/session/card_work.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/chip_list_model.hpp"
#include "mobile/viewmodels/species_search_view_model.hpp"

/// A tree of the marking walk while it is named: a new crop tree, a neighbour on a card, or one
/// that is looked at again. Nothing is recorded before save().
class WalkTreeViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("LightViewModel owns it")
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(bool neighbour READ neighbour NOTIFY changed)  ///< else a crop tree
  Q_PROPERTY(QString tag READ tag WRITE setTag NOTIFY changed)
  /// The tree that wears the tag already and will stand on this card too; "" when none does.
  Q_PROPERTY(QString known READ known NOTIFY changed)
  Q_PROPERTY(QString species READ species NOTIFY changed)  ///< "" until chosen
  Q_PROPERTY(QString dbh READ dbh NOTIFY changed)          ///< "" until entered
  Q_PROPERTY(QString missing READ missing NOTIFY changed)  ///< what save() still needs, or ""
  Q_PROPERTY(ChipListModel* sides READ sides CONSTANT)
  Q_PROPERTY(ChipListModel* seen READ seen CONSTANT)
  Q_PROPERTY(ChipListModel* crown READ crown CONSTANT)
  Q_PROPERTY(ChipListModel* conditions READ conditions CONSTANT)  ///< dead first, then what is seen
  Q_PROPERTY(SpeciesSearchViewModel* search READ search CONSTANT)

 public:
  WalkTreeViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QString title() const;
  [[nodiscard]] bool neighbour() const { return crop_.has_value(); }
  [[nodiscard]] QString tag() const { return QString::fromStdString(tag_); }
  void setTag(const QString& tag);
  [[nodiscard]] QString known() const;
  [[nodiscard]] QString species() const;
  [[nodiscard]] QString dbh() const;
  [[nodiscard]] QString missing() const;
  [[nodiscard]] ChipListModel* sides() { return &sides_; }
  [[nodiscard]] ChipListModel* seen() { return &seen_; }
  [[nodiscard]] ChipListModel* crown() { return &crown_; }
  [[nodiscard]] ChipListModel* conditions() { return &conditions_; }
  [[nodiscard]] SpeciesSearchViewModel* search() { return &search_; }

  void beginCropTree(oaklight::StandId stand);
  void beginNeighbour(oaklight::WalkTreeId crop, oaklight::Side side);
  /// A tree that is recorded; contact: how it stands on the card that is open.
  void beginAgain(oaklight::WalkTreeId tree, std::optional<oaklight::ContactId> contact);

  /// A row of search's found.
  Q_INVOKABLE void chooseSpecies(int row);
  /// How the digits of a keypad read: "12.3 in"; "" without digits.
  Q_INVOKABLE [[nodiscard]] QString readDigits(const QString& digits) const;
  Q_INVOKABLE void enterDigits(const QString& digits);
  Q_INVOKABLE void toggleSide(int row);
  Q_INVOKABLE void chooseSeen(int row);
  /// The same again takes the answer back: not recorded.
  Q_INVOKABLE void chooseCrown(int row);
  Q_INVOKABLE void toggleCondition(int row);
  Q_INVOKABLE void save();

 signals:
  void changed();
  /// It is on disk.
  void saved(oaklight::WalkTreeId crop);

 private:
  void begin(oaklight::StandId stand);
  void fill(const oaklight::TreeFacts& facts, const oaklight::ContactDraft& standing);
  [[nodiscard]] std::vector<Chip> chipsOf(const char* list) const;
  [[nodiscard]] const oaklight::WalkTree* wearer() const;
  [[nodiscard]] oaklight::WalkTreeDraft draft() const;
  [[nodiscard]] oaklight::ContactDraft standing() const;
  [[nodiscard]] oaklight::UnitSystem system() const;
  void saveNew();
  void saveAgain();

  TractDesk& desk_;
  Settings& settings_;
  ChipListModel sides_, seen_, crown_, conditions_;
  SpeciesSearchViewModel search_;
  oaklight::StandId stand_;
  std::optional<oaklight::WalkTreeId> crop_;    ///< the card on which it is a neighbour
  std::optional<oaklight::WalkTreeId> again_;   ///< the tree that is looked at again
  std::optional<oaklight::ContactId> contact_;  ///< likewise
  std::string tag_;
  std::optional<oaklight::SpeciesCode> species_;
  std::optional<oaklight::Dbh> dbh_;
};
