#include "base/json.h"
#include "base/text.h"
#include "desk/cleared.h"
#include "desk/each.h"
#include "exchange/export_csv.h"

namespace backmark::desk {

namespace {

Result<Answer> run(const Call& call, const Surroundings&) {
  if (call.text("format") != "csv") {
    return Problem{
        Fault::bad_input,
        fmt::format("\"{}\" is not a form this show can be given out in", call.text("format")),
        "", "write csv"};
  }
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto text = read_file(call.path("map"));
  if (!text) {
    return text.problem();
  }
  const auto map = exchange::read_map(*text, call.path("map").filename().string());
  if (!map) {
    return map.problem();
  }
  Cleared held = cleared(open->show, false);
  leave_out(held);
  const exchange::CsvExport made = exchange::export_rows(held.show, *map);
  const std::string bytes =
      exchange::write_csv(made.headings, made.rows, {.guard_formulas = call.flag("guard")});
  Answer answer;
  answer.json = {{"rows", made.rows.size()},
                 {"as_written", made.as_written},
                 {"rewritten", made.rewritten},
                 {"withheld", held.withheld}};
  if (!call.has("out")) {
    answer.text = bytes;
    if (!held.withheld.empty()) {  // nothing may stand between the rows
      answer.problems.push_back(
          {Fault::refused,
           "pieces are left out until their communities answer: " + join(held.withheld, ", "),
           "", "log the answer with \"backmark leave\""});
    }
    return answer;
  }
  if (auto written = write_file(call.path("out"), bytes); !written) {
    return written.problem();
  }
  answer.text =
      fmt::format("{} rows in {}: {} as they were written, {} with a cell written anew.\n",
                  made.rows.size(), call.text("out"), made.as_written, made.rewritten) +
      withheld_line(held);
  return answer;
}

}  // namespace

Operation export_show() {
  return {
      .name = "export",
      .help = "give the show out again: csv, by the map that took it in",
      .parameters = {show_folder(),
                     {.name = "format", .help = "csv", .positional = true, .required = true},
                     {.name = "map",
                      .takes = Takes::file,
                      .help = "the map of the file's columns",
                      .required = true},
                     {.name = "out",
                      .takes = Takes::file,
                      .help = "the file to write (standard output)"},
                     {.name = "guard",
                      .takes = Takes::flag,
                      .help = "put an apostrophe before cells a spreadsheet would run"}},
      .run = run};
}

}  // namespace backmark::desk
