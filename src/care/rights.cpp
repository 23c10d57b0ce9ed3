#include "care/rights.h"

#include <algorithm>

#include "base/text.h"
#include "reference/restriction.h"

namespace backmark::care {

namespace {

using model::Leave;
using model::Permission;
using model::Piece;
using model::Show;
using model::Use;

bool touches_print(const reference::RestrictedWord& word) {
  return std::any_of(word.rules.begin(), word.rules.end(), [](const auto* rule) {
    return std::find(rule->routes.begin(), rule->routes.end(), "print") != rule->routes.end();
  });
}

// Words of the vocabulary are few: each is looked up once.
class Cultural {
 public:
  explicit Cultural(const Show& show) : show_(show) {}
  bool is(model::Word value) {
    const auto [at, is_new] = known_.try_emplace(value, false);
    if (is_new) {
      const auto* word = reference::restricted_word(lower_ascii(show_.text(value)));
      at->second = word != nullptr && touches_print(*word);
    }
    return at->second;
  }

 private:
  const Show& show_;
  std::map<model::Word, bool> known_;
};

}  // namespace

Rights::Rights(const Show& show) : show_(show), answers_(show) {
  for (const auto& [about, answer] : answers_.all()) {
    if (about.second == Use::examine || about.second == Use::photograph) {
      gates_[{about.first}] = "its community was asked";
    }
  }
  Cultural cultural(show);
  for (const model::Observation& seen : show.all<model::Observation>()) {
    if (seen.seen == model::Seen::value && seen.value && cultural.is(seen.value)) {
      gates_[seen.piece] =
          fmt::format("\"{}\" may be of a cultural item", show.text(seen.value));
    }
  }
}

const Permission* Rights::answer(std::int32_t subject, Use use) const {
  return answers_.on(subject, use);
}

bool Rights::given(std::int32_t subject, Use use) const {
  const Permission* held = answer(subject, use);
  return held != nullptr && held->leave == Leave::given;
}

std::optional<std::string> Rights::gate(const Piece& piece) const {
  const auto at = gates_.find(piece.id);
  return at == gates_.end() ? std::nullopt : std::optional(at->second);
}

bool Rights::may(const Piece& piece, Use use) const {
  const bool needs = use == Use::show || use == Use::print || use == Use::web || gate(piece);
  return !needs || given(piece.id.value, use);
}

bool Rights::withheld(const Piece& piece) const {
  return gate(piece) && !given(piece.id.value, Use::print);
}

bool Rights::may(const model::Photograph& photograph, Use use) const {
  const Piece& piece = *show_.find(photograph.piece);
  if (gate(piece) && !(given(piece.id.value, Use::photograph) && given(piece.id.value, use))) {
    return false;
  }
  const Permission* own = answer(photograph.id.value, use);
  return own != nullptr ? own->leave == Leave::given : may(piece, use);
}

std::string Rights::credit(const model::Photograph& photograph, Use use) const {
  std::vector<std::string> parts;
  const auto add = [&](const std::string& text) {
    if (!text.empty() && std::find(parts.begin(), parts.end(), text) == parts.end()) {
      parts.push_back(text);
    }
  };
  add(photograph.credit);
  for (const std::int32_t subject : {photograph.id.value, photograph.piece.value}) {
    if (const Permission* held = answer(subject, use)) {
      add(held->credit);
    }
  }
  return join(parts, "; ");
}

}  // namespace backmark::care
