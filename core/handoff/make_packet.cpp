#include "core/handoff/make_packet.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "core/base/sha256.hpp"
#include "core/handoff/marked_list_csv.hpp"
#include "core/handoff/order.hpp"
#include "core/handoff/packet_words.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "core/measure/cords.hpp"
#include "core/measure/tree_volume.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

/// The list on which a tree is printed.
enum class List { cut, trained, keep, others };

/// A tree with what its place on a list is decided by.
struct Row {
  PacketTree tree;
  List list = List::others;
  std::optional<Percent> slope;
};

/// A figure as the list prints it, so that the totals are the sums of what is printed.
double rounded(double value, double steps_per_unit) {
  return std::round(value * steps_per_unit) / steps_per_unit;
}

std::optional<BoardFeet> board_feet_of(const TreeFacts& facts, LogRule rule) {
  if (!facts.half_logs) return std::nullopt;
  const auto volume = tree_board_feet(rule, facts.dbh, *facts.half_logs);
  if (!volume) return std::nullopt;
  return BoardFeet{rounded(volume->value, 1.0)};
}

std::optional<Cords> cords_of(const TreeFacts& facts) {
  const auto cords = firewood_cords(facts.dbh);
  if (!cords) return std::nullopt;
  return Cords{rounded(cords->value, 100.0)};
}

void set_volume(PacketTree& tree, const TreeFacts& facts, LogRule rule) {
  if (tree.product == Product::sawlog) tree.board_feet = board_feet_of(facts, rule);
  if (tree.product == Product::pulpwood || tree.product == Product::firewood) {
    tree.cords = cords_of(facts);
  }
}

bool by_stand_and_tag(const Row& a, const Row& b) {
  if (a.tree.stand != b.tree.stand) return tag_before(a.tree.stand, b.tree.stand);
  return tag_before(a.tree.tag, b.tree.tag);
}

/// Whether a mark to take no longer fits what is recorded of the tree: the rules never take a crop
/// tree, a dead tree or one with a den, a nest or a line on it, so it was marked before that was
/// recorded. Of all but a crop tree a person who marked it by hand knew.
bool is_stale(const PacketTree& tree, const TreeFacts& facts, const Mark& mark) {
  if (mark.verdict != Verdict::take) return false;
  const auto has = [&](Condition c) { return facts.conditions.has(c); };
  const bool kept = facts.status == TreeStatus::dead || has(Condition::den) ||
                    has(Condition::nest) || has(Condition::line_tree) || has(Condition::legacy);
  return tree.crop || (!mark.by_hand && kept);
}

/// The list of a tree whose packet tree is filled in.
List list_of(const PacketTree& tree, const TreeFacts& facts, const Mark* mark, Reader reader) {
  if (mark == nullptr) return tree.crop ? List::keep : List::others;
  if (is_stale(tree, facts, *mark)) return List::others;
  if (mark->verdict == Verdict::keep) return List::keep;
  const bool felled = mark->verdict == Verdict::take && mark->method != Method::girdle;
  if (!felled || mark->destination != reader) return List::others;
  return may_cut_from_list(reader, tree.method, tree.cautions) ? List::cut : List::trained;
}

/// What the mark says, or that there is none.
void set_decision(PacketTree& tree, const Mark* mark) {
  if (mark != nullptr) {
    tree.verdict = mark->verdict;
    tree.method = mark->method;
    tree.product = mark->product;
    tree.reason = mark->reason;
  } else {
    tree.verdict = tree.crop ? Verdict::keep : Verdict::look_again;
    tree.reason = tree.crop ? "Proposed as a crop tree; nothing is decided." : "";
  }
}

/// Leaves only the cautions that tell whoever walks by that this tree itself is dangerous: what
/// stands around a tree matters to those who cut it.
void keep_own_dangers(std::vector<Caution>& cautions) {
  static constexpr std::array<std::string_view, 9> kOwn = {"DEAD_ASH",   "DEAD_TREE", "BROKEN_TOP",
                                                           "WIDOWMAKER", "HUNG_IN",   "CRACK_SPLIT",
                                                           "ROOT_LIFT",  "ASH_SICK",  "NEST"};
  std::erase_if(cautions, [](const Caution& caution) {
    return std::find(kOwn.begin(), kOwn.end(), caution.code) == kOwn.end();
  });
}

