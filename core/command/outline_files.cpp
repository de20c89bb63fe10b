#include "core/command/outline_files.hpp"

#ifdef OAKLIGHT_GDAL
#include <gdal.h>
#include <ogr_api.h>
#include <ogr_srs_api.h>

#include <array>
#include <filesystem>
#include <memory>
#include <system_error>
#endif

namespace oaklight::command {

#ifndef OAKLIGHT_GDAL

bool reads_map_files() { return false; }

DrawnOutlines read_map_file(const std::string& path, const std::string& /*layer*/) {
  DrawnOutlines out;
  out.faults.push_back({ErrorCode::cannot_open, "This program was built without GDAL.", path,
                        "Export the outlines as GeoJSON, KML or GPX."});
  return out;
}

#else

bool reads_map_files() { return true; }

namespace {

struct Closed {
  void operator()(GDALDatasetH dataset) const { GDALClose(dataset); }
};
using Dataset = std::unique_ptr<void, Closed>;
struct Freed {
  void operator()(OGRGeometryH geometry) const { OGR_G_DestroyGeometry(geometry); }
};
using Geometry = std::unique_ptr<std::remove_pointer_t<OGRGeometryH>, Freed>;
struct FeatureFreed {
  void operator()(OGRFeatureH feature) const { OGR_F_Destroy(feature); }
};
using Feature = std::unique_ptr<std::remove_pointer_t<OGRFeatureH>, FeatureFreed>;
struct SystemFreed {
  void operator()(OGRSpatialReferenceH system) const { OSRRelease(system); }
};
using System = std::unique_ptr<std::remove_pointer_t<OGRSpatialReferenceH>, SystemFreed>;

/// Outlines of more positions are refused later anyway; this keeps them from filling the memory.
constexpr int kMostPositions = 20'000;

class MapFile {
 public:
  MapFile(const std::string& path, DrawnOutlines& out) : path_(path), out_(out) {}

  void read(const std::string& layer_name) {
    const auto layer = open(layer_name);
    if (layer == nullptr) return;
    if (OGR_L_GetSpatialRef(layer) == nullptr) {
      return refuse(ErrorCode::bad_geometry, "The file does not say what its coordinates mean.",
                    "Bring its .prj file along, or save it in WGS 84 (EPSG:4326).");
    }
    wgs84_.reset(OSRNewSpatialReference(nullptr));
    OSRImportFromEPSG(wgs84_.get(), 4326);
    OSRSetAxisMappingStrategy(wgs84_.get(), OAMS_TRADITIONAL_GIS_ORDER);
    OGR_L_ResetReading(layer);
    int number = 0;
    for (Feature feature(OGR_L_GetNextFeature(layer)); feature;
         feature.reset(OGR_L_GetNextFeature(layer))) {
      if (!out_.faults.empty()) return;
      if (out_.outlines.size() >= kMaxOutlines) {
        return refuse(ErrorCode::bad_geometry, "The file draws 500 outlines or more.",
                      "Export the stands of this tract only.");
      }
      read_feature(feature.get(), ++number);
    }
    if (out_.faults.empty() && out_.outlines.empty()) {
      refuse(ErrorCode::no_data, "There is no outline in this file.",
             "Draw each stand as a polygon.");
    }
  }

 private:
  void refuse(ErrorCode code, std::string what, std::string fix, const std::string& place = "") {
    out_.faults.push_back({code, std::move(what), path_ + place, std::move(fix)});
    out_.outlines.clear();
  }

  OGRLayerH open(const std::string& layer_name) {
    // Named, so that no other of its readers (some reach over the network) is ever asked.
    const char* const drivers[] = {"GPKG", "ESRI Shapefile", nullptr};
    // Nor any of the places that it makes out of a path ("/vsicurl/http:..."), or grids for PROJ.
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(path_, ignored)) {
      refuse(ErrorCode::cannot_open, "There is no such file.", "Check its name and folder.");
      return nullptr;
    }
    OSRSetPROJEnableNetwork(0);
    CPLPushErrorHandler(CPLQuietErrorHandler);
    dataset_.reset(
        GDALOpenEx(path_.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY, drivers, nullptr, nullptr));
    CPLPopErrorHandler();
    if (!dataset_) {
      refuse(ErrorCode::cannot_open, "This is no GeoPackage and no Shapefile that can be read.",
             "Check that the file is whole; a Shapefile needs its .shx and .dbf beside it.");
      return nullptr;
    }
    if (!layer_name.empty()) {
      const auto layer = GDALDatasetGetLayerByName(dataset_.get(), layer_name.c_str());
      if (layer == nullptr) {
        refuse(ErrorCode::unknown_reference, "The file has no layer \"" + layer_name + "\".",
               "Its layers: " + layer_names() + ".");
      }
      return layer;
    }
    OGRLayerH found = nullptr;
    for (int i = 0; i < GDALDatasetGetLayerCount(dataset_.get()); ++i) {
      const auto layer = GDALDatasetGetLayer(dataset_.get(), i);
      const auto type = wkbFlatten(OGR_L_GetGeomType(layer));
      const bool polygons = type == wkbPolygon || type == wkbMultiPolygon || type == wkbUnknown ||
                            type == wkbCurvePolygon || type == wkbMultiSurface;
      if (!polygons) continue;
      if (found != nullptr) {
        refuse(ErrorCode::contradiction, "More than one layer of the file may hold outlines.",
               "Say which: --layer NAME. Its layers: " + layer_names() + ".");
        return nullptr;
      }
      found = layer;
    }
    if (found == nullptr) {
      refuse(ErrorCode::no_data, "No layer of the file holds polygons.",
             "Draw each stand as a polygon.");
    }
    return found;
  }

