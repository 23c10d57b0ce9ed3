#include "evidence/gather.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "evidence/said.h"

namespace backmark::evidence {

namespace {

using model::Character;
using model::Id;
using model::Observation;
using model::Piece;
using model::Seen;
using model::Shape;
using model::Show;
using model::Word;

constexpr double firm = 0.75;  // a statement this reliable may teach the curves
constexpr std::string_view looked_none = "looked for, none";

CharacterShape encoded(Shape shape) {
  switch (shape) {
    case Shape::set:
    case Shape::words:
      return CharacterShape::words;
    case Shape::number:
      return CharacterShape::number;
    default:
      return CharacterShape::category;
  }
}

// In a small show like kinds of character share one distance weight.
std::string tie_of(const Character& character) {
  if (character.key == "place") {
    return "place";
  }
  switch (character.shape) {
    case Shape::number:
      return "size";
    case Shape::words:
      return "words";
    case Shape::set:
      return "material";
    default:
      return "kind";
  }
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) > 127;
}

// Words of three letters or more, lower case.
std::vector<std::string> words_in(std::string_view text) {
  const std::string lower = lower_ascii(text);
  std::vector<std::string> words;
  std::string word;
  for (const char c : lower + " ") {
    if (is_letter(c)) {
      word += c;
    } else {
      if (word.size() >= 3) {
        words.push_back(word);
      }
      word.clear();
    }
  }
  return words;
}

class Gatherer {
 public:
  Gatherer(const Show& show, Year today) : show_(show), today_(today) {}

  Gathered run() {
    declare_characters();
    const auto& pieces = show_.all<Piece>();
    out_.pieces.resize(pieces.size());
    out_.style.pieces.resize(pieces.size());
    const MakerLegends legends(show_);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      gather_said(show_, pieces[i], legends, today_, out_.pieces[i]);
      encode(pieces[i], i);
    }
    number_lots();
    out_.years = grid();
    label_pieces();
    declare_windows();
    return std::move(out_);
  }

 private:
  void declare(
      std::string name, CharacterShape shape, std::string tie, Id<Character> id, Word part) {
    out_.style.characters.push_back({std::move(name), shape, std::move(tie), {}});
    out_.characters.push_back(id);
    out_.parts.push_back(part);
  }

  void declare_characters() {
    for (const Character& character : show_.all<Character>()) {
      if (character.shape == Shape::text) {
        continue;
      }
      column_[character.id.value] = out_.style.characters.size();
      declare(character.label, encoded(character.shape), tie_of(character), character.id,
              character.part);
      if (character.shape == Shape::set) {
        counted_.push_back({character.id.value, out_.style.characters.size()});
        declare("Number of: " + character.label, CharacterShape::number, "number", {}, {});
      }
    }
    form_ = out_.style.characters.size();
    declare("Form", CharacterShape::category, "kind", {}, {});
    title_ = out_.style.characters.size();
    declare("Title words", CharacterShape::words, "words", {}, {});
    last_word_ = out_.style.characters.size();
    declare("Last title word", CharacterShape::category, "kind", {}, {});
    ratio_ = out_.style.characters.size();
    declare("Height to width", CharacterShape::number, "size", {}, {});
  }

  void add_term(std::size_t row, std::size_t column, std::string_view text) {
    out_.style.pieces[row].values[column].terms.push_back(
        out_.style.characters[column].vocabulary.add(text));
  }

  void add_observation(std::size_t row, const Observation& seen) {
    const auto at = column_.find(seen.character.value);
    if (at == column_.end() || seen.seen == Seen::cannot_tell) {
      return;
    }
    const std::size_t column = at->second;
    StyleValue& value = out_.style.pieces[row].values[column];
    const CharacterShape shape = out_.style.characters[column].shape;
    if (shape == CharacterShape::number) {
      if (seen.seen == Seen::value && seen.number > 0 && !value.number) {
        value.number = seen.number;
        out_.pieces[row].records[column] = seen.id.value;
      }
      return;
    }
    if (shape == CharacterShape::category && !value.terms.empty()) {
      return;  // the first part seen speaks for the piece
    }
    out_.pieces[row].records[column] = seen.id.value;
    const Character* character = show_.find(seen.character);
    if (seen.seen == Seen::none) {
      add_term(row, column, looked_none);
    } else if (character->shape == Shape::words) {
      for (const std::string& word : words_in(show_.text(seen.value))) {
        add_term(row, column, word);
      }
    } else if (character->shape == Shape::set) {
      for (const std::string& word : words_in(show_.text(seen.value))) {
        add_term(row, column, word);
      }
      add_term(row, column, lower_ascii(show_.text(seen.value)));
    } else {
      add_term(row, column, show_.text(seen.value));
    }
    if (character->key == "place" && !out_.pieces[row].place) {
      out_.pieces[row].place = seen.value;
    }
  }

