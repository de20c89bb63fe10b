#include "mobile/viewmodels/fit_list_model.hpp"

#include "core/measure/local_curves.hpp"
#include "core/paper/fit_chart.hpp"
#include "mobile/viewmodels/words.hpp"
#include "mobile/viewmodels/workspace.hpp"

using oaklight::CurveKind;

FitListModel::~FitListModel() = default;

void FitListModel::setWorkspace(Workspace* workspace) {
  if (workspace == workspace_ || workspace == nullptr) return;
  workspace_ = workspace;
  connect(&workspace->tract(), &TractDesk::changed, this, &FitListModel::refresh);
  connect(workspace->stand(), &StandViewModel::standsChanged, this, &FitListModel::refresh);
  emit workspaceChanged();
  refresh();
}

void FitListModel::refresh() {
  const auto& stands = workspace_->tract().data().stands;
  const int row = workspace_->stand()->stand();
  // The records are as they were when it was asked.
  background_.ask([this, data = workspace_->tract().snapshot(), row,
                   volumes = !workspace_->tract().knowledge().volumes.rows.empty(),
                   all = static_cast<int>(stands.size())]() -> Background::Answer {
    std::vector<Fit> fits;
    for (int i = 0; i < all; ++i) {
      if (row != 0 && row != i + 1) continue;
      const oaklight::Stand& stand = data->stands[static_cast<std::size_t>(i)];
      for (auto& curve : oaklight::crown_curves(data->walk_trees, stand.id))
        fits.push_back({stand.name, std::move(curve)});
    }
    for (auto& curve : oaklight::height_curves(*data)) fits.push_back({"", std::move(curve)});
    return [this, fits = std::move(fits), volumes] { fill(fits, volumes); };
  });
}

FitListModel::Row FitListModel::rowOf(const Fit& fit) const {
  const oaklight::SpeciesTable& species = workspace_->tract().knowledge().species();
  const oaklight::Species* own =
      fit.curve.fia ? species.find(oaklight::SpeciesCode{*fit.curve.fia}) : nullptr;
  const QString of = own == nullptr ? tr("all species") : name_of(*own);
  const QString title = fit.curve.kind == CurveKind::height
                            ? tr("Heights of the tract, %1").arg(of)
                            : tr("Crowns in %1, %2").arg(QString::fromStdString(fit.stand), of);
  return {title, Picture(
                     [curve = fit.curve, &species](const oaklight::PictureFrame& room) {
                       oaklight::PictureFrame frame = room;
                       frame.head = false;
                       return oaklight::draw_fit_chart(curve, species, frame);
                     },
                     tr("%1: the fitted curve with its %2 trees").arg(title).arg(fit.curve.trees))};
}

void FitListModel::fill(std::vector<Fit> fits, bool volumes) {
  beginResetModel();
  rows_.clear();
  for (const Fit& fit : fits) rows_.push_back(rowOf(fit));
  endResetModel();
  known_ = true;
  volumes_ = volumes;
  emit filled();
}

QString FitListModel::words() const {
  if (!known_) return {};
  QString words = rows_.empty()
                      ? tr("No local curve: that takes %1 measured trees. The book's crowns are "
                           "used, and trees without a height have none.")
                            .arg(oaklight::kCurveTrees)
                      : tr("Local curves, used before the book: of a species its own, else that of "
                           "all species.");
  if (volumes_) words += QLatin1Char(' ') + tr("Volumes by the tract's own table come first.");
  return words;
}

int FitListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

Picture FitListModel::pictureAt(int row) const {
  return row < 0 || row >= rowCount() ? Picture() : rows_[static_cast<std::size_t>(row)].picture;
}

QVariant FitListModel::data(const QModelIndex& index, int role) const {
  if (index.row() < 0 || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == TitleRole || role == Qt::DisplayRole) return row.title;
  return {};
}

QHash<int, QByteArray> FitListModel::roleNames() const {
  return {{TitleRole, "title"}};
}
