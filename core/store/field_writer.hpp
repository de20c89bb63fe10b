#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/utf8.hpp"
#include "core/store/field_values.hpp"
#include "core/store/record_table.hpp"
#include "core/units/reading.hpp"

namespace oaklight::store {

/// Puts the fields of a record into a row; the first field that cannot be stored ends up in
/// finish(). Columns that are not named keep what the row had.
class FieldWriter {
 public:
  static constexpr bool kWrites = true;

  /// base: the row as the file has it, or all NULL.
  FieldWriter(const RecordTable& table, Row base);

  template <class T>
  void field(std::string_view column, const T& value) {
    put(column, to_value(value));
  }
  void field(std::string_view column, const std::vector<std::string>& items);

  /// The unit system of the row; every reading in it must share it.
  void units(UnitSystem system);
  void reading(std::string_view column, const Dbh& dbh);
  void reading(std::string_view column, const StumpDiameter& diameter);
  void reading(std::string_view column, const TapedLength& length);
  template <class T>
  void reading(std::string_view column, const std::optional<T>& value) {
    if (value) {
      reading(column, *value);
    } else {
      put(column, Value{});
    }
  }
  /// An angle read to a tenth of a degree.
  void tenths(std::string_view column, const std::optional<Degrees>& angle);

  void shape(const std::optional<Position>& place);
  void shape(const std::optional<Polygon>& polygon);
  void shape(const std::vector<Position>& line);  ///< an empty one is stored as not known

  Result<Row> finish();

 private:
  void put(std::string_view column, Value value);
  void put_shape(const Result<std::string>& blob);
  void refuse(ErrorCode code, std::string_view column, std::string what, std::string fix);

  const RecordTable& table_;
  Row row_;
  std::size_t next_ = 0;  ///< the column after the one that was put last
  std::optional<UnitSystem> units_;
  std::optional<Error> error_;
};

}  // namespace oaklight::store
