#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/model/mark.hpp"
#include "core/release/objections.hpp"
#include "core/release/plan.hpp"

namespace oaklight::test {

/// One tree of a short text, with the words that are no facts ("keep", "cut").
struct ShortTree {
  TreeFacts facts;
  std::vector<std::string> words;
};

/// Trees from one line: trees("RO 12.3 keep, SM 6.0 cut"). Each begins with a species and a DBH in
/// inches; then in any order a crown class (open, dom, co, int, over), "dead", lc=45 (live crown
/// %), db=20 (dieback %), ht=70 (ft), logs=2.5, and words of Condition. A text that says something
/// else throws std::invalid_argument: it is a bug of the test.
///
/// Species: WO SWO BUO CHO PO white oaks, RO BO SO NPO red oaks, RM SM AB(beech) YP BW(basswood)
/// AS(quaking aspen) GA WA(ash) EL IW(hophornbeam) SH(shagbark) PH(pignut) BC(black cherry)
/// HE(hemlock) BG(blackgum) TOH(tree-of-heaven) WP(white pine) BX(boxelder)
std::vector<ShortTree> trees(std::string_view text);

/// Crop tree cards of one stand.
struct ShortCards {
  StandId stand;
  std::vector<WalkTree> trees;
  std::vector<Contact> contacts;
};

/// Cards from lines:
///   crop A WO 15 co lc=45 look=NES     a crop tree; without look= all sides were looked at
///   A m1 N 17 touches RM 10 co         its neighbour: side(s) "N|E", ft, Seen, and what it is
///   B m1 S 15 touches                  the same tree on another card
///   A m2 az=95 17 not_looked RM 10 co  by azimuth
/// The distance may be left out as "-". Ids rise in the order of appearance.
ShortCards cards(std::string_view lines);

/// The species, rules and food ranks that come with the program.
const ReleaseKnowledge& shipped_knowledge();
/// The same with some rules changed: {{"R4.11", {25}}}.
ReleaseKnowledge knowledge_with(
    const std::vector<std::pair<std::string, std::vector<double>>>& changes);

/// Density of a stand in which each of the trees stands for `each` trees an acre.
StandDensity density_of(const std::vector<TreeFacts>& trees, double each);

/// A well stocked mixed stand, invented: 180 trees and 110 ft2/ac, of which 40 white and 30 red
/// oak. Far from every floor, so that small cuts never touch a guard.
StandDensity full_stand();

/// Input from cards on so many acres.
ReleaseInput input_of(const ShortCards& cards, double acres, Goal goal = Goal::mast);

/// The plan's verdict for one tag; fails the test when there is none.
const TreeVerdict& verdict_on(const ReleasePlan& plan, std::string_view tag);
/// Tags of the trees taken or killed standing, in the order of the plan.
std::vector<std::string> cut_tags(const ReleasePlan& plan);
/// The rules that object to what is planned for one tree; tag "" for the stand.
std::vector<std::string> rules_against(const std::vector<Objection>& list, std::string_view tag);
std::vector<std::string> released_tags(const ReleasePlan& plan);

}  // namespace oaklight::test
