// The file as others see it: GDAL reads every layer, and its validator has nothing to say.
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

class Gis : public StoreTest {
 protected:
  [[nodiscard]] std::string file(const std::string& name = "woods.gpkg") const {
    return (folder_ / name).string();
  }
  Ran ogrinfo(const std::string& arguments) const { return run_program("ogrinfo " + arguments); }
  /// GDAL's own check of a GeoPackage; the system's Python has it.
  Ran validate(const std::string& name = "woods.gpkg") const {
    return run_program("/usr/bin/python3 -m osgeo_utils.samples.validate_gpkg " + file(name));
  }
  void expect_clean(const std::string& name = "woods.gpkg") const {
    const Ran listed = ogrinfo("-ro -al -so " + file(name));
    EXPECT_EQ(listed.exit_code, 0);
    EXPECT_EQ(listed.errors, "");
    for (const std::string layer : {"tract", "stand", "plot", "map_line", "walk_tree", "tree_point",
                                    "cruise", "tree", "regen", "contact", "mark", "stump"}) {
      EXPECT_NE(listed.out.find("Layer name: " + layer + "\n"), std::string::npos) << layer;
    }
    for (const std::string inner : {"meta", "form_file", "user_action", "change"})
      EXPECT_EQ(listed.out.find("Layer name: " + inner + "\n"), std::string::npos) << inner;
    const Ran valid = validate(name);
    EXPECT_EQ(valid.exit_code, 0) << valid.out << valid.errors;
  }
  TractData fill(TractStore& store) {
    TractData data = sample_records(store.ids(), true);
    EXPECT_TRUE(worked(store.apply(as_action(data, "import"))));
    return data;
  }
};

TEST_F(Gis, ReadsANewFileWithoutAWarning) {
  make();
  expect_clean();
}

TEST_F(Gis, ReadsAFullFileWithoutAWarning) {
  {
    TractStore store = make();
    fill(store);
    ASSERT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), false), "import"))));
    ASSERT_TRUE(worked(store.undo()));
    ASSERT_TRUE(worked(store.redo()));
  }
  expect_clean();
}

TEST_F(Gis, ReadsTheFileWhileItIsOpenForWork) {
  TractStore store = make();
  fill(store);
  expect_clean();
}

TEST_F(Gis, SeesShapesWhereTheyAre) {
  {
    TractStore store = make();
    fill(store);
  }
  const auto shape = [&](const std::string& layer) {
    return ogrinfo("-ro -al " + file() + " " + layer).out;
  };
  for (const std::string layer : {"plot", "tree_point", "walk_tree", "tract", "stump"})
    EXPECT_NE(shape(layer).find("POINT (-81.12345678 37.91234567)"), std::string::npos) << layer;
  EXPECT_NE(shape("stand").find("POLYGON ((-81.1 37.9,-81.091 37.9,-81.091 37.909,-81.1 37.909,"
                                "-81.1 37.9),(-81.099 37.901,-81.099 37.902,-81.098 37.902,"
                                "-81.099 37.901))"),
            std::string::npos)
      << shape("stand");
  EXPECT_NE(shape("map_line").find("LINESTRING (-81.12345678 37.91234567,-81.2 37.95,179.9 -1)"),
            std::string::npos)
      << shape("map_line");
  EXPECT_NE(shape("tree").find("dbh_tenths (Integer64) = 123"), std::string::npos);
}

