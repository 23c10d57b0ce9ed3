// Laws and treaties that bear on materials, as questions to ask. Information, never legal
// advice.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::reference {

struct Restriction {
  std::string key;
  std::string law;
  std::string place;  // where it holds
  std::string taxon;  // what it is about
  // Which event the date tests: acquired, made, taken, imported, sold, listed, in force.
  std::string event;
  std::string before;               // a day, "1940-06-08", or "100 years" before the opening
  std::vector<std::string> routes;  // what it touches: display, sale, loan across a border ...
  std::string means;
  std::string ask;
  std::string checked;  // the day on which the row was last looked at
  std::string source;
  std::string status;
};

// A word of a record and how often it is the restricted thing.
struct RestrictedWord {
  std::string word;  // lower case
  double share = 0;  // 0 to 1
  std::vector<const Restriction*> rules;
  std::string source;
  std::string status;
};

const std::vector<Restriction>& restrictions();
const std::vector<RestrictedWord>& restricted_words();
// Null if the word is none of them.
const RestrictedWord* restricted_word(std::string_view word);

}  // namespace backmark::reference
