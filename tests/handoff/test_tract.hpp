#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "core/handoff/make_packet.hpp"
#include "core/place/geodesy.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {

/// A made-up place in the Appalachian foothills; positions of the tests are feet east and north of
/// it.
inline constexpr Position kHill{Degrees{38.4012}, Degrees{-82.3345}};
inline Position at(double east, double north) {
  return position_from_local(kHill, {Feet{east}, Feet{north}});
}

inline std::string text_of(const std::string& path) {
  std::ifstream in(source_path(path), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

inline const CautionTable& cautions() {
  static const CautionTable kTable =
      CautionTable::read(text_of("forms/hazard_cautions.csv")).value();
  return kTable;
}
inline const std::vector<SeasonWindow>& seasons() {
  static const auto kTable = read_seasons(text_of("forms/season_windows.csv")).value();
  return kTable;
}

inline constexpr int kWhiteOak = 802;
inline constexpr int kRedMaple = 316;
inline constexpr int kWhiteAsh = 541;
inline constexpr int kTreeOfHeaven = 341;

inline const SpeciesTable& species() {
  static const SpeciesTable kTable = [] {
    const auto kind = [](int code, const char* common, const char* scientific, bool invasive) {
      Species s;
      s.code = {code};
      s.common_name = common;
      s.scientific_name = scientific;
      s.invasive = invasive;
      return s;
    };
    return SpeciesTable({kind(kWhiteOak, "white oak", "Quercus alba", false),
                         kind(kRedMaple, "red maple", "Acer rubrum", false),
                         kind(kWhiteAsh, "white ash", "Fraxinus americana", false),
                         kind(kTreeOfHeaven, "tree-of-heaven", "Ailanthus altissima", true)});
  }();
  return kTable;
}

/// Puts a tract together tree by tree; ids rise in the order of the calls.
class TestTract {
 public:
  TestTract() {
    data.tract.name = "Laurel Run";
    data.tract.state = "WV";
    data.stands.push_back({.id = nth_id<StandId>(1), .name = "A"});
  }

  StandId stand(const std::string& name) {
    data.stands.push_back({.id = nth_id<StandId>(++last_), .name = name});
    return data.stands.back().id;
  }

  WalkTree& tree(const std::string& tag, int fia = kRedMaple, double dbh_inches = 12) {
    data.walk_trees.push_back({.id = nth_id<WalkTreeId>(++last_),
                               .stand = data.stands.front().id,
                               .tag = tag,
                               .facts = {.species = {fia}, .dbh = dbh_in(dbh_inches)},
                               .slope = Percent{0}});
    if (fia == kWhiteAsh) data.walk_trees.back().facts.dieback = Percent{0};
    return data.walk_trees.back();
  }

  /// A mark that says take, to be felled by this reader.
  Mark& take(WalkTreeId tree, Reader reader, Product product) {
    return mark(tree, {.verdict = Verdict::take,
                       .method = Method::fell,
                       .product = product,
                       .destination = reader,
                       .reason = "Crowds a crop tree."});
  }

  Mark& mark(WalkTreeId tree, Mark mark) {
    mark.id = nth_id<MarkId>(++last_);
    mark.tree = tree;
    data.marks.push_back(mark);
    return data.marks.back();
  }

  Contact& contact(WalkTreeId crop, WalkTreeId neighbour) {
    data.contacts.push_back(
        {.id = nth_id<ContactId>(++last_), .crop = crop, .neighbour = neighbour});
    return data.contacts.back();
  }

  MapLine& line(LineKind kind, std::vector<Position> points) {
    data.lines.push_back(
        {.id = nth_id<MapLineId>(++last_), .kind = kind, .points = std::move(points)});
    return data.lines.back();
  }

  TractData data;

 private:
  std::uint32_t last_ = 1;
};

/// In December, when no window of West Virginia holds.
inline PacketOptions winter() {
  const Day day{std::chrono::December / 1 / 2026};
  return {.today = day, .work_day = day, .table_versions = "cautions 1"};
}

inline Result<Packet> packet_for(const TractData& data, PacketReader reader,
                                 const PacketOptions& options = winter()) {
  return make_packet(data, {species(), cautions(), seasons()}, reader, options);
}
/// The packet of whoever marks are sent to.
inline Result<Packet> packet_for(const TractData& data, Reader destination,
                                 const PacketOptions& options = winter()) {
  const bool logger = destination == Reader::logger;
  return packet_for(data, logger ? PacketReader::logger : PacketReader::firewood, options);
}

inline std::vector<std::string> tags_of(const std::vector<PacketTree>& trees) {
  std::vector<std::string> tags;
  for (const PacketTree& tree : trees) tags.push_back(tree.tag);
  return tags;
}

}  // namespace oaklight::test
