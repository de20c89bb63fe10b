#pragma once

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QObject>
#include <algorithm>

#include "mobile/look/settings.hpp"

/// Sizes of a window in which everything is laid out.
struct WindowSize {
  double width = 0.0;
  double height = 0.0;
  double pixelsPerMm = 6.0;
};

/// Type, space and colour of every screen, in one place. Sizes are made in millimetres, because a
/// finger does not know pixels, and given in the logical pixels of this screen.
class Theme : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  // Space. Sources of the sizes: tests/app/field_rows.md, rows T1 to T6 and T15.
  Q_PROPERTY(double touch READ touch NOTIFY changed)            ///< a control used at the tree
  Q_PROPERTY(double touchLarge READ touchLarge NOTIFY changed)  ///< undo, save, next
  Q_PROPERTY(double touchSmall READ touchSmall NOTIFY changed)  ///< the least, for anything
  Q_PROPERTY(double gap READ gap NOTIFY changed)                ///< between things of one kind
  Q_PROPERTY(double apart READ apart NOTIFY changed)  ///< between a tally cell and what removes
  Q_PROPERTY(double edge READ edge NOTIFY changed)    ///< of the glass, where drips gather
  Q_PROPERTY(double pad READ pad NOTIFY changed)      ///< inside a frame
  Q_PROPERTY(double seam READ seam NOTIFY changed)    ///< what a cell keeps clear inside its edge
  Q_PROPERTY(double slip READ slip NOTIFY changed)    ///< of a finger that means to stay
  Q_PROPERTY(double readingHeight READ readingHeight NOTIFY changed)  ///< of what is read back
  Q_PROPERTY(double sideWidth READ sideWidth NOTIFY changed)
  Q_PROPERTY(double line READ line NOTIFY changed)      ///< a rule
  Q_PROPERTY(double strong READ strong NOTIFY changed)  ///< a rule that carries meaning
  Q_PROPERTY(double corner READ corner NOTIFY changed)
  Q_PROPERTY(double columnWidth READ columnWidth NOTIFY changed)  ///< of a side column
  Q_PROPERTY(double readWidth READ readWidth NOTIFY changed)      ///< of a comfortable line
  Q_PROPERTY(double compassWidth READ compassWidth NOTIFY changed)
  Q_PROPERTY(double touchLines READ touchLines NOTIFY changed)  ///< a choice of two lines
  Q_PROPERTY(double mapHeight READ mapHeight NOTIFY changed)    ///< of a map among other things
  Q_PROPERTY(
      double pictureSide READ pictureSide NOTIFY changed)  ///< of a drawing that fills a page
  Q_PROPERTY(double sheetWidth READ sheetWidth NOTIFY changed)
  Q_PROPERTY(double sheetHeight READ sheetHeight NOTIFY changed)
  Q_PROPERTY(double windowHeight READ windowHeight NOTIFY changed)
  Q_PROPERTY(double recordWidth READ recordWidth NOTIFY changed)  ///< of what stands beside keys
  Q_PROPERTY(double chartHeight READ chartHeight NOTIFY changed)  ///< of a picture of figures
  Q_PROPERTY(double crownHeight READ crownHeight NOTIFY changed)  ///< of a crown with its sides
  Q_PROPERTY(double cardWidth READ cardWidth NOTIFY changed)      ///< of trees beside their crown
  // Type, as pixel sizes.
  Q_PROPERTY(int small READ small NOTIFY changed)
  Q_PROPERTY(int body READ body NOTIFY changed)
  Q_PROPERTY(int large READ large NOTIFY changed)
  Q_PROPERTY(int figure READ figure NOTIFY changed)
  // Colour.
  Q_PROPERTY(QColor ground READ ground NOTIFY changed)
  Q_PROPERTY(QColor panel READ panel NOTIFY changed)  ///< a step above the ground
  Q_PROPERTY(QColor ink READ ink NOTIFY changed)
  Q_PROPERTY(QColor soft READ soft NOTIFY changed)  ///< second-rank text
  Q_PROPERTY(QColor rule READ rule NOTIFY changed)
  Q_PROPERTY(QColor shade READ shade NOTIFY changed)  ///< over what lies below a sheet
  Q_PROPERTY(QColor onShade READ onShade CONSTANT)
  Q_PROPERTY(QColor leaf READ leaf NOTIFY changed)  ///< what is chosen, and the main action
  Q_PROPERTY(QColor onLeaf READ onLeaf NOTIFY changed)
  Q_PROPERTY(QColor warn READ warn NOTIFY changed)  ///< ground of a caution or problem
  Q_PROPERTY(QColor onWarn READ onWarn NOTIFY changed)
  // Shape of the window.
  Q_PROPERTY(bool wide READ wide NOTIFY changed)    ///< room for two columns side by side
  Q_PROPERTY(bool phone READ phone NOTIFY changed)  ///< held in one hand
  Q_PROPERTY(bool leftHand READ leftHand NOTIFY changed)
  Q_PROPERTY(bool night READ night NOTIFY changed)

 public:
  explicit Theme(QObject* parent = nullptr) : QObject(parent) {}

  /// The settings that it follows; they must outlive it.
  void follow(Settings& settings);
  void setWindow(WindowSize window);

  /// Where Image finds one of our icons in a colour.
  Q_INVOKABLE [[nodiscard]] QString icon(const QString& name, const QColor& colour) const;

  [[nodiscard]] double mm(double millimetres) const { return millimetres * window_.pixelsPerMm; }
  [[nodiscard]] double touch() const { return mm(gloves() ? 20.0 : 15.0); }
  [[nodiscard]] double touchLarge() const { return mm(gloves() ? 25.0 : 20.0); }
  [[nodiscard]] double touchSmall() const { return mm(12.0); }
  [[nodiscard]] double gap() const { return mm(3.0); }
  [[nodiscard]] double apart() const { return mm(13.0); }
  [[nodiscard]] double edge() const { return mm(phone() ? 3.0 : 6.0); }
  [[nodiscard]] double pad() const { return mm(2.0); }
  [[nodiscard]] double seam() const { return mm(0.5); }
  [[nodiscard]] double slip() const { return mm(10.0); }
  [[nodiscard]] double readingHeight() const { return mm(phone() ? 17.0 : 20.0); }
  [[nodiscard]] double sideWidth() const { return mm(66.0); }
  [[nodiscard]] double line() const { return std::max(1.0, mm(0.2)); }
  [[nodiscard]] double strong() const { return mm(0.6); }
  [[nodiscard]] double corner() const { return mm(1.2); }
  [[nodiscard]] double columnWidth() const;
  [[nodiscard]] double readWidth() const { return mm(130.0); }
  [[nodiscard]] double compassWidth() const { return mm(phone() ? 30.0 : 34.0); }
  [[nodiscard]] double touchLines() const { return mm(14.0); }
  [[nodiscard]] double mapHeight() const { return mm(phone() ? 60.0 : 90.0); }
  [[nodiscard]] double pictureSide() const {
    return std::min({mm(110.0), window_.width, window_.height});
  }
  [[nodiscard]] double sheetWidth() const;
  [[nodiscard]] double sheetHeight() const;
  [[nodiscard]] double windowHeight() const { return window_.height; }
  [[nodiscard]] double recordWidth() const { return mm(38.0); }
  [[nodiscard]] double chartHeight() const { return mm(90.0); }
  [[nodiscard]] double crownHeight() const { return mm(phone() ? 105.0 : 110.0); }
  [[nodiscard]] double cardWidth() const { return mm(82.0); }
  [[nodiscard]] int small() const { return letters(2.5); }
  [[nodiscard]] int body() const { return letters(3.2); }
  [[nodiscard]] int large() const { return letters(4.2); }
  [[nodiscard]] int figure() const { return letters(6.4); }
  [[nodiscard]] QColor ground() const;
  [[nodiscard]] QColor panel() const;
  [[nodiscard]] QColor ink() const;
  [[nodiscard]] QColor soft() const;
  [[nodiscard]] QColor rule() const;
  [[nodiscard]] QColor shade() const;
  [[nodiscard]] QColor onShade() const { return Qt::white; }
  [[nodiscard]] QColor leaf() const;
  [[nodiscard]] QColor onLeaf() const;
  [[nodiscard]] QColor warn() const;
  [[nodiscard]] QColor onWarn() const;
  [[nodiscard]] bool wide() const;
  [[nodiscard]] bool phone() const;
  [[nodiscard]] bool leftHand() const { return settings_ != nullptr && settings_->leftHand(); }
  [[nodiscard]] bool night() const { return light() == Settings::Light::Night; }

  [[nodiscard]] Settings::Light light() const {
    return settings_ == nullptr ? Settings::Light::Day : settings_->light();
  }

 signals:
  void changed();

 private:
  struct Colours;
  [[nodiscard]] const Colours& colours() const;
  [[nodiscard]] bool gloves() const { return settings_ == nullptr || settings_->gloves(); }
  /// The pixel size of type whose capitals are so high.
  [[nodiscard]] int letters(double capital_mm) const;

  Settings* settings_ = nullptr;
  WindowSize window_;
};
