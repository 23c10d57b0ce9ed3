// Variants that followed each other in a known order (a legend shortened step by step), as they
// are seen on pieces.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/encode.h"
#include "model/show.h"

namespace backmark::evidence {

// A variant of a lineage seen on a piece.
struct SeenInSequence {
  std::size_t lineage = 0;  // place in Show::all<Lineage>()
  int variant = 0;          // oldest first
  double certainty = 1;
  std::int32_t record = 0;           // id of the mark or observation
  model::Id<model::Character> seen;  // none: a mark
  bool of_maker = false;             // the lineage is one maker's
  std::string what;                  // in words: "Marked VESSEN: second of 3 forms"
};

// A legend without what strikes and wear change: letters, figures and "&" in lower case.
std::string plain_legend(std::string_view text);

// All lineages of a show by what is seen: legends of marks for the lineages of makers, values
// of the character for those of everybody. Characters of replaceable parts are left to the
// reckoning of parts.
class Sequences {
 public:
  explicit Sequences(const model::Show& show);
  // One entry a lineage, the first thing seen of it.
  std::vector<SeenInSequence> on(const std::vector<Sight>& sights,
                                 std::span<const model::Mark> marks) const;

 private:
  struct Place {
    std::size_t lineage = 0;
    int variant = 0;
    int variants = 0;
  };
  std::map<std::string, std::vector<Place>, std::less<>> by_legend_;
  std::map<std::pair<std::int32_t, std::string>, std::vector<Place>> by_value_;
};

}  // namespace backmark::evidence
