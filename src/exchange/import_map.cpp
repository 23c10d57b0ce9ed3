#include "exchange/import_map.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "exchange/map_words.h"

namespace backmark::exchange {

namespace {

constexpr std::array<Named<RowsOf>, 5> rows_words{{{"pieces", RowsOf::pieces},
                                                   {"makers", RowsOf::makers},
                                                   {"sources", RowsOf::sources},
                                                   {"observations", RowsOf::observations},
                                                   {"windows", RowsOf::windows}}};

std::optional<Problem> read_decimal(const toml::node& node, ImportMap& map) {
  const auto text = text_of("decimal", node);
  if (!text || (*text != "," && *text != ".")) {
    return Problem{.what = "the decimal mark is neither a comma nor a full stop",
                   .fix = "write decimal = \",\" or decimal = \".\""};
  }
  map.decimal = text->front();
  return std::nullopt;
}

std::optional<Problem> read_option(std::string_view key,
                                   const toml::node& node,
                                   ImportMap& map) {
  if (key == "decimal") {
    return read_decimal(node, map);
  }
  if (key == "form") {
    return put(text_of(key, node), map.form);
  }
  const std::array<Named<std::vector<std::string>*>, 3> lists{
      {{"unknown", &map.unknown}, {"none", &map.none}, {"cannot_tell", &map.cannot_tell}}};
  for (const auto& [word, place] : lists) {
    if (word == key) {
      return put(texts_of(key, node), *place);
    }
  }
  return unknown_word("the option", key, {"unknown", "none", "cannot_tell", "decimal", "form"});
}

template <class Read>
std::optional<Problem> read_part(const toml::node& node,
                                 const std::string& where,
                                 const std::string& inside,
                                 Read&& read) {
  const toml::table* table = node.as_table();
  if (table == nullptr) {
    return Problem{.what = "\"" + inside + "\" is not a table",
                   .where = where,
                   .fix = "write [" + inside + "] on a line of its own"};
  }
  for (const auto& [key, member] : *table) {
    if (auto problem = read(key.str(), member)) {
      problem->where = fmt::format("{}, {} \"{}\"", where,
                                   inside == "columns" ? "column" : "option", key.str());
      return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> read_head(std::string_view key, const toml::node& node, ImportMap& map) {
  if (key == "source" || key == "title") {
    return put(text_of(key, node), key == "source" ? map.source : map.title);
  }
  return unknown_word("the word", key, {"rows", "source", "title", "columns", "options"});
}

std::optional<Problem> read_document(const toml::table& document,
                                     const std::string& name,
                                     ImportMap& map) {
  // What the rows are decides which targets there are, so it is read first.
  if (const toml::node* rows = document.get("rows")) {
    const auto word = text_of("rows", *rows);
    auto problem = word ? put(find_word<RowsOf>("rows", *word, rows_words), map.rows)
                        : std::optional<Problem>(word.problem());
    if (problem) {
      problem->where = name;
      return problem;
    }
  }
  for (const auto& [key, node] : document) {
    std::optional<Problem> problem;
    if (key.str() == "columns") {
      problem =
          read_part(node, name, "columns", [&](std::string_view heading, const auto& column) {
            return read_column(heading, column, map);
          });
    } else if (key.str() == "options") {
      problem =
          read_part(node, name, "options", [&](std::string_view option, const auto& value) {
            return read_option(option, value, map);
          });
    } else if (key.str() != "rows") {
      problem = read_head(key.str(), node, map);
      if (problem) {
        problem->where = name;
      }
    }
    if (problem) {
      return problem;
    }
  }
  return std::nullopt;
}

bool has(const ImportMap& map, Target target) {
  return std::any_of(map.columns.begin(), map.columns.end(),
                     [&](const ColumnRule& rule) { return rule.target == target; });
}

std::vector<std::pair<Target, std::string_view>> needs_of(RowsOf rows) {
  switch (rows) {
    case RowsOf::makers:
      return {{Target::name, "name"}};
    case RowsOf::sources:
      return {{Target::key, "key"}};
    case RowsOf::observations:
      return {{Target::number, "number"},
              {Target::character, "character"},
              {Target::value, "value"}};
    case RowsOf::windows:
      return {{Target::character, "character"}, {Target::value, "value"}};
    case RowsOf::pieces:
      break;
  }
  return {{Target::number, "number"}};
}

std::optional<Problem> check_needs(const ImportMap& map) {
  for (const auto& [target, word] : needs_of(map.rows)) {
    if (!has(map, target)) {
      return Problem{.what = fmt::format("no column is the {}", word),
                     .fix = fmt::format("add a line \"...\" = \"{}\" under [columns]", word)};
    }
  }
  return std::nullopt;
}

std::string stem(const std::string& name) {
  const std::size_t slash = name.find_last_of("/\\");
  const std::string file = slash == std::string::npos ? name : name.substr(slash + 1);
  return file.substr(0, file.rfind('.'));
}

Result<toml::table> parse(std::string_view text, const std::string& name) {
  try {
    return toml::parse(text);
  } catch (const toml::parse_error& error) {
    std::string what(error.description());
    return Problem{.fault = Fault::bad_input,
                   .what = "the map is not TOML: " + what,
                   .where = fmt::format("{}, line {}", name, error.source().begin.line),
                   .fix = "write each column as \"heading\" = \"target\""};
  }
}

}  // namespace

bool ImportMap::names(std::string_view heading) const {
  return std::any_of(columns.begin(), columns.end(), [&](const ColumnRule& rule) {
    return rule.heading == heading || (!rule.roles.empty() && rule.roles == heading) ||
           (!rule.qualifiers.empty() && rule.qualifiers == heading);
  });
}

Result<ImportMap> read_map(std::string_view text, const std::string& name) {
  if (!is_utf8(text)) {
    return Problem{.fault = Fault::bad_input,
                   .what = "the map is not UTF-8 text",
                   .where = name,
                   .fix = "save it as plain text in UTF-8"};
  }
  const auto document = parse(text, name);
  if (!document) {
    return document.problem();
  }
  ImportMap map;
  map.text = std::string(text);
  if (auto problem = read_document(*document, name, map)) {
    return *problem;
  }
  if (auto problem = check_needs(map)) {
    problem->where = name;
    return *problem;
  }
  if (map.source.empty()) {
    map.source = stem(name);
  }
  if (map.title.empty()) {
    map.title = "Spreadsheet " + map.source;
  }
  return map;
}

std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (static_cast<unsigned char>(c) < 0x20) {
      out += fmt::format("\\u{:04x}", static_cast<int>(c));
    } else {
      out += (c == '"' || c == '\\') ? std::string("\\") + c : std::string(1, c);
    }
  }
  return out + "\"";
}

}  // namespace backmark::exchange
