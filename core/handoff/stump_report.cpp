// The check as an audit by sample and as a table for machines.
#include <algorithm>

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"
#include "core/handoff/order.hpp"
#include "core/handoff/stump_check.hpp"

namespace oaklight {
namespace {

std::string number_cell(const std::optional<double>& value, int decimals) {
  return value ? number_text(*value, decimals) : "";
}

template <class Q>
void add_between(std::vector<std::string>& cells, const std::optional<Between<Q>>& value,
                 int decimals) {
  for (const auto end : {&Between<Q>::likely, &Between<Q>::low, &Between<Q>::high}) {
    cells.push_back(value ? number_text(((*value).*end).value, decimals) : "");
  }
}

void add_place(std::vector<std::string>& cells, const std::optional<Position>& place) {
  cells.push_back(number_cell(place ? std::optional(place->latitude.value) : std::nullopt, 6));
  cells.push_back(number_cell(place ? std::optional(place->longitude.value) : std::nullopt, 6));
}

std::string caution_cell(const std::vector<Caution>& cautions) {
  std::string text;
  for (const Caution& caution : cautions) {
    if (!text.empty()) text += " | ";
    text += std::string(word_of(caution.severity)) + " " + caution.code + ": " + caution.text;
  }
  return safe_csv_cell(text);
}

std::vector<std::string> header() {
  return {"state",
          "tag",
          "cautions",
          "species",
          "stand",
          "dbh_in",
          "dbh_low_in",
          "dbh_high_in",
          "dbh_from",
          "crop_tree",
          "wound",
          "wound_place",
          "volume_bf",
          "volume_low_bf",
          "volume_high_bf",
          "log_rule",
          "volume_cords",
          "volume_low_cords",
          "volume_high_cords",
          "times_noted",
          "latitude_deg",
          "longitude_deg",
          "seen_on",
          "note"};
}

/// Cells from the volume to the count of notes, of a row that has none.
constexpr std::size_t kVolumeCells = 7;

std::string listed_record(const ListedTree& tree) {
  const std::string dbh = number_text(tree.dbh.inches().value, 1);
  std::vector<std::string> cells = {std::string(word_of(tree.state)),
                                    safe_csv_cell(tree.tag),
                                    caution_cell(tree.cautions),
                                    safe_csv_cell(tree.species),
                                    safe_csv_cell(tree.stand),
                                    dbh,
                                    dbh,
                                    dbh,
                                    "tape",
                                    "no",
                                    "",
                                    ""};
  cells.resize(cells.size() + kVolumeCells);
  cells.push_back(std::to_string(tree.findings));
  add_place(cells, tree.position);
  cells.emplace_back();
  cells.push_back(safe_csv_cell(tree.note));
  return csv_record(cells);
}

std::string unmarked_record(const UnmarkedTree& tree, const StumpCheck& check) {
  std::vector<std::string> cells = {
      tree.leave_tree || tree.crop ? "leave_tree_cut" : "cut_not_marked", safe_csv_cell(tree.tag),
      tree.hung ? csv_cell("stop HUNG: cut and not down") : "", safe_csv_cell(tree.species),
      safe_csv_cell(tree.stand)};
  add_between(cells, tree.dbh, 1);
  cells.emplace_back(!tree.dbh ? "" : tree.measured ? "tape" : "stump");
  cells.emplace_back(tree.crop ? "yes" : "no");
  cells.resize(cells.size() + 2);
  add_between(cells, tree.board_feet, 0);
  cells.push_back(tree.board_feet ? csv_cell(check.log_rule) : "");
  add_between(cells, tree.cords, 2);
  cells.emplace_back("1");
  add_place(cells, tree.position);
  cells.push_back(csv_cell(tree.seen_on));
  cells.push_back(safe_csv_cell(tree.note));
  return csv_record(cells);
}

std::string hurt_record(const HurtTree& tree) {
  std::vector<std::string> cells = {tree.badly() ? "badly_hurt" : "hurt", safe_csv_cell(tree.tag),
                                    "", safe_csv_cell(tree.species), safe_csv_cell(tree.stand)};
  cells.resize(cells.size() + 4);
  cells.emplace_back(tree.crop ? "yes" : "no");
  cells.emplace_back(tree.wound ? word_of(*tree.wound) : "");
  cells.emplace_back(tree.place ? word_of(*tree.place) : "");
  cells.resize(cells.size() + kVolumeCells);
  cells.emplace_back("1");
  add_place(cells, tree.position);
  cells.push_back(csv_cell(tree.seen_on));
  cells.push_back(safe_csv_cell(tree.note));
  return csv_record(cells);
}

}  // namespace

Result<StumpAudit> audit_stumps(const StumpCheck& check, int allowed, Percent bound,
                                Confidence confidence, std::uint64_t seed,
                                std::optional<int> look_at) {
  const int list = static_cast<int>(check.listed.size());
  const auto plan = audit_plan(list, allowed, bound, confidence);
  if (!plan) return plan.error();
  StumpAudit audit{*plan, bound, confidence, list, seed, {}, {}, 0, {}};
  const int sample = look_at.value_or(plan->sample);
  const auto places = audit_draw(list, sample, seed);
  if (!places || sample < 1) {
    return Error{ErrorCode::out_of_range,
                 "An audit looks at 1 to " + std::to_string(list) + " of the listed trees.",
                 "audit", "Leave the number out to look at as many as it takes."};
  }
  // By tag, so that the draw does not change while the walk goes on.
  std::vector<const ListedTree*> trees;
  for (const ListedTree& tree : check.listed) trees.push_back(&tree);
  std::ranges::sort(trees, [](const ListedTree* a, const ListedTree* b) {
    return a->tag != b->tag ? tag_before(a->tag, b->tag) : a->tree < b->tree;
  });
  std::vector<Stop> stops;
  std::vector<const ListedTree*> drawn;
  for (const int place : *places) {
    drawn.push_back(trees[static_cast<std::size_t>(place)]);
    stops.push_back({drawn.back()->tag, drawn.back()->position});
  }
  for (const std::size_t i : walking_order(stops, check.tract.landing)) {
    const ListedTree& tree = *drawn[i];
    audit.tags.push_back(tree.tag);
    if (tree.state == ListState::not_seen) audit.not_seen.push_back(tree.tag);
    if (tree.state != ListState::not_seen && tree.state != ListState::done) ++audit.wrong;
  }
  if (audit.not_seen.empty()) {
    const auto greatest = greatest_wrong_share(list, sample, audit.wrong, confidence);
    if (!greatest) return greatest.error();
    audit.greatest_share = *greatest;
  }
  return audit;
}

std::uint64_t audit_seed(Day day) {
  return static_cast<std::uint64_t>(static_cast<int>(day.year())) * 10'000U +
         static_cast<unsigned>(day.month()) * 100U + static_cast<unsigned>(day.day());
}

std::string stump_check_csv(const StumpCheck& check) {
  std::string text = csv_record(header());
  for (const ListedTree& tree : check.listed) text += listed_record(tree);
  for (const UnmarkedTree& tree : check.unmarked) text += unmarked_record(tree, check);
  for (const HurtTree& tree : check.hurt) text += hurt_record(tree);
  return text;
}

}  // namespace oaklight
