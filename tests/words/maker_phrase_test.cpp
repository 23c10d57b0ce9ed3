#include "words/maker_phrase.h"

#include <doctest/doctest.h>

#include "base/random.h"
#include "base/text.h"
#include "words/phrase.h"
#include "words/table.h"

using namespace backmark;
using namespace backmark::model;
using namespace backmark::words;

namespace {

constexpr std::int32_t piece_id = 1;

Show coast() {
  Show show;
  show.all<Piece>() = {{.id = {piece_id}, .number = "ES 1"}};
  show.all<Maker>() = {
      {.id = {2}, .key = "vessen", .name = "Oda Vessen"},
      {.id = {3}, .key = "oskeld", .name = "Maren Oskeld"},
      {.id = {4}, .key = "haddoway", .name = "Pell Haddoway"},
      {.id = {5}, .key = "quay", .name = "the quay hands", .kind = MakerKind::unrecorded}};
  show.all<Source>() = {{.id = {6}, .key = "own", .kind = SourceKind::own}};
  show.pool.take("Long Quay");
  show.settle();
  return show;
}

PieceBelief chances(std::vector<MakerChance> makers, bool documented = false) {
  double named = 0;
  for (const auto& row : makers) {
    named += row.p;
  }
  return {.piece = {piece_id},
          .maker = {
              .makers = std::move(makers), .unrecorded = 1 - named, .documented = documented}};
}

Show with_judgement(std::string_view qualifier, double weight) {
  Show show = coast();
  show.all<Claim>() = {{.id = {7},
                        .source = {6},
                        .subject = piece_id,
                        .says = Says::judged_by,
                        .maker = {2},
                        .qualifier = show.pool.take(qualifier),
                        .weight = weight}};
  show.settle();
  return show;
}

}  // namespace

TEST_CASE("each row of the maker table is reached by the belief it describes") {
  const Show show = coast();
  const auto said = [&show](const PieceBelief& belief) {
    return phrase_maker(show, belief).text;
  };
  CHECK(said(chances({{{2}, 0.96}}, true)) == "Oda Vessen");
  CHECK(said(chances({{{2}, 0.96}})) == "attributed to Oda Vessen");
  CHECK(said(chances({{{2}, 0.94}}, true)) == "attributed to Oda Vessen");
  CHECK(said(chances({{{2}, 0.50}, {{3}, 0.25}})) == "attributed to Oda Vessen");
  CHECK(said(chances({{{2}, 0.50}, {{3}, 0.35}})) == "Oda Vessen or Maren Oskeld");
  CHECK(said(chances({{{2}, 0.48}, {{3}, 0.20}})) == "possibly by Oda Vessen");
  CHECK(said(chances({{{2}, 0.52}})) == "possibly by Oda Vessen");
  CHECK(said(chances({{{2}, 0.25}, {{3}, 0.20}})) == "possibly by Oda Vessen");
  CHECK(said(chances({{{2}, 0.39}})) == "unrecorded maker");
  CHECK(said(chances({{{2}, 0.19}, {{3}, 0.18}, {{4}, 0.17}})) == "unrecorded maker");
  CHECK(said(chances({})) == "unrecorded maker");
  CHECK(said(chances({{{5}, 0.97}})) == "unrecorded maker");
}

TEST_CASE("an unrecorded maker has the place as far as it is known") {
  Show show = coast();
  PieceBelief belief = chances({});
  belief.place = {show.pool.find("Long Quay"), 0.85};
  CHECK(phrase_maker(show, belief).text == "unrecorded maker, Long Quay");
  belief.place.p = 0.65;
  CHECK(phrase_maker(show, belief).text == "unrecorded maker, probably Long Quay");
  belief.place.p = 0.55;
  CHECK(phrase_maker(show, belief).text == "unrecorded maker");
}

TEST_CASE("a judgement of nearness decides between hand, shop and circle") {
  CHECK(phrase_maker(with_judgement("workshop of", 0.8), chances({{{2}, 0.9}}, true)).text ==
        "workshop of Oda Vessen");
  // A weak judgement leaves the own hand as the likelier.
  CHECK(phrase_maker(with_judgement("workshop of", 0.2), chances({{{2}, 0.9}}, true)).text ==
        "attributed to Oda Vessen");
  CHECK(phrase_maker(with_judgement("circle of", 0.9), chances({{{2}, 0.7}})).text ==
        "circle of Oda Vessen");
  CHECK(phrase_maker(with_judgement("circle of", 0.9), chances({{{2}, 0.5}})).text ==
        "unrecorded maker");
}

