// How operations come by a show: one way, the same words for the same trouble.
#pragma once

#include "desk/operation.h"
#include "model/show.h"
#include "store/store.h"

namespace backmark::desk {

// A show that is open and read.
struct OpenShow {
  store::Store store;
  model::Show show;
};

// Problems: those of store::Store::open and load.
Result<OpenShow> open_show(const Call& call, store::Access access);

// The piece whose number is the argument `name`. Problem: not_found, with the nearest number.
Result<const model::Piece*> find_piece(const model::Show& show, const std::string& number);

// The parameter every operation on a show begins with.
Parameter show_folder();

}  // namespace backmark::desk
