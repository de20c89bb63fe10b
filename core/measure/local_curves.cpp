#include "core/measure/local_curves.hpp"

#include <Eigen/Dense>
#include <unsupported/Eigen/NonLinearOptimization>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr double kBreastHeight = 4.5;  // ft
constexpr int kCoefficients = 2;

using Measured = std::span<const SizedTree>;

double value_at(CurveKind kind, double a, double b, double dbh) {
  return kind == CurveKind::crown_width ? a + b * dbh
                                        : kBreastHeight + std::exp(a + b / (dbh + 1.0));
}

/// a and b of the straight line y = a + b x.
Eigen::Vector2d straight_line(const Eigen::VectorXd& x, const Eigen::VectorXd& y) {
  Eigen::MatrixXd design(x.size(), kCoefficients);
  design.col(0).setOnes();
  design.col(1) = x;
  return design.colPivHouseholderQr().solve(y);
}

/// How far the height curve misses each tree, and how that changes with its coefficients.
struct HeightMisses {
  Measured trees;

  [[nodiscard]] int inputs() const { return kCoefficients; }
  [[nodiscard]] int values() const { return static_cast<int>(trees.size()); }
  int operator()(const Eigen::VectorXd& c, Eigen::VectorXd& misses) const {
    for (int i = 0; i < values(); ++i) {
      const SizedTree& t = trees[static_cast<std::size_t>(i)];
      misses[i] = value_at(CurveKind::height, c[0], c[1], t.dbh.value) - t.length.value;
    }
    return 0;
  }
  int df(const Eigen::VectorXd& c, Eigen::MatrixXd& jacobian) const {
    for (int i = 0; i < values(); ++i) {
      const double x = 1.0 / (trees[static_cast<std::size_t>(i)].dbh.value + 1.0);
      const double e = std::exp(c[0] + c[1] * x);
      jacobian(i, 0) = e;
      jacobian(i, 1) = e * x;
    }
    return 0;
  }
};

Eigen::Vector2d height_curve(Measured trees) {
  Eigen::VectorXd x(trees.size()), y(trees.size());
  for (std::size_t i = 0; i < trees.size(); ++i) {
    const auto at = static_cast<Eigen::Index>(i);
    x[at] = 1.0 / (trees[i].dbh.value + 1.0);
    y[at] = std::log(trees[i].length.value - kBreastHeight);
  }
  Eigen::VectorXd c = straight_line(x, y);  // where the search begins
  HeightMisses misses{trees};
  Eigen::LevenbergMarquardt<HeightMisses> search(misses);
  search.parameters.ftol = 1e-14;
  search.parameters.xtol = 1e-14;
  search.minimize(c);
  return c;
}

Eigen::Vector2d width_line(Measured trees) {
  Eigen::VectorXd x(trees.size()), y(trees.size());
  for (std::size_t i = 0; i < trees.size(); ++i) {
    x[static_cast<Eigen::Index>(i)] = trees[i].dbh.value;
    y[static_cast<Eigen::Index>(i)] = trees[i].length.value;
  }
  return straight_line(x, y);
}

Status check_trees(CurveKind kind, Measured trees) {
  const double least = kind == CurveKind::height ? kBreastHeight : 0.0;
  for (const SizedTree& t : trees) {
    if (!std::isfinite(t.dbh.value) || !std::isfinite(t.length.value)) {
      return Error{ErrorCode::not_a_number, "A measured tree has no number.", "trees",
                   "Check its DBH and what was taped."};
    }
    if (!(t.dbh.value > 0.0) || !(t.length.value > least)) {
      return Error{ErrorCode::out_of_range, "A measured tree is too small for a curve.", "trees",
                   "Leave it out, or correct it."};
    }
  }
  const auto [thin, thick] = std::ranges::minmax_element(trees, {}, &SizedTree::dbh);
  if (static_cast<int>(trees.size()) < kCurveTrees || thick->dbh - thin->dbh < kCurveSpan) {
    return Error{ErrorCode::too_few_plots,
                 std::to_string(trees.size()) +
                     " measured trees are too few for a curve of the "
                     "place, or too much alike.",
                 "trees",
                 "Measure " + std::to_string(kCurveTrees) + " trees, thin and thick, with " +
                     number_text(kCurveSpan.value, 0) + " in of DBH between them."};
  }
  return Done{};
}

