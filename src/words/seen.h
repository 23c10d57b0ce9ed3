// What was seen on a piece, looked up by character.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/show.h"

namespace backmark::words {

struct SeenWord {
  std::string text;
  model::How how = model::How::unsaid;
};

// What was seen of the characters with these keys, in the order of the keys, then of the
// observations. Equal words once.
std::vector<SeenWord> words_seen(const model::Show& show,
                                 model::Id<model::Piece> piece,
                                 const std::vector<std::string_view>& keys);

// The last measure of the first of these keys that has one.
std::optional<double> measure_seen(const model::Show& show,
                                   model::Id<model::Piece> piece,
                                   const std::vector<std::string_view>& keys);

// Whether the character was looked for at all, and whether nothing was there.
enum class Looked { no, value, none, cannot_tell };
Looked looked_for(const model::Show& show, model::Id<model::Piece> piece, std::string_view key);

}  // namespace backmark::words
