// Museum records as a style table, for measuring on real pieces.
#pragma once

#include <algorithm>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "base/text.h"
#include "evidence/style_table.h"

namespace backmark::evidence {

// Pieces with both years in 1600 to 2015 and a span of at most 60 years, without anything that
// says who made them. Characters:
//   classification, first material, last word of the title, gilding, printing (categories);
//   nation (terms); medium words, title words (words);
//   number of materials, width, height, depth, height / width, depth / width (numbers)
struct Carnegie {
  StyleTable table;
  std::vector<std::string> makers;
  std::vector<int> group;  // of each piece: same lot, classification and first material
};

// Rows of a comma-separated file with quotes and line breaks inside cells.
inline std::vector<std::vector<std::string>> read_rows(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) {
    fmt::print("cannot read {}\n", path);
    std::exit(2);
  }
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row(1);
  bool quoted = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    if (quoted && c == '"' && at + 1 < text.size() && text[at + 1] == '"') {
      row.back() += '"';
      ++at;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (!quoted && c == ',') {
      row.emplace_back();
    } else if (!quoted && c == '\n') {
      rows.push_back(std::move(row));
      row.assign(1, "");
    } else {
      row.back() += c;
    }
  }
  return rows;
}

// Words that name a material, so that "first material" is a material and not a way of working.
inline const std::set<std::string> materials{
    "porcelain", "glass",   "earthenware", "silver",    "terracotta", "bronze",    "aluminum",
    "wood",      "plastic", "stoneware",   "mahogany",  "ceramic",    "walnut",    "iron",
    "china",     "oak",     "steel",       "taffeta",   "gold",       "pine",      "wool",
    "metal",     "silk",    "cherry",      "copper",    "brass",      "plywood",   "rosewood",
    "bocote",    "chrome",  "satin",       "faience",   "enamel",     "damask",    "velvet",
    "plaster",   "hickory", "agate",       "ink",       "maple",      "ivory",     "beech",
    "ash",       "paper",   "lacquer",     "pewter",    "leather",    "marble",    "stone",
    "cotton",    "linen",   "nickel",      "tin",       "crystal",    "bone",      "horn",
    "poplar",    "ebony",   "birch",       "nylon",     "rubber",     "cork",      "clay",
    "creamware", "parian",  "pearlware",   "majolica",  "bakelite",   "acrylic",   "melamine",
    "vinyl",     "shell",   "pearl",       "jade",      "fabric",     "wire",      "elm",
    "teak",      "zinc",    "satinwood",   "tulipwood", "fruitwood",  "lead",      "ormolu",
    "wax",       "felt",    "canvas",      "basalt",    "redware",    "jasperware"};

inline bool letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80 || c == '-';
}

inline std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words(1);
  for (const char c : lower_ascii(text)) {
    if (letter(c)) {
      words.back() += c;
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  std::vector<std::string> kept;
  for (auto& word : words) {
    if (word.size() > 1) {
      kept.push_back(std::move(word));
    }
  }
  return kept;
}

inline bool any_of(const std::vector<std::string>& words,
                   std::initializer_list<const char*> starts) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::any_of(starts.begin(), starts.end(),
                       [&](const char* start) { return starts_with(word, start); });
  });
}

struct Row {
  const std::vector<std::string>* cells = nullptr;
  const std::map<std::string, std::size_t>* columns = nullptr;
  const std::string& operator[](const char* name) const { return (*cells)[columns->at(name)]; }
  double number(const char* name) const { return to_number((*this)[name]).value_or(0); }
};

class Encoder {
 public:
  explicit Encoder(Carnegie& data) : data_(data) {
    const auto add = [&](const char* name, CharacterShape shape, const char* tie) {
      data_.table.characters.push_back({name, shape, tie, {}});
    };
    add("classification", CharacterShape::category, "kind");
    add("first material", CharacterShape::category, "kind");
    add("last title word", CharacterShape::category, "words");
    add("gilding", CharacterShape::category, "flags");
    add("printing", CharacterShape::category, "flags");
    add("nation", CharacterShape::terms, "nation");
    add("medium words", CharacterShape::words, "words");
    add("title words", CharacterShape::words, "words");
    add("number of materials", CharacterShape::number, "flags");
    add("width", CharacterShape::number, "sizes");
    add("height", CharacterShape::number, "sizes");
    add("depth", CharacterShape::number, "sizes");
    add("height to width", CharacterShape::number, "sizes");
    add("depth to width", CharacterShape::number, "sizes");
  }

