#include <algorithm>
#include <cmath>

#include "core/forms/import_job.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

std::vector<std::string_view> names_of(const ImportJob& job) {
  constexpr std::size_t kMostOffered = 2'000;  // of more none is offered (near_words)
  std::vector<std::string_view> names;
  if (job.stands.size() > kMostOffered) return names;
  for (const auto& [name, id] : job.stands) names.push_back(name);
  return names;
}

std::optional<Acres> acres_of(const FilledRow& row, std::string_view field) {
  const auto area = row.get<double>(field);
  if (!area) return std::nullopt;
  return row.table().system() == UnitSystem::us
             ? Acres{*area}
             : to_acres(SquareMetres{*area * kSquareMetresPerHectare});
}

Stand stand_of(const FilledRow& row) {
  Stand stand;
  stand.name = row.text("stand");
  stand.acres = acres_of(row, "acres").value_or(Acres{});
  stand.walked = acres_of(row, "walked_acres");
  stand.goal = row.word<Goal>("goal").value_or(Goal::mast);
  if (const auto age = row.get<std::int64_t>("age_years")) {
    stand.age_years = static_cast<int>(*age);
  }
  if (const auto height = row.get<TapedLength>("site_index")) stand.site_index = height->feet();
  return stand;
}

void check_walked(const FilledRow& row, FaultList& faults) {
  constexpr double kMapsDiffer = 1.1;  // a walked area is taken off another map than the owner's
  const auto acres = row.get<double>("acres");
  const auto walked = row.get<double>("walked_acres");
  if (!acres || !walked || *walked <= kMapsDiffer * *acres) return;
  row.fault(faults, "walked_acres", ErrorCode::contradiction,
            "More ground was walked than the stand has.", "Correct one of the two areas.");
}

/// The same figure, give or take what storing it may round off.
template <class Q>
bool same(const Q& a, const Q& b) {
  return std::fabs(a.value - b.value) <= 1e-6 * std::fabs(b.value);
}

/// Joins a row with the stand that the tract file has. What the row leaves empty stays; what it
/// says otherwise is a fault.
void join_stand(ImportJob& job, const FilledRow& row, const Stand& known) {
  const Stand told = stand_of(row);
  Stand joined = known;
  const auto differs = [&](const char* field) {
    row.fault(job.faults, field, ErrorCode::contradiction,
              "Stand \"" + known.name + "\" is in the tract with another value.",
              "Leave the cell as it is in the tract, or change it there first.");
  };
  if (row.given("acres") && !same(told.acres, known.acres)) differs("acres");
  if (row.given("goal") && told.goal != known.goal) differs("goal");
  if (told.walked && known.walked && !same(*told.walked, *known.walked)) differs("walked_acres");
  if (told.age_years && known.age_years && told.age_years != known.age_years) differs("age_years");
  if (told.site_index && known.site_index && !same(*told.site_index, *known.site_index)) {
    differs("site_index");
  }
  if (!known.walked) joined.walked = told.walked;
  if (!known.age_years) joined.age_years = told.age_years;
  if (!known.site_index) joined.site_index = told.site_index;
  const bool more = joined.walked.has_value() != known.walked.has_value() ||
                    joined.age_years.has_value() != known.age_years.has_value() ||
                    joined.site_index.has_value() != known.site_index.has_value();
  if (more) job.data.stands.push_back(std::move(joined));
}

/// Names of stands by how they read without capitals.
using Twins = std::map<std::string, std::string>;

