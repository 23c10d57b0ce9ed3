// What may be done with a piece or a picture, by the answers that were logged. No answer means
// no. What may be a cultural item is gated: neither examined, photographed, shown nor printed
// before its community has answered.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>

#include "model/answers.h"

namespace backmark::care {

class Rights {
 public:
  explicit Rights(const model::Show& show);

  // The latest answer about a record (of a piece, photograph, maker or source); null: nobody
  // was asked, or it was not logged.
  const model::Permission* answer(std::int32_t subject, model::Use use) const;
  bool given(std::int32_t subject, model::Use use) const;

  // Why a piece is gated; none: it is not. By a word of its record with a rule of the table of
  // restrictions that touches print, or because its community was asked (an answer about
  // examining or photographing is on record).
  std::optional<std::string> gate(const model::Piece& piece) const;

  // Examining and photographing need leave of gated pieces only; showing, printing and the web
  // of every piece.
  bool may(const model::Piece& piece, model::Use use) const;
  // Of a gated piece without leave to print nothing is printed, for whomever.
  bool withheld(const model::Piece& piece) const;
  // A picture follows its piece, unless it has an answer of its own. One of a gated piece that
  // may not be photographed is not looked at either.
  bool may(const model::Photograph& photograph, model::Use use) const;
  // What must stand beside the picture: the credit of the picture, of its leave, of the
  // piece's.
  std::string credit(const model::Photograph& photograph, model::Use use) const;

 private:
  const model::Show& show_;
  model::Answers answers_;
  std::map<model::Id<model::Piece>, std::string> gates_;
};

}  // namespace backmark::care
