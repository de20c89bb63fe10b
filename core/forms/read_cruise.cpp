#include "core/forms/read_cruise.hpp"

#include "core/forms/import_job.hpp"

namespace oaklight {
namespace {

/// One file as a table; a file that was not brought, or that the form does not know, has no rows.
FilledTable table_of(const std::optional<NamedText>& file, CruiseFile kind, const char* record,
                     const Form& form, const SpeciesNames& names, FaultList& faults) {
  const RecordForm* by = form.find_record(record);
  if (!file || !by) return {};
  return FilledTable::read(kind, *file, form, *by, names, faults);
}

}  // namespace

CruiseImport read_cruise(const CruiseFiles& files, const Form& form, const SpeciesTable& species,
                         const TractData& existing, IdSource& ids) {
  const SpeciesNames names(species);
  ImportJob job{existing, ids};
  const auto read = [&](const std::optional<NamedText>& file, CruiseFile kind, const char* record) {
    return table_of(file, kind, record, form, names, job.faults);
  };
  job.tables.tract = read(files.tract, CruiseFile::tract, "tract");
  job.tables.stands = read(files.stands, CruiseFile::stands, "stands");
  job.tables.plots = read(files.plots, CruiseFile::plots, "plots");
  job.tables.trees = read(files.trees, CruiseFile::trees, "trees");
  job.tables.regeneration = read(files.regeneration, CruiseFile::regeneration, "regeneration");
  job.tables.crop_trees = read(files.crop_trees, CruiseFile::crop_trees, "crop_trees");
  import_tract(job);
  import_stands(job);
  import_plots(job);
  import_trees(job);
  import_regeneration(job);
  check_plot_status(job);
  import_cards(job);
  if (files.map) import_map(job, *files.map);
  check_positions(job);
  return {std::move(job.data), job.faults.told()};
}

}  // namespace oaklight
