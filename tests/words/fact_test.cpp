#include "words/fact.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::model;
using namespace backmark::words;

namespace {

// One slide tie with everything, one brooch nobody has looked at.
struct Coast {
  Show show;
  Beliefs beliefs;
  PhraseBook phrases;
};

class Builder {
 public:
  explicit Builder(Show& show) : show_(show) {}
  Id<Character> character(const char* key) {
    for (const Character& known : show_.all<Character>()) {
      if (known.key == key) {
        return known.id;
      }
    }
    show_.all<Character>().push_back({.id = {next_++}, .key = key});
    return show_.all<Character>().back().id;
  }
  void see(const char* key, const char* value, How how = How::eye) {
    const auto id = character(key);
    show_.all<Observation>().push_back({.id = {next_++},
                                        .piece = {1},
                                        .character = id,
                                        .value = show_.pool.take(value),
                                        .how = how});
  }
  void measure(const char* key, double value) {
    const auto id = character(key);
    show_.all<Observation>().push_back(
        {.id = {next_++}, .piece = {1}, .character = id, .number = value});
  }
  void part(const char* kind, Originality originality) {
    show_.all<Part>().push_back({.id = {next_++},
                                 .piece = {1},
                                 .kind = show_.pool.take(kind),
                                 .originality = originality});
  }

 private:
  Show& show_;
  std::int32_t next_ = 100;
};

Coast coast() {
  Coast it;
  Show& show = it.show;
  show.all<Piece>() = {
      {.id = {1},
       .number = "ES 118",
       .title = "Rayed oval slide",
       .lender = {10},
       .prose = "Forty-four blows."},
      {.id = {2}, .number = "ES 9", .title = "Herring brooch", .lender = {11}}};
  show.all<Lender>() = {
      {.id = {10}, .code = "Lender 14", .name = "Lowdy Vane", .address = "2 Green Terrace"},
      {.id = {11}, .code = "Lender 4", .name = "The Orrins", .credit = "The Orrin family"}};
  show.all<Section>() = {{.id = {20}, .key = "b", .title = "B", .rank = 2},
                         {.id = {21}, .key = "a", .title = "A", .rank = 1}};
  show.all<Pick>() = {{.id = {30}, .piece = {1}, .section = {20}, .rank = 1},
                      {.id = {31}, .piece = {2}, .section = {21}, .rank = 1}};
  Builder build(show);
  build.see("material", "silver");
  build.see("material", "serpentine", How::told);
  build.see("cord_type", "plaited leather");
  build.see("cord_colour", "black");
  build.see("outline", "oval");
  build.see("fitting", "bar slide");
  build.see("bar_kind", "second kind");
  build.measure("height", 54.2);
  build.measure("width", 41);
  build.measure("depth", 9.04);
  build.measure("cord_thickness", 4.2);
  build.measure("cord_length", 1040);
  build.measure("mass", 61.8);
  build.part("cord", Originality::unknown);
  build.part("fitting", Originality::replaced);
  show.all<Mark>() = {{.id = {40},
                       .piece = {1},
                       .text = "M·O",
                       .place = show.pool.take("back"),
                       .outline = show.pool.take("rectangle")}};
  show.settle();
  it.beliefs.misfits = {{.piece = {1}, .part = show.pool.find("cord"), .p = 0.7}};
  it.phrases.put({1}, {.made = "about 1953",
                       .maker = "attributed to Maren Oskeld",
                       .place = "Long Quay",
                       .made_row = 5,
                       .maker_row = 3});
  return it;
}

std::string text_of(const std::vector<Fact>& facts, FactKind kind) {
  for (const Fact& fact : facts) {
    if (fact.kind == kind) {
      return fact.text;
    }
  }
  return "(none)";
}

}  // namespace

TEST_CASE("an entry says its facts in one order and one wording") {
  const Coast it = coast();
  const Grammar grammar(it.show, it.beliefs, it.phrases);
  const auto facts = grammar.facts_of(it.show.all<Piece>()[0], Audience::public_);
  CHECK(facts.front() == Fact{FactKind::number, "2"});
  CHECK(std::is_sorted(facts.begin(), facts.end(),
                       [](const Fact& a, const Fact& b) { return a.kind < b.kind; }));
  CHECK(text_of(facts, FactKind::title) == "Rayed oval slide");
  CHECK(text_of(facts, FactKind::maker) == "Attributed to Maren Oskeld");
  CHECK(text_of(facts, FactKind::made) == "Long Quay, about 1953");
  CHECK(text_of(facts, FactKind::materials) ==
        "Silver, said to be serpentine, cord of black plaited leather");
  CHECK(text_of(facts, FactKind::size) ==
        "54\u00A0×\u00A041\u00A0×\u00A09.0\u00A0mm; cord 4.2\u00A0×\u00A01040\u00A0mm; "
        "61.8\u00A0g with cord");
  CHECK(text_of(facts, FactKind::back) ==
        "Back: bar slide, second kind. Cord probably replaced. Fitting replaced.");
  CHECK(text_of(facts, FactKind::marks) == "Mark: M·O in a rectangle, struck, back");
  CHECK(text_of(facts, FactKind::lender) == "Lent by a private collector");
  CHECK(text_of(facts, FactKind::prose) == "Forty-four blows.");
}

