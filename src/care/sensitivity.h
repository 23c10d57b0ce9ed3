// How soon light changes a piece: the class of its most sensitive part, from what the record
// says it is made of. A dye or a cord that nobody recorded counts as high, and says so.
#pragma once

#include <string>

#include "model/show.h"
#include "reference/light.h"

namespace backmark::care {

struct Sensitivity {
  reference::LightClass light_class = reference::LightClass::none;
  int step = 0;      // of blue wool, that a fade is reckoned with; 0: none, it does not fade
  std::string part;  // kind of part, "cord"; empty: the piece as a whole
  std::string why;   // "braided rayon: textile cord, a bright dye (red)"
  std::string source;
  std::string status;
  bool counted = false;  // not known, and counted on the safe side
};

// The quickest step of a class; 0 for R0.
int quickest_step(reference::LightClass light_class);
// "R3" and so on; none if it is no code.
std::optional<reference::LightClass> light_class_of(std::string_view code);

// The most sensitive part decides. A class that `said` names (of the piece, or of its lender)
// stands in place of the record's; null: nobody named one. Free text and hidden parts (a
// backing) are not read.
Sensitivity most_sensitive(const model::Show& show,
                           const model::Piece& piece,
                           const model::Requirement* said);

}  // namespace backmark::care
