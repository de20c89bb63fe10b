#include "core/store/field_writer.hpp"

#include <algorithm>

#include "core/store/gpkg_geometry.hpp"

namespace oaklight::store {

FieldWriter::FieldWriter(const RecordTable& table, Row base)
    : table_(table), row_(std::move(base)) {
  if (table_.index_of("units")) table_.at(row_, "units") = Value{};
}

void FieldWriter::refuse(ErrorCode code, std::string_view column, std::string what,
                         std::string fix) {
  if (!error_) error_ = Error{code, std::move(what), std::string(column), std::move(fix)};
}

void FieldWriter::put(std::string_view column, Value value) {
  const auto index = table_.index_of(column, next_);
  if (!index) {
    refuse(ErrorCode::damaged, column, "The file's table \"" + table_.name() + "\" lacks a column.",
           "Work on from your newest copy.");
    return;
  }
  if (const auto* number = std::get_if<double>(&value); number && !std::isfinite(*number)) {
    refuse(ErrorCode::out_of_range, column, "A number is not finite.", "Give it, or leave it out.");
  }
  if (const auto* text = std::get_if<std::string>(&value); text && !is_utf8(*text)) {
    refuse(ErrorCode::not_a_choice, column, "A text is not valid UTF-8.",
           "Save the file it came from as UTF-8.");
  }
  row_[*index] = std::move(value);
  next_ = *index + 1;
}

void FieldWriter::field(std::string_view column, const std::vector<std::string>& items) {
  if (std::any_of(items.begin(), items.end(), [](const std::string& item) {
        return item.empty() || item.find(kListMark) != std::string::npos;
      })) {
    refuse(ErrorCode::out_of_range, column, "An entry of a list is empty or holds the mark '|'.",
           "Leave it out, or write it without '|'.");
  }
  put(column, to_value(items));
}

void FieldWriter::units(UnitSystem system) {
  if (units_ && *units_ != system) {
    refuse(ErrorCode::contradiction, "units", "A record holds readings in US and in metric units.",
           "Record each tree in one system only.");
  }
  units_ = system;
  put("units", std::string(system == UnitSystem::us ? "us" : "metric"));
}

void FieldWriter::reading(std::string_view column, const Dbh& dbh) {
  units(dbh.system());
  put(column, std::int64_t{dbh.tenths()});
}

void FieldWriter::reading(std::string_view column, const StumpDiameter& diameter) {
  units(diameter.system());
  put(column, std::int64_t{diameter.tenths()});
}

void FieldWriter::reading(std::string_view column, const TapedLength& length) {
  units(length.system());
  put(column, std::int64_t{length.hundredths()});
}

void FieldWriter::tenths(std::string_view column, const std::optional<Degrees>& angle) {
  if (!angle) {
    put(column, Value{});
    return;
  }
  // The nearest double to 123.4, times ten, is off 1234 by a rounding error at most; a second
  // decimal is off by 0.1 or more.
  constexpr double kRoundingError = 1e-6;
  const double tenths = std::round(angle->value * 10.0);
  if (!(std::fabs(angle->value * 10.0 - tenths) < kRoundingError) || tenths < 0 || tenths > 3600) {
    refuse(ErrorCode::out_of_range, column,
           "An azimuth is outside 0 to 360 degrees or has more than one decimal.",
           "Give it to a tenth of a degree.");
    return;
  }
  put(column, static_cast<std::int64_t>(tenths));
}

void FieldWriter::put_shape(const Result<std::string>& blob) {
  if (!blob) {
    refuse(blob.error().code, blob.error().where, blob.error().what, blob.error().fix);
    return;
  }
  put("geom", Blob{*blob});
}

void FieldWriter::shape(const std::optional<Position>& place) {
  place ? put_shape(point_blob(*place)) : put("geom", Value{});
}

void FieldWriter::shape(const std::optional<Polygon>& polygon) {
  polygon ? put_shape(polygon_blob(*polygon)) : put("geom", Value{});
}

void FieldWriter::shape(const std::vector<Position>& line) {
  line.empty() ? put("geom", Value{}) : put_shape(line_blob(line));
}

Result<Row> FieldWriter::finish() {
  if (error_) return *error_;
  return row_;
}

}  // namespace oaklight::store
