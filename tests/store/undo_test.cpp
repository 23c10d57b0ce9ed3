#include <doctest/doctest.h>

#include "base/random.h"
#include "base/text.h"
#include "model/changed.h"
#include "store/row_text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

Result<store::Store> begun(const ShowFolder& folder) {
  REQUIRE(store::create(folder.path()));
  auto store = store::Store::open(folder.path(), store::Access::change);
  REQUIRE(store);
  return store;
}

// Every member of every record, every word, and what comes next.
std::string all_of(const Show& show) {
  std::string text = fmt::format("at {}, next {}\n", show.position, show.next_id);
  for (std::uint32_t word = 0; word < show.pool.size(); ++word) {
    text += fmt::format("{} ", show.pool.text({word}));
  }
  const auto add = [&](const auto& rows) {
    for (const auto& row : rows) {
      text += "\n" + to_text(row);
    }
  };
  show.each_kind(add);
  return text;
}

// A show changed in memory is the show read again, to the last member.
void check_in_memory(store::Store& store, const Show& before, const Change& change) {
  const auto read = store.load();
  REQUIRE(read);
  REQUIRE(all_of(changed(before, change)) == all_of(*read));
  if (!store::bears_on_reckoning(before, change)) {
    REQUIRE(store::digest(before) == store::digest(*read));
  }
}

// Does `build` to the show as it stands.
template <class Build>
void change(store::Store& store, const std::string& summary, Build&& build) {
  const auto show = store.load();
  REQUIRE(show);
  Change one(*show, "edit", summary);
  build(one, *show);
  const auto done = store.apply(one, "ines", 1);
  REQUIRE((done ? "" : to_line(done.problem())) == "");
  check_in_memory(store, *show, one);
}

std::string undo(store::Store& store, std::optional<std::int64_t> position = {}) {
  const auto show = store.load();
  REQUIRE(show);
  auto undoing = store.undoing(*show, position, "ines");
  if (!undoing) {
    return to_line(undoing.problem());
  }
  const auto done = store.apply(undoing->change, "ines", 2);
  if (done) {
    check_in_memory(store, *show, undoing->change);
  }
  return done ? "undid " + undoing->undone.summary : to_line(done.problem());
}

// What a show says, whatever ids its records have: every member but those, words as texts, and
// named records by what they are called.
std::string said(const Show& show) {
  std::vector<std::string> lines;
  const auto name = [&](Id<Piece> id) { return id ? show.find(id)->number : ""; };
  for (const Piece& piece : show.all<Piece>()) {
    lines.push_back(
        fmt::format("piece {} {} {}", piece.number, piece.title, show.text(piece.form)));
  }
  for (const Observation& seen : show.all<Observation>()) {
    lines.push_back(fmt::format("seen {} {} {} {}", name(seen.piece),
                                show.find(seen.character)->key, show.text(seen.value),
                                seen.number));
  }
  for (const Claim& claim : show.all<Claim>()) {
    lines.push_back(fmt::format("claim {} {} {} {}", show.find(claim.source)->key,
                                name({claim.about == About::piece ? claim.subject : 0}),
                                claim.text, claim.maker ? show.find(claim.maker)->key : ""));
  }
  for (const Maker& maker : show.all<Maker>()) {
    lines.push_back(fmt::format("maker {} {}", maker.key, maker.name));
  }
  for (const Source& source : show.all<Source>()) {
    std::string from;
    for (const auto id : source.derives_from) {
      from += show.find(id)->key + " ";
    }
    lines.push_back(fmt::format("source {} from {}", source.key, from));
  }
  for (const Character& character : show.all<Character>()) {
    lines.push_back(fmt::format("character {} {}", character.key, character.label));
  }
  std::sort(lines.begin(), lines.end());
  return join(lines, "\n");
}

std::string said(store::Store& store) {
  const auto show = store.load();
  REQUIRE((show ? "" : to_line(show.problem())) == "");
  return said(*show);
}

void begin(store::Store& store) {
  change(store, "begun", [](Change& one, const Show&) {
    const auto piece = one.add(Piece{.number = "ES 1", .title = "Scallop slide"});
    const auto cord = one.add(Character{.key = "cord", .label = "Cord"});
    one.add(Observation{.piece = piece, .character = cord, .value = one.word("vinyl")});
    const auto source = one.add(Source{.key = "daybook"});
    one.add(Source{.key = "grandson", .derives_from = {source}});
    const auto maker = one.add(Maker{.key = "vessen", .name = "Oda Vessen"});
    one.add(Claim{.source = source, .subject = piece.value, .text = "mine", .maker = maker});
  });
}

}  // namespace

