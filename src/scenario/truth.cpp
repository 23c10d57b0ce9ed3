#include "scenario/truth.h"

#include <map>

#include "base/json.h"
#include "base/text.h"

namespace backmark::scenario {

std::string pieces_csv(const Truth& truth) {
  std::map<std::string, std::string> stories;
  for (const WrongStory& story : truth.stories) {
    stories[story.number] = story.source;
  }
  std::string csv = "number,year,maker,names_maker,replaced,story\n";
  for (const PieceTruth& piece : truth.pieces) {
    std::vector<std::string> replaced;
    for (const ReplacedPart& part : piece.replaced) {
      replaced.push_back(fmt::format("{}:{}", part.kind, part.year.value));
    }
    const auto story = stories.find(piece.number);
    csv += fmt::format("{},{},{},{},{},{}\n", piece.number, piece.year.value, piece.maker,
                       piece.names_maker ? 1 : 0, join(replaced, ";"),
                       story == stories.end() ? "" : story->second);
  }
  return csv;
}

std::string to_json(const Truth& truth) {
  Json lineages = Json::array();
  for (const LineageTruth& lineage : truth.lineages) {
    Json changed = Json::array();
    for (const Year year : lineage.changed) {
      changed.push_back(year.value);
    }
    lineages.push_back({{"character", lineage.character},
                        {"maker", lineage.maker},
                        {"variants", lineage.variants},
                        {"changed", changed}});
  }
  Json stories = Json::array();
  for (const WrongStory& story : truth.stories) {
    stories.push_back(
        {{"number", story.number}, {"source", story.source}, {"text", story.text}});
  }
  Json pieces = Json::array();
  for (const PieceTruth& piece : truth.pieces) {
    Json replaced = Json::object();
    for (const ReplacedPart& part : piece.replaced) {
      replaced[part.kind] = part.year.value;
    }
    pieces.push_back({{"number", piece.number},
                      {"year", piece.year.value},
                      {"maker", piece.maker},
                      {"names_maker", piece.names_maker},
                      {"replaced", replaced}});
  }
  const Json all{{"first", {{"maker", truth.first_maker}, {"year", truth.first_year.value}}},
                 {"lineages", lineages},
                 {"stories", stories},
                 {"pieces", pieces}};
  return all.dump(1) + "\n";
}

}  // namespace backmark::scenario
