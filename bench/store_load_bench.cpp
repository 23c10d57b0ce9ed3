// How fast a show is written and read, beside the plain C interface of SQLite reading the same
// rows, at 1,000, 10,000 and 100,000 pieces of 40 observations. Each load is checked against
// sums that the maker of the show knows.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <sqlite3.h>
#include <sys/resource.h>
#include <unistd.h>
#include <vector>

#include "base/text.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

constexpr int seen_a_piece = 40;
constexpr int values = 200;

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

// Of this thread alone: what a busy machine does not change.
double cpu_seconds() {
  timespec now{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

double peak_mb() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

struct Sums {
  std::int64_t pieces = 0;
  std::int64_t observations = 0;
  double numbers = 0;
  std::int64_t subjects = 0;
  friend bool operator==(const Sums&, const Sums&) = default;
};

// Adds the pieces in one change, as an import does, and tells what a load must give.
Sums fill(store::Store& store, int pieces) {
  const auto show = store.load();
  Change change(*show, "import", "bench");
  const auto character = change.add(Character{.key = "cord", .label = "Cord"});
  Sums sums;
  for (int i = 0; i < pieces; ++i) {
    const auto piece = change.add(
        Piece{.number = fmt::format("ES {}", i), .title = fmt::format("Slide tie {}", i)});
    ++sums.pieces;
    for (int j = 0; j < seen_a_piece; ++j) {
      const double number = (i * seen_a_piece + j) % 1009;
      change.add(Observation{.piece = piece,
                             .character = character,
                             .value = change.word(fmt::format("value {}", (i + j) % values)),
                             .number = number});
      ++sums.observations;
      sums.numbers += number;
      sums.subjects += piece.value;
    }
  }
  if (const auto done = store.apply(change, "bench", 1); !done) {
    std::printf("%s\n", to_line(done.problem()).c_str());
  }
  return sums;
}

Sums sums_of(const Show& show) {
  Sums sums;
  sums.pieces = static_cast<std::int64_t>(show.all<Piece>().size());
  for (const Observation& row : show.all<Observation>()) {
    ++sums.observations;
    sums.numbers += row.number;
    sums.subjects += row.piece.value;
  }
  return sums;
}

// The peer: every column of pieces and observations into plain structs, in the order of the
// rows.
Sums read_plainly(const Path& file) {
  sqlite3* database = nullptr;
  sqlite3_open_v2(file.c_str(), &database, SQLITE_OPEN_READONLY, nullptr);
  Sums sums;
  struct Plain {
    int whole[10];
    double number;
    double certainty;
  };
  std::vector<Plain> rows;
  std::vector<std::string> texts;
  sqlite3_stmt* statement = nullptr;
  sqlite3_prepare_v2(database,
                     "SELECT number, title FROM piece WHERE ended IS NULL ORDER BY id", -1,
                     &statement, nullptr);
  while (sqlite3_step(statement) == SQLITE_ROW) {
    for (const int column : {0, 1}) {
      texts.emplace_back(reinterpret_cast<const char*>(sqlite3_column_text(statement, column)));
    }
    ++sums.pieces;
  }
  sqlite3_finalize(statement);
  sqlite3_prepare_v2(database,
                     "SELECT id, piece, part, character, value, seen, how, by, day, source, "
                     "number, certainty FROM observation WHERE ended IS NULL ORDER BY id",
                     -1, &statement, nullptr);
  while (sqlite3_step(statement) == SQLITE_ROW) {
    Plain& row = rows.emplace_back();
    for (int column = 0; column < 10; ++column) {
      row.whole[column] = sqlite3_column_int(statement, column);
    }
    row.number = sqlite3_column_double(statement, 10);
    row.certainty = sqlite3_column_double(statement, 11);
    ++sums.observations;
    sums.numbers += row.number;
    sums.subjects += row.whole[1];
  }
  sqlite3_finalize(statement);
  sqlite3_close(database);
  return sums;
}

void run(int pieces) {
  const Path folder = std::filesystem::temp_directory_path() /
                      fmt::format("backmark-bench-{}-{}", ::getpid(), pieces);
  std::filesystem::remove_all(folder);
  if (!store::create(folder)) {
    std::printf("the folder cannot be made\n");
    return;
  }
  auto store = store::Store::open(folder, store::Access::change);
  double start = seconds();
  const Sums want = fill(*store, pieces);
  const double write_s = seconds() - start;
  double load_s = 1e9;
  double load_cpu_s = 1e9;
  double plain_cpu_s = 1e9;
  bool right = true;
  for (int round = 0; round < 3; ++round) {
    start = seconds();
    double start_cpu = cpu_seconds();
    {
      auto opened = store::Store::open(folder, store::Access::look);
      const auto show = opened->load();
      load_s = std::min(load_s, seconds() - start);
      load_cpu_s = std::min(load_cpu_s, cpu_seconds() - start_cpu);
      right = right && show && sums_of(*show) == want;
    }
    start_cpu = cpu_seconds();
    right = right && read_plainly(folder / "show.db") == want;
    plain_cpu_s = std::min(plain_cpu_s, cpu_seconds() - start_cpu);
  }
  std::printf(
      "%7d pieces: write %7.3f s  load %7.3f s (processor %.3f s, plain %.3f s, ratio "
      "%.2f)  file %4.0f MB  peak %5.0f MB  %s\n",
      pieces, write_s, load_s, load_cpu_s, plain_cpu_s, load_cpu_s / plain_cpu_s,
      static_cast<double>(std::filesystem::file_size(folder / "show.db")) / 1e6, peak_mb(),
      right ? "checked" : "WRONG");
  std::filesystem::remove_all(folder);
}

}  // namespace

int main(int count, char** words) {
  for (const int pieces : {1'000, 10'000, 100'000}) {
    if (count < 2 || pieces <= to_whole(words[1]).value_or(0)) {
      run(pieces);
    }
  }
}
