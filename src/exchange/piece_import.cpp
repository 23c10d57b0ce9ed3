#include <algorithm>
#include <optional>

#include "base/text.h"
#include "exchange/intake.h"

namespace backmark::exchange {

using namespace model;

namespace {

using Field = std::optional<std::string>;

// What a field of the piece becomes: the file's new word where the file changed it and the show
// still has the file's old one (or none). Nothing: leave it.
Field merged(const std::string& shown, const Field& before, const Field& now, bool first_time) {
  if (!now || *now == shown || (!first_time && before && *before == *now)) {
    return std::nullopt;
  }
  const bool ours = !first_time && before && *before == shown;
  return shown.empty() || ours ? now : std::nullopt;
}

class PieceImport {
 public:
  PieceImport(Intake& intake, char decimal)
      : intake_(intake),
        names_(intake.show),
        reader_(intake.map, intake.table.headings, names_, decimal) {}

  // False if the row is at fault.
  bool take(const TableRow& row) {
    RowReading now = reader_.read(row);
    check_number(row, now);
    if (!now.faults.empty()) {
      append(intake_.out.faults, now.faults);
      return false;
    }
    append(intake_.out.notes, now.notes);
    const Piece* known = intake_.show.piece(now.number);
    known == nullptr ? take_new(row, std::move(now)) : take_known(row, std::move(now), *known);
    return true;
  }

 private:
  static void append(std::vector<CellRemark>& all, std::vector<CellRemark>& more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
  }

  void check_number(const TableRow& row, RowReading& now) {
    const auto rule =
        std::find_if(intake_.map.columns.begin(), intake_.map.columns.end(),
                     [](const ColumnRule& one) { return one.target == Target::number; });
    if (now.number.empty()) {
      now.faults.push_back({.row = row.number,
                            .column = rule->heading,
                            .what = "the piece has no number",
                            .fix = "give it a number that no other piece has"});
      return;
    }
    const auto [at, is_new] = row_of_number_.try_emplace(now.number, row.number);
    if (!is_new) {
      now.faults.push_back({.row = row.number,
                            .column = rule->heading,
                            .what = fmt::format("the number \"{}\" stands in row {} already",
                                                now.number, at->second),
                            .fix = "give one of the two another number"});
    }
  }

  void take_new(const TableRow& row, RowReading now) {
    Change& change = intake_.out.change;
    const auto id = change.add(Piece{.number = now.number,
                                     .title = now.title.value_or(""),
                                     .form = change.word(now.form.value_or("")),
                                     .lot = change.word(now.lot.value_or("")),
                                     .tray = change.word(now.tray.value_or("")),
                                     .lender = intake_.lender(now.lender.value_or(""))});
    merge_items(intake_, id, {}, {}, std::move(now.items), row.number);
    intake_.keep_row(id.value, row);
    ++intake_.out.pieces_new;
  }

  void take_known(const TableRow& row, RowReading now, const Piece& known) {
    const Row* last = intake_.last_row(known.id.value);
    const bool row_changed = intake_.keep_row(known.id.value, row);
    if (!row_changed && intake_.map_unchanged()) {
      ++intake_.out.pieces_same;
      return;
    }
    const RowReading before =
        last != nullptr ? reader_.read(cells_of(*last, intake_.table.headings)) : RowReading{};
    bool changed = take_fields(row, known, before, now, last == nullptr);
    const auto held = held_items(intake_.show, known);
    auto items = last != nullptr && intake_.map_unchanged() ? before.items : ours(held);
    changed = merge_items(intake_, known.id, held, std::move(items), std::move(now.items),
                          row.number) ||
              changed;
    ++(changed ? intake_.out.pieces_changed : intake_.out.pieces_same);
  }

  // What the show has from this file.
  std::vector<Item> ours(const std::vector<Held>& held) {
    const Source* source = intake_.show.source(intake_.map.source);
    const auto& headings = intake_.table.headings;
    std::vector<Item> items;
    for (const Held& one : held) {
      const bool of_file = source != nullptr && one.source == source->id;
      const bool note =
          source != nullptr && one.item.kind == ItemKind::note &&
          std::find(headings.begin(), headings.end(), one.item.key) != headings.end();
      if (of_file || note) {
        items.push_back(one.item);
      }
    }
    return items;
  }

  bool take_fields(const TableRow& row,
                   const Piece& known,
                   const RowReading& before,
                   const RowReading& now,
                   bool first_time) {
    const Show& show = intake_.show;
    Change& change = intake_.out.change;
    Piece piece = known;
    bool changed = false;
    const auto take = [&](std::string_view what, std::string shown, const Field& old,
                          const Field& fresh, const auto& put) {
      if (const Field value = merged(shown, old, fresh, first_time)) {
        put(*value);
        changed = true;
      } else if (fresh && *fresh != shown && (first_time || old != fresh) && !fresh->empty()) {
        intake_.out.notes.push_back(
            {.row = row.number,
             .what =
                 fmt::format("the show says {} \"{}\" of piece {}, the file \"{}\"; the show's "
                             "word stands",
                             what, shown, known.number, *fresh),
             .fix = "change it in the show if the file is right"});
      }
    };
    take("title", known.title, before.title, now.title,
         [&](const std::string& value) { piece.title = value; });
    take("form", std::string(show.text(known.form)), before.form, now.form,
         [&](const std::string& value) { piece.form = change.word(value); });
    take("lot", std::string(show.text(known.lot)), before.lot, now.lot,
         [&](const std::string& value) { piece.lot = change.word(value); });
    take("tray", std::string(show.text(known.tray)), before.tray, now.tray,
         [&](const std::string& value) { piece.tray = change.word(value); });
    const Lender* lender = show.find(known.lender);
    take("lender", lender != nullptr ? lender->code : "", before.lender, now.lender,
         [&](const std::string& value) { piece.lender = intake_.lender(value); });
    if (changed) {
      change.replace(std::move(piece));
    }
    return changed;
  }

  Intake& intake_;
  MakerNames names_;
  RowReader reader_;
  std::unordered_map<std::string, long> row_of_number_;
};

}  // namespace

void import_pieces(Intake& intake, char decimal, std::vector<const TableRow*>& faulty) {
  PieceImport import(intake, decimal);
  for (const TableRow& row : intake.table.rows) {
    if (!import.take(row)) {
      faulty.push_back(&row);
    }
  }
}

}  // namespace backmark::exchange
