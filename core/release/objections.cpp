#include "core/release/objections.hpp"

#include <algorithm>
#include <map>

#include "core/release/groundwork.hpp"
#include "core/release/right_job.hpp"
#include "core/release/verdicts.hpp"
#include "core/release/wording.hpp"

namespace oaklight {
namespace {

class Critic {
 public:
  Critic(const ReleaseInput& input, const HandPlan& plan)
      : input_(input),
        ground_(input),
        trees_(input.graph.trees()),
        selection_(trees_.size()),
        gone_(trees_.size(), false) {
    std::map<std::string, std::uint32_t> by_tag;
    for (std::uint32_t i = 0; i < trees_.size(); ++i) by_tag.emplace(trees_[i].tag, i);
    crops_ = find_all(by_tag, plan.crop_tags);
    cuts_ = find_all(by_tag, plan.cut_tags);
  }

  std::vector<Objection> all() {
    object_to_job();
    for (const std::uint32_t crop : crops_) release(crop);
    for (const std::uint32_t cut : cuts_) gone_[cut] = true;
    for (const std::uint32_t crop : crops_) object_to_crop(crop);
    for (const std::uint32_t cut : cuts_) object_to_cut(cut);
    object_to_sums();
    return std::move(found_);
  }

 private:
  std::vector<std::uint32_t> find_all(const std::map<std::string, std::uint32_t>& by_tag,
                                      const std::vector<std::string>& tags) {
    std::vector<std::uint32_t> list;
    for (const std::string& tag : tags) {
      const auto it = by_tag.find(tag);
      if (it == by_tag.end()) {
        found_.push_back({tag, "No tree of this stand wears the tag " + tag + ".", {}});
      } else if (std::find(list.begin(), list.end(), it->second) == list.end()) {
        list.push_back(it->second);
      }
    }
    return list;
  }

  std::string name(std::uint32_t tree) const {
    return tree_name(trees_[tree], input_.knowledge.species);
  }

  void object(std::uint32_t tree, std::string text, std::vector<std::string> rules) {
    found_.push_back({trees_[tree].tag, std::move(text), std::move(rules)});
  }

  void object_to_job() {
    const Advice advice = is_release_right_job(input_.stand, input_.knowledge.settings);
    if (advice.treatment == Treatment::release || cuts_.empty()) return;
    found_.push_back({"", advice.text, advice.rules});
  }

  /// Crop trees in contact form a unit, as large as the rules allow.
  void release(std::uint32_t crop) {
    selection_.standing[crop] = Standing::released;
    selection_.group[crop] = crop;
    for (const std::uint32_t i : input_.graph.around(crop)) {
      const std::uint32_t other = input_.graph.contacts()[i].neighbour;
      const bool fellow = ground_.roles[i] == Role::fellow;
      if (fellow && selection_.standing[other] == Standing::released) {
        selection_.group[crop] = selection_.group[other];
      }
    }
  }

  void object_to_crop(std::uint32_t crop) {
    if (ground_.crops.worth[crop] == 0) {
      std::vector<std::string> whys;
      std::vector<std::string> rules;
      const auto faults = crop_faults(trees_[crop].facts, ground_.traits[crop], input_.stand.goal,
                                      input_.knowledge.settings);
      for (const CropFault fault : faults) {
        whys.push_back(words_of(fault).text);
        add_rules(rules, words_of(fault).rules);
      }
      object(crop, name(crop) + " is no crop tree: " + joined(whys) + ".", rules);
      return;
    }
    const SideSettings& sides = input_.knowledge.settings.sides;
    const CrownSides after = crown_sides(ground_.problem, selection_, gone_, crop);
    const int shared = std::min(after.shared.count(), sides.shared_max);
    if (after.free.count() + shared < sides.free_min) {
      object(crop,
             name(crop) + " would have " + side_count(after.free.count()) + " free, and " +
                 std::to_string(sides.free_min) + " are needed: release it fully or not at all.",
             {"R1.61", "R1.73"});
    } else if (!after.shared.empty() && after.free.count() < sides.free_in_pair) {
      object(crop, name(crop) + " has too few free sides of its own for a pair.", {"R1.67"});
    }
  }

