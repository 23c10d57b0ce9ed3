#include <doctest/doctest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/random.h"
#include "base/text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;
using store::Access;
using store::Store;

namespace {

constexpr int pieces_a_change = 300;

// Adds changes of 300 pieces until it is killed.
[[noreturn]] void change_without_end(const Path& folder) {
  auto store = Store::open(folder, Access::change);
  while (store) {
    auto show = store->load();
    if (!show) {
      break;
    }
    Change change(*show, "import", "many");
    for (int i = 0; i < pieces_a_change; ++i) {
      change.add(Piece{.number = fmt::format("ES {}", show->all<Piece>().size() + i)});
    }
    (void)store->apply(change, "tester", 1);
  }
  ::_exit(1);
}

}  // namespace

TEST_CASE("a program killed in the middle of a change leaves the show whole, before or after") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  Random random(3);
  for (int round = 0; round < 12; ++round) {
    const pid_t child = ::fork();
    if (child == 0) {
      change_without_end(folder.path());
    }
    ::usleep(static_cast<useconds_t>(10000 + random.below(60000)));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    REQUIRE(WIFSIGNALED(status));
    auto store = Store::open(folder.path(), Access::change);
    REQUIRE(store);
    const auto show = store->load();
    REQUIRE(show);
    const auto count = static_cast<std::int64_t>(show->all<Piece>().size());
    CHECK(count % pieces_a_change == 0);
    CHECK(count / pieces_a_change == show->position);
  }
}
