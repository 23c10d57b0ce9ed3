// How long the search box takes at 1,000,000 observations (25,000 pieces of 40), each answer
// held to what the maker of the show knows.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <set>
#include <unistd.h>

#include "base/text.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

constexpr int pieces = 25'000;
constexpr int seen_a_piece = 40;
constexpr std::size_t most_hits = 50;

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

// 4,000 words that look like words, so that a slip of the pen has neighbours.
std::string word(int i) {
  static const char* const parts[] = {"sil", "ver",  "tur",  "quo", "ise", "bra", "ide",
                                      "lea", "ther", "con",  "ch",  "amb", "er",  "urch",
                                      "in",  "sca",  "llop", "wa",  "ve",  "mo"};
  return std::string(parts[i % 20]) + parts[i / 20 % 20] + parts[i / 400 % 10];
}

void fill(store::Store& store) {
  const auto show = store.load();
  Change change(*show, "import", "bench");
  const auto character = change.add(Character{.key = "word", .label = "Word"});
  const auto source = change.add(Source{.key = "list", .title = "A list"});
  for (int i = 0; i < pieces; ++i) {
    const auto piece = change.add(
        Piece{.number = fmt::format("ES {}", i), .title = fmt::format("Slide tie {}", i)});
    change.add(Claim{.source = source,
                     .about = About::piece,
                     .subject = piece.value,
                     .says = Says::made,
                     .from = Year{1900 + i % 100},
                     .to = Year{1900 + i % 100}});
    for (int j = 0; j < seen_a_piece; ++j) {
      change.add(Observation{.piece = piece,
                             .character = character,
                             .value = change.word(word((i * 7 + j * 97) % 4000))});
    }
  }
  if (const auto done = store.apply(change, "bench", 1); !done) {
    std::printf("%s\n", to_line(done.problem()).c_str());
  }
}

bool has_word(const std::string& number, int wanted) {
  const int i = static_cast<int>(to_whole(number.substr(3)).value_or(0));
  for (int j = 0; j < seen_a_piece; ++j) {
    if (starts_with(word((i * 7 + j * 97) % 4000), word(wanted))) {
      return true;
    }
  }
  return false;
}

void time_search(store::Store& store, const std::string& text, int wanted, int decade) {
  std::vector<double> taken;
  bool right = true;
  std::size_t count = 0;
  for (int round = 0; round < 15; ++round) {
    const double start = seconds();
    const auto hits = store.search(text, most_hits);
    taken.push_back(seconds() - start);
    count = hits ? hits->size() : 0;
    right = right && count > 0;
    for (const store::Hit& hit : hits ? *hits : std::vector<store::Hit>()) {
      const int i = static_cast<int>(to_whole(hit.number.substr(3)).value_or(0));
      right = right && (wanted < 0 || has_word(hit.number, wanted)) &&
              (decade < 0 || (i % 100) / 10 == decade);
    }
  }
  std::sort(taken.begin(), taken.end());
  std::printf("%-28s %3zu hits  median %7.1f ms  worst %7.1f ms  %s\n", text.c_str(), count,
              1000 * taken[taken.size() / 2], 1000 * taken.back(), right ? "right" : "WRONG");
}

}  // namespace

int main() {
  const Path folder =
      std::filesystem::temp_directory_path() / fmt::format("backmark-find-{}", ::getpid());
  if (!store::create(folder)) {
    return 1;
  }
  {
    auto store = store::Store::open(folder, store::Access::change);
    const double start = seconds();
    fill(*store);
    std::printf("%d observations written and indexed in %.1f s\n", pieces * seen_a_piece,
                seconds() - start);
    time_search(*store, word(21), 21, -1);
    time_search(*store, word(21) + " unsigned", 21, -1);
    time_search(*store, word(21) + " 1950s unsigned", 21, 5);
    std::string slip = word(21);
    slip.erase(3, 1);
    time_search(*store, slip, -1, -1);
    time_search(*store, "ES 20471", -1, -1);
    time_search(*store, "1950s", -1, 5);
  }
  std::filesystem::remove_all(folder);
  return 0;
}
