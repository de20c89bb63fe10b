#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QPointF>
#include <QStringList>
#include <memory>
#include <vector>

#include "core/paper/tract_map.hpp"
#include "core/session/boundary_work.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/items/picture.hpp"
#include "mobile/look/settings.hpp"

/// Outlines of stands: out of a file, drawn by taps on the map, or walked with a receiver. What
/// would change is told first, with the acres drawn beside those stated; then it is kept, or not.
class BoundaryViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(
      QString stand READ stand NOTIFY changed)  ///< whose outline; "": as the file names them
  Q_PROPERTY(int way READ way WRITE setWay NOTIFY changed)  ///< of Way
  Q_PROPERTY(QStringList files READ files NOTIFY changed)   ///< of outlines in the app's folder
  Q_PROPERTY(bool walking READ walking NOTIFY changed)
  Q_PROPERTY(QString corners READ corners NOTIFY changed)  ///< "5 corners"; "" without one
  Q_PROPERTY(Picture map READ map NOTIFY mapChanged)
  Q_PROPERTY(QStringList rows READ rows NOTIFY changed)  ///< what would change, a line each
  Q_PROPERTY(QString note READ note NOTIFY changed)      ///< how it is done
  Q_PROPERTY(QString problem READ problem NOTIFY changed)
  Q_PROPERTY(bool sound READ sound NOTIFY changed)  ///< there is something to keep
  Q_PROPERTY(bool takeArea READ takeArea WRITE setTakeArea NOTIFY changed)

 public:
  enum Way { File, Draw, Walk };
  Q_ENUM(Way)

  BoundaryViewModel(TractDesk& desk, Locator& locator, Settings& settings,
                    QObject* parent = nullptr);

  [[nodiscard]] QString stand() const { return stand_; }
  [[nodiscard]] int way() const { return way_; }
  void setWay(int way);
  [[nodiscard]] QStringList files() const;
  [[nodiscard]] bool walking() const { return walking_; }
  [[nodiscard]] QString corners() const;
  [[nodiscard]] const Picture& map() const { return map_; }
  [[nodiscard]] QStringList rows() const;
  [[nodiscard]] QString note() const;
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] bool sound() const { return !plan_.rows.empty() && plan_.faults.empty(); }
  [[nodiscard]] bool takeArea() const { return take_area_; }
  void setTakeArea(bool take);
  [[nodiscard]] bool busy() const { return reading_.busy(); }

  /// Begins for the stand of that name, or, with "", for the stands that a file names.
  Q_INVOKABLE void begin(const QString& stand);
  Q_INVOKABLE void end();
  /// Reads a file of the app's folder, or by its whole path.
  Q_INVOKABLE void chooseFile(int row);
  Q_INVOKABLE void readFile(const QString& path);
  /// A corner under a tap, in the points of the drawing; corner is the far end of that drawing.
  Q_INVOKABLE void tap(QPointF at, QPointF corner);
  /// Takes back the corner set last.
  Q_INVOKABLE void undo();
  Q_INVOKABLE void startWalk();
  Q_INVOKABLE void stopWalk();
  /// A corner where the person stands now.
  Q_INVOKABLE void addHere();
  /// kept() follows when it is on disk; else problem says why.
  Q_INVOKABLE void keep();

 signals:
  void changed();
  void mapChanged();
  void kept();

 private:
  struct Drawn {
    QSizeF size;
    oaklight::TractPicture picture;
  };

  void clear();
  void follow();
  void drawMap();
  void planCorners();
  void plan();
  [[nodiscard]] oaklight::BoundaryOptions options() const;

  TractDesk& desk_;
  Locator& locator_;
  Settings& settings_;
  QString stand_;
  int way_ = File;
  bool begun_ = false;
  bool walking_ = false;
  bool take_area_ = false;
  std::vector<oaklight::Position> corners_;
  oaklight::DrawnOutlines outlines_;
  oaklight::BoundaryPlan plan_;
  QString problem_;
  Picture map_;
  std::shared_ptr<std::vector<Drawn>> drawn_ = std::make_shared<std::vector<Drawn>>();
  Background reading_;
};
