#include "core/store/gpkg_functions.hpp"

#include <sqlite3.h>

#include <array>
#include <optional>

#include "core/store/gpkg_geometry.hpp"

namespace oaklight::store {
namespace {

std::optional<Box> argument_box(sqlite3_value* value) {
  if (sqlite3_value_type(value) != SQLITE_BLOB) return std::nullopt;
  const auto* bytes = static_cast<const char*>(sqlite3_value_blob(value));
  return box_of({bytes, static_cast<std::size_t>(sqlite3_value_bytes(value))});
}

template <double Box::*kEdge>
void st_edge(sqlite3_context* context, int, sqlite3_value** values) {
  if (const auto box = argument_box(values[0])) {
    sqlite3_result_double(context, (*box).*kEdge);
  } else {
    sqlite3_result_null(context);
  }
}

void st_is_empty(sqlite3_context* context, int, sqlite3_value** values) {
  if (sqlite3_value_type(values[0]) == SQLITE_NULL) {
    sqlite3_result_null(context);
  } else {
    sqlite3_result_int(context, argument_box(values[0]) ? 0 : 1);
  }
}

}  // namespace

int register_gpkg_functions(sqlite3* db) {
  struct Function {
    const char* name;
    void (*call)(sqlite3_context*, int, sqlite3_value**);
  };
  constexpr std::array<Function, 5> kFunctions = {{{"ST_IsEmpty", st_is_empty},
                                                   {"ST_MinX", st_edge<&Box::min_x>},
                                                   {"ST_MaxX", st_edge<&Box::max_x>},
                                                   {"ST_MinY", st_edge<&Box::min_y>},
                                                   {"ST_MaxY", st_edge<&Box::max_y>}}};
  for (const Function& function : kFunctions) {
    const int code = sqlite3_create_function_v2(
        db, function.name, 1, SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS, nullptr,
        function.call, nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return code;
  }
  return SQLITE_OK;
}

}  // namespace oaklight::store
