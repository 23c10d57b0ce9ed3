#include "press/lent.h"

#include <algorithm>
#include <climits>
#include <map>
#include <tuple>

#include "base/text.h"

namespace backmark::press {

using words::FactKind;

std::string Lent::number() const {
  return place == nullptr || !place->pick->in_show ? "–" : std::to_string(place->number);
}

std::vector<Lent> lent_pieces(const PressJob& job, const words::Grammar& grammar) {
  std::map<std::int32_t, const model::Loan*> last;
  for (const model::Loan& loan : job.show.all<model::Loan>()) {
    const model::Loan*& known = last[loan.piece.value];
    if (known == nullptr || std::tie(known->from, known->id) < std::tie(loan.from, loan.id)) {
      known = &loan;
    }
  }
  std::vector<Lent> all;
  for (const auto& [id, loan] : last) {
    const model::Piece* piece = job.show.find(loan->piece);
    const model::Lender* lender = job.show.find(loan->lender);
    if (piece != nullptr &&
        (job.only.empty() || (lender != nullptr && lender->code == job.only))) {
      all.push_back({piece, loan, lender, grammar.numbering().place_of(piece->id)});
    }
  }
  const auto rank = [](const Lent& lent) {
    const bool shown = lent.place != nullptr && lent.place->pick->in_show;
    return std::tuple(lent.loan->lender.value, shown ? lent.place->number : INT_MAX,
                      lent.piece->id.value);
  };
  std::sort(all.begin(), all.end(),
            [&](const Lent& a, const Lent& b) { return rank(a) < rank(b); });
  return all;
}

std::string lender_text(const PressJob& job, const model::Lender* lender) {
  if (lender == nullptr) {
    return "Own collection";
  }
  return words::may_show(job.audience, FactKind::lender_name, words::Whose::own)
             ? lender->code + " · " + lender->name
             : lender->code;
}

Result<Done> may_print(const PressJob& job, FactKind kind, std::string_view paper) {
  if (!words::may_show(job.audience, kind, words::Whose::own)) {
    std::vector<std::string> allowed;
    for (const words::Audience one : words::all_audiences()) {
      if (words::may_show(one, kind, words::Whose::own)) {
        allowed.emplace_back(words::name_of(one));
      }
    }
    return Problem{Fault::refused,
                   fmt::format("the paper \"{}\" is not for the audience \"{}\"", paper,
                               words::name_of(job.audience)),
                   "--for", "print it for: " + join(allowed, ", ")};
  }
  if (job.audience == words::Audience::lender && job.only.empty()) {
    return Problem{Fault::refused,
                   fmt::format("a lender sees \"{}\" of own pieces only", paper), "--lender",
                   "say which lender: --lender \"Lender 4\""};
  }
  return Done{};
}

Problem no_loans(const PressJob& job, std::string_view paper) {
  return {Fault::not_found,
          job.only.empty() ? "no loan is on record"
                           : fmt::format("no loan of \"{}\" is on record", job.only),
          std::string(paper), "record the loans of the pieces first"};
}

}  // namespace backmark::press
