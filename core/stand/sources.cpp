#include "core/stand/sources.hpp"

#include <algorithm>

#include "core/stand/source_lists.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kGeometry = "core/measure/plot_geometry.hpp";
constexpr std::string_view kRatio = "core/sample/ratio.hpp";
constexpr std::string_view kLogRule = "core/measure/log_rule.hpp";
constexpr auto kRead = SourceStatus::retrieved;
constexpr auto kWorkedOut = SourceStatus::derived;
constexpr auto kRecalled = SourceStatus::from_memory;

void add_density(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"basal_area",
       "Basal area",
       "At a point each tree that is in counts the basal area factor, whatever its size. On a "
       "fixed plot it counts its cross-section, pi/576 x DBH x DBH in square feet, over the acres "
       "of the plot. Summed by plot over live trees; the figure is the mean over all plots, and a "
       "plot without trees counts as 0.",
       "Trees under the smallest tree tallied are not in it.",
       {{"definition of the basal area factor", kGeometry, kWorkedOut, ""}}});
  notes.push_back(
      {"trees",
       "Trees",
       "A tree on a fixed plot stands for 1 over the acres of the plot; at a point for the basal "
       "area factor over its own basal area. An edge tree that was counted twice counts twice. "
       "Mean over all plots, empty ones as 0.",
       "From points it is poor where small stems are tallied: each of them stands for many. A "
       "small fixed plot for the thin ones mends it.",
       {{"1 / plot area; at a point baf / basal area", kGeometry, kWorkedOut, ""},
        {"walkthrough (Ducey, Gove and Valentine 2004, Forest Science 50(4):427-435)", kGeometry,
         kRead, ""}}});
  notes.push_back(
      {"mean_diameter",
       "Mean diameter (QMD)",
       "The diameter of the tree of mean basal area: the root of mean basal area over mean trees "
       "over pi/576. Made from the two means, never as a mean over plots. Its error follows from "
       "the error of that ratio: half the diameter times the ratio's error in percent.",
       "Leans upward in small samples, as ratios do.",
       {{"delta method on the ratio", kRatio, kWorkedOut, ""},
        {"Cochran 1977, chapter 6", kRatio, kRecalled, "Checked against R package survey."}}});
  notes.push_back(
      {"stocking",
       "Stocking",
       "Each live tree of 2 in and more adds -0.00507 + 0.01698 D + 0.00317 D x D percent, D its "
       "DBH in inches, times the trees an acre that it stands for. Summed by plot; the figure is "
       "the mean over all plots. 100 is the A line, average full stocking. The B line is where "
       "open-grown crowns would just cover the ground.",
       "Made for upland oak and hickory. The printed guide covers mean diameters of 3 to 15 in; "
       "its equations are commonly run to 22 in. Where oaks and hickories hold less than half of "
       "the basal area it is a rough guess.",
       {{"Gingrich 1967, Forest Science 13(1):38-53", "core/measure/stocking.hpp", kRecalled,
         "Coefficients from memory; three published chart readings are met within 1 point."},
        {"Krajicek, Brinkman and Gingrich 1961, Forest Science 7(1):35-42",
         "core/measure/stocking.hpp", kRecalled, "For the B line."},
        {"Service Forester's Handbook (Southern Regional Extension Forestry), hardwood stocking "
         "charts",
         "core/stand/stand_stocking.hpp", kRead, "For the smallest tree counted."}}});
  notes.push_back(
      {"guard_stocking",
       "Stocking that guards count",
       "The same sum over fewer trees: live ones of 5 in and more, and smaller ones only where "
       "they "
       "stand in the main canopy. Floors are compared with it, so it may differ from the stand's "
       "stocking.",
       "As stocking. A small tree without a crown class is not counted.",
       {{"rule R2.27", "core/stand/stand_stocking.hpp", SourceStatus::common_practice, ""}}});
  notes.push_back(
      {"oak_share",
       "Oaks' share",
       "Basal area of live oaks over basal area of all live trees: sum over plots by sum over "
       "plots, since the trees of a plot come together and are no sample of single trees.",
       "",
       {{"Cochran 1977, chapter 6", "core/stand/composition.hpp", kRecalled, ""}}});
}

