#include "care/made_of.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace backmark::care {

bool says_material(const model::Character& character) {
  constexpr std::array<std::string_view, 6> ends = {"material", "materials", "metal",
                                                    "stone",    "_type",     "medium"};
  const bool worded =
      character.shape != model::Shape::number && character.shape != model::Shape::text;
  return worded && std::any_of(ends.begin(), ends.end(), [&](std::string_view end) {
           return ends_with(character.key, end);
         });
}

std::vector<MadeOf> made_of(const model::Show& show, const model::Piece& piece) {
  std::vector<MadeOf> found;
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character& character = *show.find(seen.character);
    if (seen.seen != model::Seen::value || !says_material(character)) {
      continue;
    }
    MadeOf one{std::string(show.text(character.part)), lower_ascii(show.text(seen.value))};
    const bool known = std::any_of(found.begin(), found.end(), [&](const MadeOf& other) {
      return other.part == one.part && other.value == one.value;
    });
    if (!known) {
      found.push_back(std::move(one));
    }
  }
  return found;
}

}  // namespace backmark::care
