// Days and chances from the day counts of the calendar and the normal curve; rules as
// reference/restrictions.csv has them.
#include "assay/screen.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::assay;

namespace {

Day day(int year, unsigned month, unsigned of) {
  return Day{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{of}};
}

model::YearBelief even(int first, int last) {
  model::YearBelief belief{{Year{first}, Year{last}}, {}};
  // By days: a leap year has one more.
  double all = 0;
  for (int year = first; year <= last; ++year) {
    belief.p.push_back(std::chrono::year{year}.is_leap() ? 366 : 365);
    all += belief.p.back();
  }
  for (double& p : belief.p) {
    p /= all;
  }
  return belief;
}

const Screened* rule_of(const std::vector<Screened>& screened, const std::string& key) {
  const auto at = std::find_if(screened.begin(), screened.end(),
                               [&](const Screened& one) { return one.rule->key == key; });
  return at == screened.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("the chance of made before a day counts days") {
  CHECK(made_before(even(1935, 1944), day(1940, 6, 8)) ==
        doctest::Approx(0.5433889953).epsilon(1e-6));
  CHECK(made_before(even(1955, 1964), day(1962, 10, 24)) ==
        doctest::Approx(0.7810019162).epsilon(1e-6));
  CHECK(made_before(1970.0, 4.0, day(1972, 12, 21)) ==
        doctest::Approx(0.7711036371).epsilon(1e-5));
  CHECK(made_before(1950.0, 5.0, day(1947, 3, 3)) ==
        doctest::Approx(0.2855013657).epsilon(1e-5));
}

TEST_CASE("made before never clears a rule that tests when a thing was acquired") {
  OnRecord record{.materials = {{"bald eagle talon", "tip", 1}},
                  .year = even(1900, 1939),
                  .opening = day(2027, 6, 26)};
  auto screened = screen(record);
  const Screened* rule = rule_of(screened, "us-bald-eagle");
  REQUIRE(rule != nullptr);
  CHECK(*rule->p_made_before > 0.999);
  CHECK(!rule->p_before);
  CHECK(rule->state == State::hold);
  CHECK(rule->known.find("does not clear it") != std::string::npos);
  record.acquired_by = Year{1931};
  record.acquired_from = Year{1931};
  screened = screen(record);
  CHECK(rule_of(screened, "us-bald-eagle")->state == State::cleared);
  record.acquired_by = Year{1974};
  record.acquired_from = Year{1974};
  screened = screen(record);
  CHECK(*rule_of(screened, "us-bald-eagle")->p_before == 0);
  CHECK(rule_of(screened, "us-bald-eagle")->state == State::hold);
}

TEST_CASE("what was made after the day was not acquired before it") {
  const auto screened = screen({.materials = {{"golden eagle talon", "", 1}},
                                .year = even(1970, 1975),
                                .opening = day(2027, 6, 26)});
  const Screened* rule = rule_of(screened, "us-golden-eagle");
  REQUIRE(rule != nullptr);
  CHECK(*rule->p_before == 0);
  CHECK(rule->state == State::hold);
}

TEST_CASE("a hundred years are counted back from the opening") {
  const auto screened = screen({.materials = {{"tortoiseshell", "", 1}},
                                .year = even(1927, 1927),
                                .opening = day(2027, 5, 1)});
  const Screened* rule = rule_of(screened, "us-antique");
  REQUIRE(rule != nullptr);
  CHECK(rule->before == day(1927, 5, 1));
  CHECK(*rule->p_before == doctest::Approx(120.0 / 365));
}

TEST_CASE("a word that is seldom the restricted thing is asked after and not held") {
  const auto screened =
      screen({.materials = {{"horn", "", 1}, {"silver", "", 1}}, .opening = day(2027, 6, 26)});
  REQUIRE(screened.size() == 1);
  CHECK(screened[0].state == State::ask);
  CHECK(screened[0].p_restricted < 0.1);
  CHECK(!screened[0].p_made_before);
}

TEST_CASE("every rule has a day that is one, an event, something to ask and what it touches") {
  for (const reference::Restriction& rule : reference::restrictions()) {
    CHECK_MESSAGE(!rule.ask.empty(), rule.key);
    CHECK_MESSAGE(!rule.routes.empty(), rule.key);
    const std::vector<std::string> events{"acquired", "made",   "taken",   "imported",
                                          "sold",     "listed", "in force"};
    CHECK_MESSAGE(std::find(events.begin(), events.end(), rule.event) != events.end(),
                  rule.key);
  }
  for (const reference::RestrictedWord& word : reference::restricted_words()) {
    CHECK(word.share > 0);
    CHECK(word.share <= 1);
    const auto screened =
        screen({.materials = {{word.word, "", 1}}, .opening = day(2027, 2, 28)});
    CHECK(screened.size() == word.rules.size());
    for (const Screened& one : screened) {
      CHECK_MESSAGE(one.before.ok(), one.rule->key);
    }
  }
}