TEST_F(Gis, FindsBoxesThatFollowEveryChange) {
  TractStore store = make();
  const auto box = [&](const std::string& layer) {
    return raw_sql(
               "SELECT ifnull(min_x || ' ' || min_y || ' ' || max_x || ' ' || max_y, 'none')"
               " FROM gpkg_contents WHERE table_name = '" +
               layer + "'")
        .front();
  };
  EXPECT_EQ(box("plot"), "none");
  TractData data = sample_records(store.ids(), true);
  data.plots[0].position = Position{Degrees{38.0}, Degrees{-81.0}};
  ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  EXPECT_EQ(box("plot"), "-81.0 38.0 -81.0 38.0");
  EXPECT_EQ(box("tree_point"), box("plot"));
  data.plots[0].position = Position{Degrees{38.5}, Degrees{-82.0}};
  ASSERT_TRUE(worked(store.apply({"move", {data.plots[0]}})));
  EXPECT_EQ(box("plot"), "-82.0 38.5 -82.0 38.5");
  ASSERT_TRUE(worked(store.undo()));
  EXPECT_EQ(box("tree_point"), "-81.0 38.0 -81.0 38.0");
  Plot second = data.plots[0];
  second.id = store.ids().next_id<PlotTag>();
  second.label = "8";
  clock_.ms += 60'000;
  ASSERT_TRUE(worked(store.apply({"second plot", {second}})));
  EXPECT_EQ(box("plot"), "-82.0 38.0 -81.0 38.5");
  EXPECT_EQ(raw_sql("SELECT last_change FROM gpkg_contents WHERE table_name IN ('plot', 'regen')"
                    " ORDER BY table_name"),
            (std::vector<std::string>{"2026-05-04T13:08:00.000Z", "2026-05-04T13:07:00.000Z"}));
}

// Whether SQLite can keep such an index up from a schema it does not trust depends on its version;
// what must never be is an index that misses a plot.
TEST_F(Gis, ASpatialIndexOnOurLayerIsKeptRightOrWritingIsRefused) {
  TractData data;
  {
    TractStore store = make();
    data = fill(store);
  }
  const Ran made = ogrinfo(file() + " -sql \"SELECT CreateSpatialIndex('plot', 'geom')\"");
  ASSERT_NE(made.out.find("= 1"), std::string::npos) << made.out << made.errors;  // 1: it did
  EXPECT_EQ(difference(open("woods.gpkg", OpenMode::read_only).load().value(), data), "");
  auto store = TractStore::open(folder_ / "woods.gpkg", OpenMode::read_write, context());
  if (!store) {
    EXPECT_EQ(store.error().code, ErrorCode::read_only);
    EXPECT_NE(store.error().fix.find("spatial index"), std::string::npos);
    const Ran dropped = ogrinfo(file() + " -sql \"SELECT DisableSpatialIndex('plot', 'geom')\"");
    ASSERT_NE(dropped.out.find("= 1"), std::string::npos) << dropped.out << dropped.errors;
    store = TractStore::open(folder_ / "woods.gpkg", OpenMode::read_write, context());
    ASSERT_TRUE(worked(store));
  }
  Plot second = data.plots[0];
  second.id = store->ids().next_id<PlotTag>();
  second.label = "8";
  ASSERT_TRUE(worked(store->apply({"second plot", {second}})));
  second.position = Position{Degrees{38.5}, Degrees{-82.0}};
  ASSERT_TRUE(worked(store->apply({"move", {second}})));
  if (!raw_sql("SELECT 1 FROM sqlite_schema WHERE name = 'rtree_plot_geom'").empty()) {
    EXPECT_EQ(raw_sql("SELECT count(*) || ' ' || sum(maxy > 38.4) FROM rtree_plot_geom"),
              std::vector<std::string>{"2 1"});
  }
  EXPECT_TRUE(store->check().value().problems.empty());
  expect_clean();
}

TEST_F(Gis, MayAppendALayerOfItsOwn) {
  TractData data;
  {
    TractStore store = make();
    data = fill(store);
  }
  write_bytes(folder_ / "deer.geojson",
              R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{},)"
              R"("geometry":{"type":"Point","coordinates":[-81.1,37.9]}}]})");
  const Ran added =
      run_program("ogr2ogr -append -f GPKG " + file() + " " + file("deer.geojson") + " -nln deer");
  ASSERT_EQ(added.exit_code, 0) << added.errors;
  TractStore store = open();
  EXPECT_EQ(difference(store.load().value(), data), "");
  data.plots[0].note = "deer path";
  ASSERT_TRUE(worked(store.apply({"note", {data.plots[0]}})));
  EXPECT_TRUE(store.check().value().problems.empty());
  expect_clean();
}

TEST_F(Gis, ReadsACopyForHandingOver) {
  TractStore store = make();
  fill(store);
  ASSERT_TRUE(worked(store.copy_to(folder_ / "copy.gpkg")));
  expect_clean("copy.gpkg");
}

}  // namespace
}  // namespace oaklight::test
