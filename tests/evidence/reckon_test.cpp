#include "evidence/reckon.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <numeric>

#include "base/text.h"
#include "evidence/grown_show.h"

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

TEST_CASE("a named piece without a date teaches what its maker's years are") {
  Invented made;
  const Id<Maker> maker{made.next++};
  made.show.all<Maker>() = {{.id = maker,
                             .key = "oda",
                             .name = "Oda Vessen",
                             .from = Year{1966},
                             .to = Year{1972},
                             .mark = "OV"}};
  for (int i = 0; i < 20; ++i) {
    const Id<Piece> piece = made.add("loop", 0);
    made.show.all<Mark>().push_back({.id = {made.next++}, .piece = piece, .text = "OV"});
  }
  const Id<Piece> asked = made.add("loop", 0);  // no mark, and nobody says by whom
  const Reckoning reckoning = made.reckon();
  REQUIRE(made.show.all<Piece>().back().id == asked);
  const auto year = reckoning.judge(made.count() - 1).year;
  CHECK(year.at(0.5).value >= 1964);
  CHECK(year.at(0.25).value >= 1960);
  CHECK_FALSE(reckoning.gathered().style.pieces.back().stated);
}

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

TEST_CASE("makers under other names move nothing else") {
  evidence::Grown grown =
      evidence::Grower(
          evidence::GrowthPlan{.pieces = 200, .makers = 8, .characters = 8, .seed = 6})
          .grow();
  const auto answers = [&] {
    grown.show.settle();
    const auto fitted = Reckoning::fit(grown.show, {.chains = 2, .rounds = 100}, {});
    REQUIRE(fitted);
    auto all = fitted->judge_all({});
    REQUIRE(all);
    return std::move(*all);
  };
  const Beliefs before = answers();
  for (Maker& maker : grown.show.all<Maker>()) {
    maker.key = "k" + maker.key;
    maker.name = "Workshop of " + maker.name;
  }
  const Beliefs after = answers();
  for (std::size_t i = 0; i < before.pieces.size(); ++i) {
    CHECK(before.pieces[i].year.p == after.pieces[i].year.p);
    REQUIRE(before.pieces[i].maker.makers.size() == after.pieces[i].maker.makers.size());
    for (std::size_t m = 0; m < before.pieces[i].maker.makers.size(); ++m) {
      CHECK(before.pieces[i].maker.makers[m].maker == after.pieces[i].maker.makers[m].maker);
      CHECK(before.pieces[i].maker.makers[m].p == after.pieces[i].maker.makers[m].p);
    }
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

TEST_CASE(
    "without stories the answer is that of the piece judged without them, to the last bit") {
  Invented made;
  const auto told = made.add("clip", 0);
  made.say(told, made.story, 1946);
  const Reckoning reckoning = made.reckon();
  evidence::LeftOut stories;
  for (const model::Claim& claim : made.show.claims_on(told)) {
    stories.records.insert(claim.id.value);
  }
  const auto why = reckoning.explain(made.count() - 1, 0);
  CHECK(why.without_stories.year.p == reckoning.judge(made.count() - 1, stories).year.p);
  const auto untold = reckoning.explain(0, 0);
  CHECK(untold.without_stories.year.p == reckoning.judge(0).year.p);
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

TEST_CASE("what would be said if a piece had another fitting is what is said of such a piece") {
  Invented made;
  const Reckoning reckoning = made.reckon();
  const std::size_t wire = made.count() - 2;
  const std::size_t clip = made.count() - 1;
  const evidence::WhatIf as_clip{.seen = {{.character = made.fitting, .values = {"clip"}}}};
  CHECK(reckoning.judge_if(wire, as_clip).year.p == reckoning.judge(clip).year.p);
  CHECK(reckoning.judge_if(wire, {}).year.p == reckoning.judge(wire).year.p);
  CHECK(reckoning.judge_new(as_clip).year.p == reckoning.judge(clip).year.p);
}

TEST_CASE("a fitting nobody has met, or one that cannot be told, dates nothing") {
  Invented made;
  const Reckoning reckoning = made.reckon();
  const auto nothing =
      reckoning.judge_if(0, {.seen = {{.character = made.fitting, .seen = Seen::cannot_tell}}});
  const auto blank = reckoning.judge_new({});
  CHECK(blank.year.inside({1945}, {1960}) == doctest::Approx(0.5).epsilon(0.2));
  CHECK(nothing.dated);
  const auto odd =
      reckoning.judge_new({.seen = {{.character = made.fitting, .values = {"rivet"}}}});
  CHECK(odd.year.at(0.5).value - blank.year.at(0.5).value == doctest::Approx(0).epsilon(3));
}

TEST_CASE("a date told of a piece that is only thought of is weighed, and can be taken away") {
  Invented made;
  const auto wire = made.add("wire", 0);
  const auto claim = made.say(wire, made.record, 1947);
  const Reckoning reckoning = made.reckon();
  const std::size_t row = made.count() - 1;
  CHECK(reckoning.judge(row).year.inside({1947}, {1947}) > 0.8);
  CHECK(reckoning.judge_if(row, {.removed = {claim.value}}).year.inside({1947}, {1947}) < 0.2);
  const evidence::WhatIf told{
      .claims = {
          {.source = made.record, .says = Says::made, .from = Year{1953}, .to = Year{1953}}}};
  CHECK(reckoning.judge_new(told).year.inside({1953}, {1953}) > 0.8);
}

TEST_CASE("a hidden piece is judged as if its year were never known, and teaches nothing") {
  Invented made;
  const auto late = made.add("clip", 2001);  // far from all others
  made.show.settle();
  const std::size_t row = made.count() - 1;
  auto open = Reckoning::fit(made.show, {}, {});
  evidence::ReckonSettings hiding;
  hiding.hidden = {late.value};
  auto hidden = Reckoning::fit(made.show, hiding, {});
  REQUIRE(open);
  REQUIRE(hidden);
  CHECK(open->judge(row).year.inside({2001}, {2001}) > 0.1);
  CHECK(hidden->judge(row).year.inside({1960}, {1985}) > 0.7);
  CHECK(open->judge(row, {.known_year = true}).year.inside({1960}, {1985}) > 0.7);
  CHECK_FALSE(hidden->gathered().style.pieces[row].stated);
  CHECK(hidden->axis().last < open->axis().last);
}

TEST_CASE("a part's own line is taken for its part, also when another character says nothing") {
  // The cord of the last piece is replaceable and late; its fitting, never seen on it, comes
  // first in the table.
  Invented made;
  const Id<Character> cord{made.next++};
  made.show.all<Character>().push_back({.id = cord,
                                        .key = "cord",
                                        .label = "Cord",
                                        .part = made.show.pool.take("cord"),
                                        .replaceable = true});
  const std::size_t count = made.count();
  for (std::size_t i = 0; i < count; ++i) {
    const auto value = made.show.pool.take(i % 2 == 0 ? "silk" : "nylon");
    made.show.all<Observation>().push_back({.id = {made.next++},
                                            .piece = made.show.all<Piece>()[i].id,
                                            .character = cord,
                                            .value = value});
  }
  const Reckoning reckoning = made.reckon();
  const evidence::WhatIf only_cord{.seen = {{.character = cord, .values = {"nylon"}}}};
  const evidence::WhatIf both{.seen = {{.character = cord, .values = {"nylon"}},
                                       {.character = made.fitting, .values = {"wire"}}}};
  CHECK(reckoning.judge_new(only_cord).year.at(0.5) > reckoning.judge_new({}).year.at(0.5));
  CHECK(reckoning.judge_new(both).conflict > reckoning.judge_new(only_cord).conflict);
}

TEST_CASE(
    "a later fitting is told by the year that the record gives, with no other part to ask") {
  Invented show;
  show.show.all<Character>()[0].part = show.show.pool.take("fitting");
  show.show.all<Character>()[0].replaceable = true;
  const Id<Piece> married = show.add("clip", 1947);
  show.show.settle();
  const auto reckoning = Reckoning::fit(show.show, {}, {});
  REQUIRE(reckoning);
  const auto& pieces = show.show.all<Piece>();
  const auto place = static_cast<std::size_t>(
      std::find_if(pieces.begin(), pieces.end(),
                   [&](const Piece& piece) { return piece.id == married; }) -
      pieces.begin());
  const auto doubt_of = [&](std::size_t piece) {
    for (const Misfit& doubt : reckoning->doubts(piece)) {
      if (doubt.part) {
        return doubt.p;
      }
    }
    return -1.0;
  };
  const double usual = doubt_of(1);  // a clip of the years of clips
  CHECK(usual >= 0);
  CHECK(doubt_of(place) > 1.5 * usual);
}

TEST_CASE("a maker with too few pieces to be told by style is still thought of") {
  Invented show;
  const Id<Maker> few{show.next++};
  show.show.all<Maker>() = {{.id = few, .key = "few", .name = "Few", .mark = "FEW"}};
  show.show.all<Mark>().push_back(
      {.id = {show.next++}, .piece = show.show.all<Piece>()[0].id, .text = "FEW"});
  show.show.settle();
  const auto reckoning = Reckoning::fit(show.show, {}, {});
  REQUIRE(reckoning);
  const MakerBelief belief = reckoning->judge(show.show.all<Piece>().size() - 1).maker;
  REQUIRE(belief.makers.size() == 1);
  // One piece in 62 is named: with one of each kind to begin with, 2 in 64.
  CHECK(belief.makers[0].p == doctest::Approx(2.0 / 64).epsilon(0.2));
  CHECK(belief.makers[0].p + belief.unrecorded == doctest::Approx(1));
}

TEST_CASE("a maker of no known years is taken to have worked with the others of the place") {
  Invented show;
  const Word quay = show.show.pool.take("Quay");
  const Id<Maker> known{show.next++};
  const Id<Maker> unknown{show.next++};
  const Id<Maker> elsewhere{show.next++};
  show.show.all<Maker>() = {
      {.id = known, .key = "a", .place = quay, .from = Year{1966}, .to = Year{1972}},
      {.id = unknown, .key = "b", .place = quay, .mark = "BEE"},
      {.id = elsewhere, .key = "c", .mark = "CEE"}};
  const auto signed_piece = [&](const char* mark) {
    const Id<Piece> piece{show.next++};
    show.show.all<Piece>().push_back({.id = piece, .number = mark});
    show.show.all<Mark>().push_back({.id = {show.next++}, .piece = piece, .text = mark});
  };
  signed_piece("BEE");
  signed_piece("CEE");
  show.show.settle();
  const auto reckoning = Reckoning::fit(show.show, {}, {});
  REQUIRE(reckoning);
  const std::size_t last = show.show.all<Piece>().size() - 1;
  const auto within = [&](std::size_t piece) {
    const YearBelief year = reckoning->judge(piece).year;
    double mass = 0;
    for (std::size_t t = 0; t < year.p.size(); ++t) {
      const int at = year.span.first.value + static_cast<int>(t);
      mass += at >= 1960 && at <= 1978 ? year.p[t] : 0;
    }
    return mass;
  };
  CHECK(within(last - 1) > 0.8);
  CHECK(within(last) < 0.7);
}

TEST_CASE("a piece of a known place is rather by a maker of that place") {
  Invented show;
  const Id<Character> place{show.next++};
  show.show.all<Character>().push_back({.id = place, .key = "place", .label = "Place"});
  const Word quay = show.show.pool.take("Quay");
  const Id<Maker> here{show.next++};
  const Id<Maker> away{show.next++};
  show.show.all<Maker>() = {{.id = here, .key = "a", .place = quay},
                            {.id = away, .key = "b", .place = show.show.pool.take("Mill")}};
  const Id<Piece> last = show.show.all<Piece>().back().id;
  show.show.all<Observation>().push_back(
      {.id = {show.next++}, .piece = last, .character = place, .value = quay});
  show.show.settle();
  const auto reckoning = Reckoning::fit(show.show, {}, {});
  REQUIRE(reckoning);
  const MakerBelief belief = reckoning->judge(show.show.all<Piece>().size() - 1).maker;
  REQUIRE(belief.makers.size() == 2);
  CHECK(belief.makers[0].maker == here);
  CHECK(belief.makers[0].p == doctest::Approx(9 * belief.makers[1].p));
}

TEST_CASE("a teller who is often wrong is believed less than one who is often right") {
  Invented made;
  const Id<Source> other{made.next++};
  made.show.all<Source>().push_back(
      {.id = other, .key = "granddaughter", .kind = SourceKind::oral});
  std::vector<Id<Piece>> wires;
  for (int i = 0; i < 40; ++i) {
    const auto piece = made.add("wire", 0);
    made.say(piece, made.story, i % 4 == 0 ? 1950 : 1971);  // seldom right
    const auto second = made.add("wire", 0);
    made.say(second, other, 1950);
    wires.push_back(second);
  }
  const Reckoning reckoning = made.reckon();
  const auto asks = [&](Id<Source> teller) {
    const evidence::WhatIf told{
        .seen = {{.character = made.fitting, .values = {"wire"}}},
        .claims = {
            {.source = teller, .says = Says::made, .from = Year{1960}, .to = Year{1960}}}};
    return reckoning.judge_new(told).year.inside({1960}, {1960});
  };
  CHECK(asks(other) > 1.3 * asks(made.story));
}

TEST_CASE("a variant of a mark in a known order dates a piece by its neighbours in the order") {
  Invented made;
  const Id<Maker> vessen{made.next++};
  made.show.all<Maker>() = {
      {.id = vessen, .key = "vessen", .name = "Oda Vessen", .mark = "VSN"}};
  const auto word = [&](const char* text) { return made.show.pool.take(text); };
  made.show.all<Lineage>() = {{.id = {made.next++},
                               .maker = vessen,
                               .variants = {word("VESSEN ENNET"), word("VESSEN"), word("VE")}}};
  const auto mark = [&](Id<Piece> piece, const char* legend) {
    made.show.all<Mark>().push_back({.id = {made.next++}, .piece = piece, .text = legend});
  };
  for (int year = 1945; year < 1976; ++year) {
    mark(made.add("rivet", year), year < 1955 ? "VESSEN ENNET" : year < 1965 ? "VESSEN" : "VE");
  }
  for (const char* legend : {"VESSEN ENNET", "VESSEN", "VE"}) {
    mark(made.add("rivet", 0), legend);
  }
  const Reckoning reckoning = made.reckon();
  const auto belief = [&](std::size_t from_end) {
    return reckoning.judge(made.count() - from_end).year;
  };
  CHECK(belief(3).inside({1945}, {1954}) > 0.7);
  CHECK(belief(2).inside({1955}, {1964}) > 0.7);
  CHECK(belief(1).inside({1965}, {1975}) > 0.7);
  const auto why = reckoning.explain(made.count() - 2, 0);
  CHECK(std::any_of(why.lines.begin(), why.lines.end(), [](const EvidenceLine& line) {
    return line.what == "Marked VESSEN: form 2 of 3 in order" && line.bits_year > 0.3;
  }));
}

TEST_CASE("the sampled part says how well its chains agree, and threads change nothing") {
  Invented made;
  for (int i = 0; i < 20; ++i) {
    made.say(made.add("clip", 0), made.story, 1960 + i);
  }
  made.show.settle();
  const auto one = Reckoning::fit(made.show, {}, {.threads = 1});
  const auto three = Reckoning::fit(made.show, {}, {.threads = 3});
  evidence::ReckonSettings settings;
  settings.chains = 0;
  const auto none = Reckoning::fit(made.show, settings, {});
  REQUIRE(one);
  REQUIRE(three);
  REQUIRE(none);
  const auto beliefs = one->judge_all({});
  REQUIRE(beliefs);
  CHECK(beliefs->chains == 4);
  CHECK(beliefs->rhat_max < 1.05);
  CHECK(beliefs->ess_min > 100);
  CHECK(beliefs->converged);
  CHECK(none->judge_all({})->chains == 0);
  const auto again = three->judge_all({});
  for (std::size_t i = 0; i < beliefs->pieces.size(); ++i) {
    CHECK(beliefs->pieces[i].year.p == again->pieces[i].year.p);
  }
}

TEST_CASE("a fitting is dated by what a book says of its use, the more the book is believed") {
  const auto middle = [](double reliability) {
    Invented bare(0, false);
    const Id<Source> book{bare.next++};
    bare.show.all<Source>().push_back({.id = book, .key = "book", .reliability = reliability});
    bare.show.all<Claim>().push_back({.id = {bare.next++},
                                      .source = book,
                                      .about = About::character,
                                      .subject = bare.fitting.value,
                                      .says = Says::used,
                                      .from = Year{1946},
                                      .to = Year{1958},
                                      .word = bare.show.pool.take("wire"),
                                      .character = bare.fitting});
    bare.show.all<Setting>() = {{.id = {bare.next++}, .key = "years.first", .value = "1900"},
                                {.id = {bare.next++}, .key = "years.last", .value = "2000"}};
    return bare.reckon().judge(0).year.inside({1946}, {1958});
  };
  CHECK(middle(0.9) > 0.3);
  CHECK(middle(0.9) > middle(0.3));
  CHECK(middle(0.3) > 13.0 / 101);
}

TEST_CASE(
    "the curator's own judgement counts by its stated weight, and can be taken out again") {
  Invented made;
  const auto clip = made.add("clip", 0);
  const auto judged = made.say(clip, {}, 1958);
  made.show.all<Claim>().back().says = Says::judged;
  made.show.all<Claim>().back().weight = 0.9;
  const Reckoning reckoning = made.reckon();
  const std::size_t row = made.count() - 1;
  const auto with = reckoning.judge(row).year;
  const auto without = reckoning.judge(row, {.records = {judged.value}}).year;
  CHECK(with.inside({1956}, {1960}) > 3 * without.inside({1956}, {1960}));
  CHECK(without.p == reckoning.judge(row - 1).year.p);
}
