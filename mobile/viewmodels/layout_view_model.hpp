#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>
#include <optional>

#include "core/session/cruise_design.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/turns_view_model.hpp"

/// How many plots a cruise needs and where they lie: asked by taps, shown before it is kept. The
/// cruise is the one set up last, with its design.
class LayoutViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QStringList goals READ goals NOTIFY changed)
  Q_PROPERTY(int goal READ goal WRITE setGoal NOTIFY changed)            ///< of Goal
  Q_PROPERTY(QString amount READ amount WRITE setAmount NOTIFY changed)  ///< of the goal, as typed
  Q_PROPERTY(QStringList kinds READ kinds NOTIFY changed)
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY changed)  ///< of wood, where no plots tell it
  Q_PROPERTY(bool random READ random WRITE setRandom NOTIFY changed)        ///< points and no grid
  Q_PROPERTY(bool bySpread READ bySpread WRITE setBySpread NOTIFY changed)  ///< plots by stand
  Q_PROPERTY(QString azimuth READ azimuth WRITE setAzimuth NOTIFY changed)
  Q_PROPERTY(QString seed READ seed WRITE setSeed NOTIFY changed)
  Q_PROPERTY(QStringList rows READ rows NOTIFY changed)  ///< what is laid out, a line each
  Q_PROPERTY(QString problem READ problem NOTIFY changed)

 public:
  enum Goal { Error, Plots, PlotsAnAcre, Hours };
  Q_ENUM(Goal)

  /// turns   which of the points are measured
  LayoutViewModel(TractDesk& desk, Settings& settings, TurnsViewModel& turns,
                  QObject* parent = nullptr);

  [[nodiscard]] QStringList goals() const;
  [[nodiscard]] int goal() const { return goal_; }
  void setGoal(int goal);
  [[nodiscard]] QString amount() const { return amount_; }
  void setAmount(const QString& text) { set(amount_, text); }
  [[nodiscard]] QStringList kinds() const;
  [[nodiscard]] int kind() const { return kind_; }
  void setKind(int row) { set(kind_, row); }
  [[nodiscard]] bool random() const { return random_; }
  void setRandom(bool on) { set(random_, on); }
  [[nodiscard]] bool bySpread() const { return by_spread_; }
  void setBySpread(bool on) { set(by_spread_, on); }
  [[nodiscard]] QString azimuth() const { return azimuth_; }
  void setAzimuth(const QString& text) { set(azimuth_, text); }
  [[nodiscard]] QString seed() const { return seed_; }
  void setSeed(const QString& text) { set(seed_, text); }
  [[nodiscard]] QStringList rows() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// A fresh draft with a new seed.
  Q_INVOKABLE void begin();
  /// Lays the plots out to look at; nothing is kept yet.
  Q_INVOKABLE void layOut();
  /// kept() follows when the plots are on disk; else problem says why.
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void kept();

 private:
  /// Another wish: what was laid out before is not what would be kept.
  template <class Value>
  void set(Value& field, const Value& value) {
    if (field == value) return;
    field = value;
    forget();
  }
  void forget();
  [[nodiscard]] oaklight::Result<oaklight::DesignRequest> request() const;
  [[nodiscard]] oaklight::Result<oaklight::CruiseGoal> wish() const;
  [[nodiscard]] QString standLine(const oaklight::StandLayout& stand) const;

  TractDesk& desk_;
  Settings& settings_;
  TurnsViewModel& turns_;
  int goal_ = Error;
  QString amount_;
  int kind_ = 1;
  bool random_ = false;
  bool by_spread_ = false;
  QString azimuth_;
  QString seed_;
  std::optional<oaklight::CruiseLayout> layout_;
  QString problem_;
};
