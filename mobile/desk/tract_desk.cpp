#include "mobile/desk/tract_desk.hpp"

#include <utility>

using oaklight::Action;
using oaklight::Change;
using oaklight::Error;
using oaklight::ErrorCode;
using oaklight::OpenMode;
using oaklight::Result;
using oaklight::Status;
using oaklight::StoreContext;
using oaklight::TractStore;
using oaklight::UndoState;

namespace {

/// A disk may recover, so what failed on it is kept for another try; all else was the action's own
/// fault and is refused for good.
bool is_of_the_disk(const Error& error) {
  return error.code == ErrorCode::disk_full || error.code == ErrorCode::io_failed ||
         error.code == ErrorCode::busy;
}

bool may_be_looked_at(const Error& error) {
  return error.code == ErrorCode::busy || error.code == ErrorCode::read_only ||
         error.code == ErrorCode::cannot_write;
}

StoreContext context_of(const TractDesk::Clocks& clocks) {
  return {clocks.clock, clocks.random, clocks.device};
}

}  // namespace

Result<std::unique_ptr<TractDesk>> TractDesk::open(const std::filesystem::path& path,
                                                   const Clocks& clocks) {
  auto store = TractStore::open(path, OpenMode::read_write, context_of(clocks));
  if (!store && may_be_looked_at(store.error())) {
    store = TractStore::open(path, OpenMode::read_only, context_of(clocks));
  }
  return settle(std::move(store), clocks);
}

Result<std::unique_ptr<TractDesk>> TractDesk::create(const std::filesystem::path& path,
                                                     const Clocks& clocks) {
  return settle(TractStore::create(path, context_of(clocks)), clocks);
}

Result<std::unique_ptr<TractDesk>> TractDesk::settle(Result<TractStore> store,
                                                     const Clocks& clocks) {
  if (!store) return store.error();
  auto knowledge = oaklight::read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  auto data = store->load();
  if (!data) return data.error();
  return std::unique_ptr<TractDesk>(
      new TractDesk(*std::move(store), *std::move(data), *std::move(knowledge), clocks));
}

TractDesk::TractDesk(TractStore store, oaklight::TractData data, oaklight::TractKnowledge knowledge,
                     const Clocks& clocks)
    : clock_(clocks.clock),
      path_(store.path()),
      read_only_(store.mode() == OpenMode::read_only),
      live_(std::move(data)),
      knowledge_(std::move(knowledge)),
      ids_(clocks.clock, clocks.random) {
  // Ids made here come after every id in the file, as the store's own do.
  ids_.resume_after(store.ids().next());
  if (const auto state = store.undo_state()) undo_state_ = *state;
  writer_ = std::make_unique<TractWriter>(std::move(store));
}

TractDesk::~TractDesk() = default;

void TractDesk::submit(Maker make, Then then) { add({std::move(make), std::move(then)}); }
void TractDesk::undo() { add({Replay::undo, {}}); }
void TractDesk::redo() { add({Replay::redo, {}}); }

void TractDesk::add(Job job) {
  if (not_saved_) {
    if (job.then) job.then(*not_saved_);
    return;
  }
  jobs_.push_back(std::move(job));
  if (jobs_.size() == 1) start();
}

void TractDesk::retry() {
  if (!not_saved_) return;
  not_saved_.reset();
  emit notSavedChanged();
  post(*pending_);
}

void TractDesk::giveUp() {
  if (!not_saved_) return;
  const Error error = *std::exchange(not_saved_, std::nullopt);
  const auto jobs = std::exchange(jobs_, {});
  emit notSavedChanged();
  for (const Job& job : jobs) {
    if (job.then) job.then(error);
  }
}

/// On the writer's thread.
TractDesk::Outcome TractDesk::run(TractStore& store, const Written& written) {
  const auto begin = std::chrono::steady_clock::now();
  Outcome outcome{std::vector<Change>{}, {}, {}};
  if (const auto* action = std::get_if<Action>(&written)) {
    const Status applied = store.apply(*action);
    if (applied) {
      outcome.changes = action->changes;
    } else {
      outcome.changes = applied.error();
    }
  } else {
    outcome.changes = std::get<Replay>(written) == Replay::undo ? store.undo() : store.redo();
  }
  outcome.took = std::chrono::duration_cast<std::chrono::microseconds>(
      std::chrono::steady_clock::now() - begin);
  if (const auto state = store.undo_state()) outcome.undo_state = *state;
  return outcome;
}

void TractDesk::start() {
  const auto& what = jobs_.front().what;
  if (const auto* replay = std::get_if<Replay>(&what)) return post(*replay);
  auto made = std::get<Maker>(what)();
  if (made) return post(*std::move(made));
  finish({made.error(), undo_state_, {}});
}

void TractDesk::post(Written written) {
  pending_ = std::move(written);
  writer_->post([this, copy = *pending_](TractStore& store) {
    // The desk outlives its writer, and waits for it when it goes.
    QMetaObject::invokeMethod(
        this, [this, outcome = run(store, copy)] { finish(outcome); }, Qt::QueuedConnection);
  });
}

void TractDesk::finish(const Outcome& outcome) {
  last_commit_ = outcome.took;
  if (!outcome.changes && is_of_the_disk(outcome.changes.error())) {
    not_saved_ = outcome.changes.error();
    emit notSavedChanged();
    return;
  }
  const Job job = std::move(jobs_.front());
  jobs_.pop_front();
  // What follows may hand in more, which starts by itself when nothing waits.
  if (!jobs_.empty()) start();
  undo_state_ = outcome.undo_state;
  if (outcome.changes) {
    live_.follow(*outcome.changes);
    snapshot_.reset();
    emit changed(*outcome.changes);
  } else if (outcome.changes.error().code != ErrorCode::nothing_to_undo) {
    emit refused(outcome.changes.error());
  }
  emit undoStateChanged();
  if (job.then) job.then(outcome.changes ? Status(oaklight::Done{}) : outcome.changes.error());
}

void TractDesk::copyTo(const std::filesystem::path& target, Then then) {
  writer_->post([this, target, then = std::move(then)](TractStore& store) {
    QMetaObject::invokeMethod(
        this, [then, copied = store.copy_to(target)] { then(copied); }, Qt::QueuedConnection);
  });
}

std::shared_ptr<const oaklight::TractData> TractDesk::snapshot() const {
  if (snapshot_ == nullptr) snapshot_ = std::make_shared<const oaklight::TractData>(data());
  return snapshot_;
}
