#pragma once

#include "tests/store/store_fixture.hpp"
#include "tests/store/tablets.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {

/// Two tablets that started from one file of the office.
class Join : public StoreTest {
 protected:
  Join() {
    make_crew_file(folder_ / "base.gpkg", 1);
    const std::string base = bytes_of(folder_ / "base.gpkg");
    write_bytes(folder_ / "a.gpkg", base);
    write_bytes(folder_ / "b.gpkg", base);
  }
  /// Each call a minute later than the one before.
  TractStore on(const std::string& name) {
    clock_.ms += 60'000;
    auto opened = TractStore::open(folder_ / (name + ".gpkg"), OpenMode::read_write,
                                   context("tablet " + name));
    if (!opened) throw std::runtime_error(to_text(opened.error()));
    return *std::move(opened);
  }
  void act(const std::string& name, const std::string& label, std::vector<Change> changes) {
    auto store = on(name);
    ASSERT_TRUE(worked(store.apply({label, std::move(changes)})));
  }
  TractData data(const std::string& name) { return on(name).load().value(); }
  JoinReport joined(const std::string& into, const std::string& from) {
    auto store = on(into);
    auto report = store.join({folder_ / (from + ".gpkg")});
    EXPECT_TRUE(worked(report));
    EXPECT_TRUE(store.check().value().problems.empty());
    return report ? *report : JoinReport{};
  }
  Tree first_tree(const std::string& name) { return data(name).trees.front(); }
  Tree new_tree(const std::string& name, double inches) {
    auto store = on(name);
    Tree tree = store.load()->trees.front();
    tree.id = store.ids().next_id<TreeTag>();
    tree.facts.dbh = dbh_in(inches);
    return tree;
  }
  /// Both correct the first tree, each to a diameter of its own.
  void correct_on_both(double on_a, double on_b) {
    Tree tree = first_tree("a");
    tree.facts.dbh = dbh_in(on_a);
    act("a", "correct on a", {tree});
    tree.facts.dbh = dbh_in(on_b);
    act("b", "correct on b", {tree});
  }
};

}  // namespace oaklight::test
