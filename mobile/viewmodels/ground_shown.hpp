#pragma once

#include <memory>

#include "core/model/mark.hpp"

/// What a map shows; without the trees of the plots that wear no tag, which can be many and are not
/// on it.
std::shared_ptr<const oaklight::TractData> ground_of(const oaklight::TractData& data);
