#include "mobile/viewmodels/boundary_view_model.hpp"

#include <QDir>
#include <QFileInfo>
#include <algorithm>

#include "core/place/geodesy.hpp"
#include "core/session/files.hpp"
#include "core/session/plot_figures.hpp"
#include "mobile/viewmodels/ground_shown.hpp"
#include "mobile/viewmodels/way_view_model.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Metres;
using oaklight::Position;

namespace {

// Judgement: closer than the fixes err, corners are noise.
constexpr Metres kCornersApart{5.0};
constexpr std::size_t kSizesKept = 4;

QString folder_of(const TractDesk& desk) {
  return QFileInfo(QString::fromStdString(desk.path().string())).absolutePath();
}

QString faults_text(const std::vector<oaklight::Error>& faults) {
  QStringList lines;
  constexpr std::size_t kShown = 3;
  for (std::size_t i = 0; i < std::min(kShown, faults.size()); ++i) {
    const QString where = QString::fromStdString(faults[i].where);
    lines << (where.isEmpty() ? QString() : where + QStringLiteral(": ")) + sentence_of(faults[i]);
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

BoundaryViewModel::BoundaryViewModel(TractDesk& desk, Locator& locator, Settings& settings,
                                     QObject* parent)
    : QObject(parent), desk_(desk), locator_(locator), settings_(settings) {
  connect(&locator, &Locator::moved, this, &BoundaryViewModel::follow);
  connect(&settings, &Settings::changed, this, &BoundaryViewModel::changed);
}

void BoundaryViewModel::begin(const QString& stand) {
  if (!begun_) locator_.want(true);
  begun_ = true;
  stand_ = stand;
  way_ = File;
  take_area_ = false;
  clear();
}

void BoundaryViewModel::end() {
  if (begun_) locator_.want(false);
  begun_ = false;
  clear();
}

/// Nothing is drawn, walked or read yet.
void BoundaryViewModel::clear() {
  reading_.drop();
  walking_ = false;
  corners_.clear();
  outlines_ = {};
  plan_ = {};
  problem_.clear();
  drawMap();
  emit changed();
}

void BoundaryViewModel::setWay(int way) {
  if (way_ == way) return;
  way_ = way;
  clear();
}

QStringList BoundaryViewModel::files() const {
  return QDir(folder_of(desk_))
      .entryList({QStringLiteral("*.geojson"), QStringLiteral("*.json"), QStringLiteral("*.kml"),
                  QStringLiteral("*.gpx")},
                 QDir::Files, QDir::Name | QDir::IgnoreCase);
}

void BoundaryViewModel::chooseFile(int row) {
  const QStringList names = files();
  if (row >= 0 && row < names.size()) readFile(QDir(folder_of(desk_)).filePath(names[row]));
}

void BoundaryViewModel::readFile(const QString& path) {
  clear();
  reading_.ask([this, path]() -> Background::Answer {
    const auto bytes = oaklight::read_whole_file(path.trimmed().toStdString());
    auto read = std::make_shared<oaklight::DrawnOutlines>();
    if (bytes) {
      *read = oaklight::read_outlines({QFileInfo(path).fileName().toStdString(), *bytes});
    } else {
      read->faults.push_back(bytes.error());
    }
    return [this, read] {
      outlines_ = std::move(*read);
      plan();
    };
  });
}

void BoundaryViewModel::drawMap() {
  auto drawn = std::make_shared<std::vector<Drawn>>();
  oaklight::TractMapFocus focus;
  focus.sketch = corners_;
  if (locator_.here()) focus.here = locator_.here()->at;
  auto draw = [ground = ground_of(desk_.data()), focus, drawn](oaklight::PictureFrame frame) {
    frame.head = false;
    auto picture = oaklight::draw_tract(*ground, focus, frame);
    const oaklight::Drawing drawing = picture.drawing;
    if (drawn->size() >= kSizesKept) drawn->erase(drawn->begin());
    drawn->push_back({frame.size, std::move(picture)});
    return drawing;
  };
  drawn_ = drawn;
  map_ = Picture(std::move(draw), tr("Map to draw on. %1").arg(corners()));
  emit mapChanged();
}

void BoundaryViewModel::tap(QPointF at, QPointF corner) {
  if (way_ != Draw) return;
  const auto tapped = std::ranges::find_if(*drawn_, [&](const Drawn& one) {
    const QPointF apart = corner - QPointF(one.size.width(), one.size.height());
    return apart.manhattanLength() < 1.0;
  });
  const auto place = tapped == drawn_->end() ? std::nullopt : tapped->picture.place_at(at);
  if (!place) {
    problem_ = tr("There is nothing on this map to draw by. Walk the outline, or bring a file.");
    emit changed();
    return;
  }
  corners_.push_back(*place);
  planCorners();
}

void BoundaryViewModel::undo() {
  if (corners_.empty()) return;
  corners_.pop_back();
  planCorners();
}

void BoundaryViewModel::startWalk() {
  walking_ = true;
  follow();
  emit changed();
}

void BoundaryViewModel::stopWalk() {
  walking_ = false;
  planCorners();
}

void BoundaryViewModel::addHere() {
  if (!locator_.here()) return;
  corners_.push_back(locator_.here()->at);
  planCorners();
}

/// A corner wherever the walker has gone on far enough; a poor fix makes none.
void BoundaryViewModel::follow() {
  if (!begun_ || way_ != Walk) return;
  const auto& here = locator_.here();
  const Metres limit{static_cast<double>(settings_.poorBeyond())};
  if (walking_ && here && !oaklight::poor(*here, limit)) {
    const bool far =
        corners_.empty() ||
        to_metres(oaklight::leg_between(corners_.back(), here->at).distance) >= kCornersApart;
    if (far) corners_.push_back(here->at);
  }
  drawMap();
  emit changed();
}

QString BoundaryViewModel::corners() const {
  if (corners_.empty()) return {};
  return corners_.size() == 1 ? tr("1 corner") : tr("%1 corners").arg(corners_.size());
}

/// The corners as an outline, closed by itself. Fewer than three bound nothing yet.
void BoundaryViewModel::planCorners() {
  outlines_ = {};
  plan_ = {};
  problem_.clear();
  drawMap();
  constexpr std::size_t kFewest = 3;
  if (corners_.size() < kFewest) {
    emit changed();
    return;
  }
  oaklight::DrawnOutline outline;
  outline.name = stand_.toStdString();
  outline.where = way_ == Walk ? "walk" : "map";
  outline.walked = way_ == Walk;
  outline.parts.push_back({corners_, {}});
  if (!outline.walked) outline.parts.front().outer.push_back(corners_.front());
  outlines_.outlines.push_back(std::move(outline));
  plan();
}

oaklight::BoundaryOptions BoundaryViewModel::options() const {
  oaklight::BoundaryOptions options;
  options.take_acres = take_area_;
  // A file of several outlines names them itself.
  if (outlines_.outlines.size() == 1) options.stand = stand_.toStdString();
  return options;
}

void BoundaryViewModel::plan() {
  plan_ =
      oaklight::plan_boundaries(desk_.live(), desk_.knowledge(), desk_.ids(), outlines_, options());
  problem_ = faults_text(plan_.faults);
  emit changed();
}

void BoundaryViewModel::setTakeArea(bool take) {
  if (take_area_ == take) return;
  take_area_ = take;
  if (!outlines_.outlines.empty()) plan();
  emit changed();
}

QStringList BoundaryViewModel::rows() const {
  QStringList lines;
  if (!sound()) return lines;
  const auto area = [this](oaklight::Acres acres) {
    return QString::fromStdString(oaklight::area_text(acres, settings_.system()));
  };
  for (const oaklight::BoundaryRow& row : plan_.rows) {
    const QString name = QString::fromStdString(row.stand);
    QString line = row.stated
                       ? tr("%1: %2 drawn, %3 stated").arg(name, area(row.drawn), area(*row.stated))
                       : tr("%1: %2 drawn, a new stand").arg(name, area(row.drawn));
    for (const std::string& note : row.notes)
      line += QStringLiteral(". ") + QString::fromStdString(note);
    lines << line;
  }
  return lines;
}

QString BoundaryViewModel::note() const {
  switch (way_) {
    case Draw:
      return tr(
          "Tap the corners in their order. A finger errs by many feet on a map of a whole "
          "tract: compare the area.");
    case Walk:
      if (!locator_.here()) return tr("No position yet: an outline is walked with a receiver.");
      return walking_ ? tr("Walk the line. A corner is set every 16 ft, 5 m; poor fixes set none.")
                      : tr("Start, walk all around, and stop where you began; or set each corner "
                           "by hand.");
    default:
      return tr(
          "GeoJSON, KML or GPX, laid in the folder of this tract or named by its whole path. "
          "Nothing is sent anywhere.");
  }
}

void BoundaryViewModel::keep() {
  if (!sound()) return;
  desk_.submit(
      [this, outlines = outlines_, options = options()]() -> oaklight::Result<oaklight::Action> {
        auto plan = oaklight::plan_boundaries(desk_.live(), desk_.knowledge(), desk_.ids(),
                                              outlines, options);
        if (!plan.faults.empty()) return plan.faults.front();
        return std::move(plan.action);
      },
      [this](const oaklight::Status& done) {
        problem_ = done ? QString() : sentence_of(done.error());
        emit changed();
        if (done) emit kept();
      });
}
