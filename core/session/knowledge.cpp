#include "core/session/knowledge.hpp"

#include "core/base/sha256.hpp"
#include "core/forms/read_form.hpp"

namespace oaklight {
namespace {

/// The tract's own copy of a form, with the name by which messages call it.
Result<NamedText> form_file(const TractStore& store, const std::string& path) {
  auto text = store.form_text(path);
  if (!text) return text.error();
  return NamedText{path.substr(path.rfind('/') + 1), *std::move(text)};
}

/// Enough of a checksum to tell an edited table from the one that came with the program.
std::string short_sha(const std::string& text) { return sha256_hex(text).substr(0, 8); }

}  // namespace

Result<TractKnowledge> read_knowledge(const TractStore& store) {
  const auto form = form_file(store, "tally.form.json");
  if (!form) return form.error();
  const auto species = form_file(store, "species/species.csv");
  if (!species) return species.error();
  const auto sets = form_file(store, "species/species_sets.csv");
  if (!sets) return sets.error();
  const auto food = form_file(store, "species/mast_rank.csv");
  if (!food) return food.error();
  const auto rules = form_file(store, "release.rule.json");
  if (!rules) return rules.error();
  const auto cautions = form_file(store, "hazard_cautions.csv");
  if (!cautions) return cautions.error();
  const auto seasons = form_file(store, "season_windows.csv");
  if (!seasons) return seasons.error();
  const auto local = form_file(store, "local_volume.csv");
  const bool has_local = local.has_value();  // older files have none
  if (!has_local && local.error().code != ErrorCode::missing_rule) return local.error();

  auto read = read_form(form->text, form->name);
  if (!read) return read.error();
  const auto table = read_species(*species);
  if (!table.faults.empty()) return table.faults.front();
  auto tally_sets = read_tally_sets(*sets, table.table);
  if (!tally_sets.faults.empty()) return tally_sets.faults.front();
  auto release = release_knowledge(table.table, rules->text, food->text);
  if (!release) return release.error();
  auto caution_table = CautionTable::read(cautions->text);
  if (!caution_table) return caution_table.error();
  auto windows = read_seasons(seasons->text);
  if (!windows) return windows.error();
  LocalVolumes volumes;
  if (has_local) {
    auto read_table = read_volumes(*local, table.table);
    if (!read_table.faults.empty()) return read_table.faults.front();
    volumes = std::move(read_table.volumes);
  }
  return TractKnowledge{
      *std::move(read),
      std::move(tally_sets.sets),
      *std::move(release),
      *std::move(caution_table),
      *std::move(windows),
      std::move(volumes),
      "cautions " + short_sha(cautions->text) + ", seasons " + short_sha(seasons->text)};
}

}  // namespace oaklight
