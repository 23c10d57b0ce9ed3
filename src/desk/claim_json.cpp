#include "desk/claim_json.h"

#include "base/json.h"
#include "desk/looks.h"

namespace backmark::desk {

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
                    {"label", look_label(show, look.character, look.again)},
                    {"moves", look.moves},
                    {"minutes", look.minutes},
                    {"again", look.again},
                    {"answers", answers}});
  }
  return list;
}

}  // namespace backmark::desk
