#pragma once

#include <string>

#include "core/model/mark.hpp"

namespace oaklight::test {

/// What differs between two tracts, as text; "" when they are the same in every field.
std::string difference(const TractData& a, const TractData& b);

}  // namespace oaklight::test
