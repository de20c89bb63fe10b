#include "mobile/viewmodels/stump_report_view_model.hpp"

#include <array>
#include <memory>

#include "core/base/number_text.hpp"
#include "core/base/sha256.hpp"
#include "core/base/today.hpp"
#include "core/handoff/stump_words.hpp"
#include "core/paper/stump_pdf.hpp"
#include "core/session/stump_files.hpp"
#include "core/session/stump_view.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::StumpCheck;

namespace {

/// Wrong shares that an audit may rule out; the row before them is no audit.
constexpr std::array kBounds = {10.0, 5.0, 2.0};
/// Common practice: 19 of 20 such audits hold what they say.
constexpr double kConfidence = 0.95;

std::string hash_of(const StumpCheck& check) {
  return oaklight::sha256_hex(oaklight::stump_check_csv(check));
}

QString number(double value, int decimals) {
  return QString::fromStdString(oaklight::number_text(value, decimals));
}

}  // namespace

StumpReportViewModel::StumpReportViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : PagesViewModel(settings.metric(), parent), desk_(desk) {
  connect(&desk, &TractDesk::changed, this, [this] {
    say({});
    follow();
  });
}

QString StumpReportViewModel::auditHead() const {
  return tr("Audit by sample, %1 % sure").arg(number(100.0 * kConfidence, 0));
}

QStringList StumpReportViewModel::audits() const {
  QStringList names{tr("No audit")};
  for (const double bound : kBounds) names << tr("At most %1 % wrong").arg(number(bound, 0));
  return names;
}

void StumpReportViewModel::setAudit(int audit) {
  if (audit == audit_ || audit < 0 || audit > static_cast<int>(kBounds.size())) return;
  audit_ = audit;
  choose();
}

void StumpReportViewModel::setOpen(bool open) {
  if (open_ == open) return;
  open_ = open;
  toFirstPage();
  follow();
}

StumpReportViewModel::Made StumpReportViewModel::put_together(
    const oaklight::TractData& data, const oaklight::TractKnowledge& knowledge, int audit,
    oaklight::Day day, oaklight::PaperSize paper) {
  Made made;
  oaklight::PacketOptions options;
  options.today = day;
  auto check = oaklight::stump_check_for(data, knowledge, options);
  if (!check) {
    made.problem = sentence_of(check.error());
    return made;
  }
  if (audit > 0) {
    const oaklight::Percent bound{kBounds[static_cast<std::size_t>(audit) - 1]};
    auto drawn =
        oaklight::audit_stumps(*check, 0, bound, *oaklight::Confidence::from_share(kConfidence),
                               oaklight::audit_seed(day));
    if (!drawn) {
      made.problem = sentence_of(drawn.error());
      return made;
    }
    made.audit = *std::move(drawn);
  }
  made.pages = oaklight::stump_pages(*check, made.audit, hash_of(*check), paper);
  made.check = *std::move(check);
  return made;
}

void StumpReportViewModel::follow() {
  if (!open_) return;
  work_.ask([this, data = desk_.snapshot(), &knowledge = desk_.knowledge(), audit = audit_,
             day = oaklight::today(desk_.clock()), paper = paperSize()]() -> Background::Answer {
    auto made = std::make_shared<Made>(put_together(*data, knowledge, audit, day, paper));
    return [this, made] { show(std::move(*made)); };
  });
}

void StumpReportViewModel::show(Made made) {
  check_ = std::move(made.check);
  drawn_audit_ = std::move(made.audit);
  summary_.clear();
  if (check_) {
    QStringList parts;
    if (const auto share = check_->share_done()) {
      parts << tr("%1 % of those looked at were found as marked").arg(number(share->value, 1));
    }
    const oaklight::UnmarkedTotals& cut = check_->unmarked_totals;
    if (cut.trees > 0) parts << tr("%1 cut without a mark").arg(cut.trees);
    if (cut.with_board_feet > 0) {
      parts << tr("as saw logs %1 board feet")
                   .arg(QString::fromStdString(oaklight::between_text(cut.board_feet, 0)));
    }
    if (cut.with_cords > 0) {
      parts << tr("or as firewood %1 cords")
                   .arg(QString::fromStdString(oaklight::between_text(cut.cords, 2)));
    }
    for (const oaklight::DamageFigure* damage : {&check_->crop_damage, &check_->left_damage}) {
      if (damage->over()) {
        parts << (damage == &check_->crop_damage ? tr("crop trees lost: OVER the agreed limit")
                                                 : tr("trees lost: OVER the agreed limit"));
      }
    }
    if (drawn_audit_) parts << tr("audit: look at %1 trees").arg(drawn_audit_->tags.size());
    summary_ = parts.join(QStringLiteral("; "));
  }
  showPages(std::move(made.pages), made.problem);
}

std::filesystem::path StumpReportViewModel::folder() const {
  const std::filesystem::path& tract = desk_.path();
  return tract.parent_path() /
         (tract.stem().string() + "-stumps-" + oaklight::to_text(oaklight::today(desk_.clock())));
}

void StumpReportViewModel::make() {
  if (!check_ || making_) return;
  making_ = true;
  desk_.whenSound([this](const oaklight::Status& sound) {
    making_ = false;
    if (!sound) return say(sentence_of(sound.error()));
    if (check_) write();
  });
}

void StumpReportViewModel::write() {
  if (writing_.busy()) return;
  writing_.ask([this, folder = folder(), check = *check_, audit = drawn_audit_,
                paper = paperSize()]() -> Background::Answer {
    using Written = oaklight::Result<std::vector<std::filesystem::path>>;
    const auto pdf = oaklight::stump_pdf(check, audit, hash_of(check), paper);
    const Written files =
        pdf ? oaklight::write_stump_files(folder, check, *pdf) : Written(pdf.error());
    return [this, files, folder] {
      if (!files) return say(sentence_of(files.error()));
      QStringList names;
      for (const auto& path : *files) names << QString::fromStdString(path.filename().string());
      say(tr("Written: %1, in the folder %2")
              .arg(names.join(QStringLiteral(", ")), QString::fromStdString(folder.string())));
    };
  });
}
