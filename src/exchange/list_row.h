// Rows of lists (makers, sources, observations), cell by target. Bodies only.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

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

  // A whole year; a fault if the cell is none.
  std::optional<Year> year(Target target, std::vector<CellRemark>& faults) const {
    const std::string cell = text(target);
    const auto value = to_whole(cell);
    if (!cell.empty() && (!value || *value < -100000 || *value > 100000)) {
      faults.push_back(fault(target, fmt::format("\"{}\" is not a year", cell),
                             "write a whole year such as 1953, or leave the cell empty"));
      return std::nullopt;
    }
    return value ? std::optional(Year{static_cast<std::int32_t>(*value)}) : std::nullopt;
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
