#include "evidence/claims_on_file.h"

#include <set>

#include "base/text.h"
#include "evidence/claim_words.h"

namespace backmark::evidence {

namespace {

using model::Claim;
using model::Show;

std::string first_as(const Show& show, const Claim& claim) {
  const auto year = claim.from ? claim.from : claim.to;
  if (!year) {
    return "";
  }
  const model::Maker* maker = show.find(claim.maker);
  return fmt::format("{}{}first made in {}{}", show.text(claim.word), claim.word ? " " : "",
                     year->value, maker == nullptr ? "" : " by " + maker->name);
}

}  // namespace

std::string asked_as(const Show& show, const Claim& claim) {
  const model::Character* character = show.find(claim.character);
  const std::string value = character == nullptr || !claim.word
                                ? ""
                                : fmt::format("{}={}", character->key, show.text(claim.word));
  const model::Maker* maker = show.find(claim.maker);
  switch (claim.says) {
    case model::Says::first:
      return first_as(show, claim);
    case model::Says::used:
      return value.empty() || !claim.from
                 ? ""
                 : fmt::format("{} was not used before {}", value, claim.from->value);
    case model::Says::design_of:
      return value.empty() || maker == nullptr
                 ? ""
                 : fmt::format("design {} is {}'s", value, maker->name);
    default:
      return "";
  }
}

std::vector<ClaimOnFile> claims_on_file(const Show& show) {
  std::vector<ClaimOnFile> list;
  std::set<std::string> met;
  for (const Claim& row : show.all<Claim>()) {
    std::string ask = asked_as(show, row);
    if (ask.empty() || !met.insert(ask).second) {
      continue;
    }
    if (auto claim = read_claim(show, ask)) {
      auto voices = voices_on(show, *claim);
      auto heard = counted(voices);
      list.push_back({std::move(ask), *std::move(claim), std::move(voices), std::move(heard)});
    }
  }
  return list;
}

}  // namespace backmark::evidence