/// Trees of one kind of measurement by species.
using BySpecies = std::map<int, std::vector<SizedTree>>;

BySpecies crown_widths(std::span<const WalkTree> walk, StandId stand) {
  BySpecies found;
  for (const WalkTree& tree : walk) {
    if (tree.stand != stand) continue;
    if (!tree.crown.complete() || tree.facts.status == TreeStatus::dead) continue;
    const Feet width = (tree.crown.north->feet() + tree.crown.south->feet() +
                        tree.crown.east->feet() + tree.crown.west->feet()) /
                       2.0;
    if (!(width.value > 0.0)) continue;
    found[tree.facts.species.fia].push_back({tree.facts.dbh.inches(), width});
  }
  return found;
}

BySpecies heights(const TractData& data) {
  BySpecies found;
  std::set<std::string_view> tags;
  const auto add = [&](const TreeFacts& facts, const std::string& tag) {
    if (!facts.height || facts.status == TreeStatus::dead ||
        facts.conditions.has(Condition::broken_top)) {
      return;
    }
    if (!(facts.height->feet().value > kBreastHeight)) return;
    if (!tag.empty() && !tags.insert(tag).second) return;
    found[facts.species.fia].push_back({facts.dbh.inches(), facts.height->feet()});
  };
  for (const WalkTree& tree : data.walk_trees) add(tree.facts, tree.tag);
  for (const Tree& tree : data.trees) add(tree.facts, tree.tag);
  return found;
}

void add_curves(CurveKind kind, const BySpecies& by_species, std::vector<LocalCurve>& curves) {
  std::vector<SizedTree> all;
  for (const auto& [fia, trees] : by_species) {
    all.insert(all.end(), trees.begin(), trees.end());
    if (auto curve = fit_curve(kind, trees)) {
      curve->fia = fia;
      curves.push_back(*std::move(curve));
    }
  }
  if (auto curve = fit_curve(kind, all)) curves.push_back(*std::move(curve));
}

}  // namespace

Result<LocalCurve> fit_curve(CurveKind kind, Measured trees) {
  if (trees.empty()) {
    return Error{ErrorCode::too_few_plots, "No tree was measured.", "trees", "Measure some."};
  }
  if (const auto sound = check_trees(kind, trees); !sound) return sound.error();
  // In one order, so that the last digit does not hang on how the records came.
  std::vector<SizedTree> sorted(trees.begin(), trees.end());
  std::ranges::sort(sorted, [](const SizedTree& x, const SizedTree& y) {
    return std::pair(x.dbh, x.length) < std::pair(y.dbh, y.length);
  });
  const Eigen::Vector2d c = kind == CurveKind::height ? height_curve(sorted) : width_line(sorted);
  const bool rises = kind == CurveKind::height ? c[1] < 0.0 : c[1] > 0.0;
  if (!std::isfinite(c[0]) || !std::isfinite(c[1]) || !rises) {
    return Error{ErrorCode::out_of_range, "By the trees measured, thicker ones are not larger.",
                 "trees", "Measure more trees, thin and thick, or look for a slip among them."};
  }
  LocalCurve curve{.kind = kind,
                   .fia = {},
                   .a = c[0],
                   .b = c[1],
                   .trees = static_cast<int>(sorted.size()),
                   .residual_sd = {},
                   .from = sorted.front().dbh,
                   .to = sorted.back().dbh,
                   .measured = {}};
  double squares = 0.0;
  for (const SizedTree& t : sorted) {
    squares += std::pow(t.length.value - value_at(kind, curve.a, curve.b, t.dbh.value), 2);
    curve.measured.emplace_back(t.dbh, t.length);
  }
  curve.residual_sd = Feet{std::sqrt(squares / (curve.trees - kCoefficients))};
  return curve;
}

