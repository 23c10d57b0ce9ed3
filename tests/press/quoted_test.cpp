#include "press/quoted.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::press;

namespace {

Block of_kind(Block::Kind kind, const std::string& key) {
  Block block;
  block.kind = kind;
  block.words = {{Span::Kind::words, Voice::roman, "He had the shop first. ", {}, -1},
                 {Span::Kind::citation, Voice::roman, "Vessen, letter", key, -1}};
  return block;
}

model::Show with_letter(model::Leave leave) {
  model::Show show;
  show.all<model::Source>().push_back({.id = {1}, .key = "vessen_letter"});
  show.all<model::Permission>().push_back(
      {.id = {2}, .subject = 1, .use = model::Use::print, .leave = leave});
  show.settle();
  return show;
}

}  // namespace

TEST_CASE("words of a source are quoted only with its leave to print") {
  Prose prose;
  prose.file = "1-first.md";
  prose.blocks = {of_kind(Block::Kind::quotation, "vessen_letter")};
  CHECK(quoted_without_leave(prose, with_letter(model::Leave::given)).empty());
  const Problems asked = quoted_without_leave(prose, with_letter(model::Leave::asked));
  REQUIRE(asked.size() == 1);
  CHECK(asked.front().where == "1-first.md");
  CHECK(contains(asked.front().what, "vessen_letter"));
  CHECK(quoted_without_leave(prose, with_letter(model::Leave::refused)).size() == 1);
}

TEST_CASE(
    "a source that is cited in one's own words needs no leave, nor does a published work") {
  Prose prose;
  prose.blocks = {of_kind(Block::Kind::paragraph, "vessen_letter"),
                  of_kind(Block::Kind::quotation, "corrow1957")};
  CHECK(quoted_without_leave(prose, with_letter(model::Leave::refused)).empty());
}

TEST_CASE("a quotation is also held to the works that its note cites, and so is an epigraph") {
  Prose prose;
  Block quotation;
  quotation.kind = Block::Kind::quotation;
  quotation.words = {{Span::Kind::note, Voice::roman, {}, {}, 0}};
  prose.blocks = {quotation};
  prose.notes = {{{Span::Kind::citation, Voice::roman, "Vessen", "vessen_letter", -1}}};
  CHECK(quoted_without_leave(prose, with_letter(model::Leave::asked)).size() == 1);
  prose.blocks.clear();
  prose.epigraph = {{Span::Kind::citation, Voice::roman, "Vessen", "vessen_letter", -1}};
  CHECK(quoted_without_leave(prose, with_letter(model::Leave::asked)).size() == 1);
}
