// A change to one piece that is only thought of: what would be said if this were seen or told.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::evidence {

// What one character would show. It stands instead of all that is recorded of that character.
struct SeenInstead {
  model::Id<model::Character> character;
  model::Seen seen = model::Seen::value;  // cannot_tell: as if never recorded
  std::vector<std::string> values;        // words need not be known to the show
  double number = 0;                      // in the character's unit; only for numbers
};

struct WhatIf {
  std::vector<SeenInstead> seen;
  // Ids of observations, marks, claims and events to be ignored.
  std::set<std::int32_t> removed;
  std::vector<model::Mark> marks;    // added; their piece is of no account
  std::vector<model::Claim> claims;  // added; their subject is of no account
  std::vector<model::Event> events;  // added; their piece is of no account
  std::optional<std::string> title;  // instead of the recorded one
  std::optional<std::string> form;
};

}  // namespace backmark::evidence
