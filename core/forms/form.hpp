#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/words.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// What a field holds, and so how its text is read (forms/README.md says what a cell may hold).
enum class FieldKind {
  text,
  choice,   ///< one word of a list
  choices,  ///< any number of words of a list
  species,
  diameter,  ///< Dbh
  length,    ///< TapedLength
  area,
  basal_area_factor,
  percent,
  degrees,  ///< azimuth from true north
  whole,
  decimal,
  date,
  yes_no,
  latitude,
  longitude,
};
template <>
inline constexpr auto kWords<FieldKind> =
    std::to_array<Word<FieldKind>>({{FieldKind::text, "text"},
                                    {FieldKind::choice, "choice"},
                                    {FieldKind::choices, "choices"},
                                    {FieldKind::species, "species"},
                                    {FieldKind::diameter, "diameter"},
                                    {FieldKind::length, "length"},
                                    {FieldKind::area, "area"},
                                    {FieldKind::basal_area_factor, "basal_area_factor"},
                                    {FieldKind::percent, "percent"},
                                    {FieldKind::degrees, "degrees"},
                                    {FieldKind::whole, "whole"},
                                    {FieldKind::decimal, "decimal"},
                                    {FieldKind::date, "date"},
                                    {FieldKind::yes_no, "yes_no"},
                                    {FieldKind::latitude, "latitude"},
                                    {FieldKind::longitude, "longitude"}});

/// What one row on a crop tree card is about.
enum class CardRole { crop, neighbour, open };
template <>
inline constexpr auto kWords<CardRole> = std::to_array<Word<CardRole>>(
    {{CardRole::crop, "crop"}, {CardRole::neighbour, "neighbour"}, {CardRole::open, "open"}});

/// Smallest and largest value, both allowed, in the unit of the field.
struct Range {
  double least = 0.0;
  double most = 0.0;
  friend bool operator==(const Range&, const Range&) = default;
};

/// Something that may be told once for both unit systems, or once for each.
template <class T>
struct BySystem {
  T us;
  T metric;
  [[nodiscard]] const T& of(UnitSystem system) const {
    return system == UnitSystem::us ? us : metric;
  }
  friend bool operator==(const BySystem&, const BySystem&) = default;
};

/// "When that field holds one of these words"; no words: when it is filled at all.
struct When {
  std::string field;
  std::vector<std::string> is;
  friend bool operator==(const When&, const When&) = default;
};

struct Choice {
  std::string word;   ///< what files hold
  std::string label;  ///< what people read
  std::string group;  ///< heading in a long list; "" when the list has none
  std::string help;
  friend bool operator==(const Choice&, const Choice&) = default;
};

struct ChoiceList {
  std::string name;
  std::vector<Choice> choices;
  friend bool operator==(const ChoiceList&, const ChoiceList&) = default;
};

struct Field {
  std::string name;         ///< what the program calls it
  std::string label;        ///< for a screen: "Diameter (DBH)"
  std::string short_label;  ///< for a narrow column on paper: "DBH"
  std::string help;         ///< one line
  FieldKind kind = FieldKind::text;
  BySystem<std::string> column;  ///< name of the CSV column: "dbh_in", "dbh_cm"
  BySystem<std::string> unit;    ///< to show: "in", "cm"; "" without unit
  bool required = false;         ///< never empty
  std::optional<When> required_when;
  std::optional<When> only_when;  ///< empty otherwise
  BySystem<std::optional<Range>> range;
  std::vector<std::int64_t> one_of;  ///< kind whole: only these; none given: any in range
  std::optional<int> decimals;       ///< digits after the point that it may have
  std::optional<double> step;        ///< kind decimal: whole multiples of this
  std::size_t max_length = 0;        ///< kind text: characters; 0 means one line of any length
  std::string choices;               ///< name of its choice list, "" without
  std::string initial;               ///< what an empty cell means, "" for "not recorded"

  /// Whether its column tells the unit system of a file.
  [[nodiscard]] bool has_system() const { return column.us != column.metric; }
  friend bool operator==(const Field&, const Field&) = default;
};

/// A kind of record, and the CSV file that brings it.
struct RecordForm {
  std::string name;   ///< "trees"
  std::string label;  ///< "Tree"
  std::string file;   ///< "trees.csv"
  std::string help;
  bool one_row = false;
  std::vector<Field> fields;

  /// nullptr when there is no such field.
  [[nodiscard]] const Field* find(std::string_view field) const {
    for (const Field& f : fields) {
      if (f.name == field) return &f;
    }
    return nullptr;
  }
  friend bool operator==(const RecordForm&, const RecordForm&) = default;
};

/// The whole form: one definition for the CSV check, the tally screen and the paper sheet.
struct Form {
  std::string name;
  std::string version;
  std::vector<ChoiceList> choices;
  std::vector<RecordForm> records;

  [[nodiscard]] const RecordForm* find_record(std::string_view record) const {
    for (const RecordForm& r : records) {
      if (r.name == record) return &r;
    }
    return nullptr;
  }
  [[nodiscard]] const ChoiceList* find_choices(std::string_view list) const {
    for (const ChoiceList& c : choices) {
      if (c.name == list) return &c;
    }
    return nullptr;
  }
  friend bool operator==(const Form&, const Form&) = default;
};

}  // namespace oaklight
