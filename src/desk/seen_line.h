// A line of shorthand: what somebody at the table saw, in any order.
//   line  = saying *( ";" saying )
//   saying = [ character ( ":" / "=" ) ] value *( "," value )
// A character is named by its key or label, in any case; without one, the value itself must be
// a word that the show knows of one character alone. "none" and "cannot tell" are values of any
// character.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json_fwd.h"
#include "model/show.h"

namespace backmark::desk {

struct Saying {
  std::string text;                             // as typed
  const model::Character* character = nullptr;  // none: it was not understood
  model::Seen seen = model::Seen::value;
  std::vector<std::string> values;
  double number = 0;
  std::string trouble;            // why it was not understood
  std::vector<std::string> near;  // whole sayings that would be
};

// Empty sayings are left out. Nothing is refused: what is not understood says so.
std::vector<Saying> read_line(const model::Show& show, std::string_view line);

// [{text, label, value, trouble, near}] for a page.
Json sayings_json(const std::vector<Saying>& sayings);

}  // namespace backmark::desk
