#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "core/session/border_tree.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"

/// Whether a tree near the edge of the plot is tallied, from three readings as digits.
class BorderViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(int field READ field WRITE setField NOTIFY changed)  ///< which reading is typed now
  Q_PROPERTY(QString digits READ digits WRITE setDigits NOTIFY changed)  ///< of that reading
  Q_PROPERTY(QStringList names READ names CONSTANT)
  Q_PROPERTY(QStringList readings READ readings NOTIFY changed)
  Q_PROPERTY(bool toFace READ toFace WRITE setToFace NOTIFY changed)  ///< tape ends at the bark
  Q_PROPERTY(QString answer READ answer NOTIFY changed)  ///< "IN by 1.2 ft"; "" until all is typed
  Q_PROPERTY(QString note READ note NOTIFY changed)
  Q_PROPERTY(bool counts READ counts NOTIFY changed)

 public:
  enum class Field { Dbh, Distance, Slope };
  Q_ENUM(Field)

  BorderViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                  QObject* parent = nullptr);

  [[nodiscard]] int field() const { return static_cast<int>(field_); }
  void setField(int field);
  [[nodiscard]] QString digits() const { return digits_[static_cast<std::size_t>(field_)]; }
  void setDigits(const QString& digits);
  [[nodiscard]] QStringList names() const;
  [[nodiscard]] QStringList readings() const;
  [[nodiscard]] bool toFace() const { return to_face_; }
  void setToFace(bool face);
  [[nodiscard]] QString answer() const { return answer_; }
  [[nodiscard]] QString note() const { return note_; }
  [[nodiscard]] bool counts() const { return counts_; }
  /// Forgets the readings: the next tree.
  Q_INVOKABLE void clear();

 signals:
  void changed();

 private:
  void judge();

  TractDesk& desk_;
  CurrentPlot& plot_;
  Settings& settings_;
  Field field_ = Field::Dbh;
  std::array<QString, 3> digits_;
  bool to_face_ = true;
  QString answer_;
  QString note_;
  bool counts_ = false;
};
