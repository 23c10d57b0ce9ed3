#include "exchange/import.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/csv_write.h"
#include "base/text.h"
#include "exchange/csv.h"
#include "exchange/intake.h"

namespace backmark::exchange {

using namespace model;

namespace {

bool has_heading(const Table& table, const std::string& heading) {
  return std::find(table.headings.begin(), table.headings.end(), heading) !=
         table.headings.end();
}

std::optional<Problem> missing_column(const Table& table,
                                      const ImportMap& map,
                                      const ImportOptions& options) {
  std::vector<std::string> wanted;
  for (const ColumnRule& rule : map.columns) {
    for (const std::string& heading : {rule.heading, rule.roles, rule.qualifiers}) {
      if (!heading.empty() && !has_heading(table, heading)) {
        wanted.push_back(heading);
      }
    }
  }
  if (wanted.empty()) {
    return std::nullopt;
  }
  const auto near = closest(wanted.front(), table.headings);
  return Problem{.fault = Fault::not_found,
                 .what = fmt::format("the file has no column \"{}\"", wanted.front()),
                 .where = options.file,
                 .fix = near ? fmt::format("did the map mean \"{}\"?", *near)
                             : "its columns are: " + join(table.headings, ", ")};
}

bool is_number(Shape shape) {
  return shape == Shape::number;
}

// A character that is a word in the show cannot be a number in the file, nor the other way.
std::optional<Problem> shape_conflict(const Show& show, const ImportMap& map) {
  for (const ColumnRule& rule : map.columns) {
    const bool measure = rule.target == Target::measure;
    if (!measure && rule.target != Target::character) {
      continue;
    }
    const Character* known = show.character(rule.key);
    const bool number = measure || (rule.shape && is_number(*rule.shape));
    if (known != nullptr && is_number(known->shape) != number) {
      return Problem{.fault = Fault::conflict,
                     .what = fmt::format(
                         "the character \"{}\" is {} in the show and {} in the map", rule.key,
                         number ? "a word" : "a number", number ? "a number" : "a word"),
                     .where = fmt::format("column \"{}\"", rule.heading),
                     .fix = "give the map's character another name"};
    }
  }
  return std::nullopt;
}

// What commas and full stops between digits say of a file.
struct DecimalSigns {
  const TableRow* comma_row = nullptr;
  const TableRow* point_row = nullptr;
  bool ambiguous = false;
};

bool digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// A mark with exactly three digits after it may part thousands; any other number of digits
// makes it a decimal mark.
void look_at(const TableRow& row, std::string_view cell, DecimalSigns& signs) {
  for (std::size_t i = 1; i + 1 < cell.size(); ++i) {
    if ((cell[i] != ',' && cell[i] != '.') || !digit_at(cell, i - 1) ||
        !digit_at(cell, i + 1)) {
      continue;
    }
    std::size_t after = i + 1;
    while (digit_at(cell, after)) {
      ++after;
    }
    if (cell[i] == '.') {
      signs.point_row = signs.point_row == nullptr ? &row : signs.point_row;
    } else if (after - i - 1 == 3) {
      signs.ambiguous = true;
    } else {
      signs.comma_row = signs.comma_row == nullptr ? &row : signs.comma_row;
    }
  }
}

DecimalSigns look_for_decimals(const Table& table, const ImportMap& map) {
  DecimalSigns signs;
  for (const ColumnRule& rule : map.columns) {
    const bool number =
        rule.target == Target::measure ||
        (rule.target == Target::character && rule.shape && is_number(*rule.shape));
    const auto at = std::find(table.headings.begin(), table.headings.end(), rule.heading);
    if (!number || at == table.headings.end()) {
      continue;
    }
    const auto column = static_cast<std::size_t>(at - table.headings.begin());
    for (const TableRow& row : table.rows) {
      look_at(row, row.cells[column], signs);
    }
  }
  return signs;
}

// ',' or '.', or 0 if only the curator can say.
Result<char> find_decimal(const Table& table, const ImportMap& map, ImportOutcome& out) {
  if (map.decimal != 0) {
    return map.decimal;
  }
  const DecimalSigns signs = look_for_decimals(table, map);
  if (signs.comma_row != nullptr && signs.point_row != nullptr) {
    return Problem{
        .fault = Fault::bad_input,
        .what = fmt::format("numbers are written with a decimal comma in row {} and with "
                            "a full stop in row {}",
                            signs.comma_row->number, signs.point_row->number),
        .fix =
            "write one of the two throughout, or say decimal = \",\" or decimal = "
            "\".\" under [options] in the map"};
  }
  if (signs.comma_row != nullptr) {
    out.said.push_back("numbers are written with a decimal comma");
    return ',';
  }
  return signs.ambiguous && signs.point_row == nullptr ? '\0' : '.';
}

Table without_guards(Table table) {
  for (TableRow& row : table.rows) {
    for (std::string& cell : row.cells) {
      cell = unguarded(cell);
    }
  }
  return table;
}

// Digits only may once have had zeros in front.
void warn_of_lost_zeros(const Table& table, const ImportMap& map, ImportOutcome& out) {
  for (const ColumnRule& rule : map.columns) {
    const auto at = std::find(table.headings.begin(), table.headings.end(), rule.heading);
    if (rule.target != Target::number || at == table.headings.end() || table.rows.empty()) {
      continue;
    }
    const auto column = static_cast<std::size_t>(at - table.headings.begin());
    const bool digits = std::all_of(
        table.rows.begin(), table.rows.end(),
        [&](const TableRow& row) { return to_whole(row.cells[column]).has_value(); });
    if (digits) {
      out.said.push_back(
          "every number is digits only: look whether a spreadsheet took zeros away "
          "in front");
    }
  }
}

std::string rest_of(const Table& table, const std::vector<const TableRow*>& faulty) {
  std::vector<const TableRow*> all = faulty;
  for (const TableRow& row : table.misfits) {
    all.push_back(&row);
  }
  if (all.empty()) {
    return {};
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const TableRow* a, const TableRow* b) { return a->number < b->number; });
  std::vector<Cells> rows;
  for (const TableRow* row : all) {
    rows.push_back(row->cells);
  }
  return write_csv(table.headings, rows, {.dialect = table.dialect});
}

std::vector<const TableRow*> take_rows(Intake& intake, char decimal) {
  std::vector<const TableRow*> faulty;
  switch (intake.map.rows) {
    case RowsOf::pieces:
      import_pieces(intake, decimal, faulty);
      break;
    case RowsOf::makers:
      import_makers(intake, faulty);
      break;
    case RowsOf::sources:
      import_sources(intake, faulty);
      break;
    case RowsOf::windows:
      import_windows(intake, faulty);
      break;
    case RowsOf::observations:
      import_observations(intake, decimal, faulty);
      break;
  }
  return faulty;
}

Change empty_change(const Show& show, const ImportOptions& options) {
  return Change(show, "import", options.file);
}

void forget_counts(ImportOutcome& out) {
  out.pieces_new = out.pieces_same = out.pieces_changed = 0;
  out.others_new = out.others_same = out.others_changed = 0;
}

}  // namespace

