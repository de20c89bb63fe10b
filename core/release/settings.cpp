#include "core/release/settings.hpp"

#include <optional>

#include "core/release/closing.hpp"

namespace oaklight {
namespace {

/// No rule holds a larger number than this; one that does is a slip of the keyboard.
constexpr double kLargest = 100'000.0;

/// Reads values by rule id and remembers the first fault, so that the list below stays a list.
class RuleReader {
 public:
  explicit RuleReader(const RuleBook& book) : book_(book) {}

  double number(std::string_view id, std::size_t place = 0) {
    const Rule* rule = book_.find(id);
    if (rule == nullptr || rule->numbers.size() <= place) {
      fail(ErrorCode::missing_rule, id, rule == nullptr ? "is missing" : "gives too few numbers");
      return 0.0;
    }
    const double value = rule->numbers[place];
    if (!(value >= 0.0 && value <= kLargest)) fail(ErrorCode::out_of_range, id, "is out of range");
    return value;
  }
  int whole(std::string_view id, std::size_t place = 0) {
    const double value = number(id, place);
    const int whole_value = static_cast<int>(value);
    if (static_cast<double>(whole_value) < value) {
      fail(ErrorCode::out_of_range, id, "must be a whole number");
    }
    return whole_value;
  }
  template <class Q>
  Q quantity(std::string_view id, std::size_t place = 0) {
    return Q{number(id, place)};
  }
  template <std::size_t N>
  std::array<double, N> numbers(std::string_view id) {
    std::array<double, N> values{};
    for (std::size_t i = 0; i < N; ++i) values[i] = number(id, i);
    return values;
  }
  template <class E>
  std::vector<E> choices(std::string_view id) {
    std::vector<E> values;
    const Rule* rule = book_.find(id);
    if (rule == nullptr) {
      fail(ErrorCode::missing_rule, id, "is missing");
      return values;
    }
    for (const std::string& word : rule->words) {
      if (const auto value = from_word<E>(word)) {
        values.push_back(*value);
      } else {
        fail(ErrorCode::not_a_choice, id, "holds the unknown word " + word);
      }
    }
    return values;
  }
  std::vector<std::string> words(std::string_view id) {
    const Rule* rule = book_.find(id);
    if (rule == nullptr || rule->words.empty()) fail(ErrorCode::missing_rule, id, "is missing");
    return rule == nullptr ? std::vector<std::string>{} : rule->words;
  }
  std::vector<SpeciesCode> species(std::string_view id) {
    std::vector<SpeciesCode> codes;
    const Rule* rule = book_.find(id);
    const std::size_t count = rule == nullptr ? 1 : rule->numbers.size();
    for (std::size_t i = 0; i < count; ++i) codes.push_back(SpeciesCode{whole(id, i)});
    return codes;
  }

  [[nodiscard]] const std::optional<Error>& first_fault() const { return fault_; }

