#include "press/essay_marks.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>

#include "base/text.h"
#include "words/citation.h"

namespace backmark::press {

namespace {

std::string one_line(std::string text) {
  return replace_all(std::move(text), "\n", " ");
}

void add_words(Words& words, std::string text, Voice voice) {
  text = one_line(std::move(text));
  if (text.empty()) {
    return;
  }
  if (!words.empty() && words.back().kind == Span::Kind::words && words.back().voice == voice) {
    words.back().text += text;
  } else {
    words.push_back({Span::Kind::words, voice, std::move(text), {}, -1});
  }
}

const model::Reference* work(const std::string& key, long line, EssayDesk& desk) {
  const auto& all = desk.world.references;
  const auto at =
      std::find_if(all.begin(), all.end(), [&key](const auto& one) { return one.key == key; });
  if (at != all.end()) {
    if (std::find(desk.cited.begin(), desk.cited.end(), key) == desk.cited.end()) {
      desk.cited.push_back(key);
    }
    return &*at;
  }
  std::vector<std::string> keys;
  for (const model::Reference& one : all) {
    keys.push_back(one.key);
  }
  const auto near = closest(key, keys);
  desk.find(line, fmt::format("no work has the key \"{}\"", key),
            near ? fmt::format("did you mean [@{}]?", *near)
                 : "add it to the list of works, or mend the key");
  return nullptr;
}

// "key, 12" after the @.
Span citation(std::string_view inside, Voice voice, long line, EssayDesk& desk) {
  const auto comma = inside.find(',');
  const std::string key(trim(inside.substr(0, comma)));
  const std::string locator(comma == std::string_view::npos ? std::string_view()
                                                            : trim(inside.substr(comma + 1)));
  const model::Reference* found = work(key, line, desk);
  return {Span::Kind::citation, voice,
          found != nullptr ? words::short_title(*found, locator) : "[" + key + "]", key, -1};
}

// The piece that is meant, if it is in the book; a finding if not.
const model::Piece* piece(const std::string& number, long line, EssayDesk& desk) {
  const model::Piece* found = desk.world.show.piece(number);
  if (found == nullptr) {
    std::vector<std::string> numbers;
    for (const model::Piece& one : desk.world.show.all<model::Piece>()) {
      numbers.push_back(one.number);
    }
    const auto near = closest(number, numbers);
    desk.find(line, fmt::format("there is no piece \"{}\"", number),
              near ? fmt::format("did you mean {}?", *near) : "write its catalogue number");
    return nullptr;
  }
  const words::Place* place = desk.world.numbering.place_of(found->id);
  if (place == nullptr || !place->pick->in_book) {
    desk.find(line, fmt::format("{} is not in the book", number),
              "pick it for the book, or do not send the reader to it");
    return nullptr;
  }
  return found;
}

Span piece_span(std::string_view inside, bool page, Voice voice, long line, EssayDesk& desk) {
  const std::string number(trim(inside));
  const model::Piece* found = piece(number, line, desk);
  if (found == nullptr) {
    return {Span::Kind::words, voice, number, {}, -1};
  }
  if (page) {
    return {Span::Kind::page, voice, {}, "piece " + number, -1};
  }
  return {Span::Kind::piece, voice, desk.world.numbering.number_of(*found), number, -1};
}

// Its number is known when the whole chapter is read.
Span figure_span(std::string_view inside, Voice voice, long line, EssayDesk& desk) {
  std::string shows(trim(inside.substr(4)));
  desk.figures_called.emplace_back(line, shows);
  return {Span::Kind::figure, voice, std::string(inside.substr(0, 3)), std::move(shows), -1};
}

// What stands between [ and ]: marks apart by semicolons. False if it is none of ours.
bool add_mark(
    Words& words, const std::string& inside, Voice voice, long line, EssayDesk& desk) {
  bool first = true;
  const bool bracketed = starts_with(trim(inside), "@") && !desk.in_note;
  if (bracketed) {
    add_words(words, "(", voice);
  }
  for (const std::string_view raw : split(inside, ";")) {
    const std::string_view part = trim(raw);
    std::optional<Span> span;
    if (starts_with(part, "@")) {
      span = citation(part.substr(1), voice, line, desk);
    } else if (starts_with(part, "#")) {
      span = piece_span(part.substr(1), false, voice, line, desk);
    } else if (starts_with(part, "page #")) {
      span = piece_span(part.substr(6), true, voice, line, desk);
    } else if (starts_with(part, "fig ") || starts_with(part, "Fig ")) {
      span = figure_span(part, voice, line, desk);
    }
    if (!span) {
      return false;
    }
    if (!first) {
      add_words(words, span->kind == Span::Kind::citation ? "; " : ", ", voice);
    }
    words.push_back(std::move(*span));
    first = false;
  }
  if (bracketed) {
    add_words(words, ")", voice);
  }
  return true;
}

bool is_letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || (c & 0x80) != 0;
}

// Stars and underscores that the reader of Markdown left standing at a word's edge.
void look_for_open_emphasis(const std::string& text, long line, EssayDesk& desk) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    line += text[at] == '\n' ? 1 : 0;
    if (text[at] != '*' && text[at] != '_') {
      continue;
    }
    const bool before = at > 0 && is_letter(text[at - 1]);
    const bool after = at + 1 < text.size() && is_letter(text[at + 1]);
    if (before != after) {
      desk.find(line,
                fmt::format("emphasis is opened or closed by {} and left alone", text[at]),
                "put the same sign at the other end of the words, or take it away");
      return;
    }
  }
}