  void add(const Row& row) {
    piece_ = {};
    piece_.lot = numbered(lots_, row["lot"]);
    piece_.stated = YearSpan{{static_cast<int>(row.number("year_from"))},
                             {static_cast<int>(row.number("year_to"))}};
    const auto medium = words_of(row["medium"]);
    const auto title = words_of(row["title"]);
    const std::string kind = lower_ascii(trim(row["classification"]));
    const auto known = std::find_if(medium.begin(), medium.end(), [](const std::string& word) {
      return materials.count(word) > 0;
    });
    const std::string first = known == medium.end() ? "" : *known;
    put_terms({kind});
    put_terms({first});
    put_terms({title.empty() ? "" : title.back()});
    put_terms({any_of(medium, {"gilt", "gild", "gold", "ormolu", "parcel-gilt", "silver-gilt"})
                   ? "gilded"
                   : "not gilded"});
    put_terms({any_of(medium, {"print", "transfer", "decal"}) ? "printed" : "not printed"});
    put_terms(nations(row["maker_nationalities"]));
    put_terms(medium);
    put_terms(title);
    put_sizes(row);
    add_maker(row["makers"]);
    if (row.number("acquired_year") > 0) {
      piece_.latest = Year{static_cast<int>(row.number("acquired_year"))};
    }
    data_.group.push_back(numbered(groups_, fmt::format("{}|{}|{}", row["lot"], kind, first)));
    data_.table.pieces.push_back(std::move(piece_));
  }

 private:
  static int numbered(std::map<std::string, int>& known, const std::string& name) {
    return known.try_emplace(name, static_cast<int>(known.size())).first->second;
  }

  static std::vector<std::string> nations(const std::string& cell) {
    std::vector<std::string> found;
    for (const auto part : split(cell, "|")) {
      if (!trim(part).empty() && trim(part) != "undetermined") {
        found.emplace_back(trim(part));
      }
    }
    return found;
  }

  void put_terms(const std::vector<std::string>& texts) {
    auto& vocabulary = data_.table.characters[piece_.values.size()].vocabulary;
    std::set<int> terms;
    for (const auto& text : texts) {
      if (!text.empty()) {
        terms.insert(vocabulary.add(text));
      }
    }
    piece_.values.push_back({{terms.begin(), terms.end()}, {}});
  }

  void put_number(double number) {
    piece_.values.push_back(number > 0 ? StyleValue{{}, number} : StyleValue{});
  }

  void put_sizes(const Row& row) {
    const std::string medium = row["medium"];
    double count = 1;
    for (const char* separator : {",", ";", " and ", " with "}) {
      count += static_cast<double>(split(medium, separator).size()) - 1;
    }
    put_number(medium.empty() ? 0 : count);
    const double diameter = row.number("diameter_in");
    const double width = row.number("width_in") > 0 ? row.number("width_in") : diameter;
    const double depth = row.number("depth_in") > 0 ? row.number("depth_in") : diameter;
    const double height = row.number("height_in");
    put_number(width);
    put_number(height);
    put_number(depth);
    put_number(width > 0 ? height / width : 0);
    put_number(width > 0 ? depth / width : 0);
  }

  // The first maker with a name of its own: "unknown French" is a place.
  void add_maker(const std::string& cell) {
    for (const auto part : split(cell, "|")) {
      const auto name = std::string(trim(part));
      if (!name.empty() && !starts_with(lower_ascii(name), "unknown")) {
        piece_.maker = numbered(makers_, name);
        if (static_cast<std::size_t>(*piece_.maker) == data_.makers.size()) {
          data_.makers.push_back(name);
        }
        return;
      }
    }
  }

  Carnegie& data_;
  StylePiece piece_;
  std::map<std::string, int> lots_, makers_, groups_;
};

// `path` is objects.csv; exits with a message if it cannot be read.
inline Carnegie read_carnegie(const std::string& path) {
  Carnegie data;
  Encoder encoder(data);
  const auto rows = read_rows(path);
  std::map<std::string, std::size_t> columns;
  for (std::size_t c = 0; c < rows[0].size(); ++c) {
    columns[rows[0][c]] = c;
  }
  for (std::size_t r = 1; r < rows.size(); ++r) {
    if (rows[r].size() != columns.size()) {
      continue;
    }
    const Row row{&rows[r], &columns};
    const double from = row.number("year_from");
    const double to = row.number("year_to");
    if (!row["year_from"].empty() && !row["year_to"].empty() && from >= 1600 && to <= 2015 &&
        to >= from && to - from <= 60) {
      encoder.add(row);
    }
  }
  check(data.table);
  return data;
}

}  // namespace backmark::evidence
