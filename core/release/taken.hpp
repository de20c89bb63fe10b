#pragma once

#include <set>

#include "core/model/mark.hpp"

namespace oaklight {

/// Trees of the marking walk whose crown is really gone: cut, or killed where they stand. What was
/// found after the cut goes before the mark: a tree found standing is not gone though it was
/// marked, and one cut without a mark is. Where nobody walked up to a tree afterwards its mark is
/// all that is known, and a tree marked to be taken or killed counts as gone. A leave tree that was
/// hurt stands, however badly.
[[nodiscard]] std::set<WalkTreeId> taken_trees(const TractData& data);

/// The same tract with marks of `taken` to be taken and no others, so that whatever asks for the
/// marks sees what was done and not what was planned.
[[nodiscard]] TractData with_taken(const TractData& data, const std::set<WalkTreeId>& taken);

}  // namespace oaklight
