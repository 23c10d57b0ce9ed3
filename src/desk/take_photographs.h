// Photographs into a show: matched to pieces by the names of their files, copied byte for byte.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "base/json_fwd.h"
#include "desk/open.h"

namespace backmark::desk {

struct OfferedPicture {
  std::string name;  // of the file, without folders
  std::string bytes;
};

// The next picture, or nothing: a folder need not fit in memory at once.
using NextPicture = std::function<std::optional<OfferedPicture>()>;

// One intake, be it one call or a lot of pictures that come one by one: the copies are laid
// into photos/ as they come, and one change says so at the end.
class PhotographIntake {
 public:
  explicit PhotographIntake(const OpenShow& open);
  PhotographIntake(PhotographIntake&&) noexcept;
  ~PhotographIntake();

  // Of this picture alone: {taken, same, unmatched} as below. Problem: io.
  Result<Json> take(const OfferedPicture& picture);
  // Writes the change and answers for all pictures. `open` may have moved on since. Problems:
  // those of apply(); the copies are gone then.
  Result<Json> finish(OpenShow& open, const Surroundings& around);
  // Takes the copies away again.
  void undo();

 private:
  class Body;
  std::unique_ptr<Body> body_;
};

// Takes what can be taken in one change; the copies are laid into photos/ first, under new
// names. {taken: [{number, view, file}], same: [{name, number}], unmatched: [{name, what,
// fix, and number if the name said one}]}. A picture that cannot be taken is told there and is
// no Problem. Problems: io, those of apply().
Result<Json> take_photographs(OpenShow& open,
                              const NextPicture& next,
                              const Surroundings& around);

// The pieces without a front or a back: [{number, missing: ["back"]}].
Json missing_views(const model::Show& show);

}  // namespace backmark::desk
