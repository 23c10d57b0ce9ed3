// The pieces that a claim is about, each judged without what the claim is about, and what they
// and the sources make of it together. claim_test.h says how.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "evidence/claim_voices.h"
#include "evidence/reckon.h"
#include "evidence/together.h"

namespace backmark::evidence {

class ClaimOnTable {
 public:
  // All of them must outlive it.
  ClaimOnTable(const model::Show& show,
               const Reckoning& reckoning,
               const model::AskedClaim& claim,
               std::uint64_t seed);

  // Pieces in play, by their place in Show::all<Piece>(); what follows has one entry a row.
  const std::vector<std::size_t>& rows() const { return rows_; }
  const std::vector<model::PieceBelief>& beliefs() const { return beliefs_; }
  // The chance that the piece speaks against the claim; 0 for a design, where the race says it.
  const std::vector<double>& against() const { return against_; }
  const std::vector<Voice>& voices() const { return voices_; }
  // How much a piece has to say: `against`, or the chance to be the oldest.
  std::vector<double> loudness() const;

  // The claim from pieces alone, were this their chance to speak against it.
  double from_pieces(const std::vector<double>& against,
                     double leaning,
                     std::optional<std::size_t> without = std::nullopt) const;
  // With the sources, given what the pieces say.
  double with_voices(double p_pieces, const std::vector<Voice>& voices) const;
  // The claim, from pieces and sources, were row r believed to be so. Safe from several
  // threads.
  double if_believed(std::size_t r, const model::PieceBelief& then) const;

 private:
  bool shows_value(const model::Piece& piece) const;
  void choose_pieces();
  void judge_pieces();
  void hear_others();
  double speaks_against(std::size_t r, const model::PieceBelief& belief) const;
  std::vector<Racer> racers(std::optional<std::size_t> without) const;
  double race(const std::vector<Racer>& racers, double leaning) const;
  // By another hand than the maker's, and older than the year: a chance.
  double older_by_others(const model::PieceBelief& belief,
                         model::Id<model::Maker> maker,
                         Year year) const;

  const model::Show& show_;
  const Reckoning& reckoning_;
  const model::AskedClaim& claim_;
  std::uint64_t seed_;
  OddsMap map_;
  std::vector<std::size_t> rows_;
  std::vector<model::PieceBelief> beliefs_;
  std::vector<double> against_;
  std::vector<Voice> voices_;
  std::optional<AnyOf> any_against_;
  std::map<std::pair<model::Id<model::Maker>, Year>, AnyOf> older_;  // than voices say
};

}  // namespace backmark::evidence
