#include "desk/claim_json.h"

#include "base/json.h"

namespace backmark::desk {

std::string label_of(const model::Show& show, const model::ClaimLook& look) {
  return (look.again ? "Again: " : "") + show.find(look.character)->label;
}

Json looks_json(const model::Show& show, const model::ClaimTest& test) {
  Json list = Json::array();
  for (const model::ClaimLook& look : test.looks) {
    const model::Piece* piece = show.find(look.piece);
    const model::Character* character = show.find(look.character);
    if (piece == nullptr || character == nullptr) {
      continue;
    }
    Json answers = Json::array();
    for (const model::ClaimAnswer& answer : look.answers) {
      answers.push_back(
          {{"value", answer.value}, {"p", answer.p}, {"p_claim", answer.p_claim}});
    }
    list.push_back({{"number", piece->number},
                    {"part", show.text(look.part)},
                    {"character", character->key},
                    {"label", label_of(show, look)},
                    {"moves", look.moves},
                    {"minutes", look.minutes},
                    {"again", look.again},
                    {"answers", answers}});
  }
  return list;
}

}  // namespace backmark::desk
