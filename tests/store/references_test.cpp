#include "store/references.h"

#include <doctest/doctest.h>

#include "base/text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;
using store::Access;
using store::Store;

namespace {

// A show of one piece with one part, one observation, a maker and two sources.
struct SmallShow {
  ShowFolder folder;
  Id<Piece> piece;
  Id<Part> part;
  Id<Observation> seen;
  Id<Character> character;
  Id<Maker> maker;
  Id<Source> source;

  SmallShow() {
    REQUIRE(store::create(folder.path()));
    auto store = open();
    const Show show = load(store);
    Change change(show, "note", "first piece");
    piece = change.add(Piece{.number = "ES 1"});
    part = change.add(Part{.piece = piece, .kind = change.word("cord")});
    character = change.add(Character{.key = "material"});
    seen = change.add(Observation{
        .piece = piece, .part = part, .character = character, .value = change.word("silver")});
    maker = change.add(Maker{.key = "vessen"});
    source = change.add(Source{.key = "card"});
    change.add(Source{.key = "copy", .derives_from = {source}});
    change.add(Claim{.source = source, .subject = piece.value, .maker = maker});
    REQUIRE(store.apply(change, "tester", 1));
  }

  Store open() const {
    auto store = Store::open(folder.path(), Access::change);
    REQUIRE(store);
    return std::move(*store);
  }
  static Show load(Store& store) {
    auto show = store.load();
    REQUIRE(show);
    return std::move(*show);
  }
  void damage(const std::string& sql) const {
    SQLite::Database database((folder.path() / "show.db").string(), SQLite::OPEN_READWRITE);
    database.exec(sql);
  }
};

// What the store says to a change; the show must be as it was.
template <class Make>
std::string refusal(const Make& make) {
  SmallShow small;
  auto store = small.open();
  const Show show = SmallShow::load(store);
  Change change(show, "note", "something wrong");
  make(small, change);
  const auto done = store.apply(change, "tester", 2);
  REQUIRE_FALSE(done);
  const Show after = SmallShow::load(store);
  CHECK(after.position == show.position);
  CHECK(after.all<Piece>().size() == 1);
  CHECK(after.all<Observation>().size() == 1);
  return to_line(done.problem());
}

std::string load_problem(const std::string& sql) {
  SmallShow small;
  small.damage(sql);
  const auto bytes = read_file(small.folder.path() / "show.db");
  auto store = small.open();
  const auto show = store.load();
  REQUIRE_FALSE(show);
  CHECK(show.problem().fault == Fault::io);
  CHECK(*read_file(small.folder.path() / "show.db") == *bytes);
  return to_line(show.problem());
}

}  // namespace

TEST_CASE("a record that names a part which is not there is refused by name") {
  CHECK(refusal([](const SmallShow& small, Change& change) {
          change.add(
              Observation{.piece = small.piece, .part = {999}, .character = small.character});
        }) ==
        "piece ES 1: observation 9 names part 999 as its part, which is not in the show; load "
        "the show again and name what is there; nothing was changed");
}

TEST_CASE("a record that names one of another kind is told what it is") {
  CHECK(refusal([](const SmallShow& small, Change& change) {
          change.add(Claim{.source = {small.maker.value}, .subject = small.piece.value});
        }) ==
        "piece ES 1: claim 9 names record 5 as its source, which is a maker and no source; "
        "load the show again and name what is there; nothing was changed");
}

TEST_CASE("what stands on a piece needs the piece, and an observation its character") {
  CHECK(contains(
      refusal([](const SmallShow&, Change& change) { change.add(Note{.text = "lost"}); }),
      "note 9 names no piece"));
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.add(Observation{.piece = small.piece});
                 }),
                 "observation 9 names no character"));
}

TEST_CASE("lists and subjects are looked at too") {
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.add(Source{.key = "third", .derives_from = {small.source, {77}}});
                 }),
                 "source 9 names source 77 as its derives from, which is not in the show"));
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.add(Claim{.about = About::maker, .subject = small.piece.value});
                 }),
                 "claim 9 names record 1 as its subject, which is a piece and no maker"));
}

TEST_CASE("a word of another show is refused") {
  CHECK(contains(refusal([](const SmallShow&, Change& change) {
                   change.add(Maker{.key = "new", .place = {4000}});
                 }),
                 "maker 9 has a word in its column \"place\" that is not in the show"));
}

TEST_CASE("a record written anew is held to the same") {
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.replace(Part{.id = small.part, .piece = {42}});
                 }),
                 "part 2 names piece 42 as its piece, which is not in the show"));
}

TEST_CASE("what is still named is not withdrawn") {
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.withdraw(small.part, "never there");
                 }),
                 "record 2 cannot be withdrawn while observation 4 names it"));
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.withdraw(small.maker, "another hand");
                 }),
                 "record 5 cannot be withdrawn while claim 8 names it"));
  CHECK(contains(refusal([](const SmallShow& small, Change& change) {
                   change.withdraw(small.source, "lost");
                 }),
                 "record 6 cannot be withdrawn while"));
}

TEST_CASE("a part goes together with what was seen on it") {
  const SmallShow small;
  auto store = small.open();
  const Show show = SmallShow::load(store);
  Change change(show, "note", "the cord belongs elsewhere");
  change.withdraw(small.seen, "seen on another cord");
  change.withdraw(small.part, "belongs to another piece");
  CHECK(store.apply(change, "tester", 2));
  CHECK(SmallShow::load(store).all<Part>().empty());
}

TEST_CASE("a damaged file says which record is at fault, and is left as it is") {
  CHECK(load_problem("UPDATE part SET piece = 500") ==
        "the show's file is damaged: part 2 names piece 500 as its piece, which is not in the "
        "show; go back to a copy; nothing was changed");
  CHECK(contains(load_problem("UPDATE part SET ended = 1"),
                 "piece ES 1: the show's file is damaged: observation 4 names part 2"));
  CHECK(contains(load_problem("UPDATE source SET derives_from = '6,what' WHERE id = 7"),
                 "source 7 names no source"));
  CHECK(contains(load_problem("UPDATE part SET kind = 88"), "part 2 has a word in its column"));
  CHECK(contains(load_problem("UPDATE word SET id = 90 WHERE id = 2"),
                 "its words are out of order"));
  CHECK(contains(load_problem("UPDATE maker SET id = 99000000000 WHERE id = 5"),
                 "it has a record 99000000000"));
}
