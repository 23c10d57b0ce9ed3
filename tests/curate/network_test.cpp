#include "curate/network.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace backmark;
using namespace backmark::curate;

namespace {

std::string trouble(std::string_view text) {
  const auto network = read_activities(text);
  return network ? "" : to_line(network.problem());
}

std::string path_of(const Network& network) {
  std::vector<std::string> names;
  for (const std::size_t at : critical_path(network, pass_over(network))) {
    names.push_back(network.activities()[at].name);
  }
  return join(names, "-");
}

}  // namespace

TEST_CASE("the pass finds the earliest and latest times of a small network worked by hand") {
  // A 3, B 2 behind nothing; C 4 behind A and B; D 1 behind B.
  const auto network = read_activities("A:-:3|B:-:2|C:A,B:4|D:B:1");
  REQUIRE(network);
  const Pass pass = pass_over(*network);
  CHECK(pass.duration == 7);
  CHECK(pass.earliest_start[2] == 3);
  CHECK(pass.slack(1) == 1);
  CHECK(pass.slack(3) == 4);
  CHECK(path_of(*network) == "A-C");
}

TEST_CASE("of two critical paths the less certain one is named") {
  const auto network = read_activities("A:-:2|B:-:1/2/3|C:A:1|D:B:1");
  REQUIRE(network);
  CHECK(path_of(*network) == "B-D");
  const auto path = critical_path(*network, pass_over(*network));
  CHECK(path_variance(*network, path) == doctest::Approx(1.0 / 9));
}

TEST_CASE("a path without doubt is on time or late, with nothing between") {
  const auto network = read_activities("A:-:5");
  REQUIRE(network);
  CHECK(chance_along_path(*network, 5) == 1);
  CHECK(chance_along_path(*network, 4.9) == 0);
}

TEST_CASE("a list that is no network is refused with what is wrong") {
  CHECK(contains(trouble("A:B:1|B:A:1"), "in a circle: A, B"));
  CHECK(contains(trouble("A:A:1"), "in a circle: A"));
  CHECK(contains(trouble("A:-:1|A:-:2"), "\"A\" is the name of two activities"));
  CHECK(contains(trouble("A:Z:1"), "\"A\" waits for \"Z\""));
  CHECK(contains(trouble("A:-:3/2/1"), "do not rise"));
  CHECK(contains(trouble("A:-:-1"), "do not rise"));
  CHECK(contains(trouble("A:-:nan"), "do not rise"));
  CHECK(contains(trouble("A:-"), "\"A:-\" is no activity"));
  CHECK(contains(trouble(""), "\"\" is no activity"));
}