void import_stand(ImportJob& job, const FilledRow& row, std::map<std::string, int>& lines,
                  Twins& twins) {
  const std::string name = row.text("stand");
  if (name.empty()) return;
  const auto [first, fresh] = lines.emplace(name, row.line());
  if (!fresh) {
    row.fault(job.faults, "stand", ErrorCode::duplicate,
              "Stand \"" + name + "\" is on line " + std::to_string(first->second) + " already.",
              "Keep one of the rows, or give this stand another name.");
    return;
  }
  check_walked(row, job.faults);
  const auto& known = job.existing.stands;
  const auto found = std::find_if(known.begin(), known.end(),
                                  [&](const Stand& stand) { return stand.name == name; });
  if (found != known.end()) {
    if (row.sound()) join_stand(job, row, *found);
    return;
  }
  if (const auto [twin, alone] = twins.emplace(lower_case(name), name); !alone) {
    row.fault(job.faults, "stand", ErrorCode::duplicate,
              "Stand \"" + name + "\" and stand \"" + twin->second + "\" differ in capitals only.",
              "Write the name one way, or make the names differ more.");
  }
  Stand stand = stand_of(row);
  stand.id = job.ids.next_id<StandTag>();
  job.stands.emplace(name, stand.id);
  job.data.stands.push_back(std::move(stand));
}

/// Two letters in capitals; "" and a fault for anything else.
std::string state_of(ImportJob& job, const FilledRow& row) {
  std::string state = row.text("state");
  for (char& c : state) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  const bool letters =
      std::all_of(state.begin(), state.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
  if (state.empty() || (letters && state.size() == 2)) return state;
  row.fault(job.faults, "state", ErrorCode::not_a_choice,
            "State \"" + state + "\" is not two letters.", "Write it like OH.");
  return "";
}

}  // namespace

void ImportJob::add_point(const FilledRow& row, std::string_view field, const Position& position) {
  points.push_back({position, row.table().kind(), row.line(), row.place(field)});
}

std::optional<StandId> ImportJob::find_stand(const FilledRow& row) {
  const std::string name = row.text("stand");
  if (name.empty()) return std::nullopt;
  if (const auto found = stands.find(name); found != stands.end()) return found->second;
  // What stands.csv would have said cannot be known while it is broken.
  if (!tables.stands.complete()) return std::nullopt;
  const CruiseFile file = row.table().kind();
  if (unknown_stands.emplace(file, name).second) {
    const auto near =
        faults.hopeless(file) ? std::vector<std::string>() : near_words(name, names_of(*this));
    row.fault(faults, "stand", ErrorCode::unknown_reference,
              "Stand \"" + name + "\" is neither in stands.csv nor in the tract.",
              did_you_mean(near, "Add it to stands.csv."));
  }
  return std::nullopt;
}

void import_tract(ImportJob& job) {
  job.data.tract = job.existing.tract;
  if (job.tables.tract.rows().size() != 1) return;
  const FilledRow row(job.tables.tract, job.tables.tract.rows().front());
  Tract& tract = job.data.tract;
  const std::string name = row.text("name");
  if (!tract.name.empty() && !name.empty() && name != tract.name) {
    row.fault(
        job.faults, "name", ErrorCode::contradiction,
        "The tract file is that of \"" + tract.name + "\", these files are of \"" + name + "\".",
        "Open the other tract file, or write the same name.");
  }
  const auto take = [&](const char* field, std::string& into) {
    if (row.given(field)) into = row.text(field);
  };
  take("name", tract.name);
  take("county", tract.county);
  take("contact", tract.contact);
  take("directions", tract.directions);
  take("meeting_place", tract.meeting_place);
  take("phone_place", tract.phone_place);
  if (row.given("state")) tract.state = state_of(job, row);
  if (const auto landing = row.position("landing_lat", "landing_lon")) {
    tract.landing = landing;
    job.add_point(row, "landing_lat", *landing);
  }
  // Invented data stays invented, whatever is brought in later.
  tract.demo = tract.demo || row.get<bool>("demo").value_or(false);
}

void import_stands(ImportJob& job) {
  for (const Stand& stand : job.existing.stands) job.stands.emplace(stand.name, stand.id);
  std::map<std::string, int> lines;
  Twins twins;
  for (const auto& [name, id] : job.stands) twins.emplace(lower_case(name), name);
  for (const auto& row : job.tables.stands.rows()) {
    import_stand(job, FilledRow(job.tables.stands, row), lines, twins);
  }
}

}  // namespace oaklight
