#include "evidence/reckon.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <numeric>

#include "base/text.h"

using namespace backmark;
using namespace backmark::model;
using evidence::Reckoning;

namespace {

constexpr int pieces_a_fashion = 30;

// Two fashions of one fitting, wire about 1950 and clip about 1970, and one undated piece of
// each. Written with ids by hand; `shift` moves every year.
struct Invented {
  Show show;
  std::int32_t next = 1;
  Id<Character> fitting;
  Id<Source> record;
  Id<Source> story;

  explicit Invented(int shift = 0, bool dated = true) {
    fitting = {next++};
    show.all<Character>() = {{.id = fitting, .key = "fitting", .label = "Fitting"}};
    record = {next++};
    story = {next++};
    show.all<Source>() = {{.id = record, .key = "record", .kind = SourceKind::record},
                          {.id = story, .key = "grandson", .kind = SourceKind::oral}};
    for (int i = 0; i < pieces_a_fashion && dated; ++i) {
      add("wire", 1945 + shift + i % 10);
      add("clip", 1966 + shift + i % 10);
    }
    add("wire", 0);
    add("clip", 0);
  }

  Id<Piece> add(const char* value, int year) {
    const Id<Piece> piece{next++};
    show.all<Piece>().push_back({.id = piece, .number = fmt::format("ES {}", piece.value)});
    show.all<Observation>().push_back(
        {.id = {next++}, .piece = piece, .character = fitting, .value = show.pool.take(value)});
    if (year != 0) {
      say(piece, record, year);
    }
    return piece;
  }

  Id<Claim> say(Id<Piece> piece, Id<Source> source, int year) {
    show.all<Claim>().push_back({.id = {next++},
                                 .source = source,
                                 .subject = piece.value,
                                 .says = Says::made,
                                 .from = Year{year},
                                 .to = Year{year}});
    return show.all<Claim>().back().id;
  }

  Reckoning reckon() {
    show.settle();
    auto fitted = Reckoning::fit(show, {}, {});
    REQUIRE(fitted);
    return std::move(*fitted);
  }
  std::size_t count() const { return show.all<Piece>().size(); }
};

}  // namespace

TEST_CASE("an undated piece is dated by the pieces that are like it") {
  Invented made;
  const Reckoning reckoning = made.reckon();
  const int wire = reckoning.judge(made.count() - 2).year.at(0.5).value;
  const int clip = reckoning.judge(made.count() - 1).year.at(0.5).value;
  CHECK(wire < 1958);
  CHECK(clip > 1962);
}

TEST_CASE("chances sum to one, for years and for makers") {
  Invented made;
  const auto beliefs = made.reckon().judge_all({});
  REQUIRE(beliefs);
  for (const PieceBelief& belief : beliefs->pieces) {
    CHECK(std::accumulate(belief.year.p.begin(), belief.year.p.end(), 0.0) ==
          doctest::Approx(1));
    double sum = belief.maker.unrecorded;
    for (const MakerChance& chance : belief.maker.makers) {
      sum += chance.p;
    }
    CHECK(sum == doctest::Approx(1));
  }
}

TEST_CASE("years that are all moved by a century move the answer by a century, nothing else") {
  Invented now;
  Invented then(-100);
  const auto late = now.reckon().judge(now.count() - 1);
  evidence::ReckonSettings settings{.today = {1925}};
  then.show.settle();
  auto fitted = Reckoning::fit(then.show, settings, {});
  REQUIRE(fitted);
  const auto early = fitted->judge(then.count() - 1);
  for (const double share : {0.1, 0.5, 0.9}) {
    CHECK(late.year.at(share) - early.year.at(share) == 100);
  }
}

TEST_CASE("one wrong story cannot drag a piece, and it is named") {
  Invented made;
  const auto clip = made.add("clip", 0);
  made.say(clip, made.story, 1946);
  const Reckoning reckoning = made.reckon();
  const auto why = reckoning.explain(made.count() - 1, 2);
  CHECK(why.belief.year.inside({1960}, {1980}) > 0.5);
  REQUIRE_FALSE(why.misfits.empty());
  CHECK(contains(why.misfits.front().what, "1946"));
  CHECK(why.without_stories.year.inside({1960}, {1980}) >
        why.belief.year.inside({1960}, {1980}));
}

TEST_CASE("the weight of a line is what the answer loses without it") {
  Invented made;
  const Reckoning reckoning = made.reckon();
  const auto why = reckoning.explain(made.count() - 1, 3);
  const auto line =
      std::find_if(why.lines.begin(), why.lines.end(),
                   [](const EvidenceLine& one) { return one.what == "Fitting: clip"; });
  REQUIRE(line != why.lines.end());
  CHECK(line->bits_year > 0.1);
  CHECK(line->years_moved > 2);
  REQUIRE(why.comparanda.size() == 3);
  const Piece* near = made.show.find(why.comparanda.front().piece);
  const auto seen = made.show.observations_of(near->id).front();
  CHECK(made.show.text(seen.value) == "clip");
}

TEST_CASE("with no dated piece and no window the program says that it cannot date") {
  Invented bare(0, false);
  const Reckoning reckoning = bare.reckon();
  CHECK_FALSE(reckoning.judge(0).dated);
  REQUIRE_FALSE(reckoning.notes().empty());
  CHECK(contains(reckoning.notes().front(), "nothing can be dated by its style"));
}

TEST_CASE("a piece bought in 1951 was hardly made after it") {
  Invented made;
  const auto wire = made.add("wire", 0);
  made.show.all<Event>().push_back(
      {.id = {made.next++}, .piece = wire, .kind = EventKind::acquired, .to = Year{1951}});
  const auto belief = made.reckon().judge(made.count() - 1);
  CHECK(belief.year.inside({1952}, {2025}) < 0.05);
  CHECK(belief.limit == "acquired in 1951");
}

TEST_CASE("a worn mark, or an older form of it, still names its maker") {
  Invented made;
  const Id<Maker> vessen{made.next++};
  const Id<Maker> lund{made.next++};
  made.show.all<Maker>() = {
      {.id = vessen, .key = "vessen", .name = "Oda Vessen", .mark = "V\u00B7E"},
      {.id = lund, .key = "lund", .name = "Sefa Lund", .mark = "LUND"}};
  made.show.all<Lineage>() = {{.id = {made.next++},
                               .maker = vessen,
                               .variants = {made.show.pool.take("VESSEN ENNET")}}};
  for (const char* legend : {"V\u00B7[E]", "vessen ennet"}) {
    const auto piece = made.add("wire", 0);
    made.show.all<Mark>().push_back({.id = {made.next++}, .piece = piece, .text = legend});
  }
  const auto unknown = made.add("wire", 0);
  made.show.all<Mark>().push_back({.id = {made.next++}, .piece = unknown, .text = "V"});
  const Reckoning reckoning = made.reckon();
  for (const std::size_t row : {made.count() - 3, made.count() - 2}) {
    const auto belief = reckoning.judge(row);
    REQUIRE_FALSE(belief.maker.makers.empty());
    CHECK(belief.maker.makers.front().maker == vessen);
    CHECK(belief.maker.documented);
  }
  CHECK_FALSE(reckoning.judge(made.count() - 1).maker.documented);
}
