#include "tests/optimum/program_by_glpk.hpp"

#include <glpk.h>

#include <functional>
#include <map>
#include <memory>
#include <stdexcept>

#include "core/measure/stocking.hpp"
#include "tests/optimum/local_rule.hpp"

namespace oaklight::test {
namespace {

using Set = LocalRule::Set;

std::vector<Set> subsets(const Set& of, std::size_t most) {
  std::vector<Set> all{{}};
  for (const std::uint32_t item : of) {
    const std::size_t count = all.size();
    for (std::size_t i = 0; i < count; ++i) {
      if (all[i].size() >= most) continue;
      Set more = all[i];
      more.insert(item);
      all.push_back(std::move(more));
    }
  }
  return all;
}

/// A linear guard: sum of take[t] y[t] + sum of release[c] x[c] <= room.
struct Row {
  std::map<std::uint32_t, double> take, release;
  double room;
};

std::vector<Row> rows_of(const ReleaseProblem& p) {
  if (!p.guards) return {};
  const Guards& g = *p.guards;
  const StandDensity& b = g.before;
  const double acres = g.covered.value;
  const auto row = [&](double room, const std::function<double(const CutTally&)>& of) {
    Row r{{}, {}, room};
    for (std::uint32_t t = 0; t < p.graph.trees().size(); ++t) {
      CutTally tally;
      tally.take(p.graph.trees()[t].facts, p.traits[t], 1.0);
      r.take[t] = of(tally) / acres;
    }
    return r;
  };
  const auto release_row = [&](double room, const std::function<double(const CutTally&)>& of) {
    Row r{{}, {}, room};
    for (const std::uint32_t c : p.ranked) {
      CutTally tally;
      tally.release(p.graph.trees()[c].facts, 1.0);
      r.release[c] = of(tally) / acres;
    }
    return r;
  };
  constexpr double kSlack = 1e-9;  // as guards.cpp
  std::vector<Row> rows;
  const auto stocking = [](const CutTally& t) { return upland_oak_stocking(t.counted).value; };
  const double stands = upland_oak_stocking(b.guard).value;
  rows.push_back(row(stands - g.limits.stocking_floor.value + kSlack, stocking));
  rows.push_back(row(stands - g.limits.b_line.value + kSlack, stocking));
  const auto ba = [](const CutTally& t) { return t.ba.value; };
  rows.push_back(row(b.ba.value - g.limits.ba_floor.value + kSlack, ba));
  rows.push_back(row(g.limits.removal_max.value / 100.0 * b.ba.value + kSlack, ba));
  rows.push_back(
      release_row(g.counts.max.value + kSlack, [](const CutTally& t) { return t.crops.trees; }));
  rows.push_back(release_row(g.counts.crowns_max.value + kSlack,
                             [](const CutTally& t) { return crown_competition(t.crops).value; }));
  const auto share = [&](double part, double whole, double limit, auto part_of, auto whole_of) {
    const double least = std::min(part / whole, limit);
    rows.push_back(row(part - least * whole + kSlack * 1e-2,
                       [=](const CutTally& t) { return part_of(t) - least * whole_of(t); }));
    if (least > 0.0) rows.push_back(row(whole * (1.0 - 1e-6), whole_of));  // some are left
  };
  const auto oak = [](const CutTally& t) { return t.ba_oak.value; };
  if (b.ba_white_oak.value > 0.0 && b.ba_red_oak.value > 0.0) {
    const double least = g.limits.oak_group_min.value / 100.0;
    share(
        b.ba_white_oak.value, b.ba_oak.value, least,
        [](const CutTally& t) { return t.ba_white_oak.value; }, oak);
    share(
        b.ba_red_oak.value, b.ba_oak.value, least,
        [](const CutTally& t) { return t.ba_red_oak.value; }, oak);
  }
  const double oak_min = g.limits.oak_min.value / 100.0;
  if (g.goal == Goal::mast && b.ba.value > 0.0 && b.ba_oak / b.ba >= oak_min) {
    share(b.ba_oak.value, b.ba.value, oak_min, oak, ba);
  }
  return rows;
}

/// Maximise  sum over c, w of points[c,w] z[c,w]
///
/// x[c]    crop tree c is released                     0 or 1
/// h[t]    oak t is held                               0 or 1
/// z[c,w]  c is released with exactly the fellows F(w) released and the oaks H(w) held; there is
///         one for each such pair of sets with which c reaches its sides
/// y[t]    tree t is taken
///
///   sum over w of z[c,w] = x[c]
///   z[c,w] <= x[f]      f in F(w)       z[c,w] <= 1 - x[f]      other fellows of c
///   z[c,w] <= h[t]      t in H(w)       z[c,w] <= 1 - h[t]      other oaks beside c
///   h[c] <= 1 - x[c]                    a released tree is not held
///   y[t] >= z[c,w]      t in takes of c under w
///   y[t] <= sum of those z[c,w]         nothing is taken for nobody
///   y[t] = 1            invasive plants
///   sum over S of x <= |S| - 1          each connected set S of meeting candidates, one more than
///                                       a unit may have
///   each guard          rows_of
class Program {
 public:
  Program(const ReleaseProblem& problem, const std::vector<bool>& holdable)
      : p_(problem), rule_{problem}, lp_(glp_create_prob(), glp_delete_prob) {
    glp_term_out(GLP_OFF);
    glp_set_obj_dir(lp_.get(), GLP_MAX);
    for (const std::uint32_t c : p_.ranked) x_[c] = binary(0.0);
    for (std::uint32_t t = 0; t < holdable.size(); ++t) {
      if (holdable[t]) h_[t] = binary(0.0);
    }
    for (const auto& [tree, column] : h_) {
      if (x_.count(tree) > 0) at_most({{column, 1.0}, {x_[tree], 1.0}}, 1.0);
    }
    for (const std::uint32_t c : p_.ranked) add_ways(c);
    add_takes();
    add_units();
    add_guards();
  }

