#include "desk/open.h"

#include "base/text.h"
#include "desk/warm.h"

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
  store->expect({.seen = call.seen, .once = call.once});
  if (call.warm != nullptr) {
    auto shared = call.warm->show(*store, access);
    if (!shared) {
      return shared.problem();
    }
    store->tell([warm = call.warm, before = *shared](const model::Change& change) {
      warm->applied(*before, change);
    });
    return OpenShow{std::move(*store), *shared, **shared, call.warm};
  }
  auto show = store->load();
  if (!show) {
    return show.problem();
  }
  const auto kept = std::make_shared<const model::Show>(std::move(*show));
  return OpenShow{std::move(*store), kept, *kept, nullptr};
}

namespace {

// "12" means "ES 012" where no other number ends in 12; else the number written most like it.
std::optional<std::string> meant_number(const model::Show& show, const std::string& number) {
  const auto ending = [](std::string_view text) {
    const auto digits = text.find_last_not_of("0123456789") + 1;  // npos + 1 is 0
    const auto first = text.find_first_not_of('0', digits);
    return first == std::string_view::npos ? std::string_view() : text.substr(first);
  };
  std::vector<std::string> all;
  std::vector<std::string> alike;
  for (const model::Piece& piece : show.all<model::Piece>()) {
    all.push_back(piece.number);
    if (!ending(number).empty() && ending(piece.number) == ending(number)) {
      alike.push_back(piece.number);
    }
  }
  return alike.size() == 1 ? alike.front() : closest(number, all);
}

}  // namespace

Result<const model::Piece*> find_piece(const model::Show& show, const std::string& number) {
  if (const model::Piece* piece = show.piece(number)) {
    return piece;
  }
  const auto near = meant_number(show, number);
  return Problem{Fault::not_found, fmt::format("there is no piece \"{}\" in this show", number),
                 "",
                 near ? fmt::format("did you mean \"{}\"?", *near)
                      : "see \"backmark list SHOW\" for the numbers"};
}

const model::Character* character_called(const model::Show& show, std::string_view name) {
  const std::string wanted = lower_ascii(trim(name));
  for (const model::Character& one : show.all<model::Character>()) {
    if (lower_ascii(one.key) == wanted || lower_ascii(one.label) == wanted) {
      return &one;
    }
  }
  return nullptr;
}

Result<Answer> after_change(OpenShow& open,
                            const model::Change& change,
                            const Surroundings& around,
                            Answer answer) {
  if (auto done = open.store.apply(change, around.who, around.now); !done) {
    return done.problem();
  }
  return answer;
}

}  // namespace backmark::desk
