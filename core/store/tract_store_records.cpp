// Reading and writing what a tract file holds.
#include <algorithm>
#include <functional>

#include "core/base/utf8.hpp"
#include "core/store/forms_in_file.hpp"
#include "core/store/history.hpp"
#include "core/store/links.hpp"
#include "core/store/records.hpp"
#include "core/store/records_changed.hpp"
#include "core/store/tract_store_impl.hpp"
#include "core/store/tree_stream.hpp"

namespace oaklight {
namespace {

using store::ActionWriter;
using store::Fields;
using store::Row;

constexpr std::string_view table_of(const StandId&) { return Fields<Stand>::kTable; }
constexpr std::string_view table_of(const CruiseId&) { return Fields<Cruise>::kTable; }
constexpr std::string_view table_of(const PlotId&) { return Fields<Plot>::kTable; }
constexpr std::string_view table_of(const TreeId&) { return Fields<Tree>::kTable; }
constexpr std::string_view table_of(const RegenId&) { return Fields<Regen>::kTable; }
constexpr std::string_view table_of(const WalkTreeId&) { return Fields<WalkTree>::kTable; }
constexpr std::string_view table_of(const ContactId&) { return Fields<Contact>::kTable; }
constexpr std::string_view table_of(const MarkId&) { return Fields<Mark>::kTable; }
constexpr std::string_view table_of(const MapLineId&) { return Fields<MapLine>::kTable; }
constexpr std::string_view table_of(const StumpId&) { return Fields<Stump>::kTable; }
constexpr std::string_view table_of(const AcornCountId&) { return Fields<AcornCount>::kTable; }
constexpr std::string_view table_of(const AcornYearId&) { return Fields<AcornYear>::kTable; }

Error no_tract(const store::SqliteHandle& db) {
  return {ErrorCode::damaged, "The file holds no tract.", db.path().string() + "/tract",
          "Keep this file; rescue what it holds, or work on from your newest copy."};
}

/// Reads all that a tract holds, at one moment.
class TractReader {
 public:
  TractReader(store::SqliteHandle& db, const store::RecordTables& tables, bool verified)
      : db_(db), tables_(tables), verified_(verified) {}

  /// trees reads those, when what they may belong to has been read.
  Result<TractData> read(const std::function<Status(TractData&)>& trees);

  /// Adds every record of one table that is in use.
  template <class R>
  Status table(std::vector<R>& records) const {
    return each<R>("uid", [&](R record) -> Status {
      records.push_back(std::move(record));
      return Done{};
    });
  }

  /// Hands over the trees in this order of rows; false when they do not come plot by plot so.
  Result<bool> stream(const TractData& data, const TreeStream& to, std::string_view order);

 private:
  template <class R, class Use>
  Status each(std::string_view order, Use use) const {
    const store::RecordTable& table = tables_.find(Fields<R>::kTable)->second;
    return table.each(db_, order, [&](const Row& row) -> Status {
      if (verified_) {
        if (const auto sound = table.verify(row); !sound) return sound;
      }
      if (!table.is_live(row)) return Done{};
      auto record = store::record_of<R>(table, row);
      if (!record) return record.error();
      return use(*std::move(record));
    });
  }