void add_wood(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"board_feet",
       "Board feet",
       "Gross, of standing live trees. The first 16-ft log's top is the form class (78 %) of DBH, "
       "the upper logs taper as the average tree does, and each log is scaled by the log rule. A "
       "tree that is not of sawlog size or kind holds none; a tree whose logs nobody counted is "
       "left out, and the figure is then too low.",
       "DBH 10 to 40 in, 1 to 4 logs. No cull is taken off.",
       {{"method of Mesavage and Girard 1946", "core/measure/tree_volume.hpp", kRecalled,
         "The taper table is from memory. International at form class 80 meets 62 of 63 printed "
         "cells within 1.2 board feet, Scribner at 78 all 213 within 1 % or 2.5; printed Doyle "
         "cells were not seen."}}});
  notes.push_back(
      {"log_rule_international",
       "International 1/4-inch log rule",
       "Each 4-ft section of a log holds 0.904762 x (0.22 d x d - 0.71 d) board feet, d the "
       "diameter inside bark at its small end in inches; sections widen by 1/2 in toward the butt.",
       "",
       {{"Michigan Compiled Laws 290.401 (Act 208 of 1941)", kLogRule, kRead, ""}}});
  notes.push_back(
      {"log_rule_scribner",
       "Scribner log rule",
       "A log holds (0.79 d x d - 2 d - 4) L/16 board feet, d its small end inside bark in inches, "
       "L its length in feet.",
       "",
       {{"attributed to Bruce and Schumacher 1950", kLogRule, kRead,
         "The formula was read on two explainers; whose it is, is from memory."}}});
  notes.push_back({"log_rule_doyle",
                   "Doyle log rule",
                   "A log holds (d - 4) x (d - 4) L/16 board feet, d its small end inside bark in "
                   "inches, L its length in feet.",
                   "Scales small logs too low. At 4 in and less it means nothing and counts 0.",
                   {{"(d - 4)^2 L / 16, all 105 cells of a printed chart", kLogRule, kRead, ""}}});
  notes.push_back(
      {"cords",
       "Cords",
       "Whole live trees as firewood, to a 4-in top, by DBH from a table of cords a tree; between "
       "its diameters it runs straight. A tree sold as a saw log leaves only its top: never add "
       "cords and board feet of one tree.",
       "DBH 5 to 22 in; other trees are left out. A standard cord is a stack of 128 cubic feet.",
       {{"Patmos 2005, University of New Hampshire Cooperative Extension, after Gevorkiantz and "
         "Olsen 1955",
         "core/measure/cords.hpp", kRead, ""}}});
  notes.push_back(
      {"standing_dead",
       "Standing dead",
       "Basal area of dead trees, counted like that of live ones and never added to it.",
       "Trees under the smallest tree tallied are not in it.",
       {{"definition of the basal area factor", kGeometry, kWorkedOut, ""}}});
  notes.push_back(
      {"young_oaks",
       "Young oaks above breast height",
       "Oak stems above 4.5 ft (1.37 m) on the small plots of the seedling count, over the ground "
       "of one "
       "such plot. Mean over all plots, those without an oak as 0.",
       "Says nothing of where they stand: a few full plots and many bare ones give the same mean.",
       {{"Sander, Johnson and Watt 1976", "core/model/tract.hpp", kRecalled,
         "For the height of 4.5 ft."}}});
}

void add_errors(std::vector<SourceNote>& notes) {
  notes.push_back(
      {"interval",
       "The error of a mean",
       "Standard deviation between plots over the root of their number is the standard error; "
       "times Student's t with one degree of freedom less than plots it is the half width. Of 100 "
       "such intervals, as many as the confidence says hold the truth. From one plot no error can "
       "be told.",
       "Plots count as drawn at random. A grid is computed as if it were random, which tends to "
       "overstate the error. Where a thing was found on fewer than 5 plots the interval is likely "
       "too short.",
       {{"Freese 1962, Elementary forest sampling, USDA Agriculture Handbook 232",
         "core/sample/estimate.hpp", kRead, ""}}});
  notes.push_back(
      {"several_stands",
       "The error over several stands",
       "Each stand's mean weighs by its acres; the squares of its standard errors add up with the "
       "squares of the weights. Degrees of freedom are fewer where one stand carries most of the "
       "error.",
       "The acres of the stands are taken as known.",
       {{"Cochran 1977, Sampling techniques, sections 5.3 and 5.4", "core/sample/stratified.hpp",
         kRecalled, "Checked against R package survey."},
        {"Satterthwaite 1946, Biometrics Bulletin 2:110-114", "core/sample/stratified.hpp",
         kRecalled, ""}}});
  notes.push_back(
      {"ratio_interval",
       "The error of a ratio",
       "The spread of the plots about the ratio gives its standard error; times Student's t with "
       "plots less stands degrees of freedom it is the half width.",
       "An approximation: right for many plots, too short for few.",
       {{"Cochran 1977, chapter 6", kRatio, kRecalled, "Checked against R package survey."}}});
  notes.push_back(
      {"plots_needed",
       "Plots still needed",
       "The smallest number of plots whose own interval for basal area would be as narrow as "
       "asked, if the plots to come vary as those measured: t x variation / root of plots.",
       "The variation itself is an estimate: plan a few plots more. Over several stands plots are "
       "spread by area and variation, at least two a stand.",
       {{"Freese 1962; rule of search derived", "core/sample/plots_needed.hpp", kRead, ""},
        {"Cochran 1977, sections 5.5 and 5.9", "core/sample/plots_needed.hpp", kRecalled,
         "For several stands."}}});
}

std::vector<SourceNote> all_notes() {
  std::vector<SourceNote> notes;
  add_density(notes);
  add_wood(notes);
  add_local_notes(notes);
  add_errors(notes);
  add_sampling_notes(notes);
  add_work_notes(notes);
  return notes;
}

}  // namespace

std::span<const SourceNote> source_notes() {
  static const std::vector<SourceNote> kNotes = all_notes();
  return kNotes;
}

const SourceNote* source_note(std::string_view key) {
  const auto notes = source_notes();
  const auto found = std::ranges::find(notes, key, &SourceNote::key);
  return found == notes.end() ? nullptr : &*found;
}

std::string_view source_key(LogRule rule) {
  switch (rule) {
    case LogRule::doyle:
      return "log_rule_doyle";
    case LogRule::scribner:
      return "log_rule_scribner";
    case LogRule::international:
      break;
  }
  return "log_rule_international";
}

}  // namespace oaklight
