#include "press/book.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"
#include "words/table.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

namespace {

const Printed& book() {
  static const Printed printed = *print_book(demo_printing().job(Audience::public_));
  return printed;
}

}  // namespace

TEST_CASE("the book fills its sheets, and says when many pages stay blank") {
  const std::string text = text_in(book().files.front().bytes);
  if (text.empty()) {
    return;
  }
  const auto pages = std::count(text.begin(), text.end(), '\f');  // pdftotext ends a page so
  CHECK(pages >= 120);
  CHECK(pages % 16 == 0);
  std::size_t blank = 0;  // at the end
  while (blank < text.size() && text[text.size() - 1 - blank] == '\f') {
    ++blank;
  }
  const bool told =
      std::any_of(book().findings.begin(), book().findings.end(),
                  [](const Problem& one) { return one.where == "the last signature"; });
  CHECK(told == (blank - 1 > 2));
}

TEST_CASE("the note on method prints every row of the table from odds to words") {
  const std::string text = flattened(text_in(book().files.front().bytes));
  if (text.empty()) {
    return;
  }
  for (const auto* table : {&words::year_table(), &words::maker_table(), &words::place_table(),
                            &words::replaced_table()}) {
    for (const words::TableRow& row : *table) {
      CAPTURE(row.phrase);
      CHECK(contains(text, flattened(row.phrase)));
      CHECK(contains(text, "Says: "));
    }
  }
}

TEST_CASE("figures of essays are printed with their numbers; what they lack is told") {
  const DemoPrinting& demo = demo_printing();
  const words::Numbering numbering(demo.show);
  std::vector<std::string> in_book;
  for (const words::Place& place : numbering.places()) {
    if (place.pick->in_book && in_book.size() < 3) {
      in_book.push_back(place.piece->number);
    }
  }
  PressJob job = demo.job(Audience::public_);
  job.texts = {
      {"essays/1.md", fmt::format("# Backs\n\nSee [fig {0}].\n\n"
                                  "![Three backs](<{0} back>)\n\n"
                                  "![Three backs](<{0} back, {1} back, {2} back>)\n\n"
                                  "![A hinge](<{0} side>)\n\n![The bench](bench.png)\n",
                                  in_book[0], in_book[1], in_book[2])}};
  const auto printed = print_book(job);
  REQUIRE(printed);
  const auto told = [&](std::string_view what) {
    return std::count_if(printed->findings.begin(), printed->findings.end(),
                         [&](const Problem& one) { return contains(one.what, what); });
  };
  CHECK(told("has no picture of " + in_book[0] + ", side") == 1);
  CHECK(told("the picture of a figure has no credit") == 1);
  const std::string text = replace_all(text_in(printed->files.front().bytes), "\u00A0", " ");
  if (!text.empty()) {
    CHECK(contains(text, "Fig. 1"));
    CHECK(contains(text, "Fig. 2"));
    CHECK(contains(text, "Fig. 4"));
    CHECK(contains(text, "A hinge"));
  }
}

TEST_CASE("an absurdly long title is told with its number; the book comes out all the same") {
  const DemoPrinting& demo = demo_printing();
  model::Show show = show_of(demo.demo);
  const words::Numbering numbering(show);
  const auto place = std::find_if(numbering.places().begin(), numbering.places().end(),
                                  [](const words::Place& one) { return one.pick->in_book; });
  const model::Id<model::Piece> id = place->piece->id;
  const int number = place->number;
  for (model::Piece& piece : show.all<model::Piece>()) {
    for (int word = 0; piece.id == id && word < 300; ++word) {
      piece.title += " and a herring";
    }
  }
  show.settle();
  const PressJob usual = demo.job(Audience::public_);
  const auto printed = print_book({show, usual.beliefs, usual.phrases, usual.fonts,
                                   usual.photograph, usual.audience, usual.day});
  REQUIRE(printed);
  const auto found =
      std::find_if(printed->findings.begin(), printed->findings.end(),
                   [](const Problem& one) { return one.fix == "shorten the title"; });
  REQUIRE(found != printed->findings.end());
  CHECK(ends_with(found->where, fmt::format("number {}", number)));
}

