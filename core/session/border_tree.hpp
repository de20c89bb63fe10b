#pragma once

#include <string>

#include "core/measure/plot_geometry.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

enum class BorderAnswer {
  in,
  out,
  on_the_line,  ///< nearer the limit than the readings can tell: measure again
};

/// Whether a tree near the edge of a plot is tallied.
struct BorderCheck {
  BorderAnswer answer = BorderAnswer::out;
  bool counts = false;      ///< by the readings as they are; a tree exactly at the limit counts
  Feet limit;               ///< level, to where the tape ended
  Feet limit_taped;         ///< the same along the slope: what the tape may show at most
  Feet level;               ///< level distance of the tree, to where the tape ended
  Feet by;                  ///< level; how far inside or outside the limit, never below 0
  Feet unsure;              ///< half of the last place of DBH and tape, as level distance
  bool small_plot = false;  ///< judged by the small plot, as its DBH asks
  std::string words;        ///< "IN by 1.2 ft", "OUT by 0.35 m", "ON THE LINE"
  std::string note;         ///< what was compared: to where the tape ended, slope, limit
};

/// The check of a tree by its plot's design, in the unit of the tape.
///
/// source   core/measure/plot_geometry.hpp. ON THE LINE is ours (derived): the limit moves by its
///          factor times half a tenth of DBH, and the tape is read to 0.1 ft or 0.01 m
/// errors   unknown_reference; of check_design; out_of_range for a slope over 200 %
Result<BorderCheck> border_check(const LiveTract& live, PlotId plot, const BorderlineTree& tree);
Result<BorderCheck> border_check(const Design& design, const BorderlineTree& tree);

}  // namespace oaklight
