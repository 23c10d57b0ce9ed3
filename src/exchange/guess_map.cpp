#include "exchange/guess_map.h"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <utility>

#include "base/text.h"
#include "exchange/import_map.h"
#include "exchange/unit.h"

namespace backmark::exchange {

namespace {

using Word = std::pair<std::string_view, std::string_view>;

// Headings in common use in such lists (common practice, no source).
constexpr std::array<Word, 60> headings_in_use{{
    {"number", "number"},
    {"no", "number"},
    {"nr", "number"},
    {"id", "number"},
    {"inventory", "number"},
    {"inventory number", "number"},
    {"accession", "number"},
    {"accession number", "number"},
    {"object number", "number"},
    {"catalogue number", "number"},
    {"title", "title"},
    {"name", "title"},
    {"object", "title"},
    {"form", "form"},
    {"type", "form"},
    {"object type", "form"},
    {"maker", "maker"},
    {"artist", "maker"},
    {"made by", "maker"},
    {"hand", "maker"},
    {"made", "made"},
    {"date", "made"},
    {"year", "made"},
    {"year made", "made"},
    {"dated", "made"},
    {"made from", "made-from"},
    {"earliest", "made-from"},
    {"made to", "made-to"},
    {"latest", "made-to"},
    {"mark", "mark"},
    {"marks", "mark"},
    {"stamp", "mark"},
    {"place", "place"},
    {"origin", "place"},
    {"made in", "place"},
    {"acquired", "acquired"},
    {"bought", "acquired"},
    {"date acquired", "acquired"},
    {"lot", "lot"},
    {"lender", "lender"},
    {"lent by", "lender"},
    {"tray", "tray"},
    {"drawer", "tray"},
    {"material", "character:material"},
    {"materials", "character:material"},
    {"medium", "character:material"},
    {"technique", "character:technique"},
    {"techniques", "character:technique"},
    {"motif", "character:motif"},
    {"subject", "character:motif"},
    {"metal", "character:metal"},
    {"stone", "character:stone"},
    {"fitting", "character:fitting"},
    {"cord", "character:cord_type"},
    {"tips", "character:tip_form"},
    {"h", "measure:height"},
    {"w", "measure:width"},
    {"d", "measure:depth"},
    {"weight", "measure:mass"},
    {"diameter", "measure:diameter"},
}};
constexpr std::array<std::string_view, 5> measures{"height", "width", "depth", "mass",
                                                   "length"};
constexpr std::array<std::string_view, 6> only_once{"number", "title",  "form",
                                                    "lot",    "lender", "tray"};
constexpr std::array<std::string_view, 17> targets{
    "number",   "title", "form", "maker",  "made", "made-from", "made-to",   "mark",   "place",
    "acquired", "note",  "lot",  "lender", "tray", "ignore",    "character", "measure"};

// Letters and digits in lower case, words parted by one blank: "Height (cm)" is "height cm".
std::string plain(std::string_view heading) {
  std::string text;
  for (const char c : lower_ascii(heading)) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & 0x80) != 0;
    if (letter) {
      text += c;
    } else if (!text.empty() && text.back() != ' ') {
      text += ' ';
    }
  }
  return std::string(trim(text));
}

// "height cm" parted into "height" and the unit, if the last word is one.
std::pair<std::string, std::string> without_unit(const std::string& heading) {
  const std::size_t blank = heading.rfind(' ');
  if (blank != std::string::npos && find_unit(heading.substr(blank + 1)) != nullptr) {
    return {heading.substr(0, blank), std::string(find_unit(heading.substr(blank + 1))->word)};
  }
  return {heading, ""};
}

std::string measure_word(std::string_view key, const std::string& unit) {
  const std::string usual = key == "mass" ? "g" : "mm";
  return fmt::format("measure:{}:{}", key, unit.empty() ? usual : unit);
}

std::string word_for(const std::string& heading, const model::Show& show) {
  const auto [name, unit] = without_unit(plain(heading));
  for (const model::Character& one : show.all<model::Character>()) {
    if (name == plain(one.key) || name == plain(one.label)) {
      return one.shape == model::Shape::number ? measure_word(one.key, unit)
                                               : "character:" + one.key;
    }
  }
  if (std::find(measures.begin(), measures.end(), name) != measures.end()) {
    return measure_word(name, unit);
  }
  for (const auto& [known, word] : headings_in_use) {
    if (known == name) {
      return starts_with(word, "measure:") ? measure_word(word.substr(8), unit)
                                           : std::string(word);
    }
  }
  return "note";
}

bool all_different(const Table& table, std::size_t column) {
  std::set<std::string_view> seen;
  return !table.rows.empty() &&
         std::all_of(table.rows.begin(), table.rows.end(), [&](const TableRow& row) {
           return !row.cells[column].empty() && seen.insert(row.cells[column]).second;
         });
}

// The right side of a line of the map; nothing for a word of no kind.
std::optional<std::string> rule_of(const std::string& word) {
  const std::vector<std::string_view> parts = split(word, ":");
  if (std::find(targets.begin(), targets.end(), parts.front()) == targets.end()) {
    return std::nullopt;
  }
  if (parts.front() == "character") {
    return parts.size() != 2 ? std::nullopt
                             : std::optional(fmt::format("{{ character = {}, split = \";\" }}",
                                                         quoted(parts[1])));
  }
  if (parts.front() == "measure") {
    return parts.size() != 3 ? std::nullopt
                             : std::optional(fmt::format("{{ measure = {}, unit = {} }}",
                                                         quoted(parts[1]), quoted(parts[2])));
  }
  return parts.size() == 1 ? std::optional(quoted(word)) : std::nullopt;
}

}  // namespace

std::vector<ColumnReading> guess_columns(const Table& table, const model::Show& show) {
  std::vector<ColumnReading> readings;
  std::set<std::string> taken;
  for (const std::string& heading : table.headings) {
    std::string word = word_for(heading, show);
    const bool once = std::find(only_once.begin(), only_once.end(), word) != only_once.end();
    if (once && !taken.insert(word).second) {
      word = "note";
    }
    readings.push_back({heading, std::move(word)});
  }
  if (!taken.contains("number")) {
    for (std::size_t i = 0; i < readings.size(); ++i) {
      if (all_different(table, i)) {
        readings[i].word = "number";
        break;
      }
    }
  }
  return readings;
}

Result<std::string> map_of(const std::vector<ColumnReading>& readings) {
  std::string text = "[columns]\n";
  for (const ColumnReading& one : readings) {
    const auto rule = rule_of(one.word);
    if (!rule) {
      return Problem{Fault::bad_input,
                     fmt::format("\"{}\" is nothing that a column can be", one.word),
                     "column " + one.heading,
                     "write number, title, made, note ..., character:KEY or measure:KEY:UNIT"};
    }
    text += fmt::format("{} = {}\n", quoted(one.heading), *rule);
  }
  return text;
}

}  // namespace backmark::exchange
