// The order of elements is that of ISO 690:2021, from memory; the works are invented.
#include "words/citation.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::words;
using model::Reference;
using model::ReferenceKind;

namespace {

Reference book() {
  return {.key = "rell-backs",
          .kind = ReferenceKind::book,
          .authors = {{"Rell", "Ina", ""}},
          .title = "Backs of the Ennet Coast",
          .edition = "2",
          .place = "Ennet",
          .publisher = "Quay Press",
          .year = "1951",
          .identifier = "ISBN 0-00-000000-0"};
}

}  // namespace

TEST_CASE("a book is listed by creator, title, edition, place: publisher, year, identifier") {
  CHECK(plain_entry(book()) ==
        "Rell, Ina. Backs of the Ennet Coast. Edition 2. Ennet: Quay Press, 1951. "
        "ISBN 0-00-000000-0.");
  const auto runs = list_entry(book());
  CHECK(runs[0] == CitationRun{"Rell, Ina", CitationVoice::small_caps});
  CHECK(runs[2] == CitationRun{"Backs of the Ennet Coast", CitationVoice::italic});
}

TEST_CASE("an article stands in roman quotes in its journal, with numbering and pages") {
  const Reference article{.kind = ReferenceKind::article,
                          .authors = {{"Tressel", "Coll", ""}, {"Corrow", "Annis", ""}},
                          .title = "Cords and Tips",
                          .host = "The Net Loft",
                          .year = "1963",
                          .volume = "4",
                          .issue = "2",
                          .pages = "112--118"};
  CHECK(plain_entry(article) ==
        "Tressel, Coll and Annis Corrow. “Cords and Tips”. The Net Loft, 1963, vol.\u00a04, "
        "no.\u00a02, pp.\u00a0112–118.");
  CHECK(short_title(article, "113") == "Tressel and Corrow\u00a01963, p.\u00a0113");
}

TEST_CASE("a part of an edited book names its editors before the host") {
  const Reference part{.kind = ReferenceKind::part,
                       .authors = {{"Rell", "Ina", ""}},
                       .editors = {{"Lund", "Jory", ""}},
                       .title = "Tubes",
                       .host = "Fittings",
                       .place = "Hask",
                       .publisher = "Board",
                       .year = "1970"};
  CHECK(plain_entry(part) ==
        "Rell, Ina. “Tubes”. In Jory Lund (ed.), Fittings. Hask: Board, 1970.");
}

TEST_CASE(
    "an unpublished paper is named by maker, kind, year and keeper, and is not in italics") {
  const Reference letter{.kind = ReferenceKind::unpublished,
                         .authors = {{"", "", "Harbour Board"}},
                         .title = "Letter on a bench",
                         .year = "1949",
                         .holder = "Ennet town papers"};
  CHECK(plain_entry(letter) == "Harbour Board. Letter on a bench. 1949. Ennet town papers.");
  CHECK(list_entry(letter).size() == 2);
}

TEST_CASE("works of one name and year are told apart by letters, in the order of the list") {
  Reference later = book();
  later.title = "Clips";
  later.key = "rell-clips";
  Reference other = book();
  other.year = "1949";
  const auto list = in_list_order({book(), later, other});
  REQUIRE(list.size() == 3);
  CHECK(short_title(list[0]) == "Rell\u00a01949");
  CHECK(short_title(list[1]) == "Rell\u00a01951a");
  CHECK(list[1].title == "Backs of the Ennet Coast");
  CHECK(short_title(list[2], "plate 3") == "Rell\u00a01951b, plate 3");
}

TEST_CASE("a work without a name is cited by its title") {
  CHECK(short_title({.title = "Regatta silver: a leaflet", .year = "1962"}) ==
        "Regatta silver\u00a01962");
  CHECK(plain_entry({.title = "Regatta silver", .year = "1962"}) == "Regatta silver. 1962.");
}
