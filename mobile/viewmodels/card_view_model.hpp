#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/desk/tract_desk.hpp"
#include "mobile/items/picture.hpp"
#include "mobile/viewmodels/card_tree_model.hpp"
#include "mobile/viewmodels/stand_decision.hpp"

/// The open crop tree card: its crown from above, its four sides, and each tree with its verdict.
class CardViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("LightViewModel owns it")
  Q_PROPERTY(bool open READ open NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "14  white oak 15.0 in"
  /// Share of the crown's edge that is open, now and after: "25 %", "75 %"; and what each is.
  Q_PROPERTY(QStringList light READ light NOTIFY changed)
  Q_PROPERTY(QStringList lightWords READ lightWords NOTIFY changed)
  Q_PROPERTY(Picture picture READ picture NOTIFY changed)
  /// Of north, east, south and west: "open", "closed by 15", "not looked".
  Q_PROPERTY(QStringList sides READ sides NOTIFY changed)
  Q_PROPERTY(QList<bool> looked READ looked NOTIFY changed)  ///< somebody looked and saw it open
  Q_PROPERTY(CardTreeModel* trees READ trees CONSTANT)
  Q_PROPERTY(QStringList verdicts READ verdicts CONSTANT)  ///< in the order of Verdict
  Q_PROPERTY(QStringList verdictIcons READ verdictIcons CONSTANT)

 public:
  explicit CardViewModel(TractDesk& desk, QObject* parent = nullptr);

  [[nodiscard]] bool open() const { return crop_.has_value(); }
  [[nodiscard]] const std::optional<oaklight::WalkTreeId>& crop() const { return crop_; }
  [[nodiscard]] QString title() const;
  [[nodiscard]] QStringList light() const;
  [[nodiscard]] QStringList lightWords() const;
  [[nodiscard]] Picture picture() const { return picture_; }
  [[nodiscard]] QStringList sides() const;
  [[nodiscard]] QList<bool> looked() const;
  [[nodiscard]] CardTreeModel* trees() { return &trees_; }
  [[nodiscard]] QStringList verdicts() const;
  [[nodiscard]] QStringList verdictIcons() const;

  void choose(std::optional<oaklight::WalkTreeId> crop);
  void set(std::shared_ptr<const StandDecision> decision);

  Q_INVOKABLE void lookOpen(int side);
  Q_INVOKABLE void unlook(int side);
  /// Common reasons for deciding so by hand.
  Q_INVOKABLE [[nodiscard]] QStringList reasons(int verdict) const;
  Q_INVOKABLE void overrule(int row, int verdict, const QString& reason);
  Q_INVOKABLE void takeBack(int row);
  /// Takes a neighbour off the card; of the crop tree's row, the whole card.
  Q_INVOKABLE void remove(int row);
  Q_INVOKABLE void makeCropTree(int row);

 signals:
  void changed();

 private:
  [[nodiscard]] const oaklight::CardView* card() const;
  [[nodiscard]] QString sideWords(std::size_t side) const;
  void fill();

  TractDesk& desk_;
  CardTreeModel trees_;
  std::optional<oaklight::WalkTreeId> crop_;
  std::shared_ptr<const StandDecision> decision_;
  Picture picture_;
};
