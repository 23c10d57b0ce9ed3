#include "base/json.h"
#include "base/text.h"
#include "desk/claim_json.h"
#include "desk/each.h"
#include "desk/fitted.h"
#include "desk/looks.h"
#include "evidence/claim_test.h"
#include "evidence/claim_words.h"

namespace backmark::desk {

namespace {

using model::ClaimTest;
using model::Show;

std::string title_of(const Show& show, model::Id<model::Source> id) {
  const model::Source* source = show.find(id);
  return source == nullptr ? "no source named" : source->title;
}

bool silent(const ClaimTest& test) {
  return test.pieces == 0 && test.sources.empty();
}

Json to_json(const Show& show, const ClaimTest& test) {
  Json carried = Json::array();
  for (const model::ClaimCarrier& one : test.carried_by) {
    carried.push_back({{"number", show.find(one.piece)->number},
                       {"p", one.p},
                       {"p_claim_without", one.p_without}});
  }
  Json sources = Json::array();
  for (const model::ClaimVoice& one : test.sources) {
    const bool itself = one.origin == one.source;
    sources.push_back({{"source", title_of(show, one.source)},
                       {"for", one.for_it},
                       {"weight", one.counted ? one.reliability : 0},
                       {"reliability", one.reliability},
                       {"derives_from", itself ? Json() : Json(title_of(show, one.origin))},
                       {"p_claim_without", one.p_without},
                       {"says", one.says}});
  }
  Json turns = Json::array();
  for (const model::ClaimTurn& turn : test.turns) {
    turns.push_back({{"what", turn.what}, {"p", turn.p}});
  }
  return {{"claim", test.claim.words},
          {"p", silent(test) ? Json() : Json(test.p)},
          {"p_pieces", test.p_pieces},
          {"p_pieces_independent", test.p_independent},
          {"p_pieces_named", test.p_carried},
          {"expected_against", test.expected},
          {"pieces", test.pieces},
          {"carried_by", carried},
          {"sources", sources},
          {"looks", looks_json(show, test)},
          {"turns", turns},
          {"notes", test.notes}};
}

std::string in_twenty(double p) {
  return p > 0.995   ? "20 in 20, all but sure"
         : p < 0.005 ? "0 in 20, all but ruled out"
                     : fmt::format("{:.1f} in 20", 20 * p);
}

std::string pieces_text(const Show& show, const ClaimTest& test) {
  const bool race = test.claim.kind == model::AskedClaim::Kind::design;
  std::string text = fmt::format(
      "The {} pieces on the table alone: {} (leaning together), {} (each by itself)\n",
      test.pieces, in_twenty(test.p_pieces), in_twenty(test.p_independent));
  text += test.carried_by.empty() ? ""
          : race                  ? "  Chance to be the oldest of them\n"
                                  : "  Speaking against it\n";
  for (const model::ClaimCarrier& one : test.carried_by) {
    const model::Piece* piece = show.find(one.piece);
    text += fmt::format("  {:>5.1f} in 20  {}  {}  without it {:.1f}\n", 20 * one.p,
                        padded(piece->number, 10), padded(shortened(piece->title, 38), 38),
                        20 * one.p_without);
  }
  return text;
}

std::string sources_text(const Show& show, const ClaimTest& test) {
  std::string text = test.sources.empty() ? "No source speaks of it.\n" : "Sources\n";
  for (const model::ClaimVoice& one : test.sources) {
    const std::string title = shortened(title_of(show, one.source), 44);
    text += fmt::format("  {}  {}  ", one.for_it ? "for    " : "against", padded(title, 44));
    text += !one.counted
                ? fmt::format("counts with {}\n", shortened(title_of(show, one.origin), 34))
                : fmt::format("believed {:.0f} in 20; without it {:.1f}\n",
                              20 * one.reliability, 20 * one.p_without);
  }
  return text;
}

std::string looks_text(const Show& show, const ClaimTest& test) {
  constexpr std::size_t most = 5;
  std::string text = test.looks.empty() ? "" : "\nWhat to look at, most moved a minute first\n";
  for (std::size_t l = 0; l < std::min(most, test.looks.size()); ++l) {
    const model::ClaimLook& look = test.looks[l];
    std::vector<std::string> answers;
    for (std::size_t a = 0; a < std::min<std::size_t>(3, look.answers.size()); ++a) {
      answers.push_back(fmt::format("{}: {:.1f}", shortened(look.answers[a].value, 18),
                                    20 * look.answers[a].p_claim));
    }
    text += fmt::format("  {:>5.1f} in 20 either way {:>3.0f} min  {}  {}  {}\n",
                        20 * look.moves, look.minutes, padded(show.find(look.piece)->number, 8),
                        padded(shortened(look_label(show, look.character, look.again), 22), 22),
                        join(answers, "; "));
  }
  return text;
}

std::string to_text(const Show& show, const ClaimTest& test) {
  if (silent(test)) {
    return fmt::format("Claim: {}.\nNothing on file speaks for it or against it.\n",
                       test.claim.words);
  }
  std::string text =
      fmt::format("Claim: {}.\nAll told: {}\n\n", test.claim.words, in_twenty(test.p)) +
      pieces_text(show, test) + "\n" + sources_text(show, test);
  text += "\nWhat would move it\n";
  for (const model::ClaimTurn& turn : test.turns) {
    text += fmt::format("  {:>5.1f} in 20  {}\n", 20 * turn.p, turn.what);
  }
  text += looks_text(show, test);
  for (const std::string& note : test.notes) {
    text += note + "\n";
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto claim = evidence::read_claim(open->show, join(call.texts("claim"), " "));
  if (!claim) {
    return claim.problem();
  }
  const auto settings = settings_of(call, around);
  if (!settings) {
    return settings.problem();
  }
  const auto fitted = fitted_show(*open, *settings, around);
  if (!fitted) {
    return fitted.problem();
  }
  const ClaimTest test =
      evidence::test_claim(*(*fitted)->show, (*fitted)->reckoning, *claim, settings->seed);
  const std::string stale = learned_line(**fitted);
  Json json = to_json(open->show, test);
  json["stale"] = !stale.empty();
  return Answer{
      .json = std::move(json), .text = stale + to_text(open->show, test), .problems = {}};
}

}  // namespace

Operation test_claim() {
  return {.name = "test",
          .help = "what the pieces and the sources say of a claim",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "claim",
                          .takes = Takes::texts,
                          .help = "\"first made in YEAR by MAKER\" and other forms",
                          .positional = true,
                          .required = true},
                         seed_parameter(),
                         unlisted_parameter(),
                         chains_parameter(),
                         rounds_parameter()},
          .run = run};
}

}  // namespace backmark::desk