  store::SqliteHandle& db_;
  const store::RecordTables& tables_;
  bool verified_;
  bool trees_have_plots_ = false;  ///< each tree's plot was looked up as it was read
};

Result<bool> TractReader::stream(const TractData& data, const TreeStream& to,
                                 std::string_view order) {
  std::vector<Tree> plot;  // the trees of one
  bool in_order = true;
  trees_have_plots_ = true;
  const auto hand_over = [&]() -> Status {
    if (plot.empty()) return Done{};
    const bool has_plot = std::ranges::binary_search(data.plots, plot.front().plot, {}, &Plot::id);
    trees_have_plots_ = trees_have_plots_ && has_plot;
    std::ranges::sort(plot, {}, &Tree::id);
    for (const Tree& tree : plot) {
      if (!has_plot && verified_) break;  // damage, told when all was read
      if (const auto taken = to.take(tree); !taken) return taken;
    }
    plot.clear();
    return Done{};
  };
  const auto read = each<Tree>(order, [&](Tree tree) -> Status {
    if (!in_order) return Done{};
    if (!plot.empty() && plot.back().plot != tree.plot) {
      in_order = plot.back().plot < tree.plot;
      if (!in_order) return Done{};
      if (const auto done = hand_over(); !done) return done;
    }
    plot.push_back(std::move(tree));
    return Done{};
  });
  if (!read) return read.error();
  if (!in_order) return false;
  if (const auto done = hand_over(); !done) return done.error();
  return true;
}

Result<TractData> TractReader::read(const std::function<Status(TractData&)>& trees) {
  TractData data;
  std::vector<Tract> tracts;
  std::vector<Error> broken_links;
  const auto read = db_.snapshot([&]() -> Status {
    Status status = table(tracts);
    if (status) status = table(data.stands);
    if (status) status = table(data.cruises);
    if (status) status = table(data.plots);
    if (status) status = table(data.regens);
    if (status) status = table(data.walk_trees);
    if (status) status = table(data.contacts);
    if (status) status = table(data.marks);
    if (status) status = table(data.lines);
    if (status) status = table(data.stumps);
    if (status) status = table(data.acorn_counts);
    if (status) status = table(data.acorn_years);
    if (status) status = trees(data);
    if (!status || !verified_) return status;
    auto links = store::find_broken_links(db_, tables_, trees_have_plots_ ? "tree" : "");
    if (!links) return links.error();
    broken_links = std::move(*links);
    return Done{};
  });
  if (!read) return read.error();
  if (!broken_links.empty()) return broken_links.front();
  if (tracts.empty()) return no_tract(db_);
  data.tract = std::move(tracts.front());
  return data;
}

/// Runs one change of an action.
struct ChangeApplier {
  store::SqliteHandle& db;
  ActionWriter& writer;

