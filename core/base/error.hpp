#pragma once

#include <string>
#include <string_view>

namespace oaklight {

/// What went wrong, as a stable name. Code and tests branch on this, never on the text.
enum class ErrorCode {
  // values that a person typed or a file held
  not_a_number,
  not_a_choice,
  out_of_range,
  missing_value,
  contradiction,
  unknown_species,
  duplicate,
  unknown_reference,
  // files of text
  bad_csv,
  bad_json,
  bad_geometry,
  import_refused,
  // samples and figures
  too_few_plots,
  level_out_of_range,
  no_data,
  outside_table,
  mixed_designs,
  // the tract file
  cannot_open,
  not_a_tract_file,
  file_too_new,
  damaged,
  disk_full,
  io_failed,
  busy,
  read_only,
  nothing_to_undo,
  // rules and hand-off
  missing_rule,
  nothing_marked,
  cannot_write,
};

/// The stable spelling of a code, as it appears in --json output ("out_of_range").
std::string_view name_of(ErrorCode code);

/// One failure, told so that the person who met it can mend it.
struct Error {
  ErrorCode code;
  std::string what;  ///< one plain sentence: "DBH 412.0 in is larger than any tree here."
  std::string
      where;  ///< path of the place, last part is the field: "trees.csv:14:dbh" or "plot/7/dbh"
  std::string fix;  ///< the next step: "Check the decimal point; 41.2?"

  friend bool operator==(const Error&, const Error&) = default;
};

/// "where: what fix" on one line, for logs and terminals. Empty parts are left out.
std::string to_text(const Error& error);

}  // namespace oaklight