  void encode(const Piece& piece, std::size_t row) {
    auto& values = out_.style.pieces[row].values;
    values.resize(out_.style.characters.size());
    out_.pieces[row].records.resize(values.size());
    std::map<std::int32_t, int> count;
    for (const Observation& seen : show_.observations_of(piece.id)) {
      add_observation(row, seen);
      count[seen.character.value] += seen.seen == Seen::value ? 1 : 0;
    }
    for (const auto& [character, column] : counted_) {
      if (count[character] > 0) {
        values[column].number = count[character];
      }
    }
    if (piece.form) {
      add_term(row, form_, lower_ascii(show_.text(piece.form)));
    }
    const auto words = words_in(piece.title);
    for (const std::string& word : words) {
      add_term(row, title_, word);
    }
    if (!words.empty()) {
      add_term(row, last_word_, words.back());
    }
    set_ratio(values);
    for (StyleValue& value : values) {
      std::sort(value.terms.begin(), value.terms.end());
      value.terms.erase(std::unique(value.terms.begin(), value.terms.end()), value.terms.end());
    }
  }

  const std::optional<double> measured(const std::vector<StyleValue>& values,
                                       std::string_view key) {
    const Character* character = show_.character(key);
    if (character == nullptr || !column_.contains(character->id.value)) {
      return std::nullopt;
    }
    return values[column_[character->id.value]].number;
  }

  void set_ratio(std::vector<StyleValue>& values) {
    const auto height = measured(values, "height");
    const auto width = measured(values, "width");
    if (height && width) {
      values[ratio_].number = *height / *width;
    }
  }

  void number_lots() {
    std::map<Word, int> lots;
    int next = 0;
    const auto& pieces = show_.all<Piece>();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (!pieces[i].lot) {
        out_.style.pieces[i].lot = next++;
        continue;
      }
      const auto [at, is_new] = lots.try_emplace(pieces[i].lot, next);
      next += is_new ? 1 : 0;
      out_.style.pieces[i].lot = at->second;
    }
  }

  // The narrowest firm statement with both ends is what a piece teaches.
  static std::optional<YearSpan> stated_span(const GatheredPiece& piece) {
    std::optional<YearSpan> best;
    for (const SaidOfYear& said : piece.years) {
      const Statement& statement = said.statement;
      const bool two_ends =
          statement.saying == Saying::exact || statement.saying == Saying::interval;
      if (!two_ends || statement.reliability < firm) {
        continue;
      }
      const YearSpan span{{statement.first}, {std::max(statement.first, statement.last)}};
      if (!best || span.length() < best->length()) {
        best = span;
      }
    }
    return best;
  }

  static std::optional<int> named_hand(const GatheredPiece& piece) {
    for (const SaidOfMaker& said : piece.makers) {
      if (said.documented && said.reliability >= firm) {
        return static_cast<int>(said.maker);
      }
    }
    return std::nullopt;
  }

  void label_pieces() {
    for (std::size_t i = 0; i < out_.pieces.size(); ++i) {
      const auto span = stated_span(out_.pieces[i]);
      if (span && span->overlaps(out_.years) && span->length() <= widest_label_) {
        out_.style.pieces[i].stated = span;
        out_.any_dated = true;
      }
      out_.style.pieces[i].maker = named_hand(out_.pieces[i]);
    }
  }

  static int to_five(int year, bool down) {
    const int rest = ((year % 5) + 5) % 5;
    return rest == 0 ? year : down ? year - rest : year + 5 - rest;
  }

  std::optional<Year> fixed(std::string_view key) const {
    const auto value = to_whole(show_.setting(key));
    return value ? std::optional<Year>(Year{static_cast<std::int32_t>(*value)}) : std::nullopt;
  }

  YearSpan grid() const {
    std::vector<int> ends;
    for (const GatheredPiece& piece : out_.pieces) {
      if (const auto span = stated_span(piece)) {
        ends.push_back(span->first.value);
        ends.push_back(span->last.value);
      }
    }
    for (const model::Window& window : show_.all<model::Window>()) {
      for (const auto& end : {window.from, window.to}) {
        if (end) {
          ends.push_back(end->value);
        }
      }
    }
    if (ends.empty()) {
      return {fixed("years.first").value_or(today_ - 150),
              fixed("years.last").value_or(today_)};
    }
    std::sort(ends.begin(), ends.end());
    const int low = ends[ends.size() / 100];
    const int high = ends[ends.size() - 1 - ends.size() / 100];
    const int margin = std::max(5, (high - low) / 10);
    const Year first = fixed("years.first").value_or(Year{to_five(low - margin, true)});
    const Year last =
        fixed("years.last").value_or(std::min(Year{to_five(high + margin, false)}, today_));
    return {first, std::max(last, first + 10)};
  }

  void declare_windows() {
    for (const model::Window& window : show_.all<model::Window>()) {
      const auto at = column_.find(window.character.value);
      if (at == column_.end()) {
        continue;
      }
      const auto term =
          out_.style.characters[at->second].vocabulary.find(show_.text(window.value));
      if (!term || (!window.from && !window.to)) {
        continue;
      }
      const YearSpan span{window.from.value_or(out_.years.first),
                          window.to.value_or(out_.years.last)};
      out_.style.windows.push_back({at->second, *term, span});
    }
  }

  static constexpr int widest_label_ =
      120;  // years; a wider statement teaches nothing of style

  const Show& show_;
  Year today_;
  Gathered out_;
  std::map<std::int32_t, std::size_t> column_;  // character id to column
  std::vector<std::pair<std::int32_t, std::size_t>> counted_;
  std::size_t form_ = 0;
  std::size_t title_ = 0;
  std::size_t last_word_ = 0;
  std::size_t ratio_ = 0;
};

}  // namespace

Gathered gather(const Show& show, Year today) {
  return Gatherer(show, today).run();
}

}  // namespace backmark::evidence
