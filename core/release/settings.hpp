#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/measure/product.hpp"
#include "core/model/condition.hpp"
#include "core/model/tract.hpp"
#include "core/model/tree.hpp"
#include "core/release/cautions.hpp"
#include "core/release/rules.hpp"

namespace oaklight {

/// Who may be a crop tree (rules R1.02 - R1.20, X3.03).
struct CropTreeSettings {
  std::vector<CrownClass> classes;            ///< R1.02
  std::vector<SpeciesCode> small_food_trees;  ///< R1.03
  Percent live_crown_wanted, live_crown_min;  ///< R1.05, R1.06
  Percent dieback_free, dieback_max;          ///< R1.07, R1.08
  Feet clean_log;                             ///< R1.10
  std::vector<Condition> risks;               ///< R1.12
  Feet height_min;                            ///< R1.18
  Inches dbh_min;                             ///< R1.19
  Inches timber_dbh_max;                      ///< R1.20
  int food_rank_min = 0;                      ///< X3.03
};

/// How many crop trees (R1.32, R1.37, R1.41, R4.58).
struct CropCountSettings {
  TreesPerAcre max;              ///< R1.32
  TreesPerAcre worthwhile_food;  ///< R1.37
  Percent crowns_max;            ///< R1.41, crown competition of the crop trees
  TreesPerAcre worthwhile;       ///< R4.58
};

/// When crowns meet, and on which side (R1.52, R2.11, R2.16, X6.03).
struct ContactSettings {
  Feet gap;            ///< R1.52
  Feet look_up_extra;  ///< R2.11
  Degrees side_blur;   ///< R2.16
  Feet clump_reach;    ///< X6.03, between stems that share a base
};

/// What a release must reach (R1.61 - R1.67).
struct SideSettings {
  int free_min = 0;    ///< R1.61
  int shared_max = 0;  ///< R1.64, shared sides counted at most
  int group_max = 0;   ///< R1.66
  int group_max_thin = 0;
  Inches thin_below;
  int free_in_pair = 0;  ///< R1.67
};

/// How many stems a stump keeps (R6.58, R6.61).
struct SproutSettings {
  int stems_max = 0;  ///< R6.58
  Inches thin_below;  ///< R6.61
};

/// What is worth watching on a released tree (R4.24, R4.25, R4.27).
struct WatchSettings {
  Percent two_steps_below;               ///< R4.24, live crown of a white oak grown for timber
  std::vector<SpeciesCode> thin_barked;  ///< R4.25
  double slender_above = 0.0;            ///< R4.27, height over DBH in the same unit
};

/// What an acorn count means (R3.39 - R3.43, R3.48).
struct AcornSettings {
  int years = 0;        ///< R3.39
  int index_trees = 0;  ///< R3.48
  struct Group {
    double excellent = 0.0, good = 0.0, fair = 0.0;  ///< acorns per branch tip
  };
  Group white, red;
};

/// Floors and ceilings of the stand (R3.60, R3.62, R4.x).
struct GuardSettings {
  Inches counted_from;         ///< R2.27
  Percent oak_group_min;       ///< R3.60
  int oak_species = 0;         ///< R3.61, wanted among the crop trees; told, not enforced
  Percent oak_min;             ///< R3.62
  Percent stocking_floor;      ///< R4.01
  Percent b_line;              ///< R4.03
  Percent usual_start;         ///< R4.08
  SquareFeetPerAcre ba_floor;  ///< R4.09
  Percent removal_max;         ///< R4.11
};

/// When release is the wrong job (R4.50 - R4.59).
struct RegenerationSettings {
  Feet site_index;                    ///< R4.50
  Percent midstory_share;             ///< R4.52
  TreesPerAcre advance_oak;           ///< R4.55
  int age_years = 0;                  ///< R4.57
  Percent stocking;                   ///< R4.57
  Inches midstory_from, midstory_to;  ///< R4.59
};

/// What stays whatever it crowds (R3.68, R5.x, X3.01, X3.02).
struct KeepSettings {
  TreesPerAcre fruit_trees;                        ///< R3.68, at least
  Inches cavity_from;                              ///< R5.05
  Inches any_hollow_from;                          ///< R5.10
  TreesPerAcre legacy;                             ///< R5.12
  Inches legacy_above;                             ///< R5.12
  Percent snag_live_crown;                         ///< R5.16
  Inches roost_hickory_above;                      ///< R5.20
  TreesPerAcre roost_hickories;                    ///< R5.20
  Percent scarce_below;                            ///< R5.32
  int food_tree_rank = 0;                          ///< X3.01
  int scarce_rank = 0;                             ///< X3.02
  std::vector<SpeciesCode> roost_hickory_species;  ///< X5.02
  Feet unconfirmed_line;                           ///< X5.03
};

/// How a tree goes (R6.x).
struct RemovalSettings {
  std::vector<SpeciesCode> aspens;  ///< X6.01
  double standing_lengths = 0.0;    ///< X6.02, tree lengths from a way
  int aspen_years = 0;              ///< R6.14
  Percent ash_machine_above;        ///< R6.18
};

/// How and when the work is done (R4.30, R5.15, R5.39, R6.30 - R6.79).
struct WorkSettings {
  Percent machine_slope;                     ///< R4.30
  double danger_lengths = 0.0;               ///< R5.15, tree lengths
  Feet stream_zone;                          ///< R5.39
  double girdle_depth = 0.0;                 ///< R6.30, in
  std::array<double, 2> girdle_apart{};      ///< R6.31, in
  std::array<double, 2> years_to_die{};      ///< R6.37
  Inches frill_from;                         ///< R6.42
  int stump_minutes = 0;                     ///< R6.43
  Feet roots_near, roots_far;                ///< R6.50
  Inches by_hand_below, sale_from;           ///< R6.64
  SquareFeetPerAcre wilt_middle, wilt_high;  ///< R6.75, oak basal area
  int wound_open_hours = 0;                  ///< R6.78
  int paint_minutes = 0;                     ///< R6.79
};

/// Points of 1000 that make up a crop tree's worth under one goal (X1.01 - X1.07).
struct WorthWeights {
  double food = 0.0, producer = 0.0, crown = 0.0, size = 0.0, timber = 0.0, health = 0.0,
         scarcity = 0.0;
};

struct WorthSettings {
  std::array<WorthWeights, 4> by_goal;  ///< in the order of Goal
  /// Shares of a weight, percent: open-grown, dominant, codominant, intermediate (X1.08).
  std::array<double, 4> crown{};
  std::array<double, 5> producer{};  ///< excellent, good, fair, poor, no record (X1.09)
  std::array<double, 4> timber{};    ///< low, medium, high, not known (X1.10)
  Inches full_size;                  ///< X1.11

