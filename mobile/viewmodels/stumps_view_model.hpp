#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>
#include <optional>

#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/stump_list_model.hpp"

/// After the cut: the walk with the list. One tree is in hand; one tap says what was found of it,
/// and the next one is there.
class StumpsViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("MarksViewModel owns it")
  Q_PROPERTY(StumpListModel* trees READ trees CONSTANT)
  Q_PROPERTY(QString tag READ tag NOTIFY changed)      ///< of the tree in hand; "" without one
  Q_PROPERTY(QString tree READ tree NOTIFY changed)    ///< "red maple 12.3 in"
  Q_PROPERTY(QString state READ state NOTIFY changed)  ///< what was noted of it
  Q_PROPERTY(QString way READ way NOTIFY changed)      ///< "142°, 120 ft", or that it is not known
  Q_PROPERTY(QStringList cautions READ cautions NOTIFY changed)  ///< of the tree in hand
  Q_PROPERTY(QString progress READ progress NOTIFY changed)
  Q_PROPERTY(QString said READ said NOTIFY changed)          ///< what was noted last, to read back
  Q_PROPERTY(QStringList before READ before NOTIFY changed)  ///< of walking a fresh cut
  Q_PROPERTY(Acts may READ may NOTIFY changed)          ///< what can be noted of the tree in hand
  Q_PROPERTY(bool leaving READ leaving NOTIFY changed)  ///< the list shows the trees to be left
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why there is no list

 public:
  enum Act { Found = 1, Standing = 2, Hung = 4, NotMarked = 8, Hurt = 16, Size = 32, Loose = 64 };
  Q_DECLARE_FLAGS(Acts, Act)
  Q_FLAG(Acts)

  StumpsViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] StumpListModel* trees() { return &trees_; }
  [[nodiscard]] QString tag() const;
  [[nodiscard]] QString tree() const;
  [[nodiscard]] QString state() const;
  [[nodiscard]] QString way() const;
  [[nodiscard]] QStringList cautions() const;
  [[nodiscard]] QString progress() const;
  [[nodiscard]] QString said() const { return said_; }
  [[nodiscard]] QStringList before() const;
  [[nodiscard]] Acts may() const;
  [[nodiscard]] bool leaving() const { return leaving_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] bool busy() const { return work_.busy(); }
  /// The tree in hand.
  [[nodiscard]] std::optional<oaklight::WalkTreeId> inHand() const { return in_hand_; }

  /// Nothing is computed while nobody looks.
  Q_INVOKABLE void setShown(bool shown);
  /// The trees of the list, or those to be left.
  Q_INVOKABLE void showLeaving(bool leaving);
  /// Takes the tree of that row in hand.
  Q_INVOKABLE void choose(int row);
  /// Takes the next tree to look at in hand.
  Q_INVOKABLE void next();
  /// Says what was found of the tree in hand; of a tree of the list, on to the next.
  Q_INVOKABLE void note(int act);
  /// The worst wound of the tree in hand: the row of wounds().
  Q_INVOKABLE void noteWound(int row);
  Q_INVOKABLE [[nodiscard]] QStringList wounds() const;
  /// A stump without a tag, by the digits of its diameter over the bark ("123" is 12.3).
  Q_INVOKABLE void noteLoose(const QString& digits);
  /// How those digits read: "12.3 in".
  Q_INVOKABLE [[nodiscard]] QString loosePreview(const QString& digits) const;

 signals:
  void changed();

 private:
  void follow();
  void show(const std::shared_ptr<oaklight::Result<oaklight::StumpView>>& view);
  void fillRows();
  [[nodiscard]] std::optional<oaklight::WalkTreeId> firstOpen() const;
  [[nodiscard]] std::optional<std::size_t> placeInHand() const;  ///< in check.listed
  [[nodiscard]] oaklight::Day today() const;
  [[nodiscard]] QString stateOf(oaklight::WalkTreeId id) const;
  [[nodiscard]] QString wayText(std::size_t place) const;

  TractDesk& desk_;
  Settings& settings_;
  StumpListModel trees_;
  std::shared_ptr<oaklight::Result<oaklight::StumpView>> view_;
  std::optional<oaklight::WalkTreeId> in_hand_;
  std::optional<oaklight::Position> here_;  ///< of the tree that was seen last
  QString said_, problem_;
  bool leaving_ = false;
  bool shown_ = false;
  Background work_;
};
