// Who may see what. A paper for an audience is built from the allowed set, never by blacking
// out.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace backmark::words {

enum class Audience {
  public_,
  designer,
  printer,
  lender,
  registrar,
  courier,
  insurer,
  curator
};

// Kinds of fact, in the order of the entry grammar; after prose those that only working sheets
// carry.
enum class FactKind {
  number,
  title,
  maker,
  made,  // place and year
  materials,
  size,
  back,  // back and fitting, replaced parts
  marks,
  story,   // chain of owners
  lender,  // the credit as signed, or "Lent by a private collector"
  compare,
  literature,
  prose,
  odds,         // chances and conflicts in figures
  lender_code,  // "Lender 14"
  lender_name,  // whoever the lender is, signed or not
  address,      // the lender's address
  delivery,     // where to bring it
  value,
  condition,
  condition_summary,
  handling,      // how to touch it
  care,          // restricted materials and care questions, with the answers
  care_wording,  // the words agreed for the public
  loan,          // days and conditions of a loan, who insures it, whether its paper is signed
  tray,          // where a piece lies in store
};
inline constexpr int fact_kinds = static_cast<int>(FactKind::tray) + 1;

// Of one's own pieces a lender sees more than of others'.
enum class Whose { others, own };

// Whether a fact may stand on a paper for the audience. `whose` matters to lenders only.
bool may_show(Audience audience, FactKind kind, Whose whose = Whose::others);

// "Public", "For the label printer" ...: the word at the head of the sheet.
std::string_view heading(Audience audience);
// "public", "designer" ...: as commands and file names have it.
std::string_view name_of(Audience audience);
std::optional<Audience> audience_named(std::string_view name);
const std::vector<Audience>& all_audiences();

}  // namespace backmark::words
