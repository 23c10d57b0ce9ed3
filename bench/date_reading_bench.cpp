// How well and how fast catalogue dates are read.
//
// Rates: Carnegie Museum of Art (open collection records, CC0) and J. Strauss (2013),
// Shipwrecks Database, both with a text and the compiler's years. A reading is misread when it
// shares no year with the stated years and both ends are not within 25 years of them; held when
// the stated years, give or take five, lie within a wider reading. Speed: the same texts (or,
// without the tables, a few of our own) at 1x, 10x and 100x, the answer checked by a sum of
// years.
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>

#include "base/date_text.h"
#include "base/text.h"
#include "table_file.h"

using namespace backmark;

namespace {

struct Dated {
  std::string text;
  long from;
  long to;
};

std::size_t column(const std::vector<std::string>& head, std::string_view name) {
  return static_cast<std::size_t>(std::find(head.begin(), head.end(), name) - head.begin());
}

// The tables have no year 0: -1 is 1 BCE.
long astronomical(long year) {
  return year < 0 ? year + 1 : year;
}

std::vector<Dated> dated_rows(const char* file, const std::array<const char*, 3>& columns) {
  const auto rows = read_table(Path(BACKMARK_SHARED_DIR) / "data" / file);
  std::vector<Dated> dated;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const std::string& text = rows[i].at(column(rows[0], columns[0]));
    const auto from = to_whole(rows[i].at(column(rows[0], columns[1])));
    const auto to = to_whole(rows[i].at(column(rows[0], columns[2])));
    if (!text.empty() && from && to) {
      dated.push_back({text, astronomical(*from), astronomical(*to)});
    }
  }
  return dated;
}

enum Outcome { exact, within_5, within_25, held, other, misread, unread, outcomes };

Outcome judge(const Dated& row) {
  const YearBounds bounds = read_date_text(row.text).bounds;
  if (!bounds.earliest && !bounds.latest) {
    return unread;
  }
  const long first = bounds.earliest ? bounds.earliest->value : row.from;
  const long last = bounds.latest ? bounds.latest->value : row.to;
  const long worst = std::max(std::labs(first - row.from), std::labs(last - row.to));
  if (worst <= 25) {
    return worst == 0 ? exact : worst <= 5 ? within_5 : within_25;
  }
  if (first <= row.from + 5 && row.to <= last + 5) {
    return held;
  }
  return last < row.from || first > row.to ? misread : other;
}

void print_rates(const char* name, const std::vector<Dated>& rows) {
  std::array<int, outcomes> counts{};
  for (const Dated& row : rows) {
    ++counts[judge(row)];
  }
  fmt::print("{:<10} {:>6}", name, rows.size());
  for (const int count : counts) {
    fmt::print(" {:>5} {:>6.2f} %", count, 100.0 * count / static_cast<double>(rows.size()));
  }
  fmt::print("\n");
}

long sum_of_years(const std::vector<std::string>& texts, int times) {
  long sum = 0;
  for (int time = 0; time < times; ++time) {
    for (const std::string& text : texts) {
      const DateReading reading = read_date_text(text);
      sum += reading.bounds.earliest ? reading.bounds.earliest->value : 0;
    }
  }
  return sum;
}

bool print_speed(const std::vector<std::string>& texts) {
  const long once = sum_of_years(texts, 1);
  bool same = true;
  for (const int times : {1, 10, 100}) {
    const auto start = std::chrono::steady_clock::now();
    const bool as_once = sum_of_years(texts, times) == once * times;
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
    const double count = static_cast<double>(texts.size()) * times;
    fmt::print("{:>4}x {:>8.0f} dates {:>8.3f} s {:>9.0f} a second, answer {}\n", times, count,
               seconds.count(), count / seconds.count(), as_once ? "the same" : "DIFFERS");
    same = same && as_once;
  }
  return same;
}

}  // namespace

int main() {
  const auto carnegie =
      dated_rows("carnegie-decorative/objects.csv", {"date_text", "year_from", "year_to"});
  const auto wrecks =
      dated_rows("date-strings/wreck-dates.csv", {"dating", "date_early", "date_late"});
  std::vector<std::string> texts = {"c. 1860", "second half of the 19th century",
                                    "1950~",   "26th Dynasty (664-525 BCE)",
                                    "n.d.",    "designed 1905"};
  if (carnegie.empty()) {
    fmt::print("skipped: the rates, since the tables are not beside this checkout\n");
  } else {
    fmt::print("{:<10} {:>6} {:>14} {:>14} {:>14} {:>14} {:>14} {:>14} {:>14}\n", "table",
               "rows", "exact", "within 5", "within 25", "held", "wider off", "misread",
               "unread");
    print_rates("carnegie", carnegie);
    print_rates("wrecks", wrecks);
    texts.clear();
    for (const Dated& row : carnegie) {
      texts.push_back(row.text);
    }
  }
  return print_speed(texts) ? EXIT_SUCCESS : EXIT_FAILURE;
}
