#include <algorithm>
#include <map>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/papers.h"
#include "press/agreement.h"
#include "press/outputs.h"
#include "words/fact.h"

namespace backmark::desk {

namespace {

// Facts of the paper that the record words otherwise now.
Json changed_json(const words::Grammar& grammar, const PrintRecord& record) {
  Json list = Json::array();
  for (const press::PrintedFact& fact : record.facts) {
    if (!is_worded(fact.kind)) {
      continue;
    }
    const model::Piece* piece = grammar.show().piece(fact.piece);
    const std::string now = piece == nullptr ? "" : grammar.text_of(*piece, fact.kind);
    if (press::flattened(now) != press::flattened(fact.text)) {
      list.push_back({{"number", fact.piece}, {"printed", fact.text}, {"now", now}});
    }
  }
  return list;
}

bool leaves_the_house(words::Audience audience) {
  return audience == words::Audience::public_ || audience == words::Audience::printer;
}

Json paper_json(const press::Output& output,
                const PrintRecord* record,
                const words::Grammar& grammar) {
  const words::Audience audience = record != nullptr ? record->audience : output.audience;
  return {{"name", output.name},
          {"title", output.title},
          {"for", words::name_of(audience)},
          {"caution", output.caution},
          {"stays", !leaves_the_house(audience)},
          {"made", record != nullptr},
          {"files", record != nullptr ? Json(record->files) : Json::array()},
          {"facts", record != nullptr ? record->facts.size() : 0},
          {"changed", record != nullptr ? changed_json(grammar, *record) : Json::array()}};
}

std::string line_of(const Json& paper) {
  const std::size_t changed = paper["changed"].size();
  const std::string state = !paper["made"].get<bool>() ? "not made yet"
                            : changed == 0             ? "agrees"
                                           : fmt::format("{} facts changed", changed);
  return padded(paper["name"].get<std::string>(), 16) + state + "\n";
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto records = read_records(open->store.folder() / "prints");
  if (!records) {
    return records.problem();
  }
  const auto reckoned = phrased(*open);
  if (!reckoned) {
    return reckoned.problem();
  }
  const words::Grammar grammar(open->show, reckoned->beliefs, reckoned->phrases);
  std::map<std::string, const PrintRecord*, std::less<>> made;
  for (const PrintRecord& record : *records) {
    made[record.output] = &record;
  }
  Answer answer;
  answer.text = reckoned->warning;
  answer.json["papers"] = Json::array();
  for (const press::Output& output : press::outputs()) {
    const auto record = made.find(output.name);
    Json paper = paper_json(output, record == made.end() ? nullptr : record->second, grammar);
    answer.text += line_of(paper);
    answer.json["papers"].push_back(std::move(paper));
  }
  return answer;
}

}  // namespace

Operation paper_states() {
  return {
      .name = "papers",
      .help = "every paper that can be printed, and whether it still says what the show says",
      .parameters = {show_folder()},
      .run = run};
}

}  // namespace backmark::desk
