#pragma once

#include <string_view>

#include "core/model/mark.hpp"

// The one place where a field of the model and a column of the file are named together. Each
// visit() serves reading and writing: V is FieldWriter or FieldReader, R the record, const when it
// is written. Columns: schema/README.md.

namespace oaklight::store {

template <class R>
struct Fields;

/// A smallest legal record to read into, where the model knows no empty one.
inline TreeFacts blank_facts() {
  return {{}, Dbh::from_tenths(1, UnitSystem::us).value(), {}, {}, {}, {}, {}, {}, {}, {}};
}

template <class V, class R>
void visit_facts(V& v, R& facts) {
  v.field("species_fia", facts.species);
  v.reading("dbh_tenths", facts.dbh);
  v.field("status", facts.status);
  v.field("crown_class", facts.crown_class);
  v.field("live_crown_pct", facts.live_crown);
  v.field("dieback_pct", facts.dieback);
  v.reading("height_hundredths", facts.height);
  v.field("half_logs", facts.half_logs);
  v.field("conditions", facts.conditions);
  v.field("note", facts.note);
}

template <>
struct Fields<Tract> {
  static constexpr std::string_view kTable = "tract";
  static Tract blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.shape(r.landing);
    v.field("name", r.name);
    v.field("state", r.state);
    v.field("county", r.county);
    v.field("contact", r.contact);
    v.field("directions", r.directions);
    v.field("meeting_place", r.meeting_place);
    v.field("phone_place", r.phone_place);
    v.field("demo", r.demo);
  }
};

template <>
struct Fields<Stand> {
  static constexpr std::string_view kTable = "stand";
  static Stand blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.shape(r.boundary);
    v.field("name", r.name);
    v.field("area_ac", r.acres);
    v.field("walked_ac", r.walked);
    v.field("goal", r.goal);
    v.field("age_years", r.age_years);
    v.field("site_index_ft", r.site_index);
  }
};

/// The columns of a cruise's design, which is one of two things in the model.
struct DesignColumns {
  std::string design;
  UnitSystem units = UnitSystem::us;
  std::optional<double> factor;
  std::optional<double> plot_area;
  std::optional<double> small_area;
  std::optional<Dbh> small_below;

  DesignColumns() = default;
  explicit DesignColumns(const Design& from) {
    if (const auto* point = std::get_if<PointDesign>(&from)) {
      design = "point";
      units = point->system;
      factor = point->factor;
    } else if (const auto* fixed = std::get_if<FixedDesign>(&from)) {
      design = "fixed";
      units = fixed->system;
      plot_area = fixed->area;
      small_area = fixed->small_area;
      small_below = fixed->small_below;
    }
  }
  /// Nothing when the columns are no design.
  [[nodiscard]] std::optional<Design> value() const {
    if (design == "point" && factor) return PointDesign{*factor, units};
    if (design == "fixed" && plot_area)
      return FixedDesign{*plot_area, small_area, small_below, units};
    return std::nullopt;
  }
};

template <>
struct Fields<Cruise> {
  static constexpr std::string_view kTable = "cruise";
  static Cruise blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("name", r.name);
    DesignColumns columns;
    if constexpr (V::kWrites) columns = DesignColumns(r.design);
    v.field("design", columns.design);
    v.units(columns.units);
    v.field("factor", columns.factor);
    v.field("plot_area", columns.plot_area);
    v.field("small_area", columns.small_area);
    v.reading("small_below_tenths", columns.small_below);
    if constexpr (!V::kWrites) {
      const auto design = columns.value();
      if (design) {
        r.design = *design;
      } else {
        v.note("design");
      }
    }
    v.reading("min_dbh_tenths", r.min_dbh);
    v.field("regen_area", r.regen_area);
    v.field("crew", r.crew);
    v.field("date", r.date);
  }
};

template <>
struct Fields<Plot> {
  static constexpr std::string_view kTable = "plot";
  static Plot blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.shape(r.position);
    v.field("stand_uid", r.stand);
    v.field("cruise_uid", r.cruise);
    v.field("label", r.label);
    v.field("status", r.status);
    v.field("skip_reason", r.skip_reason);
    v.field("accuracy_m", r.accuracy);
    v.field("slope_pct", r.slope);
    v.field("note", r.note);
  }
};

template <>
struct Fields<Tree> {
  static constexpr std::string_view kTable = "tree";
  static Tree blank() { return {{}, {}, blank_facts(), 1, 1, {}, {}, {}}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("plot_uid", r.plot);
    visit_facts(v, r.facts);
    v.field("stems", r.stems);
    v.field("edge_count", r.edge_count);
    v.tenths("azimuth_tenths", r.azimuth);
    v.reading("distance_hundredths", r.distance);
    v.field("tag", r.tag);
  }
};

template <>
struct Fields<Regen> {
  static constexpr std::string_view kTable = "regen";
  static Regen blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("plot_uid", r.plot);
    v.field("species_fia", r.species);
    v.field("height_class", r.height);
    v.field("count", r.count);
  }
};

