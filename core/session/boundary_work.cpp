#include "core/session/boundary_work.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/forms/csv_file.hpp"
#include "core/place/geodesy.hpp"
#include "core/session/tract_work.hpp"

namespace oaklight {
namespace {

std::vector<Position> places_of(const TractData& data) {
  std::vector<Position> places;
  if (data.tract.landing) places.push_back(*data.tract.landing);
  for (const Plot& plot : data.plots) {
    if (plot.position) places.push_back(*plot.position);
  }
  for (const Stand& stand : data.stands) {
    if (stand.boundary) places.push_back(stand.boundary->outer.front());
  }
  return places;
}

const Stand* stand_named(const TractData& data, const std::string& name) {
  const std::string wanted = lower_case(trimmed(name));
  const auto found = std::ranges::find_if(
      data.stands, [&](const Stand& stand) { return lower_case(stand.name) == wanted; });
  return found == data.stands.end() ? nullptr : &*found;
}

class BoundaryPlanner {
 public:
  BoundaryPlanner(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                  const BoundaryOptions& options)
      : live_(live), knowledge_(knowledge), ids_(ids), options_(options) {}

  BoundaryPlan run(std::vector<SoundOutline> outlines) {
    if (!options_.stand.empty()) {
      if (outlines.size() != 1) {
        refuse(ErrorCode::contradiction,
               "The file draws " + std::to_string(outlines.size()) +
                   " outlines, and one stand was named.",
               outlines.front().where, "Leave the name out; outlines go by their own names.");
        return std::move(plan_);
      }
      outlines.front().name = options_.stand;
    }
    for (SoundOutline& outline : outlines) add(outline);
    const std::size_t n = plan_.rows.size();
    plan_.action.label = n == 1 ? "outline of " + plan_.rows.front().stand
                                : "outlines of " + std::to_string(n) + " stands";
    return std::move(plan_);
  }

 private:
  void refuse(ErrorCode code, std::string what, std::string where, std::string fix) {
    plan_.faults.push_back({code, std::move(what), std::move(where), std::move(fix)});
  }

  void add(SoundOutline& outline) {
    const std::string name(trimmed(outline.name));
    if (name.empty()) {
      return refuse(ErrorCode::missing_value, "The outline has no name.", outline.where,
                    "Name it after its stand in the file, or say whose it is: --stand NAME.");
    }
    const Stand* known = stand_named(live_.data(), name);
    if (outline.parts.size() == 1) return set(name, known, outline, outline.parts.front());
    if (known != nullptr) {
      return refuse(ErrorCode::contradiction,
                    "Stand \"" + known->name + "\" is one polygon and is drawn in " +
                        std::to_string(outline.parts.size()) + " parts.",
                    outline.where, "Make a stand of each part, with a name of its own.");
    }
    outline.notes.push_back("Drawn as one with other parts; each part is a stand of its own.");
    for (std::size_t i = 0; i < outline.parts.size(); ++i) {
      const std::string part = name + " " + std::to_string(i + 1);
      set(part, stand_named(live_.data(), part), outline, outline.parts[i]);
    }
  }

  void set(const std::string& name, const Stand* known, const SoundOutline& outline,
           const Polygon& polygon) {
    const auto same = [&](const BoundaryRow& row) {
      return lower_case(row.stand) == lower_case(name);
    };
    if (std::ranges::any_of(plan_.rows, same)) {
      return refuse(ErrorCode::duplicate, "Two outlines are named \"" + name + "\".", outline.where,
                    "Give each stand a name of its own.");
    }
    const auto acres = polygon_acres(polygon);
    if (!acres)
      return refuse(acres.error().code, acres.error().what, outline.where, acres.error().fix);
    BoundaryRow row{name, known == nullptr, *acres, std::nullopt, false, outline.notes};
    Stand stand = known == nullptr ? Stand{} : *known;
    if (known == nullptr) stand.name = name;
    if (known != nullptr) compare(*known, polygon, row);
    if (known == nullptr || options_.take_acres) {
      stand.acres = Acres{std::round(acres->value * 100.0) / 100.0};
    }
    stand.boundary = polygon;
    auto action = known == nullptr ? add_stand(live_, knowledge_, ids_, std::move(stand))
                                   : change_stand(live_, knowledge_, std::move(stand));
    if (!action) {
      return refuse(action.error().code, action.error().what,
                    outline.where + ": " + action.error().where, action.error().fix);
    }
    std::ranges::move(action->changes, std::back_inserter(plan_.action.changes));
    plan_.rows.push_back(std::move(row));
  }

  static void compare(const Stand& known, const Polygon& polygon, BoundaryRow& row) {
    row.stand = known.name;
    row.stated = known.acres;
    const double off = row.drawn / known.acres - 1.0;
    row.doubtful = std::fabs(off) > fraction(kAcresDiffer);
    if (row.doubtful) {
      row.notes.push_back("The outline holds " + number_text(std::fabs(100.0 * off), 0) +
                          (off > 0.0 ? " % more" : " % less") +
                          " ground than the acres stated; find out which is right.");
    }
    if (!known.boundary) return;
    row.notes.push_back(*known.boundary == polygon ? "It has this outline already."
                                                   : "It takes the place of an earlier outline.");
  }

  const LiveTract& live_;
  const TractKnowledge& knowledge_;
  IdSource& ids_;
  const BoundaryOptions& options_;
  BoundaryPlan plan_;
};

}  // namespace

BoundaryPlan plan_boundaries(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                             const DrawnOutlines& drawn, const BoundaryOptions& options) {
  BoundaryPlan refused;
  refused.faults = drawn.faults;
  if (!refused.faults.empty()) return refused;
  SoundOutlines sound = check_outlines(drawn.outlines, places_of(live.data()));
  refused.faults = std::move(sound.faults);
  if (!refused.faults.empty()) return refused;
  return BoundaryPlanner(live, knowledge, ids, options).run(std::move(sound.outlines));
}

}  // namespace oaklight
