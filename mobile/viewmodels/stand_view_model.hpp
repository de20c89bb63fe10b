#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>
#include <optional>

#include "core/session/stand_view.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/items/picture.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/figure_list_model.hpp"
#include "mobile/viewmodels/note_list_model.hpp"

/// What the plots say of a stand, or of the whole tract: figures with their error, pictures, and
/// how each was found out. Computed off the screen's thread, and only while it is looked at.
class StandViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList stands READ stands NOTIFY standsChanged)       ///< whole tract first
  Q_PROPERTY(int stand READ stand WRITE setStand NOTIFY standsChanged)  ///< row of stands
  Q_PROPERTY(QString summary READ summary NOTIFY viewChanged)
  Q_PROPERTY(QString need READ need NOTIFY viewChanged)      ///< plots still needed, in words
  Q_PROPERTY(QString advice READ advice NOTIFY viewChanged)  ///< "" for the whole tract
  /// Why there is nothing to show, and how to mend it; that it is being computed; "" otherwise.
  Q_PROPERTY(QString problem READ problem NOTIFY viewChanged)
  Q_PROPERTY(FigureListModel* figures READ figures CONSTANT)
  Q_PROPERTY(Picture composition READ composition NOTIFY viewChanged)
  Q_PROPERTY(Picture diameters READ diameters NOTIFY viewChanged)
  Q_PROPERTY(Picture stocking READ stocking NOTIFY viewChanged)  ///< empty for the whole tract
  Q_PROPERTY(QString noteTitle READ noteTitle NOTIFY noteChanged)
  Q_PROPERTY(NoteListModel* note READ note CONSTANT)

 public:
  StandViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings, QObject* parent = nullptr);
  ~StandViewModel() override;

  [[nodiscard]] QStringList stands() const;
  [[nodiscard]] int stand() const;
  void setStand(int row);
  [[nodiscard]] QString summary() const { return shown_.summary; }
  [[nodiscard]] QString need() const { return shown_.need; }
  [[nodiscard]] QString advice() const { return shown_.advice; }
  [[nodiscard]] QString problem() const;
  [[nodiscard]] FigureListModel* figures() { return &figures_; }
  [[nodiscard]] Picture composition() const { return shown_.composition; }
  [[nodiscard]] Picture diameters() const { return shown_.diameters; }
  [[nodiscard]] Picture stocking() const { return shown_.stocking; }
  [[nodiscard]] QString noteTitle() const { return note_title_; }
  [[nodiscard]] NoteListModel* note() { return &note_; }

  /// Whether somebody looks at the page; nothing is computed for nobody.
  Q_INVOKABLE void setShown(bool shown);
  /// Fills note with how the figure of that row was found out.
  Q_INVOKABLE void explain(int row);
  Q_INVOKABLE void explainNeed();
  Q_INVOKABLE void explainAdvice();

  /// An answer is being computed.
  [[nodiscard]] bool busy() const { return background_.busy(); }

 signals:
  void standsChanged();
  void viewChanged();
  void noteChanged();

 private:
  /// One answer of core, never changed after it was made.
  struct Answer {
    oaklight::EstimateOptions options;
    oaklight::StandView view;
    std::vector<oaklight::AreaFigure> figures;
  };
  struct Shown {
    QString summary, need, advice, problem;
    Picture composition, diameters, stocking;
  };

  void choosePlotsStand();
  void refresh();
  void take(const oaklight::Result<std::shared_ptr<const Answer>>& answer);
  void say();
  void showNote(const QString& title, std::vector<NoteRow> rows);

  TractDesk& desk_;
  CurrentPlot& plot_;
  Settings& settings_;
  FigureListModel figures_;
  NoteListModel note_;
  QString note_title_;
  std::optional<oaklight::StandId> stand_;  ///< nothing: the whole tract
  bool chosen_ = false;                     ///< by a person, not by where the person stands
  bool looked_at_ = false;
  std::shared_ptr<const Answer> answer_;
  Shown shown_;
  Background background_;  ///< last, so that its work ends before what it answers to goes
};
