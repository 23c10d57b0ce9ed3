#include <doctest/doctest.h>

#include "base/text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

struct Two {
  Id<Piece> first;
  Id<Piece> second;
  Id<Character> cord;
  Id<Character> tips;
};

Result<store::Store> begun(const ShowFolder& folder) {
  REQUIRE(store::create(folder.path()));
  auto store = store::Store::open(folder.path(), store::Access::change);
  REQUIRE(store);
  return store;
}

Two begin(store::Store& store) {
  const auto show = store.load();
  Change change(*show, "import", "two pieces");
  const Two two{change.add(Piece{.number = "ES 1"}), change.add(Piece{.number = "ES 2"}),
                change.add(Character{.key = "cord"}), change.add(Character{.key = "tips"})};
  REQUIRE(store.apply(change, "ines", 1));
  return two;
}

Result<Done> note(store::Store& store, Id<Piece> piece, Id<Character> of, const char* value) {
  const auto show = store.load();
  Change change(*show, "note", "seen");
  change.add(Observation{.piece = piece, .character = of, .value = change.word(value)});
  return store.apply(change, "tablet", 2);
}

}  // namespace

TEST_CASE("what somebody else changed since one looked is not written over") {
  const ShowFolder folder;
  auto store = begun(folder);
  const Two two = begin(*store);
  const std::int64_t seen = store->load()->position;
  REQUIRE(note(*store, two.first, two.cord, "braided leather"));
  store->expect({.seen = seen});
  const auto clash = note(*store, two.first, two.cord, "vinyl");
  REQUIRE_FALSE(clash);
  CHECK(clash.problem().fault == Fault::conflict);
  CHECK(clash.problem().what == "ES 1 was changed by tablet meanwhile");
  CHECK(clash.problem().where == "ES 1");
  CHECK(store->load()->all<Observation>().size() == 1);
  SUBCASE("another character of the same piece is no clash") {
    CHECK(note(*store, two.first, two.tips, "cone"));
  }
  SUBCASE("another piece is no clash") {
    CHECK(note(*store, two.second, two.cord, "vinyl"));
  }
  SUBCASE("who has seen the change may go on") {
    store->expect({.seen = seen + 1});
    CHECK(note(*store, two.first, two.cord, "vinyl"));
  }
}

TEST_CASE("a record that two people write anew is a clash for the second") {
  const ShowFolder folder;
  auto store = begun(folder);
  const Two two = begin(*store);
  const std::int64_t seen = store->load()->position;
  const auto retitle = [&](const char* title) {
    const auto show = store->load();
    Change change(*show, "edit", "title");
    change.replace(Piece{.id = two.first, .number = "ES 1", .title = title});
    return store->apply(change, "desk", 3);
  };
  REQUIRE(retitle("Scallop slide"));
  store->expect({.seen = seen});
  const auto clash = retitle("Scallop clasp");
  REQUIRE_FALSE(clash);
  CHECK(clash.problem().fault == Fault::conflict);
  CHECK(store->load()->piece("ES 1")->title == "Scallop slide");
}

TEST_CASE("a request of one name is done once, and its answer is kept beside it") {
  const ShowFolder folder;
  auto store = begun(folder);
  const Two two = begin(*store);
  store->expect({.once = "tablet-17"});
  REQUIRE(note(*store, two.first, two.cord, "vinyl"));
  REQUIRE(store->keep_answer("tablet-17", "{\"kept\":1}"));
  const auto again = note(*store, two.first, two.cord, "vinyl");
  REQUIRE_FALSE(again);
  CHECK(again.problem().what == "this request was done already");
  CHECK(store->load()->all<Observation>().size() == 1);
  const auto kept = store->kept("tablet-17");
  REQUIRE(kept);
  REQUIRE(kept->has_value());
  CHECK((*kept)->position == 2);
  CHECK((*kept)->answer == "{\"kept\":1}");
  CHECK_FALSE(store->kept("tablet-18")->has_value());
}

TEST_CASE("a page hears which pieces changed since it looked") {
  const ShowFolder folder;
  auto store = begun(folder);
  const Two two = begin(*store);
  REQUIRE(note(*store, two.second, two.cord, "vinyl"));
  const auto moved = store->moved_after(1, 10);
  REQUIRE(moved);
  REQUIRE(moved->size() == 1);
  CHECK(moved->front().position == 2);
  CHECK(moved->front().who == "tablet");
  CHECK(moved->front().numbers == std::vector<std::string>{"ES 2"});
  CHECK(store->moved_after(2, 10)->empty());
  CHECK(store->moment()->position == 2);
}
