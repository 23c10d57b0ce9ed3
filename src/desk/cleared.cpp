#include "desk/cleared.h"

#include <set>

#include "base/json.h"
#include "base/text.h"
#include "care/rights.h"

namespace backmark::desk {

namespace {

using model::Id;
using model::Piece;
using model::Show;

template <class T>
void without(Show& show, const std::set<Id<Piece>>& gone) {
  std::erase_if(show.all<T>(), [&](const T& row) { return gone.contains(row.piece); });
}

void empty_pieces(Show& show, const std::set<Id<Piece>>& gone) {
  without<model::Pick>(show, gone);
  without<model::Photograph>(show, gone);
  without<model::Observation>(show, gone);
  without<model::Mark>(show, gone);
  without<model::Note>(show, gone);
  without<model::Event>(show, gone);
  without<model::Condition>(show, gone);
  std::erase_if(show.all<model::Claim>(), [&](const model::Claim& claim) {
    return claim.about == model::About::piece && gone.contains({claim.subject});
  });
  for (Piece& piece : show.all<Piece>()) {
    if (gone.contains(piece.id)) {
      piece.title = "withheld";
      piece.prose.clear();
    }
  }
}

bool may_leave(const care::Rights& rights,
               const Piece& piece,
               const model::Photograph& photograph,
               bool published) {
  return published ? rights.may(photograph, model::Use::print)
                   : !rights.gate(piece) || rights.may(photograph, model::Use::print);
}

void hold_pictures(Cleared& out, const Show& show, const care::Rights& rights, bool published) {
  std::set<std::string> unseen;
  auto& photographs = out.show.all<model::Photograph>();
  std::erase_if(photographs, [&](const model::Photograph& photograph) {
    const Piece& piece = *show.find(photograph.piece);
    if (may_leave(rights, piece, photograph, published)) {
      return false;
    }
    unseen.insert(piece.number);
    return true;
  });
  if (published) {
    for (model::Photograph& photograph : photographs) {
      photograph.credit = rights.credit(photograph, model::Use::print);
    }
  }
  out.unseen.assign(unseen.begin(), unseen.end());
}

}  // namespace

bool is_published(words::Audience audience) {
  using words::Audience;
  return audience == Audience::public_ || audience == Audience::designer ||
         audience == Audience::printer;
}

Cleared cleared(const Show& show, bool published) {
  const care::Rights rights(show);
  Cleared out;
  out.show = show;
  std::set<Id<Piece>> gone;
  for (const Piece& piece : show.all<Piece>()) {
    if (rights.withheld(piece)) {
      gone.insert(piece.id);
      out.withheld.push_back(piece.number);
    }
  }
  hold_pictures(out, show, rights, published);
  empty_pieces(out.show, gone);
  out.show.settle();
  return out;
}

std::set<Id<model::Photograph>> hidden_pictures(const Show& show) {
  const care::Rights rights(show);
  std::set<Id<model::Photograph>> hidden;
  for (const model::Photograph& photograph : show.all<model::Photograph>()) {
    const Piece& piece = *show.find(photograph.piece);
    if (rights.gate(piece) && !rights.may(piece, model::Use::photograph)) {
      hidden.insert(photograph.id);
    }
  }
  return hidden;
}

void leave_out(Cleared& cleared) {
  const std::set<std::string> held(cleared.withheld.begin(), cleared.withheld.end());
  std::erase_if(cleared.show.all<Piece>(),
                [&](const Piece& piece) { return held.contains(piece.number); });
  cleared.show.settle();
}

std::string withheld_line(const Cleared& cleared) {
  std::string text;
  if (!cleared.withheld.empty()) {
    text += fmt::format("{} pieces are withheld until their communities answer: {}.\n",
                        cleared.withheld.size(), shortened(join(cleared.withheld, ", "), 60));
  }
  if (cleared.unseen.size() > cleared.withheld.size()) {
    text += fmt::format(
        "Pictures of {} pieces stay behind for want of leave; see \"backmark leave "
        "SHOW\".\n",
        cleared.unseen.size());
  }
  return text;
}

Json withheld_json(const Cleared& cleared) {
  return {{"pieces", cleared.withheld}, {"pictures", cleared.unseen}};
}

}  // namespace backmark::desk
