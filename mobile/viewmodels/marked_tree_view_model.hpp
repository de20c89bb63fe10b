#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include <optional>

#include "core/session/marks_view.hpp"

/// One tree of the marking walk as it is handed over: its cautions first, then what is decided.
class MarkedTreeViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("MarksViewModel owns it")
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< "" when none is open
  /// "STOP. ...", stops first; what no record can show is in `beside`.
  Q_PROPERTY(QStringList cautions READ cautions NOTIFY changed)
  Q_PROPERTY(QString beside READ beside NOTIFY changed)
  Q_PROPERTY(QString icon READ icon NOTIFY changed)
  Q_PROPERTY(QString verdict READ verdict NOTIFY changed)
  Q_PROPERTY(QString reason READ reason NOTIFY changed)
  Q_PROPERTY(QString rules READ rules NOTIFY changed)
  Q_PROPERTY(QStringList facts READ facts NOTIFY changed)  ///< "Method: girdle", a line each

 public:
  /// knowledge  must outlive it
  explicit MarkedTreeViewModel(const oaklight::TractKnowledge& knowledge,
                               QObject* parent = nullptr);

  [[nodiscard]] QString title() const;
  [[nodiscard]] QStringList cautions() const;
  [[nodiscard]] QString beside() const;
  [[nodiscard]] QString icon() const;
  [[nodiscard]] QString verdict() const;
  [[nodiscard]] QString reason() const;
  [[nodiscard]] QString rules() const;
  [[nodiscard]] QStringList facts() const;

  void choose(const oaklight::MarkRow& row);

 signals:
  void changed();

 private:
  [[nodiscard]] const oaklight::Mark* mark() const;

  const oaklight::TractKnowledge& knowledge_;
  std::optional<oaklight::MarkRow> row_;
};