  std::optional<std::int64_t> solve() {
    // No presolver: GLPK's lets a row be broken by a thousandth, which is a guard broken.
    glp_smcp simplex;
    glp_init_smcp(&simplex);
    simplex.msg_lev = GLP_MSG_OFF;
    simplex.tol_bnd = 1e-9;
    glp_adv_basis(lp_.get(), 0);
    if (glp_simplex(lp_.get(), &simplex) != 0) throw std::runtime_error("GLPK: no relaxation");
    if (glp_get_status(lp_.get()) == GLP_NOFEAS) return std::nullopt;
    glp_iocp options;
    glp_init_iocp(&options);
    options.msg_lev = GLP_MSG_OFF;
    const int code = glp_intopt(lp_.get(), &options);
    if (code != 0) throw std::runtime_error("GLPK: code " + std::to_string(code));
    if (glp_mip_status(lp_.get()) == GLP_NOFEAS) return std::nullopt;
    if (glp_mip_status(lp_.get()) != GLP_OPT) throw std::runtime_error("GLPK: not optimal");
    return std::llround(glp_mip_obj_val(lp_.get()));
  }

 private:
  using Terms = std::map<int, double>;

  int binary(double points) {
    const int column = glp_add_cols(lp_.get(), 1);
    glp_set_col_kind(lp_.get(), column, GLP_BV);
    glp_set_obj_coef(lp_.get(), column, points);
    return column;
  }
  void row(const Terms& terms, int type, double low, double high) {
    const int r = glp_add_rows(lp_.get(), 1);
    glp_set_row_bnds(lp_.get(), r, type, low, high);
    std::vector<int> columns{0};
    std::vector<double> values{0.0};
    for (const auto& [column, value] : terms) {
      columns.push_back(column);
      values.push_back(value);
    }
    glp_set_mat_row(lp_.get(), r, static_cast<int>(terms.size()), columns.data(), values.data());
  }
  void at_most(const Terms& terms, double high) { row(terms, GLP_UP, 0.0, high); }

  void add_ways(std::uint32_t c) {
    const Set fellows = rule_.fellows(c);
    Set oaks;
    for (const std::uint32_t i : p_.graph.around(c)) {
      const std::uint32_t n = p_.graph.contacts()[i].neighbour;
      if (h_.count(n) > 0 && crowds(p_.roles[i])) oaks.insert(n);
    }
    const auto most = static_cast<std::size_t>(
        std::max(p_.sides.group_max, rule_.thin(c) ? p_.sides.group_max_thin : 0) - 1);
    Terms sum{{x_[c], -1.0}};
    for (const Set& with : subsets(fellows, most)) {
      for (const Set& held : subsets(oaks, oaks.size())) {
        Set released = with;
        released.insert(c);
        const LocalRule::Answer answer = rule_.of(c, released, held);
        if (!answer.reaches) continue;
        const int z = binary(static_cast<double>(answer.points));
        sum[z] = 1.0;
        tie(z, fellows, with, x_);
        tie(z, oaks, held, h_);
        for (const std::uint32_t tree : answer.takes) takers_[tree].push_back(z);
      }
    }
    row(sum, GLP_FX, 0.0, 0.0);
  }

  void tie(int z, const Set& all, const Set& in, std::map<std::uint32_t, int>& columns) {
    for (const std::uint32_t item : all) {
      if (in.count(item) > 0) {
        at_most({{z, 1.0}, {columns[item], -1.0}}, 0.0);
      } else {
        at_most({{z, 1.0}, {columns[item], 1.0}}, 1.0);
      }
    }
  }

