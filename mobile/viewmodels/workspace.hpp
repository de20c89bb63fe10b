#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>

#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/snapshot_keeper.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/border_view_model.hpp"
#include "mobile/viewmodels/boundary_view_model.hpp"
#include "mobile/viewmodels/desk_view_model.hpp"
#include "mobile/viewmodels/join_view_model.hpp"
#include "mobile/viewmodels/layout_view_model.hpp"
#include "mobile/viewmodels/light_view_model.hpp"
#include "mobile/viewmodels/marks_view_model.hpp"
#include "mobile/viewmodels/seedling_view_model.hpp"
#include "mobile/viewmodels/setup_view_model.hpp"
#include "mobile/viewmodels/species_search_view_model.hpp"
#include "mobile/viewmodels/stand_now_view_model.hpp"
#include "mobile/viewmodels/stand_view_model.hpp"
#include "mobile/viewmodels/tally_view_model.hpp"
#include "mobile/viewmodels/tract_view_model.hpp"
#include "mobile/viewmodels/tree_view_model.hpp"
#include "mobile/viewmodels/turns_view_model.hpp"
#include "mobile/viewmodels/walk_view_model.hpp"

/// One open tract with the state of every page that works on it.
class Workspace : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("AppModel owns it")
  Q_PROPERTY(DeskViewModel* desk READ desk CONSTANT)
  Q_PROPERTY(TractViewModel* tract READ tractView CONSTANT)
  Q_PROPERTY(LayoutViewModel* layout READ layout CONSTANT)
  Q_PROPERTY(BoundaryViewModel* boundary READ boundary CONSTANT)
  Q_PROPERTY(JoinViewModel* join READ join CONSTANT)
  Q_PROPERTY(WalkViewModel* walk READ walk CONSTANT)
  Q_PROPERTY(TallyViewModel* tally READ tally CONSTANT)
  Q_PROPERTY(PointViewModel* point READ point CONSTANT)           ///< of the plot that is tallied
  Q_PROPERTY(StandNowViewModel* standNow READ standNow CONSTANT)  ///< of that plot's stand
  Q_PROPERTY(TurnsViewModel* turns READ turns CONSTANT)
  Q_PROPERTY(StandViewModel* stand READ stand CONSTANT)
  Q_PROPERTY(LightViewModel* light READ light CONSTANT)
  Q_PROPERTY(MarksViewModel* marks READ marks CONSTANT)
  Q_PROPERTY(SetupViewModel* setup READ setup CONSTANT)
  Q_PROPERTY(TreeViewModel* tree READ tree CONSTANT)
  Q_PROPERTY(BorderViewModel* border READ border CONSTANT)
  Q_PROPERTY(SeedlingViewModel* seedlings READ seedlings CONSTANT)
  Q_PROPERTY(SpeciesSearchViewModel* search READ search CONSTANT)

 public:
  Workspace(std::unique_ptr<TractDesk> desk, Settings& settings, Locator& locator,
            QObject* parent = nullptr);
  ~Workspace() override;

  [[nodiscard]] DeskViewModel* desk() { return &desk_view_; }
  [[nodiscard]] TractViewModel* tractView() { return &tract_view_; }
  [[nodiscard]] LayoutViewModel* layout() { return &layout_; }
  [[nodiscard]] BoundaryViewModel* boundary() { return &boundary_; }
  [[nodiscard]] JoinViewModel* join() { return &join_; }
  [[nodiscard]] WalkViewModel* walk() { return &walk_; }
  [[nodiscard]] TallyViewModel* tally() { return &tally_; }
  [[nodiscard]] PointViewModel* point() { return &point_; }
  [[nodiscard]] StandNowViewModel* standNow() { return &stand_now_; }
  [[nodiscard]] TurnsViewModel* turns() { return &turns_; }
  [[nodiscard]] StandViewModel* stand() { return &stand_; }
  [[nodiscard]] LightViewModel* light() { return &light_; }
  [[nodiscard]] MarksViewModel* marks() { return &marks_; }
  [[nodiscard]] SetupViewModel* setup() { return &setup_; }
  [[nodiscard]] TreeViewModel* tree() { return &tree_; }
  [[nodiscard]] BorderViewModel* border() { return &border_; }
  [[nodiscard]] SeedlingViewModel* seedlings() { return &seedlings_; }
  [[nodiscard]] SpeciesSearchViewModel* search() { return &search_; }
  /// Opens the tree of tally.lastTrees at that place.
  Q_INVOKABLE void chooseTree(int row);
  // What a species found by search is for.
  Q_INVOKABLE void pinFound(int row);
  Q_INVOKABLE void setTreeSpecies(int row);
  Q_INVOKABLE void addSeedlingSpecies(int row);
  [[nodiscard]] TractDesk& tract() { return *desk_; }
  [[nodiscard]] DiskRoom& room() { return room_; }
  [[nodiscard]] SnapshotKeeper& snapshots() { return snapshots_; }
  [[nodiscard]] CurrentPlot& plot() { return plot_; }

 private:
  std::unique_ptr<TractDesk> desk_;
  DiskRoom room_;
  CurrentPlot plot_;
  SnapshotKeeper snapshots_;
  DeskViewModel desk_view_;
  TurnsViewModel turns_;
  WalkViewModel walk_;
  TractViewModel tract_view_;
  LayoutViewModel layout_;
  BoundaryViewModel boundary_;
  TallyViewModel tally_;
  PointViewModel point_;
  StandNowViewModel stand_now_;
  StandViewModel stand_;
  LightViewModel light_;
  MarksViewModel marks_;
  SetupViewModel setup_;
  TreeViewModel tree_;
  BorderViewModel border_;
  SeedlingViewModel seedlings_;
  SpeciesSearchViewModel search_;
  JoinViewModel join_;
};
