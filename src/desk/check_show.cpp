#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/frozen.h"
#include "desk/papers.h"
#include "words/fact.h"

namespace backmark::desk {

namespace {

using press::PrintedFact;

// The text of all files of a paper; tables as they are.
Result<std::string> text_of(const Path& prints, const PrintRecord& record) {
  std::string all;
  for (const std::string& name : record.files) {
    auto text = ends_with(name, ".pdf") ? pdf_text(prints / name) : read_file(prints / name);
    if (!text) {
      return text.problem();
    }
    all += *text + "\n";
  }
  return all;
}

void add(Problems& to, Problems more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()),
            std::make_move_iterator(more.end()));
}

// What the record says now where a paper says something else.
Problems outdated(const words::Grammar& grammar, const std::vector<PrintedFact>& facts) {
  Problems problems;
  for (const PrintedFact& fact : facts) {
    const model::Piece* piece = grammar.show().piece(fact.piece);
    const std::string now = piece == nullptr ? "" : grammar.text_of(*piece, fact.kind);
    if (is_worded(fact.kind) && press::flattened(now) != press::flattened(fact.text)) {
      problems.push_back(
          {Fault::conflict,
           fmt::format("the paper says \"{}\", the show now says \"{}\"", fact.text, now),
           fmt::format("{}, piece {}", fact.output, fact.piece),
           fmt::format("print it again: backmark print SHOW {}", fact.output)});
    }
  }
  return problems;
}

std::string in_words(const press::FactChange& change) {
  const std::string what =
      fmt::format("{}, {}, {}: ", change.output, change.piece, press::fact_name(change.kind));
  if (change.now.empty()) {
    return what + fmt::format("\"{}\" is gone\n", change.before);
  }
  return what + (change.before.empty()
                     ? fmt::format("\"{}\" is new\n", change.now)
                     : fmt::format("\"{}\" is now \"{}\"\n", change.before, change.now));
}

void tell_changes(const std::vector<press::FactChange>& changes,
                  const std::string& name,
                  Answer& answer) {
  Json list = Json::array();
  std::string lines;
  for (const press::FactChange& change : changes) {
    list.push_back({{"paper", change.output},
                    {"number", change.piece},
                    {"field", press::fact_name(change.kind)},
                    {"then", change.before},
                    {"now", change.now}});
    lines += in_words(change);
  }
  answer.json["changed"] = list;
  answer.text += fmt::format("{} facts changed since the set \"{}\" was frozen\n{}",
                             changes.size(), name, lines);
}

Result<Answer> check(OpenShow& open, const std::string& frozen) {
  const Path prints = open.store.folder() / "prints";
  const auto records = read_records(prints);
  if (!records) {
    return records.problem();
  }
  const auto reckoned = phrased(open);
  if (!reckoned) {
    return reckoned.problem();
  }
  const words::Grammar grammar(open.show, reckoned->beliefs, reckoned->phrases);
  Answer answer;
  std::vector<PrintedFact> facts;
  for (const PrintRecord& record : *records) {
    const auto text = text_of(prints, record);
    if (!text) {
      return text.problem();
    }
    add(answer.problems, press::not_found_in(*text, record.facts));
    add(answer.problems,
        press::leaks(*text, press::private_texts(open.show, record.audience), record.output));
    add(answer.problems, outdated(grammar, record.facts));
    facts.insert(facts.end(), record.facts.begin(), record.facts.end());
  }
  add(answer.problems, press::disagreements(facts));
  answer.json = {{"papers", records->size()}, {"facts", facts.size()}};
  answer.text =
      reckoned->warning + fmt::format("{} papers, {} printed facts, {} faults\n",
                                      records->size(), facts.size(), answer.problems.size());
  if (!frozen.empty()) {
    const auto then = frozen_records(prints, frozen);
    if (!then) {
      return then.problem();
    }
    tell_changes(changed_since(grammar, *then, *records), frozen, answer);
  }
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  return check(*open, call.text("frozen"));
}

}  // namespace

Operation check_show() {
  return {.name = "check",
          .help = "whether all printed papers agree with each other and with the show",
          .writes = false,
          .parameters = {show_folder(),
                         {.name = "frozen",
                          .help = "the name of a frozen set: list what changed since"}},
          .run = run};
}

}  // namespace backmark::desk
