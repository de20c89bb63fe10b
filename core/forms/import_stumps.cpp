#include <algorithm>

#include "core/forms/import_job.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

/// Trees of the walk by tag: of the tract, and of this import.
using Walk = std::map<std::string, WalkTreeId, std::less<>>;

Walk walk_of(const ImportJob& job) {
  Walk walk;
  for (const WalkTree& tree : job.existing.walk_trees) walk.insert_or_assign(tree.tag, tree.id);
  for (const WalkTree& tree : job.data.walk_trees) walk.insert_or_assign(tree.tag, tree.id);
  return walk;
}

/// The tree that the row names; nothing, and a fault, when nothing wears that tag.
std::optional<WalkTreeId> find_tree(ImportJob& job, const FilledRow& row, const Walk& walk) {
  const std::string tag = row.text("tag");
  if (tag.empty()) return std::nullopt;
  if (const auto found = walk.find(tag); found != walk.end()) return found->second;
  std::vector<std::string_view> tags;
  if (!job.faults.hopeless(CruiseFile::stumps)) {
    for (const auto& [other, id] : walk) tags.push_back(other);
  }
  row.fault(job.faults, "tag", ErrorCode::unknown_reference,
            "No tree of the marking walk wears tag \"" + tag + "\".",
            did_you_mean(near_words(tag, tags),
                         "Correct it, or leave it empty for a stump without a tag."));
  return std::nullopt;
}

std::optional<StumpDiameter> diameter_of(const FilledRow& row, std::string_view field) {
  const auto tape = row.get<Dbh>(field);
  if (!tape) return std::nullopt;
  const auto diameter = StumpDiameter::from_tenths(tape->tenths(), tape->system());
  return diameter ? std::optional(*diameter) : std::nullopt;
}

void check_diameters(const FilledRow& row, FaultList& faults) {
  const auto over = row.get<Dbh>("over_bark");
  const auto under = row.get<Dbh>("under_bark");
  if (!over || !under || !is_thinner(*over, *under)) return;
  row.fault(faults, "under_bark", ErrorCode::contradiction,
            "The stump is thicker without its bark than with it.",
            "Change the two, or empty the one that was not read.");
}

bool same(const Stump& a, const Stump& b) {
  return a.tree == b.tree && a.finding == b.finding && a.seen_on == b.seen_on && a.note == b.note &&
         a.species == b.species && a.over_bark == b.over_bark && a.under_bark == b.under_bark &&
         a.height == b.height && a.wound == b.wound && a.position == b.position;
}

Stump stump_of(const FilledRow& row, Finding finding, std::optional<WalkTreeId> tree) {
  Stump stump;
  stump.tree = tree;
  stump.finding = finding;
  stump.species = row.get<SpeciesCode>("species");
  stump.over_bark = diameter_of(row, "over_bark");
  stump.under_bark = diameter_of(row, "under_bark");
  stump.height = row.get<TapedLength>("stump_height");
  stump.wound = row.word<Wound>("wound");
  stump.wound_place = row.word<WoundPlace>("wound_place");
  stump.position = row.position("lat", "lon");
  stump.seen_on = row.text("date");
  stump.note = row.text("note");
  return stump;
}

void import_stump(ImportJob& job, const FilledRow& row, const Walk& walk) {
  check_diameters(row, job.faults);
  const auto finding = row.word<Finding>("finding");
  const auto tree = find_tree(job, row, walk);
  const auto stand = job.find_stand(row);
  if (!finding) return;
  Stump stump = stump_of(row, *finding, tree);
  stump.stand = stand;
  if (stump.position) job.add_point(row, "lat", *stump.position);
  const bool known =
      stump.tree && std::ranges::any_of(job.existing.stumps,
                                        [&](const Stump& other) { return same(other, stump); });
  if (known) {
    row.fault(job.faults, "tag", ErrorCode::duplicate,
              "This finding of tag \"" + row.text("tag") + "\" is in the tract already.",
              "Take the row out.");
    return;
  }
  stump.id = job.ids.next_id<StumpTag>();
  job.data.stumps.push_back(std::move(stump));
}

}  // namespace

void import_stumps(ImportJob& job, const NamedText& file) {
  if (!job.tables.stumps.present()) return;  // the form does not know it, as was told
  if (!job.tables.stumps.index("finding")) {
    job.faults.add(
        CruiseFile::stumps, 1,
        {ErrorCode::missing_rule, "The tract's form has no field for what was found.", file.name,
         "Add the field finding to its record, as the program came with it."});
    return;
  }
  const Walk walk = walk_of(job);
  for (const auto& row : job.tables.stumps.rows()) {
    import_stump(job, FilledRow(job.tables.stumps, row), walk);
  }
}

}  // namespace oaklight
