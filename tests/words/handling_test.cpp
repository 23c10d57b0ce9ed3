#include "words/handling.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::words;

namespace {

std::string handling_of(const char* material) {
  model::Show show;
  model::Piece piece;
  piece.id = {1};
  model::Character character;
  character.id = {2};
  character.key = "material";
  model::Observation seen;
  seen.id = {3};
  seen.piece = piece.id;
  seen.character = character.id;
  seen.value = show.pool.take(material);
  show.all<model::Piece>().push_back(piece);
  show.all<model::Character>().push_back(character);
  show.all<model::Observation>().push_back(seen);
  show.settle();
  return handling_text(show, piece.id);
}

}  // namespace

TEST_CASE("materials bring the words of how to handle them") {
  // Common practice, no source: sulphur in rubber, wool felt and newsprint tarnishes silver.
  CHECK(contains(handling_of("blackened silver"), "no rubber, felt or newsprint"));
  CHECK(contains(handling_of("feather under glass"), "pesticide"));
  CHECK(contains(handling_of("feather under glass"), "no shock"));
  CHECK(contains(handling_of("Bone or ivory"), "gloves"));
}

TEST_CASE("a word within another is no material, and slate needs no word") {
  CHECK_FALSE(contains(handling_of("nickel silver"), "Silver:"));
  CHECK(handling_of("platinum").empty());  // no tin in it
  CHECK(handling_of("slate").empty());
}
