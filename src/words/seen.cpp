#include "words/seen.h"

#include <algorithm>

namespace backmark::words {
namespace {

bool is_of(const model::Show& show,
           const model::Observation& observation,
           std::string_view key) {
  const model::Character* character = show.find(observation.character);
  return character != nullptr && character->key == key;
}

}  // namespace

std::vector<SeenWord> words_seen(const model::Show& show,
                                 model::Id<model::Piece> piece,
                                 const std::vector<std::string_view>& keys) {
  std::vector<SeenWord> words;
  for (const std::string_view key : keys) {
    for (const model::Observation& observation : show.observations_of(piece)) {
      const std::string text(show.text(observation.value));
      const bool known = std::any_of(words.begin(), words.end(), [&text](const SeenWord& word) {
        return word.text == text;
      });
      if (observation.seen == model::Seen::value && !text.empty() && !known &&
          is_of(show, observation, key)) {
        words.push_back({text, observation.how});
      }
    }
  }
  return words;
}

std::optional<double> measure_seen(const model::Show& show,
                                   model::Id<model::Piece> piece,
                                   const std::vector<std::string_view>& keys) {
  for (const std::string_view key : keys) {
    std::optional<double> last;
    for (const model::Observation& observation : show.observations_of(piece)) {
      if (observation.seen == model::Seen::value && is_of(show, observation, key)) {
        last = observation.number;
      }
    }
    if (last) {
      return last;
    }
  }
  return {};
}

Looked looked_for(const model::Show& show,
                  model::Id<model::Piece> piece,
                  std::string_view key) {
  Looked looked = Looked::no;
  for (const model::Observation& observation : show.observations_of(piece)) {
    if (is_of(show, observation, key)) {
      looked = observation.seen == model::Seen::value  ? Looked::value
               : observation.seen == model::Seen::none ? Looked::none
                                                       : Looked::cannot_tell;
    }
  }
  return looked;
}

}  // namespace backmark::words
