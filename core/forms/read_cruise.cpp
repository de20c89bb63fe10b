#include "core/forms/read_cruise.hpp"

#include "core/forms/import_job.hpp"
#include "core/forms/read_volumes.hpp"

namespace oaklight {
namespace {

/// One file as a table; a file that was not brought, or that the form does not know, has no rows.
FilledTable table_of(const std::optional<NamedText>& file, CruiseFile kind, const char* record,
                     const Form& form, const SpeciesNames& names, FaultList& faults) {
  const RecordForm* by = form.find_record(record);
  if (file && !by) {
    faults.add(kind, 0,
               {ErrorCode::import_refused, "The tract's own form does not know this kind of file.",
                file->name,
                "Leave the file out, or add its record to the form as the program came with it."});
  }
  if (!file || !by) return {};
  return FilledTable::read(kind, *file, form, *by, names, faults);
}

}  // namespace

CruiseImport read_cruise(const CruiseFiles& files, const Form& form, const SpeciesTable& species,
                         const TractData& existing, IdSource& ids) {
  const SpeciesNames names(species);
  ImportJob job{existing, ids, species};
  const auto read = [&](const std::optional<NamedText>& file, CruiseFile kind, const char* record) {
    return table_of(file, kind, record, form, names, job.faults);
  };
  job.tables.tract = read(files.tract, CruiseFile::tract, "tract");
  job.tables.stands = read(files.stands, CruiseFile::stands, "stands");
  job.tables.plots = read(files.plots, CruiseFile::plots, "plots");
  job.tables.trees = read(files.trees, CruiseFile::trees, "trees");
  job.tables.regeneration = read(files.regeneration, CruiseFile::regeneration, "regeneration");
  job.tables.crop_trees = read(files.crop_trees, CruiseFile::crop_trees, "crop_trees");
  job.tables.acorns = read(files.acorns, CruiseFile::acorns, "acorns");
  job.tables.acorn_years = read(files.acorn_years, CruiseFile::acorn_years, "acorn_years");
  import_tract(job);
  import_stands(job);
  import_plots(job);
  import_trees(job);
  import_regeneration(job);
  check_plot_status(job);
  import_cards(job);
  import_acorns(job);
  import_acorn_years(job);
  if (files.map) import_map(job, *files.map);
  if (files.stumps) {
    job.tables.stumps = read(files.stumps, CruiseFile::stumps, "stumps");
    import_stumps(job, *files.stumps);
  }
  if (files.local_volume) {
    for (Error& fault : read_volumes(*files.local_volume, species).faults) {
      job.faults.add(CruiseFile::local_volume, 0, std::move(fault));
    }
  }
  check_positions(job);
  return {std::move(job.data), job.faults.told()};
}

}  // namespace oaklight
