// BibTeX; the grammar stands in exchange/bibliography.h.
#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <optional>

#include "base/text.h"
#include "exchange/bibliography.h"
#include "exchange/bibliography_part.h"

namespace backmark::exchange {

namespace {

using model::CitedName;
using model::Reference;
using model::ReferenceKind;

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

using Fields = std::map<std::string, std::string>;

struct RawEntry {
  std::string type;
  std::string key;
  Fields fields;
  long line = 0;
};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  // The next entry that is a work; nothing at the end. `fault` tells of one that was not closed
  // or not understood, and reading goes on after it.
  std::optional<RawEntry> next(std::string& fault, long& fault_line);

 private:
  void skip_spaces() {
    while (at_ < text_.size() && is_space(text_[at_])) {
      ++at_;
    }
  }
  bool take(char c) {
    skip_spaces();
    if (at_ < text_.size() && text_[at_] == c) {
      ++at_;
      return true;
    }
    return false;
  }
  std::string word() {
    skip_spaces();
    const std::size_t from = at_;
    while (at_ < text_.size() && !is_space(text_[at_]) &&
           std::string_view("{}(),=#\"@").find(text_[at_]) == std::string_view::npos) {
      ++at_;
    }
    return std::string(text_.substr(from, at_ - from));
  }
  long line_now() {
    line_ += std::count(text_.begin() + static_cast<std::ptrdiff_t>(counted_),
                        text_.begin() + static_cast<std::ptrdiff_t>(at_), '\n');
    counted_ = at_;
    return line_;
  }
  std::optional<std::string> quoted(char close);
  std::optional<std::string> value();
  bool fields(Fields& into);

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t counted_ = 0;
  long line_ = 1;
  Fields strings_;
};

// What stands before `close` at depth 0; braces within are kept.
std::optional<std::string> Reader::quoted(char close) {
  const std::size_t from = at_;
  int depth = 0;
  for (; at_ < text_.size(); ++at_) {
    const char c = text_[at_];
    if (c == close && depth == 0) {
      return std::string(text_.substr(from, at_++ - from));
    }
    depth += c == '{' ? 1 : c == '}' ? -1 : 0;
    if (depth < 0) {
      return std::nullopt;
    }
  }
  return std::nullopt;
}

std::optional<std::string> Reader::value() {
  std::string all;
  do {
    if (take('{')) {
      const auto part = quoted('}');
      if (!part) {
        return std::nullopt;
      }
      all += *part;
    } else if (take('"')) {
      const auto part = quoted('"');
      if (!part) {
        return std::nullopt;
      }
      all += *part;
    } else {
      const std::string name = word();
      if (name.empty()) {
        return std::nullopt;
      }
      const auto known = strings_.find(lower_ascii(name));
      all += known == strings_.end() ? name : known->second;
    }
  } while (take('#'));
  return all;
}

bool Reader::fields(Fields& into) {
  while (!take('}') && !take(')')) {
    const std::string name = lower_ascii(word());
    if (name.empty() || !take('=')) {
      return false;
    }
    auto text = value();
    if (!text) {
      return false;
    }
    into.emplace(name, std::move(*text));
    if (!take(',')) {
      return take('}') || take(')');
    }
  }
  return true;
}

std::optional<RawEntry> Reader::next(std::string& fault, long& fault_line) {
  while ((at_ = text_.find('@', at_)) != std::string_view::npos) {
    ++at_;
    RawEntry entry;
    entry.line = line_now();
    entry.type = lower_ascii(word());
    if (entry.type.empty() || !(take('{') || take('('))) {
      continue;  // an at sign in free text
    }
    if (entry.type == "comment" || entry.type == "preamble") {
      continue;
    }
    if (entry.type == "string") {
      fields(strings_);
      continue;
    }
    entry.key = word();
    if (!take(',') || !fields(entry.fields)) {
      fault = fmt::format("the entry \"{}\" is not closed or not understood", entry.key);
      fault_line = entry.line;
      return std::nullopt;
    }
    return entry;
  }
  return std::nullopt;
}

ReferenceKind kind_of(const std::string& type) {
  static const std::map<std::string, ReferenceKind> kinds{
      {"article", ReferenceKind::article},  {"incollection", ReferenceKind::part},
      {"inbook", ReferenceKind::part},      {"inproceedings", ReferenceKind::part},
      {"phdthesis", ReferenceKind::thesis}, {"mastersthesis", ReferenceKind::thesis},
      {"thesis", ReferenceKind::thesis},    {"techreport", ReferenceKind::report},
      {"report", ReferenceKind::report},    {"patent", ReferenceKind::report},
      {"online", ReferenceKind::page},      {"unpublished", ReferenceKind::unpublished},
      {"misc", ReferenceKind::unpublished}, {"letter", ReferenceKind::unpublished}};
  const auto at = kinds.find(type);
  return at == kinds.end() ? ReferenceKind::book : at->second;
}

// Names joined by " and "; a name in braces is a body and is not turned round.
std::vector<CitedName> names_of(const std::string& text) {
  std::vector<CitedName> names;
  if (trim(text).empty()) {
    return names;
  }
  for (const std::string_view part : split(text, " and ")) {
    const std::string raw(trim(part));
    if (starts_with(raw, "{") && ends_with(raw, "}")) {
      names.push_back({"", "", without_tex(raw)});
      continue;
    }
    const std::string name = without_tex(raw);
    const auto comma = name.find(',');
    const auto space = name.rfind(' ');
    if (comma != std::string::npos) {
      names.push_back({std::string(trim(name.substr(0, comma))),
                       std::string(trim(name.substr(comma + 1))), ""});
    } else if (space != std::string::npos) {
      names.push_back({name.substr(space + 1), name.substr(0, space), ""});
    } else {
      names.push_back({"", "", name});
    }
  }
  return names;
}

Reference reference_of(const RawEntry& entry) {
  const auto field = [&entry](const char* name) {
    const auto at = entry.fields.find(name);
    return at == entry.fields.end() ? std::string() : without_tex(at->second);
  };
  const auto either = [&field](const char* name, const char* other) {
    std::string text = field(name);
    return text.empty() ? field(other) : text;
  };
  const auto raw = [&entry](const char* name) {
    const auto at = entry.fields.find(name);
    return at == entry.fields.end() ? std::string() : at->second;
  };
  Reference one{.key = entry.key,
                .kind = kind_of(entry.type),
                .authors = names_of(raw("author")),
                .editors = names_of(raw("editor")),
                .title = field("title"),
                .host = field("journal"),
                .edition = field("edition"),
                .place = either("address", "location"),
                .publisher = field("publisher"),
                .year = either("year", "date"),
                .volume = field("volume"),
                .issue = field("number"),
                .pages = field("pages"),
                .series = field("series"),
                .holder = field("library"),
                .address = field("url"),
                .note = either("howpublished", "type")};
  if (one.host.empty()) {
    one.host = either("booktitle", "journaltitle");
  }
  if (one.publisher.empty()) {
    one.publisher = either("school", "institution");
  }
  const std::string doi = field("doi");
  const std::string isbn = field("isbn");
  one.identifier = !doi.empty() ? "DOI " + doi : !isbn.empty() ? "ISBN " + isbn : "";
  return one;
}

// The combining sign of TeX's accent commands; 0 for other commands.
char32_t accent_of(char command) {
  constexpr std::array<std::pair<char, char32_t>, 11> accents{{{'"', 0x308},
                                                               {'\'', 0x301},
                                                               {'`', 0x300},
                                                               {'^', 0x302},
                                                               {'~', 0x303},
                                                               {'=', 0x304},
                                                               {'.', 0x307},
                                                               {'c', 0x327},
                                                               {'v', 0x30C},
                                                               {'u', 0x306},
                                                               {'H', 0x30B}}};
  for (const auto& [sign, code] : accents) {
    if (sign == command) {
      return code;
    }
  }
  return 0;
}

// Letters with their own code; others keep the combining sign.
char32_t composed(char letter, char32_t accent) {
  static const std::map<std::pair<char, char32_t>, char32_t> known{
      {{'a', 0x308}, U'ä'}, {{'o', 0x308}, U'ö'}, {{'u', 0x308}, U'ü'}, {{'A', 0x308}, U'Ä'},
      {{'O', 0x308}, U'Ö'}, {{'U', 0x308}, U'Ü'}, {{'e', 0x308}, U'ë'}, {{'i', 0x308}, U'ï'},
      {{'a', 0x301}, U'á'}, {{'e', 0x301}, U'é'}, {{'i', 0x301}, U'í'}, {{'o', 0x301}, U'ó'},
      {{'u', 0x301}, U'ú'}, {{'E', 0x301}, U'É'}, {{'y', 0x301}, U'ý'}, {{'a', 0x300}, U'à'},
      {{'e', 0x300}, U'è'}, {{'o', 0x300}, U'ò'}, {{'u', 0x300}, U'ù'}, {{'a', 0x302}, U'â'},
      {{'e', 0x302}, U'ê'}, {{'i', 0x302}, U'î'}, {{'o', 0x302}, U'ô'}, {{'u', 0x302}, U'û'},
      {{'n', 0x303}, U'ñ'}, {{'a', 0x303}, U'ã'}, {{'o', 0x303}, U'õ'}, {{'c', 0x327}, U'ç'},
      {{'s', 0x30C}, U'š'}, {{'c', 0x30C}, U'č'}, {{'z', 0x30C}, U'ž'}, {{'r', 0x30C}, U'ř'},
      {{'o', 0x30B}, U'ő'}, {{'u', 0x30B}, U'ű'}};
  const auto at = known.find({letter, accent});
  return at == known.end() ? 0 : at->second;
}

// The accent that starts at the backslash `at`, and where reading goes on; nothing else.
std::optional<std::string> accented(std::string_view text, std::size_t& at) {
  if (at + 2 >= text.size()) {
    return std::nullopt;
  }
  const char32_t accent = accent_of(text[at + 1]);
  std::size_t from = at + 2;
  const bool is_word = std::isalpha(static_cast<unsigned char>(text[at + 1])) != 0;
  if (accent == 0 || (is_word && text[from] != '{' && text[from] != ' ')) {
    return std::nullopt;
  }
  while (from < text.size() && (text[from] == '{' || text[from] == ' ' || text[from] == '\\')) {
    ++from;
  }
  if (from >= text.size() || std::isalpha(static_cast<unsigned char>(text[from])) == 0) {
    return std::nullopt;
  }
  at = from + 1;
  const char32_t one = composed(text[from], accent);
  return one != 0 ? to_utf8(std::u32string(1, one))
                  : std::string(1, text[from]) + to_utf8(std::u32string(1, accent));
}

// \ss, \o, \ae ... as letters; other commands go.
std::string command(std::string_view text, std::size_t& at) {
  static const std::map<std::string_view, std::string_view> letters{
      {"ss", "ß"}, {"o", "ø"},  {"O", "Ø"},  {"ae", "æ"}, {"AE", "Æ"},
      {"aa", "å"}, {"AA", "Å"}, {"oe", "œ"}, {"l", "ł"},  {"L", "Ł"}};
  std::size_t end = at + 1;
  while (end < text.size() && std::isalpha(static_cast<unsigned char>(text[end])) != 0) {
    ++end;
  }
  if (end == at + 1) {  // an escaped sign
    at = std::min(end + 1, text.size());
    return end < text.size() ? std::string(1, text[end]) : std::string();
  }
  const auto known = letters.find(text.substr(at + 1, end - at - 1));
  at = end;
  while (at < text.size() && text[at] == ' ') {
    ++at;
  }
  return known == letters.end() ? std::string() : std::string(known->second);
}

}  // namespace

