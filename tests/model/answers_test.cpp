#include "model/answers.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::model;

TEST_CASE("of several answers the latest counts, of one day the one logged later") {
  Show show;
  const auto log = [&](std::int32_t id, Use use, Leave leave, DayNumber day) {
    Permission one{.subject = 7, .use = use, .leave = leave, .day = day};
    one.id = {id};
    show.all<Permission>().push_back(one);
  };
  log(1, Use::print, Leave::given, 20);
  log(2, Use::print, Leave::refused, 30);
  log(3, Use::print, Leave::given, 10);
  log(4, Use::web, Leave::given, 5);
  log(5, Use::web, Leave::refused, 5);
  const Answers answers(show);
  CHECK(answers.on(7, Use::print)->leave == Leave::refused);
  CHECK(answers.on(7, Use::web)->leave == Leave::refused);
  CHECK(answers.on(7, Use::show) == nullptr);
  CHECK(answers.on(8, Use::print) == nullptr);
}
