#include "tests/population/report_row.hpp"

#include "core/base/number_text.hpp"
#include "tests/support/results.hpp"

namespace oaklight::test {

Design design_of(double size) {
  if (size >= 1.0) return PointDesign{size, UnitSystem::us};
  return FixedDesign{.area = size};
}

std::string design_words(double size) {
  if (size >= 1.0) return "factor " + number_text(size, 0);
  return "1/" + number_text(1.0 / size, 0) + " acre";
}

std::string edge_words(Edge edge) {
  switch (edge) {
    case Edge::torus:
      return "none (torus)";
    case Edge::mirage:
      return "mirage";
    case Edge::walkthrough:
      return "walkthrough";
    case Edge::ignored:
      return "ignored";
  }
  return "";
}

void record(const ReportRow& row) {
  const Outcome& got = row.got;
  result_table(repeats_asked() == kUsualRepeats ? "simulations" : "simulations_long",
               {"map", "what", "method", "edge", "plots", "repeats", "census", "mean", "mean_se",
                "true_se", "reported_se", "covered_pct", "low_pct", "high_pct", "edge_bias_pct"})
      .add({row.map, row.what, row.method, row.edge, std::to_string(row.plots),
            std::to_string(got.repeats), number_text(row.truth, 3), number_text(got.mean, 3),
            number_text(got.mean_se, 3), number_text(got.true_se, 3),
            number_text(got.reported_se, 3), number_text(100.0 * got.covered, 1), row.low, row.high,
            number_text(row.bias_pct, 2)});
}

}  // namespace oaklight::test