/// Why a tree of other work is none of this reader's: the reason behind its mark would read like an
/// order to cut it.
std::string_view not_yours_because(const PacketTree& tree, const Mark* mark) {
  if (mark == nullptr) return "Nothing is decided for this tree.";
  if (tree.verdict == Verdict::look_again) return "To be looked at again; nothing is decided.";
  if (tree.verdict == Verdict::kill_standing || tree.method == Method::girdle) {
    return "To be killed standing; must not be felled.";
  }
  return mark->destination ? "On another cutter's list." : "On nobody's list yet.";
}

const Stand* stand_of(const WalkTree& tree, const TractData& data) {
  const auto stand = std::find_if(data.stands.begin(), data.stands.end(),
                                  [&](const Stand& s) { return s.id == tree.stand; });
  return stand == data.stands.end() ? nullptr : &*stand;
}

/// One row for each tree of the walk, by stand and tag.
Result<std::vector<Row>> rows_of(const TractData& data, const PacketTables& tables, Reader reader,
                                 const PacketOptions& options) {
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  const auto cautions = cautions_of_walk(data, tables, options);
  if (!cautions) return cautions.error();
  const auto trees = placed_walk_trees(data);
  std::vector<Row> rows;
  for (std::size_t i = 0; i < trees.size(); ++i) {
    const WalkTree& tree = trees[i];
    const Stand* stand = stand_of(tree, data);
    if (stand == nullptr) {
      return Error{ErrorCode::unknown_reference, "The tree's stand is not in the tract.",
                   "walk_tree/" + tree.tag + "/stand", "Give the tree a stand of this tract."};
    }
    const auto at = marks->find(tree.id);
    const Mark* mark = at == marks->end() ? nullptr : at->second;
    Row row{.tree = {.tag = tree.tag,
                     .stand = stand->name,
                     .species = tables.species.find(tree.facts.species)->common_name,
                     .dbh = tree.facts.dbh,
                     .cautions = (*cautions)[i],
                     .position = tree.position,
                     .crop = tree.crop},
            .slope = tree.slope};
    set_decision(row.tree, mark);
    set_volume(row.tree, tree.facts, options.log_rule);
    row.list = list_of(row.tree, tree.facts, mark, reader);
    if (row.list == List::keep || row.list == List::others) keep_own_dangers(row.tree.cautions);
    if (row.list == List::others) {
      row.tree.reason = mark != nullptr && is_stale(row.tree, tree.facts, *mark)
                            ? "Look again: what is recorded of it changed after it was marked."
                            : std::string(not_yours_because(row.tree, mark));
    }
    rows.push_back(std::move(row));
  }
  std::sort(rows.begin(), rows.end(), by_stand_and_tag);
  return rows;
}

/// Easy trees first: ground known to be gentle, then the thinner stem.
bool easier(const Row& a, const Row& b) {
  if (a.tree.stand != b.tree.stand) return tag_before(a.tree.stand, b.tree.stand);
  if (a.slope.has_value() != b.slope.has_value()) return a.slope.has_value();
  const Inches dbh_a = a.tree.dbh.inches();
  const Inches dbh_b = b.tree.dbh.inches();
  if (dbh_a < dbh_b || dbh_b < dbh_a) return dbh_a < dbh_b;
  return tag_before(a.tree.tag, b.tree.tag);
}

/// Rows that are sorted by stand, put into walking order inside each stand.
std::vector<Row> in_walking_order(const std::vector<Row>& rows, std::optional<Position> landing) {
  std::vector<Row> walked;
  for (auto first = rows.begin(); first != rows.end();) {
    const auto last = std::find_if(
        first, rows.end(), [&](const Row& row) { return row.tree.stand != first->tree.stand; });
    std::vector<Stop> stops;
    for (auto row = first; row != last; ++row) stops.push_back({row->tree.tag, row->tree.position});
    for (const std::size_t i : walking_order(stops, landing)) {
      walked.push_back(*(first + static_cast<std::ptrdiff_t>(i)));
    }
    first = last;
  }
  return walked;
}

