// Trees of a plot. Arrivals, empty and skipped plots are in plot_status.cpp, seedlings in
// regen_work.cpp.
#include "core/session/plot_work.hpp"

#include <algorithm>
#include <utility>

#include "core/base/number_text.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/session/form_check.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

std::string tree_text(const TractKnowledge& knowledge, const TreeFacts& facts) {
  const std::string dead = facts.status == TreeStatus::dead ? "dead " : "";
  return dead + species_name(knowledge, facts.species) + " " + dbh_text(facts.dbh);
}

/// A tree farther out than its fixed plot reaches was not on it. On a point the border-tree check
/// tells, which knows slope and where the tape ended.
void check_reach(FormCheck& check, const Cruise& cruise, const TreeDraft& draft) {
  constexpr Feet kTapeRead{0.05};  // a tree on the line is read to a tenth of a foot
  if (!draft.distance || !std::holds_alternative<FixedDesign>(cruise.design)) return;
  const Feet reach = limiting_distance(cruise.design, draft.facts.dbh, TapedTo::centre);
  const bool us = draft.distance->system() == UnitSystem::us;
  check.refuse_if(draft.distance->feet() > reach + kTapeRead, ErrorCode::contradiction, "distance",
                  "The tree stands farther out than its plot reaches, " +
                      (us ? number_text(reach.value, 1) + " ft."
                          : number_text(to_metres(reach).value, 2) + " m."),
                  "Leave the tree out, or correct the distance.");
}

bool tag_in_use(const LiveTract& live, const std::string& tag, TreeId own) {
  if (tag.empty()) return false;
  return std::ranges::any_of(live.data().trees,
                             [&](const Tree& tree) { return tree.tag == tag && tree.id != own; });
}

/// What is wrong with a draft; own is nil for a new tree.
std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const Plot& plot, const TreeDraft& draft, TreeId own) {
  const TreeFacts& facts = draft.facts;
  FormCheck check(knowledge.form, "trees", plot_path(plot) + "/tree", facts.dbh.system());
  check.refuse_if(knowledge.species().find(facts.species) == nullptr, ErrorCode::unknown_species,
                  "species",
                  "Species " + std::to_string(facts.species.fia) + " is not in the table.",
                  "Choose another, or add it to the tract's species.");
  check_facts(check, facts);
  check.whole("stems", draft.stems)
      .whole("edge_count", draft.edge_count)
      .quantity("azimuth_deg", draft.azimuth)
      .length("distance", draft.distance)
      .text("tag", draft.tag);
  check.refuse_if(draft.azimuth.has_value() != draft.distance.has_value(), ErrorCode::contradiction,
                  draft.azimuth ? "distance" : "azimuth_deg",
                  "Azimuth and distance tell a place only together.", "Give both, or neither.");
  check.refuse_if(!draft.tag.empty() && draft.stems > 1, ErrorCode::contradiction, "tag",
                  "One tag is given to several stems.",
                  "Tally each stem by itself, or leave the tag out.");
  check.refuse_if(tag_in_use(live, draft.tag, own), ErrorCode::duplicate, "tag",
                  "Tag \"" + draft.tag + "\" is on another tree already.",
                  "A tag names one tree of the tract; put the plot before the number, like 7-12.");
  if (const Cruise* cruise = live.find(plot.cruise)) {
    const auto& least = cruise->min_dbh;
    check.refuse_if(
        least && facts.dbh.hundredth_mm() < least->hundredth_mm(), ErrorCode::contradiction, "dbh",
        "The tree of " + dbh_text(facts.dbh) + " is under the smallest that this cruise tallies" +
            (least ? ", " + dbh_text(*least) : "") + ".",
        "Leave it out, or correct the diameter.");
    check_reach(check, *cruise, draft);
  }
  return check.fault();
}

void fill(Tree& tree, const TreeDraft& draft) {
  tree.facts = draft.facts;
  tree.stems = draft.stems;
  tree.edge_count = draft.edge_count;
  tree.azimuth = draft.azimuth;
  tree.distance = draft.distance;
  tree.tag = draft.tag;
}

}  // namespace

