#include <algorithm>
#include <map>

#include "base/text.h"
#include "desk/each.h"
#include "desk/or_null.h"
#include "desk/screened.h"

namespace backmark::desk {

namespace {

std::vector<ScreenedPiece> screen_all(const OpenShow& open,
                                      const std::optional<LastRun>& last,
                                      assay::Day opening,
                                      const model::Piece* only) {
  std::vector<ScreenedPiece> screened;
  for (const model::Piece& piece : open.show.all<model::Piece>()) {
    if (only != nullptr && piece.id != only->id) {
      continue;
    }
    auto rules = screen_piece(open.show, piece, last, opening);
    if (!rules.empty()) {
      screened.push_back({&piece, std::move(rules)});
    }
  }
  return screened;
}

Json to_json(const std::vector<ScreenedPiece>& screened) {
  Json pieces = Json::array();
  for (const ScreenedPiece& one : screened) {
    for (const assay::Screened& rule : one.rules) {
      pieces.push_back({{"number", one.piece->number},
                        {"part", rule.part},
                        {"material", rule.word},
                        {"rule", rule.rule->law},
                        {"rule_key", rule.rule->key},
                        {"place", rule.rule->place},
                        {"p_restricted", rule.p_restricted},
                        {"event", rule.rule->event},
                        {"before", rule.rule->before},
                        {"p_before", or_null(rule.p_before)},
                        {"p_made_before", or_null(rule.p_made_before)},
                        {"state", assay::word_of(rule.state)},
                        {"known", rule.known},
                        {"ask", rule.rule->ask},
                        {"routes", rule.rule->routes},
                        {"source", rule.rule->source},
                        {"status", rule.rule->status},
                        {"checked", rule.rule->checked}});
    }
  }
  return pieces;
}

std::string chance_words(const std::optional<double>& p) {
  return p ? fmt::format("{:.2f}", *p) : "?";
}

// A line a piece: the words that brought rules, and how many of these are in which state.
std::string short_text(const std::vector<ScreenedPiece>& screened) {
  std::string text;
  for (const ScreenedPiece& one : screened) {
    std::vector<std::string> words;
    std::map<std::string_view, int> states;
    for (const assay::Screened& rule : one.rules) {
      if (std::find(words.begin(), words.end(), rule.word) == words.end()) {
        words.push_back(rule.word);
      }
      states[assay::word_of(rule.state)] += 1;
    }
    std::vector<std::string> counts;
    for (const auto& [state, count] : states) {
      counts.push_back(fmt::format("{}: {}", state, count));
    }
    text += fmt::format("{:<10} {:<34} {}\n", one.piece->number, join(words, ", "),
                        join(counts, ", "));
  }
  return text;
}

std::string tested_words(const std::string& event) {
  return event == "in force" ? "it holds whatever the age"
                             : fmt::format("it tests when a thing was {}", event);
}

std::string full_text(const ScreenedPiece& one) {
  std::string text = fmt::format("{}  {}\n", one.piece->number, one.piece->title);
  for (const assay::Screened& rule : one.rules) {
    text += fmt::format(
        "\n{}: {} ({})\n  {} may be {}: {:.2f}; {}: {}\n  {}\n  "
        "made "
        "before that day: {}\n  {}\n  ask: {}\n  touches: {}\n  {}, {}; row checked {}\n",
        assay::word_of(rule.state), rule.rule->law, rule.rule->place, rule.word,
        rule.rule->taxon, rule.p_restricted, tested_words(rule.rule->event), rule.rule->means,
        rule.known, chance_words(rule.p_made_before),
        rule.p_before ? fmt::format("chance that the event was before: {:.2f}", *rule.p_before)
                      : "whether the event was before is not known",
        rule.rule->ask, join(rule.rule->routes, ", "), rule.rule->source, rule.rule->status,
        rule.rule->checked);
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const model::Piece* only = nullptr;
  if (call.has("number")) {
    const auto piece = find_piece(open->show, call.text("number"));
    if (!piece) {
      return piece.problem();
    }
    only = *piece;
  }
  const std::optional<LastRun> last = reckoned_or_none(*open);
  const auto screened = screen_all(*open, last, opening_of(open->show, around), only);
  Answer answer;
  answer.json = {{"pieces", to_json(screened)},
                 {"reckoned", last.has_value()},
                 {"caution", screen_caution}};
  if (!last) {
    answer.text += "The show was not reckoned: no year stands behind these answers.\n";
  } else {
    answer.text += stale_line(*last);
  }
  if (screened.empty()) {
    answer.text += "Nothing on record is a word that a rule is known for.\n";
  } else {
    answer.text += only != nullptr ? full_text(screened.front()) : short_text(screened);
  }
  answer.text += fmt::format("\n{}\n", screen_caution);
  return answer;
}

}  // namespace

Operation screen_show() {
  return {.name = "screen",
          .help = "restricted materials: what to ask and hold, per piece",
          .parameters = {show_folder(),
                         {.name = "number", .help = "one piece, in full", .positional = true}},
          .run = run};
}

}  // namespace backmark::desk