Result<ImportOutcome> import_rows(const Show& show,
                                  const Table& given,
                                  const ImportMap& map,
                                  const ImportOptions& options) {
  if (auto problem = missing_column(given, map, options)) {
    return *problem;
  }
  if (auto problem = shape_conflict(show, map)) {
    return *problem;
  }
  std::optional<Table> bare;
  if (options.guarded) {
    bare = without_guards(given);
  }
  const Table& table = bare ? *bare : given;

  ImportOutcome out(empty_change(show, options));
  out.said = table.said;
  out.faults = table.faults;
  const auto decimal = find_decimal(table, map, out);
  if (!decimal) {
    Problem problem = decimal.problem();
    problem.where = options.file;
    return problem;
  }
  warn_of_lost_zeros(table, map, out);

  Intake intake(show, table, map, out);
  const auto faulty = take_rows(intake, *decimal);
  std::stable_sort(out.faults.begin(), out.faults.end(),
                   [](const auto& a, const auto& b) { return a.row < b.row; });
  out.rest = rest_of(table, faulty);
  if (!out.faults.empty() && !options.skip_faulty) {
    out.change = empty_change(show, options);
    forget_counts(out);
  } else if (!table.rows.empty()) {
    intake.finish();
  }
  return out;
}

}  // namespace backmark::exchange
