#include "store/store.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <map>

#include "base/random.h"
#include "base/text.h"
#include "store/fields.h"
#include "store/migrations.h"
#include "store/show_on_disk.h"

using namespace backmark;
using namespace backmark::model;
using store::Access;
using store::Store;

namespace {

Store new_store(const ShowFolder& folder) {
  REQUIRE(store::create(folder.path()));
  auto opened = Store::open(folder.path(), Access::change);
  REQUIRE(opened);
  return std::move(*opened);
}

Show load(Store& store) {
  auto show = store.load();
  REQUIRE(show);
  return std::move(*show);
}

void apply(Store& store, const Change& change) {
  const auto done = store.apply(change, "tester", 1000);
  const std::string trouble = done ? "" : to_line(done.problem());
  REQUIRE(trouble == "");
}

// A piece with one observation, "silver".
std::pair<Id<Piece>, Id<Observation>> with_silver(Store& store) {
  const Show show = load(store);
  Change change(show, "note", "first piece");
  const auto piece = change.add(Piece{.number = "ES 1", .title = "Scallop slide"});
  const auto character = change.add(Character{.key = "material", .label = "Material"});
  const auto seen = change.add(
      Observation{.piece = piece, .character = character, .value = change.word("silver")});
  apply(store, change);
  return {piece, seen};
}

std::string refusal(SQLite::Database& database, const std::string& sql) {
  try {
    database.exec(sql);
    return "";
  } catch (const SQLite::Exception& error) {
    return error.what();
  }
}

// Every member of a row as text, for comparing.
template <class T>
std::string to_text(const T& row) {
  std::string text;
  store::fields_of(row, [&](std::string_view name, const auto& member) {
    using M = std::decay_t<decltype(member)>;
    text += fmt::format("{}=", name);
    if constexpr (std::is_same_v<M, std::string>) {
      text += member;
    } else if constexpr (std::is_enum_v<M>) {
      text += std::to_string(static_cast<int>(member));
    } else if constexpr (std::is_arithmetic_v<M>) {
      text += std::to_string(member);
    } else if constexpr (requires { member.has_value(); }) {
      text += member.has_value() ? "some" : "none";
    } else if constexpr (requires { member.value; }) {
      text += std::to_string(member.value);
    } else {
      text += std::to_string(member.size());
    }
    text += ";";
  });
  return text;
}

}  // namespace

TEST_CASE("what a change adds is what the show holds, kind by kind") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const Show empty = load(store);
  Change change(empty, "note", "one of each");
  const auto piece = change.add(Piece{.number = "ES 1", .title = "caf\xC3\xA9 \"slide\""});
  const auto part = change.add(Part{.piece = piece, .originality = Originality::replaced});
  const auto maker =
      change.add(Maker{.key = "vessen", .name = "Oda Vessen", .from = Year{1946}});
  const auto source = change.add(Source{.key = "daybook", .year = Year{1950}});
  change.add(Source{.key = "grandson", .derives_from = {source}, .reliability = 0.6});
  const auto character = change.add(Character{.key = "legend", .shape = Shape::ordered});
  change.add(Lineage{.character = character,
                     .maker = maker,
                     .variants = {change.word("long"), change.word("short")}});
  change.add(Window{.character = character, .value = change.word("long"), .to = Year{-20}});
  change.add(Observation{.piece = piece,
                         .part = part,
                         .character = character,
                         .number = 5.25,
                         .certainty = 0.5F,
                         .seen = Seen::none,
                         .how = How::loupe,
                         .day = 7});
  change.add(Mark{.piece = piece, .text = "VESSEN"});
  change.add(Photograph{.piece = piece, .file = "a.png", .pixels_per_mm = 12});
  change.add(Note{.piece = piece, .heading = change.word("remarks"), .text = "line\nbreak"});
  change.add(Row{.source = source, .subject = piece.value, .cells = R"({"id":"ES 1"})"});
  change.add(Claim{.source = source,
                   .subject = piece.value,
                   .says = Says::made,
                   .from = Year{1951},
                   .weight = 0.7});
  change.add(Event{.piece = piece, .kind = EventKind::acquired, .date = "1974"});
  const auto section = change.add(Section{.key = "a", .title = "A"});
  change.add(Pick{.piece = piece, .section = section, .lead = true});
  const auto lender = change.add(Lender{.code = "Lender 1"});
  change.add(Loan{.piece = piece, .lender = lender, .from = 10});
  change.add(ValueOpinion{.piece = piece, .worth = {12345, "EUR"}});
  change.add(Condition{.piece = piece, .x_mm = 1.5});
  change.add(Permission{.subject = piece.value, .leave = Leave::given});
  change.add(Overruling{.piece = piece, .phrase = "about 1950"});
  const auto in = change.add(Case{.key = "c1", .width_mm = 900});
  change.add(Placement{.piece = piece, .in = in, .x_mm = 5});
  change.add(Setting{.key = "title", .value = "Tied"});
  apply(store, change);

  const Show show = load(store);
  const auto compare = [&](const auto& added) {
    using T = typename std::decay_t<decltype(added)>::value_type;
    REQUIRE(show.all<T>().size() == added.size());
    REQUIRE(added.size() > 0);
    for (std::size_t i = 0; i < added.size(); ++i) {
      CHECK(to_text(show.all<T>()[i]) == to_text(added[i]));
    }
  };
  std::apply([&](const auto&... added) { (compare(added), ...); }, change.added());
  CHECK(show.text(show.all<Lineage>()[0].variants[1]) == "short");
  CHECK(show.all<Window>()[0].to == Year{-20});
  CHECK(show.setting("title") == "Tied");
  CHECK(show.position == 1);
}

