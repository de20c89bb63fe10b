#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/base/number_text.hpp"
#include "core/forms/import_job.hpp"

namespace oaklight {
namespace {

using Count = std::variant<BranchTipCount, TimedCount>;

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

std::string shown(const Count& count) {
  if (const auto* timed = std::get_if<TimedCount>(&count)) return std::to_string(timed->n30);
  return number_text(std::get<BranchTipCount>(count).per_tip, 2);
}

/// The field that tells this kind of count.
const char* field_of(const Count& count) {
  return std::holds_alternative<TimedCount>(count) ? "n30" : "per_tip";
}

/// Reads the rows of acorns.csv one by one.
class AcornRows {
 public:
  explicit AcornRows(ImportJob& job) : job_(job) {
    // Those of the import come last: they are the trees as they will be.
    for (const WalkTree& tree : job.existing.walk_trees) trees_.insert_or_assign(tree.tag, &tree);
    for (const WalkTree& tree : job.data.walk_trees) trees_.insert_or_assign(tree.tag, &tree);
    for (const AcornCount& count : job.existing.acorn_counts) known_.emplace(key_of(count), &count);
  }

  void add(const FilledRow& row) {
    const std::string tag = row.text("tag");
    const auto year = row.get<std::int64_t>("year");
    check_day(row, year);
    if (!row.given("per_tip") && !row.given("n30")) {
      row.fault(job_.faults, "per_tip", ErrorCode::missing_value, "The row has no count of acorns.",
                "Fill in per_tip or n30; where somebody looked and saw none it is 0. Leave the row "
                "out where nobody counted.");
    }
    const WalkTree* tree = tag.empty() ? nullptr : tree_of(row, tag);
    if (tree == nullptr || !year) return;
    AcornCount count{{}, tree->id, static_cast<int>(*year), row.text("date"), {}, row.text("note")};
    if (const auto per_tip = row.get<double>("per_tip")) {
      const auto tips = row.get<std::int64_t>("tips");
      count.count =
          BranchTipCount{*per_tip, tips ? std::optional(static_cast<int>(*tips)) : std::nullopt};
      add(row, count);
    }
    if (const auto n30 = row.get<std::int64_t>("n30")) {
      count.count = TimedCount{static_cast<int>(*n30)};
      add(row, count);
    }
  }

 private:
  using Key = std::tuple<WalkTreeId, int, std::size_t>;  // tree, year, method
  static Key key_of(const AcornCount& count) {
    return {count.tree, count.year, count.count.index()};
  }

  void check_day(const FilledRow& row, std::optional<std::int64_t> year) {
    const std::string date = row.text("date");
    if (!year || date.empty() || date.substr(0, 4) == std::to_string(*year)) return;
    row.fault(job_.faults, "date", ErrorCode::contradiction,
              "The day " + date + " is not in the year " + std::to_string(*year) + ".",
              "Correct one of the two.");
  }

  /// The oak that wears the tag; what is wrong with it is told.
  const WalkTree* tree_of(const FilledRow& row, const std::string& tag) {
    const auto tree = trees_.find(tag);
    if (tree == trees_.end()) {
      row.fault(job_.faults, "tag", ErrorCode::unknown_reference,
                "No tree of the marking walk wears tag " + quoted(tag) + ".",
                "Correct the tag, or bring the tree's card in crop_trees.csv first.");
      return nullptr;
    }
    const Species* species = job_.species.find(tree->second->facts.species);
    if (species != nullptr && !species->is_oak()) {
      row.fault(job_.faults, "tag", ErrorCode::contradiction,
                "Tree " + quoted(tag) + " is a " + species->common_name + ", and bears no acorns.",
                "Correct the tag, or the tree's species.");
      return nullptr;
    }
    return tree->second;
  }

  void add(const FilledRow& row, AcornCount& count) {
    const auto [line, fresh] = lines_.emplace(key_of(count), row.line());
    if (!fresh) {
      row.fault(job_.faults, field_of(count.count), ErrorCode::duplicate,
                "This tree has a count of this year on line " + std::to_string(line->second) +
                    " already.",
                "Keep one of the two.");
      return;
    }
    const auto known = known_.find(key_of(count));
    if (known == known_.end()) {
      count.id = job_.ids.next_id<AcornCountTag>();
      job_.data.acorn_counts.push_back(count);
    } else if (known->second->count != count.count) {
      row.fault(job_.faults, field_of(count.count), ErrorCode::contradiction,
                "The tract has another count of this tree in this year: " +
                    shown(known->second->count) + ".",
                "Correct this cell, or take the row out.");
    }
  }

  ImportJob& job_;
  std::map<std::string, const WalkTree*, std::less<>> trees_;
  std::map<Key, const AcornCount*> known_;
  std::map<Key, int> lines_;
};

/// Whether the tract has this year of this group already; another crop for it is told.
bool is_known(ImportJob& job, const FilledRow& row, const AcornYear& year) {
  const auto& known = job.existing.acorn_years;
  const auto same = std::ranges::find_if(
      known, [&](const AcornYear& k) { return k.group == year.group && k.year == year.year; });
  if (same == known.end()) return false;
  if (same->crop != year.crop) {
    row.fault(job.faults, "crop", ErrorCode::contradiction,
              "The tract calls this year of this group " + std::string(word_of(same->crop)) + ".",
              "Correct this cell, or take the row out.");
  }
  return true;
}

}  // namespace

void import_acorns(ImportJob& job) {
  AcornRows rows(job);
  for (const auto& row : job.tables.acorns.rows()) rows.add(FilledRow(job.tables.acorns, row));
}

void import_acorn_years(ImportJob& job) {
  std::map<std::pair<OakGroup, std::int64_t>, int> lines;
  for (const auto& filled : job.tables.acorn_years.rows()) {
    const FilledRow row(job.tables.acorn_years, filled);
    const auto group = row.word<OakGroup>("oak_group");
    const auto year = row.get<std::int64_t>("year");
    const auto crop = row.word<AcornCrop>("crop");
    if (!group || !year || !crop) continue;
    const auto [line, fresh] = lines.emplace(std::pair(*group, *year), row.line());
    if (!fresh) {
      row.fault(job.faults, "year", ErrorCode::duplicate,
                "This year of this group is on line " + std::to_string(line->second) + " already.",
                "Keep one of the two.");
      continue;
    }
    AcornYear record{{}, *group, static_cast<int>(*year), *crop, row.text("source")};
    if (is_known(job, row, record)) continue;
    record.id = job.ids.next_id<AcornYearTag>();
    job.data.acorn_years.push_back(std::move(record));
  }
}

}  // namespace oaklight
