// The demo show from a seed: the same seed and size give the same records, texts and pictures.
//
//   const auto scenario = scenario::make({});  // a Result
//   model::Change change(show, "demo", scenario.summary());
//   scenario::fill(change, scenario);
//   scenario::write_texts(scenario, folder);                 // README.md, essays/
//   scenario::write_photographs(scenario, folder / "photos", 2);  // scenario/pictures.h
//   write_file(path, scenario::pieces_csv(scenario.truth));  // only where the user asked for
//   it
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/result.h"
#include "model/change.h"
#include "scenario/testimony.h"
#include "scenario/truth.h"
#include "scenario/work.h"

namespace backmark::scenario {

struct Options {
  std::uint64_t seed = 1954;
  int pieces = 312;        // 1 to most_pieces; fewer than 40 leaves out what needs company
  int drawn_up_to = 2000;  // shows of more pieces than this have no photographs
};

inline constexpr int most_pieces = 100'000;

struct Scenario {
  Options options;
  std::vector<Work> works;  // what each piece is and what became of it, in the order of numbers
  std::vector<Statement> statements;  // what sources say of the pieces, by piece
  Truth truth;                        // `fill`, `texts` and `picture` never look at it

  bool drawn() const { return options.pieces <= options.drawn_up_to; }
  std::string summary() const;  // one line for the book of changes
};

// Time and memory linear in the number of pieces. Problem: refused (pieces out of range).
Result<Scenario> make(const Options& options);

// Adds every record of the show; `change` is of an empty show. Photographs are recorded, with
// their true size, whether or not they are drawn afterwards, when `scenario.drawn()`.
void fill(model::Change& change, const Scenario& scenario);

// A photograph that the show has.
struct Shot {
  std::size_t work = 0;  // index into Scenario::works
  model::View view = model::View::front;
  std::string file;  // "ES-118-front.png"
  int width_px = 0;
  int height_px = 0;
  double pixels_per_mm = 0;
};

// All photographs, by piece then view; empty when not `drawn()`.
std::vector<Shot> shots(const Scenario& scenario);

// A file of the show folder beside the records: "README.md", "essays/…".
struct TextFile {
  std::string path;  // below the show folder
  std::string text;
};

std::vector<TextFile> texts(const Scenario& scenario);

// Problems: io.
Result<Done> write_texts(const Scenario& scenario, const Path& folder);

}  // namespace backmark::scenario
