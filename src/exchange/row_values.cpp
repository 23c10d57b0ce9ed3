// What a row says of characters: words, sets of words, numbers, sizes and weights.
#include <algorithm>

#include "base/text.h"
#include "exchange/cell_values.h"
#include "exchange/item.h"
#include "exchange/measure_text.h"

namespace backmark::exchange {

namespace {

model::Shape shape_of(const ColumnRule& rule) {
  return rule.shape.value_or(rule.split.empty() ? model::Shape::category : model::Shape::set);
}

bool keeps_case(model::Shape shape) {
  return shape == model::Shape::words || shape == model::Shape::text;
}

}  // namespace

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