  void add_takes() {
    for (const std::uint32_t tree : p_.taken_anyway) y_[tree] = binary(0.0);
    for (const auto& entry : y_) row({{entry.second, 1.0}}, GLP_FX, 1.0, 1.0);
    for (const auto& [tree, ways] : takers_) {
      if (y_.count(tree) > 0) continue;
      const int y = y_[tree] = binary(0.0);
      Terms sum{{y, 1.0}};
      for (const int z : ways) {
        at_most({{z, 1.0}, {y, -1.0}}, 0.0);
        sum[z] = -1.0;
      }
      at_most(sum, 0.0);
    }
  }

  void add_units() {
    const auto meetings = rule_.meetings();
    std::set<Set> done;
    std::vector<Set> grow;
    for (const std::uint32_t c : p_.ranked) grow.push_back({c});
    while (!grow.empty()) {
      const Set set = grow.back();
      grow.pop_back();
      if (!done.insert(set).second) continue;
      bool thin = true;
      for (const std::uint32_t c : set) thin = thin && rule_.thin(c);
      const int most = thin ? p_.sides.group_max_thin : p_.sides.group_max;
      if (static_cast<int>(set.size()) > most) {
        Terms sum;
        for (const std::uint32_t c : set) sum[x_[c]] = 1.0;
        at_most(sum, static_cast<double>(set.size()) - 1.0);
        continue;
      }
      for (const auto& [a, b] : meetings) {
        if (set.count(a) == 0 || set.count(b) > 0) continue;
        Set more = set;
        more.insert(b);
        grow.push_back(more);
      }
    }
  }

  void add_guards() {
    for (const Row& guard : rows_of(p_)) {
      Terms terms;
      for (const auto& [tree, y] : y_) {
        const auto found = guard.take.find(tree);
        if (found != guard.take.end()) terms[y] = found->second;
      }
      for (const auto& [crop, use] : guard.release) terms[x_[crop]] = use;
      if (terms.empty() && guard.room < 0.0) {  // GLPK wants a column
        terms[binary(0.0)] = 0.0;
      }
      at_most(terms, guard.room);
    }
  }

  const ReleaseProblem& p_;
  LocalRule rule_;
  std::unique_ptr<glp_prob, void (*)(glp_prob*)> lp_;
  std::map<std::uint32_t, int> x_, h_, y_;
  std::map<std::uint32_t, std::vector<int>> takers_;
};

}  // namespace

std::optional<std::int64_t> best_by_glpk(const ReleaseProblem& problem,
                                         const std::vector<bool>& holdable) {
  return Program(problem, holdable).solve();
}

std::optional<std::int64_t> best_by_trying_all(const ReleaseProblem& problem,
                                               const std::vector<bool>& holdable) {
  const LocalRule rule{problem};
  const auto meetings = rule.meetings();
  Set candidates(problem.ranked.begin(), problem.ranked.end());
  Set oaks;
  for (std::uint32_t t = 0; t < holdable.size(); ++t) {
    if (holdable[t]) oaks.insert(t);
  }
  std::optional<std::int64_t> best;
  const std::vector<Set> holds = subsets(oaks, oaks.size());
  for (const Set& released : subsets(candidates, candidates.size())) {
    bool units = true;
    for (const std::uint32_t c : released) {
      Set unit{c};
      for (std::size_t size = 0; size != unit.size();) {
        size = unit.size();
        for (const auto& [a, b] : meetings) {
          if (unit.count(a) > 0 && released.count(b) > 0) unit.insert(b);
        }
      }
      const bool thin =
          std::all_of(unit.begin(), unit.end(), [&](std::uint32_t t) { return rule.thin(t); });
      const int most = thin ? problem.sides.group_max_thin : problem.sides.group_max;
      units = units && static_cast<int>(unit.size()) <= most;
    }
    if (!units) continue;
    for (const Set& held : holds) {
      std::int64_t points = 0;
      Set taken(problem.taken_anyway.begin(), problem.taken_anyway.end());
      bool fine = true;
      CutTally tally;
      for (const std::uint32_t c : released) {
        fine = fine && held.count(c) == 0;
        const LocalRule::Answer answer = rule.of(c, released, held);
        fine = fine && answer.reaches;
        points += answer.points;
        taken.insert(answer.takes.begin(), answer.takes.end());
        tally.release(problem.graph.trees()[c].facts, 1.0);
      }
      for (const std::uint32_t t : taken) {
        tally.take(problem.graph.trees()[t].facts, problem.traits[t], 1.0);
      }
      fine = fine && (!problem.guards || all_hold(check_guards(*problem.guards, tally)));
      if (fine && (!best || points > *best)) best = points;
    }
  }
  return best;
}

}  // namespace oaklight::test
