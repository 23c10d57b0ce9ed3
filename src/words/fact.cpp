#include "words/fact.h"

#include <algorithm>

#include "base/text.h"
#include "words/table.h"

namespace backmark::words {
namespace {

using model::Id;
using model::Piece;
using model::Show;

// "not dated" stands alone only where there is neither year nor place.
std::string place_and_year(const std::string& place, const std::string& year) {
  return place.empty() ? year : place + ", " + year;
}

}  // namespace

Grammar::Grammar(const Show& show, const model::Beliefs& beliefs, const PhraseBook& phrases)
    : show_(show), beliefs_(beliefs), phrases_(phrases), numbering_(show) {
  for (const model::Misfit& misfit : beliefs_.misfits) {
    double& p = misfits_[{misfit.piece.value, misfit.part.value}];
    p = std::max(p, misfit.p);
  }
}

std::vector<Fact> Grammar::facts_of(const Piece& piece, Audience audience, Whose whose) const {
  std::vector<Fact> facts;
  for (int kind = 0; kind <= static_cast<int>(FactKind::prose); ++kind) {
    const auto fact = static_cast<FactKind>(kind);
    if (!may_show(audience, fact, whose)) {
      continue;
    }
    if (std::string text = text_of(piece, fact); !text.empty()) {
      facts.push_back({fact, std::move(text)});
    }
  }
  return facts;
}

std::string Grammar::text_of(const Piece& piece, FactKind kind) const {
  switch (kind) {
    case FactKind::number:
      return numbering_.number_of(piece);
    case FactKind::title:
      return with_curved_quotes(piece.title);
    case FactKind::maker:
      return maker(piece);
    case FactKind::made:
      return made(piece);
    case FactKind::materials:
      return materials_text(show_, piece.id);
    case FactKind::size:
      return sentence(size_text(show_, piece));
    case FactKind::back:
      return back(piece);
    case FactKind::marks:
      return marks_text(show_, piece.id);
    case FactKind::story:
      return story_text(show_, piece.id);
    case FactKind::lender:
      return lender(piece);
    case FactKind::literature:
      return literature_text(show_, piece.id);
    case FactKind::prose:
      return with_curved_quotes(piece.prose);
    default:
      return {};
  }
}

std::string Grammar::initials_of(const Piece& piece, FactKind kind) const {
  const model::Phrases& phrases = phrases_.of(piece.id);
  const bool ours = (kind == FactKind::maker && phrases.maker_row == 0) ||
                    (kind == FactKind::made && phrases.made_row == 0);
  return ours ? phrases.initials : "";
}

std::string Grammar::maker(const Piece& piece) const {
  const std::string initials = initials_of(piece, FactKind::maker);
  const std::string text = sentence(phrases_.of(piece.id).maker);
  return initials.empty() ? text : text + " (" + initials + ")";
}

std::string Grammar::made(const Piece& piece) const {
  const model::Phrases& phrases = phrases_.of(piece.id);
  // An unrecorded maker's phrase names the place already.
  const bool named = phrases.maker_row == 7 && ends_with(phrases.maker, phrases.place);
  std::string text = place_and_year(named ? "" : phrases.place, phrases.made);
  const model::PieceBelief* belief = beliefs_.of(piece.id);
  if (phrases.made_row == 9 && belief != nullptr && !belief->limit.empty()) {
    text += ": " + belief->limit;
  }
  const std::string initials = initials_of(piece, FactKind::made);
  return sentence(initials.empty() ? text : text + " (" + initials + ")");
}

// A part known to be replaced needs no odds; otherwise what the reckoning says of it.
double Grammar::replaced_p(const Piece& piece, const model::Part& part) const {
  if (part.originality != model::Originality::unknown) {
    return part.originality == model::Originality::replaced ? 1 : 0;
  }
  const auto at = misfits_.find({piece.id.value, part.kind.value});
  return at == misfits_.end() ? 0 : at->second;
}

std::string Grammar::back(const Piece& piece) const {
  std::string text = fitting_text(show_, piece.id);
  for (const model::Part& part : show_.parts_of(piece.id)) {
    const std::string kind(show_.text(part.kind));
    if (kind == "ornament" || kind.empty()) {
      continue;
    }
    const double p = replaced_p(piece, part);
    const std::string_view how =
        p >= row_of(replaced_table(), 1).floor   ? " replaced."
        : p >= row_of(replaced_table(), 2).floor ? " probably replaced."
        : p >= row_of(replaced_table(), 3).floor ? " possibly replaced."
                                                 : "";
    if (!how.empty()) {
      text += " " + sentence(kind) + (kind == "tip" ? "s" : "") + std::string(how);
    }
  }
  return text;
}

std::string Grammar::lender(const Piece& piece) const {
  const model::Lender* lender = show_.find(piece.lender);
  if (lender == nullptr) {
    return {};
  }
  return lender->credit.empty() ? "Lent by a private collector"
                                : with_curved_quotes(lender->credit);
}

Fact compare_fact(const std::vector<std::string>& numbers) {
  return {FactKind::compare, numbers.empty() ? "" : "Compare " + join(numbers, ", ")};
}

std::string with_curved_quotes(std::string_view text) {
  std::string curved;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char letter = text[i];
    const bool opens = i == 0 || contains(" \n(-[", text.substr(i - 1, 1));
    if (letter == '\'') {
      curved += opens ? "‘" : "’";
    } else if (letter == '"') {
      curved += opens ? "“" : "”";
    } else {
      curved += letter;
    }
  }
  return curved;
}

std::string sentence(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

}  // namespace backmark::words
