#include "desk/warm.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <unistd.h>

#include "base/text.h"
#include "desk/open.h"
#include "desk/weighed.h"

using namespace backmark;
using namespace backmark::model;

namespace {

// A show in a folder of its own, as a door that keeps it in memory opens it.
class Kept {
 public:
  Kept() : folder_(std::filesystem::temp_directory_path() / fmt::format("warm-{}", getpid())) {
    std::filesystem::remove_all(folder_);
    REQUIRE(store::create(folder_));
    call_.set("show", {folder_.string()});
    call_.warm = &warm_;
  }
  ~Kept() { std::filesystem::remove_all(folder_); }

  desk::OpenShow open() {
    auto opened = desk::open_show(call_, store::Access::change);
    REQUIRE(opened);
    return std::move(*opened);
  }

  desk::OpenShow look() {
    auto opened = desk::open_show(call_, store::Access::look);
    REQUIRE(opened);
    return std::move(*opened);
  }

  template <class Build>
  void change(Build&& build) {
    desk::OpenShow opened = open();
    Change one(opened.show, "edit", "tried");
    build(one, opened.show);
    REQUIRE(opened.store.apply(one, "ines", 1));
  }

  // How often the dear thing was made so far, after asking for it once more.
  int ask() {
    desk::OpenShow opened = open();
    const auto dear = warm_.derived<int>(opened.store, opened.show, "dear",
                                         [&]() -> Result<int> { return ++made_; });
    REQUIRE(dear);
    return made_;
  }

  desk::Warm& warm() { return warm_; }
  const Path& folder() const { return folder_; }

 private:
  Path folder_;
  desk::Warm warm_;
  desk::Call call_;
  int made_ = 0;
};

void begin(Change& one, const Show&) {
  const auto piece = one.add(Piece{.number = "ES 1"});
  const auto cord = one.add(Character{.key = "cord", .label = "Cord"});
  one.add(Observation{.piece = piece, .character = cord, .value = one.word("vinyl")});
}

}  // namespace

TEST_CASE("what is written is in memory at once, and what another program writes is read") {
  Kept kept;
  kept.change(begin);
  CHECK(kept.warm().position() == 1);
  CHECK(kept.open().show.piece("ES 1") != nullptr);
  auto beside = store::Store::open(kept.folder(), store::Access::change);
  const auto show = beside->load();
  Change theirs(*show, "edit", "beside");
  theirs.add(Piece{.number = "ES 2"});
  REQUIRE(beside->apply(theirs, "tablet", 1));
  CHECK(kept.warm().position() == 1);
  CHECK(kept.open().show.piece("ES 2") != nullptr);
  CHECK(kept.warm().position() == 2);
}

TEST_CASE("while a change is written who looks gets the show as it was, and does not read it") {
  Kept kept;
  kept.change(begin);
  auto beside = store::Store::open(kept.folder(), store::Access::change);
  const auto show = beside->load();
  Change theirs(*show, "edit", "in hand");
  theirs.add(Piece{.number = "ES 2"});
  {
    const auto hand = kept.warm().write_in_hand();
    REQUIRE(beside->apply(theirs, "ines", 1));
    CHECK(kept.look().show.piece("ES 2") == nullptr);
    CHECK(kept.open().show.piece("ES 2") != nullptr);  // who writes must have it as it stands
  }
  CHECK(kept.look().show.piece("ES 2") != nullptr);
}

TEST_CASE("a fit lives on through a pick, and goes with what bears on years") {
  Kept kept;
  kept.change(begin);
  CHECK(kept.ask() == 1);
  CHECK(kept.ask() == 1);
  kept.change([](Change& one, const Show& show) {
    one.add(Pick{.piece = show.all<Piece>().front().id});
  });
  CHECK(kept.ask() == 1);
  kept.change([](Change& one, const Show& show) {
    Observation anew = show.all<Observation>().front();
    anew.supersedes = anew.id;
    anew.value = one.word("leather");
    one.add(anew);
  });
  CHECK(kept.ask() == 2);
  kept.change([](Change& one, const Show&) {
    one.add(Setting{.key = "title", .value = "Small Silver"});
  });
  CHECK(kept.ask() == 2);
}

TEST_CASE("who is in a hurry gets what was last made and is told so, until it is made anew") {
  Kept kept;
  kept.change(begin);
  int made = 0;
  const auto ask = [&](bool hurry) {
    desk::OpenShow opened = kept.open();
    bool earlier = false;
    desk::Warm hurried = kept.warm().hurried(earlier);
    opened.warm = hurry ? &hurried : &kept.warm();
    const auto dear = desk::weighed<int>(
        opened, "dear", [&]() -> Result<int> { return ++made; }, desk::Wants::last_made);
    REQUIRE(dear);
    return std::pair(**dear, earlier);
  };
  CHECK(ask(true) == std::pair(1, false));  // nothing was made before: he waits
  kept.change([](Change& one, const Show&) { one.add(Piece{.number = "ES 2"}); });
  CHECK(ask(true) == std::pair(1, true));
  CHECK(ask(false) == std::pair(2, false));
  CHECK(ask(true) == std::pair(2, false));
  kept.change([](Change& one, const Show& show) {
    one.add(Pick{.piece = show.all<Piece>().front().id});
  });
  CHECK(ask(true) == std::pair(2, false));
}

TEST_CASE("who must have a thing as the show stands waits for it, however great the hurry") {
  Kept kept;
  kept.change(begin);
  CHECK(kept.ask() == 1);
  kept.change([](Change& one, const Show&) { one.add(Piece{.number = "ES 2"}); });
  desk::OpenShow opened = kept.open();
  bool earlier = false;
  desk::Warm hurried = kept.warm().hurried(earlier);
  opened.warm = &hurried;
  const auto dear = desk::weighed<int>(opened, "dear", []() -> Result<int> { return 7; });
  REQUIRE(dear);
  CHECK(**dear == 7);
  CHECK_FALSE(earlier);
}

TEST_CASE("who still looks at an earlier show gets his own, and spoils nobody else's") {
  Kept kept;
  kept.change(begin);
  desk::OpenShow early = kept.open();
  kept.change([](Change& one, const Show&) { one.add(Piece{.number = "ES 2"}); });
  CHECK(kept.ask() == 1);
  const auto own = kept.warm().derived<int>(early.store, early.show, "dear",
                                            []() -> Result<int> { return -7; });
  REQUIRE(own);
  CHECK(**own == -7);
  CHECK(kept.ask() == 1);
}

TEST_CASE("a reckoning is stale at once for who is in a hurry, and judged by what came of it") {
  Kept kept;
  kept.change(begin);
  {
    desk::OpenShow opened = kept.open();
    store::Run run;
    run.beliefs.digest = store::digest(opened.show);
    REQUIRE(opened.store.record_run(run));
  }
  const auto stale = [&](bool hurry) {
    desk::OpenShow opened = kept.open();
    bool earlier = false;
    desk::Warm hurried = kept.warm().hurried(earlier);
    const auto last = (hurry ? hurried : kept.warm()).last_run(opened.store, opened.kept);
    REQUIRE(last);
    return last->stale;
  };
  CHECK_FALSE(stale(true));
  kept.change([](Change& one, const Show&) { one.add(Piece{.number = "ES 2"}); });
  CHECK(stale(true));
  CHECK(stale(false));
  kept.change([](Change& one, const Show& show) {
    one.withdraw(show.piece("ES 2")->id, "taken back");
  });
  CHECK(stale(true));  // it may be
  CHECK_FALSE(stale(false));
  CHECK_FALSE(stale(true));  // now it is known
}
