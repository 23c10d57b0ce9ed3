// A line of shorthand: what somebody at the table saw, in any order.
//   line  = saying *( ";" saying )
//   saying = [ character ( ":" / "=" ) ] value *( "," value )
// A value that the show has not seen of its character becomes a term of it when it is kept; the
// reading says which are new, and what is nearest among the known.
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
  std::vector<std::string>
      fresh;  // of the values, words the show has not seen of the character
  double number = 0;
  std::string trouble;            // why it was not understood
  std::vector<std::string> near;  // whole sayings that would be
  bool new_character = false;     // it names a character that the show does not have
};

// Empty sayings are left out. Nothing is refused: what is not understood says so.
std::vector<Saying> read_line(const model::Show& show, std::string_view line);

// [{text, label, value, trouble, near, fresh, groups}] for a page. `groups`: of what was not
// understood, the whole sayings that would make it a term, a character each, likeliest first.
Json sayings_json(const model::Show& show, const std::vector<Saying>& sayings);

}  // namespace backmark::desk
