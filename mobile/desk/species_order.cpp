#include "mobile/desk/species_order.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <sstream>

using oaklight::LiveTract;
using oaklight::Species;
using oaklight::SpeciesCode;
using oaklight::TallySet;
using oaklight::TractKnowledge;

namespace {

std::vector<SpeciesCode> most_tallied(const LiveTract& live, oaklight::StandId stand) {
  std::map<SpeciesCode, int> counts;
  for (const oaklight::Plot* plot : live.plots_of(stand)) {
    for (const oaklight::Tree* tree : live.trees_of(plot->id)) ++counts[tree->facts.species];
  }
  std::vector<std::pair<SpeciesCode, int>> sorted(counts.begin(), counts.end());
  std::ranges::stable_sort(sorted,
                           [](const auto& a, const auto& b) { return a.second > b.second; });
  std::vector<SpeciesCode> codes;
  for (const auto& [code, count] : sorted) codes.push_back(code);
  return codes;
}

const TallySet* set_of(const TractKnowledge& knowledge, const std::string& key) {
  const auto found = std::ranges::find(knowledge.sets, key, &TallySet::key);
  if (found != knowledge.sets.end()) return &*found;
  return knowledge.sets.empty() ? nullptr : &knowledge.sets.front();
}

std::vector<std::string> lower_words(const std::string& text) {
  std::string letters;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    letters += byte >= 128 || std::isalnum(byte) != 0 ? static_cast<char>(std::tolower(byte)) : ' ';
  }
  std::istringstream in(letters);
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

}  // namespace

std::vector<const Species*> tally_order(const LiveTract& live, const TractKnowledge& knowledge,
                                        oaklight::StandId stand, const std::string& set_key,
                                        std::size_t most) {
  std::vector<SpeciesCode> codes = most_tallied(live, stand);
  if (const TallySet* set = set_of(knowledge, set_key))
    codes.insert(codes.end(), set->species.begin(), set->species.end());
  std::vector<const Species*> order;
  for (const SpeciesCode code : codes) {
    const Species* species = knowledge.species().find(code);
    if (species == nullptr || std::ranges::find(order, species) != order.end()) continue;
    if (order.size() == most) break;
    order.push_back(species);
  }
  return order;
}

std::vector<const Species*> species_search(const oaklight::SpeciesTable& species,
                                           const std::string& typed) {
  const std::vector<std::string> wanted = lower_words(typed);
  std::vector<const Species*> found;
  for (const Species& one : species.rows()) {
    std::string names = one.common_name + ' ' + one.scientific_name + ' ' + one.plants_symbol;
    for (const std::string& local : one.local_names) names += ' ' + local;
    const std::vector<std::string> words = lower_words(names);
    const bool all = std::ranges::all_of(wanted, [&](const std::string& start) {
      return std::ranges::any_of(words, [&](const std::string& w) { return w.starts_with(start); });
    });
    if (all) found.push_back(&one);
  }
  std::ranges::stable_sort(found, {}, &Species::common_name);
  return found;
}
