#include "press/texts.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "press/demo_job.h"
#include "scenario/essays.h"

using namespace backmark;
using namespace backmark::press;

TEST_CASE("the demo's essays read without a finding once their works are listed") {
  const DemoPrinting& printing = demo_printing();
  const words::Numbering numbering(printing.show);
  std::vector<model::Reference> references;
  for (const model::Source& source : printing.show.all<model::Source>()) {
    references.push_back({.key = source.key, .title = source.title});
  }
  const std::vector<TextFile> texts{
      {"essays/1-first.md",
       scenario::with_figures(scenario::essay_on_beginnings(), printing.demo)},
      {"essays/2-back.md", scenario::with_figures(scenario::essay_on_backs(), printing.demo)},
      {"essays/glossary.md", std::string(scenario::glossary())},
      {"essays/references.json", "[]"}};
  const BookTexts read = read_texts(texts, printing.show, numbering, references);
  for (const Problem& finding : read.findings) {
    MESSAGE(to_line(finding));
  }
  CHECK(read.findings.empty());
  REQUIRE(read.essays.size() == 2);
  CHECK(read.essays[0].title == "Who Was First");
  CHECK(read.essays[0].author == "Ina Rell");
  CHECK(read.essays[0].notes.size() == 2);
  CHECK(read.glossary.title == "Glossary");
  CHECK_FALSE(read.glossary.blocks.empty());
  CHECK(read.cited.size() >= 8);
  CHECK(read_texts(texts, printing.show, numbering, {}).findings.size() >= 8);
}

TEST_CASE("the demo's entries say nothing of year or maker that its record does not bear") {
  const DemoPrinting& printing = demo_printing();
  const PressJob job = printing.job(words::Audience::public_);
  const words::Grammar grammar(printing.show, printing.beliefs, printing.phrases);
  const Problems found = check_entry_prose(job, grammar);
  for (const Problem& problem : found) {
    MESSAGE(to_line(problem));
  }
  CHECK(found.size() * 20 < printing.show.all<model::Piece>().size());
}