 private:
  void fail(ErrorCode code, std::string_view id, const std::string& what) {
    if (fault_) return;
    fault_ = Error{code, "Rule " + std::string(id) + " " + what + ".", "rules/" + std::string(id),
                   "Put it back from the rule file that came with the program."};
  }
  const RuleBook& book_;
  std::optional<Error> fault_;
};

CropTreeSettings read_crop_trees(RuleReader& r) {
  CropTreeSettings s;
  s.classes = r.choices<CrownClass>("R1.02");
  s.small_food_trees = r.species("R1.03");
  s.live_crown_wanted = r.quantity<Percent>("R1.05");
  s.live_crown_min = r.quantity<Percent>("R1.06");
  s.dieback_free = r.quantity<Percent>("R1.07");
  s.dieback_max = r.quantity<Percent>("R1.08");
  s.clean_log = r.quantity<Feet>("R1.10");
  s.risks = r.choices<Condition>("R1.12");
  s.height_min = r.quantity<Feet>("R1.18");
  s.dbh_min = r.quantity<Inches>("R1.19");
  s.timber_dbh_max = r.quantity<Inches>("R1.20");
  s.food_rank_min = r.whole("X3.03");
  return s;
}

SideSettings read_sides(RuleReader& r) {
  SideSettings s;
  s.free_min = r.whole("R1.61");
  s.shared_max = r.whole("R1.64");
  s.group_max = r.whole("R1.66");
  s.group_max_thin = r.whole("R1.66", 1);
  s.thin_below = r.quantity<Inches>("R1.66", 2);
  s.free_in_pair = r.whole("R1.67");
  return s;
}

AcornSettings read_acorns(RuleReader& r) {
  AcornSettings s;
  s.years = r.whole("R3.39");
  s.index_trees = r.whole("R3.48");
  s.white = {r.number("R3.41", 0), r.number("R3.42", 0), r.number("R3.42", 1)};
  s.red = {r.number("R3.41", 1), r.number("R3.43", 0), r.number("R3.43", 1)};
  return s;
}

GuardSettings read_guards(RuleReader& r) {
  GuardSettings s;
  s.counted_from = r.quantity<Inches>("R2.27");
  s.oak_group_min = r.quantity<Percent>("R3.60");
  s.oak_species = r.whole("R3.61");
  s.oak_min = r.quantity<Percent>("R3.62");
  s.stocking_floor = r.quantity<Percent>("R4.01");
  s.b_line = r.quantity<Percent>("R4.03");
  s.usual_start = r.quantity<Percent>("R4.08");
  s.ba_floor = r.quantity<SquareFeetPerAcre>("R4.09");
  s.removal_max = r.quantity<Percent>("R4.11");
  return s;
}

ProductLimits read_products(RuleReader& r) {
  ProductLimits s;
  s.pulpwood_from = r.quantity<Inches>("R7.22");
  s.firewood_from = r.quantity<Inches>("R7.27");
  s.no_log = r.choices<Condition>("R7.21");
  s.refused_genera = r.words("R7.26");
  s.refused = r.species("X7.05");
  return s;
}

RegenerationSettings read_regeneration(RuleReader& r) {
  RegenerationSettings s;
  s.site_index = r.quantity<Feet>("R4.50");
  s.midstory_share = r.quantity<Percent>("R4.52");
  s.advance_oak = r.quantity<TreesPerAcre>("R4.55");
  s.age_years = r.whole("R4.57");
  s.stocking = r.quantity<Percent>("R4.57", 1);
  s.midstory_from = r.quantity<Inches>("R4.59");
  s.midstory_to = r.quantity<Inches>("R4.59", 1);
  return s;
}

KeepSettings read_keep(RuleReader& r) {
  KeepSettings s;
  s.fruit_trees = r.quantity<TreesPerAcre>("R3.68");
  s.cavity_from = r.quantity<Inches>("R5.05");
  s.any_hollow_from = r.quantity<Inches>("R5.10");
  s.legacy = r.quantity<TreesPerAcre>("R5.12");
  s.legacy_above = r.quantity<Inches>("R5.12", 1);
  s.snag_live_crown = r.quantity<Percent>("R5.16");
  s.roost_hickory_above = r.quantity<Inches>("R5.20");
  s.roost_hickories = r.quantity<TreesPerAcre>("R5.20", 1);
  s.scarce_below = r.quantity<Percent>("R5.32");
  s.food_tree_rank = r.whole("X3.01");
  s.scarce_rank = r.whole("X3.02");
  s.roost_hickory_species = r.species("X5.02");
  s.unconfirmed_line = r.quantity<Feet>("X5.03");
  return s;
}

WorkSettings read_work(RuleReader& r) {
  WorkSettings s;
  s.machine_slope = r.quantity<Percent>("R4.30");
  s.danger_lengths = r.number("R5.15");
  s.stream_zone = r.quantity<Feet>("R5.39");
  s.girdle_depth = r.number("R6.30");
  s.girdle_apart = r.numbers<2>("R6.31");
  s.years_to_die = r.numbers<2>("R6.37");
  s.frill_from = r.quantity<Inches>("R6.42");
  s.stump_minutes = r.whole("R6.43");
  s.roots_near = r.quantity<Feet>("R6.50");
  s.roots_far = r.quantity<Feet>("R6.50", 1);
  s.by_hand_below = r.quantity<Inches>("R6.64");
  s.sale_from = r.quantity<Inches>("R6.64", 1);
  s.wilt_middle = r.quantity<SquareFeetPerAcre>("R6.75");
  s.wilt_high = r.quantity<SquareFeetPerAcre>("R6.75", 1);
  s.wound_open_hours = r.whole("R6.78");
  s.paint_minutes = r.whole("R6.79");
  return s;
}

CautionLimits read_cautions(RuleReader& r) {
  CautionLimits s;
  s.lengths = r.number("R5.15");
  s.default_height = r.quantity<Feet>("X7.01");
  s.stream_buffer = r.quantity<Feet>("R5.39");
  s.line = r.quantity<Feet>("X5.03");
  s.large = r.quantity<Inches>("X7.02");
  s.very_large = r.quantity<Inches>("X7.02", 1);
  s.sloped = r.quantity<Percent>("X7.03");
  s.steep = r.quantity<Percent>("R4.30");
  s.ash_sick = r.quantity<Percent>("X7.04");
  s.ash_dead = r.quantity<Percent>("R6.18");
  s.snag_live_crown = r.quantity<Percent>("R5.16");
  return s;
}

WorthSettings read_worth(RuleReader& r) {
  WorthSettings s;
  for (std::size_t goal = 0; goal < s.by_goal.size(); ++goal) {
    WorthWeights& w = s.by_goal[goal];
    w.food = r.number("X1.01", goal);
    w.producer = r.number("X1.02", goal);
    w.crown = r.number("X1.03", goal);
    w.size = r.number("X1.04", goal);
    w.timber = r.number("X1.05", goal);
    w.health = r.number("X1.06", goal);
    w.scarcity = r.number("X1.07", goal);
  }
  s.crown = r.numbers<4>("X1.08");
  s.producer = r.numbers<5>("X1.09");
  s.timber = r.numbers<4>("X1.10");
  s.full_size = r.quantity<Inches>("X1.11");
  return s;
}

}  // namespace

Result<ReleaseSettings> ReleaseSettings::from(const RuleBook& book) {
  RuleReader r(book);
  ReleaseSettings s;
  s.crop = read_crop_trees(r);
  s.count = {r.quantity<TreesPerAcre>("R1.32", 1), r.quantity<TreesPerAcre>("R1.37"),
             r.quantity<Percent>("R1.41"), r.quantity<TreesPerAcre>("R4.58")};
  s.contact = {r.quantity<Feet>("R1.52"), r.quantity<Feet>("R2.11"), r.quantity<Degrees>("R2.16"),
               r.quantity<Feet>("X6.03")};
  s.sides = read_sides(r);
  s.acorns = read_acorns(r);
  s.sprouts = {r.whole("R6.58", 1), r.quantity<Inches>("R6.61")};
  s.watch = {r.quantity<Percent>("R4.24"), r.species("R4.25"), r.number("R4.27")};
  s.product = read_products(r);
  s.guards = read_guards(r);
  s.regeneration = read_regeneration(r);
  s.keep = read_keep(r);
  s.removal = {r.species("X6.01"), r.number("X6.02"), r.whole("R6.14"),
               r.quantity<Percent>("R6.18")};
  s.work = read_work(r);
  s.cautions = read_cautions(r);
  s.worth = read_worth(r);
  s.damage = {r.quantity<Percent>("R7.42"), r.quantity<Percent>("R7.43")};
  s.damage.product = s.product;
  if (r.first_fault()) return *r.first_fault();
  if (const auto years = YearSettings::from(book); !years) return years.error();
  return s;
}

}  // namespace oaklight
