#include "core/forms/filled_table.hpp"

#include <algorithm>

namespace oaklight {
namespace {

/// Columns of the file that tell one system and not the other.
std::vector<std::string> columns_of(const CsvFile& csv, const RecordForm& record,
                                    UnitSystem system) {
  std::vector<std::string> found;
  for (const std::string& title : csv.header) {
    for (const Field& field : record.fields) {
      if (field.has_system() && lower_case(title) == lower_case(field.column.of(system))) {
        found.push_back(title);
      }
    }
  }
  return found;
}

std::string joined(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& item : list) text += (text.empty() ? "" : ", ") + item;
  return text;
}

/// Columns that a file may have, and those of required fields; the header is checked against them.
std::vector<Error> header_faults(const CsvFile& csv, const RecordForm& record, UnitSystem system) {
  std::vector<std::string> names;
  std::vector<std::string> needed;
  for (const Field& field : record.fields) {
    names.push_back(lower_case(field.column.us));
    if (field.has_system()) names.push_back(lower_case(field.column.metric));
    // The other system's column is told as a mix of systems, not as a missing column.
    const bool other = std::any_of(csv.header.begin(), csv.header.end(), [&](const auto& title) {
      return lower_case(title) == lower_case(field.column.us) ||
             lower_case(title) == lower_case(field.column.metric);
    });
    if (field.required && !other) needed.push_back(lower_case(field.column.of(system)));
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::vector<std::string_view> required(needed.begin(), needed.end());
  return check_header(csv, known, required);
}

}  // namespace

std::optional<std::size_t> FilledTable::index(std::string_view field) const {
  for (std::size_t i = 0; record_ && i < record_->fields.size(); ++i) {
    if (record_->fields[i].name == field) return i;
  }
  return std::nullopt;
}

std::string FilledTable::column(std::string_view field) const {
  const auto i = index(field);
  return i && *i < columns_.size() ? columns_[*i].title : std::string(field);
}

void FilledTable::add_fault(FaultList& faults, int line, ErrorCode code, std::string_view column,
                            std::string what, std::string fix) const {
  faults.add(kind_, line, {code, std::move(what), place_in(file_, line, column), std::move(fix)});
}

void FilledTable::choose_system(const CsvFile& csv, FaultList& faults) {
  const auto us = columns_of(csv, *record_, UnitSystem::us);
  const auto metric = columns_of(csv, *record_, UnitSystem::metric);
  system_ = metric.size() > us.size() ? UnitSystem::metric : UnitSystem::us;
  if (us.empty() || metric.empty()) return;
  const bool metric_is_odd = system_ == UnitSystem::us;
  const auto& odd = metric_is_odd ? metric : us;
  add_fault(
      faults, csv.header_line, ErrorCode::contradiction, odd.front(),
      "The file has columns of both unit systems: " + joined(us) + " and " + joined(metric) + ".",
      std::string("Use one system for the whole file: turn ") + joined(odd) + " into " +
          (metric_is_odd ? "inches and feet." : "centimetres and metres."));
  complete_ = false;
}

FilledTable FilledTable::read(CruiseFile kind, const NamedText& file, const Form& form,
                              const RecordForm& record, const SpeciesNames& names,
                              FaultList& faults) {
  FilledTable table;
  table.kind_ = kind;
  table.file_ = file.name;
  table.record_ = &record;
  const CsvFile csv = read_csv_file(file);
  for (const Error& fault : csv.faults) faults.add(kind, csv.header_line, fault);
  faults.add_uncounted(csv.more_faults);
  table.complete_ = csv.faults.empty();
  if (csv.header.empty()) return table;
  table.choose_system(csv, faults);
  const auto header = header_faults(csv, record, table.system_);
  for (const Error& fault : header) faults.add(kind, csv.header_line, fault);
  if (!header.empty()) table.complete_ = false;
  table.find_columns(csv);
  table.rows_.reserve(csv.rows.size());
  for (const CsvRow& row : csv.rows) {
    if (faults.hopeless(kind)) {
      table.complete_ = false;
      break;
    }
    table.read_row(row, form, names, faults);
  }
  if (record.one_row && table.rows_.size() != 1 && table.complete_) {
    table.add_fault(faults, table.rows_.size() > 1 ? table.rows_[1].line : csv.header_line,
                    ErrorCode::contradiction, "",
                    "The file has " + std::to_string(table.rows_.size()) + " rows.",
                    "Keep exactly one below the header.");
  }
  return table;
}

void FilledTable::find_columns(const CsvFile& csv) {
  for (const Field& field : record_->fields) {
    Column column{std::nullopt, field.column.of(system_)};
    for (std::size_t i = 0; i < csv.header.size(); ++i) {
      if (lower_case(csv.header[i]) != lower_case(field.column.of(system_))) continue;
      column = {i, csv.header[i]};
      break;
    }
    columns_.push_back(std::move(column));
  }
}

void FilledTable::read_row(const CsvRow& cells, const Form& form, const SpeciesNames& names,
                           FaultList& faults) {
  Row row;
  row.line = cells.line;
  row.values.reserve(record_->fields.size());
  row.lines.reserve(record_->fields.size());
  for (std::size_t i = 0; i < record_->fields.size(); ++i) {
    const Field& field = record_->fields[i];
    const Column& column = columns_[i];
    const std::string_view text =
        column.cell ? trimmed(cells.cells[*column.cell]) : std::string_view{};
    row.given.push_back(!text.empty());
    row.lines.push_back(line_of_cell(cells, column.cell.value_or(0)));
    row.values.emplace_back();
    // A required column that is not there was told once, with the header.
    if (!column.cell && field.required) {
      row.sound = false;
      continue;
    }
    auto value = check_value(form, field, system_, text, names);
    if (value) {
      row.values.back() = std::move(*value);
      continue;
    }
    row.sound = false;
    add_fault(faults, row.lines.back(), value.error().code, column.title, value.error().what,
              value.error().fix);
  }
  check_needs(row, faults);
  rows_.push_back(std::move(row));
}

bool FilledTable::holds(const When& when, const Row& row) const {
  const auto i = index(when.field);
  if (!i) return false;
  if (when.is.empty()) return row.given[*i];
  const std::string* word = std::get_if<std::string>(&row.values[*i]);
  return word && std::find(when.is.begin(), when.is.end(), *word) != when.is.end();
}

void FilledTable::check_needs(Row& row, FaultList& faults) const {
  const auto undecided = [&](const When& when) {
    const auto i = index(when.field);
    // A word that was refused decides nothing: one fault is enough.
    return i && !when.is.empty() && std::holds_alternative<std::monostate>(row.values[*i]);
  };
  for (std::size_t i = 0; i < record_->fields.size(); ++i) {
    const Field& field = record_->fields[i];
    const int line = row.lines[i];
    const std::string& column = columns_[i].title;
    if (field.required_when && !row.given[i] && holds(*field.required_when, row)) {
      add_fault(faults, line, ErrorCode::missing_value, column, field.label + " is needed here.",
                field.help + ".");
      row.sound = false;
    }
    if (field.only_when && row.given[i] && !undecided(*field.only_when) &&
        !holds(*field.only_when, row)) {
      const Field& other = *record_->find(field.only_when->field);
      add_fault(faults, line, ErrorCode::contradiction, column,
                field.label + " is given, but " +
                    (field.only_when->is.empty()
                         ? other.label + " is empty."
                         : other.label + " is not " + joined(field.only_when->is) + "."),
                "Empty this cell, or correct column " + this->column(other.name) + ".");
      row.sound = false;
    }
  }
}

}  // namespace oaklight
