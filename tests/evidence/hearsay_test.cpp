// Years that are only told teach style, and nothing is scored on them.
#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

#include "evidence/grown_show.h"
#include "evidence/reckon.h"
#include "evidence/style.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

Grown grown(std::uint64_t seed) {
  return Grower({.pieces = 300, .seed = seed}).grow();
}

// Leaves out the stories of the show's tellers, or all that is on record of its years.
void leave_out(bool stories, Grown& grown) {
  std::erase_if(grown.show.all<model::Claim>(), [&](const model::Claim& claim) {
    const bool story =
        std::find(grown.story.begin(), grown.story.end(), claim.id.value) != grown.story.end();
    return story == stories;
  });
  grown.show.settle();
}

Reckoning fitted(const model::Show& show) {
  auto reckoning = Reckoning::fit(show, {.chains = 0}, {});
  REQUIRE(reckoning);
  return std::move(*reckoning);
}

// Mean log p of the true year over undated pieces of which nothing is told.
double score(const Grown& grown, const Reckoning& reckoning) {
  double sum = 0;
  double count = 0;
  for (std::size_t i = 0; i < grown.year.size(); ++i) {
    if (grown.dated[i] == 0 && grown.story[i] == 0) {
      const model::YearBelief year = reckoning.judge(i).year;
      const auto at = static_cast<std::size_t>(grown.year[i] - year.span.first.value);
      sum += std::log(std::max(at < year.p.size() ? year.p[at] : 0, 1e-6));
      count += 1;
    }
  }
  return sum / count;
}

StyleTable two_fashions(bool told) {
  StyleTable table;
  table.characters.push_back({.name = "cord"});
  table.characters.back().vocabulary.add("braided");
  table.characters.back().vocabulary.add("flat");
  for (int i = 0; i < 60; ++i) {
    const bool early = i % 2 == 0;
    StylePiece piece;
    piece.lot = i;
    piece.stated = YearSpan{Year{early ? 1930 : 1980}, Year{early ? 1932 : 1982}};
    piece.hearsay = told && i >= 40;
    piece.values = {{.terms = {early ? 0 : 1}}};
    table.pieces.push_back(piece);
  }
  return table;
}

}  // namespace

TEST_CASE(
    "what is told of some pieces dates others better, though one story in seven is wrong") {
  double gain = 0;
  for (std::uint64_t seed = 31; seed < 37; ++seed) {
    const Grown show = grown(seed);
    Grown silent = grown(seed);
    leave_out(true, silent);
    gain += score(show, fitted(show.show)) - score(show, fitted(silent.show));
  }
  CHECK(gain / 6 > 0.005);
}

TEST_CASE("no answer is scored on hearsay, and it is heard all the same") {
  const auto all = fit_style(two_fashions(false), {}, {});
  const auto told = fit_style(two_fashions(true), {}, {});
  REQUIRE(all);
  REQUIRE(told);
  CHECK(all->lessons().left_out.size() == 60);
  CHECK(told->lessons().left_out.size() == 40);
  StyleTable fewer = two_fashions(true);
  fewer.pieces.resize(40);
  const auto unheard = fit_style(fewer, {}, {});
  REQUIRE(unheard);
  CHECK(told->curves().line(0, 0) != unheard->curves().line(0, 0));
}

TEST_CASE("a show of which years are only told cannot be dated by style") {
  Grown show = grown(41);
  leave_out(false, show);
  const Reckoning reckoning = fitted(show.show);
  const auto notes = reckoning.notes();
  CHECK(std::any_of(notes.begin(), notes.end(), [](const std::string& note) {
    return note.find("nothing can be dated by its style") != std::string::npos;
  }));
}