  [[nodiscard]] const WorthWeights& weights(Goal goal) const {
    return by_goal[static_cast<std::size_t>(goal)];
  }
};

/// What may be hurt in the cut (R7.42, R7.43): the limits that a contract agrees on.
struct DamageSettings {
  Percent crop_trees;     ///< R7.42
  Percent left_trees;     ///< R7.43
  ProductLimits product;  ///< by which an unmarked stump was a saw log
};

/// Every number that the recommendation decides by, read from the rule book. Nothing in the
/// code stands beside these but definitions and published equations.
struct ReleaseSettings {
  CropTreeSettings crop;
  CropCountSettings count;
  ContactSettings contact;
  SideSettings sides;
  AcornSettings acorns;
  SproutSettings sprouts;
  WatchSettings watch;
  ProductLimits product;
  GuardSettings guards;
  RegenerationSettings regeneration;
  KeepSettings keep;
  RemovalSettings removal;
  WorkSettings work;
  CautionLimits cautions;
  WorthSettings worth;
  DamageSettings damage;

  /// errors   missing_rule with the id in `where` when a rule is not in the book or gives too few
  ///          values; out_of_range for a negative or absurd value; not_a_choice for a word that
  ///          names no crown class or condition
  static Result<ReleaseSettings> from(const RuleBook& book);
};

}  // namespace oaklight
