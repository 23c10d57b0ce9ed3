#include "press/essay_check.h"

#include <set>

#include "base/text.h"
#include "words/prose_check.h"

namespace backmark::press {

namespace {

struct Named {
  std::size_t at;  // in the plain text
  std::string piece;
};

void check_words(const PressJob& job,
                 const Words& words,
                 const std::string& where,
                 Problems& found) {
  std::string text;
  std::vector<Named> named;
  for (const Span& span : words) {
    if (span.kind == Span::Kind::piece) {
      named.push_back({text.size(), span.key});
    }
    text += span.text;
  }
  std::size_t from = 0;
  for (const std::string& sentence : words::sentences(text)) {
    const std::size_t at = text.find(sentence, from);
    from = at + sentence.size();
    std::set<std::string> pieces;
    for (const Named& one : named) {
      if (one.at >= at && one.at < from) {
        pieces.insert(one.piece);
      }
    }
    const model::Piece* piece = pieces.size() == 1 ? job.show.piece(*pieces.begin()) : nullptr;
    const model::PieceBelief* belief = piece == nullptr ? nullptr : job.beliefs.of(piece->id);
    if (belief != nullptr) {
      const Problems more =
          words::check_prose(sentence, job.show, *belief, job.phrases.of(piece->id),
                             where + ", of " + piece->number);
      found.insert(found.end(), more.begin(), more.end());
    }
  }
}

}  // namespace

Problems check_essay(const PressJob& job, const Prose& essay) {
  Problems found;
  for (const Block& block : essay.blocks) {
    check_words(job, block.words, block.where, found);
  }
  for (std::size_t at = 0; at < essay.notes.size(); ++at) {
    check_words(job, essay.notes[at], fmt::format("{}, note {}", essay.file, at + 1), found);
  }
  return found;
}

}  // namespace backmark::press
