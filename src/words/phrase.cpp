#include "words/phrase.h"

#include "base/text.h"
#include "words/maker_phrase.h"
#include "words/year_phrase.h"

namespace backmark::words {
namespace {

using model::Id;
using model::Overruling;
using model::Phrases;
using model::Piece;
using model::PieceBelief;
using model::Show;

// The latest word of the curator on year and maker.
struct Rulings {
  const Overruling* year = nullptr;
  const Overruling* maker = nullptr;
};

std::map<std::int32_t, Rulings> rulings_of(const Show& show) {
  std::map<std::int32_t, Rulings> all;
  for (const Overruling& ruling : show.all<Overruling>()) {
    Rulings& of_piece = all[ruling.piece.value];
    (ruling.of == Overruling::Of::year ? of_piece.year : of_piece.maker) = &ruling;
  }
  return all;
}

Phrases by_table(const Show& show, const PieceBelief& belief, const Phrases* frozen) {
  static const Phrases nothing_frozen;
  const Phrases& old = frozen == nullptr ? nothing_frozen : *frozen;
  const model::YearBelief none;
  const YearPhrase year =
      phrase_year(belief.dated ? belief.year : none, limit_in(belief.limit), old.made);
  const MakerPhrase maker = phrase_maker(show, belief, split(old.maker, "; ").front());
  const std::string others = contributions(show, belief.piece);
  return {.made = year.text,
          .maker = others.empty() ? maker.text : maker.text + "; " + others,
          .place = phrase_place(show, belief.place),
          .made_row = year.row,
          .maker_row = maker.row,
          .initials = {}};
}

void overrule(Phrases& phrases, const Rulings& rulings) {
  if (rulings.year != nullptr) {
    phrases.made = rulings.year->phrase;
    phrases.made_row = 0;
    phrases.initials = rulings.year->initials;
  }
  if (rulings.maker != nullptr) {
    phrases.maker = rulings.maker->phrase;
    phrases.maker_row = 0;
    phrases.initials = rulings.maker->initials;
  }
}

}  // namespace

void PhraseBook::put(Id<Piece> piece, Phrases phrases) {
  phrases_.insert_or_assign(piece.value, std::move(phrases));
}

const Phrases* PhraseBook::find(Id<Piece> piece) const {
  const auto at = phrases_.find(piece.value);
  return at == phrases_.end() ? nullptr : &at->second;
}

const Phrases& PhraseBook::of(Id<Piece> piece) const {
  static const Phrases unreckoned{
      .made = "not dated", .maker = "unrecorded maker", .made_row = 10, .maker_row = 7};
  const Phrases* found = find(piece);
  return found == nullptr ? unreckoned : *found;
}

Phrases phrase_piece(const Show& show, const PieceBelief& belief, const Phrases* frozen) {
  Phrases phrases = by_table(show, belief, frozen);
  Rulings rulings;
  for (const Overruling& ruling : show.all<Overruling>()) {
    if (ruling.piece == belief.piece) {
      (ruling.of == Overruling::Of::year ? rulings.year : rulings.maker) = &ruling;
    }
  }
  overrule(phrases, rulings);
  return phrases;
}

PhraseBook phrase_all(const Show& show,
                      const model::Beliefs& beliefs,
                      const PhraseBook& frozen) {
  const auto rulings = rulings_of(show);
  PhraseBook book;
  for (const Piece& piece : show.all<Piece>()) {
    const PieceBelief* belief = beliefs.of(piece.id);
    Phrases phrases =
        belief == nullptr ? book.of(piece.id) : by_table(show, *belief, frozen.find(piece.id));
    if (const auto at = rulings.find(piece.id.value); at != rulings.end()) {
      overrule(phrases, at->second);
    }
    book.put(piece.id, std::move(phrases));
  }
  return book;
}

std::vector<Overruled> overruled(const Show& show, const model::Beliefs& beliefs) {
  std::vector<Overruled> all;
  for (const Overruling& ruling : show.all<Overruling>()) {
    const PieceBelief* belief = beliefs.of(ruling.piece);
    const Phrases table =
        belief == nullptr ? PhraseBook{}.of(ruling.piece) : by_table(show, *belief, nullptr);
    all.push_back({ruling.piece, ruling.phrase,
                   ruling.of == Overruling::Of::year ? table.made : table.maker, ruling.reason,
                   ruling.initials});
  }
  return all;
}

}  // namespace backmark::words
