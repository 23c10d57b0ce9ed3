#include "reference/shipped.h"

#include <algorithm>
#include <set>

#include "base/csv_read.h"
#include "base/text.h"

namespace backmark {

// The build writes these from the files of the folder `reference`.
extern const char* const blue_wool_csv;
extern const char* const case_materials_csv;
extern const char* const climate_bands_csv;
extern const char* const condition_words_csv;
extern const char* const fineness_marks_csv;
extern const char* const label_distances_csv;
extern const char* const light_classes_csv;
extern const char* const light_colours_csv;
extern const char* const light_materials_csv;
extern const char* const materials_csv;
extern const char* const periods_csv;
extern const char* const qualifiers_csv;
extern const char* const restricted_words_csv;
extern const char* const restrictions_csv;
extern const char* const schedule_tasks_csv;
extern const char* const shelf_materials_csv;
extern const char* const terms_csv;

}  // namespace backmark

namespace backmark::reference {

namespace {

Problem bad_row(const Shipped& table, long row, std::string what, std::string fix) {
  return {Fault::bad_input, std::move(what), fmt::format("{}, row {}", table.file, row),
          std::move(fix)};
}

bool are_headings(const std::vector<std::string>& cells, const Shipped& table) {
  return std::equal(cells.begin(), cells.end(), table.columns.begin(), table.columns.end());
}

std::string key_of(const std::vector<std::string>& cells, const Shipped& table) {
  std::string key;
  for (std::size_t i = 0; i < table.key_columns; ++i) {
    key += cells[i] + '\n';
  }
  return key;
}

}  // namespace

const std::vector<Shipped>& shipped() {
  static const std::vector<Shipped> tables{
      {"blue-wool.csv",
       blue_wool_csv,
       {"step", "class", "mlxh_with_uv", "mlxh_without_uv", "note", "source", "status"}},
      {"case-materials.csv",
       case_materials_csv,
       {"material", "words", "verdict", "emits", "harms", "note", "source", "status"}},
      {"climate-bands.csv",
       climate_bands_csv,
       {"band", "words", "rh_low", "rh_high", "c_low", "c_high", "note", "source", "status"}},
      {"condition-words.csv",
       condition_words_csv,
       {"word", "letter", "meaning", "source", "status"}},
      {"fineness-marks.csv",
       fineness_marks_csv,
       {"mark", "metal", "permille", "source", "status"}},
      {"label-distances.csv",
       label_distances_csv,
       {"distance_mm", "kind", "text_pt", "title_pt", "number_pt", "credit_pt",
        "label_width_mm", "label_height_mm", "paper_width_mm", "paper_height_mm", "across",
        "down", "source", "status"}},
      {"light-classes.csv",
       light_classes_csv,
       {"rule", "class", "word", "steps", "lux", "lxh_year", "uv_per_lumen", "note", "source",
        "status"},
       2},
      {"light-colours.csv",
       light_colours_csv,
       {"colour", "words", "class", "note", "source", "status"}},
      {"light-materials.csv",
       light_materials_csv,
       {"material", "words", "class", "step", "dyed", "note", "source", "status"}},
      {"materials.csv",
       materials_csv,
       {"name", "group", "density_low", "density_usual", "density_high", "index_low",
        "index_high", "birefringence", "uv_long", "uv_short", "magnet", "seen", "porous",
        "hardness_low", "hardness_high", "source", "status"}},
      {"periods.csv", periods_csv, {"place", "names", "first", "last", "source", "status"}, 2},
      {"qualifiers.csv",
       qualifiers_csv,
       {"phrase", "before", "after", "aat", "hand", "meaning", "source", "status"}},
      {"restricted-words.csv",
       restricted_words_csv,
       {"word", "share", "rules", "source", "status"}},
      {"restrictions.csv",
       restrictions_csv,
       {"key", "law", "place", "taxon", "event", "before", "routes", "means", "ask", "checked",
        "source", "status"}},
      {"schedule-tasks.csv",
       schedule_tasks_csv,
       {"task", "group", "title", "after", "least", "likely", "greatest", "holds", "source",
        "status"}},
      {"shelf-materials.csv",
       shelf_materials_csv,
       {"material", "words", "stiffness_gpa", "density_kg_m3", "stress_limit_mpa",
        "creep_factor", "note", "source", "status"}},
      {"terms.csv", terms_csv, {"kind", "term", "aat", "source", "status"}, 2}};
  return tables;
}

Result<std::vector<std::vector<std::string>>> rows_of(const Shipped& table) {
  CsvReader reader(table.text, ',');
  std::vector<std::string> cells;
  if (!reader.next(cells) || !are_headings(cells, table)) {
    return bad_row(table, 1, "the headings are not those of the table",
                   "write the headings that src/reference/shipped.cpp lists");
  }
  std::vector<std::vector<std::string>> rows;
  std::set<std::string> keys;
  while (reader.next(cells)) {
    if (cells.size() != table.columns.size()) {
      return bad_row(table, reader.row(),
                     fmt::format("the row has {} cells and the table {} columns", cells.size(),
                                 table.columns.size()),
                     "quote a cell that holds a comma");
    }
    if (trim(cells.back()).empty() || trim(cells[cells.size() - 2]).empty()) {
      return bad_row(table, reader.row(), "the row does not say its source and status",
                     "write where it comes from, or \"common practice, no source\"");
    }
    if (cells[0].empty() || !keys.insert(key_of(cells, table)).second) {
      return bad_row(table, reader.row(),
                     fmt::format("\"{}\" is empty or stands in the table twice", cells[0]),
                     "take one of the rows out");
    }
    rows.push_back(cells);
  }
  if (reader.problem()) {
    return *reader.problem();
  }
  return rows;
}

std::vector<std::vector<std::string>> own_rows(std::string_view file) {
  for (const Shipped& table : shipped()) {
    if (table.file == file) {
      auto rows = rows_of(table);
      if (!rows) {
        throw BrokenPromise(to_line(rows.problem()));
      }
      return *std::move(rows);
    }
  }
  throw BrokenPromise(fmt::format("no table {} is shipped", file));
}

double own_number(std::string_view file, const std::string& cell) {
  const auto number = to_number(cell);
  if (!number) {
    throw BrokenPromise(fmt::format("{} has \"{}\" where a number belongs", file, cell));
  }
  return *number;
}

}  // namespace backmark::reference
