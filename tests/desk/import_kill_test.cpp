// The program itself is killed at moments drawn at random while it imports a spreadsheet: the
// show is afterwards as it was before, or as it is after, and the same import then brings it to
// the end.
#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/random.h"
#include "base/text.h"
#include "desk/operations.h"
#include "store/store.h"

using namespace backmark;

namespace {

constexpr int rows = 3000;

class Folder {
 public:
  Folder()
      : path_(std::filesystem::temp_directory_path() / fmt::format("bm-kill-{}", ::getpid())) {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directories(path_);
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Path operator/(const char* name) const { return path_ / name; }

 private:
  Path path_;
};

Result<desk::Answer> ask(const std::string& name,
                         const std::vector<std::pair<std::string, std::string>>& arguments) {
  for (const desk::Operation& operation : desk::operations()) {
    if (operation.name == name) {
      desk::Call call;
      for (const auto& [key, value] : arguments) {
        call.set(key, {value});
      }
      return operation.run(call, {.who = "tester", .now = 1});
    }
  }
  throw BrokenPromise("no such operation");
}

std::size_t pieces_in(const Path& show) {
  auto store = store::Store::open(show, store::Access::look);
  REQUIRE(store.ok());
  const auto loaded = store->load();
  REQUIRE_MESSAGE(loaded.ok(), (loaded.ok() ? "" : to_line(loaded.problem())));
  return loaded->all<model::Piece>().size();
}

// Microseconds that a child which is not killed takes.
long whole_import(const Path& show, const Path& file, const Path& map, long kill_after) {
  const auto start = std::chrono::steady_clock::now();
  const pid_t child = ::fork();
  if (child == 0) {
    (void)ask("import", {{"show", show}, {"file", file}, {"map", map}});
    ::_exit(0);
  }
  if (kill_after >= 0) {
    ::usleep(static_cast<useconds_t>(kill_after));
    ::kill(child, SIGKILL);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return std::chrono::duration_cast<std::chrono::microseconds>(
             std::chrono::steady_clock::now() - start)
      .count();
}

}  // namespace

TEST_CASE(
    "a program killed at random while it imports leaves the show before or after, whole") {
  const Folder folder;
  std::string csv = "id,title,stone\n";
  for (int i = 0; i < rows; ++i) {
    csv += fmt::format("ES {},Piece {},jet; shell\n", i, i);
  }
  REQUIRE(write_file(folder / "list.csv", csv));
  REQUIRE(write_file(folder / "list.toml",
                     "[columns]\nid = \"number\"\ntitle = \"title\"\n"
                     "stone = { character = \"stone\", split = \";\" }\n"));
  const auto show_of = [&](int turn) { return folder / fmt::format("s{}.show", turn).c_str(); };
  REQUIRE(ask("new", {{"show", show_of(0)}}));
  const long whole = whole_import(show_of(0), folder / "list.csv", folder / "list.toml", -1);
  CHECK(pieces_in(show_of(0)) == rows);
  Random random(4);
  int before = 0;
  for (int turn = 1; turn <= 12; ++turn) {
    REQUIRE(ask("new", {{"show", show_of(turn)}}));
    const auto after = static_cast<long>(random.uniform() * static_cast<double>(whole));
    whole_import(show_of(turn), folder / "list.csv", folder / "list.toml", after);
    const std::size_t held = pieces_in(show_of(turn));
    INFO("killed after ", after, " of ", whole, " microseconds: ", held, " pieces");
    CHECK((held == 0 || held == rows));
    before += held == 0 ? 1 : 0;
    whole_import(show_of(turn), folder / "list.csv", folder / "list.toml", -1);
    CHECK(pieces_in(show_of(turn)) == rows);
  }
  CHECK(before > 0);  // else nothing was killed in time
}
