#include "evidence/claim_test.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <utility>

#include "base/text.h"
#include "evidence/claim_words.h"
#include "evidence/together.h"

using namespace backmark;
using namespace backmark::model;
using namespace backmark::evidence;

namespace {

// Forty dated pieces: wire 1945 to 1954 by Ada, clip 1966 to 1975 by Bea; six undated of each.
struct Table {
  Show show;
  std::int32_t next = 1;
  Id<Character> fitting{next++};
  Id<Source> record{next++};
  Id<Maker> ada{next++};
  Id<Maker> bea{next++};

  Table() {
    show.all<Character>() = {{.id = fitting, .key = "fitting", .label = "Fitting"}};
    show.all<Source>() = {
        {.id = record, .key = "record", .title = "Record", .kind = SourceKind::record}};
    show.all<Maker>() = {{.id = ada, .key = "ada", .name = "Ada Reed", .mark = "ADA REED"},
                         {.id = bea, .key = "bea", .name = "Bea Holm", .mark = "BEA HOLM"}};
    for (int i = 0; i < 20; ++i) {
      add("wire", 1945 + i % 10, "ADA REED");
      add("clip", 1966 + i % 10, "BEA HOLM");
    }
    for (int i = 0; i < 6; ++i) {
      add("wire", 0, "");
      add("clip", 0, "");
    }
  }

  Id<Piece> add(const char* value, int year, const char* mark) {
    const Id<Piece> piece{next++};
    show.all<Piece>().push_back({.id = piece,
                                 .number = fmt::format("T {}", piece.value),
                                 .form = show.pool.take("clasp")});
    show.all<Observation>().push_back(
        {.id = {next++}, .piece = piece, .character = fitting, .value = show.pool.take(value)});
    if (year != 0) {
      show.all<Claim>().push_back({.id = {next++},
                                   .source = record,
                                   .subject = piece.value,
                                   .says = Says::made,
                                   .from = Year{year},
                                   .to = Year{year}});
      show.all<model::Mark>().push_back({.id = {next++}, .piece = piece, .text = mark});
    }
    return piece;
  }

  // A source that says who was first; `from` is whom it has it from.
  Id<Source> tells(Id<Maker> maker, int year, Id<Source> from = {}, double reliability = 0.7) {
    const Id<Source> source{next++};
    show.all<Source>().push_back({.id = source,
                                  .key = fmt::format("s{}", source.value),
                                  .title = fmt::format("Source {}", source.value),
                                  .kind = SourceKind::oral,
                                  .reliability = reliability});
    if (from) {
      show.all<Source>().back().derives_from = {from};
    }
    show.all<Claim>().push_back({.id = {next++},
                                 .source = source,
                                 .about = About::form,
                                 .says = Says::first,
                                 .from = Year{year},
                                 .to = Year{year},
                                 .maker = maker});
    return source;
  }

  AskedClaim read(const char* claim) {
    show.next_id = next;
    show.settle();
    const auto asked = read_claim(show, claim);
    REQUIRE(asked);
    return *asked;
  }

  ClaimTest ask(const char* claim) {
    const AskedClaim asked = read(claim);
    const auto reckoning = Reckoning::fit(show, {}, {});
    REQUIRE(reckoning);
    return test_claim(show, *reckoning, asked, 1);
  }
};

std::string refused(const char* claim) {
  Table table;
  table.show.settle();
  const auto asked = read_claim(table.show, claim);
  REQUIRE_FALSE(asked);
  return to_line(asked.problem());
}

}  // namespace

TEST_CASE("four kinds of claim are understood, with makers by name or key, in any case") {
  Table table;
  table.show.settle();
  const auto words = [&](const char* claim) { return read_claim(table.show, claim)->words; };
  CHECK(words("First made in 1946 by ADA REED") == "the first was made in 1946 by Ada Reed");
  CHECK(words("clasp first made by ada in 1946") ==
        "the first clasp was made in 1946 by Ada Reed");
  CHECK(words("first made in 1946") == "the first was made in 1946");
  CHECK(words("pieces with wire are by Ada Reed") ==
        "every piece with fitting \"wire\" is by Ada Reed");
  CHECK(words("fitting=clip was not used before 1960") ==
        "fitting \"clip\" was not used before 1960");
  CHECK(contains(words("design clip is Bea Holm's"),
                 "the design fitting \"clip\" is Bea Holm's"));
}

