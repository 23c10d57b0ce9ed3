// How far pieces stand apart, character by character, one byte a pair.
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "evidence/style_table.h"

namespace backmark::evidence {

// The pieces of a table that others are compared with. Distance of two values:
//   category  0 if the same, else 1
//   terms     1 - shared / all terms of both
//   words     the same, each word weighing log((1 + lots) / lots with the word); a word seen in
//             fewer than two lots is dropped
//   number    |log a - log b| in units of the sd of the pool's logs, cut at 2
// A value missing on either side takes the mean distance of the pool's pairs from different
// lots, so that it speaks neither for nor against.
class DistancePool {
 public:
  DistancePool() = default;
  // `members`: indexes of the pool's pieces in the table.
  DistancePool(const StyleTable& table, std::vector<std::size_t> members);

  std::size_t size() const { return members_.size(); }
  std::size_t kinds() const { return kinds_.size(); }
  std::size_t member(std::size_t i) const { return members_[i]; }
  // What one byte step is worth.
  float step(std::size_t kind) const { return kinds_[kind].step; }
  // What a value missing on either side counts for, in steps.
  std::uint8_t missing(std::size_t kind) const { return kinds_[kind].missing; }
  // Words of a value that the pool knows (all terms of other shapes).
  std::vector<int> kept(std::size_t kind, const StyleValue& value) const;

  // Distances to the first `count` pieces of the pool: bytes[kind * count + i].
  void row(const std::vector<StyleValue>& values, std::size_t count, std::uint8_t* bytes) const;

 private:
  struct Kind {
    CharacterShape shape = CharacterShape::category;
    float step = 1.0F / 255;
    std::uint8_t missing = 0;
    std::vector<float> term_weight;                   // of each term; 0: dropped
    std::vector<std::vector<std::uint32_t>> holders;  // of each term, ascending
    std::vector<float> total;                         // of each piece; below 0: missing
    std::vector<float> number;                        // scaled log of each piece, or NaN
    double scale = 1;                                 // of the log
  };

  void learn_terms(const StyleTable& table, std::size_t kind);
  void learn_numbers(const StyleTable& table, std::size_t kind);
  void learn_missing(const StyleTable& table);
  void term_row(const Kind& kind,
                const StyleValue& value,
                std::size_t count,
                std::uint8_t* bytes) const;
  static void number_row(const Kind& kind,
                         const StyleValue& value,
                         std::size_t count,
                         std::uint8_t* bytes);

  std::vector<std::size_t> members_;
  std::vector<Kind> kinds_;
};

}  // namespace backmark::evidence
