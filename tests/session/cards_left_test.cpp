// What is left to do on the crop tree cards.
#include "core/session/cards_left.hpp"

#include "core/session/card_work.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr SpeciesCode kWhiteOak{802};
constexpr SpeciesCode kRedMaple{316};

class CardsLeftTest : public WorkTest {
 protected:
  WalkTreeId crop_tree() {
    done(add_crop_tree(live_, knowledge_, ids_, stand_, {"", {kWhiteOak, dbh_in(15.0)}, {}, {}}));
    return live_.data().walk_trees.back().id;
  }
  StandId stand_ = stand_with_plots(1);
};

TEST_F(CardsLeftTest, NothingIsLeftWhereNoTreeWasWalked) {
  const CardsLeft left = cards_left(live_);
  EXPECT_EQ(left.crop_trees + left.sides_open + left.undecided + left.look_again, 0);
}

TEST_F(CardsLeftTest, EachSideIsLookedAtAndEachCropTreeDecided) {
  const WalkTreeId first = crop_tree();
  crop_tree();
  EXPECT_EQ(cards_left(live_).crop_trees, 2);
  EXPECT_EQ(cards_left(live_).sides_open, 2);
  EXPECT_EQ(cards_left(live_).undecided, 2);

  WalkTree looked = *live_.find(first);
  looked.looked = Sides{Side::north, Side::east, Side::south};
  done(Action{"look", {looked}});
  EXPECT_EQ(cards_left(live_).sides_open, 2) << "three of four sides";
  looked.looked = Sides::all();
  done(Action{"look", {looked}});
  EXPECT_EQ(cards_left(live_).sides_open, 1);

  done(overrule(live_, knowledge_, ids_, first, Verdict::keep, "the best oak here"));
  EXPECT_EQ(cards_left(live_).undecided, 1);
  EXPECT_EQ(cards_left(live_).look_again, 0);
}

TEST_F(CardsLeftTest, ANeighbourNeedsNoVerdictButIsLookedAtAgain) {
  const WalkTreeId crop = crop_tree();
  ContactDraft contact;
  contact.sides = Sides{Side::north};
  contact.seen = Seen::touches;
  done(add_neighbour(live_, knowledge_, ids_, crop, {"", {kRedMaple, dbh_in(8.0)}, {}, {}},
                     contact));
  EXPECT_EQ(cards_left(live_).crop_trees, 1);
  EXPECT_EQ(cards_left(live_).undecided, 1);
  const WalkTreeId neighbour = live_.contacts_of(crop).front()->neighbour;
  done(overrule(live_, knowledge_, ids_, neighbour, Verdict::look_again, "which crown is it?"));
  EXPECT_EQ(cards_left(live_).look_again, 1);
  EXPECT_EQ(cards_left(live_).undecided, 1);
}

}  // namespace
}  // namespace oaklight::test
