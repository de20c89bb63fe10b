#include "tests/paper/invented_packet.hpp"

#include <array>
#include <random>

#include "core/base/sha256.hpp"
#include "core/place/geodesy.hpp"
#include "core/place/position_text.hpp"

namespace oaklight::test {
namespace {

const Position kMiddle{Degrees{37.7215}, Degrees{-83.0640}};  // invented; no survey behind it

/// Random numbers that are the same everywhere (the distributions of <random> are not).
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
  }
  int below(int n) { return static_cast<int>(between(0.0, n)); }

 private:
  std::mt19937 engine_;
};

Position at(double east, double north) {
  return position_from_local(kMiddle, {Feet{east}, Feet{north}});
}

Stand stand(const char* name, double acres, std::initializer_list<std::array<double, 2>> corners) {
  Stand out;
  out.name = name;
  out.acres = Acres{acres};
  Polygon polygon;
  for (const auto& [east, north] : corners) polygon.outer.push_back(at(east, north));
  polygon.outer.push_back(polygon.outer.front());
  out.boundary = polygon;
  return out;
}

MapLine line(LineKind kind, const char* name, bool confirmed,
             std::initializer_list<std::array<double, 2>> corners) {
  MapLine out;
  out.kind = kind;
  out.name = name;
  out.confirmed = confirmed;
  for (const auto& [east, north] : corners) out.points.push_back(at(east, north));
  return out;
}

void add_ground(Packet& packet) {
  packet.stands = {
      stand("Ridge oaks", 52.4,
            {{-1100, 100}, {-300, -150}, {250, 0}, {400, 900}, {-400, 1150}, {-1050, 800}}),
      stand("Cove", 38.1, {{250, 0}, {1150, -200}, {1200, 700}, {400, 900}}),
      stand("Maple flat", 27.5, {{-300, -150}, {250, 0}, {1150, -200}, {700, -900}, {-250, -800}})};
  packet.lines = {line(LineKind::stream, "Fern Branch", true,
                       {{1250, 500}, {700, 250}, {300, -80}, {100, -500}, {-100, -1000}}),
                  line(LineKind::neighbour_line, "East line", false, {{1180, -950}, {1220, 1150}}),
                  line(LineKind::neighbour_line, "West line", true, {{-1130, -950}, {-1120, 1150}}),
                  line(LineKind::road, "Gate road", true,
                       {{-1250, -950}, {-500, -930}, {-200, -870}, {100, -880}}),
                  line(LineKind::trail, "Ridge trail", true,
                       {{-700, -900}, {-650, -300}, {-200, 400}, {0, 1100}}),
                  line(LineKind::power_line, "", true, {{-1200, 950}, {-200, 1180}, {1200, 900}})};
}

void add_words(Packet& packet) {
  packet.tract = {"Lantern Hollow tract",
                  "KY",
                  "Invented",
                  "A. Sample, owner, 555-0100",
                  "Gate road, 2 miles past the white bridge, green gate on the left",
                  "The green gate",
                  "Top of the ridge trail",
                  at(80.0, -840.0),
                  true};
  packet.made_on = "2026-10-05";
  packet.rule_versions = "release 1 (invented); cautions 1 (invented)";
  packet.log_rule = "International 1/4-inch";
  packet.emergency = {{"Say", packet.tract.directions},
                      {"Map point (WGS 84)", decimal_degrees_text(*packet.tract.landing)},
                      {"For a helicopter", degrees_minutes_text(*packet.tract.landing)},
                      {"Meet the ambulance at", packet.tract.meeting_place},
                      {"A phone works at", packet.tract.phone_place},
                      {"Owner", packet.tract.contact}};
  packet.before_you_start = {
      "This list is a reminder. Your training, the saw manual, the law and your contract come "
      "first.",
      "Walk to each tree before you start the saw. A mark shows what to take; it does not say that "
      "the tree is safe to cut.",
      "If a tree looks wrong to you, leave it and tell the owner.",
      "Wear helmet, eye, face and ear cover, chaps, cut-resistant boots and gloves. Keep a "
      "first-aid kit where you cut.",
      "Never work alone. Stay in sight or hearing of each other, two tree lengths apart.",
      "Check the property line with the owner. Do not cut past paint or flags.",
      "Stop for thunder, strong wind, fog, dark, deep snow, or a tree that touches a wire."};
  packet.job_cautions = {
      {"POWER_LINE", Severity::stop,
       "A power line crosses the tract. Stay two tree lengths away and call the power company "
       "first.",
       "common practice"},
      {"NEAR_LINE", Severity::stop,
       "The east line is not confirmed. Cut nothing near it until the owner and the neighbor agree "
       "on it.",
       "common practice"},
      {"STREAM", Severity::extra_care, "Keep tops, soil and wheels out of Fern Branch.",
       "common practice"},
      {"HUNG", Severity::note,
       "If a tree hangs up, stop, flag it and keep everybody away. Get a machine.",
       "common practice"}};
  packet.look_for = {"Hornet nests and stinging plants.", "Vines that tie two crowns together.",
                     "Loose limbs overhead, also in trees that are not on this list.",
                     "Holes and old wire under leaves."};
  packet.seasons = {
      {"Oak wilt", "Apr 1 \xE2\x80\x93 Jul 15",
       "Fresh cuts on oaks can let oak wilt in. Do not cut or bark oaks; check with your state "
       "agency.",
       "common practice"},
      {"Bats", "Apr 1 \xE2\x80\x93 Oct 15",
       "Bats may raise young under loose bark and in hollows. Check with the wildlife agency.",
       "common practice"}};
  packet.season_advice =
      "Today, October 5, the bat season holds; the next day clear of all seasons is October 16.";
}

