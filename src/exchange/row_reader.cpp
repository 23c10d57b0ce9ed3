#include <algorithm>

#include "base/date_text.h"
#include "base/text.h"
#include "exchange/item.h"
#include "exchange/maker_text.h"
#include "exchange/measure_text.h"

namespace backmark::exchange {

namespace {

bool holds(const std::vector<std::string>& list, std::string_view cell) {
  return std::any_of(list.begin(), list.end(), [&](const std::string& text) {
    return lower_ascii(text) == lower_ascii(cell);
  });
}

// The cell cut at every separator, without white space and empty pieces.
std::vector<std::string> values_of(std::string_view cell,
                                   const std::vector<std::string>& separators) {
  std::vector<std::string> values{std::string(cell)};
  for (const std::string& separator : separators) {
    std::vector<std::string> finer;
    for (const std::string& value : values) {
      for (const auto part : split(value, separator)) {
        if (!trim(part).empty()) {
          finer.emplace_back(trim(part));
        }
      }
    }
    values = std::move(finer);
  }
  return values;
}

model::Shape shape_of(const ColumnRule& rule) {
  return rule.shape.value_or(rule.split.empty() ? model::Shape::category : model::Shape::set);
}

bool keeps_case(model::Shape shape) {
  return shape == model::Shape::words || shape == model::Shape::text;
}

// Days in local order and the day numbers of spreadsheets are what programs make of dates.
bool looks_mangled(std::string_view cell) {
  const auto number = to_whole(cell);
  return number && *number >= 10000 && *number <= 60000;
}

}  // namespace

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
    }
  }
  if (item.text.empty() && bounded) {
    item.text = write_edtf({.earliest = item.from, .latest = item.to});
  }
  if (!item.text.empty()) {
    reading.items.push_back(std::move(item));
  }
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

void RowReader::read_character(const TableRow& row,
                               const Bound& bound,
                               RowReading& reading) const {
  const ColumnRule& rule = *bound.rule;
  const std::string_view text = cell(row, bound.column);
  Item item{.kind = rule.target == Target::mark ? ItemKind::mark : ItemKind::observation,
            .heading = rule.heading,
            .key = rule.target == Target::place ? "place" : rule.key,
            .part = rule.part,
            .shape = shape_of(rule),
            .label = rule.label};
  if (rule.target == Target::character && item.shape == model::Shape::number) {
    read_number(row, bound, reading);
    return;
  }
  const bool absent = holds(map_.none, text);
  if (absent || holds(map_.cannot_tell, text)) {
    item.seen = absent ? model::Seen::none : model::Seen::cannot_tell;
    reading.items.push_back(std::move(item));
    return;
  }
  const bool lower = rule.lower && rule.target == Target::character && !keeps_case(item.shape);
  for (const std::string& value : values_of(text, rule.split)) {
    item.text = lower ? lower_ascii(value) : value;
    const std::string said = item.statement();
    const bool again =
        std::any_of(reading.items.begin(), reading.items.end(),
                    [&](const Item& other) { return other.statement() == said; });
    if (!again) {
      reading.items.push_back(item);
    }
  }
}

// A number without a unit of length or weight: a count, a score.
void RowReader::read_number(const TableRow& row,
                            const Bound& bound,
                            RowReading& reading) const {
  std::string text(cell(row, bound.column));
  if (decimal_ == ',') {
    text = replace_all(text, ",", ".");
  }
  const auto number = to_number(text);
  if (!number) {
    CellRemark fault = at(row, bound.column);
    fault.what = fmt::format("\"{}\" is not a number", cell(row, bound.column));
    fault.fix = "write a number, or add the cell's text to \"unknown\" in the map";
    reading.faults.push_back(std::move(fault));
    return;
  }
  reading.items.push_back({.kind = ItemKind::observation,
                           .heading = bound.rule->heading,
                           .key = bound.rule->key,
                           .part = bound.rule->part,
                           .number = *number,
                           .shape = model::Shape::number,
                           .unit = bound.rule->unit,
                           .label = bound.rule->label});
}

void RowReader::read_measure(const TableRow& row,
                             const Bound& bound,
                             RowReading& reading) const {
  const ColumnRule& rule = *bound.rule;
  const bool whole_thing = rule.key == "dimensions";
  MeasureHabits habits{.unit = rule.unit, .decimal = decimal_};
  if (!rule.order.empty()) {
    habits.order = rule.order;
  } else if (!whole_thing) {
    habits.order = {rule.key};
  }
  const MeasureReading sizes = read_measures(cell(row, bound.column), habits);
  if (sizes.ambiguous) {
    CellRemark fault = at(row, bound.column);
    fault.what = fmt::format(
        "the comma in \"{}\" may be a decimal comma or part thousands from hundreds",
        cell(row, bound.column));
    fault.fix = "say decimal = \",\" or decimal = \".\" under [options] in the map";
    reading.faults.push_back(std::move(fault));
    return;
  }
  bool any = false;
  for (const Measure& measure : sizes.measures) {
    if (measure.key.empty() ||
        (!whole_thing && measure.key != rule.key && sizes.measures.size() > 1)) {
      continue;
    }
    any = true;
    reading.items.push_back({.kind = ItemKind::observation,
                             .heading = rule.heading,
                             .key = whole_thing ? measure.key : rule.key,
                             .part = rule.part,
                             .number = measure.value,
                             .shape = model::Shape::number,
                             .unit = measure.unit,
                             .label = whole_thing ? "" : rule.label});
  }
  if (!any || !sizes.left_over.empty()) {
    CellRemark note = at(row, bound.column);
    note.what = fmt::format(
        "of the measure \"{}\" this was not used: \"{}\"", cell(row, bound.column),
        sizes.left_over.empty() ? cell(row, bound.column) : std::string_view(sizes.left_over));
    note.fix = "the whole cell is kept as a note on the piece";
    reading.notes.push_back(std::move(note));
    keep_as_note(row, bound.column, reading);
  }
}

}  // namespace backmark::exchange
