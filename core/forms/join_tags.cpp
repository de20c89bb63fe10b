#include <algorithm>
#include <cmath>

#include "core/forms/cards.hpp"

namespace oaklight {
namespace {

/// One fact about a tree, and the line that told it; 0 is the tract file.
template <class T>
struct Told {
  std::optional<T> value;
  int line = 0;
};

/// Metres between two places some miles apart at most, on a sphere of the earth's mean radius.
double metres_apart(const Position& a, const Position& b) {
  constexpr double kEarthRadius = 6'371'000.0;
  const double north = radians(a.latitude) - radians(b.latitude);
  const double east = (radians(a.longitude) - radians(b.longitude)) * std::cos(radians(a.latitude));
  return kEarthRadius * std::hypot(north, east);
}

bool agree(const Position& a, const Position& b) {
  // Under leaves a receiver strays by 5 to 12 m; two readings of one tree lie well within this.
  constexpr double kNotTheSameTree = 50.0;
  return metres_apart(a, b) <= kNotTheSameTree;
}
template <class T>
bool agree(const T& a, const T& b) {
  return a == b;
}

/// Everything that the rows of one tag say, as it gathers.
class TagFacts {
 public:
  TagFacts(ImportJob& job, const std::string& tag, const WalkTree* known) : job_(job), tag_(tag) {
    if (!known) return;
    const TreeFacts& facts = known->facts;
    species_.value = facts.species;
    dbh_.value = facts.dbh;
    status_.value = facts.status;
    crown_class_.value = facts.crown_class;
    live_crown_.value = facts.live_crown;
    dieback_.value = facts.dieback;
    height_.value = facts.height;
    half_logs_.value = facts.half_logs;
    slope_.value = known->slope;
    position_.value = known->position;
    north_.value = known->crown.north;
    east_.value = known->crown.east;
    south_.value = known->crown.south;
    west_.value = known->crown.west;
    conditions_ = facts.conditions;
    note_ = facts.note;
  }

  void add(const FilledRow& row) {
    take(species_, row.get<SpeciesCode>("species"), row, "species");
    take(dbh_, row.get<Dbh>("dbh"), row, "dbh");
    // An empty status is live only when no row of the tag says otherwise.
    if (row.given("status")) take(status_, row.word<TreeStatus>("status"), row, "status");
    take(crown_class_, row.word<CrownClass>("crown_class"), row, "crown_class");
    take(live_crown_, row.quantity<Percent>("live_crown_pct"), row, "live_crown_pct");
    take(dieback_, row.quantity<Percent>("dieback_pct"), row, "dieback_pct");
    take(height_, row.get<TapedLength>("height"), row, "height");
    take(half_logs_, half_logs_of(row), row, "logs");
    take(slope_, row.quantity<Percent>("slope_pct"), row, "slope_pct");
    take(north_, row.get<TapedLength>("crown_n"), row, "crown_n");
    take(east_, row.get<TapedLength>("crown_e"), row, "crown_e");
    take(south_, row.get<TapedLength>("crown_s"), row, "crown_s");
    take(west_, row.get<TapedLength>("crown_w"), row, "crown_w");
    const auto position = row.position("lat", "lon");
    if (position) job_.add_point(row, "lat", *position);
    take(position_, position, row, "lat");
    // What one person saw and another did not is still there.
    for (const auto& entry : kWords<Condition>) {
      if (conditions_of(row).has(entry.value)) conditions_.add(entry.value);
    }
    const std::string note = row.text("note");
    if (!note.empty() && note_.find(note) == std::string::npos) {
      note_ += (note_.empty() ? "" : "; ") + note;
    }
  }

  /// Nothing, and faults at the first row, when species or DBH is told nowhere.
  std::optional<TreeFacts> whole(const FilledRow& first) {
    expect(species_.value.has_value(), first, "species");
    expect(dbh_.value.has_value(), first, "dbh");
    if (!species_.value || !dbh_.value) return std::nullopt;
    TreeFacts facts{*species_.value, *dbh_.value};
    facts.status = status_.value.value_or(TreeStatus::live);
    facts.crown_class = crown_class_.value;
    facts.live_crown = live_crown_.value;
    facts.dieback = dieback_.value;
    facts.height = height_.value;
    facts.half_logs = half_logs_.value;
    facts.conditions = conditions_;
    facts.note = note_;
    return facts;
  }
  [[nodiscard]] std::optional<Position> position() const { return position_.value; }
  [[nodiscard]] std::optional<Percent> slope() const { return slope_.value; }
  [[nodiscard]] CrownRadii crown() const {
    return {north_.value, east_.value, south_.value, west_.value};
  }
  /// A cell of some row was refused: what is missing may be there.
  void forgive_missing() { forgiving_ = true; }

