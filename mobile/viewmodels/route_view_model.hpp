#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <vector>

#include "core/session/walk_route.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/viewmodels/way_view_model.hpp"

/// The shortest walk by all plots to do, planned when it is asked for. Once planned, the page Walk
/// follows its order; it is not stored, since the same plots give the same walk again.
class RouteViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("WalkViewModel owns it")
  Q_PROPERTY(bool planned READ planned NOTIFY changed)
  Q_PROPERTY(bool busy READ busy NOTIFY changed)
  Q_PROPERTY(QStringList stops READ stops NOTIFY changed)  ///< a line each, in their order
  Q_PROPERTY(QStringList words READ words NOTIFY changed)  ///< length, bound, what was left out
  Q_PROPERTY(QString problem READ problem NOTIFY changed)

 public:
  RouteViewModel(TractDesk& desk, Locator& locator, const WayViewModel& way, Settings& settings,
                 QObject* parent = nullptr);

  [[nodiscard]] bool planned() const { return !order_.empty(); }
  [[nodiscard]] bool busy() const { return work_.busy(); }
  [[nodiscard]] QStringList stops() const;
  [[nodiscard]] QStringList words() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// Plans from where the person is, else from the landing.
  Q_INVOKABLE void plan();
  /// Back to the nearest plot each time.
  Q_INVOKABLE void drop();

  /// The plots in their order; none: no plan.
  [[nodiscard]] const std::vector<oaklight::PlotId>& order() const { return order_; }
  /// The walk as a line, for a map; none: no plan.
  [[nodiscard]] std::vector<oaklight::Position> line() const;
  /// The legs to a plot where they are more than one, in words; "" for a straight way.
  [[nodiscard]] QString turnsTo(oaklight::PlotId plot) const;

 signals:
  void changed();
  void ordered();

 private:
  void take(const oaklight::Result<oaklight::WalkRoute>& route);
  [[nodiscard]] QString legs(const oaklight::RouteStop& stop) const;

  TractDesk& desk_;
  Locator& locator_;
  const WayViewModel& way_;
  Settings& settings_;
  oaklight::WalkRoute route_;
  std::vector<oaklight::PlotId> order_;
  QString problem_;
  Background work_;
};
