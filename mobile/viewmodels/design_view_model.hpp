#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "core/model/tract.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// How the plots of a new cruise are laid out: a draft, chosen by taps, saved once.
class DesignViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("TractViewModel owns it")
  Q_PROPERTY(QStringList kinds READ kinds NOTIFY changed)
  Q_PROPERTY(int kind READ kind WRITE setKind NOTIFY changed)
  Q_PROPERTY(QString sizeLabel READ sizeLabel NOTIFY changed)  ///< what sizes are, with the unit
  Q_PROPERTY(QStringList sizes READ sizes NOTIFY changed)
  Q_PROPERTY(int size READ size WRITE setSize NOTIFY changed)  ///< -1: another one is typed
  Q_PROPERTY(QString typed READ typed WRITE setTyped NOTIFY changed)
  Q_PROPERTY(QStringList smallest READ smallest NOTIFY changed)  ///< tree tallied
  Q_PROPERTY(int least READ least WRITE setLeast NOTIFY changed)
  Q_PROPERTY(QStringList seedlingPlots READ seedlingPlots NOTIFY changed)
  Q_PROPERTY(int seedlings READ seedlings WRITE setSeedlings NOTIFY changed)
  Q_PROPERTY(QString summary READ summary NOTIFY changed)  ///< the design in words
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why it is not saved, and the remedy

 public:
  enum Kind { Point, Fixed };

  DesignViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QStringList kinds() const;
  [[nodiscard]] int kind() const { return kind_; }
  void setKind(int kind);
  [[nodiscard]] QString sizeLabel() const;
  [[nodiscard]] QStringList sizes() const;
  [[nodiscard]] int size() const;
  void setSize(int row);
  [[nodiscard]] QString typed() const { return typed_; }
  void setTyped(const QString& text);
  [[nodiscard]] QStringList smallest() const;
  [[nodiscard]] int least() const { return least_; }
  void setLeast(int row);
  [[nodiscard]] QStringList seedlingPlots() const;
  [[nodiscard]] int seedlings() const { return seedlings_; }
  void setSeedlings(int row);
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString problem() const { return problem_; }

  /// Adds the cruise. saved() follows when it is on disk; else problem says why.
  Q_INVOKABLE void save();

 signals:
  void changed();
  void saved();

 private:
  void begin();
  [[nodiscard]] oaklight::Result<oaklight::Cruise> cruise() const;
  [[nodiscard]] oaklight::UnitSystem system() const { return settings_.system(); }

  TractDesk& desk_;
  Settings& settings_;
  oaklight::UnitSystem begun_in_ = oaklight::UnitSystem::us;
  int kind_ = Point;
  QString typed_;
  int least_ = 0;
  int seedlings_ = 0;
  QString problem_;
};