TEST_CASE("what was not looked at is said for back and marks, and left out elsewhere") {
  const Coast it = coast();
  const Grammar grammar(it.show, it.beliefs, it.phrases);
  const auto facts = grammar.facts_of(it.show.all<Piece>()[1], Audience::public_);
  CHECK(text_of(facts, FactKind::number) == "1");
  CHECK(text_of(facts, FactKind::back) == "Back not looked at.");
  CHECK(text_of(facts, FactKind::marks) == "Marks not looked at");
  CHECK(text_of(facts, FactKind::size) == "(none)");
  CHECK(text_of(facts, FactKind::lender) == "The Orrin family");
  CHECK(text_of(facts, FactKind::maker) == "Unrecorded maker");
  CHECK(text_of(facts, FactKind::made) == "Not dated");
}

TEST_CASE("an owner who did not sign is in no fact that the public may see") {
  Coast it = coast();
  it.show.all<Event>() = {{.id = {60},
                           .piece = {1},
                           .kind = EventKind::acquired,
                           .date = "1974",
                           .from = Year{1974},
                           .to = Year{1974},
                           .party = it.show.pool.take("Lowdy Vane, Anvil Bay")}};
  it.show.settle();
  const Grammar grammar(it.show, it.beliefs, it.phrases);
  for (const Audience audience : {Audience::public_, Audience::printer, Audience::designer,
                                  Audience::courier, Audience::insurer}) {
    for (const Piece& piece : it.show.all<Piece>()) {
      for (const Fact& fact : grammar.facts_of(piece, audience)) {
        CHECK_FALSE(contains(fact.text, "Vane"));
        CHECK_FALSE(contains(fact.text, "Green Terrace"));
      }
    }
  }
  CHECK(grammar.text_of(it.show.all<Piece>()[0], FactKind::story) == "Acquired in 1974.");
}

TEST_CASE("a paper for an audience holds what that audience may see") {
  CHECK(may_show(Audience::registrar, FactKind::value));
  CHECK(may_show(Audience::insurer, FactKind::value));
  CHECK(may_show(Audience::lender, FactKind::value, Whose::own));
  CHECK_FALSE(may_show(Audience::lender, FactKind::value));
  CHECK_FALSE(may_show(Audience::lender, FactKind::materials));
  CHECK(may_show(Audience::courier, FactKind::title));
  CHECK_FALSE(may_show(Audience::courier, FactKind::size));
  CHECK_FALSE(may_show(Audience::insurer, FactKind::lender));
  CHECK_FALSE(may_show(Audience::public_, FactKind::value, Whose::own));
  for (const Audience audience : {Audience::public_, Audience::printer, Audience::designer}) {
    for (const FactKind kind :
         {FactKind::odds, FactKind::lender_name, FactKind::address, FactKind::delivery,
          FactKind::value, FactKind::condition, FactKind::care}) {
      CHECK_FALSE(may_show(audience, kind));
    }
  }
  for (const Audience audience : all_audiences()) {
    CHECK(audience_named(name_of(audience)) == audience);
    CHECK(may_show(audience, FactKind::title));
  }
  CHECK_FALSE(audience_named("everybody"));
}

TEST_CASE("a phrase of the curator's own carries the initials") {
  Coast it = coast();
  it.phrases.put({1}, {.made = "between the patent and the flood",
                       .maker = "Maren Oskeld",
                       .made_row = 0,
                       .maker_row = 1,
                       .initials = "I.R."});
  const Grammar grammar(it.show, it.beliefs, it.phrases);
  const Piece& piece = it.show.all<Piece>()[0];
  CHECK(grammar.text_of(piece, FactKind::made) == "Between the patent and the flood (I.R.)");
  CHECK(grammar.text_of(piece, FactKind::maker) == "Maren Oskeld");
}

TEST_CASE("typewriter quotation marks become printer's ones") {
  CHECK(with_curved_quotes("whale's \"eye\" ('left')") == "whale’s “eye” (‘left’)");
}
