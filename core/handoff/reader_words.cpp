#include "core/handoff/reader_words.hpp"

namespace oaklight {
namespace {

constexpr ReaderWords kLogger = {
    .whom = "the logger",
    .signs_as = "Logger",
    .work_section = "TREES TO CUT",
    .work_heading = "Trees to cut: %1",
    .work_intro =
        "Cut only trees whose tag is on this list. Read the cautions beside a tree before "
        "you start on it. Tick the box when it is down.",
    .work_count = "to cut",
    .trained_section = "TRAINED FELLER ONLY",
    .trained_heading = "Trained feller only: %1",
    .trained_intro =
        "Nobody cuts from this page. A trained feller looks at each tree on the ground "
        "and clears it by name, or leaves it.",
    .trained_count = "trained feller only",
    .others_heading = "Tagged for other work, not yours to cut: %1",
    .others_count = "not yours: do not cut",
    .map_work = "Cut",
    .map_trained = "Trained feller only",
    .map_other = "Not yours: do not cut",
    .counted =
        "Trees to cut on this list: %1. Trees counted on the ground with the owner: ________"};

constexpr ReaderWords kFirewood = {
    .whom = "the firewood cutter",
    .signs_as = "Firewood cutter",
    .work_section = "TREES TO CUT",
    .work_heading = "Trees to cut: %1",
    .work_intro =
        "The easy trees come first. Cut only trees whose tag is on this list. Read the "
        "cautions beside a tree before you start on it. Tick the box when it is down.",
    .work_count = "to cut",
    .trained_section = "LEAVE THESE ALONE",
    .trained_heading = "Leave these alone, trained feller only: %1",
    .trained_intro =
        "These trees are marked, but they are dangerous. Do not cut them and stay two "
        "tree lengths away from them.",
    .trained_count = "dangerous, leave alone",
    .others_heading = "Tagged for other work, not yours to cut: %1",
    .others_count = "not yours: do not cut",
    .map_work = "Cut",
    .map_trained = "Trained feller only",
    .map_other = "Not yours: do not cut",
    .counted = kLogger.counted};

constexpr ReaderWords kStanding = {
    .whom = "whoever kills trees standing",
    .signs_as = "Person who kills the trees",
    .work_section = "TREES TO KILL STANDING",
    .work_heading = "Trees to kill standing: %1",
    .work_intro =
        "Label first. Kill only trees whose tag is on this list, and fell none of them. "
        "Read the cautions beside a tree before you start on it. Tick the box and write "
        "the day on the tree when it is done: from then on it is a danger tree.",
    .work_count = "to kill standing",
    .trained_section = "TRAINED PERSON ONLY",
    .trained_heading = "Trained person only: %1",
    .trained_intro =
        "Nobody works from this page. A trained person looks at each tree on the "
        "ground and clears it by name, or leaves it.",
    .trained_count = "trained person only",
    .others_heading = "Tagged for other work, not yours: %1",
    .others_count = "not yours: leave them",
    .map_work = "Kill standing",
    .map_trained = "Trained person only",
    .map_other = "Not yours: leave it",
    .counted =
        "Trees to kill standing on this list: %1. Trees counted on the ground with the "
        "owner: ________"};

constexpr ReaderWords kOwner = {
    .whom = "the owner",
    .signs_as = "Forester",
    .work_section = "TREES THAT GO",
    .work_heading = "Trees that go: %1",
    .work_intro =
        "All trees that are felled or killed standing, with the reason of each and whose "
        "list it is on. Nobody works from this page: each cutter has his own packet.",
    .work_count = "go",
    .trained_section = "TRAINED PERSON ONLY",
    .trained_heading = "Go only if a trained person clears each: %1",
    .trained_intro =
        "These trees are marked, but something about them is dangerous. A trained "
        "person looks at each one on the ground and clears it by name, or leaves it.",
    .trained_count = "go only if cleared",
    .others_heading = "Nothing is decided, look again: %1",
    .others_count = "not decided",
    .map_work = "Goes: felled or killed standing",
    .map_trained = "Goes only if cleared",
    .map_other = "Not decided",
    .counted = "Trees that go: %1. Trees counted on the ground: ________"};

}  // namespace

const ReaderWords& words_for(PacketReader reader) {
  switch (reader) {
    case PacketReader::logger:
      return kLogger;
    case PacketReader::firewood:
      return kFirewood;
    case PacketReader::standing:
      return kStanding;
    case PacketReader::owner:
      break;
  }
  return kOwner;
}

}  // namespace oaklight
