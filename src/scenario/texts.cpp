#include <filesystem>

#include "base/json.h"
#include "base/text.h"
#include "scenario/essays.h"
#include "scenario/scenario.h"
#include "scenario/testimony.h"

namespace backmark::scenario {
namespace {

std::string readme(const Scenario& scenario) {
  return fmt::format(
      R"(# Tied at the Water: a made-up show

Everything in this folder is invented. The Ennet coast is on no map; its makers, workshops, owners,
families, papers, patents and prices were made up by a program, and the photographs are drawings made
by the same program. Names that resemble those of real people do so by chance.

It was made with `backmark demo` from seed {} and holds {} pieces. The same seed and number of pieces
give the same show again, to the byte. What is "really" true of the invented pieces (their years,
makers, changed parts, and which stories are wrong) is known to the program and is not in this folder;
`backmark demo SHOW --truth FILE.csv` writes it elsewhere, so that answers can be scored.

- `show.db`: the records
- `photos/`: the drawn photographs{}
- `essays/`: three essays, a glossary, and `references.json` (CSL-JSON) for their citations
)",
      scenario.options.seed, scenario.options.pieces,
      scenario.drawn() ? "" : " (none: the show is too large to be drawn)");
}

std::string_view csl_type(model::SourceKind kind) {
  switch (kind) {
    case model::SourceKind::publication:
      return "book";
    case model::SourceKind::oral:
      return "interview";
    case model::SourceKind::record:
      return "document";
    default:
      return "manuscript";
  }
}

// Author, if the citation opens with one ("Rell, Ina. ..."), as CSL wants it.
Json author_of(const std::string& citation) {
  const auto comma = citation.find(", ");
  const auto stop = citation.find(". ");
  if (comma == std::string::npos || stop == std::string::npos || comma > stop || stop > 24) {
    return Json::array({{{"literal", citation.substr(0, stop)}}});
  }
  return Json::array({{{"family", citation.substr(0, comma)},
                       {"given", citation.substr(comma + 2, stop - comma - 2)}}});
}

std::string references() {
  Json items = Json::array();
  for (const SourceCard& card : source_cards()) {
    if (card.citation.empty()) {
      continue;
    }
    Json item{{"id", card.key},
              {"type", csl_type(card.kind)},
              {"title", card.title},
              {"author", author_of(card.citation)}};
    if (card.year) {
      item["issued"] = {{"date-parts", Json::array({Json::array({card.year->value})})}};
    }
    item["note"] = card.citation;
    items.push_back(std::move(item));
  }
  return items.dump(1) + "\n";
}

}  // namespace

std::vector<TextFile> texts(const Scenario& scenario) {
  return {{"README.md", readme(scenario)},
          {"essays/1-who-was-first.md", with_figures(essay_on_beginnings(), scenario)},
          {"essays/2-reading-a-back.md", with_figures(essay_on_backs(), scenario)},
          {"essays/3-what-the-coast-gave.md", with_figures(essay_on_materials(), scenario)},
          {"essays/glossary.md", std::string(glossary())},
          {"essays/references.json", references()}};
}

Result<Done> write_texts(const Scenario& scenario, const Path& folder) {
  for (const TextFile& file : texts(scenario)) {
    const Path path = folder / file.path;
    std::error_code failed;
    std::filesystem::create_directories(path.parent_path(), failed);
    if (failed) {
      return Problem{Fault::io, "the folder cannot be made", path.parent_path().string(),
                     failed.message()};
    }
    if (auto written = write_file(path, file.text); !written) {
      return written.problem();
    }
  }
  return Done{};
}

}  // namespace backmark::scenario