std::vector<PacketTree> trees_of(const std::vector<Row>& rows, List list) {
  std::vector<PacketTree> trees;
  for (const Row& row : rows) {
    if (row.list == list) trees.push_back(row.tree);
  }
  return trees;
}

/// The four lists, from rows sorted by stand and tag.
void fill_lists(Packet& packet, const std::vector<Row>& rows) {
  std::vector<Row> cut;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(cut),
               [](const Row& row) { return row.list == List::cut; });
  if (packet.reader == Reader::firewood) {
    std::sort(cut.begin(), cut.end(), easier);
  } else {
    cut = in_walking_order(cut, packet.tract.landing);
  }
  packet.cut = trees_of(cut, List::cut);
  packet.trained = trees_of(rows, List::trained);
  packet.keep = trees_of(rows, List::keep);
  std::stable_partition(packet.keep.begin(), packet.keep.end(),
                        [](const PacketTree& tree) { return tree.crop; });
  packet.others = trees_of(rows, List::others);
}

std::vector<ProductTotal> totals_of(const std::vector<PacketTree>& trees) {
  std::vector<ProductTotal> totals;
  for (const auto& [product, word] : kWords<Product>) {
    ProductTotal total{.product = product};
    for (const PacketTree& tree : trees) {
      if (tree.product != product) continue;
      ++total.trees;
      if (tree.board_feet) {
        total.board_feet = total.board_feet.value_or(BoardFeet{}) + *tree.board_feet;
      } else if (tree.cords) {
        total.cords = total.cords.value_or(Cords{}) + *tree.cords;
      } else {
        ++total.without_volume;
      }
    }
    // Sums of hundredths keep no tail of binary fractions.
    if (total.cords) total.cords = Cords{rounded(total.cords->value, 100.0)};
    if (total.trees > 0) totals.push_back(total);
  }
  return totals;
}

bool has_invasives(const TractData& data, const SpeciesTable& species) {
  const auto invasive = [&](SpeciesCode code) {
    const Species* kind = species.find(code);
    return kind != nullptr && kind->invasive;
  };
  return std::any_of(data.trees.begin(), data.trees.end(),
                     [&](const Tree& t) { return invasive(t.facts.species); }) ||
         std::any_of(data.walk_trees.begin(), data.walk_trees.end(),
                     [&](const WalkTree& t) { return invasive(t.facts.species); }) ||
         std::any_of(data.regens.begin(), data.regens.end(),
                     [&](const Regen& r) { return invasive(r.species); });
}

/// Ash among the trees of this reader, by the data's own species.
bool has_ash(const TractData& data, const Packet& packet, const SpeciesTable& species) {
  std::set<std::string_view> tags;
  for (const auto* list : {&packet.cut, &packet.trained}) {
    for (const PacketTree& tree : *list) tags.insert(tree.tag);
  }
  return std::any_of(data.walk_trees.begin(), data.walk_trees.end(), [&](const WalkTree& tree) {
    const Species* kind = species.find(tree.facts.species);
    return kind != nullptr && kind->genus() == "Fraxinus" && tags.contains(tree.tag);
  });
}

bool lists_firewood(const Packet& packet) {
  const auto is_firewood = [](const PacketTree& tree) { return tree.product == Product::firewood; };
  return std::any_of(packet.cut.begin(), packet.cut.end(), is_firewood) ||
         std::any_of(packet.trained.begin(), packet.trained.end(), is_firewood);
}