TEST_CASE("what a change superseded stands again, and the book keeps all three") {
  const ShowFolder folder;
  auto store = begun(folder);
  begin(*store);
  const std::string before = said(*store);
  change(*store, "leather", [](Change& one, const Show& show) {
    const Observation old = show.all<Observation>().front();
    Observation anew = old;
    anew.supersedes = old.id;
    anew.value = one.word("leather");
    one.add(anew);
  });
  const std::string after = said(*store);
  CHECK(undo(*store) == "undid leather");
  CHECK(said(*store) == before);
  const auto show = store->load();
  CHECK(store->book(9, show->all<Piece>().front().id)->size() == 3);
  SUBCASE("the step back can be taken back, and the change taken back once more") {
    CHECK(undo(*store, *store->last_step_back("ines")) == "undid undone: edit leather");
    CHECK(said(*store) == after);
    CHECK(store->book(1)->front().summary == "again: edit leather");
    CHECK(store->book(1)->front().undoes == 3);
    CHECK(store->book(2)->back().undone_by == 4);
    CHECK(
        to_line(store->last_step_back("ines").problem()) ==
        "ines has nothing to do again; only what was undone last, with nothing changed since, "
        "is done again");
    CHECK(undo(*store) == "undid leather");
    CHECK(said(*store) == before);
  }
  SUBCASE("a change is not taken back twice") {
    CHECK(undo(*store, 2) ==
          "change 2 was taken back already, by change 3; take back change 3 to do it again");
  }
  SUBCASE("then comes the change before it, down to the bare show") {
    CHECK(undo(*store) == "undid begun");
    CHECK(said(*store) == "");
    CHECK(contains(undo(*store), "ines has changed nothing that holds"));
  }
}

TEST_CASE("what was withdrawn is said again, and names what stands today") {
  const ShowFolder folder;
  auto store = begun(folder);
  begin(*store);
  const std::string before = said(*store);
  change(*store, "all gone", [](Change& one, const Show& show) {
    one.withdraw(show.all<Observation>().front().id, "doubtful");
    one.withdraw(show.all<Claim>().front().id, "doubtful");
    for (const Source& source : show.all<Source>()) {
      one.withdraw(source.id, "doubtful");
    }
    one.withdraw(show.all<Maker>().front().id, "doubtful");
    one.withdraw(show.all<Character>().front().id, "doubtful");
    one.withdraw(show.all<Piece>().front().id, "doubtful");
  });
  CHECK(said(*store) == "");
  CHECK(undo(*store) == "undid all gone");
  CHECK(said(*store) == before);
  CHECK(undo(*store) == "undid begun");
  CHECK(said(*store) == "");
}

TEST_CASE("a later change of the same thing stands in the way until it is taken back") {
  const ShowFolder folder;
  auto store = begun(folder);
  begin(*store);
  const auto retitle = [&](const char* title) {
    change(*store, title, [&](Change& one, const Show& show) {
      Piece piece = show.all<Piece>().front();
      piece.title = title;
      one.replace(piece);
    });
  };
  retitle("Limpet slide");
  retitle("Whelk slide");
  CHECK(undo(*store, 2) == "change 3 touched what change 2 left; take back change 3 first");
  CHECK(contains(undo(*store, 1), "take back change 3 first"));
  CHECK(undo(*store, 3) == "undid Whelk slide");
  CHECK(contains(said(*store), "Limpet slide"));
  CHECK(undo(*store, 2) == "undid Limpet slide");
  CHECK(contains(said(*store), "Scallop slide"));
  CHECK(undo(*store, 99) ==
        "there is no change 99; \"backmark history SHOW\" has their numbers");
  SUBCASE("doing the later one again without the earlier is refused") {
    CHECK(contains(undo(*store, 4), "change 5 touched what change 4 left"));
  }
}

