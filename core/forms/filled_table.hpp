#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/forms/check_value.hpp"
#include "core/forms/fault_list.hpp"
#include "core/model/place.hpp"

namespace oaklight {

/// The rows of one file, each cell read by the form. A cell that was refused holds nothing.
class FilledTable {
 public:
  struct Row {
    int line = 0;
    std::vector<FieldValue> values;  ///< by field of the form
    std::vector<bool> given;         ///< something stood in the cell
    std::vector<int> lines;          ///< of the file, where the cell begins
    bool sound = true;               ///< no cell of the row was refused
  };

  /// A file that nobody brought: no rows, nothing wrong.
  FilledTable() = default;

  /// Reads a file by its record of the form; what is wrong with a cell goes to faults with
  /// "trees.csv:14:dbh_in". A file with columns of both unit systems is a contradiction.
  static FilledTable read(CruiseFile kind, const NamedText& file, const Form& form,
                          const RecordForm& record, const SpeciesNames& names, FaultList& faults);

  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  [[nodiscard]] CruiseFile kind() const { return kind_; }
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] UnitSystem system() const { return system_; }
  [[nodiscard]] bool present() const { return record_ != nullptr; }
  /// Every row of the file is here: what other files say about it can be judged.
  [[nodiscard]] bool complete() const { return complete_; }

  /// Place of a field among the values; nothing when the form lacks it.
  [[nodiscard]] std::optional<std::size_t> index(std::string_view field) const;
  /// The column of a field as it stands in this file, or would stand.
  [[nodiscard]] std::string column(std::string_view field) const;

 private:
  /// Where a field stands in the file, and what its column is called there.
  struct Column {
    std::optional<std::size_t> cell;
    std::string title;
  };

  void find_columns(const CsvFile& csv);
  void choose_system(const CsvFile& csv, FaultList& faults);
  void read_row(const CsvRow& cells, const Form& form, const SpeciesNames& names,
                FaultList& faults);
  void check_needs(Row& row, FaultList& faults) const;
  [[nodiscard]] bool holds(const When& when, const Row& row) const;
  void add_fault(FaultList& faults, int line, ErrorCode code, std::string_view column,
                 std::string what, std::string fix) const;

  CruiseFile kind_ = CruiseFile::tract;
  std::string file_;
  const RecordForm* record_ = nullptr;
  UnitSystem system_ = UnitSystem::us;
  bool complete_ = true;
  std::vector<Column> columns_;  ///< by field of the form
  std::vector<Row> rows_;
};

/// One row with its table: values by the name of the field.
class FilledRow {
 public:
  FilledRow(const FilledTable& table, const FilledTable::Row& row) : table_(&table), row_(&row) {}

  [[nodiscard]] int line() const { return row_->line; }
  [[nodiscard]] int line_of(std::string_view field) const {
    const auto i = table_->index(field);
    return i ? row_->lines[*i] : row_->line;
  }
  [[nodiscard]] bool sound() const { return row_->sound; }
  [[nodiscard]] bool given(std::string_view field) const {
    const auto i = table_->index(field);
    return i && row_->given[*i];
  }
  /// The value of a field, when it holds one of this type.
  template <class T>
  [[nodiscard]] std::optional<T> get(std::string_view field) const {
    const auto i = table_->index(field);
    if (!i) return std::nullopt;
    const T* value = std::get_if<T>(&row_->values[*i]);
    return value ? std::optional<T>(*value) : std::nullopt;
  }
  /// Whatever the field at this place holds.
  [[nodiscard]] const FieldValue& value_at(std::size_t index) const { return row_->values[index]; }
  /// Text; "" when there is none.
  [[nodiscard]] std::string text(std::string_view field) const {
    return get<std::string>(field).value_or("");
  }
  template <class E>
  [[nodiscard]] std::optional<E> word(std::string_view field) const {
    return from_word<E>(text(field));
  }
  template <class Q>
  [[nodiscard]] std::optional<Q> quantity(std::string_view field) const {
    const auto number = get<double>(field);
    return number ? std::optional<Q>(Q{*number}) : std::nullopt;
  }
  /// Both fields, or nothing.
  [[nodiscard]] std::optional<Position> position(std::string_view lat, std::string_view lon) const {
    const auto latitude = quantity<Degrees>(lat);
    const auto longitude = quantity<Degrees>(lon);
    if (!latitude || !longitude) return std::nullopt;
    return Position{*latitude, *longitude};
  }

  /// "trees.csv:14:dbh_in"
  [[nodiscard]] std::string place(std::string_view field) const {
    return place_in(table_->file(), line_of(field), table_->column(field));
  }
  /// Adds a fault of this row at a field.
  void fault(FaultList& faults, std::string_view field, ErrorCode code, std::string what,
             std::string fix) const {
    faults.add(table_->kind(), line(), {code, std::move(what), place(field), std::move(fix)});
  }
  [[nodiscard]] const FilledTable& table() const { return *table_; }

 private:
  const FilledTable* table_;
  const FilledTable::Row* row_;
};

}  // namespace oaklight
