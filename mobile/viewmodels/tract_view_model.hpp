#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QPointF>
#include <memory>

#include "core/paper/tract_map.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/items/picture.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/design_view_model.hpp"
#include "mobile/viewmodels/stand_list_model.hpp"
#include "mobile/viewmodels/tract_facts_model.hpp"
#include "mobile/viewmodels/turns_view_model.hpp"
#include "mobile/viewmodels/walk_view_model.hpp"

/// Home: the tract on a map, what is left to do in it, and what it is made of.
class TractViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString figure READ figure NOTIFY changed)  ///< "29 of 36"; "" without plots
  Q_PROPERTY(QString todo READ todo NOTIFY changed)      ///< what is left, a line each
  Q_PROPERTY(Step step READ step NOTIFY changed)         ///< what comes first
  Q_PROPERTY(Picture map READ map NOTIFY mapChanged)
  Q_PROPERTY(StandListModel* stands READ stands CONSTANT)
  Q_PROPERTY(QStringList goals READ goals NOTIFY changed)
  Q_PROPERTY(DesignViewModel* design READ design CONSTANT)
  Q_PROPERTY(TractFactsModel* facts READ facts CONSTANT)
  Q_PROPERTY(QString designText READ designText NOTIFY changed)  ///< "" where there is no cruise
  Q_PROPERTY(QString chosen READ chosen NOTIFY chosenChanged)  ///< plot that was tapped, "" without
  Q_PROPERTY(QString chosenMark READ chosenMark NOTIFY chosenChanged)
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged)  ///< of the stand or plots given

 public:
  enum class Step { NameTract, AddStand, ChooseDesign, AddPlots, Walk, SayWalked, Decide, Rest };
  Q_ENUM(Step)

  TractViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings, Locator& locator,
                 WalkViewModel& walk, TurnsViewModel& turns, QObject* parent = nullptr);

  [[nodiscard]] QString figure() const;
  [[nodiscard]] QString todo() const;
  [[nodiscard]] Step step() const;
  [[nodiscard]] const Picture& map() const { return map_; }
  [[nodiscard]] StandListModel* stands() { return &stands_; }
  [[nodiscard]] QStringList goals() const;
  [[nodiscard]] DesignViewModel* design() { return &design_; }
  [[nodiscard]] TractFactsModel* facts() { return &facts_; }
  [[nodiscard]] QString designText() const;
  [[nodiscard]] QString chosen() const;
  [[nodiscard]] QString chosenMark() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// While the page shows, map and lists follow the records.
  Q_INVOKABLE void show(bool shown);
  /// A tap on the map, in the points of its drawing; reach is how far a finger errs, and corner the
  /// far end of the drawing that was tapped. The plot there becomes the current one.
  Q_INVOKABLE void tap(QPointF at, double reach, QPointF corner);
  Q_INVOKABLE void chooseNothing();
  /// saved() follows when it is on disk; else problem says why, and nothing was changed.
  Q_INVOKABLE void addStand(const QString& name, const QString& area, int goal);
  Q_INVOKABLE void changeStand(int row, const QString& name, const QString& area,
                               const QString& walked, int goal);
  /// Before addPlots: the turns to choose are those of the stand's cruise.
  Q_INVOKABLE void beginPlots(int standRow);
  Q_INVOKABLE void addPlots(int standRow, const QString& count);
  Q_INVOKABLE void dismissProblem();
  /// Row of the first stand where nobody said how much was walked; -1 where all is known.
  Q_INVOKABLE [[nodiscard]] int unwalked() const;

 signals:
  void changed();
  void mapChanged();
  void chosenChanged();
  void problemChanged();
  void saved();

 private:
  /// Where the plots stand on a map of some size. A page that turns has maps of two sizes.
  struct Drawn {
    QSizeF size;
    oaklight::TractPicture picture;
  };

  void follow();
  void move();
  void refresh();
  void drawMap();
  void listStands();
  void submit(TractDesk::Maker make);
  void say(const QString& problem);
  [[nodiscard]] oaklight::Result<oaklight::Acres> areaTyped(const QString& text) const;
  [[nodiscard]] QString areaText(oaklight::Acres area) const;
  [[nodiscard]] std::optional<oaklight::CruiseId> cruiseFor(oaklight::StandId stand) const;

  TractDesk& desk_;
  CurrentPlot& current_;
  Settings& settings_;
  Locator& locator_;
  WalkViewModel& walk_;
  TurnsViewModel& turns_;
  StandListModel stands_;
  DesignViewModel design_;
  TractFactsModel facts_;
  Picture map_;
  std::shared_ptr<std::vector<Drawn>> drawn_;  ///< of map_, the latest last
  std::optional<oaklight::Position> here_;     ///< as the map shows it
  std::optional<oaklight::PlotId> chosen_;
  QString problem_;
  bool shown_ = false;
  bool stale_ = false;  ///< records changed while nobody looked
};
