#include "press/preflight.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;

namespace {

std::size_t told(const Problems& found, std::string_view what) {
  return static_cast<std::size_t>(
      std::count_if(found.begin(), found.end(),
                    [&](const Problem& one) { return contains(one.what, what); }));
}

}  // namespace

TEST_CASE("a refused leave and a missing back are told with the numbers of the pieces") {
  model::Show show = show_of(demo_printing().demo);
  std::vector<words::Place> in_book;
  const words::Numbering before(show);
  for (const words::Place& place : before.places()) {
    if (place.pick->in_book) {
      in_book.push_back(place);
    }
  }
  REQUIRE(in_book.size() > 2);
  const std::int32_t refused = in_book[0].piece->id.value;
  const std::int32_t backless = in_book[1].piece->id.value;
  const std::string numbers[] = {std::to_string(in_book[0].number),
                                 std::to_string(in_book[1].number)};
  auto& permissions = show.all<model::Permission>();
  permissions.clear();
  for (const model::Pick& pick : show.all<model::Pick>()) {
    const auto leave =
        pick.piece.value == refused ? model::Leave::refused : model::Leave::given;
    permissions.push_back({.subject = pick.piece.value, .leave = leave, .day = 1});
  }
  // A piece whose pictures may not be printed need not be photographed for it.
  auto& photographs = show.all<model::Photograph>();
  std::erase_if(photographs, [&](const model::Photograph& one) {
    return one.view == model::View::back &&
           (one.piece.value == refused || one.piece.value == backless);
  });
  show.settle();
  const Problems found = preflight(show, words::Numbering(show));
  REQUIRE(found.size() == 2);
  CHECK(told(found, "refused") == 1);
  CHECK(told(found, "no picture of the back of 1 piece") == 1);
  CHECK(found[0].where == "numbers " + numbers[0]);
  CHECK(found[1].where == "numbers " + numbers[1]);
}

TEST_CASE("the latest answer counts: leave given after a refusal is leave") {
  model::Show show = show_of(demo_printing().demo);
  auto& permissions = show.all<model::Permission>();
  permissions.clear();
  for (const model::Pick& pick : show.all<model::Pick>()) {
    permissions.push_back(
        {.subject = pick.piece.value, .leave = model::Leave::given, .day = 20});
    permissions.push_back(
        {.subject = pick.piece.value, .leave = model::Leave::refused, .day = 10});
  }
  show.settle();
  CHECK(told(preflight(show, words::Numbering(show)), "leave") == 0);
}

TEST_CASE("well set lines are no finding, one line in a hundred with holes is") {
  draw::Quality quality;
  quality.lines = 200;
  quality.very_loose = 1;
  CHECK(judge_lines(quality).empty());
  quality.very_loose = 2;
  CHECK(judge_lines(quality).size() == 1);
  quality.overfull = 1;
  CHECK(told(judge_lines(quality), "wider than their measure") == 1);
}
