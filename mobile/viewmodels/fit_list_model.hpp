#pragma once

#include <QtQml/qqmlregistration.h>
#include <QAbstractListModel>
#include <vector>

#include "core/model/local.hpp"
#include "mobile/desk/background.hpp"
#include "mobile/items/picture.hpp"

class Workspace;

/// The curves fitted to trees of the stand that is looked at, each drawn with its trees: crown
/// widths of the stand, heights of the tract. The page makes its own, and lives shorter than the
/// workspace.
class FitListModel : public QAbstractListModel {
  Q_OBJECT
  QML_ELEMENT
  Q_MOC_INCLUDE("mobile/viewmodels/workspace.hpp")
  Q_PROPERTY(Workspace* workspace READ workspace WRITE setWorkspace NOTIFY workspaceChanged)
  Q_PROPERTY(int count READ count NOTIFY filled)
  /// Which curves are used, or that the book's are; "" while nothing was measured.
  Q_PROPERTY(QString words READ words NOTIFY filled)

 public:
  enum Role { TitleRole = Qt::UserRole };

  explicit FitListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}
  ~FitListModel() override;

  [[nodiscard]] Workspace* workspace() const { return workspace_; }
  void setWorkspace(Workspace* workspace);
  [[nodiscard]] int count() const { return rowCount(); }
  [[nodiscard]] QString words() const;
  Q_INVOKABLE [[nodiscard]] Picture pictureAt(int row) const;
  [[nodiscard]] bool busy() const { return background_.busy(); }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

 signals:
  void workspaceChanged();
  void filled();

 private:
  /// A curve, and the stand whose crowns it is of; "" of the tract.
  struct Fit {
    std::string stand;
    oaklight::LocalCurve curve;
  };
  struct Row {
    QString title;
    Picture picture;
  };

  void refresh();
  void fill(std::vector<Fit> fits, bool volumes);
  [[nodiscard]] Row rowOf(const Fit& fit) const;

  Workspace* workspace_ = nullptr;
  std::vector<Row> rows_;
  bool known_ = false;
  bool volumes_ = false;   ///< the tract has a volume table of its own
  Background background_;  ///< last, so that its work ends before what it answers to goes
};
