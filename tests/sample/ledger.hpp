#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <type_traits>

#include "core/sample/estimate.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {

/// Compares numbers with a file of expected ones and keeps account of which were asked for.
class Ledger {
  static constexpr double kRelative = 1e-9;
  /// The files have 12 decimals: half a unit of the last, and what reading it adds.
  static constexpr double kLastDecimal = 5.1e-13;

 public:
  explicit Ledger(const std::string& name) {
    std::ifstream in(source_path("tests/golden/oracle/" + name));
    wanted_ = nlohmann::json::parse(in);
  }

  void expect(const std::string& path, double got) {
    const nlohmann::json::json_pointer at(path);
    ASSERT_TRUE(wanted_.contains(at)) << path;
    const double want = wanted_.at(at).get<double>();
    EXPECT_NEAR(got, want, std::max(kRelative * std::abs(want), kLastDecimal)) << path;
    met_.insert(path);
  }
  void expect(const std::string& path, std::optional<double> got) {
    ASSERT_TRUE(got.has_value()) << path;
    expect(path, *got);
  }
  /// A number that we do not give.
  void leave_out(const std::string& path, const std::string& why) {
    ASSERT_FALSE(why.empty());
    ASSERT_TRUE(wanted_.contains(nlohmann::json::json_pointer(path))) << path;
    met_.insert(path);
  }

  void fail_on_numbers_not_asked_for() const {
    const nlohmann::json flat = wanted_.flatten();
    EXPECT_GT(flat.size(), 0U);
    for (const auto& [path, value] : flat.items()) {
      EXPECT_TRUE(met_.contains(path)) << path << " is expected, but nobody computed it";
    }
  }
  [[nodiscard]] const nlohmann::json& at(const std::string& path) const {
    return wanted_.at(nlohmann::json::json_pointer(path));
  }

 private:
  nlohmann::json wanted_;
  std::set<std::string> met_;
};

template <class Q>
std::optional<double> plain(const std::optional<Q>& q) {
  return q ? std::optional(q->value) : std::nullopt;
}
inline std::optional<double> plain(const std::optional<double>& x) { return x; }

template <class Q>
double plain(const Q& q) {
  if constexpr (std::is_same_v<Q, double>) {
    return q;
  } else {
    return q.value;
  }
}

/// The eleven figures of one stand's mean.
template <class Q>
void expect_mean(Ledger& ledger, const std::string& path, const Estimate<Q>& e) {
  ledger.expect(path + "/n", static_cast<double>(e.plots));
  ledger.expect(path + "/mean", plain(e.mean));
  ledger.expect(path + "/sd", plain(e.sd));
  ledger.expect(path + "/cv_pct", plain(e.cv));
  ledger.expect(path + "/se", plain(e.se));
  ledger.expect(path + "/se_pct", plain(e.se_pct));
  ledger.expect(path + "/df", e.df);
  ledger.expect(path + "/t", student_t(e.confidence, *e.df));
  ledger.expect(path + "/lo", plain(e.lo));
  ledger.expect(path + "/hi", plain(e.hi));
  ledger.expect(path + "/half_pct", plain(e.half_pct));
}

}  // namespace oaklight::test