template <>
struct Fields<WalkTree> {
  static constexpr std::string_view kTable = "walk_tree";
  static WalkTree blank() { return {{}, {}, {}, blank_facts(), false, {}, {}, {}}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.shape(r.position);
    v.field("stand_uid", r.stand);
    v.field("tag", r.tag);
    visit_facts(v, r.facts);
    v.field("crop", r.crop);
    v.field("looked_sides", r.looked);
    v.field("slope_pct", r.slope);
    v.reading("crown_n_hundredths", r.crown.north);
    v.reading("crown_e_hundredths", r.crown.east);
    v.reading("crown_s_hundredths", r.crown.south);
    v.reading("crown_w_hundredths", r.crown.west);
  }
};

template <>
struct Fields<Contact> {
  static constexpr std::string_view kTable = "contact";
  static Contact blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("crop_uid", r.crop);
    v.field("neighbour_uid", r.neighbour);
    v.field("sides", r.sides);
    v.field("seen", r.seen);
    v.reading("distance_hundredths", r.distance);
    v.tenths("azimuth_tenths", r.azimuth);
  }
};

template <>
struct Fields<Mark> {
  static constexpr std::string_view kTable = "mark";
  static Mark blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("walk_tree_uid", r.tree);
    v.field("verdict", r.verdict);
    v.field("method", r.method);
    v.field("product", r.product);
    v.field("destination", r.destination);
    v.field("reason", r.reason);
    v.field("rules", r.rules);
    v.field("by_hand", r.by_hand);
    v.field("rule_version", r.rule_version);
  }
};

template <>
struct Fields<MapLine> {
  static constexpr std::string_view kTable = "map_line";
  static MapLine blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.shape(r.points);
    v.field("kind", r.kind);
    v.field("name", r.name);
    v.field("confirmed", r.confirmed);
  }
};

template <>
struct Fields<Stump> {
  static constexpr std::string_view kTable = "stump";
  static Stump blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.shape(r.position);
    v.field("walk_tree_uid", r.tree);
    v.field("stand_uid", r.stand);
    v.field("finding", r.finding);
    v.field("species_fia", r.species);
    v.reading("over_bark_tenths", r.over_bark);
    v.reading("under_bark_tenths", r.under_bark);
    v.reading("height_hundredths", r.height);
    v.field("wound", r.wound);
    v.field("wound_place", r.wound_place);
    v.field("seen_on", r.seen_on);
    v.field("note", r.note);
  }
};

/// The columns of an acorn count, which is one of two things in the model.
struct AcornColumns {
  std::string method;
  std::optional<double> per_tip;
  std::optional<int> tips;
  std::optional<int> n30;

  AcornColumns() = default;
  explicit AcornColumns(const std::variant<BranchTipCount, TimedCount>& from) {
    if (const auto* branches = std::get_if<BranchTipCount>(&from)) {
      method = "branch_tips";
      per_tip = branches->per_tip;
      tips = branches->tips;
    } else if (const auto* timed = std::get_if<TimedCount>(&from)) {
      method = "timed";
      n30 = timed->n30;
    }
  }
  /// Nothing when the columns are no count.
  [[nodiscard]] std::optional<std::variant<BranchTipCount, TimedCount>> value() const {
    if (method == "branch_tips" && per_tip) return BranchTipCount{*per_tip, tips};
    if (method == "timed" && n30) return TimedCount{*n30};
    return std::nullopt;
  }
};

template <>
struct Fields<AcornCount> {
  static constexpr std::string_view kTable = "acorn_count";
  static AcornCount blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("walk_tree_uid", r.tree);
    v.field("year", r.year);
    v.field("date", r.date);
    AcornColumns columns;
    if constexpr (V::kWrites) columns = AcornColumns(r.count);
    v.field("method", columns.method);
    v.field("per_tip", columns.per_tip);
    v.field("tips", columns.tips);
    v.field("n30", columns.n30);
    if constexpr (!V::kWrites) {
      const auto count = columns.value();
      if (count) {
        r.count = *count;
      } else {
        v.note("method");
      }
    }
    v.field("note", r.note);
  }
};

template <>
struct Fields<AcornYear> {
  static constexpr std::string_view kTable = "acorn_year";
  static AcornYear blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("oak_group", r.group);
    v.field("year", r.year);
    v.field("crop", r.crop);
    v.field("source", r.source);
  }
};

/// One of the tract's own copies of the files of forms/. Not part of the model: its text is read by
/// the forms folder.
struct FormFile {
  Id<struct FormFileTag> id;
  std::string path;
  std::optional<std::string> version;  ///< as the file itself states it
  std::string sha256;                  ///< of text
  std::string built_in_sha256;         ///< of the text that came with the program
  std::string text;
};

template <>
struct Fields<FormFile> {
  static constexpr std::string_view kTable = "form_file";
  static FormFile blank() { return {}; }
  template <class V, class R>
  static void visit(V& v, R& r) {
    v.field("uid", r.id);
    v.field("path", r.path);
    v.field("version", r.version);
    v.field("sha256", r.sha256);
    v.field("built_in_sha256", r.built_in_sha256);
    v.field("text", r.text);
  }
};

}  // namespace oaklight::store
