#include "core/release/mast.hpp"

#include <optional>
#include <utility>

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr std::int64_t kTopRank = 10;
constexpr int kRanksPerSpeciesRank = 2;  // the species table ranks 0 .. 5

enum Column : std::size_t { fia_code, when, kind, rank, always_keep, note, column_count };

Error fault(ErrorCode code, const std::string& file, int line, std::string what, std::string fix) {
  return {code, std::move(what), file + ":" + std::to_string(line), std::move(fix)};
}

FoodKind kind_of(MastClass mast) {
  switch (mast) {
    case MastClass::hard:
      return FoodKind::hard;
    case MastClass::soft:
      return FoodKind::soft;
    case MastClass::none:
      break;
  }
  return FoodKind::none;
}

}  // namespace

Result<FoodTable> FoodTable::from_csv(std::string_view text, std::string_view file) {
  const std::string name(file);
  const auto rows = read_csv(text, file);
  if (!rows) return rows.error();
  FoodTable table;
  bool header = true;
  for (const CsvRow& row : *rows) {
    if (row.cells.size() != column_count) {
      return fault(ErrorCode::bad_csv, name, row.line, "A row of food ranks has six cells.",
                   "fia_code,when,kind,rank,always_keep,note");
    }
    if (std::exchange(header, false)) continue;
    const auto code = whole_from_text(row.cells[fia_code]);
    const auto points = whole_from_text(row.cells[rank]);
    const auto food_kind = from_word<FoodKind>(row.cells[kind]);
    const std::string& condition = row.cells[when];
    const bool known = condition.empty() || condition == "beech_bark" || condition == "grouse";
    if (!code || !points || !food_kind || !known) {
      return fault(ErrorCode::not_a_choice, name, row.line, "A cell holds no known value.",
                   "Numbers for fia_code and rank; beech_bark, grouse or nothing for when; hard, "
                   "soft, cover, bud, seed, den or none for kind.");
    }
    if (*points < 0 || *points > kTopRank) {
      return fault(ErrorCode::out_of_range, name, row.line, "A food rank lies between 0 and 10.",
                   "Give the best food 10.");
    }
    const When w = condition.empty()           ? When::always
                   : condition == "beech_bark" ? When::beech_bark
                                               : When::grouse;
    const Food food{*food_kind, static_cast<int>(*points), row.cells[always_keep] == "1"};
    if (!table.rows_.emplace(std::pair{SpeciesCode{static_cast<int>(*code)}, w}, food).second) {
      return fault(ErrorCode::duplicate, name, row.line, "This species is ranked twice.",
                   "Keep one row.");
    }
  }
  return table;
}

Food FoodTable::of(const Species& species, Conditions conditions, bool grouse) const {
  const auto row = [&](When w) -> std::optional<Food> {
    const auto it = rows_.find({species.code, w});
    return it == rows_.end() ? std::nullopt : std::optional(it->second);
  };
  if (conditions.has(Condition::beech_bark)) {
    if (const auto food = row(When::beech_bark)) return *food;
  }
  if (grouse) {
    if (const auto food = row(When::grouse)) return *food;
  }
  if (const auto food = row(When::always)) return *food;
  return {kind_of(species.mast), kRanksPerSpeciesRank * species.mast_rank, false};
}

}  // namespace oaklight