std::string without_tex(std::string_view text) {
  std::string plain;
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (c == '\\') {
      if (auto letter = accented(text, at)) {
        plain += *letter;
      } else {
        plain += command(text, at);
      }
    } else {
      if (is_space(c) || c == '~') {
        plain += plain.empty() || plain.back() == ' ' ? "" : " ";
      } else if (c != '{' && c != '}') {
        plain += c;
      }
      ++at;
    }
  }
  return without_trailing_spaces(std::move(plain));
}

Result<Bibliography> read_bibtex(std::string_view text, const std::string& file) {
  Bibliography all;
  std::set<std::string> keys;
  Reader reader(text);
  while (true) {
    std::string fault;
    long line = 0;
    const auto entry = reader.next(fault, line);
    if (!entry && fault.empty()) {
      break;
    }
    if (!entry) {
      all.faults.push_back({Fault::bad_input, fault, fmt::format("{}, line {}", file, line),
                            "every field is name = {value}, and every { has its }"});
      continue;
    }
    keep(all, keys, reference_of(*entry), fmt::format("{}, line {}", file, entry->line));
  }
  if (all.references.empty() && all.faults.empty() && !trim(text).empty()) {
    return Problem{Fault::bad_input, "there is no BibTeX entry in it", file,
                   "an entry begins with @book{key,"};
  }
  return all;
}

}  // namespace backmark::exchange