const std::array<const char*, 6> kTaken = {"Red maple",     "American beech", "Sourwood",
                                           "Yellow-poplar", "Blackgum",       "Sugar maple"};
const std::array<const char*, 4> kOaks = {"White oak", "Northern red oak", "Chestnut oak",
                                          "Black oak"};

PacketTree tree(Dice& dice, const std::string& tag, const char* species, const char* stand_name) {
  const auto tenths = static_cast<std::int32_t>(dice.between(60.0, 260.0));
  return PacketTree{.tag = tag,
                    .stand = stand_name,
                    .species = species,
                    .dbh = *Dbh::from_tenths(tenths, UnitSystem::us),
                    .board_feet = {},
                    .cords = {},
                    .reason = {},
                    .cautions = {},
                    .position = {}};
}

void decide_cut(Dice& dice, PacketTree& out, const std::string& crop_tag) {
  out.verdict = Verdict::take;
  out.method = Method::fell;
  out.product = out.dbh.inches() > Inches{14.0} ? Product::sawlog
                : dice.below(3) == 0            ? Product::pulpwood
                                                : Product::firewood;
  if (out.product == Product::sawlog && dice.below(8) > 0)
    out.board_feet = BoardFeet{dice.between(60.0, 420.0)};
  if (out.product != Product::sawlog) out.cords = Cords{dice.between(0.05, 0.4)};
  out.reason = "Crowds crop tree " + crop_tag + " on its " +
               (dice.below(2) == 0 ? "south and west sides." : "east side.");
  if (dice.below(3) == 0) {
    out.cautions.push_back({"LEAN_10", Severity::extra_care,
                            "It leans. Plan the fall before you cut, and stay out of the lean.",
                            "common practice"});
  }
  if (dice.below(9) == 0) {
    out.cautions.push_back({"DEAD_TOP", Severity::extra_care,
                            "Dead limbs in the top can drop. Look up before each cut.",
                            "common practice"});
  }
}

void total_up(Packet& packet) {
  for (const Product product : {Product::sawlog, Product::pulpwood, Product::firewood}) {
    ProductTotal total;
    total.product = product;
    for (const PacketTree& each : packet.cut) {
      if (each.product != product) continue;
      ++total.trees;
      if (each.board_feet)
        total.board_feet = total.board_feet.value_or(BoardFeet{}) + *each.board_feet;
      if (each.cords) total.cords = total.cords.value_or(Cords{}) + *each.cords;
      if (!each.board_feet && !each.cords) ++total.without_volume;
    }
    if (total.trees > 0) packet.totals.push_back(total);
  }
}

/// A crop tree with up to four neighbours to take.
void add_card(Packet& packet, Dice& dice, int& next_tag, int trees) {
  static constexpr std::array<std::array<double, 4>, 3> kWindows = {
      {{-900, -100, 100, 800}, {450, 1050, 0, 650}, {-150, 700, -700, -250}}};
  static constexpr std::array<const char*, 3> kNames = {"Ridge oaks", "Cove", "Maple flat"};
  const auto which =
      static_cast<std::size_t>(static_cast<int>(packet.cut.size()) * 3 / std::max(trees, 1));
  const auto& [west, east, south, north] = kWindows[which];
  const double x = dice.between(west, east);
  const double y = dice.between(south, north);
  const std::string crop_tag = std::to_string(next_tag++);
  PacketTree crop =
      tree(dice, crop_tag, kOaks[static_cast<std::size_t>(dice.below(4))], kNames[which]);
  crop.crop = true;
  crop.position = at(x, y);
  crop.reason = "Crop tree: straight, full crown, feeds wildlife. Three sides get light.";
  packet.keep.push_back(crop);
  const int neighbours = 1 + dice.below(4);
  for (int i = 0; i < neighbours && static_cast<int>(packet.cut.size()) < trees; ++i) {
    PacketTree near = tree(dice, std::to_string(next_tag++),
                           kTaken[static_cast<std::size_t>(dice.below(6))], kNames[which]);
    near.position = at(x + dice.between(-28.0, 28.0), y + dice.between(-28.0, 28.0));
    decide_cut(dice, near, crop_tag);
    if (dice.below(12) == 0) {
      near.species = "White ash";
      near.cautions = {{"DEAD_ASH", Severity::stop,
                        "Dead ash snaps with no warning. Do not cut it by hand. Keep two tree "
                        "lengths away and call a trained feller with a machine.",
                        "common practice"}};
      packet.trained.push_back(near);
    } else {
      if (dice.below(15) == 0) near.position.reset();
      packet.cut.push_back(near);
    }
  }
  if (dice.below(10) == 0) {
    PacketTree den = tree(dice, std::to_string(next_tag++), "American beech", kNames[which]);
    den.position = at(x + 30.0, y + 34.0);
    den.reason = "Keep: hollow that wildlife uses.";
    (dice.below(2) == 0 ? packet.keep : packet.others).push_back(den);
  }
}

}  // namespace

Packet invented_packet(int trees, std::uint32_t seed, PacketReader reader) {
  Packet packet;
  packet.reader = reader;
  add_words(packet);
  add_ground(packet);
  Dice dice(seed);
  int next_tag = 101;
  while (static_cast<int>(packet.cut.size()) < trees) add_card(packet, dice, next_tag, trees);
  total_up(packet);
  packet.list_csv = "tag\r\n";
  for (const PacketTree& each : packet.cut) packet.list_csv += each.tag + "\r\n";
  packet.list_sha256 = sha256_hex(packet.list_csv);
  return packet;
}

}  // namespace oaklight::test
