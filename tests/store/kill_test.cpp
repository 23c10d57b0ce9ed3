// A program that dies inside a transaction, at moments that are chosen and not waited for: the
// child kills itself from a hook of SQLite, or from the deletion of the rollback journal, which
// is the moment at which a transaction becomes true (SQLite, "Atomic Commit", section 3.11).
#include <doctest/doctest.h>
#include <signal.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;
using store::Access;
using store::Store;

namespace {

constexpr int pieces_a_change = 300;

enum class Moment { at_row, at_commit, before_the_journal_goes, after_the_journal_went };

// What the hooks need to know; a child has its own.
struct Plan {
  Moment moment = Moment::at_row;
  int rows_left = 0;
  sqlite3_vfs* files = nullptr;
} plan;

void die() {
  ::kill(::getpid(), SIGKILL);
}

void on_row(void*, int, const char*, const char*, sqlite3_int64) {
  if (plan.moment == Moment::at_row && --plan.rows_left == 0) {
    die();
  }
}

int on_commit(void*) {
  if (plan.moment == Moment::at_commit) {
    die();
  }
  return 0;
}

int on_connection(sqlite3* database, char**, const sqlite3_api_routines*) {
  sqlite3_update_hook(database, on_row, nullptr);
  sqlite3_commit_hook(database, on_commit, nullptr);
  return SQLITE_OK;
}

int delete_file(sqlite3_vfs*, const char* name, int sync) {
  if (plan.moment == Moment::before_the_journal_goes) {
    die();
  }
  const int code = plan.files->xDelete(plan.files, name, sync);
  if (plan.moment == Moment::after_the_journal_went) {
    die();
  }
  return code;
}

void set_traps(Moment moment, int row) {
  plan = {moment, row, sqlite3_vfs_find(nullptr)};
  static sqlite3_vfs trapped = *plan.files;
  trapped.zName = "trapped";
  trapped.xDelete = delete_file;
  sqlite3_vfs_register(&trapped, 1);
  sqlite3_auto_extension(reinterpret_cast<void (*)()>(on_connection));
}

void add_pieces(const Path& folder) {
  auto store = Store::open(folder, Access::change);
  const auto show = store->load();
  Change change(*show, "import", "many");
  for (int i = 0; i < pieces_a_change; ++i) {
    change.add(Piece{.number = fmt::format("ES {}", show->all<Piece>().size() + i)});
  }
  (void)store->apply(change, "tester", 1);
}

// Whether the child died by the trap, and not otherwise or not at all.
bool dies_in_a_change(const Path& folder, Moment moment, int row = 0) {
  const pid_t child = ::fork();
  if (child == 0) {
    set_traps(moment, row);
    add_pieces(folder);
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL;
}

std::int64_t whole_changes(const Path& folder) {
  auto store = Store::open(folder, Access::change);
  REQUIRE(store);
  const auto show = store->load();
  REQUIRE(show);
  const auto count = static_cast<std::int64_t>(show->all<Piece>().size());
  CHECK(count % pieces_a_change == 0);
  CHECK(count / pieces_a_change == show->position);
  return show->position;
}

bool journal_left(const Path& folder) {
  std::error_code error;
  const auto size = std::filesystem::file_size(folder / "show.db-journal", error);
  return !error && size > 512;
}

}  // namespace

TEST_CASE("a program killed while rows are written leaves the show as it was before") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  add_pieces(folder.path());
  REQUIRE(whole_changes(folder.path()) == 1);
  // The book's own line is the first row; then pieces and entries of the search.
  for (const int row : {1, 2, 150, 301, 400}) {
    INFO("row ", row);
    REQUIRE(dies_in_a_change(folder.path(), Moment::at_row, row));
    CHECK(whole_changes(folder.path()) == 1);
  }
  REQUIRE(dies_in_a_change(folder.path(), Moment::at_commit));
  CHECK(whole_changes(folder.path()) == 1);
}

TEST_CASE("a half-written file is taken back by the journal that lies beside it") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  add_pieces(folder.path());
  const std::string before = *read_file(folder.path() / "show.db");
  REQUIRE(dies_in_a_change(folder.path(), Moment::before_the_journal_goes));
  CHECK(journal_left(folder.path()));
  CHECK(*read_file(folder.path() / "show.db") != before);  // the new pages stand in it
  CHECK(whole_changes(folder.path()) == 1);
  CHECK_FALSE(journal_left(folder.path()));
}

TEST_CASE("without its journal a half-written file would not be the show of before") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  add_pieces(folder.path());
  REQUIRE(dies_in_a_change(folder.path(), Moment::before_the_journal_goes));
  std::filesystem::remove(folder.path() / "show.db-journal");
  auto store = Store::open(folder.path(), Access::change);
  REQUIRE(store);
  CHECK(store->load()->position != 1);  // so the test above can fail
}

TEST_CASE("a program killed when the journal has gone leaves the show as it is after") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  REQUIRE(dies_in_a_change(folder.path(), Moment::after_the_journal_went));
  CHECK_FALSE(journal_left(folder.path()));
  CHECK(whole_changes(folder.path()) == 1);
}