TEST_CASE("what another person did since stays, where it is another thing") {
  const ShowFolder folder;
  auto store = begun(folder);
  begin(*store);
  change(*store, "second", [](Change& one, const Show&) { one.add(Piece{.number = "ES 2"}); });
  const auto show = store->load();
  Change theirs(*show, "edit", "third");
  theirs.add(Piece{.number = "ES 3"});
  REQUIRE(store->apply(theirs, "tablet", 1));
  CHECK(undo(*store) == "undid second");
  CHECK(store->load()->piece("ES 3") != nullptr);
  CHECK(store->load()->piece("ES 2") == nullptr);
}

// A naive twin: the texts of the show after every change are kept aside; steps back must walk
// down that pile, and doing them again up it.
TEST_CASE("any run of changes, taken back and done again, passes the same shows") {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    const ShowFolder folder;
    auto store = begun(folder);
    begin(*store);
    Random random(seed);
    std::vector<std::string> pile = {said(*store)};
    for (int step = 0; step < 14; ++step) {
      const auto pick = random.below(5);
      change(*store, fmt::format("step {}", step), [&](Change& one, const Show& show) {
        const auto& seen = show.all<Observation>();
        const Id<Character> cord = show.all<Character>().front().id;
        if (pick == 0 || seen.empty()) {
          const auto piece = one.add(Piece{.number = fmt::format("ES 1{}", step)});
          one.add(Observation{.piece = piece, .character = cord, .number = step * 1.1});
        } else if (pick == 1) {
          Observation anew = seen[random.below(seen.size())];
          anew.supersedes = anew.id;
          anew.value = one.word(fmt::format("kind {}", step));
          one.add(anew);
        } else if (pick == 2) {
          one.withdraw(seen[random.below(seen.size())].id, "no");
        } else if (pick == 3) {
          Piece piece = show.all<Piece>()[random.below(show.all<Piece>().size())];
          piece.title = fmt::format("title {}", step);
          piece.form = one.word("clasp");
          one.replace(piece);
        } else {
          Maker maker = show.all<Maker>().front();
          maker.name = fmt::format("Name {}", step);
          one.replace(maker);
        }
      });
      pile.push_back(said(*store));
    }
    const int deep = 1 + static_cast<int>(random.below(14));
    std::vector<std::int64_t> steps_back;
    for (int i = 0; i < deep; ++i) {
      REQUIRE(contains(undo(*store), "undid step"));
      steps_back.push_back(store->load()->position);
      REQUIRE(said(*store) == pile[pile.size() - 2 - static_cast<std::size_t>(i)]);
    }
    for (int i = deep; i-- > 0;) {
      REQUIRE(*store->last_step_back("ines") == steps_back[static_cast<std::size_t>(i)]);
      REQUIRE(contains(undo(*store, *store->last_step_back("ines")), "undid undone"));
      REQUIRE(said(*store) == pile[pile.size() - 1 - static_cast<std::size_t>(i)]);
    }
  }
}

TEST_CASE("what says nothing of years or makers leaves the reckoning as it is") {
  const ShowFolder folder;
  auto store = begun(folder);
  begin(*store);
  const auto bears = [&](auto&& build) {
    const auto show = store->load();
    REQUIRE(show);
    Change one(*show, "edit", "tried");
    build(one, *show);
    REQUIRE(store->apply(one, "ines", 1));
    const auto after = store->load();
    const bool says = store::bears_on_reckoning(*show, one);
    CHECK(says == (store::digest(*show) != store::digest(*after)));
    return says;
  };
  CHECK(!bears([](Change& one, const Show& show) {
    one.add(Pick{.piece = show.all<Piece>().front().id});
    one.add(Setting{.key = "title", .value = "Small Silver"});
  }));
  CHECK(!bears([](Change& one, const Show& show) {
    Piece piece = show.all<Piece>().front();
    piece.prose = "A scallop.";
    piece.tray = one.word("tray 2");
    one.replace(piece);
    one.withdraw(show.all<Pick>().front().id, "not shown");
  }));
  CHECK(bears([](Change& one, const Show& show) {
    Piece piece = show.all<Piece>().front();
    piece.form = one.word("clasp");
    one.replace(piece);
  }));
  CHECK(bears([](Change& one, const Show&) {
    one.add(Setting{.key = "years.first", .value = "1900"});
  }));
  CHECK(bears([](Change& one, const Show& show) {
    one.withdraw(show.all<Observation>().front().id, "doubtful");
  }));
}
