#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/words.hpp"
#include "core/units/units.hpp"

namespace oaklight {

enum class LeafType { hardwood, softwood };
enum class OakGroup { none, white, red };
enum class MastClass { none, soft, hard };
enum class Stance { keep, prefer_keep, neutral, prefer_remove };
enum class Level { low, medium, high };

template <>
inline constexpr auto kWords<LeafType> = std::to_array<Word<LeafType>>(
    {{LeafType::hardwood, "hardwood"}, {LeafType::softwood, "softwood"}});
template <>
inline constexpr auto kWords<OakGroup> = std::to_array<Word<OakGroup>>(
    {{OakGroup::none, "none"}, {OakGroup::white, "white"}, {OakGroup::red, "red"}});
template <>
inline constexpr auto kWords<MastClass> = std::to_array<Word<MastClass>>(
    {{MastClass::none, "none"}, {MastClass::soft, "soft"}, {MastClass::hard, "hard"}});
template <>
inline constexpr auto kWords<Stance> =
    std::to_array<Word<Stance>>({{Stance::keep, "keep"},
                                 {Stance::prefer_keep, "prefer_keep"},
                                 {Stance::neutral, "neutral"},
                                 {Stance::prefer_remove, "prefer_remove"}});
template <>
inline constexpr auto kWords<Level> = std::to_array<Word<Level>>(
    {{Level::low, "low"}, {Level::medium, "medium"}, {Level::high, "high"}});

/// The species code of the USDA Forest Service inventory (FIA), e.g. 802 white oak; 9801 and up are
/// ours.
struct SpeciesCode {
  int fia = 0;
  friend constexpr auto operator<=>(SpeciesCode, SpeciesCode) = default;
};

/// One row of forms/species/species.csv. Columns and provenance: forms/README.md.
struct Species {
  SpeciesCode code;
  std::string plants_symbol;  ///< USDA PLANTS symbol; empty on our own rows
  std::string common_name;
  std::vector<std::string> local_names;
  std::string scientific_name;
  LeafType leaf = LeafType::hardwood;
  OakGroup oak_group = OakGroup::none;
  MastClass mast = MastClass::none;
  int mast_rank = 0;  ///< 0 .. 5, food value to woodland wildlife
  bool root_sucker = false;
  Stance stance = Stance::neutral;
  std::optional<Level> timber_value;
  std::string jenkins_group;
  std::string stocking_group;
  std::string crown_width_group;
  std::optional<Inches> min_sawlog_dbh;  ///< nothing: never tallied as sawlog
  bool invasive = false;
  std::vector<std::string> pests;
  bool winter_cover = false;

  /// "Quercus" for any oak, including one whose group is not told.
  [[nodiscard]] std::string_view genus() const {
    return std::string_view(scientific_name).substr(0, scientific_name.find(' '));
  }
  [[nodiscard]] bool is_oak() const { return genus() == "Quercus"; }
};

/// The species that a tract knows, in tally order of the file they came from.
class SpeciesTable {
 public:
  SpeciesTable() = default;
  explicit SpeciesTable(std::vector<Species> rows) : rows_(std::move(rows)) {}

  [[nodiscard]] const std::vector<Species>& rows() const { return rows_; }
  /// nullptr when the code is not in the table.
  [[nodiscard]] const Species* find(SpeciesCode code) const {
    for (const Species& s : rows_) {
      if (s.code == code) return &s;
    }
    return nullptr;
  }

 private:
  std::vector<Species> rows_;
};

}  // namespace oaklight