  std::string layer_names() const {
    std::string names;
    for (int i = 0; i < GDALDatasetGetLayerCount(dataset_.get()); ++i) {
      names +=
          (i == 0 ? "" : ", ") + std::string(OGR_L_GetName(GDALDatasetGetLayer(dataset_.get(), i)));
    }
    return names;
  }

  static std::string name_of(OGRFeatureH feature) {
    for (const char* field : {"stand", "name", "Stand", "Name", "STAND", "NAME"}) {
      const int at = OGR_F_GetFieldIndex(feature, field);
      if (at >= 0 && OGR_F_IsFieldSetAndNotNull(feature, at) != 0) {
        return OGR_F_GetFieldAsString(feature, at);
      }
    }
    return "";
  }

  void read_feature(OGRFeatureH feature, int number) {
    const std::string place = ":feature " + std::to_string(number);
    const OGRGeometryH drawn = OGR_F_GetGeometryRef(feature);
    if (drawn == nullptr) {
      ++out_.passed_over;
      return;
    }
    Geometry geometry(OGR_G_GetLinearGeometry(drawn, 0.0, nullptr));
    OGR_G_FlattenTo2D(geometry.get());
    CPLPushErrorHandler(CPLQuietErrorHandler);
    const OGRErr turned = OGR_G_TransformTo(geometry.get(), wgs84_.get());
    CPLPopErrorHandler();
    if (turned != OGRERR_NONE) {
      return refuse(ErrorCode::bad_geometry, "A position cannot be turned into degrees.",
                    "Save the map in WGS 84 degrees (EPSG:4326).", place);
    }
    DrawnOutline outline{name_of(feature), {}, false, path_ + place};
    const auto type = wkbFlatten(OGR_G_GetGeometryType(geometry.get()));
    if (type == wkbPolygon) {
      add_part(geometry.get(), place, outline);
    } else if (type == wkbMultiPolygon) {
      for (int i = 0; i < OGR_G_GetGeometryCount(geometry.get()); ++i) {
        add_part(OGR_G_GetGeometryRef(geometry.get(), i), place, outline);
      }
    }
    if (outline.parts.empty()) {
      ++out_.passed_over;
    } else if (out_.faults.empty()) {
      out_.outlines.push_back(std::move(outline));
    }
  }

  void add_part(OGRGeometryH polygon, const std::string& place, DrawnOutline& outline) {
    Polygon part;
    for (int i = 0; i < OGR_G_GetGeometryCount(polygon); ++i) {
      const OGRGeometryH ring = OGR_G_GetGeometryRef(polygon, i);
      const int positions = OGR_G_GetPointCount(ring);
      if (positions > kMostPositions) {
        return refuse(ErrorCode::bad_geometry, "The outline has more than 5,000 positions.",
                      "Simplify it to some hundreds of positions.", place);
      }
      Ring read;
      for (int k = 0; k < positions; ++k) {
        read.push_back({Degrees{OGR_G_GetY(ring, k)}, Degrees{OGR_G_GetX(ring, k)}});
      }
      if (i == 0) {
        part.outer = std::move(read);
      } else {
        part.holes.push_back(std::move(read));
      }
    }
    outline.parts.push_back(std::move(part));
  }

  const std::string& path_;
  DrawnOutlines& out_;
  Dataset dataset_;
  System wgs84_;
};

}  // namespace

DrawnOutlines read_map_file(const std::string& path, const std::string& layer) {
  static const bool registered = [] {
    GDALAllRegister();
    return true;
  }();
  (void)registered;
  DrawnOutlines out;
  MapFile(path, out).read(layer);
  return out;
}

#endif

}  // namespace oaklight::command
