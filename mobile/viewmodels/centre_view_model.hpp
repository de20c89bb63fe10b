#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "core/place/fix.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// The centre of a plot by the mean of many fixes: gathered while somebody waits there, kept once.
class CentreViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("WalkViewModel owns it")
  Q_PROPERTY(bool known READ known NOTIFY changed)       ///< there is a mean to keep
  Q_PROPERTY(QString fixes READ fixes NOTIFY changed)    ///< in the mean: "30"
  Q_PROPERTY(QString spread READ spread NOTIFY changed)  ///< "± 6 ft"
  Q_PROPERTY(QString accuracy READ accuracy NOTIFY changed)
  Q_PROPERTY(QString words READ words NOTIFY changed)  ///< what to do now
  Q_PROPERTY(bool poor READ poor NOTIFY changed)
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why it was not kept

 public:
  CentreViewModel(TractDesk& desk, Locator& locator, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] bool known() const { return mean_.has_value(); }
  [[nodiscard]] QString fixes() const;
  [[nodiscard]] QString spread() const;
  [[nodiscard]] QString accuracy() const;
  [[nodiscard]] QString words() const;
  [[nodiscard]] bool poor() const { return mean_ && mean_->poor; }
  [[nodiscard]] QString problem() const { return problem_; }

  /// The plot of which it is the centre.
  void of(std::optional<oaklight::PlotId> plot) { plot_ = plot; }
  /// The tablet lies on the centre: fixes from now on count.
  Q_INVOKABLE void begin();
  Q_INVOKABLE void end();
  /// saved() follows when it is on disk; else problem says why.
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void saved();

 private:
  void refresh();

  TractDesk& desk_;
  Locator& locator_;
  Settings& settings_;
  std::optional<oaklight::PlotId> plot_;
  std::optional<oaklight::MeanFix> mean_;
  bool begun_ = false;
  QString problem_;
};
