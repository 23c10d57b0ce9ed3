// The entry grammar: what is said of a piece, in one order and one wording, for book, label,
// checklist and web alike.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/belief.h"
#include "model/show.h"
#include "words/audience.h"
#include "words/numbering.h"
#include "words/phrase.h"

namespace backmark::words {

// One fact; a paragraph of its own wherever it is printed. Measures have U+00A0 before the unit
// and round the sign U+00D7.
struct Fact {
  FactKind kind = FactKind::number;
  std::string text;

  friend bool operator==(const Fact&, const Fact&) = default;
};

// Speaks of the pieces of one show. The show, beliefs and phrases must outlive it.
class Grammar {
 public:
  Grammar(const model::Show& show, const model::Beliefs& beliefs, const PhraseBook& phrases);

  // Number, title, maker, place and year, materials, size, back, marks, story, lender,
  // literature and prose, as far as the audience may see them and there is something to say.
  // Left out when missing, except back and marks: "Back not looked at." Comparisons are the
  // caller's (compare_fact), since the reckoning chooses them.
  std::vector<Fact> facts_of(const model::Piece& piece,
                             Audience audience,
                             Whose whose = Whose::others) const;

  // One fact whoever asks; empty when there is nothing to say. Use facts_of for papers.
  std::string text_of(const model::Piece& piece, FactKind kind) const;

  const Numbering& numbering() const { return numbering_; }
  const model::Show& show() const { return show_; }
  const model::Phrases& phrases_of(model::Id<model::Piece> piece) const {
    return phrases_.of(piece);
  }
  // The curator's initials if the maker or the year is the curator's own phrase; else empty.
  std::string initials_of(const model::Piece& piece, FactKind kind) const;

 private:
  std::string maker(const model::Piece& piece) const;
  std::string made(const model::Piece& piece) const;
  std::string back(const model::Piece& piece) const;
  std::string lender(const model::Piece& piece) const;
  double replaced_p(const model::Piece& piece, const model::Part& part) const;

  const model::Show& show_;
  const model::Beliefs& beliefs_;
  const PhraseBook& phrases_;
  Numbering numbering_;
  std::map<std::pair<std::int32_t, std::uint32_t>, double> misfits_;  // piece, part: chance
};

// "Compare 52, 58".
Fact compare_fact(const std::vector<std::string>& numbers);

// --- the wording of single facts, from the observations
std::string materials_text(const model::Show& show, model::Id<model::Piece> piece);
// "moon over water", "casting, engraving": what is shown, and how it was made.
std::string subject_text(const model::Show& show, model::Id<model::Piece> piece);
std::string technique_text(const model::Show& show, model::Id<model::Piece> piece);
std::string size_text(const model::Show& show, const model::Piece& piece);
// Grams with cord if they are known so, else without.
std::optional<double> mass_of(const model::Show& show, model::Id<model::Piece> piece);
std::string fitting_text(const model::Show& show, model::Id<model::Piece> piece);
std::string marks_text(const model::Show& show, model::Id<model::Piece> piece);
std::string story_text(const model::Show& show, model::Id<model::Piece> piece);
std::string literature_text(const model::Show& show, model::Id<model::Piece> piece);

// A measure without needless decimals: none from 10, one below.
std::string measure_text(double value);
// Straight quotation marks and apostrophes become the curved ones.
std::string with_curved_quotes(std::string_view text);
// The first letter a capital, if it is an ASCII letter.
std::string sentence(std::string text);

}  // namespace backmark::words
