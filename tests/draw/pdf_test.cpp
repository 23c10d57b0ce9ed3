#include "draw/pdf.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::draw;

namespace {

Canvas two_pages(const std::string& link) {
  Canvas canvas = Canvas::pages({100, 80}, 3);
  canvas.outline("First", 0, {0, 0});
  canvas.outline("Under first", 1, {0, 10});
  canvas.link({10, 10, 20, 5}, link);
  canvas.line({0, 0}, {50, 50}, ink, {1});
  REQUIRE(canvas.next_page());
  canvas.outline("Second", 0, {0, 0});
  canvas.destination("there", {10, 20});
  canvas.line({0, 0}, {50, 50}, ink, {1});
  return canvas;
}

}  // namespace

TEST_CASE("the same drawing gives the same bytes, whatever the clock says") {
  Canvas one = two_pages("there");
  Canvas two = two_pages("there");
  const auto first = finish_pdf(one, {.title = "Two pages"});
  const auto second = finish_pdf(two, {.title = "Two pages"});
  REQUIRE(first);
  REQUIRE(second);
  CHECK(*first == *second);
  CHECK_FALSE(contains(*first, "CreationDate"));
}

TEST_CASE("a link that leads nowhere is refused by name and page") {
  Canvas canvas = two_pages("elsewhere");
  const auto pdf = finish_pdf(canvas, {.title = "Two pages"});
  REQUIRE_FALSE(pdf);
  CHECK(contains(pdf.problem().what, "elsewhere"));
  CHECK(pdf.problem().where == "page 1");
}
