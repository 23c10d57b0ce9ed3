#include "press/looks.h"

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("a look list says where to go, what to look at and what an answer would settle") {
  const model::LookList list = two_looks(demo_printing().show);
  PressJob job = demo_printing().job(Audience::curator);
  job.looks = &list;
  const auto printed = print_looks(job);
  REQUIRE(printed);
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (paper.empty()) {
    return;
  }
  const model::Show& show = job.show;
  CHECK(contains(paper, "19 minutes"));
  CHECK(contains(paper, "now 1948–62") != contains(paper, "now 1948–1962"));
  CHECK(contains(paper, "1950–1954"));
  CHECK(contains(paper, "0.85"));
  CHECK(contains(paper, "Again: " + show.all<model::Character>()[1].label));
  CHECK(contains(paper, show.all<model::Piece>()[1].number));
}

TEST_CASE("a look list is for registrar and curator; without looks it says so") {
  const model::LookList list = two_looks(demo_printing().show);
  for (const Audience audience : {Audience::public_, Audience::courier, Audience::insurer}) {
    PressJob job = demo_printing().job(audience);
    job.looks = &list;
    CHECK_FALSE(print_looks(job));
  }
  const auto none = print_looks(demo_printing().job(Audience::curator));
  REQUIRE_FALSE(none);
  CHECK(none.problem().what == "no look is worth taking");
}

TEST_CASE("pages of a look list are evenly filled: none ends it with a line or two") {
  model::LookList list = two_looks(demo_printing().show);
  list.plan.clear();
  const auto& pieces = demo_printing().show.all<model::Piece>();
  for (std::size_t at = 2; at < 28; ++at) {
    list.looks.push_back(list.looks.front());
    list.looks.back().piece = pieces[at].id;
  }
  PressJob job = demo_printing().job(Audience::curator);
  job.looks = &list;
  const auto printed = print_looks(job);
  REQUIRE(printed);
  const std::string paper = text_in(printed->files[0].bytes);
  const auto pages = split(paper, "\f");
  for (std::size_t page = 0; page + 1 < pages.size(); ++page) {  // the last ends in \f too
    std::size_t looks = 0;
    for (std::size_t at = 0; at < 28; ++at) {
      looks += contains(pages[page], pieces[at].number) ? 1 : 0;
    }
    CHECK(looks >= 8);
  }
}
