// Which piece and which side a picture shows, by the name that the camera's owner gave it:
// "ES-118_back (2).jpg" is the back of ES 118.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/piece.h"

namespace backmark::photo {

struct Named {
  std::size_t number = 0;  // index into the numbers
  model::View view = model::View::front;
};

// Reads the names of files against the numbers of a show. Case, leading zeros and what stands
// between letters and digits do not matter.
class NameReader {
 public:
  explicit NameReader(std::vector<std::string> numbers);

  // Nothing if the name begins with no number of the show. Of several the longest is taken, so
  // "ES 12.3 back" is ES 12.3 and not ES 12. Without a word for the side it is the front.
  std::optional<Named> read(std::string_view file_name) const;

 private:
  using Tokens = std::vector<std::string>;
  std::vector<std::pair<Tokens, std::size_t>> sorted_;
};

// "front", "back", "tips" ... as they stand in addresses; "tip" too.
std::optional<model::View> view_named(std::string_view word);
std::string_view name_of(model::View view);

// A name for the copy below photos/: "ES-118-back.jpg". Only letters, digits and hyphens of the
// number are kept.
std::string copy_name(std::string_view number, model::View view, std::string_view ending);

}  // namespace backmark::photo
