#include "mobile/desk/tract_desk.hpp"

#include <utility>

using oaklight::Action;
using oaklight::Change;
using oaklight::DamageCheck;
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

Result<ReadTract> read_whole(Result<TractStore> store) {
  if (!store) return store.error();
  auto knowledge = oaklight::read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  auto data = store->load();
  if (!data) return data.error();
  return ReadTract{*std::move(store), oaklight::LiveTract(*std::move(data)), *std::move(knowledge)};
}

}  // namespace

Result<ReadTract> TractDesk::read(const std::filesystem::path& path, const Clocks& clocks) {
  auto store =
      TractStore::open(path, OpenMode::read_write, context_of(clocks), DamageCheck::by_caller);
  if (!store && may_be_looked_at(store.error())) {
    store = TractStore::open(path, OpenMode::read_only, context_of(clocks), DamageCheck::by_caller);
  }
  return read_whole(std::move(store));
}

Result<ReadTract> TractDesk::create(const std::filesystem::path& path, const Clocks& clocks) {
  return read_whole(TractStore::create(path, context_of(clocks)));
}

TractDesk::TractDesk(ReadTract tract, const Clocks& clocks)
    : clocks_(clocks),
      path_(tract.store.path()),
      read_only_(tract.store.mode() == OpenMode::read_only),
      live_(std::move(tract.live)),
      knowledge_(std::move(tract.knowledge)),
      ids_(clocks.clock, clocks.random) {
  // Ids made here come after every id in the file, as the store's own do.
  ids_.resume_after(tract.store.ids().next());
  if (const auto state = tract.store.undo_state()) undo_state_ = *state;
  writer_ = std::make_unique<TractWriter>(std::move(tract.store));
}

StoreContext TractDesk::context() const { return context_of(clocks_); }

TractDesk::~TractDesk() { stop_check_.request_stop(); }

void TractDesk::lookForDamage() {
  if (checked_ || check_.busy()) return;
  check_.ask([this, path = path_, context = context_of(clocks_),
              stop = stop_check_.get_token()]() -> Background::Answer {
    const auto store = TractStore::open(path, OpenMode::read_only, context, DamageCheck::by_caller);
    const Status sound = store ? store->find_damage(stop) : store.error();
    return [this, sound] { settleSoundness(sound); };
  });
}

void TractDesk::settleSoundness(const Status& sound) {
  checked_ = true;
  if (!sound) {
    damage_ = sound.error();
    emit damageFound();
  }
  for (const Then& then : std::exchange(wait_for_check_, {})) then(sound);
}

void TractDesk::whenSound(Then then) {
  if (checked_) return then(damage_ ? Status(*damage_) : oaklight::Done{});
  wait_for_check_.push_back(std::move(then));
  lookForDamage();
}

void TractDesk::submit(Maker make, Then then) { add({std::move(make), std::move(then)}); }
void TractDesk::submitWork(Work work, Then then) { add({std::move(work), std::move(then)}); }
void TractDesk::undo() { add({Replay::undo, {}}); }
void TractDesk::redo() { add({Replay::redo, {}}); }

void TractDesk::add(Job job) {
  if (const auto& stopped = damage_ ? damage_ : not_saved_) {
    if (job.then) job.then(*stopped);
    return;
  }
  jobs_.push_back(std::move(job));
  if (jobs_.size() == 1) start();
}

void TractDesk::submitLong(LongMaker make, Then then) {
  long_jobs_.push_back({std::move(make), std::move(then)});
  if (long_jobs_.size() == 1) workOut();
}

void TractDesk::workOut() {
  const auto records = snapshot();
  // Ids of its own, since those of the desk belong to the screen's thread.
  oaklight::IdSource ids(clocks_.clock, clocks_.random);
  ids.resume_after(ids_.next());
  working_out_.ask([this, records, ids = std::move(ids),
                    make = long_jobs_.front().make]() mutable -> Background::Answer {
    auto action = std::make_shared<Result<Action>>(make(*records, ids));
    return [this, records, action, last = ids.next()] {
      if (records != snapshot() || !jobs_.empty()) return workOut();
      ids_.resume_after(last);
      LongJob job = std::move(long_jobs_.front());
      long_jobs_.pop_front();
      submit([action] { return *action; }, std::move(job.then));
      if (!long_jobs_.empty()) workOut();
    };
  });
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
  } else if (const auto* work = std::get_if<Work>(&written)) {
    outcome.changes = (*work)(store);
  } else {
    outcome.changes = std::get<Replay>(written) == Replay::undo ? store.undo() : store.redo();
  }
  outcome.took = std::chrono::duration_cast<std::chrono::microseconds>(
      std::chrono::steady_clock::now() - begin);
  if (const auto state = store.undo_state()) outcome.undo_state = *state;
  return outcome;
}

void TractDesk::start() {
  if (damage_) return finish({*damage_, undo_state_, {}});
  const auto& what = jobs_.front().what;
  if (const auto* replay = std::get_if<Replay>(&what)) return post(*replay);
  if (const auto* work = std::get_if<Work>(&what)) return post(*work);
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
    emit changed(*outcome.changes);
  } else if (outcome.changes.error().code != ErrorCode::nothing_to_undo) {
    emit refused(outcome.changes.error());
  }
  emit undoStateChanged();
  if (job.then) job.then(outcome.changes ? Status(oaklight::Done{}) : outcome.changes.error());
}

void TractDesk::settle() {
  // What cannot be brought over now is safe in the log, and is brought over when the file closes.
  writer_->post([](TractStore& store) { (void)store.settle(); });
}

void TractDesk::copyTo(const std::filesystem::path& target, Then then) {
  whenSound([this, target, then = std::move(then)](const Status& sound) {
    if (!sound) return then(sound);
    writer_->post([this, target, then](TractStore& store) {
      QMetaObject::invokeMethod(
          this, [then, copied = store.copy_to(target)] { then(copied); }, Qt::QueuedConnection);
    });
  });
}
