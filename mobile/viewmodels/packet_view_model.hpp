#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/pages_view_model.hpp"

/// What one reader is handed: its pages as they will be printed, then the files.
class PacketViewModel : public PagesViewModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("MarksViewModel owns it")
  Q_PROPERTY(QStringList readers READ readers CONSTANT)
  Q_PROPERTY(int reader READ reader WRITE setReader NOTIFY chosenChanged)
  Q_PROPERTY(QString summary READ summary NOTIFY pagesChanged)   ///< what is in it
  Q_PROPERTY(bool canDecide READ canDecide NOTIFY pagesChanged)  ///< decideAll() mends the problem

 public:
  PacketViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QStringList readers() const;
  [[nodiscard]] int reader() const { return reader_; }
  void setReader(int reader);
  [[nodiscard]] QString summary() const;
  [[nodiscard]] bool canDecide() const { return can_decide_; }
  [[nodiscard]] bool busy() const { return work_.busy() || making_ || writing_.busy(); }

  /// As a packet of today is made.
  [[nodiscard]] oaklight::PacketOptions options() const { return {.today = today_()}; }
  [[nodiscard]] std::filesystem::path folder() const;
  void setToday(std::function<oaklight::Day()> today) { today_ = std::move(today); }
  void setShown(bool shown);

  /// The pages are looked at: puts them together, and again when records change.
  Q_INVOKABLE void setOpen(bool open);
  /// Writes the files into a folder beside the tract file.
  Q_INVOKABLE void make();
  /// Stores what is recommended for every stand, as one action.
  Q_INVOKABLE void decideAll();

 private:
  /// What came of putting a packet together.
  struct Made {
    std::optional<oaklight::Packet> packet;
    std::vector<oaklight::Drawing> pages;
    QString problem;
    bool can_decide = false;
  };
  static Made put_together(const oaklight::TractData& data,
                           const oaklight::TractKnowledge& knowledge, oaklight::PacketReader reader,
                           oaklight::PaperSize paper, const oaklight::PacketOptions& options);
  void follow() override;
  void show(Made made);
  void write();

  TractDesk& desk_;
  std::function<oaklight::Day()> today_;
  int reader_ = 0;
  bool shown_ = false;
  bool open_ = false;
  std::shared_ptr<const oaklight::Packet> packet_;
  QString summary_;
  bool can_decide_ = false;
  bool making_ = false;  ///< as soon as the file is known to be sound
  Background work_, writing_;
};

/// "For the logger: 12 trees to cut; sawlog 8 trees, 1,240 board feet ...".
QString totals_words(const oaklight::Packet& packet);
