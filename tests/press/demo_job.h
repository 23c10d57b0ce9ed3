// The demo show with beliefs made up round the truth, for tests of papers: what is tested is
// the printing, not the reckoning.
#pragma once

#include <cmath>
#include <doctest/doctest.h>
#include <map>
#include <memory>
#include <string>

#include "draw/picture.h"
#include "model/look.h"
#include "press/job.h"
#include "scenario/demo_records.h"

namespace backmark::press {

inline model::Show show_of(const scenario::Scenario& demo) {
  model::Show show = scenario::records_of(demo);
  show.position = 41;
  return show;
}

inline model::Beliefs beliefs_round(const model::Show& show, const scenario::Truth& truth) {
  std::map<std::string, const scenario::PieceTruth*> by_number;
  for (const scenario::PieceTruth& piece : truth.pieces) {
    by_number[piece.number] = &piece;
  }
  model::Beliefs beliefs;
  for (const model::Piece& piece : show.all<model::Piece>()) {
    const scenario::PieceTruth& known = *by_number.at(piece.number);
    model::PieceBelief belief{.piece = piece.id, .dated = true};
    belief.year = {{{1900}, {2000}}, std::vector<double>(101)};
    const double sd = 0.4 + (piece.id.value * 7919 % 97) / 12.0;
    double sum = 0;
    for (int cell = 0; cell < 101; ++cell) {
      const double z = (1900 + cell - known.year.value) / sd;
      sum += belief.year.p[static_cast<std::size_t>(cell)] = std::exp(-z * z / 2);
    }
    for (double& p : belief.year.p) {
      p /= sum;
    }
    if (const model::Maker* maker = show.maker(known.maker)) {
      const double p = 0.2 + 0.79 * ((piece.id.value * 31) % 100) / 100.0;
      belief.maker = {{{maker->id, p}}, 1 - p, known.names_maker};
      belief.place = {maker->place, p};
    }
    beliefs.pieces.push_back(std::move(belief));
  }
  return beliefs;
}

// Everything a job borrows.
struct DemoPrinting {
  scenario::Scenario demo = *scenario::make({});
  model::Show show = show_of(demo);
  model::Beliefs beliefs = beliefs_round(show, demo.truth);
  words::PhraseBook phrases = words::phrase_all(show, beliefs);
  draw::Fonts fonts = *draw::Fonts::load();

  // A plain dark picture stands for every photograph.
  PressJob job(words::Audience audience) const {
    static const std::string dark = [] {
      draw::Picture picture = draw::blank_picture(8, 8);
      std::fill(picture.rgba.begin(), picture.rgba.end(), std::uint8_t{120});
      return draw::encode_png(picture);
    }();
    return {show,
            beliefs,
            phrases,
            fonts,
            [](const model::Photograph&) { return Result<std::string>(dark); },
            audience,
            22'341};
  }
};

inline const DemoPrinting& demo_printing() {
  static const DemoPrinting printing;
  return printing;
}

// Two looks at two pieces of one tray, as a day's plan.
inline model::LookList two_looks(const model::Show& show) {
  model::LookList list;
  const auto& pieces = show.all<model::Piece>();
  const auto& characters = show.all<model::Character>();
  for (std::size_t at = 0; at < 2; ++at) {
    list.looks.push_back({.piece = pieces[at].id,
                          .character = characters[at].id,
                          .gain_bits = 0.85 + static_cast<double>(at),
                          .minutes = 4,
                          .again = at == 1,
                          .p10 = {1948},
                          .p50 = {1955},
                          .p90 = {1962},
                          .answers = {{"wire", 0.6, {1950}, {1952}, {1954}}}});
  }
  list.hours = 1;
  list.plan.push_back({.tray = pieces[0].tray, .minutes = 19, .looks = {0, 1}});
  return list;
}

// Opening on 26 June 2027, today the first of March.
inline PlannedWork small_plan() {
  const auto day = [](const char* text) { return *parse_day(text); };
  PlannedWork work{.tasks = {},
                   .opening = day("2027-06-26"),
                   .today = day("2027-03-01"),
                   .p_show = 0.62,
                   .p_book = 0.999};
  const auto add = [&](const char* title, const char* start, const char* finish, double slack,
                       model::Holds holds) -> PlannedTask& {
    work.tasks.push_back(
        {.task = {.key = title, .group = "Cases", .title = title, .holds = holds},
         .earliest_start = work.today,
         .latest_start = day(start),
         .latest_finish = day(finish),
         .slack_days = slack,
         .critical_p = 0.7});
    return work.tasks.back();
  };
  add("Hang the lamps", "2027-05-03", "2027-05-20", 63, model::Holds::show);
  add("Ask lenders", "2027-02-12", "2027-03-11", -17, model::Holds::loan);
  add("Sweep the gallery", "2027-05-21", "2027-05-22", 81, model::Holds::nothing).task.done =
      true;
  add("Pack the crates", "2027-05-12", "2027-05-14", 0.4, model::Holds::show);
  return work;
}

// The text of a PDF as poppler's pdftotext extracts it; empty (and said so) without the tool.
inline std::string text_in(const std::string& pdf) {
  const Path file = std::filesystem::temp_directory_path() / "backmark-press-test.pdf";
  REQUIRE(write_file(file, pdf));
  std::string text;
  if (std::FILE* pipe = popen(
          ("pdftotext -raw -enc UTF-8 '" + file.string() + "' - 2>/dev/null").c_str(), "r")) {
    char buffer[4096];
    while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, pipe)) {
      text.append(buffer, got);
    }
    pclose(pipe);
  }
  std::filesystem::remove(file);
  if (text.empty()) {
    MESSAGE("skipped: pdftotext is not here, so the paper was not read back");
  }
  return text;
}

}  // namespace backmark::press
