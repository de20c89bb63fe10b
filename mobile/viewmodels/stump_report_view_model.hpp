#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "core/handoff/stump_check.hpp"
#include "core/session/knowledge.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/desk/tract_desk.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/pages_view_model.hpp"

/// What the walk after the cut came to: share found, damage against the agreed limits, what was cut
/// without a mark and what it was worth, and an audit by sample; as pages, then as files.
class StumpReportViewModel : public PagesViewModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("MarksViewModel owns it")
  Q_PROPERTY(QString auditHead READ auditHead CONSTANT)  ///< how sure an audit is to be
  /// What an audit is to rule out, the first being none: "At most 5 % wrong".
  Q_PROPERTY(QStringList audits READ audits CONSTANT)
  Q_PROPERTY(int audit READ audit WRITE setAudit NOTIFY chosenChanged)
  Q_PROPERTY(QString summary READ summary NOTIFY pagesChanged)

 public:
  StumpReportViewModel(TractDesk& desk, Settings& settings, QObject* parent = nullptr);

  [[nodiscard]] QString auditHead() const;
  [[nodiscard]] QStringList audits() const;
  [[nodiscard]] int audit() const { return audit_; }
  void setAudit(int audit);
  [[nodiscard]] QString summary() const { return summary_; }
  [[nodiscard]] bool busy() const { return work_.busy() || making_ || writing_.busy(); }
  [[nodiscard]] std::filesystem::path folder() const;

  /// The pages are looked at: puts them together, and again when records change.
  Q_INVOKABLE void setOpen(bool open);
  /// Writes the pages and the reconciled list into a folder beside the tract file.
  Q_INVOKABLE void make();

 private:
  /// What came of putting a report together.
  struct Made {
    std::optional<oaklight::StumpCheck> check;
    std::optional<oaklight::StumpAudit> audit;
    std::vector<oaklight::Drawing> pages;
    QString problem;
  };
  static Made put_together(const oaklight::TractData& data,
                           const oaklight::TractKnowledge& knowledge, int audit, oaklight::Day day,
                           oaklight::PaperSize paper);
  void follow() override;
  void show(Made made);
  void write();

  TractDesk& desk_;
  int audit_ = 0;
  bool open_ = false;
  std::optional<oaklight::StumpCheck> check_;
  std::optional<oaklight::StumpAudit> drawn_audit_;
  QString summary_;
  bool making_ = false;  ///< as soon as the file is known to be sound
  Background work_, writing_;
};