TEST_CASE("the columns of every table are the members of its record") {
  const ShowFolder folder;
  Store store = new_store(folder);
  SQLite::Database database((folder.path() / "show.db").string());
  const auto compare = [&](const auto& rows) {
    using T = typename std::decay_t<decltype(rows)>::value_type;
    std::string members;
    const T row{};
    store::fields_of(
        row, [&](std::string_view name, const auto&) { members += fmt::format("{},", name); });
    std::string columns;
    SQLite::Statement statement(database,
                                fmt::format("PRAGMA table_info({})", store::table<T>));
    while (statement.executeStep()) {
      columns += statement.getColumn(1).getString() + ",";
    }
    CHECK(columns == members + "since,ended,");
  };
  std::apply([&](const auto&... rows) { (compare(rows), ...); }, Records{});
}

TEST_CASE("an observation is superseded, never overwritten, and the book says by whom") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  const Show show = load(store);
  Change change(show, "note", "measured again");
  change.add(Observation{.piece = piece,
                         .character = {2},
                         .value = change.word("nickel silver"),
                         .supersedes = silver});
  apply(store, change);
  const Show after = load(store);
  REQUIRE(after.observations_of(piece).size() == 1);
  CHECK(after.text(after.observations_of(piece)[0].value) == "nickel silver");
  const auto book = store.book(10, piece);
  REQUIRE(book);
  REQUIRE(book->size() == 2);
  CHECK(book->front().summary == "measured again");
  CHECK(book->front().who == "tester");
  CHECK(contains(book->front().detail, "nickel silver"));

  SQLite::Database raw((folder.path() / "show.db").string(), SQLite::OPEN_READWRITE);
  CHECK(refusal(raw, "UPDATE observation SET number = 3") ==
        "a observation is superseded or withdrawn, never overwritten");
  CHECK(refusal(raw, "UPDATE observation SET ended = NULL WHERE ended IS NOT NULL") ==
        "a observation ends once");
  CHECK(contains(refusal(raw, "DELETE FROM observation"), "never deleted"));
  CHECK(contains(refusal(raw, "UPDATE book SET who = 'x'"), "never rewritten"));
  CHECK(contains(refusal(raw, "DELETE FROM book"), "never shortened"));
}

TEST_CASE("overwriting testimony through a change is refused and changes nothing") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  const Show show = load(store);
  Change change(show, "note", "sly");
  change.add(Piece{.number = "ES 2"});
  change.replace(Observation{.id = silver, .piece = piece});
  const auto done = store.apply(change, "tester", 1);
  REQUIRE_FALSE(done);
  CHECK(done.problem().fault == Fault::refused);
  CHECK(done.problem().fix == "supersede or withdraw it");
  CHECK(load(store).piece("ES 2") == nullptr);
}

TEST_CASE("two who change the show at once: the second is told, nothing is lost") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const Show show = load(store);
  Change one(show, "note", "one");
  one.add(Piece{.number = "ES 1"});
  Change two(show, "note", "two");
  two.add(Piece{.number = "ES 2"});
  apply(store, one);
  const auto done = store.apply(two, "other", 2);
  REQUIRE_FALSE(done);
  CHECK(done.problem().fault == Fault::conflict);
  CHECK(load(store).all<Piece>().size() == 1);
}

TEST_CASE("a number given twice is a conflict with words") {
  const ShowFolder folder;
  Store store = new_store(folder);
  with_silver(store);
  const Show show = load(store);
  Change change(show, "note", "again");
  change.add(Piece{.number = "ES 1"});
  const auto done = store.apply(change, "tester", 1);
  REQUIRE_FALSE(done);
  CHECK(contains(done.problem().what, "in the show already"));
}

TEST_CASE("a withdrawn record is gone from the show and kept in the book with its reason") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  const Show show = load(store);
  Change change(show, "note", "withdraw");
  change.withdraw(silver, "seen on another piece");
  apply(store, change);
  CHECK(load(store).observations_of(piece).empty());
  CHECK(contains(store.book(1)->front().detail, "seen on another piece"));
  const Show later = load(store);
  Change again(later, "note", "withdraw");
  again.withdraw(silver, "again");
  CHECK_FALSE(store.apply(again, "tester", 1));
}