StartFacts start_facts(const TractData& data, const Packet& packet, const CautionTable& cautions) {
  StartFacts facts{.reader = packet.reader,
                   .demo = data.tract.demo,
                   .trained = static_cast<int>(packet.trained.size()),
                   .lines_confirmed = true,
                   .cautions_read_on = cautions.oldest_reading()};
  for (const auto* list : {&packet.cut, &packet.trained}) {
    facts.unplaced += static_cast<int>(std::count_if(
        list->begin(), list->end(), [](const PacketTree& tree) { return !tree.position; }));
  }
  for (const MapLine& line : data.lines) {
    if (line.kind != LineKind::neighbour_line) continue;
    facts.lines = true;
    facts.lines_confirmed = facts.lines_confirmed && line.confirmed;
  }
  return facts;
}

/// The version of the rules behind the marks; marks made by hand have none.
/// Errors: contradiction when rules of two versions decided.
Result<std::string> rule_version_of(const TractData& data) {
  std::string version;
  for (const Mark& mark : data.marks) {
    if (mark.by_hand || mark.rule_version.empty()) continue;
    if (!version.empty() && version != mark.rule_version) {
      return Error{ErrorCode::contradiction,
                   "Marks were decided by two versions of the rules, " + version + " and " +
                       mark.rule_version + ".",
                   "mark/rule_version", "Recommend again, so that one set of rules decides all."};
    }
    version = mark.rule_version;
  }
  return version.empty() ? "rules: by hand" : "rules " + version;
}

std::vector<Stand> stands_listed(const TractData& data, const std::vector<Row>& rows) {
  std::set<std::string_view> names;
  for (const Row& row : rows) names.insert(row.tree.stand);
  std::vector<Stand> stands;
  std::copy_if(data.stands.begin(), data.stands.end(), std::back_inserter(stands),
               [&](const Stand& stand) { return names.contains(stand.name); });
  std::sort(stands.begin(), stands.end(),
            [](const Stand& a, const Stand& b) { return tag_before(a.name, b.name); });
  return stands;
}

}  // namespace

Result<Packet> make_packet(const TractData& data, const PacketTables& tables, Reader reader,
                           const PacketOptions& options) {
  const auto rows = rows_of(data, tables, reader, options);
  if (!rows) return rows.error();
  const auto rules = rule_version_of(data);
  if (!rules) return rules.error();
  Packet packet{.reader = reader,
                .tract = data.tract,
                .made_on = to_text(options.today),
                .rule_versions =
                    *rules + (options.table_versions.empty() ? "" : ", ") + options.table_versions,
                .log_rule = std::string(name_of(options.log_rule)),
                .lines = data.lines};
  fill_lists(packet, *rows);
  if (packet.cut.empty() && packet.trained.empty()) {
    return Error{ErrorCode::nothing_marked,
                 "No tree is marked for the " +
                     std::string(reader == Reader::logger ? "logger." : "firewood cutter."),
                 "mark", "Mark trees to take and say whose list they go on."};
  }
  const auto seasons = windows_of(tables.seasons, data.tract.state);
  packet.totals = totals_of(packet.cut);
  if (reader == Reader::logger) packet.totals_if_cleared = totals_of(packet.trained);
  packet.stands = stands_listed(data, *rows);
  packet.emergency = emergency_facts(data.tract);
  StartFacts start = start_facts(data, packet, tables.cautions);
  if (options.work_day) start.held_by = seasons_held(seasons, *options.work_day);
  packet.before_you_start = before_you_start(start);
  packet.job_cautions =
      job_cautions({.state = data.tract.state,
                    .oak_wilt_season = may_fall_in_season(seasons, "oak_wilt", options.work_day),
                    .keep_trees = !packet.keep.empty(),
                    .firewood = reader == Reader::firewood || lists_firewood(packet),
                    .ash = has_ash(data, packet, tables.species),
                    .invasive_plants = has_invasives(data, tables.species)},
                   tables.cautions);
  packet.look_for = hazards_to_look_for(tables.cautions);
  packet.seasons = season_notes(seasons);
  packet.season_advice =
      season_advice(seasons, !data.tract.state.empty(), options.work_day, options.today);
  packet.list_csv = marked_list_csv(packet);
  packet.list_sha256 = sha256_hex(packet.list_csv);
  return packet;
}

}  // namespace oaklight