bool looks_like_mark(std::string_view rest) {
  return starts_with(rest, "[@") || starts_with(rest, "[#") || starts_with(rest, "[page #") ||
         starts_with(rest, "[page\n#") || starts_with(rest, "[^") ||
         starts_with(rest, "[fig ") || starts_with(rest, "[Fig ");
}

constexpr std::array<std::string_view, 6> views{"front", "back", "tips",
                                                "mark",  "side", "detail"};

}  // namespace

std::string EssayDesk::where(long line) const {
  return fmt::format("{}, line {}", file, line);
}

void EssayDesk::find(long line, std::string what, std::string fix) {
  findings.push_back({Fault::bad_input, std::move(what), where(line), std::move(fix)});
}

void add_marked(
    Words& words, const std::string& text, Voice voice, long line, EssayDesk& desk) {
  look_for_open_emphasis(text, line, desk);
  std::size_t done = 0;
  for (std::size_t at = text.find('['); at != std::string::npos; at = text.find('[', at + 1)) {
    const std::string_view rest = std::string_view(text).substr(at);
    if (at < done || !looks_like_mark(rest)) {
      continue;
    }
    const auto before = text.begin() + static_cast<std::ptrdiff_t>(at);
    const long here = line + std::count(text.begin(), before, '\n');
    const std::size_t end = text.find(']', at);
    if (end == std::string::npos) {
      desk.find(here, "a mark is opened with [ and not closed", "close it with ]");
      break;
    }
    if (starts_with(rest, "[^")) {
      desk.find(here, fmt::format("the note {} has no text", text.substr(at, end + 1 - at)),
                "write its text on a line that begins with the mark and a colon");
    }
    add_words(words, text.substr(done, at - done), voice);
    const std::string inside = one_line(text.substr(at + 1, end - at - 1));
    if (!starts_with(rest, "[^") && !add_mark(words, inside, voice, here, desk)) {
      desk.find(here, fmt::format("[{}] is not understood", inside),
                "write [@key, 12], [#ES 118], [page #ES 118] or [fig ES 118]");
    }
    done = end + 1;
  }
  add_words(words, text.substr(done), voice);
}

std::vector<FigurePiece> figure_pieces(const std::string& address, long line, EssayDesk& desk) {
  std::vector<FigurePiece> pieces;
  for (const std::string_view raw : split(address, ",")) {
    const std::string part(trim(raw));
    const auto space = part.rfind(' ');
    const std::string view = space == std::string::npos ? "" : part.substr(space + 1);
    if (std::find(views.begin(), views.end(), view) != views.end()) {
      const std::string number(trim(std::string_view(part).substr(0, space)));
      if (piece(number, line, desk) != nullptr) {
        pieces.push_back({number, view, {}});
      }
    } else if (part.find('.') != std::string::npos && !contains(part, "..") &&
               !contains(part, ":") && !starts_with(part, "/")) {
      pieces.push_back({{}, {}, part});
    } else {
      desk.find(line, fmt::format("\"{}\" is no picture", part),
                "write <ES 118 front>, or the name of a file below photos/");
    }
  }
  return pieces;
}

void find_notes_without_mark(std::string_view source, EssayDesk& desk) {
  std::map<std::string, long> defined;
  std::set<std::string> marked;
  long line = 0;
  for (const std::string_view row : split(source, "\n")) {
    ++line;
    for (std::size_t at = row.find("[^"); at != std::string_view::npos;
         at = row.find("[^", at + 1)) {
      const std::size_t end = row.find(']', at);
      if (end == std::string_view::npos) {
        break;
      }
      const std::string name = lower_ascii(row.substr(at + 2, end - at - 2));
      if (at == 0 && end + 1 < row.size() && row[end + 1] == ':') {
        defined.emplace(name, line);
      } else {
        marked.insert(name);
      }
    }
  }
  for (const auto& [name, at] : defined) {
    if (marked.count(name) == 0) {
      desk.find(at, fmt::format("the note [^{}] has no mark in the text", name),
                "put the mark after the words it belongs to, or drop the note");
    }
  }
}

}  // namespace backmark::press
