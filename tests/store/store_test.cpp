#include "store/store.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <cmath>
#include <doctest/doctest.h>
#include <limits>
#include <set>
#include <unistd.h>

#include "base/json.h"
#include "base/text.h"
#include "store/fields.h"
#include "store/migrations.h"
#include "store/row_text.h"
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
  change.add(Row{.source = source, .subject = piece.value, .cells = "{}"});
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
  change.add(Fixture{.in = in});
  change.add(LightReading{.in = in, .lux = 48});
  change.add(Exposure{.piece = piece});
  change.add(Requirement{.lender = lender, .rh_low = 35, .rh_high = 45});
  change.add(model::Task{.key = "open",
                         .after = "walk label-made",
                         .likely_days = 2.5,
                         .holds = model::Holds::loan,
                         .done = true});
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
    // Columns of a later migration stand behind since and ended: the order does not count.
    std::set<std::string> members{"since", "ended"};
    const T row{};
    store::fields_of(row, [&](std::string_view name, const auto&) { members.emplace(name); });
    std::set<std::string> columns;
    SQLite::Statement statement(database,
                                fmt::format("PRAGMA table_info({})", store::table<T>));
    while (statement.executeStep()) {
      columns.insert(statement.getColumn(1).getString());
    }
    CHECK(columns == members);
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
  CHECK(contains(book->front().detail, "\"value\":\"nickel silver\""));
  CHECK(contains(book->front().detail, "\"superseded\":{\"observation\":[{\"id\":3"));
  CHECK(contains(book->back().detail, "\"title\":\"Scallop slide\""));

  SQLite::Database raw((folder.path() / "show.db").string(), SQLite::OPEN_READWRITE);
  CHECK(refusal(raw, "UPDATE observation SET number = 3") ==
        "a observation is superseded or withdrawn, never overwritten");
  CHECK(refusal(raw, "UPDATE observation SET ended = NULL WHERE ended IS NOT NULL") ==
        "a observation ends once");
  CHECK(contains(refusal(raw, "DELETE FROM observation"), "never deleted"));
  CHECK(contains(refusal(raw, "UPDATE observation SET rowid = 99"), "never overwritten"));
  CHECK(contains(refusal(raw, "REPLACE INTO observation SELECT * FROM observation"),
                 "never overwritten"));
  CHECK(contains(refusal(raw, "REPLACE INTO book SELECT * FROM book"), "never rewritten"));
  CHECK(contains(refusal(raw, "UPDATE book SET who = 'x'"), "never rewritten"));
  CHECK(contains(refusal(raw, "DELETE FROM book"), "never shortened"));
}

TEST_CASE("a claim and an event are guarded as an observation is") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const Show show = load(store);
  Change change(show, "note", "statements");
  const auto piece = change.add(Piece{.number = "ES 1"});
  change.add(Claim{.subject = piece.value, .text = "made in 1951"});
  change.add(Event{.piece = piece, .date = "1974"});
  apply(store, change);
  SQLite::Database raw((folder.path() / "show.db").string(), SQLite::OPEN_READWRITE);
  for (const std::string kind : {"claim", "event"}) {
    CHECK(contains(refusal(raw, "UPDATE " + kind + " SET text = 'x'"), "never overwritten"));
    CHECK(contains(refusal(raw, "DELETE FROM " + kind), "never deleted"));
    CHECK(contains(refusal(raw, "REPLACE INTO " + kind + " SELECT * FROM " + kind),
                   "never overwritten"));
  }
}

TEST_CASE("the book keeps a replaced record as it was and as it became, with its piece") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  const Show show = load(store);
  Change change(show, "title", "better title");
  Piece better = *show.find(piece);
  better.title = "Limpet slide";
  better.form = change.word("slide tie");
  change.replace(better);
  apply(store, change);
  const auto book = store.book(9, piece);
  REQUIRE(book);
  REQUIRE(book->size() == 2);
  const Json now = Json::parse(book->at(0).detail);
  CHECK(now["replaced"][0]["was"]["title"] == "Scallop slide");
  CHECK(now["replaced"][0]["is"]["title"] == "Limpet slide");
  CHECK(now["replaced"][0]["is"]["form"] == "slide tie");
  const Json then = Json::parse(book->at(1).detail);
  CHECK(then["added"]["piece"][0]["title"] == "Scallop slide");
  CHECK(then["added"]["observation"][0]["value"] == "silver");
  CHECK(Json::parse(store.book(9)->back().detail)["added"]["observation"] == 1);
}

TEST_CASE("two pieces can change numbers in one change, and a number given up can be taken") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const Show show = load(store);
  Change change(show, "note", "two");
  const auto one = change.add(Piece{.number = "ES 1"});
  const auto two = change.add(Piece{.number = "ES 2"});
  apply(store, change);
  const Show before = load(store);
  Change swap(before, "renumber", "in order of years");
  swap.replace(Piece{.id = one, .number = "ES 2"});
  swap.replace(Piece{.id = two, .number = "ES 1"});
  apply(store, swap);
  const Show after = load(store);
  CHECK(after.piece("ES 1")->id == two);
  CHECK(after.piece("ES 2")->id == one);
  Change instead(after, "note", "another piece under the old number");
  instead.withdraw(one, "given back");
  instead.add(Piece{.number = "ES 2"});
  apply(store, instead);
  CHECK(load(store).piece("ES 2")->id.value == 3);
}

