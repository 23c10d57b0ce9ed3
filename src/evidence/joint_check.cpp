#include "evidence/joint_check.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::evidence {
namespace {

Problem bad(std::string what, std::string where, std::string fix) {
  return {Fault::bad_input, std::move(what), std::move(where), std::move(fix)};
}

bool usable(const std::vector<double>& weight, std::size_t size) {
  return weight.empty() ||
         (weight.size() == size &&
          std::all_of(weight.begin(), weight.end(),
                      [](double w) { return w >= 0 && w < 1e300; }) &&
          std::any_of(weight.begin(), weight.end(), [](double w) { return w > 0; }));
}

std::optional<Problem> check_piece(const JointShow& show, std::size_t index) {
  const JointPiece& piece = show.pieces[index];
  const std::string where = fmt::format("piece {}", index + 1);
  if (piece.values.size() != show.characters.size()) {
    return bad("the piece has another number of characters than the show", where,
               "give one value a character, -1 if not recorded");
  }
  for (std::size_t c = 0; c < piece.values.size(); ++c) {
    if (piece.values[c] >= show.characters[c].values) {
      return bad(fmt::format("value {} of character {} does not exist", piece.values[c], c + 1),
                 where, "use a value of its vocabulary");
    }
  }
  if (piece.maker > static_cast<int>(show.makers.size())) {
    return bad(fmt::format("maker {} is not on the list", piece.maker), where,
               "add the maker first");
  }
  if (piece.named && piece.maker < 1) {
    return bad("the piece bears a name but no listed maker", where, "say whose name it is");
  }
  if (!usable(piece.year_weight, static_cast<std::size_t>(show.years.length()))) {
    return bad("what is said of the year leaves no year possible", where,
               "give one of the statements less certainty");
  }
  if (!usable(piece.maker_weight, show.makers.size() + 1)) {
    return bad("what is said of the maker leaves no maker possible", where,
               "give one of the statements less certainty");
  }
  for (const JointMark& mark : piece.marks) {
    if (mark.lineage < 0 || mark.lineage >= static_cast<int>(show.lineages.size()) ||
        mark.variant < 0 ||
        mark.variant >= show.lineages[static_cast<std::size_t>(mark.lineage)].variants) {
      return bad("the mark's variant is not of its lineage", where,
                 "use a variant of the lineage");
    }
  }
  const auto years = static_cast<std::size_t>(show.years.length());
  for (const JointDoubt& doubt : piece.doubts) {
    if (doubt.kind < 0 || doubt.kind >= static_cast<int>(show.doubts.size()) ||
        doubt.holds.size() != years || !usable(doubt.holds, years) ||
        !usable(doubt.fails, years)) {
      return bad("a doubt on the piece is of no known kind or leaves no year possible", where,
                 "give one weight a year and a kind of the show");
    }
  }
  return std::nullopt;
}

// Pieces sure to be a maker's must fit one working life.
std::optional<Problem> check_lives(const JointShow& show) {
  const int years = show.years.length();
  std::vector<int> must_start(show.makers.size(), years - 1);
  std::vector<int> must_end(show.makers.size(), 0);
  for (const JointPiece& piece : show.pieces) {
    if (piece.maker < 1 || piece.year_weight.empty()) {
      continue;
    }
    const auto possible = [](double w) { return w > 0; };
    const auto& weight = piece.year_weight;
    const int first =
        static_cast<int>(std::find_if(weight.begin(), weight.end(), possible) - weight.begin());
    const int last = years - 1 -
                     static_cast<int>(std::find_if(weight.rbegin(), weight.rend(), possible) -
                                      weight.rbegin());
    const auto m = static_cast<std::size_t>(piece.maker) - 1;
    must_start[m] = std::min(must_start[m], last);
    must_end[m] = std::max(must_end[m], first);
  }
  for (std::size_t m = 0; m < show.makers.size(); ++m) {
    const SpanTable table(show.makers[m].span, show.years);
    const auto& known = show.makers[m].known_span;
    const bool outside = known && (must_start[m] < known->first || must_end[m] > known->second);
    if (outside || must_end[m] - must_start[m] + 1 > table.longest()) {
      return bad(
          fmt::format("the maker's dated pieces are {} years apart, more than a working life",
                      must_end[m] - must_start[m]),
          fmt::format("maker {}", m + 1),
          "give one of the dates or attributions less certainty, or a longer span");
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Problem> check_joint_show(const JointShow& show, const JointSettings& settings) {
  for (std::size_t c = 0; c < show.characters.size(); ++c) {
    const JointCharacter& character = show.characters[c];
    if (character.values < 2 || character.component < 0 ||
        character.component >= show.components) {
      return bad("a character needs two values and a component of the show",
                 fmt::format("character {}", c + 1), "leave the character out");
    }
  }
  if (!settings.replaced.empty() &&
      settings.replaced.size() != static_cast<std::size_t>(show.components)) {
    return bad("shares of replaced parts are not one a component", "settings",
               "give one for each component, or none");
  }
  for (std::size_t i = 0; i < show.pieces.size(); ++i) {
    if (auto problem = check_piece(show, i)) {
      return problem;
    }
  }
  return check_lives(show);
}

}  // namespace backmark::evidence
