// What the Table's answer takes from a reckoning: the dear part of it, and the same until the
// show is reckoned anew.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "desk/table_words.h"
#include "model/show.h"
#include "store/store.h"

namespace backmark::desk {

// The cells of one column in one text.
class Cells {
 public:
  void end_cell() { ends_.push_back(text.size()); }
  std::string_view operator[](std::size_t row) const {
    const std::size_t first = row == 0 ? 0 : ends_[row - 1];
    return std::string_view(text).substr(first, ends_[row] - first);
  }

  std::string text;  // of the cell that is being written, at its end

 private:
  std::vector<std::size_t> ends_;
};

// "p" is empty where no year can be said, and the other years are 0. "q" has the first of
// twenty years and then how far each lies after the one before. "makers" has place of the word
// and thousandths of each that is listed, as makers_drawn has them; then the thousandths of the
// unrecorded hand.
enum class ReckonedColumn : std::size_t { made, by, makers, p10, p50, p90, from, p, q };
constexpr std::size_t reckoned_columns = 9;

// Each cell is JSON, a row for every piece of the reckoning.
class TableReckoned {
 public:
  TableReckoned(const model::Show& show, std::shared_ptr<const store::Run> run);

  // Whether it says of this show what one made anew would say.
  bool holds(const model::Show& show, const store::Run* run) const;

  const TableWords& words() const { return words_; }
  std::string_view cell(ReckonedColumn column, std::size_t row) const {
    return cells_[static_cast<std::size_t>(column)][row];
  }
  // Of a piece that was not reckoned.
  static std::string_view empty_cell(ReckonedColumn column);

 private:
  std::string& end_of(ReckonedColumn column);
  void add_makers(const model::Show& show, const model::MakerBelief& maker);
  void add_years(const model::YearBelief& year);

  std::shared_ptr<const store::Run> run_;
  std::vector<std::string> makers_;  // names, in the order of the show that it was made of
  std::vector<std::int32_t> maker_ids_;
  TableWords words_;
  std::array<Cells, reckoned_columns> cells_;
};

}  // namespace backmark::desk