std::vector<LocalCurve> crown_curves(std::span<const WalkTree> walk, StandId stand) {
  std::vector<LocalCurve> curves;
  add_curves(CurveKind::crown_width, crown_widths(walk, stand), curves);
  return curves;
}

std::vector<LocalCurve> height_curves(const TractData& data) {
  std::vector<LocalCurve> curves;
  add_curves(CurveKind::height, heights(data), curves);
  return curves;
}

const LocalCurve* curve_for(std::span<const LocalCurve> curves, CurveKind kind, int fia,
                            Inches dbh) {
  const LocalCurve* pooled = nullptr;
  for (const LocalCurve& curve : curves) {
    if (curve.kind != kind || dbh < curve.from || dbh > curve.to) continue;
    if (curve.fia == fia) return &curve;
    if (!curve.fia) pooled = &curve;
  }
  return pooled;
}

Feet length_on(const LocalCurve& curve, Inches dbh) {
  return Feet{value_at(curve.kind, curve.a, curve.b, dbh.value)};
}

std::optional<Feet> fitted_crown_radius(std::span<const LocalCurve> curves, int fia, Inches dbh) {
  const LocalCurve* curve = curve_for(curves, CurveKind::crown_width, fia, dbh);
  if (curve == nullptr || !(length_on(*curve, dbh).value > 0.0)) return std::nullopt;
  return length_on(*curve, dbh) / 2.0;
}

std::string fit_words(const LocalCurve& curve, const SpeciesTable& species) {
  const Species* own = curve.fia ? species.find(SpeciesCode{*curve.fia}) : nullptr;
  const std::string of = own != nullptr ? own->common_name
                         : curve.fia    ? "species " + std::to_string(*curve.fia)
                                        : "all species";
  return "local fit, " + of + ", n = " + std::to_string(curve.trees) + ", residual SD " +
         number_text(curve.residual_sd.value, 1) + " ft, DBH " + number_text(curve.from.value, 1) +
         " to " + number_text(curve.to.value, 1) + " in";
}

namespace {

/// The value at a DBH between the lines of one species that have it; lines rise by DBH.
template <class Member>
std::optional<double> between(const LocalVolumes& table, std::optional<int> fia, Inches dbh,
                              Member member) {
  const LocalVolumeRow* below = nullptr;
  for (const LocalVolumeRow& row : table.rows) {
    const std::optional<double>& value = row.*member;
    if (row.fia != fia || !value) continue;
    if (row.dbh == dbh) return *value;
    if (row.dbh > dbh) {
      if (below == nullptr) return std::nullopt;
      const double share = (dbh - below->dbh) / (row.dbh - below->dbh);
      return *(below->*member) + share * (*value - *(below->*member));
    }
    below = &row;
  }
  return std::nullopt;
}

template <class Member>
std::optional<double> told(const LocalVolumes& table, int fia, Inches dbh, Member member) {
  const bool own = std::ranges::any_of(table.rows, [&](const LocalVolumeRow& row) {
    return row.fia == fia && (row.*member).has_value();
  });
  return between(table, own ? std::optional(fia) : std::nullopt, dbh, member);
}

}  // namespace

LocalVolume local_volume(const LocalVolumes& table, int fia, Inches dbh, LogRule rule) {
  LocalVolume volume;
  if (table.log_rule == word_of(rule)) {
    if (const auto v = told(table, fia, dbh, &LocalVolumeRow::board_feet)) {
      volume.board_feet = BoardFeet{*v};
    }
  }
  if (const auto v = told(table, fia, dbh, &LocalVolumeRow::cords)) volume.cords = Cords{*v};
  return volume;
}

}  // namespace oaklight