TreeDraft draft_of(const Tree& tree) {
  return {tree.facts, tree.stems, tree.edge_count, tree.azimuth, tree.distance, tree.tag};
}

Result<Dbh> dbh_from_digits(std::string_view digits, UnitSystem system) {
  constexpr std::size_t kMostDigits = 6;  // far more than any diameter, far less than overflows
  if (digits.empty()) {
    return Error{ErrorCode::missing_value, "No diameter was given.", "dbh",
                 "Type its digits, tenths last: 1 2 3 is 12.3."};
  }
  const auto tenths = whole_from_text(digits.substr(0, kMostDigits + 1));
  if (!tenths) return Error{tenths.error().code, tenths.error().what, "dbh", tenths.error().fix};
  if (digits.size() > kMostDigits || *tenths < 0) {
    return Error{ErrorCode::out_of_range, "No tree has this diameter.", "dbh",
                 "Type its digits, tenths last: 1 2 3 is 12.3."};
  }
  auto dbh = Dbh::from_tenths(static_cast<std::int32_t>(*tenths), system);
  if (!dbh) return Error{dbh.error().code, dbh.error().what, "dbh", dbh.error().fix};
  return dbh;
}

std::string dbh_text(Dbh dbh) {
  return number_text(dbh.tenths() / 10.0, 1) + (dbh.system() == UnitSystem::us ? " in" : " cm");
}

std::string species_name(const TractKnowledge& knowledge, SpeciesCode code) {
  const Species* species = knowledge.species().find(code);
  return species == nullptr ? "species " + std::to_string(code.fia) : species->common_name;
}

Result<Action> tally_tree(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          PlotId plot_id, const TreeDraft& draft) {
  const Plot* plot = live.find(plot_id);
  if (plot == nullptr) return no_such("plot", to_text(plot_id));
  if (plot->status == PlotStatus::skipped) {
    return Error{ErrorCode::contradiction,
                 plot_title(*plot) + " was skipped: " + plot->skip_reason + ".", plot_path(*plot),
                 "Plan it again first."};
  }
  if (auto fault = fault_of(live, knowledge, *plot, draft, TreeId{})) return *std::move(fault);
  Tree tree{ids.next_id<TreeTag>(), plot_id, draft.facts};
  fill(tree, draft);
  Action action{"tally " + tree_text(knowledge, draft.facts), {tree}};
  if (plot->status != PlotStatus::measured) {
    Plot measured = *plot;
    measured.status = PlotStatus::measured;
    action.changes.emplace_back(std::move(measured));
  }
  return action;
}

Result<Action> correct_tree(const LiveTract& live, const TractKnowledge& knowledge, TreeId id,
                            const TreeDraft& draft) {
  const Tree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  const Plot* plot = live.find(tree->plot);
  if (plot == nullptr) return no_such("plot", to_text(tree->plot));
  if (auto fault = fault_of(live, knowledge, *plot, draft, id)) return *std::move(fault);
  Tree corrected = *tree;
  fill(corrected, draft);
  const std::string before = tree_text(knowledge, tree->facts);
  const std::string after = tree_text(knowledge, corrected.facts);
  return Action{"correct " + (before == after ? after : before + " to " + after), {corrected}};
}

Result<Action> remove_tree(const LiveTract& live, const TractKnowledge& knowledge, TreeId id) {
  const Tree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  Action action{"remove " + tree_text(knowledge, tree->facts), {Remove{id}}};
  const Plot* plot = live.find(tree->plot);
  if (plot == nullptr || live.tree_records_of(tree->plot) > 1) return action;
  // Nobody said that nothing stands there; but where seedlings were counted, somebody was there.
  Plot bare = *plot;
  if (!taken_at(*plot).counted.empty()) return action;
  const bool visited = !live.regens_of(tree->plot).empty();
  bare.status = visited ? PlotStatus::empty : PlotStatus::planned;
  action.label += "; " + plot_name(*plot) + (visited ? " is empty" : " is planned again");
  action.changes.emplace_back(std::move(bare));
  return action;
}

}  // namespace oaklight
