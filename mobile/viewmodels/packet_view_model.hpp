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
#include "core/paper/drawing.hpp"
#include "core/paper/page.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/items/picture.hpp"
#include "mobile/look/settings.hpp"

/// What one reader is handed: its pages as they will be printed, then the files.
class PacketViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("MarksViewModel owns it")
  Q_PROPERTY(QStringList readers READ readers CONSTANT)
  Q_PROPERTY(int reader READ reader WRITE setReader NOTIFY chosenChanged)
  Q_PROPERTY(QStringList papers READ papers CONSTANT)
  Q_PROPERTY(int paper READ paper WRITE setPaper NOTIFY chosenChanged)
  Q_PROPERTY(int pages READ pages NOTIFY pagesChanged)  ///< 0 when there is no packet
  Q_PROPERTY(int page READ page NOTIFY pagesChanged)
  Q_PROPERTY(bool hasNext READ hasNext NOTIFY pagesChanged)
  Q_PROPERTY(Picture picture READ picture NOTIFY pagesChanged)
  Q_PROPERTY(QString summary READ summary NOTIFY pagesChanged)  ///< what is in it
  /// Why there is no packet, and what to do; "" when there is one.
  Q_PROPERTY(QString problem READ problem NOTIFY pagesChanged)
  Q_PROPERTY(bool canDecide READ canDecide NOTIFY pagesChanged)  ///< decideAll() mends the problem
  Q_PROPERTY(QString notice READ notice NOTIFY noticeChanged)  ///< where the files are, or why not

 public:
  PacketViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QStringList readers() const;
  [[nodiscard]] int reader() const { return reader_; }
  void setReader(int reader);
  [[nodiscard]] QStringList papers() const;
  [[nodiscard]] int paper() const { return paper_; }
  void setPaper(int paper);
  [[nodiscard]] int pages() const { return static_cast<int>(drawn_.size()); }
  [[nodiscard]] int page() const { return page_; }
  [[nodiscard]] bool hasNext() const { return page_ < pages() - 1; }
  [[nodiscard]] Picture picture() const { return picture_; }
  [[nodiscard]] QString summary() const;
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] bool canDecide() const { return can_decide_; }
  [[nodiscard]] QString notice() const { return notice_; }
  [[nodiscard]] bool busy() const { return work_.busy() || making_ || writing_.busy(); }

  /// As a packet of today is made.
  [[nodiscard]] oaklight::PacketOptions options() const { return {.today = today_()}; }
  [[nodiscard]] std::filesystem::path folder() const;
  void setToday(std::function<oaklight::Day()> today) { today_ = std::move(today); }
  void setShown(bool shown);

  /// The pages are looked at: puts them together, and again when records change.
  Q_INVOKABLE void setOpen(bool open);
  Q_INVOKABLE void turn(int by);
  /// Writes the files into a folder beside the tract file.
  Q_INVOKABLE void make();
  /// Stores what is recommended for every stand, as one action.
  Q_INVOKABLE void decideAll();

 signals:
  void chosenChanged();
  void pagesChanged();
  void noticeChanged();

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
  void follow();
  void show(Made made);
  void fillPicture();
  void write();
  void say(const QString& notice);

  TractDesk& desk_;
  Settings& settings_;
  std::function<oaklight::Day()> today_;
  int reader_ = 0;
  int paper_ = 0;
  int page_ = 0;
  bool shown_ = false;
  bool open_ = false;
  std::shared_ptr<const oaklight::Packet> packet_;
  std::vector<oaklight::Drawing> drawn_;
  Picture picture_;
  QString summary_, problem_, notice_;
  bool can_decide_ = false;
  bool making_ = false;  ///< as soon as the file is known to be sound
  Background work_, writing_;
};

/// "For the logger: 12 trees to cut; sawlog 8 trees, 1,240 board feet ...".
QString totals_words(const oaklight::Packet& packet);
