// A row of a file of pieces: which cell is what, its makers and its notes. Dates are read in
// row_dates.cpp, characters and measures in row_values.cpp.
#include <algorithm>

#include "base/text.h"
#include "exchange/cell_values.h"
#include "exchange/item.h"
#include "exchange/maker_text.h"

namespace backmark::exchange {

RowReader::RowReader(const ImportMap& map,
                     const Cells& headings,
                     const MakerNames& makers,
                     char decimal)
    : map_(map), headings_(headings), makers_(makers), decimal_(decimal) {
  for (const ColumnRule& rule : map.columns) {
    bound_.push_back({.rule = &rule,
                      .column = find(rule.heading),
                      .roles = find(rule.roles),
                      .qualifiers = find(rule.qualifiers)});
  }
  for (std::size_t i = 0; i < headings.size(); ++i) {
    if (!map.names(headings[i])) {
      unnamed_.push_back(i);
    }
  }
}

std::size_t RowReader::find(std::string_view heading) const {
  const auto at = std::find(headings_.begin(), headings_.end(), heading);
  return at == headings_.end() || heading.empty()
             ? no_column
             : static_cast<std::size_t>(at - headings_.begin());
}

std::string_view RowReader::cell(const TableRow& row, std::size_t column) const {
  return column == no_column ? std::string_view() : trim(row.cells[column]);
}

bool RowReader::says_nothing(std::string_view cell) const {
  return cell.empty() || holds(map_.unknown, cell);
}

CellRemark RowReader::at(const TableRow& row, std::size_t column) const {
  return {.row = row.number, .column = headings_[column]};
}

RowReading RowReader::read(const TableRow& row) const {
  RowReading reading;
  if (!map_.form.empty()) {
    reading.form = map_.form;
  }
  for (const Bound& bound : bound_) {
    if (bound.column != no_column) {
      read_rule(row, bound, reading);
    }
  }
  read_years(row, reading);
  for (const std::size_t column : unnamed_) {
    if (!cell(row, column).empty()) {
      keep_as_note(row, column, reading);
    }
  }
  return reading;
}

void RowReader::read_rule(const TableRow& row, const Bound& bound, RowReading& reading) const {
  const std::string_view text = cell(row, bound.column);
  const bool silent = says_nothing(text);
  const std::string kept(silent ? std::string_view() : text);
  const ColumnRule& rule = *bound.rule;
  switch (rule.target) {
    case Target::number:
      reading.number = std::string(text);
      return;
    case Target::title:
      reading.title = kept;
      return;
    case Target::form:
      reading.form = rule.lower ? lower_ascii(kept) : kept;
      return;
    case Target::lot:
      reading.lot = kept;
      return;
    case Target::tray:
      reading.tray = kept;
      return;
    case Target::lender:
      reading.lender = kept;
      return;
    default:
      break;
  }
  if (silent) {
    return;
  }
  switch (rule.target) {
    case Target::maker:
      read_maker(row, bound, reading);
      break;
    case Target::acquired:
      read_acquired(row, bound, reading);
      break;
    case Target::note:
      keep_as_note(row, bound.column, reading);
      break;
    case Target::character:
    case Target::place:
    case Target::mark:
      read_character(row, bound, reading);
      break;
    case Target::measure:
      read_measure(row, bound, reading);
      break;
    default:
      break;
  }
}

void RowReader::keep_as_note(const TableRow& row,
                             std::size_t column,
                             RowReading& reading) const {
  reading.items.push_back({.kind = ItemKind::note,
                           .heading = headings_[column],
                           .key = headings_[column],
                           .text = std::string(cell(row, column))});
}

void RowReader::read_maker(const TableRow& row, const Bound& bound, RowReading& reading) const {
  const std::string_view text = cell(row, bound.column);
  const auto names = bound.rule->split.empty() ? std::vector<std::string>{std::string(text)}
                                               : values_of(text, bound.rule->split);
  // Columns in step keep their empty places.
  const std::string_view step = bound.rule->split.empty() ? "|" : bound.rule->split.front();
  const auto roles = split(cell(row, bound.roles), step);
  const auto qualifiers = split(cell(row, bound.qualifiers), step);
  for (std::size_t i = 0; i < names.size(); ++i) {
    for (NamedMaker& named : read_makers(names[i])) {
      if (i < roles.size()) {
        apply_role(roles[i], named);
      }
      if (i < qualifiers.size()) {
        apply_role(qualifiers[i], named);
      }
      Item item{.kind = ItemKind::claim, .heading = bound.rule->heading, .text = named.text};
      if (named.name.empty() && named.place.empty()) {
        continue;
      }
      if (named.name.empty()) {
        item.says = model::Says::made_at;
        item.word = named.place;
      } else {
        item.says = model::Says::made_by;
        item.maker =
            makers_.known(bound.rule->inverted ? natural_order(named.name) : named.name);
        item.qualifier = named.qualifier;
        item.role = named.role;
      }
      reading.items.push_back(std::move(item));
    }
  }
}

}  // namespace backmark::exchange
