#include "exchange/export_csv.h"

#include <algorithm>
#include <unordered_set>

#include "base/text.h"
#include "exchange/export_part.h"
#include "exchange/intake.h"
#include "exchange/unit.h"

namespace backmark::exchange {

using namespace model;

namespace {

// The file's headings as they were; else the map's, each once.
Cells headings_of(const Show& show, const ImportMap& map) {
  Cells headings = known_headings(show, map.source);
  const auto want = [&](const std::string& heading) {
    if (!heading.empty() &&
        std::find(headings.begin(), headings.end(), heading) == headings.end()) {
      headings.push_back(heading);
    }
  };
  for (const ColumnRule& rule : map.columns) {
    want(rule.heading);
    want(rule.roles);
    want(rule.qualifiers);
  }
  return headings;
}

// A length or weight in the unit that the map's column has.
std::string in_unit(double value, const std::string& unit) {
  if (const Unit* known = find_unit(unit)) {
    return plain_number(value / known->factor);
  }
  return plain_number(value);
}

std::string maker_text(const Item& item, bool with_qualifier) {
  if (item.says == Says::made_at) {
    return "unknown " + item.word;
  }
  return with_qualifier && !item.qualifier.empty() ? item.qualifier + " " + item.maker
                                                   : item.maker;
}

// Cells of one piece, written from its records.
class PieceCells {
 public:
  PieceCells(const Show& show, const ImportMap& map, const Piece& piece)
      : show_(show), map_(map), piece_(piece), held_(held_items(show, piece)) {}

  const std::vector<Held>& held() const { return held_; }

  std::string cell(const ColumnRule& rule) const {
    switch (rule.target) {
      case Target::number:
        return piece_.number;
      case Target::title:
        return piece_.title;
      case Target::form:
        return std::string(show_.text(piece_.form));
      case Target::lot:
        return std::string(show_.text(piece_.lot));
      case Target::tray:
        return std::string(show_.text(piece_.tray));
      case Target::lender:
        return lender();
      case Target::maker:
        return makers(rule);
      case Target::made:
        return claim_text();
      case Target::made_from:
        return claim_year(&Item::from);
      case Target::made_to:
        return claim_year(&Item::to);
      case Target::acquired:
        return first_text(ItemKind::event, "");
      case Target::mark:
        return all_texts(ItemKind::mark, "", rule);
      case Target::note:
        return first_text(ItemKind::note, rule.heading);
      case Target::place:
        return all_texts(ItemKind::observation, "place", rule);
      case Target::character:
        return all_texts(ItemKind::observation, rule.key, rule);
      case Target::measure:
        return measures(rule);
      default:
        return {};
    }
  }

  // A column in step with the makers.
  std::string step(const ColumnRule& rule, const std::string& heading) const {
    std::vector<std::string> texts;
    for (const Item* item : maker_items()) {
      texts.push_back(heading == rule.roles ? item->role : item->qualifier);
      if (heading == rule.roles && rule.qualifiers.empty() && texts.back().empty()) {
        texts.back() = item->qualifier;
      }
    }
    return join(texts, rule.split.empty() ? "|" : rule.split.front());
  }

  std::string note(const std::string& heading) const {
    return first_text(ItemKind::note, heading);
  }

 private:
  std::string lender() const {
    const Lender* lender = show_.find(piece_.lender);
    return lender != nullptr ? lender->code : "";
  }

  std::vector<const Item*> maker_items() const {
    std::vector<const Item*> items;
    for (const Held& one : held_) {
      if (one.item.kind == ItemKind::claim && one.item.says != Says::made) {
        items.push_back(&one.item);
      }
    }
    return items;
  }

  std::string makers(const ColumnRule& rule) const {
    std::vector<std::string> texts;
    for (const Item* item : maker_items()) {
      texts.push_back(maker_text(*item, rule.roles.empty() && rule.qualifiers.empty()));
    }
    return join(texts, rule.split.empty() ? " or " : rule.split.front());
  }

  const Item* claim() const {
    for (const Held& one : held_) {
      if (one.item.kind == ItemKind::claim && one.item.says == Says::made) {
        return &one.item;
      }
    }
    return nullptr;
  }

  std::string claim_text() const { return claim() != nullptr ? claim()->text : ""; }

  std::string claim_year(std::optional<Year> Item::*end) const {
    const Item* item = claim();
    return item != nullptr && item->*end ? std::to_string((item->*end)->value) : "";
  }

  std::string first_text(ItemKind kind, const std::string& key) const {
    for (const Held& one : held_) {
      if (one.item.kind == kind && one.item.key == key) {
        return one.item.text;
      }
    }
    return {};
  }

  std::string seen_text(const Item& item) const {
    const auto word = [](const std::vector<std::string>& words, const char* otherwise) {
      return words.empty() ? otherwise : words.front();
    };
    switch (item.seen) {
      case Seen::none:
        return word(map_.none, "none");
      case Seen::cannot_tell:
        return word(map_.cannot_tell, "cannot tell");
      case Seen::value:
        break;
    }
    return item.shape == Shape::number ? plain_number(item.number) : item.text;
  }

  std::string all_texts(ItemKind kind, const std::string& key, const ColumnRule& rule) const {
    std::vector<std::string> texts;
    for (const Held& one : held_) {
      if (one.item.kind == kind && one.item.key == key && one.item.part == rule.part) {
        texts.push_back(seen_text(one.item));
      }
    }
    return join(texts, rule.split.empty() ? "; " : rule.split.front());
  }

