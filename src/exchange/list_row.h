// Rows of lists (makers, sources, observations), cell by target. Bodies only.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/date_text.h"
#include "base/text.h"
#include "exchange/intake.h"

namespace backmark::exchange {

// One row of a list, its cells by target.
class ListRow {
 public:
  ListRow(const Intake& intake, const TableRow& row) : row_(&row) {
    const auto& headings = intake.table.headings;
    for (const ColumnRule& rule : intake.map.columns) {
      const auto at = std::find(headings.begin(), headings.end(), rule.heading);
      if (at == headings.end()) {
        continue;
      }
      const std::string_view cell =
          trim(row.cells[static_cast<std::size_t>(at - headings.begin())]);
      const bool silent = std::any_of(
          intake.map.unknown.begin(), intake.map.unknown.end(),
          [&](const std::string& text) { return lower_ascii(text) == lower_ascii(cell); });
      cells_.push_back({&rule, silent ? std::string() : std::string(cell)});
    }
  }

  bool has(Target target) const { return find(target) != nullptr; }
  std::string text(Target target) const {
    const auto* cell = find(target);
    return cell == nullptr ? std::string() : cell->second;
  }
  const ColumnRule* rule(Target target) const {
    const auto* cell = find(target);
    return cell == nullptr ? nullptr : cell->first;
  }

  CellRemark fault(Target target, std::string what, std::string fix) const {
    const ColumnRule* from = rule(target);
    return {row_->number, from == nullptr ? "" : from->heading, std::move(what),
            std::move(fix)};
  }

  // The first or last year of a date; a fault if the cell is none.
  std::optional<Year> year(Target target, bool last, std::vector<CellRemark>& faults) const {
    const std::string cell = text(target);
    if (cell.empty()) {
      return std::nullopt;
    }
    const DateReading date = read_date_text(cell);
    const auto& wanted = last ? date.bounds.latest : date.bounds.earliest;
    const auto& other = last ? date.bounds.earliest : date.bounds.latest;
    if (!date.understood || (!wanted && !other)) {
      faults.push_back(fault(target, fmt::format("\"{}\" is not a year", cell),
                             "write a year such as 1953, or leave the cell empty"));
    }
    return wanted ? wanted : other;
  }

 private:
  const std::pair<const ColumnRule*, std::string>* find(Target target) const {
    const auto at = std::find_if(cells_.begin(), cells_.end(), [&](const auto& cell) {
      return cell.first->target == target;
    });
    return at == cells_.end() ? nullptr : &*at;
  }

  const TableRow* row_;
  std::vector<std::pair<const ColumnRule*, std::string>> cells_;
};

// The value whose word the cell is, or nothing.
template <class Value>
std::optional<Value> one_of(const std::vector<std::pair<std::string_view, Value>>& words,
                            const std::string& cell) {
  for (const auto& [word, value] : words) {
    if (lower_ascii(cell) == word) {
      return value;
    }
  }
  return std::nullopt;
}

template <class Value>
std::string listed(const std::vector<std::pair<std::string_view, Value>>& words) {
  std::vector<std::string> texts;
  for (const auto& [word, value] : words) {
    texts.emplace_back(word);
  }
  return "write one of: " + join(texts, ", ");
}

// Whether the file's word on the subject is new; counts it.
template <class T>
bool is_changed(Intake& intake, const T& known, const TableRow& row) {
  const bool changed = intake.keep_row(known.id.value, row) || !intake.map_unchanged();
  ++(changed ? intake.out.others_changed : intake.out.others_same);
  return changed;
}

}  // namespace backmark::exchange
