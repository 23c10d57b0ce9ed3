// How fast a spreadsheet of pieces comes into a show on disk, and how much memory it takes. The
// peer in the same run is a script that parts the same file into cells and writes them into one
// SQLite table: the raw work without understanding any cell.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sys/resource.h>
#include <unistd.h>

#include "base/file.h"
#include "base/text.h"
#include "exchange/csv.h"
#include "exchange/import.h"
#include "exchange/import_map.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

constexpr std::string_view map_text = R"(rows = "pieces"
source = "list"
[columns]
id = "number"
title = "title"
artist = "maker"
date = "made"
stone = { character = "stone", split = ";" }
cord = { character = "cord", part = "cord" }
height = { measure = "height", unit = "cm" }
mark = "mark"
)";

constexpr const char* peer_script = R"(
import csv, sqlite3, sys, time, os
start = time.perf_counter()
rows = list(csv.reader(open(sys.argv[1], newline='', encoding='utf-8')))
base = sqlite3.connect(sys.argv[2])
base.execute('CREATE TABLE t (%s)' % ','.join('c%d TEXT' % i for i in range(len(rows[0]))))
base.executemany('INSERT INTO t VALUES (%s)' % ','.join('?' * len(rows[0])), rows[1:])
base.commit()
assert base.execute('SELECT count(*) FROM t').fetchone()[0] == len(rows) - 1
print(time.perf_counter() - start)
)";

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

double peak_mb() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

std::string sheet(int rows) {
  static const char* const stones[] = {"jet", "jet; shell", "agate", ""};
  static const char* const dates[] = {"1955", "c. 1948", "1950s", "before 1972"};
  std::string text = "id,title,artist,date,stone,cord,height,mark,shelf\n";
  for (int i = 0; i < rows; ++i) {
    text += fmt::format("ES {},Slide no. {},attributed to Maker {},{},{},braided,{}.5,OV,{}\n",
                        i, i, i % 200, dates[i % 4], stones[i / 4 % 4], 3 + i % 5, i % 40);
  }
  return text;
}

// Seconds of the peer, or a negative number without python3.
double peer_seconds(const Path& folder) {
  if (!write_file(folder / "peer.py", peer_script)) {
    return -1;
  }
  const std::string command =
      fmt::format("python3 {0}/peer.py {0}/list.csv {0}/peer.db", folder.string());
  std::FILE* pipe = ::popen(command.c_str(), "r");
  double time = -1;
  if (pipe == nullptr || std::fscanf(pipe, "%lf", &time) != 1) {
    time = -1;
  }
  if (pipe != nullptr) {
    ::pclose(pipe);
  }
  return time;
}

Result<Done> import(const Path& folder) {
  auto store = store::Store::open(folder / "show", store::Access::change);
  const auto bytes = read_file(folder / "list.csv");
  if (!store || !bytes) {
    return !store ? store.problem() : bytes.problem();
  }
  const auto show = store->load();
  const auto table = exchange::read_csv(*bytes, "list.csv");
  const auto map = exchange::read_map(map_text, "list.toml");
  if (!show || !table || !map) {
    return !show ? show.problem() : !table ? table.problem() : map.problem();
  }
  auto out = exchange::import_rows(*show, *table, *map, {.file = "list.csv"});
  return out ? store->apply(out->change, "bench", 1) : Result<Done>(out.problem());
}

// The answer: pieces, makers, the years and sizes of all of them.
bool is_right(const Path& folder, int rows) {
  auto store = store::Store::open(folder / "show", store::Access::look);
  const auto show = store->load();
  if (!show) {
    return false;
  }
  double heights = 0;
  for (const Observation& seen : show->all<Observation>()) {
    heights += seen.number;
  }
  double want = 0;
  for (int i = 0; i < rows; ++i) {
    want += 10 * (3 + i % 5) + 5;
  }
  return show->all<Piece>().size() == static_cast<std::size_t>(rows) &&
         show->all<Maker>().size() == 200 &&
         show->all<Claim>().size() == 2 * static_cast<std::size_t>(rows) &&
         std::abs(heights - want) < 1e-6 * want;
}

bool run(int rows) {
  const Path folder = std::filesystem::temp_directory_path() /
                      fmt::format("backmark-import-{}-{}", ::getpid(), rows);
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  const bool ready =
      write_file(folder / "list.csv", sheet(rows)).ok() && store::create(folder / "show").ok();
  const double start = seconds();
  const auto done = ready ? import(folder) : Result<Done>(Problem{.what = "no folder"});
  const double own_s = seconds() - start;
  const double peak = peak_mb();
  const bool right = done && is_right(folder, rows);
  const double peer_s = peer_seconds(folder);
  std::printf("%6d rows: import %6.2f s  peer %6.2f s  ratio %5.1f  peak %5.0f MB  %s\n", rows,
              own_s, peer_s, own_s / peer_s, peak, right ? "checked" : "WRONG");
  std::filesystem::remove_all(folder);
  return right;
}

}  // namespace

int main() {
  bool right = true;
  for (const int rows : {5'000, 50'000}) {
    right = run(rows) && right;
  }
  return right ? 0 : 1;
}
