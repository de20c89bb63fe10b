#pragma once

#include <QCoreApplication>
#include <QString>
#include <vector>

#include "core/session/live_stand.hpp"
#include "core/session/stand_view.hpp"
#include "core/stand/sources.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/figure_list_model.hpp"
#include "mobile/viewmodels/note_list_model.hpp"

/// What is asked of every estimate on a screen.
[[nodiscard]] oaklight::EstimateOptions options_of(const Settings& settings);

/// How the stand screen says what core computed: one place for its words and units.
class StandWords {
  Q_DECLARE_TR_FUNCTIONS(StandWords)

 public:
  StandWords(oaklight::UnitSystem system, const oaklight::EstimateOptions& options)
      : system_(system), options_(options) {}

  /// "6 plots, 1 of them without a tree (counted as 0)."
  [[nodiscard]] QString summary(const oaklight::StandView& view) const;
  /// How many more plots the error that is allowed asks for.
  [[nodiscard]] QString need(const oaklight::Result<oaklight::PlotNeed>& need) const;
  /// "Stand: 84.0 ± 9.1 ft²/ac, 7 plots"
  [[nodiscard]] QString now(const oaklight::StandNow& now) const;
  /// The first sentence of the advice; "" where there is none.
  [[nodiscard]] static QString advice(const oaklight::StandView& view);
  [[nodiscard]] FigureRow row(const oaklight::AreaFigure& figure,
                              const oaklight::StandView& view) const;

  /// What the sheet of a figure says.
  [[nodiscard]] std::vector<NoteRow> note(const oaklight::AreaFigure& figure,
                                          const oaklight::StandView& view) const;
  [[nodiscard]] std::vector<NoteRow> needNote(const oaklight::StandView& view) const;
  [[nodiscard]] std::vector<NoteRow> adviceNote(const oaklight::StandView& view,
                                                const oaklight::RuleBook& rules) const;

  /// The note of a figure, as paragraphs; nothing for a key that no note has.
  static void addSource(std::vector<NoteRow>& rows, std::string_view key);

 private:
  [[nodiscard]] QString name(const oaklight::AreaFigure& figure) const;
  [[nodiscard]] QString error(const oaklight::AreaFigure& figure) const;
  [[nodiscard]] QString trust(const oaklight::AreaFigure& figure, int stands) const;
  [[nodiscard]] QString remark(const oaklight::AreaFigure& figure,
                               const oaklight::StandView& view) const;
  /// The figure in one sentence: "94.0 ft2/ac ± 20.8 (22 %)."
  [[nodiscard]] QString shown(const oaklight::AreaFigure& figure) const;
  [[nodiscard]] QString here(const oaklight::AreaFigure& figure,
                             const oaklight::StandView& view) const;
  [[nodiscard]] QString number(double value, const oaklight::ShownUnit& unit) const;
  /// "95"
  [[nodiscard]] QString percentSure() const;

  oaklight::UnitSystem system_;
  const oaklight::EstimateOptions& options_;
};
