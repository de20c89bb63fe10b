#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/forms/read_cruise.hpp"
#include "core/forms/read_form.hpp"
#include "core/forms/read_species.hpp"
#include "core/forms/species_names.hpp"

namespace oaklight::test {

/// A file of forms/, as it is built into the program.
NamedText form_file(std::string_view path);
const Form& tally_form();
const SpeciesTable& species_table();
const SpeciesNames& species_names();

/// An invented tract with one of everything and nothing wrong.
CruiseFiles good_files();

/// Reads with ids that are the same on each run, unless the seed differs.
CruiseImport import_files(const CruiseFiles& files, const TractData& existing = {},
                          std::uint64_t seed = 1);

/// The file of this name among the files.
NamedText& file_of(CruiseFiles& files, std::string_view name);

/// Replaces the only occurrence of a text; a test that finds none, or two, is wrong and fails.
void replace_once(std::string& text, std::string_view from, std::string_view to);

/// "contradiction trees.csv:3:dbh_in" of each fault.
std::vector<std::string> short_faults(const std::vector<Error>& faults);

/// Every record in words, ids replaced by what they stand for, so that two imports can be compared.
std::string dump(const TractData& data);

}  // namespace oaklight::test
