// Files that a user may edit: the form, and the tables of species, cautions and seasons.
#include "core/base/utf8.hpp"
#include "core/forms/check_value.hpp"
#include "core/forms/sheet.hpp"
#include "core/release/cautions.hpp"
#include "core/release/season.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;

void use_seasons(const std::vector<SeasonWindow>& table) {
  const Day day{std::chrono::year{2028}, std::chrono::February, std::chrono::day{29}};
  for (const char* state : {"", "OH", "WV"}) {
    const auto windows = windows_of(table, state, "Anycounty");
    const auto clear = next_clear_day(windows, day);
    for (const SeasonWindow& window : windows) {
      require(!span_text(window).empty(), "a window has a span");
      require(!clear || !holds_on(window, *clear), "a clear day is clear");
    }
  }
}

void use_species(const SpeciesTable& table) {
  const SpeciesNames names(table);
  for (const Species& species : table.rows()) {
    const auto found = names.find(std::to_string(species.code.fia));
    require(found.has_value() && *found == species.code, "a species is found by its code");
    require(!names.common_name(species.code).empty(), "a species has a name");
  }
}

}  // namespace

void fuzz_form(std::string_view bytes) {
  const auto form = read_form(bytes, "tally.form.json");
  if (!form) return require_told(form.error());
  const auto again = read_form(bytes, "tally.form.json");
  require(again.has_value() && *again == *form, "a form reads alike twice");
  for (const SheetPart part : kSheetParts) (void)printed_fields(*form, part);
  // A form that is accepted judges a cruise: faults are told, and nothing falls over.
  SetClock clock(kMay2026);
  IdSource ids(clock, same_bits());
  const CruiseImport judged = read_cruise(good_files(), *form, species_table(), {}, ids);
  require_told(judged.faults);
  for (const RecordForm& record : form->records) {
    for (const Field& field : record.fields) {
      for (const char* typed : {"", "7", "-1.25", "yes", "white oak", "2026-05-04", "x|y"}) {
        const auto value = check_value(*form, field, UnitSystem::us, typed, species_names());
        if (!value) require_told(value.error());
      }
    }
  }
}

void fuzz_tables(std::string_view bytes) {
  const auto files = files_of(bytes);
  const SpeciesRead species = read_species({"species.csv", form_in(files, "species/species.csv")});
  require_told(species.faults);
  if (species.faults.empty()) {
    use_species(species.table);
    const TallySetsRead sets = read_tally_sets(
        {"species_sets.csv", form_in(files, "species/species_sets.csv")}, species.table);
    require_told(sets.faults);
    for (const TallySet& set : sets.sets) {
      for (const SpeciesCode code : set.species) {
        require(!sets.faults.empty() || species.table.find(code) != nullptr, "a set has species");
      }
    }
  }
  const auto cautions = CautionTable::read(form_in(files, "hazard_cautions.csv"));
  if (!cautions) require_told(cautions.error());
  if (cautions) {
    for (const CautionRule& rule : caution_rules()) {
      require(!cautions->entry(rule.code).caution.text.empty(), "every caution has its words");
    }
  }
  const auto seasons = read_seasons(form_in(files, "season_windows.csv"));
  if (!seasons) return require_told(seasons.error());
  use_seasons(*seasons);
}

}  // namespace oaklight::test
