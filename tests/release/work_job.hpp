#pragma once

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

#include "core/base/embedded.hpp"
#include "core/release/work_site.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {

/// The windows of a state whose issue begins so; without the rows for another part of it.
inline std::vector<SeasonWindow> windows(std::string_view state, std::string_view issue,
                                         std::string_view other_part = "") {
  std::string_view csv;
  for (const EmbeddedFile& file : embedded_forms()) {
    if (file.path == "season_windows.csv") csv = file.text;
  }
  auto table = read_seasons(csv);
  EXPECT_TRUE(table);
  std::erase_if(*table, [&](const SeasonWindow& w) {
    return !other_part.empty() && w.where.find(other_part) != std::string::npos;
  });
  std::vector<SeasonWindow> mine = windows_of(*table, state);
  std::erase_if(mine, [&](const SeasonWindow& w) { return !w.issue.starts_with(issue); });
  EXPECT_FALSE(mine.empty());
  return mine;
}

/// A plan with all that the work on it is judged by.
class Job {
 public:
  explicit Job(std::string_view text, Goal goal = Goal::mast)
      : cards_(cards(text)), input_(input_of(cards_, 1.0, goal)), around_(cards_.trees.size()) {}

  ReleaseInput& input() { return input_; }
  Surroundings& around(std::string_view tag) {
    for (std::size_t i = 0; i < cards_.trees.size(); ++i) {
      if (cards_.trees[i].tag == tag) return around_[i];
    }
    throw std::invalid_argument("no such tag");
  }
  const ReleasePlan& plan() {
    plan_ = recommend(input_);
    return plan_;
  }

  WorkAdvice advice(std::string_view tag) {
    return work_advice(case_of(tag), input_.knowledge.settings);
  }
  std::vector<std::string> against(const std::string& tag, const WorkOrder& order,
                                   std::span<const SeasonWindow> season = {}) {
    return rules_against(
        work_objections(case_of(tag), tag, order, season, input_.knowledge.settings), tag);
  }
  DayAdvice day(std::string_view tag, Way way, std::span<const SeasonWindow> season, Day day) {
    return day_advice(season, work_kind(case_of(tag), way), day);
  }

 private:
  WorkCase case_of(std::string_view tag) {
    plan();
    const auto all = work_cases({cards_.trees, around_, cards_.contacts}, plan_, input_);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (plan_.trees[i].tag == tag) return all[i];
    }
    throw std::invalid_argument("no such tag");
  }

  ShortCards cards_;
  ReleaseInput input_;
  std::vector<Surroundings> around_;
  ReleasePlan plan_;
};

}  // namespace oaklight::test
