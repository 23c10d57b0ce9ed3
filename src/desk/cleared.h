// The one filter between a show and whatever leaves it: papers and exports see only what may be
// seen, so that none of them can forget to ask.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "base/json_fwd.h"
#include "model/show.h"
#include "words/audience.h"

namespace backmark::desk {

struct Cleared {
  model::Show show;
  std::vector<std::string> withheld;  // numbers of pieces of which nothing leaves
  std::vector<std::string>
      unseen;  // numbers of pieces whose pictures stay behind, wholly or in part
};

// Whether papers for these readers go out to the world or serve the work on the show.
bool is_published(words::Audience audience);

// A copy of the show. Of a withheld piece there are no picks, pictures, observations or words
// left. `published`: pictures need leave to be printed and carry its credit; else (working
// papers) only those of gated pieces are held back.
Cleared cleared(const model::Show& show, bool published);

// Pictures of gated pieces that nobody may look at, not even at the desk.
std::set<model::Id<model::Photograph>> hidden_pictures(const model::Show& show);

// Takes the withheld pieces themselves out too, for who looks at pieces one by one.
void leave_out(Cleared& cleared);

// "2 pieces are withheld until their communities answer: ...": nothing if nothing is.
std::string withheld_line(const Cleared& cleared);
Json withheld_json(const Cleared& cleared);

}  // namespace backmark::desk