 private:
  template <class T>
  void take(Told<T>& told, const std::optional<T>& value, const FilledRow& row, const char* field) {
    if (!value) return;
    if (!told.value) {
      told = {value, row.line()};
    } else if (!agree(*told.value, *value)) {
      row.fault(
          job_.faults, field, ErrorCode::contradiction,
          "Tree \"" + tag_ + "\" has another value " +
              (told.line == 0 ? "in the tract." : "on line " + std::to_string(told.line) + "."),
          "Correct one of the two, or leave this cell empty.");
    }
  }
  void expect(bool there, const FilledRow& first, const char* field) {
    if (there || forgiving_) return;
    first.fault(job_.faults, field, ErrorCode::missing_value,
                "No row of tree \"" + tag_ + "\" tells this.", "Fill it in on one of its rows.");
  }

  ImportJob& job_;
  const std::string& tag_;
  Told<SpeciesCode> species_;
  Told<Dbh> dbh_;
  Told<TreeStatus> status_;
  Told<CrownClass> crown_class_;
  Told<Percent> live_crown_;
  Told<Percent> dieback_;
  Told<TapedLength> height_;
  Told<int> half_logs_;
  Told<Percent> slope_;
  Told<Position> position_;
  Told<TapedLength> north_, east_, south_, west_;  // reach of the crown
  Conditions conditions_;
  std::string note_;
  bool forgiving_ = false;
};

/// The trees of the tract by their tag.
using KnownTrees = std::map<std::string_view, const WalkTree*>;

KnownTrees known_trees(const ImportJob& job) {
  KnownTrees known;
  for (const WalkTree& tree : job.existing.walk_trees) known.emplace(tree.tag, &tree);
  return known;
}

/// A tree stands on its own card and on those of its neighbours; past this a column slipped.
bool too_many_rows(ImportJob& job, const std::string& tag,
                   const std::vector<const CardRow*>& rows) {
  constexpr std::size_t kMostRows = 1'000;
  if (rows.size() <= kMostRows) return false;
  rows[kMostRows]->row.fault(job.faults, "tag", ErrorCode::out_of_range,
                             "Tree \"" + tag + "\" has more than 1,000 rows.",
                             "Give each tree a tag of its own.");
  return true;
}

/// The row that decides the stand: that of the tree's own card, or else its first.
const CardRow& own_row(const std::vector<const CardRow*>& rows) {
  const auto crop = std::find_if(rows.begin(), rows.end(),
                                 [](const CardRow* row) { return row->role == CardRole::crop; });
  return crop == rows.end() ? *rows.front() : **crop;
}

bool same_tree(const WalkTree& a, const WalkTree& b) {
  const TreeFacts& x = a.facts;
  const TreeFacts& y = b.facts;
  return x.crown_class == y.crown_class && x.live_crown == y.live_crown && x.dieback == y.dieback &&
         x.height == y.height && x.half_logs == y.half_logs && x.conditions == y.conditions &&
         x.note == y.note && a.crop == b.crop && a.looked == b.looked && a.position == b.position &&
         a.slope == b.slope && a.crown == b.crown;
}

/// Two trees, each a neighbour on the other's card.
struct Pair {
  const CardRow* one;
  const CardRow* other;
};

void check_pair_seen(ImportJob& job, const Pair& pair) {
  const auto a = pair.one->row.word<Seen>("seen");
  const auto b = pair.other->row.word<Seen>("seen");
  const auto crowds = [](std::optional<Seen> s) { return s == Seen::touches || s == Seen::over; };
  const bool apart_and_not = (a == Seen::none && crowds(b)) || (b == Seen::none && crowds(a));
  const bool both_above = a == b && (a == Seen::over || a == Seen::below);
  if (!apart_and_not && !both_above) return;
  pair.other->row.fault(job.faults, "seen", ErrorCode::contradiction,
                        "The crowns of \"" + pair.other->card + "\" and \"" + pair.one->card +
                            "\" are told as " + std::string(word_of(*b)) + " here and as " +
                            std::string(word_of(*a)) + " on line " +
                            std::to_string(pair.one->row.line()) + ".",
                        "Look again and correct one of the two.");
}

void check_pair_place(ImportJob& job, const Pair& pair) {
  constexpr double kShare = 0.1;  // taped twice, through brush
  constexpr Feet kLeast{2.0};
  const auto a = pair.one->row.get<TapedLength>("distance");
  const auto b = pair.other->row.get<TapedLength>("distance");
  if (a && b) {
    const Feet gap{std::fabs(a->feet().value - b->feet().value)};
    if (gap > kLeast && gap > kShare * a->feet()) {
      pair.other->row.fault(job.faults, "distance", ErrorCode::contradiction,
                            "The distance between the two trees is told otherwise on line " +
                                std::to_string(pair.one->row.line()) + ".",
                            "Correct one of the two, or leave this cell empty.");
    }
  }
  constexpr double kCompass = 30.0;  // two compass readings at arm's length of a stem
  const auto there = pair.one->row.quantity<Degrees>("azimuth_deg");
  const auto back = pair.other->row.quantity<Degrees>("azimuth_deg");
  if (there && back && degrees_apart(*there + Degrees{180.0}, *back) > kCompass) {
    pair.other->row.fault(job.faults, "azimuth_deg", ErrorCode::contradiction,
                          "The azimuth is not the way back from that on line " +
                              std::to_string(pair.one->row.line()) + ".",
                          "The two differ by 180 degrees; correct one of them.");
  }
}

}  // namespace

std::map<std::string, WalkTreeId> join_tags(ImportJob& job, const RowsByTag& by_tag,
                                            const std::map<std::string, Sides>& looked) {
  std::map<std::string, WalkTreeId> ids;
  const KnownTrees in_tract = known_trees(job);
  for (const auto& [tag, rows] : by_tag) {
    if (too_many_rows(job, tag, rows)) continue;
    const auto found = in_tract.find(tag);
    const WalkTree* known = found == in_tract.end() ? nullptr : found->second;
    TagFacts gathered(job, tag, known);
    for (const CardRow* row : rows) {
      if (!row->row.sound()) gathered.forgive_missing();
      gathered.add(row->row);
    }
    const CardRow& own = own_row(rows);
    auto facts = gathered.whole(rows.front()->row);
    const auto stand = job.stands.find(own.row.text("stand"));
    if (!facts || (!known && stand == job.stands.end())) continue;
    check_facts(*facts, own.row, job.faults);
    WalkTree tree{{}, {}, tag, std::move(*facts)};
    tree.id = known ? known->id : job.ids.next_id<WalkTreeTag>();
    tree.stand = known ? known->stand : stand->second;
    tree.crop = own.role == CardRole::crop || (known && known->crop);
    if (known) tree.looked = known->looked;
    if (const auto sides = looked.find(tag); sides != looked.end()) tree.looked.add(sides->second);
    tree.position = gathered.position();
    tree.slope = gathered.slope();
    tree.crown = gathered.crown();
    ids.emplace(tag, tree.id);
    if (!known || !same_tree(tree, *known)) job.data.walk_trees.push_back(std::move(tree));
  }
  return ids;
}

void check_mutual(ImportJob& job, const std::vector<CardRow>& rows) {
  std::map<std::pair<std::string, std::string>, const CardRow*> contacts;
  for (const CardRow& row : rows) {
    if (row.role == CardRole::neighbour) contacts.emplace(std::pair(row.card, row.tag), &row);
  }
  for (const CardRow& row : rows) {
    if (row.role != CardRole::neighbour) continue;
    const auto back = contacts.find({row.tag, row.card});
    if (back == contacts.end() || back->second->row.line() >= row.row.line()) continue;
    check_pair_seen(job, {back->second, &row});
    check_pair_place(job, {back->second, &row});
  }
}

}  // namespace oaklight
