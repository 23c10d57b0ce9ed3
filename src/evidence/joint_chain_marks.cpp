// Steps of the chain for marks in order: first all changes of a lineage at once given the years
// of its pieces, then each change and the overlap with those years summed out. Without the
// second the changes would follow the years and the years the changes, by a year or so a round:
// the more pieces, the slower.

#include <utility>

#include "evidence/joint_chain.h"
#include "evidence/lineage_undated.h"

namespace backmark::evidence {

bool JointChain::mark_is_stray(const JointMark& mark, int year) {
  if (settings_.mark_stray <= 0) {
    return false;
  }
  const auto& curves = shared_.variant[static_cast<Index>(mark.lineage)];
  const double stray = settings_.mark_stray / static_cast<double>(curves.size());
  const double all = curves[static_cast<Index>(mark.variant)][static_cast<Index>(year)];
  return random_.chance(stray / all);
}

void JointChain::redraw_changes(Index lineage) {
  VariantCounts counts(static_cast<Index>(show_.lineages[lineage].variants),
                       std::vector<int>(static_cast<Index>(layout_.years), 0));
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    const int year = state_.piece[i].year;
    for (const JointMark& mark : show_.pieces[i].marks) {
      if (show_.pieces[i].teaches && mark.lineage == static_cast<int>(lineage) &&
          !mark_is_stray(mark, year)) {
        ++counts[static_cast<Index>(mark.variant)][static_cast<Index>(year)];
      }
    }
  }
  state_.lineage[lineage] = draw_lineage(counts, settings_.mark_overlap, random_);
  rebuild_variant(lineage);
}

// What the piece says of its year apart from the marks of one lineage, within its maker's span.
std::vector<double> JointChain::year_beside(Index piece, Index lineage) const {
  std::vector<double> like = year_likelihood(piece, static_cast<int>(lineage));
  const auto m = static_cast<Index>(state_.piece[piece].maker);
  for (Index t = 0; t < like.size(); ++t) {
    const int year = static_cast<int>(t);
    like[t] *=
        m == 0 ? state_.density[t] : (state_.start[m] <= year && year <= state_.end[m] ? 1 : 0);
  }
  return like;
}

void JointChain::redraw_changes_undated(Index lineage) {
  UndatedMarks marks(layout_.years, show_.lineages[lineage].variants, settings_.mark_stray);
  std::vector<std::pair<Index, Index>> places;  // piece, its place among the marks
  for (Index i = 0; i < show_.pieces.size(); ++i) {
    std::vector<int> variants;
    for (const JointMark& mark : show_.pieces[i].marks) {
      if (show_.pieces[i].teaches && mark.lineage == static_cast<int>(lineage)) {
        variants.push_back(mark.variant);
      }
    }
    if (variants.size() == 1) {
      places.emplace_back(i, marks.add(variants.front(), year_beside(i, lineage)));
      continue;
    }
    // Several marks of one lineage hang together by the piece's year: it stands meanwhile.
    std::vector<double> only(static_cast<Index>(layout_.years), 0);
    only[static_cast<Index>(state_.piece[i].year)] = 1;
    for (const int variant : variants) {
      marks.add(variant, only);
    }
  }
  marks.redraw(state_.lineage[lineage], settings_.mark_overlap, random_);
  rebuild_variant(lineage);
  for (const auto& [piece, place] : places) {
    state_.piece[piece].year = marks.draw_year(place, shared_.variant[lineage], random_);
  }
}

void JointChain::redraw_lineages() {
  for (Index lineage = 0; lineage < show_.lineages.size(); ++lineage) {
    redraw_changes(lineage);
    redraw_changes_undated(lineage);
  }
}

}  // namespace backmark::evidence
