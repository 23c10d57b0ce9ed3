#include "evidence/claim_looks.h"

#include <algorithm>
#include <cmath>

#include "evidence/look_candidates.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

using model::ClaimLook;

constexpr std::size_t looks_a_piece = 6;
constexpr double least_rough_bits = 0.005;
constexpr double least_moved = 0.005;

struct RowLook {
  std::size_t row = 0;  // of the table
  LookCandidate look;
};

class ClaimLooker {
 public:
  ClaimLooker(const model::Show& show,
              const Reckoning& reckoning,
              const ClaimOnTable& table,
              const model::AskedClaim& claim)
      : columns_(reckoning.gathered().columns),
        table_(table),
        claim_(claim),
        looks_(show, reckoning) {}

  std::vector<ClaimLook> run(const std::vector<std::size_t>& carriers) const {
    std::vector<RowLook> asked;
    for (const std::size_t row : carriers) {
      add_best(row, asked);
    }
    std::vector<std::optional<ClaimLook>> weighed(asked.size());
    in_shares(asked.size(), 0, [&](std::size_t i) { weighed[i] = weigh(asked[i]); });
    std::vector<ClaimLook> list;
    for (auto& look : weighed) {
      if (look && look->moves >= least_moved) {
        list.push_back(std::move(*look));
      }
    }
    std::stable_sort(list.begin(), list.end(), [](const ClaimLook& a, const ClaimLook& b) {
      return a.moves / a.minutes > b.moves / b.minutes;
    });
    return list;
  }

 private:
  void add_best(std::size_t row, std::vector<RowLook>& into) const {
    std::vector<LookCandidate> all;
    looks_.add_of(table_.rows()[row], table_.beliefs()[row].year.p, least_rough_bits, all);
    std::erase_if(all, [&](const LookCandidate& one) {
      return columns_.ids()[one.column] == claim_.character;
    });
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
      return a.rough / a.minutes > b.rough / b.minutes;
    });
    all.resize(std::min(all.size(), looks_a_piece));
    for (const LookCandidate& one : all) {
      into.push_back({row, one});
    }
  }

  std::optional<ClaimLook> weigh(const RowLook& of) const {
    const model::PieceBelief& now = table_.beliefs()[of.row];
    const auto chance = looks_.chances(of.look, now.year.p);
    if (!chance) {
      return std::nullopt;
    }
    WhatIf unsaid;
    if (claim_.character) {
      unsaid.seen.push_back(
          {.character = claim_.character, .seen = model::Seen::cannot_tell, .values = {}});
    }
    ClaimLook look{.piece = now.piece,
                   .part = columns_.parts()[of.look.column],
                   .character = columns_.ids()[of.look.column],
                   .minutes = of.look.minutes,
                   .again = of.look.again,
                   .answers = {}};
    const auto& answers = looks_.answers(of.look);
    double mean = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      if ((*chance)[v] > 0) {
        const model::PieceBelief then = looks_.judged_with(of.look, answers[v], unsaid);
        look.answers.push_back(
            {answers[v].words, (*chance)[v], table_.if_believed(of.row, then)});
        mean += (*chance)[v] * look.answers.back().p_claim;
      }
    }
    for (const model::ClaimAnswer& answer : look.answers) {
      look.moves += answer.p * std::abs(answer.p_claim - mean);
    }
    std::stable_sort(look.answers.begin(), look.answers.end(),
                     [](const auto& a, const auto& b) { return a.p > b.p; });
    return look;
  }

  const StyleColumns& columns_;
  const ClaimOnTable& table_;
  const model::AskedClaim& claim_;
  LookCandidates looks_;
};

}  // namespace

std::vector<ClaimLook> claim_looks(const model::Show& show,
                                   const Reckoning& reckoning,
                                   const ClaimOnTable& table,
                                   const model::AskedClaim& claim,
                                   const std::vector<std::size_t>& carriers) {
  if (carriers.empty()) {
    return {};  // what looks may show is counted over all pieces, and nobody asks
  }
  return ClaimLooker(show, reckoning, table, claim).run(carriers);
}

}  // namespace backmark::evidence
