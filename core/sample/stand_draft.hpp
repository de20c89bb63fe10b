#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/sample/stand_sample.hpp"

// Of stand_sample.cpp: a stand while its sample is put together, and the designs by which its plots
// were laid out.

namespace oaklight {

/// One stand in the making. The first fault found is the one told.
struct StandDraft {
  StandSample sample;
  std::optional<Error> fault;
  const Cruise* cruise = nullptr;  ///< of its first plot, or of the thicker trees
  const Cruise* thin = nullptr;    ///< of the thinner trees, where two designs share the plots

  void blame(Error error) {
    if (!fault) fault = std::move(error);
  }
};

/// "stand/Ridge/plot/4", for errors.
[[nodiscard]] std::string plot_path(const StandDraft& draft, const Plot& plot);

/// The smallest tree of a cruise in hundredths of a millimetre; 0 where it has none.
[[nodiscard]] int least_of(const Cruise& cruise);

/// Takes over the design of the stand's first plot, and holds the others against it.
void take_design(StandDraft& draft, const Plot& plot, const Cruise& cruise);

/// Two designs that share their plots: thick has the larger smallest tree.
struct DesignPair {
  const Cruise* thick = nullptr;
  const Cruise* thin = nullptr;
};

/// The plots of one stand that count, with their cruises.
using Laid = std::vector<std::pair<const Plot*, const Cruise*>>;

/// The two designs of a stand where they make a pair; nothing where they do not.
[[nodiscard]] std::optional<DesignPair> pair_of(const Laid& laid);

/// Takes over both designs of a pair.
void take_pair(StandDraft& draft, const Plot& plot, const DesignPair& pair);

}  // namespace oaklight
