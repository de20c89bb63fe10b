#include "tests/forms/cruise_files.hpp"

#include <gtest/gtest.h>

#include "core/base/embedded.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight::test {

NamedText form_file(std::string_view path) {
  for (const EmbeddedFile& file : embedded_forms()) {
    const std::string name(path.substr(path.rfind('/') + 1));
    if (file.path == path) return {name, std::string(file.text)};
  }
  ADD_FAILURE() << "no such form: " << path;
  return {};
}

const Form& tally_form() {
  static const Form form = [] {
    auto read = read_form(form_file("tally.form.json").text, "tally.form.json");
    EXPECT_TRUE(read) << to_text(read.error());
    return read ? *read : Form{};
  }();
  return form;
}

const SpeciesTable& species_table() {
  static const SpeciesTable table = read_species(form_file("species/species.csv")).table;
  return table;
}

const SpeciesNames& species_names() {
  static const SpeciesNames names(species_table());
  return names;
}

CruiseFiles good_files() {
  CruiseFiles files;
  files.tract = {"tract.csv",
                 "name,state,county,contact,directions,meeting_place,phone_place,landing_lat,"
                 "landing_lon,demo\n"
                 "Fernhollow,OH,Anycounty,the owner,\"Mill road, second gate\",the church lot,"
                 "top of the ridge,39.3100,-82.2100,yes\n"};
  files.stands = {"stands.csv",
                  "stand,acres,walked_acres,goal,age_years,site_index_ft\n"
                  "Ridge,42.5,12,mast,85,70\n"
                  "Cove,20,,timber,,\n"};
  files.plots = {
      "plots.csv",
      "cruise,stand,plot,status,skip_reason,baf_ft2_ac,plot_ac,small_plot_ac,small_below_in,"
      "min_dbh_in,regen_plot_ac,crew,date,lat,lon,accuracy_m,slope_pct,note\n"
      "points,Ridge,1,measured,,10,,,,4.6,0.001,crew A,2026-05-05,39.3110,-82.2110,6,12,\n"
      "points,Ridge,2,empty,,10,,,,4.6,0.001,crew B,2026-05-04,39.3120,-82.2120,,30,rocks\n"
      "points,Ridge,3,skipped,posted land,10,,,,4.6,0.001,crew A,,,,,,\n"
      "points,Cove,1,planned,,10,,,,4.6,0.001,,,39.3090,-82.2090,,,\n"
      "fixed,Cove,F1,measured,,,0.1,0.02,4.6,1.0,,crew A,2026-05-06,,,,5,\n"};
  files.trees = {"trees.csv",
                 "stand,plot,species,dbh_in,stems,edge_count,status,crown_class,live_crown_pct,"
                 "dieback_pct,height_ft,logs,azimuth_deg,distance_ft,tag,conditions,note\n"
                 "Ridge,1,white oak,14.2,1,2,live,dominant,40,5,78,2.5,90,20.5,901,den|conk,\n"
                 "Ridge,1,833,6.3,3,,,,,,,,,,,,\n"
                 "Ridge,1,ACRU,5.1,,,dead,,0,,,,,,,,a snag\n"
                 "Cove,F1,yellow-poplar,18.4,,,,codominant,,,95,3,360,36.00,902,,\n"
                 "Cove,F1,red maple,2.2,,,,,,,,,12,11.2,,,\n"};
  files.regeneration = {"regeneration.csv",
                        "stand,plot,species,height_class,count\n"
                        "Ridge,1,QUAL,under_1_ft,4\n"
                        "Ridge,2,QUAL,over_4_5_ft,0\n"
                        "Ridge,2,red maple,under_1_ft,31\n"};
  files.crop_trees = {
      "crop_trees.csv",
      "stand,card,role,tag,side,seen,species,dbh_in,crown_class,status,live_crown_pct,dieback_pct,"
      "height_ft,logs,conditions,distance_ft,azimuth_deg,lat,lon,slope_pct,note\n"
      "Ridge,17,crop,17,,,white oak,15.1,dominant,,45,0,80,2,,,,39.3111,-82.2111,10,the big one\n"
      "Ridge,17,neighbour,18,N,touches,red maple,9.4,codominant,,,,,,,14.5,350,,,,\n"
      "Ridge,17,neighbour,21,,none,,,,,,,,,,31.0,95,,,,\n"
      "Ridge,17,neighbour,19,W,over,beech,11.0,,live,,,,,beech_bark|den,12.2,,,,,\n"
      "Ridge,17,open,,S,,,,,,,,,,,,,,,,\n"
      "Ridge,21,crop,,,,black oak,13.3,codominant,,,,,,,,,39.3112,-82.2108,,\n"
      "Ridge,21,neighbour,17,W,none,,,,,,,,,,31.4,278,,,,seen twice\n"
      "Ridge,21,neighbour,18,,not_looked,red maple,9.4,,,,,,,,22.0,300,,,,\n"};
  files.map = {"map.geojson",
               R"({"type":"FeatureCollection","features":[
 {"type":"Feature","properties":{"kind":"stand","stand":"Ridge"},"geometry":{"type":"Polygon",
  "coordinates":[[[-82.214,39.309],[-82.214,39.314],[-82.208,39.314],[-82.208,39.309],[-82.214,39.309]]]}},
 {"type":"Feature","properties":{"kind":"stream","name":"Fern run"},"geometry":{"type":"LineString",
  "coordinates":[[-82.207,39.308],[-82.206,39.312,210]]}},
 {"type":"Feature","properties":{"kind":"neighbour_line","name":null,"confirmed":true},"geometry":
  {"type":"LineString","coordinates":[[-82.215,39.309],[-82.215,39.314]]}}
]})"};
  return files;
}

CruiseImport import_files(const CruiseFiles& files, const TractData& existing, std::uint64_t seed) {
  SetClock clock(1'777'000'000'000);
  std::uint64_t state = seed;
  // Knuth's MMIX generator; any would do, as long as each run gives the same ids.
  IdSource ids(clock, [&] { return state = state * 6364136223846793005U + 1442695040888963407U; });
  return read_cruise(files, tally_form(), species_table(), existing, ids);
}

NamedText& file_of(CruiseFiles& files, std::string_view name) {
  for (auto* file : {&files.tract, &files.stands, &files.plots, &files.trees, &files.regeneration,
                     &files.crop_trees, &files.map}) {
    if (*file && (*file)->name == name) return **file;
  }
  ADD_FAILURE() << "no such file: " << name;
  return *files.tract;
}

void replace_once(std::string& text, std::string_view from, std::string_view to) {
  const auto at = text.find(from);
  ASSERT_NE(at, std::string::npos) << "not in the file: " << from;
  ASSERT_EQ(text.find(from, at + 1), std::string::npos) << "in the file twice: " << from;
  text.replace(at, from.size(), to);
}

std::vector<std::string> short_faults(const std::vector<Error>& faults) {
  std::vector<std::string> list;
  for (const Error& fault : faults) {
    list.push_back(std::string(name_of(fault.code)) + " " + fault.where);
  }
  return list;
}

}  // namespace oaklight::test
