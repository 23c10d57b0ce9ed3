// What one row of a spreadsheet says of a piece, in words: not yet records, so that what a file
// says now, what it said last time and what the show holds can be compared.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/year.h"
#include "exchange/import_map.h"
#include "exchange/table.h"
#include "model/show.h"

namespace backmark::exchange {

enum class ItemKind { observation, claim, event, mark, note };

// One statement. Which members are used follows from the kind.
struct Item {
  ItemKind kind = ItemKind::note;
  std::string heading;  // the column it came from
  std::string key;      // observation: the character; note: the heading
  std::string part;     // observation: kind of part
  std::string text;     // value, mark, note or date as written
  double number = 0;    // observation of a number character
  model::Shape shape = model::Shape::category;
  model::Seen seen = model::Seen::value;
  std::string unit;   // observation of a number character
  std::string label;  // of a character not yet in the show
  model::How how = model::How::record;
  std::string by;
  float certainty = 1;
  model::Says says = model::Says::other;
  std::optional<Year> from;
  std::optional<Year> to;
  bool approximate = false;
  std::string maker;  // claim: the maker's name
  std::string qualifier;
  std::string role;
  std::string word;  // claim: a place

  // Where it stands: two items of one slot are two answers to one question.
  std::string slot() const;
  // All that it says; equal texts, equal statements.
  std::string statement() const;
};

// Everything a row says of a piece.
struct RowReading {
  std::string number;
  std::optional<std::string> title;  // none: the map has no such column
  std::optional<std::string> form;
  std::optional<std::string> lot;
  std::optional<std::string> tray;
  std::optional<std::string> lender;
  std::vector<Item> items;
  std::vector<CellRemark> faults;
  std::vector<CellRemark> notes;
};

// Names of makers as the show writes them: by name, by inverted name, by key.
class MakerNames {
 public:
  explicit MakerNames(const model::Show& show);
  // The show's own way of writing the name; the name itself if it is new.
  std::string known(std::string_view name) const;

 private:
  std::unordered_map<std::string, std::string> names_;
};

// How a map reads rows under given headings. Made once per file.
class RowReader {
 public:
  // `decimal` as found out for the file. Headings that the map names and the file lacks are as
  // empty cells. All three must outlive the reader.
  RowReader(const ImportMap& map,
            const Cells& headings,
            const MakerNames& makers,
            char decimal);

  RowReading read(const TableRow& row) const;

 private:
  struct Bound {
    const ColumnRule* rule = nullptr;
    std::size_t column = 0;
    std::size_t roles = no_column;
    std::size_t qualifiers = no_column;
  };
  static constexpr std::size_t no_column = static_cast<std::size_t>(-1);

  std::size_t find(std::string_view heading) const;
  std::string_view cell(const TableRow& row, std::size_t column) const;
  bool says_nothing(std::string_view cell) const;

  void read_rule(const TableRow& row, const Bound& bound, RowReading& reading) const;
  void read_years(const TableRow& row, RowReading& reading) const;
  void read_maker(const TableRow& row, const Bound& bound, RowReading& reading) const;
  void read_acquired(const TableRow& row, const Bound& bound, RowReading& reading) const;
  void read_character(const TableRow& row, const Bound& bound, RowReading& reading) const;
  void read_number(const TableRow& row, const Bound& bound, RowReading& reading) const;
  void read_measure(const TableRow& row, const Bound& bound, RowReading& reading) const;
  std::optional<Year> read_year(const TableRow& row,
                                const Bound& bound,
                                RowReading& reading) const;
  void keep_as_note(const TableRow& row, std::size_t column, RowReading& reading) const;
  CellRemark at(const TableRow& row, std::size_t column) const;

  const ImportMap& map_;
  const Cells& headings_;
  const MakerNames& makers_;
  char decimal_;
  std::vector<Bound> bound_;
  std::vector<std::size_t> unnamed_;  // columns that become notes
};

// A key of lower-case letters, digits and underscores: "Cord type" gives "cord_type".
std::string to_key(std::string_view text);

}  // namespace backmark::exchange
