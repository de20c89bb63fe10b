#include "mobile/viewmodels/mark_words.hpp"

#include <QCoreApplication>

#include "core/base/number_text.hpp"
#include "core/session/plot_work.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::Method;
using oaklight::Product;
using oaklight::Side;
using oaklight::Verdict;

namespace {

QString words(const char* text) { return QCoreApplication::translate("Marks", text); }

}  // namespace

QString verdict_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::take:
      return words(QT_TRANSLATE_NOOP("Marks", "Take"));
    case Verdict::keep:
      return words(QT_TRANSLATE_NOOP("Marks", "Keep"));
    case Verdict::kill_standing:
      return words(QT_TRANSLATE_NOOP("Marks", "Kill standing"));
    case Verdict::look_again:
      break;
  }
  return words(QT_TRANSLATE_NOOP("Marks", "Look again"));
}

QString verdict_icon(Verdict verdict) {
  switch (verdict) {
    case Verdict::take:
      return QStringLiteral("take");
    case Verdict::keep:
      return QStringLiteral("keep");
    case Verdict::kill_standing:
      return QStringLiteral("kill");
    case Verdict::look_again:
      break;
  }
  return QStringLiteral("look");
}

QString method_words(Method method) {
  switch (method) {
    case Method::fell:
      return words(QT_TRANSLATE_NOOP("Marks", "fell by hand"));
    case Method::machine_fell:
      return words(QT_TRANSLATE_NOOP("Marks", "fell by machine"));
    case Method::girdle:
      return words(QT_TRANSLATE_NOOP("Marks", "girdle"));
    case Method::none:
      break;
  }
  return {};
}

QString product_words(Product product) {
  switch (product) {
    case Product::sawlog:
      return words(QT_TRANSLATE_NOOP("Marks", "sawlog"));
    case Product::pulpwood:
      return words(QT_TRANSLATE_NOOP("Marks", "pulpwood"));
    case Product::firewood:
      return words(QT_TRANSLATE_NOOP("Marks", "firewood"));
    case Product::none:
      break;
  }
  return {};
}

QString reader_name(oaklight::PacketReader reader) {
  switch (reader) {
    case oaklight::PacketReader::logger:
      return words(QT_TRANSLATE_NOOP("Marks", "logger"));
    case oaklight::PacketReader::firewood:
      return words(QT_TRANSLATE_NOOP("Marks", "firewood cutter"));
    case oaklight::PacketReader::standing:
      return words(QT_TRANSLATE_NOOP("Marks", "girdler"));
    case oaklight::PacketReader::owner:
      break;
  }
  return words(QT_TRANSLATE_NOOP("Marks", "owner"));
}

QString reader_name(oaklight::Reader destination) {
  return reader_name(destination == oaklight::Reader::logger ? oaklight::PacketReader::logger
                                                             : oaklight::PacketReader::firewood);
}

QString tree_words(const oaklight::TractKnowledge& knowledge, const oaklight::TreeFacts& facts) {
  const auto* species = knowledge.species().find(facts.species);
  return (species == nullptr ? QString::number(facts.species.fia) : name_of(*species)) +
         QLatin1Char(' ') + QString::fromStdString(oaklight::dbh_text(facts.dbh));
}

QString light_words(const oaklight::Light& light) {
  return QString::fromStdString(oaklight::number_text(light.open.value, 0)) +
         QStringLiteral("\u00a0%");
}

QString sides_words(const oaklight::Light& light) {
  QString text = words(QT_TRANSLATE_NOOP("Marks", "%1 of 4 sides free")).arg(light.sides_free);
  if (light.sides_unknown > 0) {
    text += words(QT_TRANSLATE_NOOP("Marks", ", %1 not known")).arg(light.sides_unknown);
  }
  return text;
}

QString side_letter(Side side) {
  switch (side) {
    case Side::north:
      return words(QT_TRANSLATE_NOOP("Marks", "N"));
    case Side::east:
      return words(QT_TRANSLATE_NOOP("Marks", "E"));
    case Side::south:
      return words(QT_TRANSLATE_NOOP("Marks", "S"));
    case Side::west:
      break;
  }
  return words(QT_TRANSLATE_NOOP("Marks", "W"));
}

QString rule_words(const std::vector<std::string>& rules) {
  QStringList names;
  for (const std::string& rule : rules) names << QString::fromStdString(rule);
  return names.join(QStringLiteral(", "));
}
