#include "press/essay.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::press;

namespace {

// Two pieces, of which ES 1 is in the book with the number 1, and one work.
struct World {
  World() {
    const auto add = [this](std::int32_t id, const std::string& number) {
      model::Piece piece;
      piece.id = {id};
      piece.number = number;
      show.all<model::Piece>().push_back(piece);
    };
    add(1, "ES 1");
    add(2, "ES 2");
    show.all<model::Pick>().push_back({.id = {3}, .piece = {1}});
    show.settle();
    numbering.emplace(show);
    references.push_back({.key = "rell-1951",
                          .authors = {{"Rell", "Ina", ""}},
                          .title = "Backs",
                          .year = "1951"});
  }
  Essay read(std::string_view text) const {
    auto essay = read_essay(text, "essay.md", {show, *numbering, references});
    REQUIRE(essay);
    return std::move(*essay);
  }
  model::Show show;
  std::optional<words::Numbering> numbering;
  std::vector<model::Reference> references;
};

Problem only_finding(const Essay& essay) {
  REQUIRE(essay.findings.size() == 1);
  return essay.findings[0];
}

}  // namespace

TEST_CASE("a chapter is read with title, author, epigraph, heads, lists and curved quotes") {
  const Essay essay = World().read(R"(# Reading a "Back"

*Ina Rell*

> A back is made to work.

First *plain* words -- and `M·O`.

## Five ways

1. tubes
2. eights
   - of wire

> quoted
)");
  CHECK(essay.findings.empty());
  CHECK(essay.prose.title == "Reading a “Back”");
  CHECK(essay.prose.author == "Ina Rell");
  CHECK(plain_text(essay.prose.epigraph) == "A back is made to work.");
  const auto& blocks = essay.prose.blocks;
  REQUIRE(blocks.size() == 6);
  CHECK(plain_text(blocks[0].words) == "First plain words – and M·O.");
  CHECK(blocks[0].words[1].voice == Voice::italic);
  CHECK(blocks[0].words[3].voice == Voice::small_caps);
  CHECK(blocks[1].kind == Block::Kind::heading);
  CHECK(blocks[1].level == 2);
  CHECK(blocks[2].label == "1.");
  CHECK(blocks[3].label == "2.");
  CHECK(blocks[4].label == "•");
  CHECK(blocks[4].level == 2);
  CHECK(blocks[5].kind == Block::Kind::quotation);
  CHECK(blocks[5].where == "essay.md, line 15");
}

TEST_CASE("notes are counted by their marks, and may cite") {
  const Essay essay = World().read(
      "# T\n\nOne.[^b] Two.[^a]\n\n[^a]: Second [@rell-1951, 12-14].\n[^b]: First.\n");
  CHECK(essay.findings.empty());
  REQUIRE(essay.prose.notes.size() == 2);
  CHECK(plain_text(essay.prose.notes[0]) == "First.");
  CHECK(plain_text(essay.prose.notes[1]) == "Second Rell\u00a01951, pp.\u00a012–14.");
  const Words& words = essay.prose.blocks.at(0).words;
  REQUIRE(words.size() == 4);
  CHECK(words[1].kind == Span::Kind::note);
  CHECK(words[1].note == 0);
  CHECK(words[3].note == 1);
  CHECK(essay.cited == std::vector<std::string>{"rell-1951"});
}

TEST_CASE("a piece is called by its number in the show, and pages are asked for") {
  const Essay essay = World().read("# T\n\nSee [#ES 1] on page [page\n#ES 1].\n");
  CHECK(essay.findings.empty());
  const Words& words = essay.prose.blocks.at(0).words;
  REQUIRE(words.size() == 5);
  CHECK(words[1] == Span{Span::Kind::piece, Voice::roman, "1", "ES 1", -1});
  CHECK(words[3].kind == Span::Kind::page);
  CHECK(words[3].key == "piece ES 1");
}

TEST_CASE("a figure shows pieces by view, or a file below photos") {
  const Essay essay =
      World().read("# T\n\n![A *back*](<ES 1 front, ES 1 back>)\n\n![The bench](bench.jpg)\n");
  CHECK(essay.findings.empty());
  const auto& blocks = essay.prose.blocks;
  REQUIRE(blocks.size() == 2);
  CHECK(blocks[0].kind == Block::Kind::figure);
  CHECK(plain_text(blocks[0].words) == "A back");
  CHECK(blocks[0].pieces ==
        std::vector<FigurePiece>{{"ES 1", "front", ""}, {"ES 1", "back", ""}});
  CHECK(blocks[1].pieces == std::vector<FigurePiece>{{"", "", "bench.jpg"}});
}

