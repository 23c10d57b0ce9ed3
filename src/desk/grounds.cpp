#include "desk/grounds.h"

#include <algorithm>

#include "desk/fitted.h"

namespace backmark::desk {

namespace {

constexpr std::size_t comparanda_asked = 12;  // some of them are not in the book

}  // namespace

Result<GroundsOf> grounds_wanted(const Surroundings& around,
                                 OpenShow& open,
                                 const model::Beliefs& beliefs,
                                 const std::vector<const press::Output*>& outputs) {
  const bool wanted = std::any_of(outputs.begin(), outputs.end(),
                                  [](const auto* output) { return output->name == "book"; });
  if (!wanted || beliefs.pieces.empty()) {
    return GroundsOf();
  }
  auto fitted = fitted_show(open, around);
  if (!fitted) {
    return fitted.problem();
  }
  return GroundsOf([fit = *std::move(fitted)](model::Id<model::Piece> id) {
    const model::Piece* piece = fit->show->find(id);
    if (piece == nullptr) {
      return press::Grounds();
    }
    const auto row = static_cast<std::size_t>(piece - fit->show->all<model::Piece>().data());
    auto why = fit->reckoning.explain(row, comparanda_asked);
    return press::Grounds{std::move(why.lines), std::move(why.comparanda)};
  });
}

}  // namespace backmark::desk
