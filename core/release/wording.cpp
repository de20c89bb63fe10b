#include "core/release/wording.hpp"

#include "core/base/number_text.hpp"

namespace oaklight {

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
    text += parts[i];
  }
  return text;
}

std::string side_words(Sides sides) {
  std::vector<std::string> names;
  if (sides.has(Side::north)) names.emplace_back("north");
  if (sides.has(Side::east)) names.emplace_back("east");
  if (sides.has(Side::south)) names.emplace_back("south");
  if (sides.has(Side::west)) names.emplace_back("west");
  return joined(names) + (names.size() == 1 ? " side" : " sides");
}

std::string tree_name(const ReleaseTree& tree, const SpeciesTable& species) {
  const Species* known = species.find(tree.facts.species);
  const std::string kind = known != nullptr ? known->common_name : std::string("tree");
  return tree.tag.empty() ? kind : kind + " " + tree.tag;
}

std::string side_count(int sides) {
  return std::to_string(sides) + (sides == 1 ? " side" : " sides");
}

std::string plain_number(double value) {
  std::string text = number_text(value, 1);
  if (text.size() > 2 && text.ends_with(".0")) text.resize(text.size() - 2);
  return text;
}

}  // namespace oaklight
