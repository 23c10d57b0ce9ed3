#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
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
    // Kinds that the grammar does not word (values, conditions) are compared between papers
    // only.
    if (fact.kind <= words::FactKind::prose && fact.kind != words::FactKind::compare &&
        press::flattened(now) != press::flattened(fact.text)) {
      problems.push_back(
          {Fault::conflict,
           fmt::format("the paper says \"{}\", the show now says \"{}\"", fact.text, now),
           fmt::format("{}, piece {}", fact.output, fact.piece),
           fmt::format("print it again: backmark print SHOW {}", fact.output)});
    }
  }
  return problems;
}

Json frozen_changes(const std::vector<PrintRecord>& frozen,
                    const std::vector<PrintRecord>& now,
                    std::string& text) {
  const auto all = [](const std::vector<PrintRecord>& records) {
    std::vector<PrintedFact> facts;
    for (const PrintRecord& record : records) {
      facts.insert(facts.end(), record.facts.begin(), record.facts.end());
    }
    return facts;
  };
  Json list = Json::array();
  for (const press::FactChange& change : press::changes(all(frozen), all(now))) {
    list.push_back({{"piece", change.piece}, {"before", change.before}, {"now", change.now}});
    text += fmt::format("{}: \"{}\" is now \"{}\"\n", change.piece, change.before, change.now);
  }
  return list;
}

Result<Answer> check(OpenShow& open, const Path& since) {
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
  if (!since.empty()) {
    const auto frozen = read_records(since);
    if (!frozen) {
      return frozen.problem();
    }
    answer.json["changed"] = frozen_changes(*frozen, *records, answer.text);
  }
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  return check(*open, call.path("since"));
}

}  // namespace

Operation check_show() {
  return {.name = "check",
          .help = "whether all printed papers agree with each other and with the show",
          .writes = false,
          .parameters = {show_folder(),
                         {.name = "since",
                          .takes = Takes::folder,
                          .help = "a kept copy of prints/: list what changed since"}},
          .run = run};
}

}  // namespace backmark::desk
