// One piece's style as a row of the table: which column each character has, and what the piece
// shows there.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "evidence/style_table.h"
#include "model/show.h"

namespace backmark::evidence {

// The columns of a show's style table. Besides the characters of the show (texts are never
// weighed) there are the number of words of each set, the form, the words of the title, its
// last word, and height over width.
class StyleColumns {
 public:
  StyleColumns() = default;
  explicit StyleColumns(const model::Show& show);

  const std::vector<StyleCharacter>& characters() const { return characters_; }
  // The model's character behind each column; none: made from the title or from others.
  const std::vector<model::Id<model::Character>>& ids() const { return ids_; }
  // Kind of part each column belongs to; none: the piece as a whole.
  const std::vector<model::Word>& parts() const { return parts_; }
  std::optional<std::size_t> column(model::Id<model::Character> character) const;

 private:
  friend class RowEncoder;
  void declare(std::string name,
               CharacterShape shape,
               std::string tie,
               model::Id<model::Character> id,
               model::Word part);

  std::vector<StyleCharacter> characters_;
  std::vector<model::Id<model::Character>> ids_;
  std::vector<model::Word> parts_;
  std::unordered_map<std::int32_t, std::size_t> column_;
  std::vector<std::pair<std::size_t, std::size_t>> counted_;  // a set's column, its number's
  std::optional<std::size_t> height_, width_;
  std::size_t form_ = 0, title_ = 0, last_word_ = 0, ratio_ = 0;
};

// One thing seen on a piece.
struct Sight {
  model::Id<model::Character> character;
  model::Seen seen = model::Seen::value;
  std::string_view text;
  double number = 0;
  std::int32_t record = 0;
};

struct EncodedRow {
  std::vector<StyleValue> values;
  // Where each value came from; 0: derived or missing.
  std::vector<std::int32_t> records;
  std::string_view place;  // as recorded; empty: not said
};

// The number of a term of a column, as the table has it or as it is to be.
using TermNumber = std::function<int(std::size_t column, std::string_view term)>;

// Of a category that is seen twice (on two parts) the first speaks for the piece.
EncodedRow encode_row(const model::Show& show,
                      const StyleColumns& columns,
                      const std::vector<Sight>& sights,
                      std::string_view form,
                      std::string_view title,
                      const TermNumber& number);

}  // namespace backmark::evidence
