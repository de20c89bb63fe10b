#pragma once

#include <QtQml/qqmlregistration.h>
#include <QElapsedTimer>
#include <QObject>
#include <functional>
#include <vector>

#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "mobile/desk/current_plot.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/species_list_model.hpp"

/// The tally of the plot at which the person stands: one gesture, one tree, read back large.
class TallyViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString plotName READ plotName NOTIFY plotChanged)  ///< "" when none is chosen
  Q_PROPERTY(QString closed READ closed NOTIFY plotChanged)  ///< why nothing can be tallied, or ""
  Q_PROPERTY(SpeciesListModel* species READ species CONSTANT)
  Q_PROPERTY(QStringList classes READ classes NOTIFY plotChanged)
  /// Sizes that found no cell and are typed: "over 18 in".
  Q_PROPERTY(QString beyond READ beyond NOTIFY plotChanged)
  Q_PROPERTY(int pinned READ pinned NOTIFY pinnedChanged)  ///< row of species; -1: not in it
  Q_PROPERTY(QString pinnedName READ pinnedName NOTIFY pinnedChanged)
  /// What the finger would record if it were lifted now, or the tree recorded last.
  Q_PROPERTY(QString reading READ reading NOTIFY readingChanged)
  /// A doubt about the last touch or tree: "double?", "large for white oak?"; "" without.
  Q_PROPERTY(QString doubt READ doubt NOTIFY readingChanged)
  Q_PROPERTY(QStringList lastTrees READ lastTrees NOTIFY figuresChanged)  ///< newest first
  Q_PROPERTY(QStringList figures READ figures NOTIFY figuresChanged)      ///< "12", "80.0 ft2/ac"
  Q_PROPERTY(bool locked READ locked WRITE setLocked NOTIFY lockedChanged)

 public:
  /// Milliseconds on a clock that never steps back; a test decides them.
  using Now = std::function<qint64()>;

  TallyViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QString plotName() const;
  [[nodiscard]] QString closed() const;
  [[nodiscard]] SpeciesListModel* species() { return &species_; }
  [[nodiscard]] QStringList classes() const;
  [[nodiscard]] QString beyond() const;
  [[nodiscard]] int pinned() const;
  [[nodiscard]] QString pinnedName() const;
  [[nodiscard]] QString reading() const { return pointed_.isEmpty() ? last_ : pointed_; }
  [[nodiscard]] QString doubt() const { return doubt_; }
  [[nodiscard]] QStringList lastTrees() const;
  [[nodiscard]] QStringList figures() const;
  [[nodiscard]] bool locked() const { return locked_; }
  void setLocked(bool locked);

  /// How many species and class cells the screen has room for. What finds no cell is still there
  /// by search and by keypad.
  Q_INVOKABLE void setRoom(int speciesCells, int classCells);
  Q_INVOKABLE void pin(int speciesRow);
  void pinCode(oaklight::SpeciesCode code);
  /// Shows what lifting the finger there would record; a row of -1 shows nothing.
  Q_INVOKABLE void point(int speciesRow, int classRow);
  /// One tree of a species' row and a class; a species row of -1 is the pinned one.
  Q_INVOKABLE void tally(int speciesRow, int classRow);
  /// One tree of the pinned species with a measured DBH, as digits: "123" is 12.3.
  Q_INVOKABLE void tallyDigits(const QString& digits);
  /// Whether a class was touched so shortly before that this is the same finger bouncing, where the
  /// species came back under it; says so.
  Q_INVOKABLE bool bounced();
  /// One more like the last; also while the glass is locked, since a key of the device asks for it.
  Q_INVOKABLE void again();
  /// How the digits of a keypad read: "12.3 in"; "" without digits.
  Q_INVOKABLE [[nodiscard]] QString readDigits(const QString& digits) const;
  /// The tree of lastTrees at that place; nil when there is none.
  [[nodiscard]] oaklight::TreeId treeAt(int row) const;

  void setNow(Now now) { now_ = std::move(now); }

 signals:
  void plotChanged();
  void pinnedChanged();
  void readingChanged();
  void figuresChanged();
  void lockedChanged();
  /// A tree is on disk.
  void recorded();

 private:
  void enterPlot();
  void fillSpecies();
  /// Where a tree was asked for: a finger bounces on one place.
  enum class Place { classes, keypad, again };
  void record(Place place, oaklight::SpeciesCode species, oaklight::Dbh dbh);
  /// At a count point of double sampling a tree is its species, and no more.
  [[nodiscard]] bool counting() const;
  /// Whether the cruise measures some of its points only.
  [[nodiscard]] bool sampledTwice() const;
  void countOne(Place place, oaklight::SpeciesCode species);
  /// Whether this is the same touch again, by a bouncing finger; says so.
  [[nodiscard]] bool isBounce(Place place, oaklight::SpeciesCode species, std::int32_t tenths);
  [[nodiscard]] QString doubtOf(oaklight::SpeciesCode species, oaklight::Dbh dbh) const;
  void say(const QString& last, const QString& doubt);
  /// The last tree of the plot; "" without one.
  [[nodiscard]] QString lastText() const;
  [[nodiscard]] QString listedText(const oaklight::Tree& tree) const;
  /// Records of trees on the plot.
  [[nodiscard]] std::size_t count() const;
  [[nodiscard]] const oaklight::Plot* plot() const;
  [[nodiscard]] const oaklight::Cruise* cruise() const;
  [[nodiscard]] oaklight::UnitSystem system() const;
  [[nodiscard]] QString textOf(const oaklight::Tree& tree) const;
  [[nodiscard]] QString textOf(oaklight::SpeciesCode species, oaklight::Dbh dbh) const;

  TractDesk& desk_;
  CurrentPlot& plot_;
  Settings& settings_;
  SpeciesListModel species_;
  std::vector<oaklight::TallyClass> classes_;
  struct Order {
    std::optional<oaklight::PlotId> plot;
    int room = 0;
    QString set;
    friend bool operator==(const Order&, const Order&) = default;
  };
  std::optional<Order> order_;  ///< what the order of species_ was made for
  int species_room_ = 14;
  int class_room_ = 20;
  std::optional<oaklight::SpeciesCode> pinned_;
  QString pointed_;
  QString last_;
  QString doubt_;
  bool locked_ = false;
  QElapsedTimer timer_;
  Now now_;
  struct Touch {
    Place place = Place::classes;
    oaklight::SpeciesCode species;
    std::int32_t tenths = 0;
    qint64 at = 0;
  };
  std::optional<Touch> last_touch_;
  std::size_t counted_ = 0;
};
