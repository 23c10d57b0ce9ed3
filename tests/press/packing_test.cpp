#include "press/packing.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("a courier's packing list has no tray, value, address or owner's name") {
  const model::Show& show = demo_printing().show;
  const auto printed = print_packing(demo_printing().job(Audience::courier));
  REQUIRE(printed);
  const auto secrets = private_texts(show, Audience::courier);
  CHECK(secrets.size() > 20);
  const std::string paper = text_in(printed->files[0].bytes);
  CHECK(leaks(paper, secrets, "packing").empty());
  CHECK(leaks(printed->files[1].bytes, secrets, "packing").empty());
  for (const model::Piece& piece : show.all<model::Piece>()) {
    const std::string tray(show.text(piece.tray));
    CHECK_FALSE_MESSAGE(contains(printed->files[1].bytes, "," + tray + "\r\n"), tray);
  }
  if (!paper.empty()) {
    CHECK_FALSE(contains(lower_ascii(paper), "tray"));
    CHECK_FALSE(contains(paper, "EUR"));
    CHECK(contains(flattened(paper), "bring to Harbour Museum, Ennet Quay"));
  }
}

TEST_CASE("the registrar's list says where pieces lie, in that order") {
  const model::Show& show = demo_printing().show;
  const auto printed = print_packing(demo_printing().job(Audience::registrar));
  REQUIRE(printed);
  const auto rows = split(printed->files[1].bytes, "\r\n");
  CHECK(ends_with(rows[0], ",tray"));
  std::string last;
  std::size_t of_first = 0;
  for (std::size_t at = 1; at + 1 < rows.size() && starts_with(rows[at], "1,"); ++at) {
    const std::string tray(rows[at].substr(rows[at].rfind(',') + 1));
    CHECK(last <= tray);
    last = tray;
    ++of_first;
  }
  CHECK(of_first > 0);
  CHECK_FALSE(show.all<model::Piece>().empty());
}

TEST_CASE("every piece of the show is packed once, and every part has its boxes") {
  const model::Show& show = demo_printing().show;
  const auto printed = print_packing(demo_printing().job(Audience::courier));
  REQUIRE(printed);
  const words::Numbering numbering(show);
  std::size_t shown = 0;
  std::size_t parts = 0;
  for (const words::Place& place : numbering.places()) {
    shown += place.pick->in_show ? 1 : 0;
    parts += place.pick->in_show ? show.parts_of(place.piece->id).size() : 0;
  }
  CHECK(split(printed->files[1].bytes, "\r\n").size() - 2 == shown);
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (paper.empty()) {
    return;
  }
  CHECK(not_found_in(paper, printed->facts).empty());
  // The sums at the feet of the lists, read back from the paper.
  std::size_t pieces_said = 0;
  std::size_t parts_said = 0;
  for (std::size_t at = paper.find(" pieces, "); at != std::string::npos;
       at = paper.find(" pieces, ", at + 1)) {
    const std::size_t from = paper.rfind(' ', at - 1) + 1;
    pieces_said += static_cast<std::size_t>(*to_whole(paper.substr(from, at - from)));
    const std::size_t number = at + 9;
    parts_said += static_cast<std::size_t>(
        *to_whole(paper.substr(number, paper.find(' ', number) - number)));
  }
  CHECK(pieces_said == shown);
  CHECK(parts_said == parts);
}

TEST_CASE("packing is refused to the public, and a lender nobody knows has nothing to pack") {
  for (const Audience audience : {Audience::public_, Audience::printer, Audience::insurer}) {
    const auto printed = print_packing(demo_printing().job(audience));
    REQUIRE_FALSE(printed);
    CHECK(printed.problem().fault == Fault::refused);
  }
  PressJob job = demo_printing().job(Audience::courier);
  job.only = "Lender 99";
  const auto printed = print_packing(job);
  REQUIRE_FALSE(printed);
  CHECK(printed.problem().fault == Fault::not_found);
}
