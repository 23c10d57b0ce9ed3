// The dates of a row: when the piece was made, and when it was acquired.
#include "base/date_text.h"
#include "base/text.h"
#include "exchange/item.h"

namespace backmark::exchange {

namespace {

// Days in local order and the day numbers of spreadsheets are what programs make of dates.
bool looks_mangled(std::string_view cell) {
  const auto number = to_whole(cell);
  return number && *number >= 10000 && *number <= 60000;
}

}  // namespace

std::optional<Year> RowReader::read_year(const TableRow& row,
                                         const Bound& bound,
                                         RowReading& reading) const {
  const std::string_view text = cell(row, bound.column);
  if (says_nothing(text)) {
    return std::nullopt;
  }
  const auto year = to_whole(text);
  if (!year || *year < -100000 || *year > 100000) {
    CellRemark fault = at(row, bound.column);
    fault.what = fmt::format("\"{}\" is not a year", text);
    fault.fix = "write a whole year such as 1953, or let this column be \"made\"";
    reading.faults.push_back(std::move(fault));
    return std::nullopt;
  }
  return Year{static_cast<std::int32_t>(*year)};
}

// One claim from up to three columns: the date in words, and its bounds if the file has them.
void RowReader::read_years(const TableRow& row, RowReading& reading) const {
  Item item{.kind = ItemKind::claim, .says = model::Says::made};
  const Bound* bounds_from = nullptr;
  for (const Bound& bound : bound_) {
    if (bound.column == no_column) {
      continue;
    }
    if (bound.rule->target == Target::made_from) {
      item.from = read_year(row, bound, reading);
      bounds_from = &bound;
    } else if (bound.rule->target == Target::made_to) {
      item.to = read_year(row, bound, reading);
    }
  }
  const bool bounded = item.from || item.to;
  if (item.from && item.to && *item.to < *item.from) {
    CellRemark fault = at(row, bounds_from->column);
    fault.what = fmt::format("the first year, {}, is after the last, {}", item.from->value,
                             item.to->value);
    fault.fix = "exchange the two, or leave both empty";
    reading.faults.push_back(std::move(fault));
    return;
  }
  for (const Bound& bound : bound_) {
    if (bound.rule->target != Target::made || says_nothing(cell(row, bound.column))) {
      continue;
    }
    item.heading = bound.rule->heading;
    item.text = std::string(cell(row, bound.column));
    const DateReading date = read_date_text(item.text);
    item.approximate = date.approximate;
    if (!bounded) {
      item.from = date.bounds.earliest;
      item.to = date.bounds.latest;
    }
    if (!date.understood || looks_mangled(item.text)) {
      CellRemark note = at(row, bound.column);
      note.what = looks_mangled(item.text)
                      ? fmt::format("\"{}\" looks like a spreadsheet's day number", item.text)
                      : fmt::format("the date \"{}\" was not understood and is kept as written",
                                    item.text);
      note.fix = "write it as 1953, about 1953, 1947-1962 or before 1972";
      reading.notes.push_back(std::move(note));
    } else if (!date.left_over.empty() && !bounded) {
      item.approximate = true;  // what was not understood may widen it
      CellRemark note = at(row, bound.column);
      note.what = fmt::format("of the date \"{}\" only {} was understood, not \"{}\"",
                              item.text, date.edtf, date.left_over);
      note.fix = "it is weighed as \"about\"; write it as 1953, about 1953 or 1947-1962";
      reading.notes.push_back(std::move(note));
    }
  }
  if (item.text.empty() && bounded) {
    item.text = write_edtf({.earliest = item.from, .latest = item.to});
  }
  if (!item.text.empty()) {
    reading.items.push_back(std::move(item));
  }
}

void RowReader::read_acquired(const TableRow& row,
                              const Bound& bound,
                              RowReading& reading) const {
  Item item{.kind = ItemKind::event,
            .heading = bound.rule->heading,
            .text = std::string(cell(row, bound.column))};
  const DateReading date = read_date_text(item.text);
  item.from = date.bounds.earliest;
  item.to = date.bounds.latest;
  if (!date.understood) {
    CellRemark note = at(row, bound.column);
    note.what =
        fmt::format("the date \"{}\" was not understood and is kept as written", item.text);
    note.fix = "write it as 1974 or 1974-05-12";
    reading.notes.push_back(std::move(note));
  }
  reading.items.push_back(std::move(item));
}

}  // namespace backmark::exchange
