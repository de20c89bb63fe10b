#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "core/session/plot_work.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/chip_list_model.hpp"

/// One tallied tree, to say more about it or to mend it. Every tap is an action of its own, which
/// undo reverses.
class TreeViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "" when no tree is chosen
  Q_PROPERTY(
      ChipListModel* chips READ chips CONSTANT)  ///< live or dead, crown class, what was seen
  Q_PROPERTY(QStringList readingNames READ readingNames NOTIFY changed)
  Q_PROPERTY(QStringList readings READ readings NOTIFY changed)  ///< "-" where nothing is recorded

 public:
  /// What is measured on a tree, in the order of readings.
  enum class Reading { Dbh, Logs, Height, LiveCrown, Dieback, Azimuth, Distance, Stems, Edge };
  Q_ENUM(Reading)

  TreeViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QString title() const;
  [[nodiscard]] ChipListModel* chips() { return &chips_; }
  [[nodiscard]] QStringList readingNames() const;
  [[nodiscard]] QStringList readings() const;

  void choose(oaklight::TreeId tree);
  Q_INVOKABLE void toggle(int chip);
  /// How digits typed for a reading read: "25" is 2.5 logs, "123" is 12.3 in.
  Q_INVOKABLE [[nodiscard]] QString read(int reading, const QString& digits) const;
  /// Records digits typed for a reading. An azimuth waits for its distance, and the reverse: the
  /// one without the other says nothing about where a tree stands.
  Q_INVOKABLE void enter(int reading, const QString& digits);
  void changeSpecies(oaklight::SpeciesCode code);
  Q_INVOKABLE void remove();

 signals:
  void changed();
  void removed();

 private:
  [[nodiscard]] const oaklight::Tree* tree() const;
  void fillChips();
  void submit(const std::function<oaklight::Status(oaklight::TreeDraft&)>& change);

  TractDesk& desk_;
  Settings& settings_;
  oaklight::TreeId id_;
  ChipListModel chips_;
  std::optional<oaklight::Degrees> waiting_azimuth_;
  std::optional<oaklight::TapedLength> waiting_distance_;
};
