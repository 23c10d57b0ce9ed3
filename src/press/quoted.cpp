#include "press/quoted.h"

#include <set>

#include "base/text.h"
#include "model/answers.h"

namespace backmark::press {

namespace {

void add_keys(std::set<std::string>& keys, const Words& words) {
  for (const Span& span : words) {
    if (span.kind == Span::Kind::citation) {
      keys.insert(span.key);
    }
  }
}

std::set<std::string> quoted_keys(const Prose& prose) {
  std::set<std::string> keys;
  add_keys(keys, prose.epigraph);
  for (const Block& block : prose.blocks) {
    if (block.kind != Block::Kind::quotation) {
      continue;
    }
    add_keys(keys, block.words);
    for (const Span& span : block.words) {
      if (span.kind == Span::Kind::note && span.note >= 0) {
        add_keys(keys, prose.notes[static_cast<std::size_t>(span.note)]);
      }
    }
  }
  return keys;
}

}  // namespace

Problems quoted_without_leave(const Prose& prose, const model::Show& show) {
  const model::Answers answers(show);
  Problems found;
  for (const std::string& key : quoted_keys(prose)) {
    const model::Source* source = show.source(key);
    const auto* answer =
        source == nullptr ? nullptr : answers.on(source->id.value, model::Use::print);
    if (source == nullptr || (answer != nullptr && answer->leave == model::Leave::given)) {
      continue;
    }
    found.push_back(
        {Fault::conflict,
         fmt::format("words of \"{}\" are quoted, and there is no leave to print them", key),
         prose.file,
         fmt::format("ask, then write \"backmark leave SHOW {} print given\"; or put "
                     "it in your own words",
                     key)});
  }
  return found;
}

}  // namespace backmark::press
