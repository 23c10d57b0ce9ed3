#include "evidence/encode.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::evidence {

namespace {

using model::Character;
using model::Id;
using model::Seen;
using model::Shape;
using model::Show;
using model::Word;

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

}  // namespace

void StyleColumns::declare(
    std::string name, CharacterShape shape, std::string tie, Id<Character> id, Word part) {
  characters_.push_back({std::move(name), shape, std::move(tie), {}});
  ids_.push_back(id);
  parts_.push_back(part);
}

StyleColumns::StyleColumns(const Show& show) {
  for (const Character& character : show.all<Character>()) {
    if (character.shape == Shape::text) {
      continue;
    }
    const std::size_t column = characters_.size();
    column_[character.id.value] = column;
    declare(character.label, encoded(character.shape), tie_of(character), character.id,
            character.part);
    if (character.shape == Shape::set) {
      counted_.push_back({column, column + 1});
      declare("Number of: " + character.label, CharacterShape::number, "number", {}, {});
    }
    if (character.key == "height") {
      height_ = column;
    } else if (character.key == "width") {
      width_ = column;
    }
  }
  form_ = characters_.size();
  declare("Form", CharacterShape::category, "kind", {}, {});
  title_ = characters_.size();
  declare("Title words", CharacterShape::words, "words", {}, {});
  last_word_ = characters_.size();
  declare("Last title word", CharacterShape::category, "kind", {}, {});
  ratio_ = characters_.size();
  declare("Height to width", CharacterShape::number, "size", {}, {});
}

std::optional<std::size_t> StyleColumns::column(Id<Character> character) const {
  const auto at = column_.find(character.value);
  return at == column_.end() ? std::nullopt : std::optional(at->second);
}

class RowEncoder {
 public:
  RowEncoder(const Show& show, const StyleColumns& columns, const TermNumber& number)
      : show_(show), columns_(columns), number_(number), count_(columns.characters().size()) {
    row_.values.resize(count_.size());
    row_.records.resize(count_.size());
  }

  void add(const Sight& sight) {
    const auto column = columns_.column(sight.character);
    if (!column || sight.seen == Seen::cannot_tell) {
      return;
    }
    count_[*column] += sight.seen == Seen::value ? 1 : 0;
    const Character& character = *show_.find(sight.character);
    StyleValue& value = row_.values[*column];
    if (character.shape == Shape::number) {
      if (sight.seen == Seen::value && sight.number > 0 && !value.number) {
        value.number = sight.number;
        row_.records[*column] = sight.record;
      }
      return;
    }
    if (encoded(character.shape) == CharacterShape::category && !value.terms.empty()) {
      return;
    }
    row_.records[*column] = sight.record;
    add_terms(*column, character.shape, sight);
    if (character.key == "place" && row_.place.empty()) {
      row_.place = sight.text;
    }
  }

  EncodedRow finish(std::string_view form, std::string_view title) {
    for (const auto& [set, number] : columns_.counted_) {
      if (count_[set] > 0) {
        row_.values[number].number = count_[set];
      }
    }
    if (!form.empty()) {
      add_term(columns_.form_, lower_ascii(form));
    }
    const auto words = words_in(title);
    for (const std::string& word : words) {
      add_term(columns_.title_, word);
    }
    if (!words.empty()) {
      add_term(columns_.last_word_, words.back());
    }
    set_ratio();
    for (StyleValue& value : row_.values) {
      std::sort(value.terms.begin(), value.terms.end());
      value.terms.erase(std::unique(value.terms.begin(), value.terms.end()), value.terms.end());
    }
    return std::move(row_);
  }

 private:
  void add_term(std::size_t column, std::string_view term) {
    row_.values[column].terms.push_back(number_(column, term));
  }

  void add_terms(std::size_t column, Shape shape, const Sight& sight) {
    if (sight.seen == Seen::none) {
      add_term(column, looked_none);
      return;
    }
    if (shape == Shape::words || shape == Shape::set) {
      for (const std::string& word : words_in(sight.text)) {
        add_term(column, word);
      }
    }
    if (shape == Shape::set) {
      add_term(column, lower_ascii(sight.text));
    } else if (shape != Shape::words) {
      add_term(column, sight.text);
    }
  }

  void set_ratio() {
    if (columns_.height_ && columns_.width_) {
      const auto height = row_.values[*columns_.height_].number;
      const auto width = row_.values[*columns_.width_].number;
      if (height && width) {
        row_.values[columns_.ratio_].number = *height / *width;
      }
    }
  }

  const Show& show_;
  const StyleColumns& columns_;
  const TermNumber& number_;
  std::vector<int> count_;  // of each column: values seen
  EncodedRow row_;
};

EncodedRow encode_row(const Show& show,
                      const StyleColumns& columns,
                      const std::vector<Sight>& sights,
                      std::string_view form,
                      std::string_view title,
                      const TermNumber& number) {
  RowEncoder encoder(show, columns, number);
  for (const Sight& sight : sights) {
    encoder.add(sight);
  }
  return encoder.finish(form, title);
}

}  // namespace backmark::evidence