TEST_CASE("figures count through the book, and calls follow their numbers") {
  const World world;
  const auto read = [&](std::string_view text, int before) {
    auto essay = read_essay(text, "essay.md", {world.show, *world.numbering, {}, before});
    REQUIRE(essay);
    return std::move(*essay);
  };
  const std::string text =
      "# T\n\nIn [fig bench.jpg].[^1] [Fig ES 1] too.\n\n![A](<ES 1 back>)\n\n"
      "![B](bench.jpg \"Ina Rell\")\n\n[^1]: See [fig ES 1].\n";
  const Essay first = read(text, 0);
  CHECK(first.findings.empty());
  CHECK(plain_text(first.prose.blocks.at(0).words) == "In fig.\u00A02. Fig.\u00A01 too.");
  CHECK(first.prose.blocks.at(2).credit == "Ina Rell");
  const Essay later = read(text, 4);
  CHECK(plain_text(later.prose.blocks.at(0).words) == "In fig.\u00A06. Fig.\u00A05 too.");
  CHECK(plain_text(later.prose.notes.at(0)) == "See fig.\u00A05.");
  CHECK(later.prose.blocks.at(0).words.at(1).key == "figure 6");
  const Problem told = only_finding(read("# T\n\nWords\nand [fig ES 1].\n", 0));
  CHECK(told.what == "no figure of this chapter shows \"ES 1\"");
  CHECK(told.where == "essay.md, line 4");
}

TEST_CASE("each fault of a text is told with its line and what to do") {
  const World world;
  Problem told = only_finding(world.read("# T\n\nWords\nand [@rell-1915].\n"));
  CHECK(told.what == "no work has the key \"rell-1915\"");
  CHECK(told.where == "essay.md, line 4");
  CHECK(told.fix == "did you mean [@rell-1951]?");
  told = only_finding(world.read("# T\n\nSee [#ES 3].\n"));
  CHECK(told.what == "there is no piece \"ES 3\"");
  told = only_finding(world.read("# T\n\nSee [#ES 2].\n"));
  CHECK(told.what == "ES 2 is not in the book");
  told = only_finding(world.read("# T\n\nSome *open words.\n"));
  CHECK(contains(told.what, "emphasis"));
  CHECK(told.where == "essay.md, line 3");
  told = only_finding(world.read("# T\n\nWords.\n\n[^x]: Note.\n"));
  CHECK(told.what == "the note [^x] has no mark in the text");
  CHECK(told.where == "essay.md, line 5");
  told = only_finding(world.read("# T\n\nWords.[^x]\n"));
  CHECK(told.what == "the note [^x] has no text");
  told = only_finding(world.read("# T\n\nA <b>word.\n"));
  CHECK(told.what == "HTML is not printed");
  told = only_finding(world.read("# T\n\n    code\n"));
  CHECK(contains(told.what, "code"));
  told = only_finding(world.read("Words only.\n"));
  CHECK(told.what == "the text has no title");
  told = only_finding(world.read("# T\n\nA [link](elsewhere.html).\n"));
  CHECK(contains(told.what, "leads nowhere"));
  told = only_finding(world.read("# T\n\n![A](../secret.jpg)\n"));
  CHECK(contains(told.what, "is no picture"));
}

TEST_CASE("very deep quotations are told and not followed") {
  const Essay essay = World().read("# T\n\n" + std::string(5000, '>') + " deep\n");
  CHECK(only_finding(essay).what == "lists and quotations go too deep");
}

TEST_CASE("works stand in brackets in the text and bare in a note") {
  const Essay essay = World().read(
      "# T\n\nTold twice [@rell-1951, 12; @rell-1951].[^a]\n\n[^a]: See [@rell-1951].\n");
  CHECK(essay.findings.empty());
  CHECK(plain_text(essay.prose.blocks[0].words) ==
        "Told twice (Rell\u00a01951, p.\u00a012; Rell\u00a01951).");
  CHECK(plain_text(essay.prose.notes[0]) == "See Rell\u00a01951.");
}