TEST_CASE("a picture too large to open is told by its file, and a frame stands in its place") {
  const DemoPrinting& demo = demo_printing();
  PressJob job = demo.job(Audience::public_);
  const auto usual = job.photograph;
  const words::Numbering numbering(demo.show);
  std::string file;
  for (const model::Photograph& one : demo.show.all<model::Photograph>()) {
    const words::Place* place = numbering.place_of(one.piece);
    if (file.empty() && place != nullptr && place->pick->in_book &&
        one.view == model::View::front) {
      file = one.file;
    }
  }
  job.photograph = [&](const model::Photograph& photograph) -> Result<std::string> {
    std::string bytes = *usual(photograph);
    if (photograph.file == file) {  // 20000 x 20000, as the head of a PNG says it
      bytes.replace(16, 8, std::string("\0\0\x4e\x20\0\0\x4e\x20", 8));
    }
    return bytes;
  };
  const auto printed = print_book(job);
  REQUIRE(printed);
  const auto told = std::count_if(
      printed->findings.begin(), printed->findings.end(), [&](const Problem& one) {
        return contains(one.what, "400 megapixels") && contains(one.where, file);
      });
  CHECK(told >= 1);
  const std::string text = text_in(printed->files.front().bytes);
  CHECK((text.empty() || contains(text, "photograph missing")));
}

TEST_CASE("lines of the book are even in both trims, and few end in hyphens after each other") {
  for (const char* trim : {"A", "B"}) {
    const DemoPrinting& demo = demo_printing();
    model::Show show = show_of(demo.demo);
    show.all<model::Setting>().push_back({{9999}, "book.trim", trim});
    show.settle();
    const PressJob usual = demo.job(Audience::public_);
    const auto printed = print_book({show, usual.beliefs, usual.phrases, usual.fonts,
                                     usual.photograph, usual.audience, usual.day});
    REQUIRE(printed);
    for (const Problem& one : printed->findings) {
      CAPTURE(to_line(one));
      CHECK_FALSE(contains(one.what, "both end in a hyphen"));
      CHECK_FALSE(contains(one.what, "wider than"));
      CHECK_FALSE(contains(one.what, "over twice the natural"));
    }
  }
}

TEST_CASE("pictures without a credit are told with their numbers") {
  model::Show show = show_of(demo_printing().demo);
  for (model::Photograph& one : show.all<model::Photograph>()) {
    one.credit.clear();
  }
  show.settle();
  const DemoPrinting& demo = demo_printing();
  const PressJob usual = demo.job(Audience::public_);
  const PressJob job{show,        usual.beliefs,    usual.phrases,
                     usual.fonts, usual.photograph, usual.audience,
                     usual.day};
  const auto printed = print_book(job);
  REQUIRE(printed);
  const auto found =
      std::count_if(printed->findings.begin(), printed->findings.end(),
                    [](const Problem& one) { return contains(one.what, "have no credit"); });
  CHECK(found == 1);
}

TEST_CASE("readers of structure hear headings, whole paragraphs and pictures in words") {
  const Path file = std::filesystem::temp_directory_path() / "backmark-book-structure.pdf";
  REQUIRE(write_file(file, book().files.front().bytes));
  std::string tree;
  if (std::FILE* pipe =
          popen(("pdfinfo -struct '" + file.string() + "' 2>/dev/null").c_str(), "r")) {
    char buffer[4096];
    while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, pipe)) {
      tree.append(buffer, got);
    }
    pclose(pipe);
  }
  std::filesystem::remove(file);
  if (tree.empty()) {
    MESSAGE("skipped: pdfinfo is not here, so the structure was not read back");
    return;
  }
  CHECK(contains(tree, "H1"));
  CHECK(contains(tree, "Figure"));
}

TEST_CASE("the same book comes out, byte for byte, of any number of threads") {
  for (const unsigned threads : {1U, 3U}) {
    PressJob job = demo_printing().job(Audience::public_);
    job.threads = threads;
    const auto printed = print_book(job);
    REQUIRE(printed);
    CHECK(printed->files.front().bytes == book().files.front().bytes);
    CHECK(printed->findings == book().findings);
  }
}
