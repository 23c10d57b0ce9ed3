// How operations come by a show: one way, the same words for the same trouble.
#pragma once

#include <memory>

#include "desk/operation.h"
#include "model/show.h"
#include "store/store.h"

namespace backmark::desk {

// A show that is open and read. `show` may be shared with other calls of the same door.
struct OpenShow {
  store::Store store;
  std::shared_ptr<const model::Show> kept;
  const model::Show& show;
  Warm* warm = nullptr;  // of the call
};

// With a Warm in the call the show comes from there if it has not moved on. Problems: those of
// store::Store::open and load.
Result<OpenShow> open_show(const Call& call, store::Access access);

// The piece whose number is the argument `name`. Problem: not_found, with the nearest number.
Result<const model::Piece*> find_piece(const model::Show& show, const std::string& number);

// A character by its key or label, in any case of letters; null: there is none.
const model::Character* character_called(const model::Show& show, std::string_view name);

// Applies the change; then gives the answer. Problems: those of store::Store::apply.
Result<Answer> after_change(OpenShow& open,
                            const model::Change& change,
                            const Surroundings& around,
                            Answer answer);

// The parameter every operation on a show begins with.
Parameter show_folder();

}  // namespace backmark::desk
