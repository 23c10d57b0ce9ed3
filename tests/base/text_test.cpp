#include "base/text.h"

#include <doctest/doctest.h>

using namespace backmark;

TEST_CASE("Text is broken at spaces into rows that fit, and loses nothing") {
  const auto rows =
      backmark::rows_of("Net-work of café silver, supercalifragilistic, and jet", 12);
  CHECK(rows == std::vector<std::string>{"Net-work of", "café silver,", "supercalifragilistic,",
                                         "and jet"});
  CHECK(backmark::join(rows, " ") == "Net-work of café silver, supercalifragilistic, and jet");
}

TEST_CASE("white space at the ends goes, no-break spaces too") {
  CHECK(trim(" \t a b\xC2\xA0\n") == "a b");
  CHECK(trim("").empty());
  CHECK(trim("\xC2\xA0").empty());
}

TEST_CASE("splitting and joining give the text back") {
  const std::string text = "a;;b;";
  std::vector<std::string> parts;
  for (const auto part : split(text, ";")) {
    parts.emplace_back(part);
  }
  CHECK(parts.size() == 4);
  CHECK(join(parts, ";") == text);
}

TEST_CASE("a number is the whole text or nothing") {
  CHECK(to_number("5.875") == 5.875);
  CHECK_FALSE(to_number("5,875"));
  CHECK_FALSE(to_number("5.8 cm"));
  CHECK(to_whole("-40") == -40);
}

TEST_CASE("UTF-8 is judged by RFC 3629") {
  CHECK(is_utf8("caf\xC3\xA9"));
  CHECK_FALSE(is_utf8("caf\xE9"));           // Windows-1252
  CHECK_FALSE(is_utf8("\xC0\xAF"));          // overlong slash
  CHECK_FALSE(is_utf8("\xED\xA0\x80"));      // surrogate
  CHECK_FALSE(is_utf8("\xF4\x90\x80\x80"));  // past U+10FFFF
  CHECK(to_utf8(to_code_points("\xE2\x80\x93 \xF0\x9D\x84\x9E")) ==
        "\xE2\x80\x93 \xF0\x9D\x84\x9E");
}

TEST_CASE("a slip of the finger finds the word that was meant") {
  CHECK(edit_distance("maker", "mkaer") == 1);  // neighbours swapped
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(closest("numbr", {"title", "number", "maker"}) == "number");
  CHECK_FALSE(closest("zzz", {"title", "number"}));
}

TEST_CASE("columns line up by letters, not by bytes") {
  CHECK(padded("caf\xC3\xA9", 6) == "caf\xC3\xA9  ");
  CHECK(padded("clasp", 3) == "clasp");
  CHECK(shortened("caf\xC3\xA9s", 5) == "caf\xC3\xA9s");
  CHECK(shortened("brooch", 4) == "bro\xE2\x80\xA6");
  CHECK(without_trailing_spaces("a b  ") == "a b");
  CHECK(without_trailing_spaces("   ").empty());
}
