#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "core/release/cautions.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {

inline std::string shipped_text() {
  std::ifstream in(source_path("forms/hazard_cautions.csv"), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

inline const CautionTable& shipped() {
  static const CautionTable kTable = [] {
    auto table = CautionTable::read(shipped_text());
    EXPECT_TRUE(table) << to_text(table.error());
    return *table;
  }();
  return kTable;
}

/// A live red maple of 12 in on level ground with nothing near it, to be felled outside the bat
/// season: no caution applies until a test changes something.
struct Subject {
  Species species;
  TreeFacts facts;
  Surroundings around;
  TreePlan plan{Method::fell, false};

  [[nodiscard]] TreeCase tree() const { return {facts, species, around, plan}; }
};

inline Dbh inches(double dbh) {
  return *Dbh::from_tenths(static_cast<std::int32_t>(dbh * 10.0 + 0.5), UnitSystem::us);
}

inline Subject plain() {
  Subject subject{.species = {}, .facts = {.species = {316}, .dbh = inches(12)}, .around = {}};
  subject.around.slope = Percent{0};
  subject.species.scientific_name = "Acer rubrum";
  return subject;
}

inline std::vector<std::string> codes_of(const std::vector<Caution>& cautions) {
  std::vector<std::string> codes;
  for (const Caution& caution : cautions) codes.push_back(caution.code);
  return codes;
}

inline std::vector<std::string> codes_of(const Subject& subject) {
  return codes_of(every_caution_for(subject.tree(), shipped()));
}

using Change = void (*)(Subject&);

template <Condition condition>
void show(Subject& s) {
  s.facts.conditions.add(condition);
}
/// With a sound crown, as somebody saw.
inline void ash(Subject& s) {
  s.species.scientific_name = "Fraxinus americana";
  s.facts.dieback = Percent{0};
}
inline void white_oak(Subject& s) { s.species.scientific_name = "Quercus alba"; }
inline void dead(Subject& s) { s.facts.status = TreeStatus::dead; }

}  // namespace oaklight::test
