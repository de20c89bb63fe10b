#include "mobile/viewmodels/stand_words.hpp"

#include "core/base/number_text.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::AreaEstimate;
using oaklight::AreaFigure;
using oaklight::Citation;
using oaklight::Evidence;
using oaklight::FigureUnit;
using oaklight::PlotNeed;
using oaklight::Result;
using oaklight::Rule;
using oaklight::RuleBook;
using oaklight::ShownUnit;
using oaklight::SourceNote;
using oaklight::SourceStatus;
using oaklight::StandNow;
using oaklight::StandView;
using oaklight::Trust;

namespace {

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A text of the table of sources, in the language of the screen.
QString source_words(std::string_view text) {
  return QCoreApplication::translate("Sources", std::string(text).c_str());
}

QString plain_number(double value, int decimals) {
  return QString::fromStdString(oaklight::grouped_text(value, decimals));
}

/// As people write it: no zeros after the point that say nothing.
QString short_number(double value) {
  QString text = QString::fromStdString(oaklight::number_text(value, 3));
  while (text.endsWith(QLatin1Char('0'))) text.chop(1);
  if (text.endsWith(QLatin1Char('.'))) text.chop(1);
  return text;
}

/// English and Spanish have one word for one and another for more.
QString counted(int count, const QString& one, const QString& more) {
  return count == 1 ? one : more.arg(count);
}

QString unit_words(const ShownUnit& unit) {
  return figure_of(
      QCoreApplication::translate("Units", std::string(unit.words).c_str()).toStdString());
}

QString joined(const QStringList& sentences) { return sentences.join(QLatin1Char(' ')); }

}  // namespace

oaklight::EstimateOptions options_of(const Settings& settings) {
  oaklight::EstimateOptions options;
  options.goal = oaklight::Percent{static_cast<double>(settings.allowableError())};
  return options;
}

QString StandWords::number(double value, const ShownUnit& unit) const {
  return plain_number(value * unit.factor, unit.decimals);
}

QString StandWords::percentSure() const {
  return short_number(100.0 * options_.confidence.share());
}

QString StandWords::summary(const StandView& view) const {
  const AreaEstimate& area = view.area;
  QStringList sentences;
  if (view.stands > 1) {
    sentences << tr("%1 stands, each weighing by its area.").arg(view.stands);
  }
  const QString plots = counted(area.plots, tr("1 plot"), tr("%1 plots"));
  const QString empty = counted(area.empty_plots, tr("1 of them without a tree (counted as 0)"),
                                tr("%1 of them without a tree (counted as 0)"));
  sentences << (area.empty_plots > 0 ? plots + QStringLiteral(", ") + empty : plots) +
                   QLatin1Char('.');
  if (area.planned > 0) {
    sentences << counted(area.planned, tr("1 still to visit."), tr("%1 still to visit."));
  }
  if (area.skipped > 0) {
    sentences << counted(area.skipped, tr("1 skipped, not counted."),
                         tr("%1 skipped, not counted."));
  }
  if (area.below_min > 0) {
    sentences << counted(area.below_min,
                         tr("1 record under the smallest size tallied is left out."),
                         tr("%1 records under the smallest size tallied are left out."));
  }
  sentences << tr("%1 times in 100 the truth lies within ±.").arg(percentSure());
  return joined(sentences);
}

QString StandWords::now(const StandNow& now) const {
  const QString plots = counted(now.plots, tr("1 plot"), tr("%1 plots"));
  if (now.ba.trust == Trust::not_found) return tr("Stand: no live tree, %1").arg(plots);
  const ShownUnit unit = shown_unit(FigureUnit::basal_area, system_);
  const QString mean = number(now.ba.mean.value, unit);
  const QString figure =
      now.ba.half_width ? tr("%1\u00a0±\u00a0%2").arg(mean, number(now.ba.half_width->value, unit))
                        : mean;
  return tr("Stand: %1 %2, %3").arg(figure, unit_words(unit), plots);
}

QString StandWords::need(const Result<PlotNeed>& need) const {
  if (!need) return sentence_of(need.error());
  const QString goal = short_number(options_.goal.value);
  if (need->more == 0) {
    return tr("Enough plots: basal area is known within ±\u00a0%1\u00a0%, %2 times in 100.")
        .arg(goal, percentSure());
  }
  return tr("%1 to know basal area within ±\u00a0%2\u00a0%, %3 times in 100.")
      .arg(counted(need->more, tr("Measure 1 more plot"), tr("Measure %1 more plots")), goal,
           percentSure());
}

