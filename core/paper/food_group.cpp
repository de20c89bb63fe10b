#include "core/paper/food_group.hpp"

namespace oaklight {

FoodGroup group_of(const Species* species) {
  if (species == nullptr) return FoodGroup::rest;
  if (species->is_oak()) return FoodGroup::oak;
  return species->mast == MastClass::none ? FoodGroup::rest : FoodGroup::mast;
}

QString words_of(FoodGroup group) {
  switch (group) {
    case FoodGroup::oak:
      return QStringLiteral("Oaks");
    case FoodGroup::mast:
      return QStringLiteral("Other nut and fruit trees");
    case FoodGroup::rest:
      return QStringLiteral("All others");
  }
  return {};
}

Pattern pattern_of(FoodGroup group) {
  switch (group) {
    case FoodGroup::oak:
      return Pattern::solid;
    case FoodGroup::mast:
      return Pattern::hatched;
    case FoodGroup::rest:
      return Pattern::open;
  }
  return Pattern::open;
}

std::vector<KeyEntry> key_of(const std::vector<FoodGroup>& groups) {
  std::vector<KeyEntry> entries;
  for (const FoodGroup group : groups) {
    entries.push_back({[group](Drawing& drawing, const QRectF& box) {
                         fill_pattern(drawing, box, pattern_of(group));
                       },
                       words_of(group)});
  }
  return entries;
}

}  // namespace oaklight
