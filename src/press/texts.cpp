#include "press/texts.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "press/quoted.h"
#include "words/citation.h"
#include "words/prose_check.h"

namespace backmark::press {

namespace {

void add(Problems& to, const Problems& from) {
  to.insert(to.end(), from.begin(), from.end());
}

}  // namespace

BookTexts read_texts(const std::vector<TextFile>& texts,
                     const model::Show& show,
                     const words::Numbering& numbering,
                     const std::vector<model::Reference>& references) {
  const std::vector<model::Reference> listed = words::in_list_order(references);
  EssayWorld world{show, numbering, listed};
  BookTexts all;
  std::set<std::string> cited;
  for (const TextFile& file : texts) {
    if (!ends_with(file.path, ".md")) {
      continue;
    }
    auto essay = read_essay(file.text, file.path, world);
    if (!essay) {
      all.findings.push_back(essay.problem());
      continue;
    }
    add(all.findings, essay->findings);
    add(all.findings, quoted_without_leave(essay->prose, show));
    cited.insert(essay->cited.begin(), essay->cited.end());
    for (const Block& block : essay->prose.blocks) {
      world.figures += block.kind == Block::Kind::figure ? 1 : 0;
    }
    if (ends_with(file.path, "glossary.md")) {
      all.glossary = std::move(essay->prose);
    } else {
      all.essays.push_back(std::move(essay->prose));
    }
  }
  for (const model::Reference& reference : listed) {
    if (cited.count(reference.key) != 0) {
      all.cited.push_back(reference);
    }
  }
  return all;
}

Problems check_entry_prose(const PressJob& job, const words::Grammar& grammar) {
  Problems all;
  for (const words::Place& place : grammar.numbering().places()) {
    const model::PieceBelief* belief = job.beliefs.of(place.piece->id);
    const std::string prose = grammar.text_of(*place.piece, words::FactKind::prose);
    if (place.pick->in_book && belief != nullptr && !prose.empty()) {
      add(all, words::check_prose(prose, job.show, *belief, job.phrases.of(place.piece->id),
                                  place.piece->number + ", prose"));
    }
  }
  return all;
}

}  // namespace backmark::press
