// The search box. What is typed is cut into words, each found by its beginning; a word that no
// piece has is taken for the nearest ones that some have. A year, a decade or a span among them
// ("1954", "1950s", "1950-1960") asks for the reckoned year, or for what sources say where the
// show was never reckoned; all words as they stand are looked for first, so that "1954" in a
// title is found too.
#include <algorithm>
#include <set>

#include "base/text.h"
#include "store/database.h"
#include "store/inside.h"

namespace backmark::store {

namespace {

constexpr std::size_t most_words = 16;
constexpr std::size_t most_readings = 3;
// Before what is written in the index's own language; no typed word keeps a control character.
constexpr char understood_mark = '\x01';

struct Years {
  int first = 0;
  int last = 0;
};

std::optional<int> year_in(std::string_view text) {
  const auto year = text.size() == 4 ? to_whole(text) : std::nullopt;
  return year && *year >= 1000 ? std::optional(static_cast<int>(*year)) : std::nullopt;
}

std::optional<Years> years_in(std::string_view word) {
  if (const auto year = year_in(word)) {
    return Years{*year, *year};
  }
  const auto decade =
      word.size() == 5 && ends_with(word, "s") ? year_in(word.substr(0, 4)) : std::nullopt;
  if (decade && *decade % 10 == 0) {
    return Years{*decade, *decade + (*decade % 100 == 0 ? 99 : 9)};
  }
  for (const std::string_view dash : {"-", "\u2013", "/"}) {
    const auto ends = split(word, dash);
    const auto first = ends.size() == 2 ? year_in(ends[0]) : std::nullopt;
    const auto last = ends.size() == 2 ? year_in(ends[1]) : std::nullopt;
    if (first && last && *first <= *last) {
      return Years{*first, *last};
    }
  }
  return std::nullopt;
}

// In quotes, so that nothing a person types is taken for the query language; by its beginning.
std::string in_quotes(std::string_view word) {
  return "\"" + replace_all(std::string(word), "\"", "\"\"") + "\" *";
}

// The letters and digits of a word, as the index cuts them: "ES-118" is two.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  std::string flat(text);  // outlives its parts, which look into it
  std::replace_if(
      flat.begin(), flat.end(), [](char c) { return c > 0 && c < ' '; }, ' ');
  for (const auto part : split(flat, " ")) {
    if (!trim(part).empty() && words.size() < most_words) {
      words.emplace_back(lower_ascii(trim(part)));
    }
  }
  return words;
}

class Search {
 public:
  Search(SQLite::Database& database, std::size_t count) : database_(database), count_(count) {}

  std::vector<Hit> run(const std::vector<std::string>& words) {
    std::vector<std::string> plain;
    std::optional<Years> years;
    for (const std::string& word : words) {
      const auto found = years_in(word);
      years = found ? found : years;
      if (!found) {
        plain.push_back(word);
      }
    }
    if (years) {
      match(all_of(words), std::nullopt);
      match(plain.empty() ? std::string() : all_of(understood(plain)), years);
    } else {
      match(all_of(understood(plain)), std::nullopt);
    }
    return std::move(hits_);
  }

 private:
  static std::string all_of(const std::vector<std::string>& words) {
    std::vector<std::string> parts;
    for (const std::string& word : words) {
      parts.push_back(word.front() == understood_mark ? word.substr(1) : in_quotes(word));
    }
    return join(parts, " AND ");
  }

  bool is_known(const std::string& word) {
    SQLite::Statement statement(database_, "SELECT 1 FROM found WHERE found MATCH ? LIMIT 1");
    statement.bind(1, in_quotes(word));
    return statement.executeStep();
  }