TEST_CASE("nonsense is answered with what can be asked, or the nearest name") {
  CHECK(contains(refused("it was all very long ago"), "write \"first made in YEAR by MAKER\""));
  CHECK(contains(refused("first made in soon"), "\"soon\" is not a year"));
  CHECK(contains(refused("first made in 1946 by Ada Red"), "did you mean \"ada reed\""));
  CHECK(contains(refused("pieces with wier are by Ada Reed"), "did you mean \"wire\""));
  CHECK(contains(refused("fiting=wire was not used before 1950"), "did you mean \"fitting\""));
  CHECK(contains(refused("clip was not used before"), "was not understood"));
  CHECK(contains(refused(""), "was not understood"));
}

TEST_CASE("a dated piece that is older rules a first out, and is named") {
  Table table;
  const auto old = table.add("wire", 1946, "ADA REED");
  const ClaimTest test = table.ask("first made in 1947 by Ada Reed");
  CHECK(test.p_pieces < 0.05);
  REQUIRE_FALSE(test.carried_by.empty());
  CHECK(std::any_of(test.carried_by.begin(), test.carried_by.end(),
                    [&](const ClaimCarrier& one) { return one.piece == old && one.p > 0.8; }));
}

TEST_CASE("a later first is never likelier") {
  Table table;
  double last = 1;
  for (const char* claim : {"first made in 1935", "first made in 1944", "first made in 1946",
                            "first made in 1950", "first made in 1970"}) {
    const double p = table.ask(claim).p_pieces;
    CHECK(p <= last + 1e-9);
    last = p;
  }
  CHECK(last < 1e-6);
}

TEST_CASE("leaning together never makes a clash surer than independence does") {
  Table table;
  const ClaimTest test = table.ask("clip was not used before 1965");
  CHECK(test.p_pieces >= test.p_independent - 1e-9);
  CHECK(test.p_carried >= test.p_pieces - 1e-9);
}

TEST_CASE("two who copy a third count once") {
  Table alone;
  alone.tells(alone.bea, 1946, {}, 0.7);
  alone.tells(alone.ada, 1944, {}, 0.8);
  Table copied;
  const auto first = copied.tells(copied.bea, 1946, {}, 0.7);
  const auto second = copied.tells(copied.bea, 1946, first, 0.6);
  copied.tells(copied.bea, 1946, second, 0.5);
  copied.tells(copied.ada, 1944, {}, 0.8);
  Table three;
  for (int i = 0; i < 3; ++i) {
    three.tells(three.bea, 1946, {}, 0.7);
  }
  three.tells(three.ada, 1944, {}, 0.8);
  const char* claim = "first made in 1944 by Ada Reed";
  const ClaimTest once = alone.ask(claim);
  const ClaimTest copies = copied.ask(claim);
  CHECK(copies.p == doctest::Approx(once.p).epsilon(1e-9));
  CHECK(three.ask(claim).p < once.p);
  REQUIRE(copies.sources.size() == 4);
  CHECK(copies.sources[0].counted);
  CHECK_FALSE(copies.sources[1].counted);
  CHECK_FALSE(copies.sources[2].counted);
  CHECK(copies.sources[2].origin == first);
  // A copy adds nothing; the first teller's silence leaves a weaker copy to speak for it.
  CHECK(copies.sources[2].p_without == doctest::Approx(copies.p));
  CHECK(copies.sources[0].p_without > copies.p);
  CHECK(copies.sources[3].p_without < copies.p);
}

