#include "core/model/plot_task.hpp"

#include <charconv>
#include <optional>
#include <string_view>

namespace oaklight {
namespace {

constexpr std::string_view kCount = "[count point";

std::optional<int> take_number(std::string_view& text) {
  int value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || value < 1) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return value;
}

bool take(std::string_view& text, std::string_view expected) {
  if (!text.starts_with(expected)) return false;
  text.remove_prefix(expected.size());
  return true;
}

/// The counts up to the closing bracket.
bool take_counts(std::string_view& text, std::vector<SpeciesCount>& counted) {
  if (take(text, "]")) return true;
  if (!take(text, ": ")) return false;
  do {
    const auto species = take_number(text);
    if (!species || !take(text, " ")) return false;
    const auto stems = take_number(text);
    if (!stems) return false;
    counted.push_back({SpeciesCode{*species}, *stems});
  } while (take(text, ", "));
  return take(text, "]");
}

}  // namespace

PlotTaken taken_at(const Plot& plot) {
  PlotTaken taken{.task = PlotTask::count};
  std::string_view rest = plot.note;
  if (!take(rest, kCount) || !take_counts(rest, taken.counted)) {
    return {.task = PlotTask::measure, .note = plot.note};
  }
  take(rest, " ");
  taken.note = rest;
  return taken;
}

std::string note_of(const PlotTaken& taken) {
  if (taken.task == PlotTask::measure) return taken.note;
  std::string text(kCount);
  std::string_view before = ": ";
  for (const SpeciesCount& one : taken.counted) {
    text += std::string(before) + std::to_string(one.species.fia) + ' ' + std::to_string(one.stems);
    before = ", ";
  }
  text += ']';
  return taken.note.empty() ? text : text + ' ' + taken.note;
}

}  // namespace oaklight
