#include <doctest/doctest.h>

#include "base/text.h"
#include "evidence/reckon.h"
#include "scenario/demo_records.h"
#include "words/phrase.h"
#include "words/score.h"

using namespace backmark;

TEST_CASE("on the demo show no phrase is worded beyond its odds") {
  const auto demo = scenario::make({});
  REQUIRE(demo);
  const model::Show show = scenario::records_of(*demo);
  const auto reckoning = evidence::Reckoning::fit(show, {}, {});
  REQUIRE(reckoning);
  const auto beliefs = reckoning->judge_all({});
  REQUIRE(beliefs);
  std::vector<words::KnownPiece> known;
  for (const scenario::PieceTruth& truth : demo->truth.pieces) {
    const model::Maker* maker = show.maker(truth.maker);
    known.push_back({show.piece(truth.number)->id, truth.year,
                     maker == nullptr ? model::Id<model::Maker>{} : maker->id});
  }
  const auto card = words::score_phrases(show, words::phrase_all(show, *beliefs), known);
  CHECK(card.years.size() >= 3);
  CHECK(card.makers.size() >= 2);
  for (const auto* rows : {&card.years, &card.makers}) {
    for (const words::PhraseScore& score : *rows) {
      const std::string line =
          fmt::format("{}: {} of {} true, at least {:.2f} claimed, true share {:.2f} to {:.2f}",
                      score.rows, score.hits, score.n, score.floor, score.low, score.high);
      MESSAGE(line);
      CHECK_MESSAGE(score.kept(), line);
    }
  }
}
