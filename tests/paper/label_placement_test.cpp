#include "core/paper/label_placement.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

const QRectF kBounds(0.0, 0.0, 500.0, 500.0);

double between(std::mt19937& engine, double low, double high) {
  return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
}

struct Scatter {
  std::vector<LabelWish> wishes;
  std::vector<QRectF> obstacles;
};

/// Marks of radius 5 with labels of many lengths; every third stands close to the one before it.
Scatter scatter(std::uint32_t seed, int count) {
  std::mt19937 engine(seed);
  Scatter made;
  QPointF last(250.0, 250.0);
  for (int i = 0; i < count; ++i) {
    const QPointF near(last.x() + between(engine, -8.0, 8.0),
                       last.y() + between(engine, -8.0, 8.0));
    const QPointF far(between(engine, 20.0, 480.0), between(engine, 20.0, 480.0));
    last = i % 3 == 2 ? near : far;
    made.wishes.push_back({last, QSizeF(between(engine, 10.0, 50.0), 12.0), 5.0});
    made.obstacles.emplace_back(last.x() - 5.0, last.y() - 5.0, 10.0, 10.0);
  }
  return made;
}

/// Samples the leader: an oracle that shares no code with the placement's own crossing test.
bool runs_through(const QLineF& leader, const QRectF& box) {
  for (int i = 1; i < 200; ++i) {
    if (box.adjusted(0.01, 0.01, -0.01, -0.01).contains(leader.pointAt(i / 200.0))) return true;
  }
  return false;
}

class LabelProperties : public testing::TestWithParam<std::uint32_t> {};

TEST_P(LabelProperties, NoTwoLabelsOverlapAndNoneCoversAMarkOrALeader) {
  const Scatter made = scatter(GetParam(), 40);
  const auto places = place_labels(made.wishes, kBounds, made.obstacles);
  ASSERT_EQ(places.size(), made.wishes.size());
  int placed = 0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i]) continue;
    ++placed;
    EXPECT_TRUE(kBounds.contains(places[i]->box));
    EXPECT_EQ(places[i]->box.size(), made.wishes[i].size);
    for (const QRectF& obstacle : made.obstacles) {
      EXPECT_FALSE(obstacle.intersects(places[i]->box)) << "label " << i;
    }
    for (std::size_t j = 0; j < places.size(); ++j) {
      if (j == i || !places[j]) continue;
      EXPECT_FALSE(places[i]->box.intersects(places[j]->box)) << i << " and " << j;
      if (places[j]->leader) {
        EXPECT_FALSE(runs_through(*places[j]->leader, places[i]->box)) << i << " under " << j;
      }
    }
  }
  EXPECT_EQ(placed, 40) << "there is room for all of them";
}

TEST_P(LabelProperties, SameWishesGetTheSamePlaces) {
  const Scatter made = scatter(GetParam(), 60);
  EXPECT_EQ(place_labels(made.wishes, kBounds, made.obstacles),
            place_labels(made.wishes, kBounds, made.obstacles));
}

INSTANTIATE_TEST_SUITE_P(Seeds, LabelProperties, testing::Range(1u, 26u));

TEST(LabelPlacement, ALoneLabelStandsToTheRightOfItsMarkWithoutALeader) {
  const std::vector<LabelWish> wishes = {{QPointF(250.0, 250.0), QSizeF(20.0, 12.0), 5.0}};
  const auto places = place_labels(wishes, kBounds, {});
  ASSERT_TRUE(places[0]);
  EXPECT_GT(places[0]->box.left(), 255.0);
  EXPECT_LT(places[0]->box.left(), 260.0);
  EXPECT_NEAR(places[0]->box.center().y(), 250.0, 1e-9);
  EXPECT_FALSE(places[0]->leader);
}

TEST(LabelPlacement, ALabelThatHasToMoveAwayGetsALeaderFromItsMark) {
  const QPointF anchor(250.0, 250.0);
  const std::vector<LabelWish> wishes = {{anchor, QSizeF(20.0, 12.0), 5.0}};
  // A crowd of marks all around, with gaps that let a line out but no label in.
  std::vector<QRectF> crowd;
  for (int i = 0; i < 12; ++i) {
    const double angle = 2.0 * 3.14159265358979 * (i + 0.25) / 12.0;
    crowd.emplace_back(250.0 + 18.0 * std::cos(angle) - 3.0, 250.0 + 18.0 * std::sin(angle) - 3.0,
                       6.0, 6.0);
  }
  const auto places = place_labels(wishes, kBounds, crowd);
  ASSERT_TRUE(places[0] && places[0]->leader);
  EXPECT_NEAR(QLineF(anchor, places[0]->leader->p1()).length(), 5.0, 1e-9);
  EXPECT_TRUE(places[0]->box.adjusted(-0.1, -0.1, 0.1, 0.1).contains(places[0]->leader->p2()));
}

TEST(LabelPlacement, ALabelWithoutRoomIsLeftOutAndNotSqueezedIn) {
  const std::vector<LabelWish> wishes = {{QPointF(10.0, 10.0), QSizeF(30.0, 12.0), 2.0}};
  EXPECT_FALSE(place_labels(wishes, QRectF(0.0, 0.0, 20.0, 20.0), {})[0]);
}

TEST(LabelPlacement, ForgoesAPlaceBeyondTheReachOfTheWish) {
  const std::vector<QRectF> wall = {QRectF(150.0, 150.0, 200.0, 200.0)};
  LabelWish wish{QPointF(250.0, 250.0), QSizeF(20.0, 12.0), 5.0, 18.0};
  EXPECT_FALSE(place_labels(std::vector{wish}, kBounds, wall)[0]);
  wish.reach = 200.0;
  EXPECT_TRUE(place_labels(std::vector{wish}, kBounds, wall)[0]);
}

TEST(LabelPlacement, TreesAtOneAndTheSamePlaceAllGetTheirLabels) {
  const std::vector<LabelWish> wishes(12, {QPointF(250.0, 250.0), QSizeF(24.0, 12.0), 5.0});
  const std::vector<QRectF> marks(12, QRectF(245.0, 245.0, 10.0, 10.0));
  for (const auto& place : place_labels(wishes, kBounds, marks)) EXPECT_TRUE(place);
}

}  // namespace
}  // namespace oaklight
