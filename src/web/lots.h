// Lots of photographs on their way into the show: sent picture by picture, one change at the
// end.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <string>

#include "desk/take_photographs.h"

namespace backmark::web {

// Not for several threads at once. A lot that nobody ends is ended when the next one is asked
// for and it has been still for `still_after`, so that nothing that was sent is lost.
class Lots {
 public:
  static constexpr std::int64_t still_after = 120;  // seconds
  static constexpr std::size_t most = 16;           // lots at a time

  // Of this picture alone, as PhotographIntake::take. Problem: refused, too many lots at a
  // time.
  Result<Json> offer(const std::string& lot,
                     const desk::OpenShow& open,
                     const desk::OfferedPicture& picture,
                     const desk::Surroundings& around);
  // Of all pictures of the lot. An unknown lot took nothing.
  Result<Json> end(const std::string& lot,
                   desk::OpenShow& open,
                   const desk::Surroundings& around);
  // Ends one lot that has been still for long; false: there is none.
  bool end_still(desk::OpenShow& open, const desk::Surroundings& around);

 private:
  struct Lot {
    desk::PhotographIntake intake;
    std::string who;
    std::int64_t touched = 0;
  };
  std::map<std::string, Lot> lots_;
};

}  // namespace backmark::web