  std::string measures(const ColumnRule& rule) const {
    std::vector<std::string> texts;
    for (const Held& one : held_) {
      const Item& item = one.item;
      if (item.kind != ItemKind::observation || item.shape != Shape::number) {
        continue;
      }
      if (item.key == rule.key) {
        const std::string text = in_unit(item.number, rule.unit);
        return map_.decimal == ',' ? replace_all(text, ".", ",") : text;
      }
      if (rule.key == "dimensions" && (item.unit == "mm" || item.unit == "g")) {
        texts.push_back(
            fmt::format("{}: {} {}", item.key, plain_number(item.number), item.unit));
      }
    }
    return join(texts, " | ");
  }

  const Show& show_;
  const ImportMap& map_;
  const Piece& piece_;
  std::vector<Held> held_;
};

// Whether the records still say all that the cells of these headings say, and nothing besides.
class Agreement {
 public:
  Agreement(const RowReading& reading, const PieceCells& piece) {
    for (const Item& item : reading.items) {
      written_.insert(item.statement());
    }
    for (const Held& one : piece.held()) {
      held_.insert(one.item.statement());
      held_slots_[one.item.slot()].push_back(one.item.statement());
    }
  }

  bool holds(const Item& item) const {
    if (!held_.contains(item.statement())) {
      return false;
    }
    const auto& there = held_slots_.at(item.slot());
    return item.kind == ItemKind::note || item.kind == ItemKind::mark ||
           std::all_of(there.begin(), there.end(), [&](const std::string& statement) {
             return written_.contains(statement);
           });
  }

 private:
  std::unordered_set<std::string> written_;
  std::unordered_set<std::string> held_;
  std::unordered_map<std::string, std::vector<std::string>> held_slots_;
};

class PieceExport {
 public:
  PieceExport(const Show& show, const ImportMap& map, CsvExport& out)
      : show_(show),
        map_(map),
        out_(out),
        names_(show),
        rows_(rows_of(show, map)),
        reader_(map, out.headings, names_, map.decimal == 0 ? '.' : map.decimal) {}

  void write(const Piece& piece) {
    const PieceCells cells(show_, map_, piece);
    const auto at = rows_.find(piece.id.value);
    Cells written(out_.headings.size());
    bool kept = at != rows_.end();
    if (kept) {
      const TableRow row = cells_of(*at->second, out_.headings);
      written = row.cells;
      kept = correct(row, cells, piece, written);
    } else {
      for (std::size_t i = 0; i < written.size(); ++i) {
        written[i] = rebuilt(out_.headings[i], cells);
      }
    }
    ++(kept ? out_.as_written : out_.rewritten);
    out_.rows.push_back(std::move(written));
  }

 private:
  std::string rebuilt(const std::string& heading, const PieceCells& cells) const {
    for (const ColumnRule& rule : map_.columns) {
      if (rule.heading == heading && rule.target != Target::ignore) {
        return cells.cell(rule);
      }
      if (heading == rule.roles || heading == rule.qualifiers) {
        return cells.step(rule, heading);
      }
    }
    return cells.note(heading);
  }

  // The headings whose cells the show overrules.
  std::unordered_set<std::string> overruled(const TableRow& row,
                                            const PieceCells& cells,
                                            const Piece& piece) const {
    const RowReading reading = reader_.read(row);
    const Agreement agreement(reading, cells);
    std::unordered_set<std::string> headings;
    for (const Item& item : reading.items) {
      if (!agreement.holds(item)) {
        headings.insert(item.heading);
      }
    }
    const auto field = [&](Target target, const std::optional<std::string>& written,
                           std::string_view shown) {
      for (const ColumnRule& rule : map_.columns) {
        if (rule.target == target && written && *written != shown) {
          headings.insert(rule.heading);
        }
      }
    };
    const Lender* lender = show_.find(piece.lender);
    field(Target::number, reading.number, piece.number);
    field(Target::title, reading.title, piece.title);
    field(Target::form, reading.form, show_.text(piece.form));
    field(Target::lot, reading.lot, show_.text(piece.lot));
    field(Target::tray, reading.tray, show_.text(piece.tray));
    field(Target::lender, reading.lender, lender != nullptr ? lender->code : "");
    return headings;
  }

  // True if every cell stands as it was written.
  bool correct(const TableRow& row,
               const PieceCells& cells,
               const Piece& piece,
               Cells& written) const {
    const auto changed = overruled(row, cells, piece);
    for (std::size_t i = 0; i < written.size(); ++i) {
      const std::string& heading = out_.headings[i];
      if (changed.contains(heading) || belongs_to(heading, changed)) {
        written[i] = rebuilt(heading, cells);
      }
    }
    return changed.empty();
  }

  // Roles and qualifiers change with their makers, bounds with their date.
  bool belongs_to(const std::string& heading,
                  const std::unordered_set<std::string>& changed) const {
    bool date_changed = false;
    bool is_bound = false;
    for (const ColumnRule& rule : map_.columns) {
      if (changed.contains(rule.heading) &&
          (heading == rule.roles || heading == rule.qualifiers)) {
        return true;
      }
      date_changed =
          date_changed || (rule.target == Target::made && changed.contains(rule.heading));
      is_bound = is_bound || (rule.heading == heading && (rule.target == Target::made_from ||
                                                          rule.target == Target::made_to));
    }
    return date_changed && is_bound;
  }

  const Show& show_;
  const ImportMap& map_;
  CsvExport& out_;
  MakerNames names_;
  std::unordered_map<std::int32_t, const Row*> rows_;
  RowReader reader_;
};

}  // namespace

CsvExport export_rows(const Show& show, const ImportMap& map) {
  CsvExport out{.headings = headings_of(show, map)};
  if (map.rows != RowsOf::pieces) {
    export_list(show, map, out);
    return out;
  }
  PieceExport pieces(show, map, out);
  for (const Piece& piece : show.all<Piece>()) {
    pieces.write(piece);
  }
  return out;
}

}  // namespace backmark::exchange
