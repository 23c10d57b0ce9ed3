#include <algorithm>

#include "base/text.h"
#include "exchange/export_part.h"
#include "exchange/intake.h"

namespace backmark::exchange {

using namespace model;

namespace {

// Makers, sources and windows that the file brought, as it wrote them.
template <class T>
void export_known(const Show& show, const ImportMap& map, CsvExport& out) {
  const auto rows = rows_of(show, map);
  for (const T& record : show.all<T>()) {
    if (const auto at = rows.find(record.id.value); at != rows.end()) {
      out.rows.push_back(cells_of(*at->second, out.headings).cells);
      ++out.as_written;
    }
  }
}

std::string value_text(const Item& item, const ImportMap& map) {
  if (item.seen == Seen::none) {
    return map.none.empty() ? "none" : map.none[0];
  }
  if (item.seen == Seen::cannot_tell) {
    return map.cannot_tell.empty() ? "cannot tell" : map.cannot_tell[0];
  }
  return item.shape == Shape::number ? plain_number(item.number) : item.text;
}

// What an observation says under a column; empty where the column is none of its own.
std::string observation_cell(const Piece& piece,
                             const Item& item,
                             const ImportMap& map,
                             Target target) {
  switch (target) {
    case Target::number:
      return piece.number;
    case Target::part:
      return item.part;
    case Target::character:
      return item.key;
    case Target::value:
      return value_text(item, map);
    case Target::certainty:
      return plain_number(static_cast<double>(item.certainty));
    case Target::how:
      return how_word(item.how);
    case Target::by:
      return item.by;
    default:
      return "";
  }
}

void export_observations(const Show& show, const ImportMap& map, CsvExport& out) {
  const Source* source = show.source(map.source);
  for (const Piece& piece : show.all<Piece>()) {
    for (const Held& held : held_items(show, piece)) {
      if (held.item.kind != ItemKind::observation || source == nullptr ||
          held.source != source->id) {
        continue;
      }
      Cells cells(out.headings.size());
      for (const ColumnRule& rule : map.columns) {
        const auto at = std::find(out.headings.begin(), out.headings.end(), rule.heading);
        cells[static_cast<std::size_t>(at - out.headings.begin())] =
            observation_cell(piece, held.item, map, rule.target);
      }
      out.rows.push_back(std::move(cells));
      ++out.rewritten;
    }
  }
}

}  // namespace

std::unordered_map<std::int32_t, const Row*> rows_of(const Show& show, const ImportMap& map) {
  std::unordered_map<std::int32_t, const Row*> rows;
  if (const Source* source = show.source(map.source)) {
    for (const Row& row : show.all<Row>()) {
      if (row.source == source->id) {
        rows.emplace(row.subject, &row);
      }
    }
  }
  return rows;
}

std::string plain_number(double value) {
  return fmt::format("{:.10g}", value);
}

void export_list(const Show& show, const ImportMap& map, CsvExport& out) {
  switch (map.rows) {
    case RowsOf::makers:
      return export_known<Maker>(show, map, out);
    case RowsOf::sources:
      return export_known<Source>(show, map, out);
    case RowsOf::windows:
      return export_known<Window>(show, map, out);
    case RowsOf::observations:
      return export_observations(show, map, out);
    case RowsOf::pieces:
      return;  // export_csv.cpp writes those
  }
}

}  // namespace backmark::exchange
