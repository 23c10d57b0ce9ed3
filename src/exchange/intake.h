// What an import works with: the show, the file, the change that grows, and the records that
// cells call into being (makers, lenders, characters, parts, the file's own source). Bodies
// only.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

#include "exchange/import.h"
#include "exchange/item.h"

namespace backmark::exchange {

class Intake {
 public:
  Intake(const model::Show& show_,
         const Table& table_,
         const ImportMap& map_,
         ImportOutcome& out_);

  const model::Show& show;
  const Table& table;
  const ImportMap& map;
  ImportOutcome& out;

  // The file among the sources; made if it is new.
  model::Id<model::Source> source();
  // Whether map and headings are as they were when this file was last taken in.
  bool map_unchanged() const { return map_unchanged_; }
  // The file's last row about this subject, or null.
  const model::Row* last_row(std::int32_t subject) const;
  // Keeps the row as the file's word on the subject; false if nothing changed.
  bool keep_row(std::int32_t subject, const TableRow& row);

  model::Id<model::Maker> maker(const std::string& name, std::string_view role);
  model::Id<model::Lender> lender(const std::string& text);
  model::Id<model::Character> character(const Item& item);
  model::Id<model::Part> part(model::Id<model::Piece> piece, const std::string& kind);

  // Keeps headings and the map's mark among the settings, for export and the next import.
  void finish();

 private:
  void set(const std::string& key, const std::string& value);
  std::string setting_key(std::string_view what) const;
  std::string unused_maker_key(const std::string& name);

  model::Id<model::Source> source_;
  bool map_unchanged_ = false;
  std::unordered_map<std::int32_t, const model::Row*> rows_;
  std::unordered_map<std::string, model::Id<model::Maker>> makers_;
  std::unordered_map<std::string, std::int32_t> maker_keys_;
  std::unordered_map<std::string, model::Id<model::Lender>> lenders_;
  std::unordered_map<std::string, model::Id<model::Character>> characters_;
  std::unordered_map<std::string, model::Id<model::Part>> parts_;
};

// The cells of a kept row under these headings; headings it does not know are empty cells.
TableRow cells_of(const model::Row& row, const Cells& headings);

// The headings of a file as it was last taken in; empty if it never was.
Cells known_headings(const model::Show& show, const std::string& source);

// What the show holds of a piece, as items.
struct Held {
  Item item;
  std::int32_t id = 0;
  model::Id<model::Source> source;
  bool superseding = false;  // took the place of an older statement
};
// The word of an import file for a way of looking ("loupe"); empty for How::unsaid.
std::string how_word(model::How how);

std::vector<Held> held_items(const model::Show& show, const model::Piece& piece);

// Takes in rows of each kind; faults and counts go to the outcome. `faulty` receives the rows
// that were not taken.
void import_pieces(Intake& intake, char decimal, std::vector<const TableRow*>& faulty);
void import_makers(Intake& intake, std::vector<const TableRow*>& faulty);
void import_sources(Intake& intake, std::vector<const TableRow*>& faulty);
void import_windows(Intake& intake, std::vector<const TableRow*>& faulty);
void import_observations(Intake& intake, char decimal, std::vector<const TableRow*>& faulty);

// Brings a piece's statements from `before` (what the file said last, or what the show has from
// it) to `now`. True if a record changed.
bool merge_items(Intake& intake,
                 model::Id<model::Piece> piece,
                 const std::vector<Held>& held,
                 std::vector<Item> before,
                 std::vector<Item> now,
                 long row);

}  // namespace backmark::exchange
