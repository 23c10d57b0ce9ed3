#include <doctest/doctest.h>

#include "base/text.h"
#include "draw/fonts.h"
#include "draw/pdf.h"
#include "draw/poppler.h"

using namespace backmark;
using namespace backmark::draw;

namespace {

const Fonts& fonts() {
  static const Fonts loaded = [] {
    auto result = Fonts::load();
    REQUIRE_MESSAGE(result.ok(), "the font packages of scripts/install-packages are needed");
    return std::move(*result);
  }();
  return loaded;
}

Run roman(const std::string& text) {
  return {text, {.face = Face::text, .size_pt = 12}};
}

// A chapter with a heading, a picture, a paragraph over two pages with a divided word, a word
// in French, and feet that are no content.
std::string chapter() {
  Canvas canvas = Canvas::pages({100, 80}, 3);
  const auto section = canvas.element({Role::section});
  const auto head = canvas.element({.role = Role::heading, .within = section, .level = 1});
  const auto picture = canvas.element(
      {.role = Role::figure, .within = section, .alt = "A slide of silver, front"});
  const auto words = canvas.element({Role::paragraph, section});
  canvas.content(head, [&] { show(canvas, fonts(), {10, 10}, roman("Backs")); });
  canvas.content(picture, [&] {
    canvas.rectangle({50, 5, 20, 20});
    canvas.fill(copper);
  });
  canvas.content(words, [&] {
    show(canvas, fonts(), {10, 30}, roman("The tube is a"));
    show(canvas, fonts(), {40, 30}, read_as(fonts().shape({roman("nar-")}), "narrow,"));
    show(canvas, fonts(), {10, 35}, read_as(fonts().shape({roman("row,")}), ""));
    show(canvas, fonts(), {25, 35}, roman("straight one"));
  });
  show(canvas, fonts(), {10, 75}, roman("running foot"));
  REQUIRE(canvas.next_page());
  canvas.content(words, [&] { show(canvas, fonts(), {10, 10}, roman("soldered on")); });
  canvas.content(words,
                 [&] {
                   show(canvas, fonts(), {40, 10}, roman("très mince"));
                 },
                 {.language = "fr"});
  show(canvas, fonts(), {10, 75}, roman("second foot"));
  auto pdf = finish_pdf(canvas, {.title = "Backs",
                                 .labels = {{0, PageLabels::Style::roman, 3},
                                            {1, PageLabels::Style::arabic, 1}}});
  REQUIRE(pdf);
  return std::move(*pdf);
}

}  // namespace

TEST_CASE("a word divided at the end of a line is found whole and only once") {
  for (const char* how : {"pdftotext %  -", "pdftotext -raw % -", "pdftotext -layout % -"}) {
    const std::string text = read_back(chapter(), how);
    INFO(how, "\n", text);
    CHECK(contains(text, "narrow,"));
    CHECK_FALSE(contains(text, "nar-"));
    CHECK_FALSE(contains(text, "row, "));
    CHECK_FALSE(contains(text, "\nrow,"));
  }
}

TEST_CASE(
    "readers of structure find heading, figure in words, and one paragraph over two pages") {
  const std::string tree = read_back(chapter(), "pdfinfo -struct-text %");
  INFO(tree);
  CHECK(contains(tree, "Document"));
  CHECK(contains(tree, "Sect"));
  CHECK(contains(tree, "H1"));
  CHECK(contains(tree, "Figure"));
  const auto paragraph = tree.find("P (block)");
  REQUIRE(paragraph != std::string::npos);
  CHECK(tree.find("P (block)", paragraph + 1) == std::string::npos);
  CHECK(contains(tree.substr(paragraph), "soldered on"));
  CHECK_FALSE(contains(tree, "foot"));
}

TEST_CASE("qpdf finds no fault in a tagged document, and its catalogue says what it is") {
  int status = -1;
  const std::string said = read_back(chapter(), "qpdf --check %", &status);
  INFO(said);
  CHECK(status == 0);
  CHECK(contains(said, "No syntax or stream encoding errors found"));
  const std::string plain = read_back(
      chapter(), "qpdf --qdf --object-streams=disable --no-original-object-ids % - | strings");
  CHECK(contains(plain, "/GTS_PDFA1"));
  CHECK(contains(plain, "sRGB IEC61966-2.1"));
  CHECK(contains(plain, "/Marked true"));
  CHECK(contains(plain, "/Alt (A slide of silver, front)"));
  CHECK(contains(plain, "/Lang (fr)"));
  CHECK(contains(plain, "/TrimBox"));
  CHECK(contains(plain, "/BleedBox"));
  CHECK_FALSE(contains(plain, "pdfaid"));  // nothing is claimed
}

TEST_CASE("front pages are called by roman numerals and the text starts at 1") {
  const std::string plain = read_back(chapter(), "qpdf --json=2 --json-key=pagelabels %");
  INFO(plain);
  CHECK(contains(plain, "/r"));
  CHECK(contains(plain, "\"/St\": 3"));
  CHECK(contains(plain, "/D"));
}

TEST_CASE("a tagged document is the same bytes each time, whatever the clock says") {
  CHECK(chapter() == chapter());
}

TEST_CASE("content within content is a broken promise") {
  Canvas canvas = Canvas::pages({100, 80}, 3);
  const auto one = canvas.element({Role::paragraph});
  CHECK_THROWS_AS(canvas.content(one, [&] { canvas.content(one, [] {}); }), BrokenPromise);
  CHECK_THROWS_AS(canvas.element({.role = Role::paragraph, .within = 9}), BrokenPromise);
}
