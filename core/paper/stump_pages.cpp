#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/handoff/stump_words.hpp"
#include "core/paper/gui_app.hpp"
#include "core/paper/page_flow.hpp"
#include "core/paper/pdf.hpp"
#include "core/paper/stump_pdf.hpp"
#include "core/paper/table.hpp"
#include "core/place/position_text.hpp"

namespace oaklight {
namespace {

constexpr double kTagColumn = 60.0;

QString from(const std::string& text) { return QString::fromStdString(text); }
QString number(double value, int decimals) { return from(grouped_text(value, decimals)); }
TableCell words(const QString& text, const TextStyle& style = kBodyText) {
  return {{{text, style}}};
}
TableCell tag_cell(const std::string& tag) {
  return tag.empty() ? words(QStringLiteral("none"), kSmallText) : words(printable(tag), kTagText);
}

QString share_words(const std::optional<Percent>& share) {
  return share ? number(share->value, 1) + QStringLiteral(" %") : QStringLiteral("\u2013");
}

QString place_words(const std::optional<Position>& place) {
  return place ? from(decimal_degrees_text(*place)) : QStringLiteral("no position");
}

TableCell caution_cell(const ListedTree& tree) {
  TableCell cell;
  for (const Caution& caution : tree.cautions) {
    cell.paragraphs.push_back({printable(caution.text), kSmallText, caution.severity, 3.0});
  }
  if (cell.paragraphs.empty()) {
    cell.paragraphs.push_back({QStringLiteral("None recorded. Look yourself."), kSmallText});
  }
  const QString note = printable(tree.note);
  if (!note.isEmpty()) cell.paragraphs.push_back({note, kSmallText.in(Ink::soft)});
  return cell;
}

void write_title(PageFlow& flow, const StumpCheck& check) {
  flow.text({{printable(check.tract.name), kTitleText},
             {QStringLiteral("Stump check: the marked list against what was found"), kSubheadText},
             {QStringLiteral("Made ") + printable(check.made_on), kBodyText}});
  flow.gap(6.0);
}

void write_cautions(PageFlow& flow, const StumpCheck& check) {
  const QRectF band = flow.take(29.0).adjusted(0.0, 0.0, 0.0, -5.0);
  flow.page().fill_rect(band, Ink::dark_ground);
  flow.page().text(QPointF(band.left() + 8.0, band.bottom() - 7.0),
                   QStringLiteral("BEFORE YOU WALK A FRESH CUT"), kSubheadText.in(Ink::on_ground));
  std::vector<Paragraph> lines;
  for (const std::string& line : check.before_you_go) {
    lines.push_back({printable(line), kStrongText, {}, 4.0});
  }
  for (const Caution& caution : check.cautions) {
    lines.push_back({printable(caution.text), kBodyText, caution.severity, 4.0});
  }
  flow.text(lines);
}

struct Figure {
  QString words;
  QString value;
  QString note;
};

void write_table(PageFlow& flow, const std::vector<Figure>& figures) {
  Table table(flow,
              {{QStringLiteral("What"), 0.0},
               {QStringLiteral("Count"), 110.0},
               {QStringLiteral("Note"), 216.0}},
              24.0);
  for (const Figure& figure : figures) {
    table.row({words(figure.words, kStrongText), words(figure.value, kFigureText),
               words(figure.note, kSmallText)});
  }
}

Figure damage_figure(const QString& of, const DamageFigure& damage) {
  const QString note =
      QStringLiteral("%1 of %2 felled, %3 badly hurt, %4 hurt less; agreed limit %5 % (%6)")
          .arg(damage.cut)
          .arg(damage.left)
          .arg(damage.badly)
          .arg(damage.other)
          .arg(number(damage.limit.value, 1), from(damage.rule));
  const QString value = share_words(damage.share());
  return {of, damage.over() ? value + QStringLiteral(" OVER") : value, note};
}

void write_figures(PageFlow& flow, const StumpCheck& check) {
  flow.subhead(QStringLiteral("The list against what was found"), 120.0);
  const auto count = [&](ListState state) { return QString::number(check.of(state)); };
  std::vector<Figure> figures = {
      {QStringLiteral("Trees on the list"), QString::number(check.listed.size()), {}},
      {QStringLiteral("Looked at"), QString::number(check.looked_at()), {}},
      {QStringLiteral("Found as marked"), count(ListState::done),
       share_words(check.share_done()) + QStringLiteral(" of those looked at")},
      {QStringLiteral("Still standing"), count(ListState::standing), {}},
      {QStringLiteral("Hung up"), count(ListState::hung), {}},
      {QStringLiteral("Unclear"), count(ListState::unclear),
       QStringLiteral("Findings that contradict each other or the list: look again")},
      {QStringLiteral("Nobody looked yet"), count(ListState::not_seen), {}},
      {QStringLiteral("Cut without a mark"), QString::number(check.unmarked_totals.trees),
       QStringLiteral("None is agreed; see the page of them")},
      damage_figure(QStringLiteral("Crop trees lost"), check.crop_damage),
      damage_figure(QStringLiteral("Trees to be left, lost"), check.left_damage)};
  if (check.hurt_without_tag > 0) {
    figures.push_back({QStringLiteral("Hurt, no tag"), QString::number(check.hurt_without_tag),
                       QStringLiteral("In no share: how many such trees there are is not known")});
  }
  write_table(flow, figures);
  flow.gap(3.0);
  flow.text({{QStringLiteral("A limit is what was agreed for this job (rules %1), not a law. A "
                             "large wound has 100 square inches of bare wood or half of the girth "
                             "(from memory).")
                  .arg(printable(check.rule_version)),
              kSmallText}});
}

void write_audit(PageFlow& flow, const StumpAudit& audit) {
  flow.subhead(QStringLiteral("Audit by sample"), 90.0);
  const auto model = word_of(audit.plan.model);
  flow.text(
      {{QStringLiteral("To claim that no more than %1 % of the %2 listed trees are wrong, with %3 "
                       "% confidence, look at %4 and find at most %5 wrong (%6 distribution). The "
                       "draw below has %7 trees; seed %8 repeats it.")
            .arg(number(audit.bound.value, 1))
            .arg(audit.list)
            .arg(number(100.0 * audit.confidence.share(), 1))
            .arg(audit.plan.sample)
            .arg(audit.plan.allowed)
            .arg(QString::fromLatin1(model.data(), static_cast<qsizetype>(model.size())))
            .arg(audit.tags.size())
            .arg(audit.seed),
        kBodyText}});
  QStringList tags;
  for (const std::string& tag : audit.tags) tags << printable(tag);
  flow.text({{tags.join(QStringLiteral(", ")), kStrongText, {}, 3.0}});
  const QString result =
      audit.greatest_share
          ? QStringLiteral("All were looked at, %1 wrong: at most %2 % of the list is wrong. %3")
                .arg(audit.wrong)
                .arg(number(audit.greatest_share->value, 1),
                     audit.holds() ? QStringLiteral("The claim stands.")
                                   : QStringLiteral("The claim does not stand."))
          : QStringLiteral("%1 of them are still to be looked at; %2 wrong so far.")
                .arg(audit.not_seen.size())
                .arg(audit.wrong);
  flow.text({{result, kStrongText, {}, 3.0}});
}

void write_listed(PageFlow& flow, const StumpCheck& check, ListState state, const QString& title,
                  const QString& advice) {
  if (check.of(state) == 0) return;
  flow.subhead(title + QStringLiteral(": %1").arg(check.of(state)), 110.0);
  if (!advice.isEmpty()) flow.text({{advice, kStrongText}});
  flow.gap(3.0);
  const bool warn = state != ListState::done;
  std::vector<TableColumn> columns = {{QStringLiteral("Tag"), kTagColumn},
                                      {QStringLiteral("Species"), warn ? 92.0 : 150.0},
                                      {QStringLiteral("DBH"), 54.0},
                                      {QStringLiteral("Stand"), 62.0},
                                      {QStringLiteral("Where (WGS 84)"), warn ? 84.0 : 0.0}};
  if (warn) columns.push_back({QStringLiteral("Cautions"), 0.0});
  Table table(flow, std::move(columns), 27.0);
  for (const ListedTree& tree : check.listed) {
    if (tree.state != state) continue;
    std::vector<TableCell> cells = {
        tag_cell(tree.tag), words(printable(tree.species), kStrongText),
        words(number(tree.dbh.inches().value, 1) + QStringLiteral(" in"), kFigureText),
        words(printable(tree.stand)), words(place_words(tree.position), kSmallText)};
    if (warn) cells.push_back(caution_cell(tree));
    table.row(cells);
  }
}

QString size_words(const UnmarkedTree& tree) {
  if (!tree.dbh) return QStringLiteral("not measured");
  const QString size = from(between_text(*tree.dbh, 1, " in"));
  if (tree.measured) return size + QStringLiteral(", by tape");
  QString words = size + QStringLiteral(", from its stump");
  if (tree.height_assumed) words += QStringLiteral(", stump height not measured");
  if (tree.beyond_data) words += QStringLiteral(", beyond the data of the relation");
  return words;
}

TableCell worth_cell(const UnmarkedTree& tree) {
  TableCell cell;
  if (tree.board_feet) {
    cell.paragraphs.push_back(
        {from(between_text(*tree.board_feet, 0, " bd ft")), kSmallStrongText});
  }
  if (tree.cords) {
    cell.paragraphs.push_back({from(between_text(*tree.cords, 2, " cord")), kSmallText});
  }
  if (cell.paragraphs.empty()) cell.paragraphs.push_back({QStringLiteral("no figure"), kSmallText});
  return cell;
}

void write_unmarked_totals(PageFlow& flow, const StumpCheck& check) {
  const UnmarkedTotals& totals = check.unmarked_totals;
  flow.gap(5.0);
  flow.text(
      {{QStringLiteral("Together: as saw logs %1 (%2 of %3 trees, %4 log rule); or all of it as "
                       "firewood %5 (%6 of %3 trees). The two are not added.")
            .arg(from(between_text(totals.board_feet, 0, " bd ft")))
            .arg(totals.with_board_feet)
            .arg(totals.trees)
            .arg(from(check.log_rule), from(between_text(totals.cords, 2, " cord")))
            .arg(totals.with_cords),
        kStrongText}});
  if (!check.volumes_by.empty()) flow.text({{printable(check.volumes_by), kSmallText, {}, 4.0}});
  flow.text(
      {{QStringLiteral(
            "DBH from a stump by the form of Raile 1982 (USDA Forest Service NC-224); its flare is "
            "from memory, the range is wide, and the low, likely and high figures of the wood "
            "follow from it. Log heights are those of standing trees of the tract like it. These "
            "are estimates for talking it over: a court or a contract may ask for another way."),
        kSmallText,
        {},
        4.0}});
}

void write_unmarked(PageFlow& flow, const StumpCheck& check) {
  if (check.unmarked.empty()) return;
  flow.new_page(QStringLiteral("CUT WITHOUT A MARK"));
  flow.heading(QStringLiteral("Cut without a mark: %1").arg(check.unmarked.size()));
  Table table(flow,
              {{QStringLiteral("Tag"), kTagColumn},
               {QStringLiteral("Species"), 100.0},
               {QStringLiteral("DBH, with its range"), 128.0},
               {QStringLiteral("Wood"), 120.0},
               {QStringLiteral("Where, and note"), 0.0}},
              27.0);
  for (const UnmarkedTree& tree : check.unmarked) {
    TableCell species = words(printable(tree.species), kStrongText);
    if (tree.crop || tree.leave_tree) {
      species.paragraphs.push_back(
          {tree.crop ? QStringLiteral("CROP TREE") : QStringLiteral("leave tree"),
           kSmallStrongText});
    }
    TableCell where = words(place_words(tree.position), kSmallText);
    if (tree.hung) {
      where.paragraphs.insert(where.paragraphs.begin(),
                              Paragraph{QStringLiteral("HUNG UP"), kSmallStrongText});
    }
    const QString note = printable(tree.note);
    if (!note.isEmpty()) where.paragraphs.push_back({note, kSmallText.in(Ink::soft)});
    table.row({tag_cell(tree.tag), species, words(size_words(tree), kSmallText), worth_cell(tree),
               where});
  }
  write_unmarked_totals(flow, check);
}

QString wound_words(const HurtTree& tree) {
  const auto text = [](std::string_view word) {
    return QString::fromLatin1(word.data(), static_cast<qsizetype>(word.size()));
  };
  QString words = tree.wound ? text(word_of(*tree.wound)) : QStringLiteral("not recorded");
  if (tree.place) words += QStringLiteral(", ") + text(word_of(*tree.place));
  return words;
}

void write_hurt(PageFlow& flow, const StumpCheck& check) {
  if (check.hurt.empty()) return;
  flow.new_page(QStringLiteral("HURT TREES"));
  flow.heading(QStringLiteral("Hurt trees that were to be left: %1").arg(check.hurt.size()));
  Table table(flow,
              {{QStringLiteral("Tag"), kTagColumn},
               {QStringLiteral("Species"), 110.0},
               {QStringLiteral("Worst wound"), 100.0},
               {QStringLiteral("Stand"), 80.0},
               {QStringLiteral("Where, and note"), 0.0}},
              27.0);
  for (const HurtTree& tree : check.hurt) {
    TableCell species = words(printable(tree.species), kStrongText);
    if (tree.crop) species.paragraphs.push_back({QStringLiteral("CROP TREE"), kSmallStrongText});
    TableCell where = words(place_words(tree.position), kSmallText);
    const QString note = printable(tree.note);
    if (!note.isEmpty()) where.paragraphs.push_back({note, kSmallText.in(Ink::soft)});
    table.row({tag_cell(tree.tag), species,
               words(wound_words(tree), tree.badly() ? kStrongText : kBodyText),
               words(printable(tree.stand)), where});
  }
}

void write_twice(PageFlow& flow, const StumpCheck& check) {
  if (check.twice.empty()) return;
  flow.subhead(QStringLiteral("Tags noted more than once: %1").arg(check.twice.size()), 60.0);
  QStringList lines;
  for (const TagTwice& tag : check.twice) {
    lines << QStringLiteral("%1 (%2 times)")
                 .arg(printable(tag.tag), QString::number(tag.findings.size()));
  }
  flow.text({{lines.join(QStringLiteral(", ")), kBodyText}});
}

}  // namespace

std::vector<Drawing> stump_pages(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                                 const std::string& list_sha256, PaperSize paper) {
  PageFlow flow(paper, {printable(check.tract.name), printable(check.made_on), from(list_sha256),
                        check.tract.demo});
  flow.new_page(QStringLiteral("READ THIS FIRST"));
  write_title(flow, check);
  write_cautions(flow, check);
  write_figures(flow, check);
  if (audit) write_audit(flow, *audit);
  write_twice(flow, check);
  const int again = static_cast<int>(check.listed.size()) - check.of(ListState::done);
  if (again > 0) flow.new_page(QStringLiteral("GO AND LOOK"));
  write_listed(flow, check, ListState::hung, QStringLiteral("Hung up"),
               QStringLiteral("Stay two tree lengths away. A trained person with a machine only."));
  write_listed(flow, check, ListState::standing, QStringLiteral("Still standing"), {});
  write_listed(flow, check, ListState::unclear, QStringLiteral("Unclear, look again"), {});
  write_listed(flow, check, ListState::not_seen, QStringLiteral("Nobody looked yet"), {});
  write_unmarked(flow, check);
  write_hurt(flow, check);
  if (check.of(ListState::done) > 0) flow.new_page(QStringLiteral("FOUND AS MARKED"));
  write_listed(flow, check, ListState::done, QStringLiteral("Found as marked"), {});
  return flow.finish();
}

Result<std::string> stump_pdf(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                              const std::string& list_sha256, PaperSize paper) {
  const auto app = PaperApplication::start();
  if (!app) return app.error();
  return pages_as_pdf(stump_pages(check, audit, list_sha256, paper),
                      printable(check.tract.name) + QStringLiteral(": stump check"), paper);
}

}  // namespace oaklight
