#include "core/session/decide.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>

#include "core/handoff/tree_cautions.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/release/marks.hpp"
#include "core/release/release_graph.hpp"
#include "core/release/stand_facts.hpp"
#include "core/release/wording.hpp"
#include "core/session/card_view.hpp"
#include "core/session/join_work.hpp"
#include "core/session/local.hpp"

namespace oaklight {
namespace {

PacketTables packet_tables(const TractKnowledge& knowledge) {
  return {knowledge.species(), knowledge.cautions, knowledge.seasons, &knowledge.release, {}};
}

/// Says whose list each tree goes on, once, for work on any day: what a beginner may touch must not
/// change with the day on which a packet is printed.
Status add_destinations(TractData data, const TractKnowledge& knowledge,
                        std::vector<StandPlan>& plans) {
  data.marks.clear();
  for (const StandPlan& plan : plans) {
    data.marks.insert(data.marks.end(), plan.marks.begin(), plan.marks.end());
  }
  const auto marks = with_destinations(data, packet_tables(knowledge),
                                       {.limits = knowledge.release.settings.cautions});
  if (!marks) return marks.error();
  auto mark = marks->begin();
  for (StandPlan& plan : plans) {
    for (Mark& own : plan.marks) own.destination = (mark++)->destination;
  }
  return Done{};
}

/// The plot's design where it is a fixed plot; nullptr for a point.
const FixedDesign* fixed_design_of(const TractData& data, const Plot& plot) {
  const auto cruise =
      std::ranges::find_if(data.cruises, [&](const Cruise& c) { return c.id == plot.cruise; });
  return cruise == data.cruises.end() ? nullptr : std::get_if<FixedDesign>(&cruise->design);
}

bool says_the_same(const Mark& a, const Mark& b) {
  return a.verdict == b.verdict && a.method == b.method && a.product == b.product &&
         a.destination == b.destination && a.reason == b.reason && a.rules == b.rules &&
         a.rule_version == b.rule_version;
}

bool was_walked(const TractData& data, StandId stand) {
  return std::ranges::any_of(data.walk_trees,
                             [&](const WalkTree& tree) { return tree.stand == stand; });
}

Error nothing_walked() {
  return {ErrorCode::no_data, "No trees of a marking walk are recorded.", "crop_trees",
          "Record crop tree cards first: import crop_trees.csv."};
}

/// The marks as they would be stored: a person's stay, the others are the plan's.
std::vector<Mark> stored_marks(const TractData& data, const std::vector<Mark>& planned) {
  std::map<WalkTreeId, Mark> by_tree;
  for (const Mark& mark : planned) by_tree.insert_or_assign(mark.tree, mark);
  for (const Mark& mark : data.marks) {
    if (mark.by_hand) by_tree.insert_or_assign(mark.tree, mark);
  }
  std::vector<Mark> marks;
  for (const auto& [tree, mark] : by_tree) marks.push_back(mark);
  std::ranges::sort(marks, {}, &Mark::id);
  return marks;
}

/// The tags on one card of neighbours that a person decided otherwise than the rules.
std::string decided_otherwise(const CardView& card) {
  std::vector<std::string> tags;
  for (const NeighbourView& neighbour : card.neighbours) {
    if (neighbour.by_hand && neighbour.marked != neighbour.recommended) {
      tags.push_back(neighbour.tag);
    }
  }
  return joined(tags);
}

/// Where a person decided a neighbour otherwise, the plan's count of a crop tree's free sides is
/// not what the work will leave: the reason on the list has to say what will be.
Status count_what_hands_decided(TractData data, const TractKnowledge& knowledge, StandPlan& plan) {
  if (std::ranges::none_of(data.marks, &Mark::by_hand)) return Done{};
  data.marks = stored_marks(data, plan.marks);
  const auto cards = card_views(LiveTract(std::move(data)), knowledge, plan.stand);
  if (!cards) return cards.error();
  for (const CardView& card : *cards) {
    const std::string hands = decided_otherwise(card);
    const auto own = std::ranges::find(plan.marks, card.crop, &Mark::tree);
    if (hands.empty() || own == plan.marks.end() || own->verdict != Verdict::keep) continue;
    const int after = card.after.sides_free;
    own->reason = "Keep: crop tree; " + side_count(after) + " of its crown " +
                  (after == 1 ? "is" : "are") + " free after the work, " +
                  std::to_string(card.before.sides_free) + " before, with " + hands +
                  " decided by hand.";
  }
  return Done{};
}

/// One stand without the destinations of its marks.
Result<StandPlan> decide_stand(const TractData& data, const TractKnowledge& knowledge,
                               IdSource& ids, StandId stand) {
  const auto input = input_from_cards(data, stand, knowledge.release);
  if (!input) return input.error();
  ReleasePlan plan = recommend(*input);
  std::vector<Mark> marks = to_marks(plan, *input, ids);
  StandPlan decided{stand, std::move(plan), std::move(marks)};
  const Status counted = count_what_hands_decided(data, knowledge, decided);
  if (!counted) return counted.error();
  return decided;
}

}  // namespace

Result<CruiseEstimate> estimate_tract(const TractData& data, const TractKnowledge& knowledge,
                                      const EstimateOptions& options) {
  return cruise_estimate(data, knowledge.species(), with_local(options, data, knowledge));
}

Result<std::vector<StandFigures>> stand_figures(const TractData& data,
                                                const TractKnowledge& knowledge,
                                                const EstimateOptions& options) {
  const auto cruised = cruised_stands(data);
  if (!cruised) return cruised.error();
  return stand_figures(*cruised, knowledge, options);
}

Result<std::vector<StandFigures>> stand_figures(const std::vector<CruisedStand>& cruised,
                                                const TractKnowledge& knowledge,
                                                const EstimateOptions& options) {
  std::vector<StandFigures> figures;
  for (const CruisedStand& stand : cruised) {
    if (!stand.sample) continue;
    const std::array<const StandSample*, 1> one = {&*stand.sample};
    const auto stocking = stand_stocking(one, knowledge.species(), options,
                                         knowledge.release.settings.guards.counted_from);
    if (!stocking) return stocking.error();
    const auto made_of = composition(one, knowledge.species());
    figures.push_back(
        {stand.stand->id, *stocking, made_of ? std::optional(*made_of) : std::nullopt});
  }
  return figures;
}

Result<StandPlan> plan_stand(const TractData& data, const TractKnowledge& knowledge, IdSource& ids,
                             StandId stand) {
  if (!was_walked(data, stand)) return nothing_walked();
  const auto decided = decide_stand(data, knowledge, ids, stand);
  if (!decided) return decided.error();
  std::vector<StandPlan> one{*decided};
  const Status destined = add_destinations(data, knowledge, one);
  if (!destined) return destined.error();
  return one.front();
}

Result<std::vector<StandPlan>> plan_stands(const TractData& data, const TractKnowledge& knowledge,
                                           IdSource& ids) {
  std::vector<StandPlan> plans;
  for (const Stand& stand : data.stands) {
    if (!was_walked(data, stand.id)) continue;
    auto decided = decide_stand(data, knowledge, ids, stand.id);
    if (!decided) return decided.error();
    plans.push_back(*std::move(decided));
  }
  if (plans.empty()) return nothing_walked();
  const Status destined = add_destinations(data, knowledge, plans);
  if (!destined) return destined.error();
  return plans;
}

Result<std::vector<MappedPlotPlan>> plan_mapped_plots(const TractData& data,
                                                      const TractKnowledge& knowledge) {
  std::vector<MappedPlotPlan> plans;
  for (const Plot& plot : data.plots) {
    const FixedDesign* design = fixed_design_of(data, plot);
    if (design == nullptr || plot.status != PlotStatus::measured) continue;
    std::vector<Tree> trees;
    std::ranges::copy_if(data.trees, std::back_inserter(trees),
                         [&](const Tree& tree) { return tree.plot == plot.id; });
    const auto mapped = map_of_plot(trees);
    if (!mapped) continue;  // not a stem map: some tree has no azimuth or distance
    auto facts = stand_facts(data, plot.stand, knowledge.release);
    if (!facts) return facts.error();
    facts->covered = design->acres();
    const CircleBounds bounds{plot_radius(design->acres())};
    const ReleaseInput input{knowledge.release,
                             graph_from_map(*mapped, bounds, knowledge.release.settings.contact),
                             *std::move(facts),
                             {},
                             {},
                             {}};
    ReleasePlan plan = recommend(input);
    DecidedPlot decided{design->acres(), {}, plan.trees};
    for (const ReleaseTree& tree : input.graph.trees()) decided.trees.push_back(tree.facts);
    plans.push_back({plot.id, plot.stand, std::move(plan), std::move(decided)});
  }
  if (plans.empty()) {
    return Error{ErrorCode::no_data,
                 "No fixed plot has azimuth and distance for each of its trees.",
                 "trees/azimuth_deg", "Record both for every tree of a plot to map its stems."};
  }
  return plans;
}

Result<std::vector<StandPrescription>> prescriptions(const TractData& data,
                                                     const TractKnowledge& knowledge,
                                                     const std::vector<MappedPlotPlan>& plans,
                                                     Confidence confidence) {
  std::vector<StandPrescription> list;
  for (const Stand& stand : data.stands) {
    std::vector<DecidedPlot> plots;
    for (const MappedPlotPlan& plan : plans) {
      if (plan.stand == stand.id) plots.push_back(plan.decided);
    }
    if (plots.empty()) continue;
    for (const Plot& plot : data.plots) {
      const FixedDesign* design = fixed_design_of(data, plot);
      const bool empty = plot.stand == stand.id && plot.status == PlotStatus::empty;
      if (empty && design != nullptr) plots.push_back({design->acres(), {}, {}});
    }
    auto told = prescription(plots, knowledge.release, confidence);
    if (!told) return told.error();
    list.push_back({stand.id, *std::move(told)});
  }
  return list;
}

Action marks_action(const TractData& data, const std::vector<StandPlan>& plans) {
  std::map<WalkTreeId, Mark> known;
  for (const Mark& mark : data.marks) known.insert_or_assign(mark.tree, mark);
  Action action{"recommend", {}};
  for (const StandPlan& plan : plans) {
    for (Mark mark : plan.marks) {
      const auto before = known.find(mark.tree);
      if (before != known.end()) {
        if (before->second.by_hand || says_the_same(before->second, mark)) continue;
        mark.id = before->second.id;
      }
      action.changes.emplace_back(std::move(mark));
    }
  }
  return action;
}

Result<Action> recommend_stand(const TractData& data, const TractKnowledge& knowledge,
                               IdSource& ids, StandId stand) {
  const auto plan = plan_stand(data, knowledge, ids, stand);
  if (!plan) return plan.error();
  Action action = marks_action(data, {*plan});
  const auto record =
      std::ranges::find_if(data.stands, [&](const Stand& s) { return s.id == stand; });
  if (record != data.stands.end()) action.label += " for " + record->name;
  return action;
}

Result<Packet> packet_for(const TractData& data, const TractKnowledge& knowledge,
                          PacketReader reader, PacketOptions options) {
  const auto twice = tag_used_twice(data);
  if (twice && reader != PacketReader::owner) {
    return Error{ErrorCode::duplicate, "Tag " + *twice + " is on two trees.", "walk_tree/" + *twice,
                 "No list may go to a stranger like that. Find both trees, and give one of them a "
                 "new tag, on the tree and here."};
  }
  options.table_versions = knowledge.table_versions;
  options.limits = knowledge.release.settings.cautions;
  PacketTables tables = packet_tables(knowledge);
  tables.local = local_numbers(data, knowledge);
  return make_packet(data, tables, reader, options);
}

}  // namespace oaklight
