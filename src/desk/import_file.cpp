#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/import_text.h"
#include "exchange/import.h"

namespace backmark::desk {

namespace {

using exchange::CellRemark;
using exchange::ImportOutcome;

Result<SheetRead> read_inputs(const Call& call, const model::Show& show) {
  if (call.has("text")) {
    return read_sheet_text(call, show);
  }
  if (!call.has("file") || !call.has("map")) {
    return Problem{Fault::bad_input, "there is nothing to take in", "",
                   "name a file and its --map, or give the rows as --text"};
  }
  const auto bytes = read_file(call.path("file"));
  if (!bytes) {
    return bytes.problem();
  }
  auto table =
      exchange::read_table(*bytes, call.path("file").filename().string(), call.text("sheet"));
  if (!table) {
    return table.problem();
  }
  const auto text = read_file(call.path("map"));
  if (!text) {
    return text.problem();
  }
  auto map = exchange::read_map(*text, call.path("map").filename().string());
  if (!map) {
    return map.problem();
  }
  return SheetRead{
      std::move(*table), std::move(*map), {}, call.path("file").filename().string()};
}

Json remarks_json(const std::vector<CellRemark>& remarks) {
  Json list = Json::array();
  for (const CellRemark& remark : remarks) {
    list.push_back({{"row", remark.row},
                    {"column", remark.column},
                    {"what", remark.what},
                    {"fix", remark.fix}});
  }
  return list;
}

Problem to_problem(const CellRemark& fault, const std::string& file) {
  const std::string column = fault.column.empty() ? "" : ", column " + fault.column;
  return {Fault::bad_input, fault.what, fmt::format("{}, row {}{}", file, fault.row, column),
          fault.fix};
}

Json to_json(const ImportOutcome& outcome) {
  return {{"pieces_new", outcome.pieces_new},
          {"pieces_same", outcome.pieces_same},
          {"pieces_changed", outcome.pieces_changed},
          {"others_new", outcome.others_new},
          {"others_same", outcome.others_same},
          {"others_changed", outcome.others_changed},
          {"faults", remarks_json(outcome.faults)},
          {"notes", remarks_json(outcome.notes)},
          {"said", outcome.said}};
}

constexpr std::size_t notes_shown = 12;

std::string to_text(const ImportOutcome& outcome, const std::string& file) {
  std::string text;
  for (const std::string& said : outcome.said) {
    text += said + "\n";
  }
  for (std::size_t i = 0; i < outcome.notes.size() && i < notes_shown; ++i) {
    text += "note: " + to_line(to_problem(outcome.notes[i], file)) + "\n";
  }
  if (outcome.notes.size() > notes_shown) {
    text += fmt::format("and {} notes more (all of them with --json)\n",
                        outcome.notes.size() - notes_shown);
  }
  const auto counts = [&text](const char* what, int fresh, int changed, int same) {
    if (fresh + changed + same > 0) {
      text +=
          fmt::format("{}: {} new, {} changed, {} as before.\n", what, fresh, changed, same);
    }
  };
  counts("Pieces", outcome.pieces_new, outcome.pieces_changed, outcome.pieces_same);
  counts("Makers, sources or windows", outcome.others_new, outcome.others_changed,
         outcome.others_same);
  return text;
}

// Rows set aside go beside the file, to be mended and imported again.
Result<std::string> set_aside(const Call& call, const ImportOutcome& outcome) {
  if (outcome.rest.empty() || !call.has("file")) {
    return std::string();
  }
  Path beside = call.path("file");
  beside.replace_extension(".set-aside.csv");
  if (auto written = write_file(beside, outcome.rest); !written) {
    return written.problem();
  }
  return fmt::format("{} rows are set aside in {}: mend them and import that file.\n",
                     outcome.faults.size(), beside.string());
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto read = read_inputs(call, open->show);
  if (!read) {
    return read.problem();
  }
  const std::string& file = read->file;
  const exchange::ImportOptions options{
      .file = file,
      .skip_faulty = call.flag("skip-faulty") || call.flag("look"),
      .guarded = call.flag("guarded")};
  const auto outcome = exchange::import_rows(open->show, read->table, read->map, options);
  if (!outcome) {
    return outcome.problem();
  }
  Answer answer;
  answer.json = to_json(*outcome);
  if (call.has("text")) {
    answer.json["sheet"] = sheet_json(*read, *outcome);
  }
  if (call.flag("look")) {
    answer.text = "Nothing is taken in yet.\n" + to_text(*outcome, file);
    return answer;
  }
  if (!outcome->faults.empty() && !options.skip_faulty) {
    for (const CellRemark& fault : outcome->faults) {
      answer.problems.push_back(to_problem(fault, file));
    }
    answer.text = fmt::format(
        "Nothing was taken in: {} at fault. Mend the file, or take the good rows with "
        "--skip-faulty.\n",
        outcome->faults.size());
    return answer;
  }
  if (auto done = open->store.apply(outcome->change, around.who, around.now); !done) {
    return done.problem();
  }
  const auto aside = set_aside(call, *outcome);
  if (!aside) {
    return aside.problem();
  }
  answer.text = to_text(*outcome, file) + *aside;
  return answer;
}

}  // namespace

Operation import_file() {
  return {.name = "import",
          .help = "take pieces, makers, sources or observations in from a spreadsheet",
          .writes = true,
          .parameters = {show_folder(),
                         {.name = "file",
                          .takes = Takes::file,
                          .help = "a .csv or .xlsx file",
                          .positional = true},
                         {.name = "map",
                          .takes = Takes::file,
                          .help = "what each column is, in TOML"},
                         {.name = "text",
                          .help = "the rows themselves, as CSV; columns are read by headings"},
                         {.name = "name", .help = "what the rows of --text are called"},
                         {.name = "columns",
                          .takes = Takes::texts,
                          .help = "what a column of --text is, as HEADING=made"},
                         {.name = "mend",
                          .takes = Takes::texts,
                          .help = "a cell of --text put right, as 14:made=195X"},
                         {.name = "look",
                          .takes = Takes::flag,
                          .help = "say what would be taken in, change nothing"},
                         {.name = "sheet", .help = "sheet of an .xlsx file (the first)"},
                         {.name = "skip-faulty",
                          .takes = Takes::flag,
                          .help = "take the good rows, set the others aside"},
                         {.name = "guarded",
                          .takes = Takes::flag,
                          .help = "the file was exported with --guard"}},
          .run = run};
}

}  // namespace backmark::desk
