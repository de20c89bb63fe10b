#include "core/paper/plan_sheet_pdf.hpp"

#include <algorithm>
#include <array>

#include "core/paper/gui_app.hpp"
#include "core/paper/map.hpp"
#include "core/paper/page_flow.hpp"
#include "core/paper/pdf.hpp"
#include "core/paper/table.hpp"

namespace oaklight {
namespace {

QString from(const std::string& text) { return printable(text); }

std::vector<Paragraph> paragraphs(const std::vector<std::string>& lines, const TextStyle& style) {
  std::vector<Paragraph> out;
  for (const std::string& line : lines) out.push_back({from(line), style, std::nullopt, 3.0});
  return out;
}

/// What the map shows: stands, lines, landing, and the plots to visit.
TractData shown(const TractData& data) {
  TractData kept;
  kept.tract = data.tract;
  kept.stands = data.stands;
  kept.lines = data.lines;
  for (const Plot& plot : data.plots) {
    if (plot.status == PlotStatus::planned && plot.position) kept.plots.push_back(plot);
  }
  return kept;
}

void write_map(PageFlow& flow, const TractData& data, const std::vector<Position>& walk) {
  const MapScene scene = make_scene(shown(data), {.walk = walk}, UnitSystem::us);
  const auto ground = ground_of(scene);
  if (!ground) return;
  flow.new_page(QStringLiteral("MAP"));
  flow.heading(QStringLiteral("Map of the walk"));
  const QRectF& body = flow.grid().body;
  const MapKey widest(scene, {});
  QRectF frame = body.adjusted(0.0, 30.0 + kMapCaption, 0.0, -widest.height() - 34.0);
  const MapView view = fitting_view(frame, *ground);
  draw_map_caption(flow.page(), {}, view);
  draw_map(flow.page(), scene, view, {});
  const std::array views = {view};
  const MapKey key(scene, {}, views);
  key.draw(flow.page(), QRectF(body.left(), frame.bottom(), body.width(), key.height()));
  flow.go_to(frame.bottom() + key.height() + 2.0);
  flow.text({{QStringLiteral("Circles with a T are plots to visit, named as in the table; the line "
                             "with arrows is the walk. North is up, true north."),
              kSmallText}});
}

bool has_paces(const PlanSheet& sheet) {
  return std::any_of(sheet.stops.begin(), sheet.stops.end(), [](const PlanStop& stop) {
    return std::any_of(stop.legs.begin(), stop.legs.end(),
                       [](const PlanLeg& leg) { return !leg.paces.empty(); });
  });
}

void write_table(PageFlow& flow, const PlanSheet& sheet) {
  flow.new_page(QStringLiteral("BEARINGS AND DISTANCES"));
  flow.heading(QStringLiteral("Bearings and distances"));
  const bool paced = has_paces(sheet);
  std::vector<TableColumn> columns = {{QStringLiteral("To"), 0.0},
                                      {QStringLiteral("TRUE"), 62.0},
                                      {QStringLiteral("MAGNETIC"), 82.0},
                                      {QStringLiteral("Distance"), 84.0}};
  if (paced) columns.push_back({QStringLiteral("Paces"), 56.0});
  columns.push_back({QStringLiteral("Done"), 44.0});
  Table table(flow, columns, 24.0);
  for (const PlanStop& stop : sheet.stops) {
    for (std::size_t i = 0; i < stop.legs.size(); ++i) {
      const PlanLeg& leg = stop.legs[i];
      const bool last = i + 1 == stop.legs.size();
      const auto cell = [](const QString& text, const TextStyle& style) {
        return TableCell{{{text, style}}};
      };
      TableCell done;
      done.tick = last;
      TableCell to =
          cell(last ? from(stop.name) : QStringLiteral("turn, on the way to ") + from(stop.name),
               last ? kStrongText : kBodyText);
      if (last) to.paragraphs.push_back({from(stop.position), kSmallText.in(Ink::soft)});
      const QString magnetic =
          leg.magnetic_bearing.empty() ? QStringLiteral("not known") : from(leg.magnetic_bearing);
      std::vector<TableCell> cells = {to, cell(from(leg.true_bearing), kFigureText),
                                      cell(magnetic, kFigureText),
                                      cell(from(leg.distance), kFigureText)};
      if (paced) cells.push_back(cell(from(leg.paces), kFigureText));
      cells.push_back(done);
      table.row(cells);
    }
  }
}

}  // namespace

std::vector<Drawing> plan_sheet_pages(const TractData& data, const std::vector<Position>& walk,
                                      const PlanSheet& sheet, PaperSize paper) {
  PageDress dress;
  dress.tract = from(sheet.tract);
  dress.made_on = from(sheet.made_on);
  dress.demo = sheet.demo;
  PageFlow flow(paper, dress);
  flow.new_page(QStringLiteral("PLAN OF THE CRUISE"));
  flow.heading(QStringLiteral("Before you go"));
  flow.text(paragraphs(sheet.cautions, kStrongText));
  flow.gap(10.0);
  flow.subhead(QStringLiteral("The walk"));
  flow.text(paragraphs(sheet.head, kBodyText));
  if (!sheet.notes.empty()) {
    flow.gap(6.0);
    flow.subhead(QStringLiteral("To know"));
    flow.text(paragraphs(sheet.notes, kBodyText));
  }
  write_map(flow, data, walk);
  write_table(flow, sheet);
  return flow.finish();
}

Result<std::string> plan_sheet_pdf(const TractData& data, const std::vector<Position>& walk,
                                   const PlanSheet& sheet, PaperSize paper) {
  const auto app = PaperApplication::start();
  if (!app) return app.error();
  return pages_as_pdf(plan_sheet_pages(data, walk, sheet, paper),
                      from(sheet.tract) + QStringLiteral(": plan of the cruise"), paper);
}

}  // namespace oaklight