QString StandWords::advice(const StandView& view) {
  if (!view.advice) return {};
  const QString text = QString::fromStdString(view.advice->text);
  const qsizetype end = text.indexOf(QLatin1String(". "));
  return end < 0 ? text : text.left(end + 1);
}

QString StandWords::name(const AreaFigure& figure) const {
  const SourceNote* note = oaklight::source_note(figure.key);
  const QString name = note == nullptr ? text_of(figure.key) : source_words(note->name);
  if (figure.unit != FigureUnit::board_feet) return name;
  return tr("%1, %2 rule").arg(name, text_of(oaklight::name_of(options_.log_rule)));
}

QString StandWords::error(const AreaFigure& figure) const {
  if (figure.lo && figure.hi) {
    return tr("%1 to %2\u00a0%").arg(plain_number(*figure.lo, 0), plain_number(*figure.hi, 0));
  }
  if (!figure.half_width) return {};
  const QString half = number(*figure.half_width, shown_unit(figure.unit, system_));
  if (figure.unit == FigureUnit::percent) return tr("±\u00a0%1 points").arg(half);
  if (!figure.half_pct) return tr("±\u00a0%1").arg(half);
  return tr("±\u00a0%1 (%2\u00a0%)").arg(half, plain_number(figure.half_pct->value, 0));
}

QString StandWords::trust(const AreaFigure& figure, int stands) const {
  switch (figure.trust) {
    case Trust::not_found: {
      const QString where =
          counted(figure.plots, tr("Not found on 1 plot"), tr("Not found on %1 plots"));
      if (!figure.on_at_most) return where + QLatin1Char('.');
      return tr("%1: up to %2 % of such plots may still hold it.")
          .arg(where, plain_number(figure.on_at_most->value, 0));
    }
    case Trust::one_plot:
      return stands > 1 ? tr("A stand has one plot: no error can be told.")
                        : tr("n = 1: no error can be told.");
    case Trust::two_plots:
      return tr("n = 2: very unsure.");
    case Trust::few_found:
      return tr("Found on %1 of %2 plots: the error is likely larger.")
          .arg(figure.found)
          .arg(figure.plots);
    case Trust::fair:
      break;
  }
  return {};
}

QString StandWords::remark(const AreaFigure& figure, const StandView& view) const {
  if (!figure.mean) {
    if (figure.unit == FigureUnit::board_feet) {
      return counted(figure.without, tr("No logs were counted on 1 tree."),
                     tr("No logs were counted on %1 trees."));
    }
    if (figure.unit == FigureUnit::cords) {
      return counted(figure.without, tr("1 tree is outside the table."),
                     tr("%1 trees are outside the table."));
    }
    return tr("No live tree was tallied.");
  }
  QStringList sentences;
  const QString trusted = trust(figure, view.stands);
  if (!trusted.isEmpty()) sentences << trusted;
  if (figure.without > 0) {
    sentences << counted(figure.without, tr("Too low: 1 tree is not in it."),
                         tr("Too low: %1 trees are not in it."));
  }
  if (figure.basis.by_ratio) sentences << tr("By ratio, from the points that were measured.");
  if (figure.by_local > 0) {
    sentences << counted(figure.by_local, tr("1 tree by local numbers."),
                         tr("%1 trees by local numbers."));
  }
  if (figure.key == "stocking" && view.stocking.qmd) {
    if (!view.stocking.fit.fits()) {
      sentences << tr("Outside the upland oak guide: a rough guess.");
    } else if (!view.stocking.fit.printed) {
      sentences << tr("Beyond the printed guide.");
    }
  }
  return joined(sentences);
}

FigureRow StandWords::row(const AreaFigure& figure, const StandView& view) const {
  FigureRow row{.key = text_of(figure.key), .name = name(figure)};
  const ShownUnit unit = shown_unit(figure.unit, system_);
  row.remark = remark(figure, view);
  if (!figure.mean) {
    row.value = tr("not known");
  } else if (figure.trust == Trust::not_found) {
    row.value = tr("none found");
  } else {
    row.value = number(*figure.mean, unit);
    row.unit = unit_words(unit);
    row.error = error(figure);
  }
  return row;
}

QString StandWords::shown(const AreaFigure& figure) const {
  if (!figure.mean) return tr("Not known.");
  if (figure.trust == Trust::not_found) return tr("None found.");
  const ShownUnit unit = shown_unit(figure.unit, system_);
  const QString value = number(*figure.mean, unit) + QLatin1Char(' ') + unit_words(unit);
  return figure.half_width ? tr("%1 %2.").arg(value, error(figure)) : value + QLatin1Char('.');
}

