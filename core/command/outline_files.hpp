#pragma once

#include <string>

#include "core/forms/outlines.hpp"

namespace oaklight::command {

/// Whether this program reads GeoPackage and Shapefile (it was built with GDAL).
[[nodiscard]] bool reads_map_files();

/// Outlines from a GeoPackage or a Shapefile, turned into WGS 84 degrees.
///
/// path     of the .gpkg or the .shp; the .shx, .dbf and .prj lie beside it
/// layer    of the file; "": the only one with polygons
/// faults   cannot_open; bad_geometry: no coordinate system is told, too many positions, positions
///          that are no numbers; contradiction: more than one layer has polygons; no_data
[[nodiscard]] DrawnOutlines read_map_file(const std::string& path, const std::string& layer);

}  // namespace oaklight::command