TEST_CASE("a claim on makers is carried by the pieces of others") {
  Table table;
  const double clean = table.ask("pieces with wire are by Ada Reed").expected;
  const auto other = table.add("wire", 1970, "BEA HOLM");
  const ClaimTest test = table.ask("pieces with wire are by Ada Reed");
  CHECK(test.expected > clean);
  CHECK(test.carried_by.front().p > 0.9);
  CHECK(test.carried_by.front().piece == other);
  CHECK(test.p < 0.1);
}

TEST_CASE("a design is by whoever made the oldest piece with it") {
  Table table;
  CHECK(table.ask("design wire is Ada Reed's").p_pieces > 0.6);
  CHECK(table.ask("design wire is Bea Holm's").p_pieces < 0.2);
}

TEST_CASE("what a window says of a beginning is a voice") {
  Table table;
  const double before = table.ask("clip was not used before 1966").p;
  table.show.all<Window>().push_back({.id = {table.next++},
                                      .character = table.fitting,
                                      .value = table.show.pool.take("clip"),
                                      .from = Year{1966},
                                      .source = table.record});
  const ClaimTest test = table.ask("clip was not used before 1966");
  REQUIRE(test.sources.size() == 1);
  CHECK(test.sources[0].for_it);
  CHECK(test.p > before);
}

TEST_CASE("the order of the pieces is of no account") {
  Table one;
  Table other;
  auto& claims = other.show.all<Claim>();
  std::reverse(claims.begin(), claims.end());
  const char* claim = "first made in 1946 by Ada Reed";
  CHECK(one.ask(claim).p == doctest::Approx(other.ask(claim).p).epsilon(1e-9));
}

TEST_CASE("a look at what was not looked at is weighed as plain counting weighs it") {
  Table table;
  // Nothing seen of it but that it is a brooch, as two with wire are.
  const Id<Piece> bare{table.next++};
  table.show.all<Piece>().push_back({.id = bare, .number = "T bare"});
  for (const Id<Piece> piece : {bare, table.add("wire", 0, ""), table.add("wire", 0, "")}) {
    for (Piece& one : table.show.all<Piece>()) {
      one.form = one.id == piece ? table.show.pool.take("brooch") : one.form;
    }
  }
  const AskedClaim asked = table.read("brooch first made in 1950");
  const auto reckoning = Reckoning::fit(table.show, {}, {});
  REQUIRE(reckoning);
  const ClaimTest moved = test_claim(table.show, *reckoning, asked, 1);
  const auto look = std::find_if(moved.looks.begin(), moved.looks.end(),
                                 [&](const ClaimLook& one) { return one.piece == bare; });
  REQUIRE(look != moved.looks.end());
  CHECK(look->character == table.fitting);
  REQUIRE(look->answers.size() == 2);

  const OddsMap map = reckoning->style()->before(Year{1950});
  const auto& pieces = std::as_const(table.show).all<Piece>();
  double sum = 0;
  double mean = 0;
  for (const ClaimAnswer& answer : look->answers) {
    std::vector<double> against;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      WhatIf seen;
      seen.seen.push_back({.character = table.fitting, .values = {answer.value}});
      const auto belief =
          pieces[i].id == bare ? reckoning->judge_if(i, seen) : reckoning->judge(i);
      if (pieces[i].form != asked.form) {
        continue;
      }
      double p = belief.year.inside(belief.year.span.first, Year{1949});
      p = reckoning->gathered().style.pieces[i].stated || p <= 0 || p >= 1 ? p : map(p);
      against.push_back(p);
    }
    CHECK(answer.p_claim == doctest::Approx(1 - any_of(against, usual_leaning)));
    sum += answer.p;
    mean += answer.p * answer.p_claim;
  }
  CHECK(sum == doctest::Approx(1));
  CHECK(look->moves ==
        doctest::Approx(look->answers[0].p * std::abs(look->answers[0].p_claim - mean) +
                        look->answers[1].p * std::abs(look->answers[1].p_claim - mean)));
  CHECK(look->moves > 0.005);
}
