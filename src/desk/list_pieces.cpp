#include <algorithm>
#include <optional>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/list_columns.h"
#include "evidence/look_answers.h"
#include "exchange/csv.h"

namespace backmark::desk {

namespace {

using model::Show;
using Rows = std::vector<std::vector<std::string>>;

std::vector<std::string> wanted_columns(const Call& call, bool reckoned) {
  if (!call.has("columns")) {
    return call.flag("csv") ? all_columns() : reckoned ? short_columns() : recorded_columns();
  }
  std::vector<std::string> names;
  const std::string given = call.text("columns");  // outlives the parts, which look into it
  for (const auto part : split(given, ",")) {
    names.emplace_back(trim(part));
  }
  return names;
}

// Aligned columns; long cells are cut at a width that leaves a terminal readable.
std::string to_text(const std::vector<std::string>& columns, const Rows& rows) {
  constexpr std::size_t widest = 38;
  std::vector<std::size_t> width;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    std::size_t most = columns[c].size();
    for (const auto& row : rows) {
      most = std::max(most, std::min(widest, to_code_points(row[c]).size()));
    }
    width.push_back(most);
  }
  const auto line = [&](const std::vector<std::string>& cells) {
    std::string text;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      text += padded(shortened(cells[c], widest), width[c] + 2);
    }
    return without_trailing_spaces(std::move(text)) + "\n";
  };
  std::string text = line(columns);
  for (const auto& row : rows) {
    text += line(row);
  }
  return text;
}

Json to_json(const std::vector<std::string>& columns, const Rows& rows) {
  Json list = Json::array();
  for (const auto& row : rows) {
    Json& piece = list.emplace_back(Json::object());
    for (std::size_t c = 0; c < columns.size(); ++c) {
      piece[columns[c]] = row[c];
    }
  }
  return list;
}

// number,year,p: every year of every curve that has a chance worth writing.
std::string curves_csv(const std::vector<ListedPiece>& pieces) {
  std::vector<exchange::Cells> rows;
  for (const ListedPiece& of : pieces) {
    if (of.belief == nullptr) {
      continue;
    }
    for (std::size_t t = 0; t < of.belief->year.p.size(); ++t) {
      const double p = of.belief->year.p[t];
      if (p >= 1e-7) {
        const int year = of.belief->year.span.first.value + static_cast<int>(t);
        rows.push_back({of.piece->number, std::to_string(year), fmt::format("{:.7f}", p)});
      }
    }
  }
  return exchange::write_csv({"number", "year", "p"}, rows, {});
}

// What a look should bring is not kept with a reckoning: it is found anew when asked for.
Result<Done> add_look_gains(const Show& show,
                            const LastRun& last,
                            const Surroundings& around,
                            std::vector<ListedPiece>& pieces) {
  evidence::ReckonSettings settings = usual_settings(around);
  settings.chains = 0;  // rough gains ask the curves only
  const auto reckoning = evidence::Reckoning::fit(show, settings, watch_of(around, "weighing"));
  if (!reckoning) {
    return reckoning.problem();
  }
  around.progress(1, "");
  if (last.run.beliefs.pieces.size() == pieces.size()) {
    const auto gains = evidence::rough_gains(show, *reckoning, last.run.beliefs);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      pieces[i].look_gain_bits = gains[i];
    }
  }
  return Done{};
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto limit = call.whole("limit", 0);
  if (!limit) {
    return limit.problem();
  }
  std::optional<LastRun> last;
  if (auto run = last_run(*open)) {
    last.emplace(std::move(*run));
  }
  auto pieces = listed_pieces(open->show, last ? &*last : nullptr);
  if (call.has("years")) {
    if (!last) {
      return Problem{Fault::not_found, "this show was never reckoned", "--years",
                     "run \"backmark infer\" first"};
    }
    if (auto written = write_file(call.path("years"), curves_csv(pieces)); !written) {
      return written.problem();
    }
  }
  const auto columns = wanted_columns(call, last.has_value());
  if (last && std::find(columns.begin(), columns.end(), "look_gain_bits") != columns.end()) {
    if (auto added = add_look_gains(open->show, *last, around, pieces); !added) {
      return added.problem();
    }
  }
  if (*limit > 0 && pieces.size() > static_cast<std::size_t>(*limit)) {
    pieces.resize(static_cast<std::size_t>(*limit));
  }
  const auto rows = cells_of(open->show, pieces, columns);
  if (!rows) {
    return rows.problem();
  }
  Answer answer;
  answer.json = to_json(columns, *rows);
  if (call.flag("csv")) {
    answer.text = exchange::write_csv(columns, *rows, {});
  } else {
    answer.text =
        (last ? stale_line(*last) : std::string()) + to_text(columns, *rows) +
        (last || call.has("columns") ? "" : "Not reckoned yet. Next: backmark infer SHOW\n");
  }
  return answer;
}

}  // namespace

Operation list_pieces() {
  return {.name = "list",
          .help = "a row a piece, recorded and reckoned",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "columns",
                          .help = "names joined by commas; any character by its key"},
                         {.name = "csv",
                          .takes = Takes::flag,
                          .help = "as CSV, every built-in column unless named"},
                         {.name = "years",
                          .takes = Takes::file,
                          .help = "write each piece's curve (number, year, p) to this file"},
                         {.name = "limit", .takes = Takes::whole, .help = "only so many rows"}},
          .run = run};
}

}  // namespace backmark::desk
