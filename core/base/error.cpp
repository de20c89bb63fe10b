#include "core/base/error.hpp"

namespace oaklight {

std::string_view name_of(ErrorCode code) {
  switch (code) {
    case ErrorCode::not_a_number:
      return "not_a_number";
    case ErrorCode::not_a_choice:
      return "not_a_choice";
    case ErrorCode::out_of_range:
      return "out_of_range";
    case ErrorCode::missing_value:
      return "missing_value";
    case ErrorCode::contradiction:
      return "contradiction";
    case ErrorCode::unknown_species:
      return "unknown_species";
    case ErrorCode::duplicate:
      return "duplicate";
    case ErrorCode::unknown_reference:
      return "unknown_reference";
    case ErrorCode::bad_csv:
      return "bad_csv";
    case ErrorCode::bad_json:
      return "bad_json";
    case ErrorCode::bad_geometry:
      return "bad_geometry";
    case ErrorCode::import_refused:
      return "import_refused";
    case ErrorCode::too_few_plots:
      return "too_few_plots";
    case ErrorCode::level_out_of_range:
      return "level_out_of_range";
    case ErrorCode::no_data:
      return "no_data";
    case ErrorCode::outside_table:
      return "outside_table";
    case ErrorCode::mixed_designs:
      return "mixed_designs";
    case ErrorCode::cannot_open:
      return "cannot_open";
    case ErrorCode::not_a_tract_file:
      return "not_a_tract_file";
    case ErrorCode::file_too_new:
      return "file_too_new";
    case ErrorCode::damaged:
      return "damaged";
    case ErrorCode::disk_full:
      return "disk_full";
    case ErrorCode::io_failed:
      return "io_failed";
    case ErrorCode::busy:
      return "busy";
    case ErrorCode::read_only:
      return "read_only";
    case ErrorCode::nothing_to_undo:
      return "nothing_to_undo";
    case ErrorCode::missing_rule:
      return "missing_rule";
    case ErrorCode::nothing_marked:
      return "nothing_marked";
    case ErrorCode::cannot_write:
      return "cannot_write";
  }
  return "unknown";
}

std::string to_text(const Error& error) {
  std::string text;
  if (!error.where.empty()) text += error.where + ": ";
  text += error.what;
  if (!error.fix.empty()) text += " " + error.fix;
  return text;
}

}  // namespace oaklight
