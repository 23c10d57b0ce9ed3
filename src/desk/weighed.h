// What was weighed of a show, kept between calls where the door keeps shows.
#pragma once

#include <string>
#include <utility>

#include "desk/open.h"
#include "desk/warm.h"

namespace backmark::desk {

// Made by `make`, which returns a Result<T>, of the show as it stands; or, where a door keeps
// it, what was made of the same show before (Warm::derived). With Wants::last_made, of a door
// that is in a hurry, it may look into an earlier show: records that it names may be gone.
template <class T, class Make>
Result<std::shared_ptr<const T>> weighed(OpenShow& open,
                                         const std::string& name,
                                         Make&& make,
                                         Wants wants = Wants::current) {
  if (open.warm != nullptr) {
    return open.warm->derived<T>(open.store, open.show, name, make, wants);
  }
  auto made = make();
  if (!made) {
    return made.problem();
  }
  return std::shared_ptr<const T>(std::make_shared<const T>(*std::move(made)));
}

}  // namespace backmark::desk
