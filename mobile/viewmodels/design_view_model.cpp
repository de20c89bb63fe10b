#include "mobile/viewmodels/design_view_model.hpp"

#include <QDateTime>
#include <array>

#include "core/base/number_text.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/typed.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Cruise;
using oaklight::Dbh;
using oaklight::UnitSystem;

namespace {

// The sizes that crews use most; common practice. Any other is typed.
struct Usual {
  std::array<const char*, 5> factors;
  std::array<const char*, 5> areas;
  std::array<int, 4> least_tenths;  ///< smallest tree tallied; 0: every tree
  const char* seedling_area;        ///< a thousandth of an acre, or 4 m2
};
constexpr Usual kUs{{"5", "10", "15", "20", "40"},
                    {"0.2", "0.1", "0.05", "0.02", "0.01"},
                    {0, 10, 30, 50},
                    "0.001"};
constexpr Usual kMetric{
    {"1", "2", "3", "4", "5"}, {"0.1", "0.05", "0.04", "0.02", "0.01"}, {0, 30, 80, 120}, "0.0004"};
constexpr int kUsualSize = 1;  // 10 ft2/ac or 2 m2/ha; 0.1 ac or 0.05 ha
constexpr int kUsualLeast = 2;

const Usual& usual(UnitSystem system) { return system == UnitSystem::us ? kUs : kMetric; }

template <std::size_t N>
QStringList list_of(const std::array<const char*, N>& texts) {
  QStringList list;
  for (const char* text : texts) list << QString::fromLatin1(text);
  return list;
}

}  // namespace

DesignViewModel::DesignViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings) {
  begin();
  connect(&settings, &Settings::changed, this, [this] {
    if (begun_in_ != system()) begin();
    emit changed();
  });
}

void DesignViewModel::begin() {
  begun_in_ = system();
  typed_ = sizes()[kUsualSize];
  least_ = kUsualLeast;
  seedlings_ = 1;
  problem_.clear();
}

QStringList DesignViewModel::kinds() const {
  return {tr("By prism or gauge"), tr("Circles of one size")};
}

void DesignViewModel::setKind(int kind) {
  if (kind_ == kind) return;
  kind_ = kind == Fixed ? Fixed : Point;
  typed_ = sizes()[kUsualSize];
  problem_.clear();
  emit changed();
}

QString DesignViewModel::sizeLabel() const {
  const bool us = system() == UnitSystem::us;
  if (kind_ == Point) return us ? tr("Basal area factor, ft²/ac") : tr("Basal area factor, m²/ha");
  return us ? tr("Size of a plot, acres") : tr("Size of a plot, hectares");
}

QStringList DesignViewModel::sizes() const {
  return list_of(kind_ == Point ? usual(system()).factors : usual(system()).areas);
}

int DesignViewModel::size() const { return static_cast<int>(sizes().indexOf(typed_.trimmed())); }

void DesignViewModel::setSize(int row) { setTyped(sizes().value(row)); }

void DesignViewModel::setTyped(const QString& text) {
  if (typed_ == text) return;
  typed_ = text;
  problem_.clear();
  emit changed();
}

QStringList DesignViewModel::smallest() const {
  QStringList list;
  for (const int tenths : usual(system()).least_tenths) {
    if (tenths == 0) {
      list << tr("every tree");
      continue;
    }
    const QString size = QString::fromStdString(oaklight::number_text(tenths / 10.0, 0));
    list << (system() == UnitSystem::us ? tr("%1 in").arg(size) : tr("%1 cm").arg(size));
  }
  return list;
}

void DesignViewModel::setLeast(int row) {
  least_ = row;
  emit changed();
}

QStringList DesignViewModel::seedlingPlots() const {
  const QString area = QString::fromLatin1(usual(system()).seedling_area);
  return {tr("not counted"),
          system() == UnitSystem::us ? tr("on %1 acre").arg(area) : tr("on %1 hectare").arg(area)};
}

void DesignViewModel::setSeedlings(int row) {
  seedlings_ = row;
  emit changed();
}

oaklight::Result<Cruise> DesignViewModel::cruise() const {
  const auto size = number_typed(typed_);
  if (!size) return size.error();
  Cruise cruise;
  if (kind_ == Point) {
    cruise.design = oaklight::PointDesign{*size, system()};
  } else {
    cruise.design = oaklight::FixedDesign{*size, {}, {}, system()};
  }
  const int tenths = usual(system()).least_tenths[static_cast<std::size_t>(least_)];
  if (tenths > 0) cruise.min_dbh = *Dbh::from_tenths(tenths, system());
  if (seedlings_ > 0)
    cruise.regen_area = *oaklight::number_from_text(usual(system()).seedling_area);
  const int year = QDateTime::fromMSecsSinceEpoch(desk_.clock().now_ms()).date().year();
  cruise.name = tr("cruise of %1").arg(year).toStdString();
  return cruise;
}

QString DesignViewModel::summary() const {
  const auto draft = cruise();
  return draft ? figure_of(oaklight::design_text(draft->design)) : QString();
}

void DesignViewModel::save() {
  desk_.submit(
      [this]() -> oaklight::Result<oaklight::Action> {
        auto draft = cruise();
        if (!draft) return draft.error();
        return oaklight::add_cruise(desk_.live(), desk_.knowledge(), desk_.ids(),
                                    *std::move(draft));
      },
      [this](const oaklight::Status& added) {
        problem_ = added ? QString() : sentence_of(added.error());
        emit changed();
        if (added) emit saved();
      });
}
