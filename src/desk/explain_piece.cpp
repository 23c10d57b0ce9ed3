#include <algorithm>
#include <cmath>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/evidence_words.h"
#include "desk/fitted.h"
#include "words/phrase.h"

namespace backmark::desk {

namespace {

using Why = evidence::Reckoning::Why;
using model::PieceBelief;
using model::Show;

std::string number_of(const Show& show, model::Id<model::Piece> id) {
  return show.find(id)->number;
}

std::string name_of(const Show& show, model::Id<model::Maker> id) {
  const model::Maker* maker = show.find(id);
  return maker != nullptr ? maker->name : "unrecorded maker";
}

Json year_json(const PieceBelief& belief) {
  if (belief.year.empty()) {
    return Json();
  }
  return {{"p2_5", belief.year.at(0.025).value}, {"p10", belief.year.at(0.1).value},
          {"p25", belief.year.at(0.25).value},   {"p50", belief.year.at(0.5).value},
          {"p75", belief.year.at(0.75).value},   {"p90", belief.year.at(0.9).value},
          {"p97_5", belief.year.at(0.975).value}};
}

Json makers_json(const Show& show, const PieceBelief& belief) {
  Json list = Json::array();
  for (const model::MakerChance& chance : belief.maker.makers) {
    list.push_back({{"maker", name_of(show, chance.maker)}, {"p", chance.p}});
  }
  list.push_back({{"maker", "unrecorded maker"}, {"p", belief.maker.unrecorded}});
  return list;
}

Json to_json(const Show& show, const model::Piece& piece, const Why& why) {
  Json evidence = Json::array();
  for (const model::EvidenceLine& line : why.lines) {
    evidence.push_back({{"what", line.what},
                        {"source", line.source},
                        {"bits_year", line.bits_year},
                        {"years_moved", line.years_moved},
                        {"width_change", line.width_change},
                        {"maker_log_odds", line.maker_log_odds},
                        {"reliability", line.reliability},
                        {"disagrees", line.disagrees}});
  }
  Json near = Json::array();
  for (const model::Comparandum& one : why.comparanda) {
    near.push_back({{"number", number_of(show, one.piece)},
                    {"share", one.share},
                    {"why", one.why},
                    {"unlike", one.unlike}});
  }
  Json conflicts = Json::array();
  for (const model::Misfit& misfit : why.misfits) {
    conflicts.push_back({{"what", misfit.what}, {"p", misfit.p}});
  }
  return {{"number", piece.number},
          {"year", year_json(why.belief)},
          {"makers", makers_json(show, why.belief)},
          {"evidence", evidence},
          {"comparanda", near},
          {"conflicts", conflicts},
          {"without", Json::array({{{"what", "oral testimony"},
                                    {"year", year_json(why.without_stories)},
                                    {"makers", makers_json(show, why.without_stories)}}})}};
}

int in_twenty(double p) {
  return static_cast<int>(std::lround(20 * p));
}

std::string span_words(const PieceBelief& belief) {
  return belief.year.empty()
             ? "no year can be said"
             : fmt::format("16 chances in 20: {} to {}; middle {}", belief.year.at(0.1).value,
                           belief.year.at(0.9).value, belief.year.at(0.5).value);
}

// What is seen on the piece and hardly bears on the answer is named without figures.
bool moves_little(const model::EvidenceLine& line) {
  return !line.disagrees && line.bits_year < 0.02 && std::abs(line.width_change) < 1.5 &&
         std::abs(line.years_moved) < 1 && std::abs(line.maker_log_odds) < 0.1 &&
         line.source == "the piece";
}

std::string evidence_words(const Why& why) {
  std::string text =
      "Evidence, most pull first (bits: what the year's answer loses without it)\n";
  std::vector<std::string> little;
  for (const model::EvidenceLine& line : why.lines) {
    if (moves_little(line)) {
      little.push_back(line.what);
      continue;
    }
    text += fmt::format("  {:>5.2f}  {}  {}\n", line.bits_year,
                        padded(shortened(line.what, 46), 46), moved_words(line));
    if (line.source != "the piece") {
      text += fmt::format("         {}\n", shortened(line.source, 70));
    }
  }
  if (!little.empty()) {
    text += "Seen, each alone moving little:\n";
    for (const std::string& row : rows_of(join(little, "; "), 88)) {
      text += "  " + row + "\n";
    }
  }
  return text;
}

std::string comparanda_words(const Show& show, const Why& why) {
  if (why.comparanda.empty()) {
    return "";
  }
  std::string text = "Most like these pieces, dated, named or told of (share of all that speaks)\n";
  for (const model::Comparandum& one : why.comparanda) {
    const model::Piece* piece = show.find(one.piece);
    text += fmt::format("  {:>4.0f} in 1000  {}  {}\n", 1000 * one.share,
                        padded(piece->number, 10), shortened(piece->title, 48));
    if (!one.why.empty()) {
      text += fmt::format("                alike: {}{}\n", join(one.why, ", "),
                          one.unlike.empty() ? "" : "; unlike: " + join(one.unlike, ", "));
    }
  }
  return text;
}

std::string to_text(const Show& show, const model::Piece& piece, const Why& why) {
  const model::Phrases phrases = words::phrase_piece(show, why.belief);
  std::string text = fmt::format("{}  {}\n{}, {}\n{}\n\n", piece.number, piece.title,
                                 phrases.made, phrases.maker, span_words(why.belief));
  text += evidence_words(why) + "\n";
  text += comparanda_words(show, why) + "\nMakers\n";
  for (const model::MakerChance& chance : why.belief.maker.makers) {
    if (in_twenty(chance.p) >= 1) {
      text +=
          fmt::format("  {:>2} in 20  {}\n", in_twenty(chance.p), name_of(show, chance.maker));
    }
  }
  text +=
      fmt::format("  {:>2} in 20  unrecorded hand\n", in_twenty(why.belief.maker.unrecorded));
  for (const model::Misfit& misfit : why.misfits) {
    text +=
        fmt::format("\nDoes not fit: {} ({} chances in 20).", misfit.what, in_twenty(misfit.p));
  }
  text += why.misfits.empty() ? "" : "\n";
  text += fmt::format("\nWithout what was only told: {}, {}\n",
                      words::phrase_piece(show, why.without_stories).made,
                      span_words(why.without_stories));
  return text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto piece = find_piece(open->show, call.text("number"));
  if (!piece) {
    return piece.problem();
  }
  const auto settings = settings_of(call, around);
  if (!settings) {
    return settings.problem();
  }
  const auto fitted = fitted_show(*open, *settings, around);
  if (!fitted) {
    return fitted.problem();
  }
  const auto row = static_cast<std::size_t>(*piece - open->show.all<model::Piece>().data());
  const Why why = (*fitted)->reckoning.explain(row, 4);
  Json json = to_json(open->show, **piece, why);
  const std::string stale = learned_line(**fitted);
  json["stale"] = !stale.empty();
  return Answer{.json = std::move(json),
                .text = stale + to_text(open->show, **piece, why),
                .problems = {}};
}

}  // namespace

Operation explain_piece() {
  return {.name = "explain",
          .help = "why this year and this maker: each piece of evidence and its weight",
          .from_show_alone = true,
          .parameters =
              {show_folder(),
               {.name = "number", .help = "the piece", .positional = true, .required = true},
               unlisted_parameter(),
               seed_parameter(),
               chains_parameter(),
               rounds_parameter()},
          .run = run};
}

}  // namespace backmark::desk
