#include "desk/open.h"

#include "base/text.h"

namespace backmark::desk {

Parameter show_folder() {
  return {.name = "show",
          .takes = Takes::folder,
          .help = "the folder of the show",
          .positional = true,
          .required = true};
}

Result<OpenShow> open_show(const Call& call, store::Access access) {
  auto store = store::Store::open(call.path("show"), access);
  if (!store) {
    return store.problem();
  }
  auto show = store->load();
  if (!show) {
    return show.problem();
  }
  return OpenShow{std::move(*store), std::move(*show)};
}

Result<const model::Piece*> find_piece(const model::Show& show, const std::string& number) {
  if (const model::Piece* piece = show.piece(number)) {
    return piece;
  }
  std::vector<std::string> numbers;
  for (const model::Piece& piece : show.all<model::Piece>()) {
    numbers.push_back(piece.number);
  }
  const auto near = closest(number, numbers);
  return Problem{Fault::not_found, fmt::format("there is no piece \"{}\" in this show", number),
                 "",
                 near ? fmt::format("did you mean \"{}\"?", *near)
                      : "see \"backmark list SHOW\" for the numbers"};
}

}  // namespace backmark::desk
