#include "draw/paragraph.h"

#include <doctest/doctest.h>

#include "base/text.h"
#include "draw/quality.h"

namespace backmark::draw {
namespace {

constexpr const char* words =
    "The cord is the first thing to go and the last thing to be looked at. A slide was moved "
    "up "
    "and down several times a day, and leather that is pulled through metal wears from the "
    "inside, where nobody sees it. Of the pieces in this book few still hang on a cord that "
    "may "
    "have been theirs when they were made; for the rest the cord is a later guest, and we have "
    "tried to say so wherever it matters to the argument.";

Style book_text() {
  Style style;
  style.size_pt = 12;
  return style;
}

struct Desk {
  Fonts fonts = *Fonts::load();
  Hyphens hyphens = *Hyphens::load();
};

std::string reads(const Paragraph& paragraph) {
  std::string text;
  for (const ParagraphLine& line : paragraph) {
    for (const GlyphRun& run : line.line.runs) {
      text += run.text;
    }
    if (ends_with(text, "\u00AD")) {
      text.resize(text.size() - 2);
    } else {
      text += ' ';
    }
  }
  return std::string(trim(text));
}

TEST_CASE("a justified paragraph loses no word and fills its measure") {
  const Desk desk;
  const Paragraph set =
      set_justified(desk.fonts, desk.hyphens, {{words, book_text()}}, {118, 5});
  REQUIRE(set.size() > 4);
  CHECK(reads(set) == words);
  for (std::size_t at = 0; at + 1 < set.size(); ++at) {
    // What hangs in the margin is less than one letter of 12 points.
    CHECK(set[at].line.width >= doctest::Approx(118).epsilon(0.0005));
    CHECK(set[at].line.width < 118 + 2.2);
    CHECK(set[at].overfull == doctest::Approx(0));
  }
}

TEST_CASE(
    "a paragraph weighed at once divides no more words than first fit, and no space doubles") {
  const Desk desk;
  Quality best;
  Quality first;
  for (const double width : {82.0, 90.0, 99.5, 105.5, 111.0, 118.0}) {
    best.add(set_justified(desk.fonts, desk.hyphens, {{words, book_text()}}, {width, 0}));
    first.add(set_first_fit(desk.fonts, desk.hyphens, {{words, book_text()}}, {width, 0}));
  }
  CHECK(best.overfull == 0);
  CHECK(best.short_last == 0);
  CHECK(best.very_loose == 0);
  CHECK(best.hyphens <= first.hyphens);
}

TEST_CASE("numbers hold on to their words") {
  CHECK(with_held_spaces("see p. 12 and no. 14, about 1953") ==
        "see p.\u00A0"
        "12 and no.\u00A0"
        "14, about\u00A0"
        "1953");
  CHECK(with_held_spaces("a cord of 4 mm, on 3 March 1949") ==
        "a cord of 4\u00A0mm, on 3\u00A0March 1949");
  CHECK(with_held_spaces("under a lens") == "under a lens");
}

TEST_CASE("the mark of a note comes back with its place") {
  const Desk desk;
  const Paragraph set = set_ragged(
      desk.fonts, {{"in the boat.", book_text()}, {"1", book_text().sized(8), false, 7}},
      {118, 0});
  REQUIRE(set.size() == 1);
  REQUIRE(set[0].tags.size() == 1);
  CHECK(set[0].tags[0].tag == 7);
  CHECK(set[0].tags[0].x ==
        doctest::Approx(desk.fonts.width("in the boat.", book_text())).epsilon(0.01));
}

}  // namespace
}  // namespace backmark::draw
