#include "core/store/field_reader.hpp"

#include "core/store/gpkg_geometry.hpp"

namespace oaklight::store {
namespace {

const Value kNull;

template <class T>
using MakeReading = Result<T> (*)(std::int32_t, UnitSystem);

template <class T>
bool make_reading(const Value& cell, UnitSystem system, MakeReading<T> make,
                  std::optional<T>& out) {
  out.reset();
  if (is_null(cell)) return true;
  int count = 0;
  if (!from_value(cell, count)) return false;
  const auto made = make(count, system);
  if (made) out = *made;
  return made.has_value();
}

}  // namespace

void FieldReader::note(std::string_view column) {
  if (error_) return;
  error_ = Error{ErrorCode::damaged, "A record holds a value that Oaklight cannot read.",
                 table_.name() + "/" + table_.uid_of(row_) + "/" + std::string(column),
                 "Keep this file; rescue what it holds, or work on from your newest copy."};
}

const Value& FieldReader::cell(std::string_view column) {
  const auto i = table_.index_of(column, next_);
  if (!i) {
    note(column);
    return kNull;
  }
  next_ = *i + 1;
  return row_[*i];
}

void FieldReader::units(UnitSystem& out) {
  const Value* cell = table_.units_of(row_);
  const auto* word = cell == nullptr ? nullptr : std::get_if<std::string>(cell);
  if (word != nullptr && *word == "us") {
    out = UnitSystem::us;
  } else if (word != nullptr && *word == "metric") {
    out = UnitSystem::metric;
  } else {
    note("units");
  }
}

void FieldReader::reading(std::string_view column, std::optional<Dbh>& out) {
  const Value& count = cell(column);
  UnitSystem system = UnitSystem::us;
  if (!is_null(count)) units(system);
  if (!make_reading<Dbh>(count, system, &Dbh::from_tenths, out)) note(column);
}

void FieldReader::reading(std::string_view column, Dbh& out) {
  std::optional<Dbh> read;
  reading(column, read);
  if (read) {
    out = *read;
  } else {
    note(column);
  }
}

void FieldReader::reading(std::string_view column, std::optional<StumpDiameter>& out) {
  const Value& count = cell(column);
  UnitSystem system = UnitSystem::us;
  if (!is_null(count)) units(system);
  if (!make_reading<StumpDiameter>(count, system, &StumpDiameter::from_tenths, out)) note(column);
}

void FieldReader::reading(std::string_view column, std::optional<TapedLength>& out) {
  const Value& count = cell(column);
  UnitSystem system = UnitSystem::us;
  if (!is_null(count)) units(system);
  if (!make_reading<TapedLength>(count, system, &TapedLength::from_hundredths, out)) note(column);
}

void FieldReader::tenths(std::string_view column, std::optional<Degrees>& out) {
  std::optional<int> count;
  field(column, count);
  out = count ? std::optional(Degrees{*count / 10.0}) : std::nullopt;
}

const Blob* FieldReader::shape_bytes() {
  const Value& value = cell("geom");
  if (is_null(value)) return nullptr;
  const auto* blob = std::get_if<Blob>(&value);
  if (blob == nullptr) note("geom");
  return blob;
}

void FieldReader::shape(std::optional<Position>& out) {
  out.reset();
  const Blob* blob = shape_bytes();
  if (blob == nullptr) return;
  const auto place = point_from_blob(blob->bytes);
  place ? void(out = *place) : note("geom");
}

void FieldReader::shape(std::optional<Polygon>& out) {
  out.reset();
  const Blob* blob = shape_bytes();
  if (blob == nullptr) return;
  const auto polygon = polygon_from_blob(blob->bytes);
  polygon ? void(out = *polygon) : note("geom");
}

void FieldReader::shape(std::vector<Position>& out) {
  out.clear();
  const Blob* blob = shape_bytes();
  if (blob == nullptr) return;
  const auto line = line_from_blob(blob->bytes);
  line ? void(out = *line) : note("geom");
}

Status FieldReader::finish() {
  if (error_) return *error_;
  return Done{};
}

}  // namespace oaklight::store
