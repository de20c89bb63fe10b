#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/store/field_values.hpp"
#include "core/store/record_table.hpp"
#include "core/units/reading.hpp"

namespace oaklight::store {

/// Takes the fields of a record out of a row; the mirror of FieldWriter. What cannot be read ends
/// up in finish(), as damage.
class FieldReader {
 public:
  static constexpr bool kWrites = false;

  FieldReader(const RecordTable& table, const Row& row) : table_(table), row_(row) {}

  template <class T>
  void field(std::string_view column, T& out) {
    if (!from_value(cell(column), out)) note(column);
  }

  void units(UnitSystem& out);
  void reading(std::string_view column, Dbh& out);
  void reading(std::string_view column, std::optional<Dbh>& out);
  void reading(std::string_view column, std::optional<StumpDiameter>& out);
  void reading(std::string_view column, std::optional<TapedLength>& out);
  void tenths(std::string_view column, std::optional<Degrees>& out);

  void shape(std::optional<Position>& out);
  void shape(std::optional<Polygon>& out);
  void shape(std::vector<Position>& out);

  /// Says that a column cannot be read.
  void note(std::string_view column);
  Status finish();

 private:
  const Value& cell(std::string_view column);

  /// The bytes of the geometry; nothing for NULL and, noted, for anything else.
  const Blob* shape_bytes();

  const RecordTable& table_;
  const Row& row_;
  std::size_t next_ = 0;  ///< fields come in column order as a rule
  std::optional<Error> error_;
};

}  // namespace oaklight::store
