#include "words/audience.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <string>

namespace backmark::words {
namespace {

using enum FactKind;

// A set of kinds as bits.
constexpr unsigned bit(FactKind kind) {
  return 1U << static_cast<unsigned>(kind);
}
constexpr unsigned set_of(std::initializer_list<FactKind> kinds) {
  unsigned bits = 0;
  for (const FactKind kind : kinds) {
    bits |= bit(kind);
  }
  return bits;
}

constexpr unsigned words_and_sizes = set_of({number, title, maker, made, materials, size, back,
                                             marks, story, compare, literature, prose});
constexpr unsigned everything = (1U << fact_kinds) - 1U;

struct Row {
  Audience audience;
  std::string_view name;
  std::string_view heading;
  unsigned allowed;
  unsigned allowed_of_own;  // for a lender's own pieces
};

constexpr unsigned for_public = words_and_sizes | set_of({lender, lender_code, care_wording});

constexpr std::array<Row, 8> rows{{
    {Audience::public_, "public", "Public", for_public, 0},
    {Audience::designer, "designer", "For designer and case maker",
     words_and_sizes | set_of({lender, handling}), 0},
    {Audience::printer, "printer", "For the printer", for_public, 0},
    {Audience::lender, "lender", "For the lender", set_of({number, title}),
     words_and_sizes | set_of({lender, lender_code, lender_name, address, value, condition,
                               condition_summary, handling, care, care_wording, loan})},
    {Audience::registrar, "registrar", "For the registrar", everything & ~bit(delivery), 0},
    {Audience::courier, "courier", "For courier and packer",
     set_of({number, title, lender_code, delivery, handling}), 0},
    {Audience::insurer, "insurer", "For the insurer",
     words_and_sizes | set_of({lender_code, value, condition_summary, loan}), 0},
    {Audience::curator, "curator", "For the curator only", everything, 0},
}};

const Row& row_of(Audience audience) {
  return rows[static_cast<std::size_t>(audience)];
}

}  // namespace

bool may_show(Audience audience, FactKind kind, Whose whose) {
  const Row& row = row_of(audience);
  const bool own = whose == Whose::own && row.allowed_of_own != 0;
  return ((own ? row.allowed_of_own : row.allowed) & bit(kind)) != 0;
}

std::string_view heading(Audience audience) {
  return row_of(audience).heading;
}

std::string_view name_of(Audience audience) {
  return row_of(audience).name;
}

std::optional<Audience> audience_named(std::string_view name) {
  const auto at = std::find_if(rows.begin(), rows.end(),
                               [name](const Row& row) { return row.name == name; });
  return at == rows.end() ? std::nullopt : std::optional(at->audience);
}

const std::vector<Audience>& all_audiences() {
  static const std::vector<Audience> all{
      Audience::public_,   Audience::designer, Audience::printer, Audience::lender,
      Audience::registrar, Audience::courier,  Audience::insurer, Audience::curator};
  return all;
}

}  // namespace backmark::words
