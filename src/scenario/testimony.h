// What papers and people say of the pieces: true, loose or wrong, and all of it on record.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/random.h"
#include "base/year.h"
#include "model/knowledge.h"
#include "scenario/truth.h"
#include "scenario/work.h"

namespace backmark::scenario {

enum class Saying {
  made,
  made_by,
  inscribed,
  acquired,
  commissioned,
  awarded,
  exhibited,
  altered
};

struct Statement {
  std::size_t work = 0;
  Saying saying = Saying::made;
  std::string source;  // key of a source of source_cards()
  std::string text;
  std::string date;  // as written: "about 1953", "1948/1952"
  std::optional<Year> from;
  std::optional<Year> to;
  bool approximate = false;
  int maker = -1;         // place in makers(), for `made_by`
  std::string qualifier;  // "attributed to"
  std::string party;
};

// Everything said of one piece with its ordinary luck.
void testify(Random& random, std::size_t at, const Work& work, std::vector<Statement>& into);

// The three wrong stories of three families, told of pieces they cannot be true of; and the
// truth of them. Fewer when no piece suits.
std::vector<WrongStory> tell_wrong_stories(const std::vector<Work>& works,
                                           std::vector<Statement>& into);

struct SourceCard {
  std::string key;
  std::string title;
  model::SourceKind kind = model::SourceKind::document;
  std::optional<Year> year;
  std::vector<std::string> derives_from;  // keys
  std::optional<double> reliability;
  std::string citation;
};
const std::vector<SourceCard>& source_cards();

// What sources say of the form itself: who made the first slide tie on the coast.
struct FirstSaying {
  std::string source;
  std::string maker;  // key
  std::optional<Year> from;
  std::optional<Year> to;
  std::string text;
};
const std::vector<FirstSaying>& first_sayings();

// "This fitting from about … to about …", as the survey of fittings has it.
struct UseSaying {
  std::string character;  // key
  std::string value;
  std::optional<Year> from;
  std::optional<Year> to;
  std::string source;
};
const std::vector<UseSaying>& use_sayings();

}  // namespace backmark::scenario
