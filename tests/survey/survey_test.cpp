// Tract files estimated twice: by this program, and by R's package survey, which reads the file
// with sqlite3 (survey.R). Every figure of the one is held against the other.
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <map>

#include "core/base/number_text.hpp"
#include "core/sample/stratified.hpp"
#include "core/session/decide.hpp"
#include "core/session/tract_session.hpp"
#include "tests/support/oracle_figures.hpp"
#include "tests/support/places.hpp"
#include "tests/support/results.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"
#include "tests/survey/r_lines.hpp"
#include "tests/survey/random_cruise.hpp"

namespace oaklight::test {
namespace {

/// Two programs add the same numbers in another order.
constexpr double kRounding = 1e-9;

EstimateOptions asked(DegreesOfFreedom df, double level) {
  EstimateOptions options;
  options.df = df;
  options.confidence = Confidence::from_share(level).value();
  return options;
}

/// What R says of one tract file, by area and figure, and which of it was asked for.
class Opinion {
 public:
  Opinion(const std::vector<RLine>& lines, const std::string& tract) {
    for (const RLine& line : lines) {
      if (line.words.at(0) != tract) continue;
      const std::string key = line.words.at(1) + "/" + line.words.at(2);
      lines_[key] = line.numbers;
      unasked_[key] = true;
    }
  }

  const std::vector<double>* of(const std::string& key) {
    unasked_.erase(key);
    const auto found = lines_.find(key);
    return found == lines_.end() ? nullptr : &found->second;
  }
  void close(const std::string& key, double got, double want) {
    ++compared_;
    EXPECT_NEAR(got, want, kRounding * std::max(1.0, std::fabs(want))) << key;
  }
  [[nodiscard]] int compared() const { return compared_; }
  void fail_on_lines_not_asked_for() const {
    for (const auto& [key, unasked] : unasked_) ADD_FAILURE() << "R gives " << key << ", we do not";
  }

