#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>

#include "mobile/desk/background.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/look/settings.hpp"
#include "mobile/viewmodels/workspace.hpp"

/// The app: which tract is open, which page shows, and what this device's owner chose.
class AppModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("main() makes it")
  Q_PROPERTY(Settings* settings READ settings CONSTANT)
  Q_PROPERTY(Workspace* workspace READ workspace NOTIFY workspaceChanged)
  Q_PROPERTY(Page page READ page WRITE setPage NOTIFY pageChanged)
  Q_PROPERTY(QString pageSource READ pageSource NOTIFY pageChanged)         ///< relative to qml/
  Q_PROPERTY(QStringList pageNames READ pageNames NOTIFY pageNamesChanged)  ///< in Page's order;
                                                                            ///< "" is hidden
  Q_PROPERTY(QStringList recentNames READ recentNames NOTIFY workspaceChanged)
  /// A tract file is being read; what is open stays open until it is there.
  Q_PROPERTY(bool opening READ opening NOTIFY openingChanged)
  /// The tract files in the app's folder.
  Q_PROPERTY(QStringList fileNames READ fileNames NOTIFY filesChanged)
  /// Why the last file could not be opened, made or copied; "" when there is nothing to say.
  Q_PROPERTY(QString problem READ problem NOTIFY problemChanged)
  /// What was done with a file, "Copied to ..."; "" when there is nothing to say.
  Q_PROPERTY(QString notice READ notice NOTIFY problemChanged)

 public:
  enum class Page { Tract, Walk, Tally, Stand, Light, Marks, Stumps, Setup };
  Q_ENUM(Page)

  /// What decides where files go, the time and the chance; passed in so that a test decides it.
  struct Surroundings {
    QString folder;  ///< for tract files of this app
    TractDesk::Clocks clocks;
    QString receiver = {};  ///< of positions, as desk/receiver.hpp says; "": as Setup says
  };

  AppModel(Settings& settings, Surroundings surroundings, QObject* parent = nullptr);
  ~AppModel() override;

  [[nodiscard]] Settings* settings() { return &settings_; }
  [[nodiscard]] Locator& locator() { return locator_; }
  [[nodiscard]] Workspace* workspace() { return workspace_.get(); }
  [[nodiscard]] Page page() const { return page_; }
  void setPage(Page page);
  [[nodiscard]] QString pageSource() const;
  [[nodiscard]] QStringList pageNames() const;
  /// Name of the icon of the page of pageNames at that place.
  Q_INVOKABLE [[nodiscard]] QString pageIcon(int page) const;
  [[nodiscard]] QStringList recentNames() const;
  [[nodiscard]] bool opening() const { return opening_; }
  [[nodiscard]] QStringList fileNames() const;
  [[nodiscard]] QString folder() const { return surroundings_.folder; }
  [[nodiscard]] QString problem() const { return problem_; }
  [[nodiscard]] QString notice() const { return notice_; }

  /// The language changed: says all texts again.
  void retranslate();
  /// Opens the file that was open last, or else the demo tract.
  void openLast();
  /// Opens a tract file; it is there when opening() ends. A failure leaves the one that is open.
  Q_INVOKABLE void openFile(const QString& path);
  /// The file of recentNames at that place.
  Q_INVOKABLE void openRecent(int row);
  /// The file of fileNames at that place.
  Q_INVOKABLE void openNamed(int row);
  /// Looks again which files are in the folder.
  Q_INVOKABLE void lookForFiles();
  Q_INVOKABLE void openDemo();
  /// Makes a tract file of that name in the app's folder and opens it.
  Q_INVOKABLE void createTract(const QString& name);
  /// One clean file beside the open one, to give to a friend.
  Q_INVOKABLE void copyForFriend();

 signals:
  void workspaceChanged();
  void pageChanged();
  void pageNamesChanged();
  void problemChanged();
  void openingChanged();
  void filesChanged();

 private:
  /// Reads a file, on a thread of its own.
  using Read = std::function<oaklight::Result<ReadTract>()>;
  /// What follows once the file that was read is open.
  using Opened = std::function<void()>;
  [[nodiscard]] bool isOpen(const QString& path) const;
  void open(Read read, Opened opened = {});
  void rescue();
  void setOpening(bool opening);
  void nameTract(const QString& name);
  void take(ReadTract tract);
  void say(const QString& problem, const QString& notice);
  void lookForMarks();
  void useReceiver();

  Settings& settings_;
  Surroundings surroundings_;
  std::optional<QString> receiver_;  ///< in use
  Locator locator_;
  std::unique_ptr<Workspace> workspace_;
  Page page_ = Page::Tract;
  bool marked_ = false;  ///< some tree is marked, so that there can be stumps
  QString problem_;
  QString notice_;
  bool opening_ = false;
  Background reading_;
};
