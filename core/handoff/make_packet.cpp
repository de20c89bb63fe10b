#include "core/handoff/make_packet.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/sha256.hpp"
#include "core/handoff/list_volumes.hpp"
#include "core/handoff/marked_list_csv.hpp"
#include "core/handoff/order.hpp"
#include "core/handoff/owner_part.hpp"
#include "core/handoff/packet_rows.hpp"
#include "core/handoff/packet_words.hpp"
#include "core/handoff/tree_cautions.hpp"

namespace oaklight {
namespace {

/// Easy trees first: ground known to be gentle, then the thinner stem.
bool easier(const PacketRow& a, const PacketRow& b) {
  if (a.tree.stand != b.tree.stand) return tag_before(a.tree.stand, b.tree.stand);
  if (a.slope.has_value() != b.slope.has_value()) return a.slope.has_value();
  const Inches dbh_a = a.tree.dbh.inches();
  const Inches dbh_b = b.tree.dbh.inches();
  if (dbh_a < dbh_b || dbh_b < dbh_a) return dbh_a < dbh_b;
  return tag_before(a.tree.tag, b.tree.tag);
}

/// Rows that are sorted by stand, put into walking order inside each stand.
std::vector<PacketRow> in_walking_order(const std::vector<PacketRow>& rows,
                                        std::optional<Position> landing) {
  std::vector<PacketRow> walked;
  for (auto first = rows.begin(); first != rows.end();) {
    const auto last = std::find_if(first, rows.end(), [&](const PacketRow& row) {
      return row.tree.stand != first->tree.stand;
    });
    std::vector<Stop> stops;
    for (auto row = first; row != last; ++row) stops.push_back({row->tree.tag, row->tree.position});
    for (const std::size_t i : walking_order(stops, landing)) {
      walked.push_back(*(first + static_cast<std::ptrdiff_t>(i)));
    }
    first = last;
  }
  return walked;
}

std::vector<PacketTree> trees_of(const std::vector<PacketRow>& rows, ListKind list) {
  std::vector<PacketTree> trees;
  for (const PacketRow& row : rows) {
    if (row.list == list) trees.push_back(row.tree);
  }
  return trees;
}

/// The four lists, from rows sorted by stand and tag.
void fill_lists(Packet& packet, const std::vector<PacketRow>& rows) {
  std::vector<PacketRow> cut;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(cut),
               [](const PacketRow& row) { return row.list == ListKind::work; });
  if (packet.reader == PacketReader::firewood) {
    std::sort(cut.begin(), cut.end(), easier);
  } else {
    cut = in_walking_order(cut, packet.tract.landing);
  }
  packet.cut = trees_of(cut, ListKind::work);
  packet.trained = trees_of(rows, ListKind::trained);
  packet.keep = trees_of(rows, ListKind::keep);
  std::stable_partition(packet.keep.begin(), packet.keep.end(),
                        [](const PacketTree& tree) { return tree.crop; });
  packet.others = trees_of(rows, ListKind::others);
}

void add(ProductTotal& total, const PacketTree& tree) {
  ++total.trees;
  if (tree.board_feet) {
    total.board_feet = total.board_feet.value_or(BoardFeet{}) + *tree.board_feet;
  } else if (tree.cords) {
    total.cords = total.cords.value_or(Cords{}) + *tree.cords;
  } else {
    ++total.without_volume;
  }
  // Sums of hundredths keep no tail of binary fractions.
  if (total.cords) total.cords = printed(*total.cords);
}

std::vector<ProductTotal> totals_of(const std::vector<PacketTree>& trees) {
  std::vector<ProductTotal> totals;
  for (const auto& [product, word] : kWords<Product>) {
    ProductTotal total{.product = product};
    for (const PacketTree& tree : trees) {
      if (tree.product == product) add(total, tree);
    }
    if (total.trees > 0) totals.push_back(total);
  }
  return totals;
}

/// Totals of the groups that name_of tells, by name, and inside each by product.
template <class NameOf>
std::vector<GroupTotal> totals_by(const std::vector<PacketTree>& trees, const NameOf& name_of) {
  const auto before = [](const std::string& a, const std::string& b) { return tag_before(a, b); };
  std::map<std::string, std::vector<PacketTree>, decltype(before)> groups(before);
  for (const PacketTree& tree : trees) groups[name_of(tree)].push_back(tree);
  std::vector<GroupTotal> totals;
  for (const auto& [name, members] : groups) {
    for (const ProductTotal& total : totals_of(members)) totals.push_back({name, total});
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

/// What was recorded of the trees that this reader works on or is told to leave alone; not that a
/// tree has several dangers, since each of them is told.
std::vector<ListedDanger> dangers_of(const Packet& packet, const CautionTable& cautions) {
  std::vector<ListedDanger> dangers;
  for (const CautionEntry& entry : cautions.entries()) {
    if (entry.caution.severity == Severity::note || entry.caution.code == "MULTI") continue;
    ListedDanger danger{entry.observation, entry.caution.severity, {}};
    for (const auto* list : {&packet.trained, &packet.cut}) {
      for (const PacketTree& tree : *list) {
        const bool has = std::ranges::any_of(tree.cautions, [&](const Caution& caution) {
          return caution.code == entry.caution.code;
        });
        if (has) danger.tags.push_back(tree.tag);
      }
    }
    if (!danger.tags.empty()) dangers.push_back(std::move(danger));
  }
  return dangers;
}

StartFacts start_facts(const TractData& data, const Packet& packet, const CautionTable& cautions) {
  StartFacts facts{.reader = packet.reader,
                   .demo = data.tract.demo,
                   .trained = static_cast<int>(packet.trained.size()),
                   .lines_confirmed = true,
                   .on_list = dangers_of(packet, cautions),
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

std::vector<Stand> stands_listed(const TractData& data, const std::vector<PacketRow>& rows) {
  std::set<std::string_view> names;
  for (const PacketRow& row : rows) names.insert(row.tree.stand);
  std::vector<Stand> stands;
  std::copy_if(data.stands.begin(), data.stands.end(), std::back_inserter(stands),
               [&](const Stand& stand) { return names.contains(stand.name); });
  std::sort(stands.begin(), stands.end(),
            [](const Stand& a, const Stand& b) { return tag_before(a.name, b.name); });
  return stands;
}

/// Leaves out the stands in which this reader has nothing to do: what grows there is not his to
/// know. What stands near a tree of his, over the line too, is in that tree's cautions.
void leave_out_other_stands(PacketReader reader, std::vector<PacketRow>& rows) {
  if (reader == PacketReader::owner) return;
  std::set<std::string> at_work;
  for (const PacketRow& row : rows) {
    const bool works = row.list == ListKind::work || row.list == ListKind::trained;
    if (works) at_work.insert(row.tree.stand);
  }
  std::erase_if(rows, [&](const PacketRow& row) { return !at_work.contains(row.tree.stand); });
}

/// Packet::volumes_by. Whose table it is concerns the owner.
std::string volume_words(const std::vector<PacketRow>& rows, const PacketTables& tables,
                         PacketReader reader) {
  if (!tables.local || tables.local->volumes.rows.empty()) return "";
  int local = 0;
  int book = 0;
  for (const PacketRow& row : rows) {
    if (row.list != ListKind::work && row.list != ListKind::trained) continue;
    if (!row.tree.board_feet && !row.tree.cords) continue;
    ++(row.local_volume ? local : book);
  }
  if (local + book == 0) return "";
  const std::string& source = tables.local->volumes.source;
  const bool named = reader == PacketReader::owner && !source.empty();
  return "Volumes of " + std::to_string(local) + " trees by the local table" +
         (named ? " (" + source + ")" : "") + " [local_volume] and of " + std::to_string(book) +
         " by the book.";
}

/// Whether some tree was sent to this reader.
bool has_work(const Packet& packet) {
  const auto destination = destination_of(packet.reader);
  return !packet.cut.empty() ||
         std::any_of(packet.trained.begin(), packet.trained.end(), [&](const PacketTree& tree) {
           return !destination || tree.destination == destination;
         });
}

/// What is said when a reader has nothing to do.
Error nothing_for(PacketReader reader) {
  switch (reader) {
    case PacketReader::standing:
      return {ErrorCode::nothing_marked, "No tree is marked to be killed standing.", "mark",
              "Recommend, or mark trees to kill standing; a tract may have none."};
    case PacketReader::owner:
      return {ErrorCode::nothing_marked, "No tree is marked to be taken or killed standing.",
              "mark", "Recommend first, then make the packet."};
    default:
      return {ErrorCode::nothing_marked,
              "No tree is marked for the " +
                  std::string(reader == PacketReader::logger ? "logger." : "firewood cutter."),
              "mark", "Mark trees to take and say whose list they go on."};
  }
}

/// The cautions of the job, those about herbicide first where some tree may be treated with it.
std::vector<Caution> cautions_of_job(const TractData& data, const Packet& packet,
                                     const PacketTables& tables,
                                     std::span<const SeasonWindow> seasons,
                                     const PacketOptions& options) {
  std::vector<Caution> cautions;
  if (packet.reader == PacketReader::standing) {
    for (const char* code : {"HERB_LABEL", "HERB_HIRE", "HERB_FLASH", "HERB_WATER"}) {
      cautions.push_back(tables.cautions.entry(code).caution);
    }
  }
  const auto of_job =
      job_cautions({.state = data.tract.state,
                    .oak_wilt_season = may_fall_in_season(seasons, "oak_wilt", options.work_day),
                    .keep_trees = !packet.keep.empty(),
                    .firewood = packet.reader == PacketReader::firewood || lists_firewood(packet),
                    .ash = has_ash(data, packet, tables.species),
                    .invasive_plants = has_invasives(data, tables.species)},
                   tables.cautions);
  cautions.insert(cautions.end(), of_job.begin(), of_job.end());
  return cautions;
}

}  // namespace

Result<Packet> make_packet(const TractData& data, const PacketTables& tables, PacketReader reader,
                           const PacketOptions& options) {
  auto rows = packet_rows(data, tables, reader, options);
  if (!rows) return rows.error();
  leave_out_other_stands(reader, *rows);
  const auto rules = rule_version_of(data);
  if (!rules) return rules.error();
  Packet packet{.reader = reader,
                .tract = data.tract,
                .made_on = to_text(options.today),
                .rule_versions =
                    *rules + (options.table_versions.empty() ? "" : ", ") + options.table_versions,
                .log_rule = std::string(name_of(options.log_rule)),
                .volumes_by = volume_words(*rows, tables, reader),
                .lines = data.lines};
  fill_lists(packet, *rows);
  if (!has_work(packet)) return nothing_for(reader);
  const auto seasons = windows_of(tables.seasons, data.tract.state, data.tract.county);
  packet.totals = totals_of(packet.cut);
  if (reader != PacketReader::firewood) packet.totals_if_cleared = totals_of(packet.trained);
  packet.by_species = totals_by(packet.cut, [](const PacketTree& tree) { return tree.species; });
  packet.by_stand = totals_by(packet.cut, [](const PacketTree& tree) { return tree.stand; });
  packet.stands = stands_listed(data, *rows);
  packet.emergency = emergency_facts(data.tract);
  StartFacts start = start_facts(data, packet, tables.cautions);
  if (options.work_day) start.held_by = seasons_held(seasons, *options.work_day);
  packet.before_you_start = before_you_start(start);
  packet.job_cautions = cautions_of_job(data, packet, tables, seasons, options);
  packet.look_for = hazards_to_look_for(tables.cautions);
  packet.seasons = season_notes(seasons);
  packet.season_advice =
      season_advice(seasons, !data.tract.state.empty(), options.work_day, options.today);
  if (reader == PacketReader::owner && tables.release != nullptr) {
    auto owner = owner_part(data, packet, tables, options);
    if (!owner) return owner.error();
    packet.owner = std::make_shared<const OwnerPart>(*std::move(owner));
  }
  packet.list_csv = marked_list_csv(packet);
  packet.list_sha256 = sha256_hex(packet.list_csv);
  return packet;
}

}  // namespace oaklight
