#include "core/handoff/packet_words.hpp"

#include <algorithm>

#include "core/place/position_text.hpp"

namespace oaklight {
namespace {

std::string or_not_recorded(const std::string& text) {
  return text.empty() ? "not recorded" : text;
}

std::string place_name(const Tract& tract) {
  std::string name = tract.name;
  for (const std::string& part : {tract.county, tract.state}) {
    if (part.empty()) continue;
    if (!name.empty()) name += ", ";
    name += part;
  }
  return name;
}

/// "oak_wilt_risk" for people.
std::string issue_words(std::string issue) {
  std::replace(issue.begin(), issue.end(), '_', ' ');
  return issue;
}

/// Names each issue once, however many rows it has.
std::string issues_on(std::span<const SeasonWindow> windows, Day day) {
  std::vector<std::string> named;
  for (const SeasonWindow& window : windows) {
    const std::string words = issue_words(window.issue);
    const bool again = std::find(named.begin(), named.end(), words) != named.end();
    if (holds_on(window, day) && !again) named.push_back(words);
  }
  std::string text;
  for (const std::string& words : named) text += (text.empty() ? "" : ", ") + words;
  return text;
}

std::string count_of(int trees, std::string_view one, std::string_view many) {
  return std::to_string(trees) + " " + std::string(trees == 1 ? one : many);
}

void say_danger(std::vector<std::string>& says, PacketReader reader) {
  switch (reader) {
    case PacketReader::firewood:
      says.push_back(
          "Felling trees kills people, also people who know how. If nobody has taught you felling, "
          "hands on, take only wood that lies on the ground, or hire a trained and insured "
          "logger.");
      return;
    case PacketReader::logger:
      says.push_back(
          "Felling trees kills people, also people who know how. Only trained fellers cut from "
          "this "
          "list.");
      return;
    case PacketReader::standing:
      says.push_back(
          "Label first: before you open any product, read its whole label and follow it. It says "
          "where, on what, how and with which gear the product may be used; no dose is given here. "
          "Where the label does not name this use, do not use it.");
      says.push_back(
          "Where the state asks for a license, only a licensed person applies a product. Ask your "
          "state's pesticide office before you start.");
      says.push_back(
          "A tree that is cut into can drop limbs, split or fall at once, and a tree killed "
          "standing "
          "is a danger tree from then on. Only people trained with the saw girdle from this list.");
      return;
    case PacketReader::owner:
      says.push_back(
          "This packet is yours: it shows everything, with reasons. It is no work list. Hand each "
          "cutter the packet made for him, and nothing else.");
      says.push_back(
          "Felling trees kills people, also people who know how. Have it done by trained and "
          "insured "
          "people, and ask for proof of both.");
      return;
  }
}

void say_who_may_cut(std::vector<std::string>& says, PacketReader reader) {
  say_danger(says, reader);
  says.push_back(
      reader == PacketReader::standing
          ? "This list does not say that any tree is safe to work on. It says which trees the "
            "owner "
            "wants dead and standing. Look at each tree yourself, from the roots to the top."
          : "This list does not say that any tree is safe to cut. It says which trees the owner "
            "lets "
            "go. Look at each tree yourself, from the roots to the top.");
  says.push_back(
      "If a tree looks wrong, or you are in doubt for any reason, leave it alone and tell the "
      "owner.");
  says.push_back(
      "Never cut alone. A second adult stays in sight or hearing, two tree lengths away, able to "
      "call for help and to stop bleeding.");
}

/// "Ash that is dead or mostly dead (268, 344)", of every danger of that severity.
std::string dangers_words(const std::vector<ListedDanger>& dangers, Severity severity) {
  constexpr std::size_t kMost = 6;
  std::string words;
  for (const ListedDanger& danger : dangers) {
    if (danger.severity != severity) continue;
    words += (words.empty() ? "" : "; ") + danger.seen + " (";
    for (std::size_t i = 0; i < std::min(kMost, danger.tags.size()); ++i) {
      words += (i == 0 ? "" : ", ") + danger.tags[i];
    }
    if (danger.tags.size() > kMost) {
      words += " and " + std::to_string(danger.tags.size() - kMost) + " more";
    }
    words += ")";
  }
  return words;
}

/// The dangers of the trees on this very list, which no general sentence names.
void say_dangers(std::vector<std::string>& says, const StartFacts& facts) {
  const std::string stops = dangers_words(facts.on_list, Severity::stop);
  if (!stops.empty()) says.push_back("STOP at these trees of this very list: " + stops + ".");
  const std::string cares = dangers_words(facts.on_list, Severity::extra_care);
  if (!cares.empty()) says.push_back("Take care at these: " + cares + ".");
}

void say_what_to_leave(std::vector<std::string>& says, const StartFacts& facts) {
  switch (facts.reader) {
    case PacketReader::standing:
      says.push_back(
          "Kill only a tree whose tag is on the list of trees to kill standing, and check its "
          "species and size. Fell none of them. Write the day on each, and flag it so that later "
          "workers keep two tree lengths away.");
      break;
    case PacketReader::owner:
      break;
    default:
      says.push_back(
          "Cut only a tree whose tag is on the list of trees to cut, and check its species and "
          "size. "
          "A tree without a tag stays. The trees to keep are the reason for this work.");
  }
  if (facts.trained == 0) return;
  if (facts.reader == PacketReader::firewood) {
    says.push_back(count_of(facts.trained, "tree is", "trees are") +
                   " listed to be left alone, marked or not: too dangerous, or not sure enough, to "
                   "cut from a list.");
  } else if (facts.reader == PacketReader::standing) {
    says.push_back(count_of(facts.trained, "marked tree needs", "marked trees need") +
                   " a trained person who knows danger trees, cleared by name one by one. Nobody "
                   "works on them from this list.");
  } else {
    says.push_back(count_of(facts.trained, "marked tree needs", "marked trees need") +
                   " a trained feller who knows danger trees, cleared by name one by one. Nobody "
                   "cuts them from this list.");
  }
}

void say_where(std::vector<std::string>& says, const StartFacts& facts) {
  if (!facts.lines) {
    says.push_back(
        "No property line is on the map. Walk the lines with the owner before you start.");
  } else if (!facts.lines_confirmed) {
    says.push_back(
        "The property line is not confirmed. Walk it with the owner and the neighbor before you "
        "start. The place of a phone under leaves is no survey.");
  }
  if (facts.unplaced > 0) {
    says.push_back(count_of(facts.unplaced, "listed tree has", "listed trees have") +
                   " no place on the map: nobody checked how far off the lines, roads, wires and "
                   "water are. Check before you cut.");
  }
}

}  // namespace

std::vector<PacketFact> emergency_facts(const Tract& tract) {
  return {
      {"Call 911 and say", or_not_recorded(place_name(tract))},
      {"The way in", or_not_recorded(tract.directions)},
      {"Meet the ambulance at", or_not_recorded(tract.meeting_place)},
      {"Map point of the landing, GPS datum WGS 84",
       tract.landing ? decimal_degrees_text(*tract.landing) : "not recorded"},
      {"The same in degrees and minutes",
       tract.landing ? degrees_minutes_text(*tract.landing) : "not recorded"},
      {"A phone works at", or_not_recorded(tract.phone_place)},
      {"Answers for the work", or_not_recorded(tract.contact)},
  };
}

std::vector<std::string> before_you_start(const StartFacts& facts) {
  std::vector<std::string> says;
  if (facts.demo) {
    says.push_back("Invented data, for practice. No such trees stand anywhere: cut nothing.");
  }
  if (!facts.held_by.empty()) {
    says.push_back("Do not start on the day that was given. Our dates hold back cutting then: " +
                   facts.held_by + ". Ask your state agency, and choose another day.");
  }
  say_who_may_cut(says, facts.reader);
  say_dangers(says, facts);
  say_what_to_leave(says, facts);
  say_where(says, facts);
  says.push_back(
      "The law, local codes, the label of any product, the saw's manual and licensed or trained "
      "people come before this list, which is a reminder and no permit.");
  says.push_back("Our cautions and dates were last read against their sources in " +
                 facts.cautions_read_on + ". Rules change: check with your state agencies.");
  return says;
}

std::vector<SeasonNote> season_notes(std::span<const SeasonWindow> of_state) {
  std::vector<SeasonNote> notes;
  for (const SeasonUse use : {SeasonUse::hold, SeasonUse::tell}) {
    for (const SeasonWindow& window : windows_of(of_state, use)) {
      notes.push_back({issue_words(window.issue), span_text(window),
                       "(" + window.where + ") " + window.note + " Check with your state agency.",
                       window.evidence});
    }
  }
  return notes;
}

std::string seasons_held(std::span<const SeasonWindow> of_state, Day day) {
  return issues_on(windows_of(of_state, SeasonUse::hold), day);
}

std::string season_advice(std::span<const SeasonWindow> of_state, bool state_known,
                          std::optional<Day> work_day, Day today) {
  const Day day = work_day.value_or(today);
  const auto holds = windows_of(of_state, SeasonUse::hold);
  const std::string held = issues_on(holds, day);
  const auto clear = next_clear_day(holds, day);
  std::string text = work_day ? "" : "No day for the work was given, so check the dates below. ";
  text += (work_day ? "On " : "Today, ") + to_text(day) + (work_day ? "" : ",");
  if (held.empty()) {
    const auto next = next_held_day(holds, day);
    text += " none of our dates holds back cutting beside oaks.";
    if (next) text += " The next one that does begins on " + to_text(*next) + ".";
  } else {
    text += " our dates hold back cutting beside oaks: " + held + ".";
    text += clear ? " The first day clear of all of them is " + to_text(*clear) + "."
                  : " No day of the year is clear of all of them.";
  }
  if (!state_known) text += " The state is not recorded: these are general dates.";
  return text + " Check with your state agency; its dates come first.";
}

}  // namespace oaklight
