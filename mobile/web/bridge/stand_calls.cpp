// Calls about the figures of a stand, with the words of the app's Stand page.
#include <algorithm>
#include <array>

#include "core/base/number_text.hpp"
#include "core/session/plot_figures.hpp"
#include "core/session/stand_part.hpp"
#include "core/session/stand_view.hpp"
#include "core/stand/sources.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

constexpr const char* kWords = "StandWords";
constexpr double kUsualGoal = 15.0;    ///< percent: what the app's Setup begins with
constexpr std::size_t kAtOnce = 2000;  ///< records that are computed in full between two taps

EstimateOptions usual_options() {
  EstimateOptions options;
  options.goal = Percent{kUsualGoal};
  return options;
}

/// As people write it: no zeros after the point that say nothing.
std::string short_number(double value) {
  std::string text = number_text(value, 3);
  while (text.ends_with('0')) text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string number(double value, const ShownUnit& unit) {
  return grouped_text(value * unit.factor, unit.decimals);
}

Json unit_words(const ShownUnit& unit) {
  return unit.words.empty() ? Json("") : phrase("Units", unit.words);
}

Json error_words(const Error& error) {
  return error.fix.empty() ? error.what : error.what + " " + error.fix;
}

Json now_words(const StandNow& now, UnitSystem system) {
  const Json plots = counted(kWords, now.plots, "1 plot", "%1 plots");
  if (now.ba.trust == Trust::not_found) return phrase(kWords, "Stand: no live tree, %1", {plots});
  const ShownUnit unit = shown_unit(FigureUnit::basal_area, system);
  const std::string mean = number(now.ba.mean.value, unit);
  const Json figure = now.ba.half_width ? phrase(kWords, "%1\u00a0±\u00a0%2",
                                                 {mean, number(now.ba.half_width->value, unit)})
                                        : Json(mean);
  return phrase(kWords, "Stand: %1 %2, %3", {figure, unit_words(unit), plots});
}

Json need_words(const Result<PlotNeed>& need, const EstimateOptions& options) {
  if (!need) return error_words(need.error());
  const std::string goal = short_number(options.goal.value);
  const std::string sure = short_number(100.0 * options.confidence.share());
  if (need->more == 0) {
    return phrase(kWords,
                  "Enough plots: basal area is known within ±\u00a0%1\u00a0%, %2 times in 100.",
                  {goal, sure});
  }
  return phrase(
      kWords, "%1 to know basal area within ±\u00a0%2\u00a0%, %3 times in 100.",
      {counted(kWords, need->more, "Measure 1 more plot", "Measure %1 more plots"), goal, sure});
}

Json name_words(const AreaFigure& figure, const EstimateOptions& options) {
  const SourceNote* note = source_note(figure.key);
  const Json name = note == nullptr ? Json(figure.key) : phrase("Sources", note->name);
  if (figure.unit != FigureUnit::board_feet) return name;
  return phrase(kWords, "%1, %2 rule", {name, std::string(name_of(options.log_rule))});
}

Json interval_words(const AreaFigure& figure, UnitSystem system) {
  if (figure.lo && figure.hi) {
    return phrase(kWords, "%1 to %2\u00a0%",
                  {grouped_text(*figure.lo, 0), grouped_text(*figure.hi, 0)});
  }
  if (!figure.half_width) return "";
  const std::string half = number(*figure.half_width, shown_unit(figure.unit, system));
  if (figure.unit == FigureUnit::percent) return phrase(kWords, "±\u00a0%1 points", {half});
  if (!figure.half_pct) return phrase(kWords, "±\u00a0%1", {half});
  return phrase(kWords, "±\u00a0%1 (%2\u00a0%)", {half, grouped_text(figure.half_pct->value, 0)});
}

Json trust_words(const AreaFigure& figure) {
  switch (figure.trust) {
    case Trust::not_found: {
      const Json where =
          counted(kWords, figure.plots, "Not found on 1 plot", "Not found on %1 plots");
      if (!figure.on_at_most) return joined({where, ""}, ".");
      return phrase(kWords, "%1: up to %2 % of such plots may still hold it.",
                    {where, grouped_text(figure.on_at_most->value, 0)});
    }
    case Trust::one_plot:
      return phrase(kWords, "n = 1: no error can be told.");
    case Trust::two_plots:
      return phrase(kWords, "n = 2: very unsure.");
    case Trust::few_found:
      return phrase(kWords, "Found on %1 of %2 plots: the error is likely larger.",
                    {std::to_string(figure.found), std::to_string(figure.plots)});
    case Trust::fair:
      break;
  }
  return {};
}

Json missing_words(const AreaFigure& figure) {
  if (figure.unit == FigureUnit::board_feet) {
    return counted(kWords, figure.without, "No logs were counted on 1 tree.",
                   "No logs were counted on %1 trees.");
  }
  if (figure.unit == FigureUnit::cords) {
    return counted(kWords, figure.without, "1 tree is outside the table.",
                   "%1 trees are outside the table.");
  }
  return phrase(kWords, "No live tree was tallied.");
}

Json remark_words(const AreaFigure& figure, const StandView& view) {
  if (!figure.mean) return missing_words(figure);
  std::vector<Json> sentences;
  if (Json trusted = trust_words(figure); !trusted.is_null()) sentences.push_back(trusted);
  if (figure.without > 0) {
    sentences.push_back(counted(kWords, figure.without, "Too low: 1 tree is not in it.",
                                "Too low: %1 trees are not in it."));
  }
  if (figure.basis.by_ratio) {
    sentences.push_back(phrase(kWords, "By ratio, from the points that were measured."));
  }
  if (figure.by_local > 0) {
    sentences.push_back(
        counted(kWords, figure.by_local, "1 tree by local numbers.", "%1 trees by local numbers."));
  }
  if (figure.key == "stocking" && view.stocking.qmd) {
    if (!view.stocking.fit.fits()) {
      sentences.push_back(phrase(kWords, "Outside the upland oak guide: a rough guess."));
    } else if (!view.stocking.fit.printed) {
      sentences.push_back(phrase(kWords, "Beyond the printed guide."));
    }
  }
  return sentences.empty() ? Json("") : joined(std::move(sentences), " ");
}

Json figure_json(const AreaFigure& figure, const StandView& view, const EstimateOptions& options,
                 UnitSystem system) {
  Json row{{"key", figure.key},
           {"name", name_words(figure, options)},
           {"unit", ""},
           {"error", ""},
           {"remark", remark_words(figure, view)}};
  if (!figure.mean) {
    row["value"] = phrase(kWords, "not known");
  } else if (figure.trust == Trust::not_found) {
    row["value"] = phrase(kWords, "none found");
  } else {
    const ShownUnit unit = shown_unit(figure.unit, system);
    row["value"] = number(*figure.mean, unit);
    row["unit"] = unit_words(unit);
    row["error"] = interval_words(figure, system);
  }
  return row;
}

Result<Json> stand_figures_call(WebDesk& desk, const Arguments& arguments) {
  const auto stand = arguments.id<StandId>("stand");
  if (!stand) return stand.error();
  const OpenTract& tract = *desk.tract();
  const auto part = stand_part(tract.live, *stand);
  if (!part) return part.error();
  const EstimateOptions options = usual_options();
  const auto view = stand_view(*part, tract.knowledge, *stand, options);
  Json answer{
      {"figures", Json::array()}, {"advice", nullptr}, {"need", nullptr}, {"problem", nullptr}};
  if (!view) {
    answer["problem"] = error_words(view.error());
    return answer;
  }
  for (const AreaFigure& figure : area_figures(*view, options)) {
    answer["figures"].push_back(figure_json(figure, *view, options, arguments.system()));
  }
  answer["need"] = need_words(view->area.need, options);
  if (view->advice) answer["advice"] = view->advice->text;
  return answer;
}

constexpr std::array kCalls = {NamedCall{"standFigures", stand_figures_call}};

}  // namespace

std::span<const NamedCall> stand_calls() { return kCalls; }

Json stand_now_json(OpenTract& tract, StandId stand, UnitSystem system) {
  if (!tract.kept || tract.kept->stand() != stand) {
    tract.kept.emplace(tract.live, tract.knowledge.species(), stand);
  }
  const EstimateOptions options = usual_options();
  const Json nothing{{"text", nullptr}, {"need", nullptr}};
  auto now = tract.kept->now(options);
  if (!now && tract.kept->records() <= kAtOnce) {
    const auto full = running_figures(tract.live, tract.knowledge, stand, options);
    if (!full && full.error().code == ErrorCode::no_data) return nothing;
    if (full) now = stand_now(*full);
  }
  if (!now)
    return {{"text", phrase("StandNowViewModel", "Stand: see page Stand")}, {"need", nullptr}};
  return {{"text", now_words(*now, system)},
          {"need", now->need ? need_words(now->need, options) : Json()}};
}

}  // namespace oaklight::web