  Status operator()(const Tract& tract) const {
    const auto row = db.first("SELECT uid FROM tract WHERE deleted = 0 ORDER BY uid LIMIT 1");
    if (!row) return row.error();
    std::string uid;
    if (!row->has_value() || !store::from_value((**row)[0], uid)) return no_tract(db);
    return writer.put(uid, tract);
  }
  template <class R>
  Status operator()(const R& record) const {
    if (record.id.is_nil()) {
      return Error{ErrorCode::missing_value, "A record has no id.", std::string(Fields<R>::kTable),
                   "Take one from the store's ids()."};
    }
    return writer.put(to_text(record.id), record);
  }
  Status operator()(const Remove& removal) const {
    return std::visit([&](const auto& id) { return writer.remove(table_of(id), to_text(id)); },
                      removal.id);
  }
};

}  // namespace

Result<TractData> TractStore::load() const {
  TractReader reader{impl_->db, impl_->tables, impl_->damage_check == DamageCheck::on_opening};
  return reader.read([&](TractData& data) { return reader.table(data.trees); });
}

Result<TractData> TractStore::load(const TreeStream& trees) const {
  TractReader reader{impl_->db, impl_->tables, impl_->damage_check == DamageCheck::on_opening};
  return reader.read([&](TractData& data) -> Status {
    for (const std::string_view order : {"fid", "plot_uid"}) {
      if (const auto begun = trees.begin(data); !begun) return begun;
      const auto in_order = reader.stream(data, trees, order);
      if (!in_order) return in_order.error();
      if (*in_order) break;
    }
    return Done{};
  });
}

Status TractStore::apply(const Action& action) {
  if (impl_->mode == OpenMode::read_only) return impl_->read_only_error();
  if (!is_utf8(action.label)) {
    return Error{ErrorCode::not_a_choice, "The label is not valid UTF-8.", "label",
                 "Save the file it came from as UTF-8."};
  }
  return impl_->db.transaction([&]() -> Status {
    ActionWriter writer(impl_->db, impl_->tables, utc_text(impl_->clock.now_ms()));
    const ChangeApplier applier{impl_->db, writer};
    for (const Change& change : action.changes) {
      if (const auto applied = std::visit(applier, change); !applied) return applied;
    }
    return writer.finish(impl_->ids.next(), impl_->device, action.label, HistoryKind::action,
                         std::nullopt);
  });
}

Result<std::vector<Change>> TractStore::replay(HistoryKind kind) {
  if (impl_->mode == OpenMode::read_only) return impl_->read_only_error();
  const bool undo = kind == HistoryKind::undo;
  std::vector<Change> records;
  const auto done = impl_->db.transaction([&]() -> Status {
    const auto found = undo ? store::next_undo(impl_->db, impl_->device)
                            : store::next_redo(impl_->db, impl_->device);
    if (!found) return found.error();
    if (!found->has_value()) {
      return Error{ErrorCode::nothing_to_undo,
                   undo ? "There is nothing to undo." : "There is nothing to do again.", "", ""};
    }
    ActionWriter writer(impl_->db, impl_->tables, utc_text(impl_->clock.now_ms()));
    if (const auto replayed = writer.replay((**found).uid, kind); !replayed) return replayed;
    auto now = store::records_as_changed(writer.changes());
    if (!now) return now.error();
    records = *std::move(now);
    return writer.finish(impl_->ids.next(), impl_->device, (**found).label, kind, (**found).uid);
  });
  if (!done) return done.error();
  return records;
}

Result<std::vector<Change>> TractStore::undo() { return replay(HistoryKind::undo); }
Result<std::vector<Change>> TractStore::redo() { return replay(HistoryKind::redo); }

Result<UndoState> TractStore::undo_state() const {
  UndoState state;
  const auto undo = store::next_undo(impl_->db, impl_->device);
  if (!undo) return undo.error();
  const auto redo = store::next_redo(impl_->db, impl_->device);
  if (!redo) return redo.error();
  if (undo->has_value()) state.undo = (**undo).label;
  if (redo->has_value()) state.redo = (**redo).label;
  return state;
}

Result<std::vector<HistoryEntry>> TractStore::history(std::size_t limit) const {
  return store::read_history(impl_->db, static_cast<std::int64_t>(limit));
}

Result<std::vector<std::string>> TractStore::form_paths() const {
  std::vector<std::string> paths;
  const auto walked = impl_->db.each("SELECT path FROM form_file WHERE deleted = 0 ORDER BY path",
                                     {}, [&](const Row& row) -> Status {
                                       store::from_value(row[0], paths.emplace_back());
                                       return Done{};
                                     });
  if (!walked) return walked.error();
  return paths;
}

Result<store::FormFile> TractStore::Impl::form(std::string_view path) {
  const auto uid =
      db.first("SELECT uid FROM form_file WHERE path = ?1 AND deleted = 0", {std::string(path)});
  if (!uid) return uid.error();
  std::string text;
  if (!uid->has_value() || !store::from_value((**uid)[0], text)) {
    return Error{ErrorCode::missing_rule, "The tract file has no such form.", std::string(path),
                 "Make a new tract file with this Oaklight, or choose another form."};
  }
  const store::RecordTable& table = tables.find(Fields<store::FormFile>::kTable)->second;
  const auto row = table.find(db, text);
  if (!row) return row.error();
  return store::record_of<store::FormFile>(table, **row);
}

Result<std::string> TractStore::form_text(std::string_view form_path) const {
  const auto form = impl_->form(form_path);
  if (!form) return form.error();
  return form->text;
}

Status TractStore::set_form_text(std::string_view form_path, std::string text) {
  if (impl_->mode == OpenMode::read_only) return impl_->read_only_error();
  return impl_->db.transaction([&]() -> Status {
    auto form = impl_->form(form_path);
    if (!form) return form.error();
    store::set_text(*form, std::move(text));
    ActionWriter writer(impl_->db, impl_->tables, utc_text(impl_->clock.now_ms()));
    if (const auto put = writer.put(to_text(form->id), *form); !put) return put;
    return writer.finish(impl_->ids.next(), impl_->device, "change " + form->path,
                         HistoryKind::action, std::nullopt);
  });
}

}  // namespace oaklight