  // Words that some piece has within an edit or two, those of the same first letter first.
  std::vector<std::string> near(const std::string& word) {
    const int most = word.size() >= 8 ? 2 : 1;
    std::vector<std::pair<int, std::string>> found;
    SQLite::Statement statement(database_,
                                "SELECT term FROM found_term WHERE term >= ? AND term < ?");
    const auto look = [&](const std::string& from, const std::string& to) {
      statement.bind(1, from);
      statement.bind(2, to);
      while (statement.executeStep()) {
        const std::string term = statement.getColumn(0).getString();
        const auto apart = static_cast<int>(term.size()) - static_cast<int>(word.size());
        if (std::abs(apart) <= most && edit_distance(word, term) <= most) {
          found.emplace_back(edit_distance(word, term), term);
        }
      }
      statement.reset();
    };
    look(word.substr(0, 1), word.substr(0, 1) + "\x7f\x7f");
    if (found.empty()) {
      look("", "\xf4\x8f\xbf\xbf");
    }
    std::sort(found.begin(), found.end());
    std::vector<std::string> terms;
    for (std::size_t i = 0; i < std::min(most_readings, found.size()); ++i) {
      terms.push_back(found[i].second);
    }
    return terms;
  }

  std::vector<std::string> understood(std::vector<std::string> words) {
    for (std::string& word : words) {
      const bool letters =
          word.size() >= 4 && word.find_first_of("0123456789") == std::string::npos;
      if (!letters || is_known(word)) {
        continue;
      }
      std::vector<std::string> readings;
      for (const std::string& term : near(word)) {
        readings.push_back("\"" + term + "\"");
      }
      word = readings.empty() ? word : understood_mark + ("(" + join(readings, " OR ") + ")");
    }
    return words;
  }

  static std::string of_years() {
    return "(SELECT piece FROM reckoned_year WHERE year BETWEEN ?3 AND ?4 UNION "
           "SELECT subject FROM claim WHERE about = 0 AND says = 0 AND negative = 0 "
           "AND ended IS NULL AND from_year <= ?4 AND to_year >= ?3 "
           "AND NOT EXISTS (SELECT 1 FROM reckoned_year WHERE piece = claim.subject))";
  }

  // The plus lets the words be looked up once; without it they are looked up for every row of
  // the years. Number and words around the match are read of those alone that are shown: of
  // all that match, they would take as long as the search.
  void match(const std::string& query, std::optional<Years> years) {
    if (query.empty() && !years) {
      return;
    }
    const std::string where = years ? " AND +rowid IN " + of_years() : "";
    SQLite::Statement statement(
        database_,
        query.empty()
            ? "SELECT id, number, title FROM piece WHERE ended IS NULL AND ?1 = '' "
              "AND id IN " +
                  of_years() + " ORDER BY number LIMIT ?2"
            : "SELECT rowid, number, snippet(found, -1, '', '', ' ... ', 10) FROM found "
              "WHERE found MATCH ?1 AND +rowid IN (SELECT rowid FROM found WHERE found MATCH "
              "?1" +
                  where + " ORDER BY rank, rowid LIMIT ?2) ORDER BY rank, number");
    statement.bind(1, query);
    statement.bind(2, static_cast<std::int64_t>(count_));
    if (years) {
      statement.bind(3, years->first);
      statement.bind(4, years->last);
    }
    while (statement.executeStep() && hits_.size() < count_) {
      const std::int32_t piece = statement.getColumn(0).getInt();
      if (seen_.insert(piece).second) {
        hits_.push_back(
            {{piece}, statement.getColumn(1).getString(), statement.getColumn(2).getString()});
      }
    }
  }

  SQLite::Database& database_;
  std::size_t count_;
  std::set<std::int32_t> seen_;
  std::vector<Hit> hits_;
};

}  // namespace

Result<std::vector<Hit>> Store::search(std::string_view text, std::size_t count) {
  const std::vector<std::string> words = words_of(text);
  if (words.empty()) {
    return Problem{Fault::bad_input, "there is nothing to look for", "",
                   "give a word or a number"};
  }
  try {
    return Search(*inside_->database, count).run(words);
  } catch (const SQLite::Exception& error) {
    return in_words(error, inside_->folder);
  }
}

}  // namespace backmark::store