QString StandWords::here(const AreaFigure& figure, const StandView& view) const {
  QStringList sentences{shown(figure)};
  for (const oaklight::Design& design : view.designs) {
    sentences << tr("Design: %1.").arg(figure_of(design_text(design)));
  }
  sentences << tr("n = %1 plots, found on %2 of them.").arg(figure.plots).arg(figure.found);
  const ShownUnit unit = shown_unit(figure.unit, system_);
  if (figure.half_width && figure.se && figure.multiplier && figure.df) {
    sentences << tr("Standard error %1, times t = %2 for %3 degrees of freedom, is ± %4: %5 times "
                    "in 100 such an interval holds the truth.")
                     .arg(plain_number(*figure.se * unit.factor, unit.decimals + 1),
                          plain_number(*figure.multiplier, 3), short_number(*figure.df),
                          number(*figure.half_width, unit), percentSure());
  }
  const QString trusted = trust(figure, view.stands);
  if (!trusted.isEmpty()) sentences << trusted;
  return joined(sentences);
}

namespace {

QString words_of(SourceStatus status) {
  switch (status) {
    case SourceStatus::retrieved:
      return QCoreApplication::translate("StandWords", "read in the source");
    case SourceStatus::derived:
      return QCoreApplication::translate("StandWords", "derived");
    case SourceStatus::common_practice:
      return QCoreApplication::translate("StandWords", "common practice");
    case SourceStatus::from_memory:
      break;
  }
  return QCoreApplication::translate("StandWords", "from memory, not read again");
}

SourceStatus status_of(Evidence evidence) {
  switch (evidence) {
    case Evidence::retrieved:
      return SourceStatus::retrieved;
    case Evidence::common_practice:
      return SourceStatus::common_practice;
    case Evidence::from_memory:
      break;
  }
  return SourceStatus::from_memory;
}

}  // namespace

void StandWords::addSource(std::vector<NoteRow>& rows, std::string_view key) {
  const SourceNote* note = oaklight::source_note(key);
  if (note == nullptr) return;
  rows.push_back({source_words(note->name), source_words(note->how)});
  if (!note->range.empty()) rows.push_back({tr("Where it holds"), source_words(note->range)});
  QString heading = tr("Source");
  for (const Citation& citation : note->citations) {
    QString text = tr("%1 (%2).").arg(text_of(citation.work), words_of(citation.status));
    if (!citation.doubt.empty()) text += QLatin1Char(' ') + source_words(citation.doubt);
    rows.push_back({heading, text});
    heading.clear();
  }
}

std::vector<NoteRow> StandWords::note(const AreaFigure& figure, const StandView& view) const {
  std::vector<NoteRow> rows{{tr("Here"), here(figure, view)}};
  addSource(rows, figure.key);
  if (figure.unit == FigureUnit::board_feet) {
    addSource(rows, oaklight::source_key(options_.log_rule));
  }
  if (figure.ratio) {
    addSource(rows, "ratio_interval");
  } else {
    addSource(rows, "interval");
    if (view.stands > 1) addSource(rows, "several_stands");
  }
  return rows;
}

std::vector<NoteRow> StandWords::needNote(const StandView& view) const {
  QStringList sentences{need(view.area.need)};
  if (view.area.need) {
    sentences
        << tr("%1 plots in all, %2 measured.").arg(view.area.need->plan.plots).arg(view.area.plots);
  }
  if (view.area.live.ba.cv) {
    sentences << tr("Basal area varies by %1 % between plots.")
                     .arg(plain_number(view.area.live.ba.cv->value, 0));
  }
  std::vector<NoteRow> rows{{tr("Here"), joined(sentences)}};
  addSource(rows, "plots_needed");
  return rows;
}

std::vector<NoteRow> StandWords::adviceNote(const StandView& view, const RuleBook& rules) const {
  if (!view.advice) return {};
  std::vector<NoteRow> rows{{tr("Advice"), QString::fromStdString(view.advice->text)}};
  rows.push_back({tr("It rests on"), view.walked
                                         ? tr("the plots of this stand and the crop tree cards of "
                                              "its marking walk.")
                                         : tr("the plots of this stand alone. No tree of a marking "
                                              "walk is recorded yet.")});
  addSource(rows, "guard_stocking");
  for (const std::string& id : view.advice->rules) {
    const Rule* rule = rules.find(id);
    if (rule == nullptr) continue;
    rows.push_back({tr("Rule %1").arg(QString::fromStdString(id)),
                    tr("%1 Source: %2 (%3).")
                        .arg(source_words(rule->text), QString::fromStdString(rule->source),
                             words_of(status_of(rule->evidence)))});
  }
  return rows;
}
