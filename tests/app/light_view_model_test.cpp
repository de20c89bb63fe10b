#include <algorithm>

#include "core/session/card_view.hpp"
#include "mobile/viewmodels/mark_words.hpp"
#include "tests/app/demo_workspace.hpp"

namespace oaklight::test {
namespace {

class LightPageModel : public DemoWorkspace {
 protected:
  LightPageModel() {
    light().setShown(true);
    wait();
  }
  void wait() {
    settle([this] { return light().busy(); });
  }
  [[nodiscard]] QVariant card(int row, CardListModel::Role role) {
    return light().cards()->data(light().cards()->index(row), role);
  }
  [[nodiscard]] QString tree(int row, CardTreeModel::Role role) {
    return light().card()->trees()->data(light().card()->trees()->index(row), role).toString();
  }
  void name(const QString& species, const QString& digits) {
    WalkTreeViewModel& tree = *light().tree();
    tree.search()->setText(species);
    tree.chooseSpecies(0);
    tree.enterDigits(digits);
    ASSERT_EQ(tree.missing(), QString());
  }
  /// A card of its own in a stand where nothing else crowds: a white oak of 15.0 in.
  QString newCard() {
    light().newCropTree();
    const QString tag = light().tree()->tag();
    name(QStringLiteral("white oak"), QStringLiteral("150"));
    light().tree()->save();
    wait();
    return tag;
  }
  QString newNeighbour(int side) {
    light().newNeighbour(side);
    const QString tag = light().tree()->tag();
    name(QStringLiteral("red maple"), QStringLiteral("100"));
    light().tree()->chooseCrown(2);  // codominant, in the order of the form
    light().tree()->save();
    wait();
    return tag;
  }
};

TEST_F(LightPageModel, ListsTheCardsOfAStandWithLightNowAndAfter) {
  const auto& stand = desk().data().stands[static_cast<std::size_t>(light().stand())];
  const auto views = card_views(desk().live(), desk().knowledge(), stand.id);
  ASSERT_TRUE(views);
  ASSERT_GT(views->size(), 0U);
  ASSERT_EQ(light().cards()->count(), static_cast<int>(views->size()));
  for (int row = 0; row < light().cards()->count(); ++row) {
    const CardView& view = (*views)[static_cast<std::size_t>(row)];
    EXPECT_EQ(card(row, CardListModel::TagRole).toString().toStdString(), view.tag);
    EXPECT_EQ(card(row, CardListModel::BeforeRole).toString(), light_words(view.before));
    // Nothing of the demo tract is marked yet, so "after" is what is advised.
    EXPECT_EQ(card(row, CardListModel::AfterRole).toString(), light_words(view.recommended));
  }
  EXPECT_FALSE(light().advice().isEmpty());
  EXPECT_EQ(light().guards()->count(), static_cast<int>(views->front().guards.size()));
}

TEST_F(LightPageModel, ANewCardOpensWithNoSideLookedAt) {
  const QString tag = newCard();
  ASSERT_TRUE(light().card()->open());
  EXPECT_TRUE(light().card()->title().startsWith(tag));
  EXPECT_EQ(light().card()->sides(), QStringList(4, QStringLiteral("not looked")));
  EXPECT_EQ(light().card()->light().front(), QStringLiteral("0\u00a0%"));
  EXPECT_FALSE(light().card()->picture().isEmpty());
}

TEST_F(LightPageModel, ASideSeenOpenGivesAQuarterOfTheLight) {
  newCard();
  light().card()->lookOpen(0);
  wait();
  EXPECT_EQ(light().card()->sides().front(), QStringLiteral("open"));
  EXPECT_TRUE(light().card()->looked().front());
  // On a card a quarter for each free side (Light::open).
  EXPECT_EQ(light().card()->light().front(), QStringLiteral("25\u00a0%"));
  light().card()->unlook(0);
  wait();
  EXPECT_EQ(light().card()->sides().front(), QStringLiteral("not looked"));
}

TEST_F(LightPageModel, ANamedNeighbourHasAVerdictAndAReasonAtOnce) {
  newCard();
  const QString tag = newNeighbour(1);
  ASSERT_EQ(light().card()->trees()->rowCount(), 2);
  EXPECT_TRUE(tree(1, CardTreeModel::TitleRole).startsWith(tag));
  EXPECT_TRUE(tree(1, CardTreeModel::StandingRole).contains(QStringLiteral("E")));
  EXPECT_FALSE(tree(1, CardTreeModel::ReasonRole).isEmpty());
  EXPECT_FALSE(tree(1, CardTreeModel::RulesRole).isEmpty());
  EXPECT_TRUE(light().card()->sides()[1].contains(tag));
}

TEST_F(LightPageModel, ATagInUseMeansTheTreeThatWearsIt) {
  newCard();
  const QString maple = newNeighbour(1);
  const std::size_t trees = desk().data().walk_trees.size();
  newCard();
  light().newNeighbour(3);
  light().tree()->setTag(maple);
  EXPECT_TRUE(light().tree()->known().contains(QStringLiteral("maple")));
  light().tree()->save();
  wait();
  EXPECT_EQ(desk().data().walk_trees.size(), trees + 1);  // the second crop tree alone
  EXPECT_TRUE(tree(1, CardTreeModel::TitleRole).startsWith(maple));
}

TEST_F(LightPageModel, APersonOverrulesWithAReasonAndTakesItBack) {
  newCard();
  newNeighbour(1);
  CardViewModel& card = *light().card();
  const QString advised = tree(1, CardTreeModel::VerdictRole);
  const int keep = static_cast<int>(Verdict::keep);
  ASSERT_FALSE(card.reasons(keep).isEmpty());
  card.overrule(1, keep, card.reasons(keep).front());
  wait();
  EXPECT_EQ(tree(1, CardTreeModel::VerdictRole), verdict_words(Verdict::keep));
  EXPECT_EQ(tree(1, CardTreeModel::ReasonRole), card.reasons(keep).front());
  EXPECT_TRUE(card.trees()->isByHand(1));
  card.takeBack(1);
  wait();
  EXPECT_FALSE(card.trees()->isByHand(1));
  EXPECT_EQ(tree(1, CardTreeModel::VerdictRole), advised);
}

TEST_F(LightPageModel, ADecisionWithoutAReasonIsRefusedAndChangesNothing) {
  newCard();
  newNeighbour(1);
  const std::size_t marks = desk().data().marks.size();
  light().card()->overrule(1, 0, QStringLiteral("  "));
  wait();
  EXPECT_EQ(desk().data().marks.size(), marks);
  EXPECT_FALSE(workspace_->desk()->refusal().isEmpty());
}

TEST_F(LightPageModel, TakingANeighbourOpensItsSide) {
  newCard();
  const QString tag = newNeighbour(1);
  light().card()->overrule(1, static_cast<int>(Verdict::take), QStringLiteral("test"));
  wait();
  EXPECT_EQ(light().card()->sides()[1], QStringLiteral("opens: %1 goes").arg(tag));
  EXPECT_EQ(light().card()->light(),
            QStringList({QStringLiteral("0\u00a0%"), QStringLiteral("25\u00a0%")}));
}

TEST_F(LightPageModel, DecidingTheStandStoresOneMarkATreeAndThenHasNothingNew) {
  light().decide();
  wait();
  const auto& stand = desk().data().stands[static_cast<std::size_t>(light().stand())];
  EXPECT_EQ(desk().data().marks.size(), desk().live().walk_trees_of(stand.id).size());
  const std::size_t marks = desk().data().marks.size();
  light().decide();
  wait();
  EXPECT_EQ(desk().data().marks.size(), marks);
  EXPECT_TRUE(light().notice().startsWith(QStringLiteral("Nothing new")))
      << light().notice().toStdString();
}

TEST_F(LightPageModel, ACardWhoseTreeIsUndoneCloses) {
  newCard();
  ASSERT_TRUE(light().card()->open());
  desk().undo();
  wait();
  EXPECT_FALSE(light().card()->open());
  EXPECT_EQ(light().card()->trees()->rowCount(), 0);
}

TEST_F(LightPageModel, ANeighbourIsLookedAtAgain) {
  newCard();
  newNeighbour(1);
  light().lookAgain(1);
  ASSERT_EQ(light().tree()->dbh(), QStringLiteral("10.0 in"));
  light().tree()->chooseSeen(3);  // a clear gap, in the order of the form
  light().tree()->enterDigits(QStringLiteral("112"));
  light().tree()->save();
  wait();
  EXPECT_TRUE(tree(1, CardTreeModel::TitleRole).endsWith(QStringLiteral("11.2 in")));
  EXPECT_TRUE(tree(1, CardTreeModel::StandingRole).startsWith(QStringLiteral("clear gap")));
}

TEST_F(LightPageModel, NothingIsComputedWhileNobodyLooks) {
  light().setShown(false);
  newCard();
  EXPECT_FALSE(light().busy());
  EXPECT_EQ(light().card()->trees()->rowCount(), 0);
  light().setShown(true);
  wait();
  EXPECT_EQ(light().card()->trees()->rowCount(), 1);
}

}  // namespace
}  // namespace oaklight::test
