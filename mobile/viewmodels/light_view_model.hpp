#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/card_list_model.hpp"
#include "mobile/viewmodels/card_view_model.hpp"
#include "mobile/viewmodels/guard_list_model.hpp"
#include "mobile/viewmodels/walk_tree_view_model.hpp"

/// The crop tree cards of one stand, decided again after every change.
class LightViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList stands READ stands NOTIFY standsChanged)
  Q_PROPERTY(int stand READ stand WRITE setStand NOTIFY standsChanged)  ///< row; -1 without stands
  /// Row of the stand where nobody said how much was walked; -1 where that is known.
  Q_PROPERTY(int unwalked READ unwalked NOTIFY standsChanged)
  Q_PROPERTY(CardListModel* cards READ cards CONSTANT)
  Q_PROPERTY(CardViewModel* card READ card CONSTANT)
  Q_PROPERTY(WalkTreeViewModel* tree READ tree CONSTANT)
  Q_PROPERTY(QString advice READ advice NOTIFY decided)  ///< for the stand; "" until it is known
  Q_PROPERTY(GuardListModel* guards READ guards CONSTANT)
  /// Why the stand is not decided, and what to do; "" when it is.
  Q_PROPERTY(QString problem READ problem NOTIFY decided)
  Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)  ///< what "decide" did
  Q_PROPERTY(bool working READ working NOTIFY workingChanged)  ///< for longer than an eye blink

 public:
  LightViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QStringList stands() const;
  [[nodiscard]] int stand() const;
  void setStand(int row);
  [[nodiscard]] int unwalked() const;
  [[nodiscard]] CardListModel* cards() { return &cards_; }
  [[nodiscard]] CardViewModel* card() { return &card_; }
  [[nodiscard]] WalkTreeViewModel* tree() { return &tree_; }
  [[nodiscard]] QString advice() const { return advice_; }
  [[nodiscard]] GuardListModel* guards() { return &guards_; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString notice() const { return notice_; }
  [[nodiscard]] bool working() const { return work_.late(); }
  [[nodiscard]] bool busy() const { return work_.busy(); }

  /// Nothing is computed while nobody looks.
  Q_INVOKABLE void setShown(bool shown);
  Q_INVOKABLE void openCard(int row);
  Q_INVOKABLE void closeCard();
  Q_INVOKABLE void newCropTree();
  Q_INVOKABLE void newNeighbour(int side);
  /// Opens the tree of a row of the card, to say more about it.
  Q_INVOKABLE void lookAgain(int row);
  /// Stores what is recommended for the stand.
  Q_INVOKABLE void decide();

 signals:
  void standsChanged();
  void decided();
  void noticeChanged();
  void workingChanged();

 private:
  void follow();
  void compute();
  void show(const oaklight::Result<std::shared_ptr<const StandDecision>>& decision);
  void say(const QString& notice);

  TractDesk& desk_;
  CardListModel cards_;
  CardViewModel card_;
  WalkTreeViewModel tree_;
  GuardListModel guards_;
  std::optional<oaklight::StandId> stand_;
  bool shown_ = false;
  QString advice_, problem_, notice_;
  Background work_;
};
