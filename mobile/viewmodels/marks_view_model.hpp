#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/chip_list_model.hpp"
#include "mobile/viewmodels/mark_list_model.hpp"
#include "mobile/viewmodels/marked_tree_view_model.hpp"
#include "mobile/viewmodels/packet_view_model.hpp"
#include "mobile/viewmodels/stump_report_view_model.hpp"
#include "mobile/viewmodels/stumps_view_model.hpp"

/// All marks of the tract: which, how many, what they amount to, and what is handed over.
class MarksViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(MarkListModel* marks READ marks CONSTANT)
  /// One of them is on: all, each verdict with its count, not decided.
  Q_PROPERTY(ChipListModel* verdicts READ verdicts CONSTANT)
  Q_PROPERTY(ChipListModel* readers READ readers CONSTANT)  ///< everybody's, logger's, cutter's
  Q_PROPERTY(
      QString tag READ tag WRITE setTag NOTIFY filterChanged)      ///< part of the tag looked for
  Q_PROPERTY(QString shown READ shown NOTIFY filterChanged)        ///< "12 of 48 trees"
  Q_PROPERTY(QStringList totals READ totals NOTIFY totalsChanged)  ///< a line a reader
  Q_PROPERTY(MarkedTreeViewModel* tree READ tree CONSTANT)
  Q_PROPERTY(PacketViewModel* packet READ packet CONSTANT)
  Q_PROPERTY(StumpsViewModel* stumps READ stumps CONSTANT)  ///< after the cut
  Q_PROPERTY(StumpReportViewModel* stumpReport READ stumpReport CONSTANT)
  /// Row of the first stand where nobody said how much was walked; -1 where all is known.
  Q_PROPERTY(int unwalked READ unwalked NOTIFY unwalkedChanged)
  Q_PROPERTY(bool working READ working NOTIFY workingChanged)

 public:
  MarksViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] MarkListModel* marks() { return &marks_; }
  [[nodiscard]] ChipListModel* verdicts() { return &verdicts_; }
  [[nodiscard]] ChipListModel* readers() { return &readers_; }
  [[nodiscard]] QString tag() const { return QString::fromStdString(filter_.tag); }
  void setTag(const QString& tag);
  [[nodiscard]] QString shown() const;
  [[nodiscard]] QStringList totals() const { return totals_; }
  [[nodiscard]] MarkedTreeViewModel* tree() { return &tree_; }
  [[nodiscard]] PacketViewModel* packet() { return &packet_; }
  [[nodiscard]] StumpsViewModel* stumps() { return &stumps_; }
  [[nodiscard]] StumpReportViewModel* stumpReport() { return &stump_report_; }
  [[nodiscard]] int unwalked() const;
  [[nodiscard]] bool working() const { return list_work_.late() || totals_work_.late(); }
  [[nodiscard]] bool busy() const { return list_work_.busy() || totals_work_.busy(); }

  /// Nothing is computed while nobody looks.
  Q_INVOKABLE void setShown(bool shown);
  Q_INVOKABLE void chooseVerdict(int row);
  Q_INVOKABLE void chooseReader(int row);
  Q_INVOKABLE void openTree(int row);

 signals:
  void filterChanged();
  void totalsChanged();
  void unwalkedChanged();
  void workingChanged();

 private:
  void follow();
  void show(const std::shared_ptr<oaklight::Result<oaklight::MarksView>>& answer);
  void filter();
  void fillVerdicts(const oaklight::MarkTotals& totals);
  void addUp();

  TractDesk& desk_;
  MarkListModel marks_;
  ChipListModel verdicts_, readers_;
  MarkFilter filter_;
  QStringList totals_;
  QString problem_;  ///< why there is no list
  MarkedTreeViewModel tree_;
  PacketViewModel packet_;
  StumpsViewModel stumps_;
  StumpReportViewModel stump_report_;
  bool shown_ = false;
  Background list_work_, totals_work_;
};