  void object_to_cut(std::uint32_t cut) {
    if (ground_.keeps[cut] != Keep::no) {
      const KeepWords words = words_of(ground_.keeps[cut]);
      object(cut, name(cut) + " " + words.text + ".", words.rules);
    }
    if (std::find(crops_.begin(), crops_.end(), cut) != crops_.end()) {
      object(cut, name(cut) + " cannot be released and taken.", {"R1.60"});
    }
    if (ground_.traits[cut].invasive()) return;
    const CrownContact* clear = nullptr;
    for (const std::uint32_t i : input_.graph.towards(cut)) {
      const CrownContact& c = input_.graph.contacts()[i];
      if (selection_.standing[c.crop] != Standing::released) continue;
      const Role role = ground_.roles[i];
      if (crowds(role)) {
        object_to_role(cut, c, role);
        return;
      }
      clear = &c;
    }
    if (clear == nullptr) {
      object(cut, name(cut) + " crowds no crop tree of the plan.", {"R6.05"});
      return;
    }
    std::vector<std::string> rules = contact_rules(input_, *clear);
    add_rules(rules, {"R6.05"});
    object(cut, name(cut) + " takes no light from " + name(clear->crop) + ".", rules);
  }

  /// It crowds a crop tree, but the rules would not take it for that.
  void object_to_role(std::uint32_t cut, const CrownContact& c, Role role) {
    if (role == Role::sound_oak) {
      object(cut, name(cut) + " is a sound oak that nobody has shown to be poor.",
             {"R3.36", "R3.39"});
    }
    if (role != Role::fellow) return;
    if (can_pair(c)) {
      object(cut,
             name(cut) + " and " + name(c.crop) +
                 " can both be released, as one unit with a shared side.",
             {"R1.64", "R1.65", "R1.67"});
    } else if (ground_.crops.worth[cut] > ground_.crops.worth[c.crop]) {
      object(cut, name(cut) + " is the better tree of the two.", {"R1.25", "R1.67"});
    }
  }

  bool can_pair(const CrownContact& c) const {
    Selection both(trees_.size());
    for (const std::uint32_t tree : {c.crop, c.neighbour}) {
      both.standing[tree] = Standing::released;
      both.group[tree] = c.crop;
    }
    return outcome_of(ground_.problem, both, c.crop).reaches &&
           outcome_of(ground_.problem, both, c.neighbour).reaches;
  }

  void object_to_sums() {
    if (!ground_.problem.guards) return;
    CutTally tally;
    for (const std::uint32_t cut : cuts_) {
      tally.take(trees_[cut].facts, ground_.traits[cut], 1.0);
    }
    for (const std::uint32_t crop : crops_) tally.release(trees_[crop].facts, 1.0);
    for (const GuardState& g : check_guards(*ground_.problem.guards, tally)) {
      if (g.holds) continue;
      found_.push_back({"",
                        "The plan would leave " + g.name + " at " + plain_number(g.after) + " " +
                            g.unit + "; the " + (g.floor ? "floor" : "ceiling") + " is " +
                            plain_number(g.limit) + " " + g.unit + ".",
                        {g.rule}});
    }
  }

  const ReleaseInput& input_;
  const Groundwork ground_;
  const std::vector<ReleaseTree>& trees_;
  Selection selection_;
  std::vector<bool> gone_;
  std::vector<Objection> found_;
  std::vector<std::uint32_t> crops_, cuts_;
};

}  // namespace

std::vector<Objection> objections(const ReleaseInput& input, const HandPlan& plan) {
  return Critic(input, plan).all();
}

}  // namespace oaklight
