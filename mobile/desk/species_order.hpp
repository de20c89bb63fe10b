#pragma once

#include <string>
#include <vector>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

/// The species of a tally, best first: those most tallied on the plot's stand, then the tract's
/// tally set in its own order. At most `most` of them, each once.
///
/// set_key  of species_sets.csv; one that is not known gives the first set
std::vector<const oaklight::Species*> tally_order(const oaklight::LiveTract& live,
                                                  const oaklight::TractKnowledge& knowledge,
                                                  oaklight::StandId stand,
                                                  const std::string& set_key, std::size_t most);

/// The species of which a name (common, local, scientific or symbol) has words that begin with each
/// of the words typed; all of them when nothing is typed.
std::vector<const oaklight::Species*> species_search(const oaklight::SpeciesTable& species,
                                                     const std::string& typed);