TEST_CASE("a show opened for looking is not written") {
  const ShowFolder folder;
  new_store(folder);
  auto looking = Store::open(folder.path(), Access::look);
  REQUIRE(looking);
  const Show show = load(*looking);
  Change change(show, "note", "none");
  change.add(Piece{.number = "ES 1"});
  CHECK_FALSE(looking->apply(change, "tester", 1));
  CHECK(load(*looking).all<Piece>().empty());
}

TEST_CASE("a show in a place that may not be written can still be looked at") {
  const ShowFolder folder;
  {
    Store store = new_store(folder);
    with_silver(store);
  }
  if (::geteuid() != 0) {
    MESSAGE("skipped: only the superuser can become somebody without rights");
    return;
  }
  std::filesystem::permissions(folder.path(), std::filesystem::perms(0555));
  std::filesystem::permissions(folder.path() / "show.db", std::filesystem::perms(0444));
  constexpr uid_t nobody = 65534;
  REQUIRE(::seteuid(nobody) == 0);
  auto looking = Store::open(folder.path(), Access::look);
  std::string trouble = "opened";
  std::size_t pieces = 0;
  if (looking) {
    const auto show = looking->load();
    pieces = show ? show->all<Piece>().size() : 0;
    Change change(*show, "note", "none");
    change.add(Piece{.number = "ES 2"});
    const auto done = looking->apply(change, "tester", 1);
    trouble = done ? "written" : done.problem().what;
  }
  REQUIRE(::seteuid(0) == 0);
  CHECK(pieces == 1);
  CHECK(trouble == "the show may not be written here");
}

TEST_SUITE("slow") {
  TEST_CASE("a show that another program is changing is said to be in use") {
    const ShowFolder folder;
    Store store = new_store(folder);
    const Show show = load(store);
    SQLite::Database other((folder.path() / "show.db").string(), SQLite::OPEN_READWRITE);
    other.exec("BEGIN EXCLUSIVE");
    Change change(show, "note", "late");
    change.add(Piece{.number = "ES 1"});
    const auto done = store.apply(change, "tester", 1);
    REQUIRE_FALSE(done);
    CHECK(done.problem().what == "the show is being changed by another program");
    CHECK(Store::open(folder.path(), Access::look).problem().fault == Fault::conflict);
    other.exec("ROLLBACK");
    apply(store, change);
  }
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
  CHECK(done.problem().what == "the number of a piece, \"ES 1\", is in the show already");
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

TEST_CASE("a piece that cannot be dated is kept with its reckoning too") {
  const ShowFolder folder;
  Store store = new_store(folder);
  const auto [piece, silver] = with_silver(store);
  store::Run run;
  PieceBelief belief;
  belief.piece = piece;
  belief.dated = false;
  belief.maker.unrecorded = 1;
  run.beliefs.pieces = {belief};
  run.phrases = {{.made = "not dated"}};
  REQUIRE(store.record_run(run));
  const auto kept = store.last_run();
  REQUIRE(kept->has_value());
  CHECK((*kept)->beliefs.pieces.at(0).year.p.empty());
  CHECK(!(*kept)->beliefs.pieces.at(0).dated);
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
  belief.year = {{{1950}, {1951}}, {0.3, 0.7}};
  run.beliefs.rhat_max = std::numeric_limits<double>::infinity();
  belief.maker.makers = {{{9}, 0.5}};
  belief.maker.unrecorded = 0.5;
  run.beliefs.pieces = {belief};
  run.phrases = {{.made = "1950 or 1951"}};
  for (int i = 0; i < 5; ++i) {
    REQUIRE(store.record_run(run));
  }
  const auto kept = store.last_run();
  REQUIRE(kept->has_value());
  CHECK((*kept)->beliefs.pieces.at(0).year.p.at(1) == 0.7);
  CHECK(std::isnan((*kept)->beliefs.rhat_max));
  CHECK((*kept)->phrases.at(0).made == "1950 or 1951");
  CHECK((*kept)->beliefs.digest == store::digest(load(store)));
  Change change(show, "note", "another look");
  change.add(Observation{.piece = piece, .character = {2}, .value = change.word("jet")});
  apply(store, change);
  CHECK((*kept)->beliefs.digest != store::digest(load(store)));
  const Show later = load(store);
  Change prose(later, "note", "prose");
  prose.replace(
      Piece{.id = piece, .number = "ES 1", .title = "Scallop slide", .prose = "Fine."});
  apply(store, prose);
  CHECK(store::digest(later) == store::digest(load(store)));
}
