#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/model/tree.hpp"

namespace oaklight {

/// The tract as a whole, with what an ambulance needs to find it.
struct Tract {
  std::string name;
  std::string state;  ///< two letters, for season windows; "" unknown
  std::string county;
  std::string contact;        ///< who answers for the work
  std::string directions;     ///< road, gate, nearest crossroad
  std::string meeting_place;  ///< where the ambulance is met
  std::string phone_place;    ///< where a phone works
  std::optional<Position> landing;
  bool demo = false;  ///< invented data: every page says so
};

/// What the owner wants from the wood; decides ties, never safety.
enum class Goal { mast, timber, look, mixed };
template <>
inline constexpr auto kWords<Goal> = std::to_array<Word<Goal>>(
    {{Goal::mast, "mast"}, {Goal::timber, "timber"}, {Goal::look, "look"}, {Goal::mixed, "mixed"}});

struct Stand {
  StandId id;
  std::string name;
  Acres acres;                  ///< as the owner or the map states it
  std::optional<Acres> walked;  ///< ground covered by the marking walk; nothing: not walked
  Goal goal = Goal::mast;
  std::optional<int> age_years;
  std::optional<Feet> site_index;  ///< oak, base age 50
  std::optional<Polygon> boundary;
};

/// Point (angle count) sampling with one basal area factor.
struct PointDesign {
  double factor = 10.0;  ///< as read: ft2/ac in US units, m2/ha in metric
  UnitSystem system = UnitSystem::us;

  /// 1 m2/ha is 4.356 ft2/ac exactly: the square of the foot cancels out of acre over hectare.
  [[nodiscard]] SquareFeetPerAcre baf() const {
    constexpr double kSquareFeetPerAcreOfSquareMetrePerHectare =
        kSquareFeetPerAcre / kSquareMetresPerHectare;
    return SquareFeetPerAcre{
        system == UnitSystem::us ? factor : factor * kSquareFeetPerAcreOfSquareMetrePerHectare};
  }
  friend bool operator==(const PointDesign&, const PointDesign&) = default;
};

/// Fixed circular plots, with an optional smaller plot at the same centre for the thinner trees.
struct FixedDesign {
  double area = 0.1;                 ///< acres in US units, hectares in metric
  std::optional<double> small_area;  ///< same unit; trees under small_below are tallied here only
  std::optional<Dbh> small_below;
  UnitSystem system = UnitSystem::us;

  [[nodiscard]] Acres acres() const { return as_acres(area); }
  [[nodiscard]] std::optional<Acres> small_acres() const {
    return small_area ? std::optional(as_acres(*small_area)) : std::nullopt;
  }
  friend bool operator==(const FixedDesign&, const FixedDesign&) = default;

 private:
  [[nodiscard]] Acres as_acres(double a) const {
    return system == UnitSystem::us ? Acres{a}
                                    : to_acres(SquareMetres{a * kSquareMetresPerHectare});
  }
};

using Design = std::variant<PointDesign, FixedDesign>;

struct Cruise {
  CruiseId id;
  std::string name;
  Design design;
  std::optional<Dbh> min_dbh;  ///< smallest tree tallied
  std::optional<double>
      regen_area;  ///< regeneration plot, acres or hectares as the design's system
  std::string crew;
  std::string date;  ///< ISO 8601 day, "2026-05-04"
};

enum class PlotStatus {
  planned,
  measured,  ///< has trees
  empty,     ///< visited, nothing to tally: counts as zero in every estimate
  skipped,   ///< not visited, with a reason: not in the sample
};
template <>
inline constexpr auto kWords<PlotStatus> =
    std::to_array<Word<PlotStatus>>({{PlotStatus::planned, "planned"},
                                     {PlotStatus::measured, "measured"},
                                     {PlotStatus::empty, "empty"},
                                     {PlotStatus::skipped, "skipped"}});

struct Plot {
  PlotId id;
  StandId stand;
  CruiseId cruise;
  std::string label;
  PlotStatus status = PlotStatus::planned;
  std::string skip_reason;
  std::optional<Position> position;
  std::optional<Metres> accuracy;
  std::optional<Percent> slope;
  std::string note;
};

/// Height classes of the regeneration count; the 4.5 ft break is that of the oak advance
/// reproduction guide (Sander, Johnson and Watt 1976, from memory).
enum class RegenHeight { under_1_ft, from_1_to_4_5_ft, over_4_5_ft };
template <>
inline constexpr auto kWords<RegenHeight> =
    std::to_array<Word<RegenHeight>>({{RegenHeight::under_1_ft, "under_1_ft"},
                                      {RegenHeight::from_1_to_4_5_ft, "from_1_to_4_5_ft"},
                                      {RegenHeight::over_4_5_ft, "over_4_5_ft"}});

struct Regen {
  RegenId id;
  PlotId plot;
  SpeciesCode species;
  RegenHeight height = RegenHeight::under_1_ft;
  int count = 0;
};

}  // namespace oaklight
