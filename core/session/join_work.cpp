#include "core/session/join_work.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>

#include "core/forms/csv_file.hpp"
#include "core/store/join_cells.hpp"

namespace oaklight {
namespace {

Error gone(const Question& question) {
  return {ErrorCode::unknown_reference, "This record is no longer in use.",
          question.table + "/" + question.name, "Look at what is open now."};
}

Error no_answer(const Question& question) {
  return {ErrorCode::not_a_choice, "That is no answer to this question.",
          question.table + "/" + question.name, "Decide which version holds."};
}

template <class IdType>
std::optional<IdType> id_of(const Question& question, std::size_t side) {
  if (question.kind != QuestionKind::used_twice || side >= question.sides.size())
    return std::nullopt;
  const auto uid = uuid_from_text(question.sides[side].uid);
  if (!uid) return std::nullopt;
  return IdType{*uid};
}

/// The record of a side with another name, label or tag. When the first of them gets one, the next
/// wears its own again.
template <class IdType, class R, class Taken>
Result<Action> renamed(const LiveTract& live, const Question& question, std::size_t side,
                       std::string R::*name, const std::string& wanted, const Taken& is_taken) {
  const auto id = id_of<IdType>(question, side);
  const R* record = id ? live.find(*id) : nullptr;
  if (record == nullptr) return gone(question);
  if (wanted.empty()) {
    return Error{ErrorCode::missing_value, "A name is missing.", question.table + "/name",
                 "Type the one that it shall have."};
  }
  if (is_taken(*record)) {
    return Error{ErrorCode::duplicate, "\"" + wanted + "\" is in use too.",
                 question.table + "/name", "Choose another."};
  }
  R now = *record;
  now.*name = wanted;
  Action action{record->*name + " is " + wanted, {now}};
  const auto next_id = id_of<IdType>(question, side == 0 ? 1 : question.sides.size());
  if (const R* next = next_id ? live.find(*next_id) : nullptr) {
    R again = *next;
    again.*name = question.name;
    action.changes.emplace_back(std::move(again));
  }
  return action;
}

template <class R>
bool any_other(const std::vector<R>& records, const R& self, std::string R::*name,
               const std::string& wanted) {
  return std::ranges::any_of(records,
                             [&](const R& r) { return r.id != self.id && r.*name == wanted; });
}

/// Plots that would have one label in one stand and cruise.
std::optional<Error> same_labels(const TractData& data, const std::vector<Plot>& moved) {
  std::map<std::tuple<StandId, CruiseId, std::string>, PlotId> taken;
  std::map<PlotId, const Plot*> now;
  for (const Plot& plot : data.plots) now[plot.id] = &plot;
  for (const Plot& plot : moved) now[plot.id] = &plot;
  for (const auto& [id, plot] : now) {
    if (taken.emplace(std::tuple(plot->stand, plot->cruise, plot->label), id).second) continue;
    return Error{ErrorCode::duplicate, "Both have a plot " + plot->label + ".",
                 "plot/" + plot->label, "Give one of these plots another label first."};
  }
  return std::nullopt;
}

template <class R, class IdType>
void move_to(const std::vector<R>& records, std::optional<IdType> R::*parent, IdType from,
             IdType to, Action& action) {
  for (R record : records) {
    if (record.*parent != from) continue;
    record.*parent = to;
    action.changes.emplace_back(std::move(record));
  }
}

Result<Action> one_stand(const LiveTract& live, const Question& question, std::size_t side) {
  const auto from = id_of<StandId>(question, side);
  const auto to = id_of<StandId>(question, 0);
  if (!from || !to || *from == *to) return no_answer(question);
  if (live.find(*from) == nullptr || live.find(*to) == nullptr) return gone(question);
  Action action{"one stand: " + question.name, {}};
  std::vector<Plot> moved;
  for (const Plot* plot : live.plots_of(*from)) moved.emplace_back(*plot).stand = *to;
  if (auto twice = same_labels(live.data(), moved)) return *twice;
  action.changes.insert(action.changes.end(), moved.begin(), moved.end());
  for (const WalkTree* tree : live.walk_trees_of(*from)) {
    WalkTree now = *tree;
    now.stand = *to;
    action.changes.emplace_back(std::move(now));
  }
  move_to(live.data().stumps, &Stump::stand, *from, *to, action);
  action.changes.emplace_back(Remove{*from});
  return action;
}

Result<Action> one_cruise(const LiveTract& live, const Question& question, std::size_t side) {
  const auto from = id_of<CruiseId>(question, side);
  const auto to = id_of<CruiseId>(question, 0);
  if (!from || !to || *from == *to) return no_answer(question);
  const Cruise* second = live.find(*from);
  const Cruise* first = live.find(*to);
  if (first == nullptr || second == nullptr) return gone(question);
  const bool alike = first->design == second->design && first->min_dbh == second->min_dbh &&
                     first->regen_area == second->regen_area;
  if (!alike) {
    return Error{ErrorCode::contradiction, "The two cruises have different designs.",
                 "cruise/" + question.name, "Give one of them another name."};
  }
  Action action{"one cruise: " + question.name, {}};
  std::vector<Plot> moved;
  for (const Plot& plot : live.data().plots) {
    if (plot.cruise == *from) moved.emplace_back(plot).cruise = *to;
  }
  if (auto twice = same_labels(live.data(), moved)) return *twice;
  action.changes.insert(action.changes.end(), moved.begin(), moved.end());
  action.changes.emplace_back(Remove{*from});
  return action;
}

}  // namespace

Result<Action> name_anew(const LiveTract& live, const Question& question, std::size_t side,
                         std::string_view name) {
  const std::string wanted(trimmed(name));
  const TractData& data = live.data();
  if (question.kind != QuestionKind::used_twice || side >= question.sides.size())
    return no_answer(question);
  if (question.table == "stand") {
    return renamed<StandId>(live, question, side, &Stand::name, wanted, [&](const Stand& s) {
      return any_other(data.stands, s, &Stand::name, wanted);
    });
  }
  if (question.table == "cruise") {
    return renamed<CruiseId>(live, question, side, &Cruise::name, wanted, [&](const Cruise& c) {
      return any_other(data.cruises, c, &Cruise::name, wanted);
    });
  }
  if (question.table == "walk_tree") {
    return renamed<WalkTreeId>(live, question, side, &WalkTree::tag, wanted,
                               [&](const WalkTree& t) {
                                 const WalkTree* wearer = live.by_tag(wanted);
                                 return wearer != nullptr && wearer->id != t.id;
                               });
  }
  return renamed<PlotId>(live, question, side, &Plot::label, wanted, [&](const Plot& plot) {
    return std::ranges::any_of(data.plots, [&](const Plot& p) {
      return p.id != plot.id && p.stand == plot.stand && p.cruise == plot.cruise &&
             p.label == wanted;
    });
  });
}

Result<Action> put_together(const LiveTract& live, const Question& question, std::size_t side) {
  if (question.table == "stand") return one_stand(live, question, side);
  if (question.table == "cruise") return one_cruise(live, question, side);
  return no_answer(question);
}

std::optional<std::string> tag_used_twice(const TractData& data) {
  std::set<std::string> tags;
  for (const WalkTree& tree : data.walk_trees) tags.insert(tree.tag);
  for (const WalkTree& tree : data.walk_trees) {
    const std::string first = store::first_name(tree.tag);
    if (first != tree.tag && tags.contains(first)) return first;
  }
  return std::nullopt;
}

}  // namespace oaklight
