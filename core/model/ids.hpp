#pragma once

#include "core/base/id.hpp"

namespace oaklight {

using StandId = Id<struct StandTag>;
using CruiseId = Id<struct CruiseTag>;
using PlotId = Id<struct PlotTag>;
using TreeId = Id<struct TreeTag>;
using RegenId = Id<struct RegenTag>;
using WalkTreeId = Id<struct WalkTreeTag>;
using ContactId = Id<struct ContactTag>;
using MarkId = Id<struct MarkTag>;
using MapLineId = Id<struct MapLineTag>;
using StumpId = Id<struct StumpTag>;
using AcornCountId = Id<struct AcornCountTag>;
using AcornYearId = Id<struct AcornYearTag>;

}  // namespace oaklight
