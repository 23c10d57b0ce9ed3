#include "words/why.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::words;

namespace {

struct Weighed {
  Weighed() {
    show.all<model::Maker>().push_back({.id = {5}, .key = "oskeld", .name = "Maren Oskeld"});
    show.all<model::Mark>().push_back({.id = {11}, .piece = {1}, .text = "M·O"});
    show.all<model::Event>().push_back(
        {.id = {12}, .piece = {1}, .kind = model::EventKind::awarded, .to = Year{1956}});
    show.all<model::Character>().push_back({.id = {9}, .key = "stamp", .label = "Stamp"});
    show.all<model::Observation>().push_back(
        {.id = {13}, .piece = {1}, .character = {9}, .value = show.pool.take("long legend")});
    show.settle();
    belief.piece = {1};
    belief.dated = true;
    belief.year = {{{1950}, {1959}}, std::vector<double>(10, 0.1)};
    belief.maker = {{{{5}, 0.97}}, 0.03, true};
    phrases.made_row = 3;
    phrases.maker_row = 1;
  }
  std::string said() const { return why_phrase(show, belief, phrases, lines); }
  model::Show show;
  model::PieceBelief belief;
  model::Phrases phrases;
  std::vector<model::EvidenceLine> lines{
      {.what = "Marked M·O: form 3 of 3 in order",
       .source = "the piece",
       .record = 11,
       .bits_year = 0.5,
       .years_moved = -3,
       .width_change = -10,
       .maker_log_odds = 2.4},
      {.what = "Fitting: bar slide", .source = "the piece", .character = {7}, .bits_year = 0.1},
      {.what = "Tips: spindle", .source = "the piece", .character = {8}, .disagrees = true},
      {.what = "Mr Able of 4 Quay Street says 1931", .source = "Mr Able", .bits_year = 0.01}};
};

}  // namespace

TEST_CASE("why this maker and year: the odds, what carries them, and what stands against") {
  Weighed weighed;
  CHECK(weighed.said() ==
        "Nine chances in ten lie between 1950 and 1958, and nineteen in twenty with Maren "
        "Oskeld. Most of both comes from the mark M·O; against it, the tips (spindle).");
  weighed.lines[0].maker_log_odds = 0;
  CHECK(contains(weighed.said(),
                 "Most of it comes from the mark M·O and the fitting (bar slide)"));
}

TEST_CASE("a legend that ends in a stop ends the sentence") {
  Weighed weighed;
  weighed.show.all<model::Mark>().front().text = "I.S.";
  weighed.lines.resize(1);
  CHECK(ends_with(weighed.said(), "Most of both comes from the mark I.S."));
}

TEST_CASE("a hand that only manner points to is said to be known so") {
  Weighed weighed;
  weighed.belief.maker.documented = false;
  CHECK(contains(weighed.said(), "with Maren Oskeld, by manner alone."));
  weighed.belief.maker.makers[0].p = 0.49;
  CHECK_FALSE(contains(weighed.said(), "Oskeld"));
}

TEST_CASE("a line is named by the record that it comes from") {
  Weighed weighed;
  weighed.lines = {{.what = "Award in 1956", .record = 12, .bits_year = 1},
                   {.what = "Seen: long legend: form 2 of 3", .record = 13, .bits_year = 0.5}};
  CHECK(
      contains(weighed.said(), "Most of it comes from an award and the stamp (long legend)."));
}

TEST_CASE("odds are never said higher than they are, nor a teller by name") {
  Weighed weighed;
  weighed.belief.maker.makers[0].p = 0.74;
  CHECK(contains(weighed.said(), "two in three with Maren Oskeld"));
  weighed.lines = {{.what = "Mr Able of 4 Quay Street says 1931",
                    .source = "Mr Able",
                    .bits_year = 1,
                    .maker_log_odds = 1}};
  CHECK_FALSE(contains(weighed.said(), "Able"));
  CHECK(contains(weighed.said(), "Most of both comes from what was told of it"));
  weighed.lines.clear();
  CHECK(contains(weighed.said(), "The year rests on its likeness to dated pieces"));
}

TEST_CASE("where nothing can be said, or the curator or the piece says it, no reasons stand") {
  Weighed weighed;
  weighed.phrases.made_row = 0;
  CHECK(weighed.said().empty());
  weighed.phrases.made_row = 3;
  weighed.phrases.maker_row = 0;
  CHECK(weighed.said().empty());
  weighed.phrases.maker_row = 1;
  weighed.show.all<model::Claim>().push_back({.id = {1},
                                              .subject = 1,
                                              .says = model::Says::inscribed,
                                              .from = Year{1954},
                                              .to = Year{1954}});
  weighed.show.settle();
  CHECK(weighed.said().empty());
  weighed.show.all<model::Claim>()[0].to = Year{1955};  // not one year: the reckoning weighs it
  weighed.show.settle();
  CHECK_FALSE(weighed.said().empty());
  weighed.belief.dated = false;
  CHECK(weighed.said().empty());
}