 private:
  std::map<std::string, std::vector<double>> lines_;
  std::map<std::string, bool> unasked_;
  int compared_ = 0;
};

/// Columns of a figure in survey.R.
enum Column { mean, se, free, plain, lo95, hi95, lo90, hi90, total, total_se, found };

template <class Q>
void hold(Opinion& r, const std::string& key, const Estimate<Q>& ours, const Estimate<Q>& ours_90,
          Acres acres) {
  const auto* line = r.of(key);
  ASSERT_NE(line, nullptr) << "R knows nothing of " << key;
  const auto& want = *line;
  ASSERT_EQ(want.size(), 11U) << key;
  r.close(key + " mean", ours.mean.value, want[mean]);
  EXPECT_EQ(ours.found, static_cast<int>(want[found])) << key;
  r.close(key + " total", total_of(ours, acres).mean.value, want[total]);
  if (want[mean] == 0.0) {
    EXPECT_FALSE(ours.se) << key << ": nothing found is not known to be nothing";
    return;
  }
  r.close(key + " se", ours.se->value, want[se]);
  r.close(key + " df", *ours.df, want[free]);
  r.close(key + " plain df", *ours_90.df, want[plain]);
  // A limit below nothing is shown as nothing.
  r.close(key + " lo", ours.lo->value, std::max(0.0, want[lo95]));
  r.close(key + " hi", ours.hi->value, want[hi95]);
  r.close(key + " lo 90", ours_90.lo->value, std::max(0.0, want[lo90]));
  r.close(key + " hi 90", ours_90.hi->value, want[hi90]);
  r.close(key + " total se", total_of(ours, acres).se->value, want[total_se]);
}

void hold_group(Opinion& r, const std::string& key, const GroupFigures& ours,
                const GroupFigures& ours_90, Acres acres) {
  hold(r, key + ".ba", ours.ba, ours_90.ba, acres);
  hold(r, key + ".trees", ours.trees, ours_90.trees, acres);
}

void hold_area(Opinion& r, const std::string& name, const AreaEstimate& a, const AreaEstimate& b) {
  hold_group(r, name + "/live", a.live, b.live, a.acres);
  hold_group(r, name + "/dead", a.dead, b.dead, a.acres);
  for (std::size_t i = 0; i < a.by_species.size(); ++i) {
    hold_group(r, name + "/species." + std::to_string(a.by_species[i].species.fia),
               a.by_species[i].figures, b.by_species[i].figures, a.acres);
  }
  for (std::size_t i = 0; i < a.by_class.size(); ++i) {
    hold_group(r, name + "/class." + std::to_string(a.by_class[i].dbh_class.inches),
               a.by_class[i].figures, b.by_class[i].figures, a.acres);
  }
  if (a.regen) {
    for (std::size_t h = 0; h < a.regen->all.size(); ++h) {
      const std::string key = name + "/young." + std::string(kWords<RegenHeight>[h].word);
      if (a.regen->all[h].found == 0 && r.of(key) == nullptr) continue;
      hold(r, key, a.regen->all[h], b.regen->all[h], a.acres);
    }
  }
  if (const auto* qmd = r.of(name + "/qmd")) {
    r.close(name + " qmd", a.live.qmd->qmd.value, qmd->at(0));
    r.close(name + " qmd se", a.live.qmd->se->value, qmd->at(1));
  }
}

/// A species or class that a stand lacks is zero there for R, and no row of ours.
void pass_over_what_a_stand_lacks(Opinion& r, const CruiseEstimate& e, const TractData& data) {
  for (const StandEstimate& stand : e.stands) {
    std::string name;
    for (const Stand& s : data.stands) name = s.id == stand.stand ? s.name : name;
    const auto pass = [&](const std::string& key) {
      const auto* ba = r.of(name + "/" + key + ".ba");
      const auto* trees = r.of(name + "/" + key + ".trees");
      ASSERT_NE(ba, nullptr) << key;
      ASSERT_NE(trees, nullptr) << key;
      EXPECT_EQ(ba->at(mean) == 0.0, trees->at(mean) == 0.0) << key;
    };
    for (const auto& row : e.all->by_species) pass("species." + std::to_string(row.species.fia));
    for (const auto& row : e.all->by_class) pass("class." + std::to_string(row.dbh_class.inches));
  }
}

void hold_designs(Opinion& r, const TractData& data, const SpeciesTable& species) {
  if (const auto* finite = r.of("all/finite")) {
    EstimateOptions options;
    options.finite_population = true;
    const auto e = cruise_estimate(data, species, options).value();
    r.close("finite mean", e.all->live.ba.mean.value, finite->at(0));
    r.close("finite se", e.all->live.ba.se->value, finite->at(1));
  }
  if (const auto* post = r.of("all/post_stratified")) {
    std::vector<Stratum> strata;
    const std::vector<CruisedStand> stands = cruised_stands(data).value();
    for (const CruisedStand& cruised : stands) {
      GroupTally tally;
      for (const TalliedTree& t : cruised.sample->trees) {
        if (t.tree->facts.status == TreeStatus::live) tally.add(t);
      }
      std::vector<double> values;
      for (const PlotSums& p : tally.plots()) values.push_back(p.ba);
      const int n = static_cast<int>(cruised.sample->plots.size());
      strata.push_back({cruised.stand->acres.value, moments_of(values, n).value(), {}});
    }
    const auto ours = post_stratified_mean(strata).value();
    r.close("post-stratified mean", ours.mean, post->at(0));
    r.close("post-stratified se", ours.se_residual, post->at(1));
  }
}

/// Imports a folder by the program itself.
void import_cruise(const std::string& tract, const std::string& folder) {
  const Ran imported = run_program(build_path("bin/oaklight import ") + tract + " " + folder);
  ASSERT_EQ(imported.exit_code, 0) << imported.out << imported.errors;
}

/// Holds every figure of a tract file against R. The name is for the report.
void hold_tract(const std::string& tract, const std::vector<RLine>& lines,
                const std::string& name) {
  SetClock clock{0};
  const auto session =
      TractSession::open(tract, OpenMode::read_only, {clock, system_random(), "test"});
  ASSERT_TRUE(session) << to_text(session.error());
  const TractData data = session->data().value();
  Opinion r(lines, tract);
  const TractKnowledge& known = session->knowledge();
  const auto e = estimate_tract(data, known, asked(DegreesOfFreedom::satterthwaite, 0.95)).value();
  const auto e_90 =
      estimate_tract(data, known, asked(DegreesOfFreedom::plots_less_strata, 0.90)).value();
  for (std::size_t i = 0; i < e.stands.size(); ++i) {
    for (const Stand& s : data.stands) {
      if (s.id == e.stands[i].stand) {
        hold_area(r, s.name, *e.stands[i].figures, *e_90.stands[i].figures);
      }
    }
  }
  hold_area(r, "all", *e.all, *e_90.all);
  hold_designs(r, data, session->knowledge().species());
  pass_over_what_a_stand_lacks(r, e, data);
  r.fail_on_lines_not_asked_for();
  EXPECT_GT(r.compared(), 200);
  result_table("survey", {"cruise", "compared"}).add({name, std::to_string(r.compared())});
}

class Survey : public testing::Test {
 protected:
  void SetUp() override {
    if (!survey_is_installed()) GTEST_SKIP() << "needs R with package survey, and sqlite3";
  }
};

TEST_F(Survey, AgreesOnTheDemoTract) {
  const TempDir out;
  const std::string tract = (out / "demo.gpkg").string();
  import_cruise(tract, source_path("demo_plots"));
  hold_tract(tract, r_lines("survey.R " + tract), "demo tract");
}

TEST_F(Survey, AgreesOnRandomCruises) {
  constexpr std::uint64_t kCruises = 10;
  const TempDir out;
  const auto tract_of = [&](std::uint64_t seed) {
    return (out / (std::to_string(seed) + ".gpkg")).string();
  };
  std::string call = "survey.R";
  for (std::uint64_t seed = 1; seed <= kCruises; ++seed) {
    SCOPED_TRACE("random cruise " + std::to_string(seed));
    const TempDir folder;
    write_random_cruise(folder.path().string(), seed);
    import_cruise(tract_of(seed), folder.path().string());
    call += " " + tract_of(seed);
  }
  const auto lines = r_lines(call);
  for (std::uint64_t seed = 1; seed <= kCruises; ++seed) {
    SCOPED_TRACE("random cruise " + std::to_string(seed));
    hold_tract(tract_of(seed), lines, "random cruise " + std::to_string(seed));
  }
}

}  // namespace
}  // namespace oaklight::test
