#include "mobile/viewmodels/marked_tree_view_model.hpp"

#include "core/place/position_text.hpp"
#include "mobile/viewmodels/mark_words.hpp"

using oaklight::Mark;
using oaklight::Severity;

MarkedTreeViewModel::MarkedTreeViewModel(const oaklight::TractKnowledge& knowledge, QObject* parent)
    : QObject(parent), knowledge_(knowledge) {}

const Mark* MarkedTreeViewModel::mark() const {
  return row_ && row_->mark ? &*row_->mark : nullptr;
}

QString MarkedTreeViewModel::title() const {
  if (!row_) return {};
  return QString::fromStdString(row_->tag) + QStringLiteral("  ") +
         tree_words(knowledge_, row_->facts);
}

QStringList MarkedTreeViewModel::cautions() const {
  QStringList lines;
  if (!row_) return lines;
  for (const oaklight::Caution& caution : row_->cautions) {
    const QString text = QString::fromStdString(caution.text);
    lines << (caution.severity == Severity::stop         ? tr("STOP. %1").arg(text)
              : caution.severity == Severity::extra_care ? tr("Extra care. %1").arg(text)
                                                         : text);
  }
  return lines;
}

QString MarkedTreeViewModel::beside() const {
  return row_ && row_->cautions.empty()
             ? tr("Nothing that is recorded of this tree calls for a caution. Look up and around "
                  "yourself all the same: no record shows everything.")
             : tr("Look up and around yourself too: no record shows everything.");
}

QString MarkedTreeViewModel::icon() const {
  return mark() == nullptr ? QStringLiteral("minus") : verdict_icon(mark()->verdict);
}
QString MarkedTreeViewModel::verdict() const {
  return mark() == nullptr ? tr("Not decided") : verdict_words(mark()->verdict);
}
QString MarkedTreeViewModel::reason() const {
  return mark() == nullptr ? tr("Decide its stand on the page Light.")
                           : QString::fromStdString(mark()->reason);
}
QString MarkedTreeViewModel::rules() const {
  return mark() == nullptr ? QString() : rule_words(mark()->rules);
}

QStringList MarkedTreeViewModel::facts() const {
  QStringList lines;
  if (!row_) return lines;
  const auto add = [&](const QString& name, const QString& value) {
    if (!value.isEmpty()) lines << tr("%1: %2").arg(name, value);
  };
  if (const Mark* decided = mark()) {
    add(tr("Method"), method_words(decided->method));
    add(tr("Product"), product_words(decided->product));
    add(tr("Goes to"), decided->destination ? reader_name(*decided->destination) : QString());
    add(tr("Decided"), decided->by_hand ? tr("by hand") : tr("by the rules"));
  }
  add(tr("Position"), row_->position
                          ? QString::fromStdString(oaklight::decimal_degrees_text(*row_->position))
                          : tr("not known"));
  return lines;
}

void MarkedTreeViewModel::choose(const oaklight::MarkRow& row) {
  row_ = row;
  emit changed();
}
