#pragma once

#include <string>

#include "tests/population/plot_maker.hpp"

namespace oaklight::test {

/// A size of plot by one number: a factor from 1 upward, acres below.
Design design_of(double size);
std::string design_words(double size);  ///< "factor 10", "1/10 acre"
std::string edge_words(Edge edge);

/// A simulation as a line of the report.
struct ReportRow {
  std::string map;
  std::string what;    ///< figure and kind of trees
  std::string method;  ///< design, and how plots lie
  std::string edge;
  int plots = 0;
  double truth = 0.0;
  Outcome got;
  std::string low{}, high{};  ///< shares covered that are expected, percent; "" for unknown
  double bias_pct = 0.0;      ///< derived, of the edge
};

/// Adds it to the table that tests/report reads. A longer run, by hand, has a table of its own.
void record(const ReportRow& row);

}  // namespace oaklight::test
