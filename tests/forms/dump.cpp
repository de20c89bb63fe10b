#include <map>

#include "core/base/number_text.hpp"
#include "tests/forms/cruise_files.hpp"

namespace oaklight::test {
namespace {

/// Builds one line of words.
class Line {
 public:
  explicit Line(const char* kind) : text_(kind) {}
  Line& add(const char* name, const std::string& value) {
    if (!value.empty()) text_ += std::string(" ") + name + "=" + value;
    return *this;
  }
  Line& add(const char* name, double value, int decimals) {
    return add(name, number_text(value, decimals));
  }
  template <class Q>
  Line& add(const char* name, const std::optional<Q>& value, int decimals) {
    return value ? add(name, value->value, decimals) : *this;
  }
  Line& add(const char* name, const std::optional<Position>& p) {
    return p ? add(name,
                   number_text(p->latitude.value, 6) + "/" + number_text(p->longitude.value, 6))
             : *this;
  }
  Line& add(const char* name, const std::optional<Dbh>& d) {
    return d ? add(name, number_text(d->tenths() / 10.0, 1) +
                             (d->system() == UnitSystem::us ? "in" : "cm"))
             : *this;
  }
  Line& add(const char* name, const std::optional<TapedLength>& t) {
    return t ? add(name, number_text(t->hundredths() / 100.0, 2) +
                             (t->system() == UnitSystem::us ? "ft" : "m"))
             : *this;
  }
  Line& facts(const TreeFacts& f) {
    add("species", std::to_string(f.species.fia)).add("dbh", std::optional(f.dbh));
    add("status", std::string(word_of(f.status)));
    if (f.crown_class) add("crown", std::string(word_of(*f.crown_class)));
    add("live_crown", f.live_crown, 1).add("dieback", f.dieback, 1).add("height", f.height);
    if (f.half_logs) add("half_logs", std::to_string(*f.half_logs));
    std::string conditions;
    for (const auto& entry : kWords<Condition>) {
      if (f.conditions.has(entry.value)) conditions += "|" + std::string(entry.word);
    }
    return add("conditions", conditions).add("note", f.note);
  }
  [[nodiscard]] std::string end() const { return text_ + "\n"; }

 private:
  std::string text_;
};

std::string sides_text(Sides sides) {
  std::string text;
  for (const Side side : kSides) {
    if (sides.has(side)) text += word_of(side);
  }
  return text;
}

std::string dump_cruise(const Cruise& cruise) {
  Line line("cruise");
  line.add("name", cruise.name);
  if (const auto* point = std::get_if<PointDesign>(&cruise.design)) {
    line.add("baf", point->factor, 4).add("system", point->system == UnitSystem::us ? "us" : "m");
  } else {
    const auto& fixed = std::get<FixedDesign>(cruise.design);
    line.add("area", fixed.area, 6).add("system", fixed.system == UnitSystem::us ? "us" : "m");
    if (fixed.small_area) line.add("small", *fixed.small_area, 6);
    line.add("below", fixed.small_below);
  }
  line.add("min_dbh", cruise.min_dbh);
  if (cruise.regen_area) line.add("regen", *cruise.regen_area, 6);
  return line.add("crew", cruise.crew).add("date", cruise.date).end();
}

std::string dump_ring(const Ring& ring) {
  std::string text;
  for (const Position& p : ring) {
    text += "(" + number_text(p.longitude.value, 3) + " " + number_text(p.latitude.value, 3) + ")";
  }
  return text;
}

std::string dump_tract(const TractData& data) {
  const Tract& t = data.tract;
  std::string text = Line("tract")
                         .add("name", t.name)
                         .add("state", t.state)
                         .add("county", t.county)
                         .add("contact", t.contact)
                         .add("directions", t.directions)
                         .add("meet", t.meeting_place)
                         .add("phone", t.phone_place)
                         .add("landing", t.landing)
                         .add("demo", t.demo ? "yes" : "no")
                         .end();
  for (const Stand& s : data.stands) {
    Line line("stand");
    line.add("name", s.name).add("acres", s.acres.value, 4).add("walked", s.walked, 4);
    line.add("goal", std::string(word_of(s.goal)));
    if (s.age_years) line.add("age", std::to_string(*s.age_years));
    line.add("site", s.site_index, 2);
    if (s.boundary) line.add("outline", dump_ring(s.boundary->outer));
    text += line.end();
  }
  for (const Cruise& cruise : data.cruises) text += dump_cruise(cruise);
  for (const MapLine& l : data.lines) {
    text += Line("line")
                .add("kind", std::string(word_of(l.kind)))
                .add("name", l.name)
                .add("confirmed", l.confirmed ? "yes" : "no")
                .add("points", dump_ring(l.points))
                .end();
  }
  return text;
}

}  // namespace

std::string dump(const TractData& data) {
  std::map<Uuid, std::string> names;
  for (const Stand& s : data.stands) names[s.id.value] = s.name;
  for (const Cruise& c : data.cruises) names[c.id.value] = c.name;
  for (const Plot& p : data.plots) names[p.id.value] = names[p.stand.value] + "/" + p.label;
  for (const WalkTree& w : data.walk_trees) names[w.id.value] = w.tag;
  std::string text = dump_tract(data);
  for (const Plot& p : data.plots) {
    text += Line("plot")
                .add("of", names[p.id.value])
                .add("cruise", names[p.cruise.value])
                .add("status", std::string(word_of(p.status)))
                .add("why", p.skip_reason)
                .add("at", p.position)
                .add("accuracy", p.accuracy, 1)
                .add("slope", p.slope, 1)
                .add("note", p.note)
                .end();
  }
  for (const Tree& t : data.trees) {
    Line line("tree");
    line.add("plot", names[t.plot.value]).facts(t.facts).add("stems", std::to_string(t.stems));
    line.add("edge", std::to_string(t.edge_count)).add("azimuth", t.azimuth, 1);
    text += line.add("distance", t.distance).add("tag", t.tag).end();
  }
  for (const Regen& r : data.regens) {
    text += Line("regen")
                .add("plot", names[r.plot.value])
                .add("species", std::to_string(r.species.fia))
                .add("height", std::string(word_of(r.height)))
                .add("count", std::to_string(r.count))
                .end();
  }
  for (const WalkTree& w : data.walk_trees) {
    Line line("walk_tree");
    line.add("tag", w.tag).add("stand", names[w.stand.value]).facts(w.facts);
    line.add("crop", w.crop ? "yes" : "no").add("looked", sides_text(w.looked));
    text += line.add("at", w.position).add("slope", w.slope, 1).end();
  }
  for (const Contact& c : data.contacts) {
    text += Line("contact")
                .add("crop", names[c.crop.value])
                .add("neighbour", names[c.neighbour.value])
                .add("sides", sides_text(c.sides))
                .add("seen", std::string(word_of(c.seen)))
                .add("distance", c.distance)
                .add("azimuth", c.azimuth, 1)
                .end();
  }
  return text;
}

}  // namespace oaklight::test
