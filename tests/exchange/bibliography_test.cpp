// Field names and types are those of the CSL 1.0.2 schema and of BibTeX, from memory; the works
// are invented.
#include "exchange/bibliography.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::exchange;
using model::ReferenceKind;

TEST_CASE("a work in CSL-JSON is read with names, host, year and identifier") {
  const auto read =
      read_bibliography(R"([{"id": "rell-tubes", "type": "chapter", "title": "Tubes",
    "author": [{"family": "Rell", "given": "Ina"}], "editor": [{"literal": "Harbour Board"}],
    "container-title": "Fittings", "issued": {"date-parts": [[1951, 3]]}, "page": "12-14",
    "publisher": "Quay Press", "publisher-place": "Ennet", "DOI": "10.0/0"}])",
                        "references.json");
  REQUIRE(read);
  REQUIRE(read->references.size() == 1);
  const model::Reference& one = read->references[0];
  CHECK(one.kind == ReferenceKind::part);
  CHECK(one.authors == std::vector<model::CitedName>{{"Rell", "Ina", ""}});
  CHECK(one.editors[0].literal == "Harbour Board");
  CHECK(one.host == "Fittings");
  CHECK(one.year == "1951");
  CHECK(one.identifier == "DOI 10.0/0");
  CHECK(read->faults.empty());
}

TEST_CASE("faults of single works are told and the rest is kept") {
  const auto read = read_bibliography(
      R"([{"id": "a", "title": "A"}, {"id": "a", "title": "B"}, {"title": "C"}, {"id": "d"}, 7])",
      "references.json");
  REQUIRE(read);
  CHECK(read->references.size() == 1);
  REQUIRE(read->faults.size() == 4);
  CHECK(read->faults[0].what == "two works have the key \"a\"");
  CHECK(read->faults[0].where == "references.json, item 2");
  CHECK(contains(read->faults[1].what, "without a key"));
  CHECK(read->faults[2].what == "\"d\" has no title");
}

TEST_CASE("what is no list of works is one problem that says what to do") {
  const auto read = read_bibliography("{\"id\": 1}", "references.json");
  REQUIRE_FALSE(read);
  CHECK(read.problem().where == "references.json");
  CHECK_FALSE(read_bibliography("no entry here", "list.bib"));
  CHECK_FALSE(read_bibliography("\xff\xfe", "list.bib"));
}

TEST_CASE("BibTeX with words, joined values, accents, bodies and a comment is read") {
  const auto read = read_bibliography(R"(% a list
@string{qp = "Quay Press"}
@comment{nothing}
@book{rell1951,
  author = {Rell, Ina and Coll M. Tressel and {Harbour Board}},
  title = "Backs of the {Ennet} Coast",
  publisher = qp # " and Sons",
  address = {Ennet},
  year = 1951,
}
@article{mueller, author = "J{\"u}rgen M{\"{u}}ller", title = {{\O}resund clips \& cords},
  journal = {The Net Loft}, volume = 4, number = 2, pages = {112--118}, year = {1963}})",
                                      "list.bib");
  REQUIRE(read);
  CHECK(read->faults.empty());
  REQUIRE(read->references.size() == 2);
  const model::Reference& book = read->references[0];
  CHECK(book.authors == std::vector<model::CitedName>{{"Rell", "Ina", ""},
                                                      {"Tressel", "Coll M.", ""},
                                                      {"", "", "Harbour Board"}});
  CHECK(book.title == "Backs of the Ennet Coast");
  CHECK(book.publisher == "Quay Press and Sons");
  const model::Reference& article = read->references[1];
  CHECK(article.authors[0] == model::CitedName{"Müller", "Jürgen", ""});
  CHECK(article.title == "Øresund clips & cords");
  CHECK(article.pages == "112--118");
  CHECK(article.kind == ReferenceKind::article);
}

TEST_CASE("an entry that is not closed is a fault with its line, and the next one is read") {
  const auto read = read_bibliography(
      "@book{a, title = {A}}\n\n@book{b, title = {B\n@book{c, title = {C}}\n", "list.bib");
  REQUIRE(read);
  CHECK_FALSE(read->references.empty());
  REQUIRE_FALSE(read->faults.empty());
  CHECK(read->faults[0].where == "list.bib, line 3");
  CHECK(read->references[0].key == "a");
}
