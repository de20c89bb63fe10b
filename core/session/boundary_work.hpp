#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/forms/outlines.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

struct BoundaryOptions {
  std::string stand;        ///< the stand that the file's one outline belongs to; "": by its name
  bool take_acres = false;  ///< write the drawn acres over those that were stated
};

/// What one outline says of one stand.
struct BoundaryRow {
  std::string stand;
  bool added = false;           ///< a stand that the tract did not have
  Acres drawn;                  ///< on the ellipsoid, holes left out
  std::optional<Acres> stated;  ///< by the owner or an earlier map
  bool doubtful = false;        ///< the two differ by more than kAcresDiffer
  std::vector<std::string> notes;
};
/// Share of the stated acres from which the difference is told. Maps of one tract differ by a few
/// percent (judgement).
inline constexpr Percent kAcresDiffer{5.0};

/// What a file of outlines would change.
struct BoundaryPlan {
  std::vector<Error> faults;  ///< not empty: nothing is to be written
  Action action;              ///< for TractStore::apply, one step for all of them
  std::vector<BoundaryRow> rows;
};

/// Gives stands their outlines. A stand is found by its name, capitals aside; one that the tract
/// does not have is added with the drawn acres. A stand is one polygon: the parts of an outline
/// become stands of their own, "Cove 1", "Cove 2", when the tract has no stand "Cove". Stated acres
/// stay unless take_acres asks otherwise.
///
/// drawn    from read_outlines or another reader
/// faults   of read_outlines and check_outlines; missing_value: no name; contradiction: a stand of
///          the tract drawn in several parts; duplicate: two outlines of one name; of add_stand
[[nodiscard]] BoundaryPlan plan_boundaries(const LiveTract& live, const TractKnowledge& knowledge,
                                           IdSource& ids, const DrawnOutlines& drawn,
                                           const BoundaryOptions& options);

}  // namespace oaklight