TEST_CASE("search finds a piece by any of its words, accents or not") {
  const ShowFolder folder;
  Store store = new_store(folder);
  with_silver(store);
  const Show show = load(store);
  Change change(show, "note", "second");
  const auto piece = change.add(Piece{.number = "ES 2", .title = "Caf\xC3\xA9 clasp"});
  change.add(Mark{.piece = piece, .text = "TARN WORKS"});
  apply(store, change);
  CHECK(store.search("silver", 9)->at(0).number == "ES 1");
  CHECK(store.search("cafe tarn", 9)->at(0).number == "ES 2");
  CHECK(store.search("gold", 9)->empty());
  CHECK(store.search("\"", 9)->empty());
  CHECK_FALSE(store.search("  ", 9));
}

TEST_CASE("trouble with the folder is said in words") {
  const ShowFolder folder;
  CHECK(Store::open(folder.path(), Access::look).problem().what == "there is no show here");
  Store store = new_store(folder);
  CHECK(store::create(folder.path()).problem().what == "there is a show here already");
  const ShowFolder other;
  std::filesystem::create_directories(other.path() / "letters");
  CHECK(store::create(other.path()).problem().what == "this folder holds other things");
  const ShowFolder damaged;
  std::filesystem::create_directories(damaged.path());
  REQUIRE(write_file(damaged.path() / "show.db",
                     "this is no database, only a text of some length "
                     "that is put where one should be, for a test"));
  CHECK(contains(Store::open(damaged.path(), Access::look).problem().what, "damaged"));
}

TEST_CASE("an older show is upgraded after a copy, a newer one is refused") {
  const ShowFolder folder;
  std::filesystem::create_directories(folder.path());
  const auto file = (folder.path() / "show.db").string();
  {
    SQLite::Database old(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    old.exec(store::migrations().front().sql);
    old.exec("PRAGMA application_id = 1114328427");
    old.exec("PRAGMA user_version = 1");
    old.exec("INSERT INTO book VALUES (1, 5, 'x', 'note', 's', '{}')");
    old.exec("INSERT INTO piece VALUES (1, 'ES 7', 'Urchin clasp', 0, 0, 0, 0, '', 1, NULL)");
  }
  {
    auto opened = Store::open(folder.path(), Access::look);
    REQUIRE(opened);
    CHECK(load(*opened).piece("ES 7") != nullptr);
    CHECK(opened->search("urchin", 5)->size() == 1);
  }
  CHECK(std::filesystem::exists(folder.path() / "show.db.before-2"));
  {
    SQLite::Database raw(file, SQLite::OPEN_READWRITE);
    CHECK(raw.execAndGet("PRAGMA user_version").getInt() == store::newest_version());
    raw.exec("PRAGMA user_version = 999");
  }
  const auto newer = Store::open(folder.path(), Access::look);
  REQUIRE_FALSE(newer);
  CHECK(newer.problem().fault == Fault::refused);
  CHECK(contains(newer.problem().what, "made by a newer Backmark"));
}

TEST_CASE("a reckoning comes back as it was recorded, and another digest means stale") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  CHECK_FALSE(store.last_run()->has_value());
  const Show show = load(store);
  store::Run run;
  run.beliefs.seed = 42;
  run.beliefs.digest = store::digest(show);
  PieceBelief belief;
  belief.piece = piece;
  belief.year = {{{1950}, {1951}}, {0.25, 0.75}};
  belief.maker.makers = {{{9}, 0.5}};
  belief.maker.unrecorded = 0.5;
  run.beliefs.pieces = {belief};
  run.phrases = {{.made = "1950 or 1951"}};
  for (int i = 0; i < 5; ++i) {
    REQUIRE(store.record_run(run));
  }
  const auto kept = store.last_run();
  REQUIRE(kept->has_value());
  CHECK((*kept)->beliefs.pieces.at(0).year.p.at(1) == 0.75);
  CHECK((*kept)->phrases.at(0).made == "1950 or 1951");
  CHECK((*kept)->beliefs.digest == store::digest(load(store)));
  Change change(show, "note", "another look");
  change.add(Observation{.piece = piece, .character = {2}, .value = change.word("jet")});
  apply(store, change);
  CHECK((*kept)->beliefs.digest != store::digest(load(store)));
}

TEST_CASE("after any row of changes the show on disk is the show in mind") {
  const ShowFolder folder;
  Store store = new_store(folder);
  Random random(20);
  std::map<std::int32_t, std::string> mind;
  for (int round = 0; round < 25; ++round) {
    const Show show = load(store);
    Change change(show, "note", "random");
    for (int i = 0; i < 4; ++i) {
      const std::string number = fmt::format("ES {}", round * 10 + i);
      mind[change.add(Piece{.number = number}).value] = number;
    }
    if (const auto& pieces = show.all<Piece>(); !pieces.empty()) {
      Piece renamed = pieces[random.below(pieces.size())];
      renamed.number += "a";
      mind[renamed.id.value] = renamed.number;
      change.replace(renamed);
      const Piece& gone = pieces[random.below(pieces.size())];
      if (gone.id != renamed.id) {
        change.withdraw(gone.id, "given back");
        mind.erase(gone.id.value);
      }
    }
    apply(store, change);
  }
  const Show show = load(store);
  std::map<std::int32_t, std::string> disk;
  for (const Piece& piece : show.all<Piece>()) {
    disk[piece.id.value] = piece.number;
  }
  CHECK(disk == mind);
}
