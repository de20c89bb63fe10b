#include "core/release/cautions.hpp"

#include <algorithm>
#include <array>
#include <cassert>

#include "core/base/csv_text.hpp"
#include "core/release/rules.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kFile = "hazard_cautions.csv";
constexpr std::array<std::string_view, 8> kColumns = {
    "code", "observation", "severity", "caution", "applies_when", "source", "evidence", "read_on"};

Result<CautionEntry> read_entry(const CsvTable& table, std::size_t row) {
  for (const std::string_view column : kColumns) {
    if (!table.cell(row, column).empty()) continue;
    return Error{ErrorCode::missing_value, "This cell is empty.", table.place(row, column),
                 "Fill it; a caution is printed with its text and how it is founded."};
  }
  const std::string& code = table.cell(row, "code");
  const auto rules = caution_rules();
  if (std::none_of(rules.begin(), rules.end(),
                   [&](const CautionRule& rule) { return rule.code == code; })) {
    return Error{ErrorCode::not_a_choice, "No rule says when " + code + " applies.",
                 table.place(row, "code"), "Take the row out; the set of codes is fixed."};
  }
  const auto severity = from_word<Severity>(table.cell(row, "severity"));
  if (!severity) {
    return Error{ErrorCode::not_a_choice,
                 "\"" + table.cell(row, "severity") + "\" is not a severity.",
                 table.place(row, "severity"), "Write stop, extra_care or note."};
  }
  if (!from_word<Evidence>(table.cell(row, "evidence"))) {
    return Error{ErrorCode::not_a_choice,
                 "\"" + table.cell(row, "evidence") + "\" does not say how the row is founded.",
                 table.place(row, "evidence"), "Write retrieved, from memory or common practice."};
  }
  return CautionEntry{{code, *severity, table.cell(row, "caution"), table.cell(row, "evidence")},
                      table.cell(row, "observation"),
                      table.cell(row, "applies_when"),
                      table.cell(row, "source"),
                      table.cell(row, "read_on")};
}

bool has_code(const std::vector<CautionEntry>& entries, std::string_view code) {
  return std::any_of(entries.begin(), entries.end(),
                     [&](const CautionEntry& entry) { return entry.caution.code == code; });
}

}  // namespace

Result<CautionTable> CautionTable::read(std::string_view csv) {
  const auto table = CsvTable::read(csv, kFile, kColumns);
  if (!table) return table.error();
  CautionTable cautions;
  for (std::size_t row = 0; row < table->size(); ++row) {
    auto entry = read_entry(*table, row);
    if (!entry) return entry.error();
    if (has_code(cautions.entries_, entry->caution.code)) {
      return Error{ErrorCode::duplicate, entry->caution.code + " has two rows.",
                   table->place(row, "code"), "Keep one of them."};
    }
    cautions.entries_.push_back(std::move(*entry));
  }
  for (const CautionRule& rule : caution_rules()) {
    if (has_code(cautions.entries_, rule.code)) continue;
    return Error{ErrorCode::missing_value, "The row of " + std::string(rule.code) + " is missing.",
                 std::string(kFile),
                 "Put it back; make it a note if it does not bind where you are."};
  }
  return cautions;
}

const CautionEntry& CautionTable::entry(std::string_view code) const {
  const auto found = std::find_if(entries_.begin(), entries_.end(), [&](const CautionEntry& entry) {
    return entry.caution.code == code;
  });
  assert(found != entries_.end());
  return *found;
}

std::string CautionTable::oldest_reading() const {
  std::string oldest;
  for (const CautionEntry& entry : entries_) {
    if (oldest.empty() || entry.read_on < oldest) oldest = entry.read_on;
  }
  return oldest;
}

}  // namespace oaklight
