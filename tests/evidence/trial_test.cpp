#include "evidence/trial.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::evidence;
using namespace backmark::model;

namespace {

// Pieces of two fashions and two makers, in lots of two; every one dated and marked.
Show known_show(int pairs) {
  Show show;
  std::int32_t next = 1;
  const Id<Character> fitting{next++};
  show.all<Character>() = {{.id = fitting, .key = "fitting", .label = "Fitting"}};
  const Id<Source> record{next++};
  show.all<Source>() = {{.id = record, .key = "record", .kind = SourceKind::record}};
  const Id<Maker> early{next++};
  const Id<Maker> late{next++};
  show.all<Maker>() = {{.id = early, .key = "a", .name = "Ada", .mark = "ADA"},
                       {.id = late, .key = "b", .name = "Bea", .mark = "BEA"}};
  for (int i = 0; i < 2 * pairs; ++i) {
    const bool first = i / 2 % 2 == 0;
    const Id<Piece> piece{next++};
    show.all<Piece>().push_back({.id = piece,
                                 .number = fmt::format("T {}", i),
                                 .lot = show.pool.take(fmt::format("lot {}", i / 2))});
    show.all<Observation>().push_back({.id = {next++},
                                       .piece = piece,
                                       .character = fitting,
                                       .value = show.pool.take(first ? "wire" : "clip")});
    const Year year{(first ? 1946 : 1966) + i % 7};
    show.all<Claim>().push_back({.id = {next++},
                                 .source = record,
                                 .subject = piece.value,
                                 .says = Says::made,
                                 .from = year,
                                 .to = year});
    show.all<model::Mark>().push_back(
        {.id = {next++}, .piece = piece, .text = first ? "ADA" : "BEA"});
    show.all<Event>().push_back({.id = {next++},
                                 .piece = piece,
                                 .kind = EventKind::acquired,
                                 .from = Year{1990},
                                 .to = Year{1990}});
  }
  show.next_id = next;
  show.settle();
  return show;
}

}  // namespace

TEST_CASE("every known piece is asked once, and lots stay whole when asked") {
  const Show show = known_show(20);
  for (const bool by_lot : {false, true}) {
    const auto trials = run_trials(show, {}, {.folds = 5, .by_lot = by_lot}, {});
    REQUIRE(trials);
    CHECK(trials->years.size() == 40);
    CHECK(trials->makers.size() == 40);
  }
}

TEST_CASE("an answer does not hang on the hidden year itself") {
  // One known year moved by 30: in its own trial the same is said of the piece as before.
  Show still = known_show(20);
  Show moved = known_show(20);
  for (Show* show : {&still, &moved}) {
    show->all<Setting>() = {{.id = {90001}, .key = "years.first", .value = "1930"},
                            {.id = {90002}, .key = "years.last", .value = "2000"}};
  }
  moved.all<Claim>()[5].from = Year{1981};
  moved.all<Claim>()[5].to = Year{1981};
  still.settle();
  moved.settle();
  const auto before = run_trials(still, {}, {.folds = 5, .by_lot = false}, {});
  const auto after = run_trials(moved, {}, {.folds = 5, .by_lot = false}, {});
  REQUIRE(before);
  REQUIRE(after);
  int found = 0;
  for (std::size_t i = 0; i < after->years.size(); ++i) {
    if (after->years[i].stated.first == Year{1981}) {
      found += after->years[i].p == before->years[i].p ? 1 : 0;
    }
  }
  CHECK(found == 1);
}

TEST_CASE("a clear show finds its hidden years and makers again") {
  const auto trials = run_trials(known_show(30), {}, {.folds = 6, .by_lot = true}, {});
  REQUIRE(trials);
  const auto found = calibration_of(*trials, {.folds = 6, .by_lot = true});
  CHECK(found.years.log_score > found.years.log_score_any + 0.2);
  CHECK(found.years.median_error <= 4);
  CHECK(found.makers.top_1 > 0.95);
}

TEST_CASE("a show that knows nothing cannot be tried") {
  Show show = known_show(5);
  show.all<Claim>().clear();
  show.all<model::Mark>().clear();
  show.settle();
  const auto trials = run_trials(show, {}, {}, {});
  REQUIRE_FALSE(trials);
  CHECK(contains(trials.problem().fix, "record firm dates"));
}

TEST_CASE("a museum that bought old things in one decade does not make them younger") {
  // Years even from 1700 to 1979, all bought from 1975 to 1984: how long a piece was about says
  // when it was bought, not when it was made.
  Show show = known_show(75);
  for (std::size_t i = 0; i < show.all<Claim>().size(); ++i) {
    Claim& claim = show.all<Claim>()[i];
    claim.from = claim.to = Year{1700 + static_cast<int>(i * 67 % 280)};
    const Year bought{std::max(claim.to->value, 1975 + static_cast<int>(i) % 10)};
    show.all<Event>()[i].from = show.all<Event>()[i].to = bought;
  }
  for (Piece& piece : show.all<Piece>()) {
    piece.lot = {};
  }
  show.all<model::Mark>().clear();
  show.settle();
  const auto trials = run_trials(show, {}, {.folds = 5, .by_lot = false}, {});
  REQUIRE(trials);
  const auto found = score_years(trials->years);
  double mean_rank = 0;
  for (std::size_t cell = 0; cell < found.ranks.size(); ++cell) {
    mean_rank += found.ranks[cell] * (static_cast<double>(cell) + 0.5) / 10;
  }
  CHECK(mean_rank > 0.44);
  CHECK(mean_rank < 0.56);
  CHECK(found.trust == Trust::trusted);
}
