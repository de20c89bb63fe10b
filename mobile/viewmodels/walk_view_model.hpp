#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "core/session/walk.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/disk_room.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/desk/way.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/centre_view_model.hpp"
#include "mobile/viewmodels/plot_list_model.hpp"
#include "mobile/viewmodels/point_view_model.hpp"
#include "mobile/viewmodels/route_view_model.hpp"
#include "mobile/viewmodels/way_view_model.hpp"

/// The next plot, the way to it, and what is said on arrival. Works without any position: then it
/// names the plot and its stand.
class WalkViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString name READ name NOTIFY changed)  ///< of the plot to go to; "" when all are done
  Q_PROPERTY(QString status READ status NOTIFY changed)
  Q_PROPERTY(QString mark READ mark NOTIFY changed)  ///< icon of its status
  Q_PROPERTY(WayViewModel* way READ way CONSTANT)
  Q_PROPERTY(CentreViewModel* centre READ centre CONSTANT)
  Q_PROPERTY(RouteViewModel* route READ route CONSTANT)
  Q_PROPERTY(PointViewModel* point READ point CONSTANT)
  Q_PROPERTY(QString note READ note NOTIFY changed)  ///< where the way begins, or why there is none
  Q_PROPERTY(QString progress READ progress NOTIFY changed)
  /// What can be said of the plot now; nothing but Go in a file that is only looked at.
  Q_PROPERTY(Acts may READ may NOTIFY changed)
  Q_PROPERTY(QStringList reasons READ reasons NOTIFY changed)  ///< common ones for a skip
  Q_PROPERTY(PlotListModel* plots READ plots CONSTANT)

 public:
  enum Act { Go = 1, Empty = 2, Skip = 4, Again = 8, Centre = 16 };
  Q_DECLARE_FLAGS(Acts, Act)
  Q_FLAG(Acts)

  WalkViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings, const DiskRoom& room,
                Locator& locator, QObject* parent = nullptr);

  [[nodiscard]] QString name() const;
  [[nodiscard]] QString status() const;
  [[nodiscard]] QString mark() const;
  [[nodiscard]] WayViewModel* way() { return &way_; }
  [[nodiscard]] CentreViewModel* centre() { return &centre_; }
  [[nodiscard]] RouteViewModel* route() { return &route_; }
  [[nodiscard]] PointViewModel* point() { return &point_; }
  [[nodiscard]] QString note() const;
  [[nodiscard]] QString progress() const;
  [[nodiscard]] Acts may() const;
  [[nodiscard]] QStringList reasons() const;
  [[nodiscard]] PlotListModel* plots() { return &plots_; }

  /// While the page shows, the way and the list follow the records; a page that is not seen costs
  /// nothing.
  Q_INVOKABLE void show(bool shown);
  /// Go to the plot of that row, of the current plot, or to the next one to do: by the planned walk
  /// where there is one, else the nearest.
  Q_INVOKABLE void choose(int row);
  Q_INVOKABLE void chooseCurrent();
  Q_INVOKABLE void chooseNext();
  /// Arrived: the plot becomes the current one. reached() follows when that is on disk.
  Q_INVOKABLE void start();
  Q_INVOKABLE void callEmpty();
  Q_INVOKABLE void skip(const QString& reason);
  Q_INVOKABLE void planAgain();

  /// The plot to go to.
  [[nodiscard]] std::optional<oaklight::PlotId> target() const;
  /// The plot visited last since the tract was opened.
  [[nodiscard]] std::optional<oaklight::PlotId> stood() const { return stood_; }

 signals:
  void changed();
  /// The person stands at the plot: on with the tally.
  void reached();

 private:
  void follow(const std::vector<oaklight::Change>& changes);
  void move();
  void refresh();
  void lead();
  [[nodiscard]] WayStart startOfWay() const;
  [[nodiscard]] std::optional<oaklight::WalkStop> nextStop(const oaklight::WalkFrom& from) const;
  [[nodiscard]] QString noteFromHere() const;
  void listPlots();
  void stand(oaklight::PlotId plot);
  [[nodiscard]] const oaklight::Plot* plot() const;

  TractDesk& desk_;
  CurrentPlot& current_;
  const DiskRoom& room_;
  Locator& locator_;
  WayViewModel way_;
  CentreViewModel centre_;
  RouteViewModel route_;
  PointViewModel point_;
  PlotListModel plots_;
  std::optional<oaklight::PlotId> stood_;   ///< the plot visited last
  std::optional<oaklight::PlotId> chosen_;  ///< by hand; nothing: the nearest to do
  std::optional<oaklight::WalkStop> stop_;
  bool shown_ = false;
  bool stale_ = false;  ///< records changed while nobody looked
};