TEST_CASE("whatever the chances, a maker phrase is at least as likely as its row says") {
  const Show show = coast();
  Random random(5);
  for (int trial = 0; trial < 20'000; ++trial) {
    std::vector<double> parts;
    double sum = 0;
    for (int part = 0; part < 4; ++part) {
      parts.push_back(random.gamma(0.4));
      sum += parts.back();
    }
    std::vector<MakerChance> makers{
        {{2}, parts[0] / sum}, {{3}, parts[1] / sum}, {{4}, parts[2] / sum}};
    std::sort(makers.begin(), makers.end(),
              [](const MakerChance& a, const MakerChance& b) { return a.p > b.p; });
    const PieceBelief belief = chances(makers, random.chance(0.5));
    const MakerPhrase phrase = phrase_maker(show, belief);
    const ClaimedMakers claim = claimed_makers(show, phrase.text);
    CHECK_FALSE(starts_with(phrase.text, "probably"));
    if (phrase.row == 7) {
      CHECK(claim.makers.empty());
      continue;
    }
    REQUIRE_MESSAGE(claim.row == phrase.row, phrase.text);
    double p = 0;
    for (const auto maker : claim.makers) {
      p += belief.maker.of(maker);
    }
    CHECK(p >= row_of(maker_table(), phrase.row).floor - 1e-9);
    CHECK((phrase.row != 1 || belief.maker.documented));
  }
}

TEST_CASE("a frozen maker stays until its chance has left the row by three in a hundred") {
  const Show show = coast();
  const auto said = [&show](double p) {
    return phrase_maker(show, chances({{{2}, p}, {{3}, 0.1}, {{4}, 0.15}}),
                        "attributed to Oda Vessen")
        .text;
  };
  CHECK(phrase_maker(show, chances({{{2}, 0.49}, {{3}, 0.1}, {{4}, 0.17}})).text ==
        "possibly by Oda Vessen");
  CHECK(said(0.50) == "attributed to Oda Vessen");
  const auto frozen = phrase_maker(show, chances({{{2}, 0.49}, {{3}, 0.24}, {{4}, 0.03}}),
                                   "attributed to Oda Vessen");
  CHECK(frozen.text == "attributed to Oda Vessen");
  CHECK(phrase_maker(show, chances({{{2}, 0.46}, {{3}, 0.22}, {{4}, 0.1}}),
                     "attributed to Oda Vessen")
            .text == "possibly by Oda Vessen");
}

TEST_CASE("who sold a piece is named as seller, and one who doubts is not repeated as sure") {
  Show show = coast();
  show.all<Claim>() = {{.id = {7},
                        .source = {6},
                        .subject = piece_id,
                        .says = Says::made_by,
                        .maker = {3},
                        .role = show.pool.take("stone cutter"),
                        .weight = 0.96},
                       {.id = {8},
                        .source = {6},
                        .subject = piece_id,
                        .says = Says::made_by,
                        .maker = {4},
                        .role = show.pool.take("retailer"),
                        .weight = 0.7},
                       {.id = {9},
                        .source = {6},
                        .subject = piece_id,
                        .says = Says::made_by,
                        .maker = {2},
                        .role = show.pool.take("designer"),
                        .weight = 0.3}};
  show.settle();
  CHECK(contributions(show, {piece_id}) ==
        "said to be sold by Pell Haddoway; stone by Maren Oskeld");
  const auto phrases = phrase_piece(show, chances({{{2}, 0.97}}, true));
  CHECK(phrases.maker == "Oda Vessen; said to be sold by Pell Haddoway; stone by Maren Oskeld");
}

TEST_CASE("the curator's phrase stands, with initials, and the table's is kept for the note") {
  Show show = coast();
  show.all<Overruling>() = {{.id = {7},
                             .piece = {piece_id},
                             .of = Overruling::Of::maker,
                             .phrase = "style of Oda Vessen",
                             .reason = "too soft a line",
                             .initials = "IH"}};
  show.settle();
  const Beliefs beliefs{.pieces = {chances({{{2}, 0.97}}, true)}};
  const PhraseBook book = phrase_all(show, beliefs);
  CHECK(book.of({piece_id}).maker == "style of Oda Vessen");
  CHECK(book.of({piece_id}).maker_row == 0);
  CHECK(book.of({piece_id}).initials == "IH");
  CHECK(book.of({piece_id}).made == "not dated");
  REQUIRE(overruled(show, beliefs).size() == 1);
  CHECK(overruled(show, beliefs)[0].tables == "Oda Vessen");
  CHECK(phrase_piece(show, beliefs.pieces[0]).maker == "style of Oda Vessen");
}
