#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "core/base/result.hpp"
#include "core/model/tree.hpp"

namespace oaklight {

/// In which way a species feeds or houses animals.
enum class FoodKind { none, hard, soft, cover, bud, seed, den };
template <>
inline constexpr auto kWords<FoodKind> = std::to_array<Word<FoodKind>>({{FoodKind::none, "none"},
                                                                        {FoodKind::hard, "hard"},
                                                                        {FoodKind::soft, "soft"},
                                                                        {FoodKind::cover, "cover"},
                                                                        {FoodKind::bud, "bud"},
                                                                        {FoodKind::seed, "seed"},
                                                                        {FoodKind::den, "den"}});

/// What one tree is worth to wildlife by its species: the default of an editable table.
struct Food {
  FoodKind kind = FoodKind::none;
  int rank = 0;              ///< 0 .. 10
  bool always_keep = false;  ///< too rare to cut

  /// Nuts or fruit.
  [[nodiscard]] bool is_mast() const { return kind == FoodKind::hard || kind == FoodKind::soft; }
};

/// forms/species/mast_rank.csv, common practice throughout.
class FoodTable {
 public:
  /// errors   bad_csv, missing_value, not_a_choice, out_of_range, duplicate, with file and line
  static Result<FoodTable> from_csv(std::string_view text, std::string_view file);

  /// The row of this species, by the tree's condition where the table tells them apart. A species
  /// without a row takes twice its 0 .. 5 rank of the species table and the kind of its mast class.
  ///
  /// grouse   the owner wants ruffed grouse, so aspen buds count
  [[nodiscard]] Food of(const Species& species, Conditions conditions, bool grouse) const;

 private:
  enum class When { always, beech_bark, grouse };
  std::map<std::pair<SpeciesCode, When>, Food> rows_;
};

}  // namespace oaklight
