// Who speaks for and against a claim, tellings of one story counted once.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "model/claim_test.h"
#include "model/show.h"

namespace backmark::evidence {

// A source, and what it says as far as the claim goes.
struct Voice {
  model::Id<model::Source> source;
  model::Id<model::Maker> maker;  // whom it names; none: it names nobody
  std::optional<Year> year;       // since when, as it says
  bool for_it = false;
  double reliability = 0.6;
  std::string origin;  // key of the first teller
  std::string says;
};

// Every claim and window on file that bears on the claim, in the order of the show.
std::vector<Voice> voices_on(const model::Show& show, const model::AskedClaim& claim);

// Those that count: one an origin and thing said (side and maker), the most reliable; in order.
std::vector<std::size_t> counted(const std::vector<Voice>& voices);

// Chance that no piece by another hand than `maker` is older than `year`.
using OlderThan = std::function<double(model::Id<model::Maker> maker, Year year)>;

// The claim from `p_pieces` and the voices. `unopposed` weighs the other makers named; only
// asked for "first by maker".
double weigh_voices(const model::Show& show,
                    const model::AskedClaim& claim,
                    double p_pieces,
                    const std::vector<Voice>& voices,
                    const OlderThan& unopposed);

}  // namespace backmark::evidence
