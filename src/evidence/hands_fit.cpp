#include <algorithm>
#include <cmath>

#include "evidence/hands.h"
#include "evidence/lots.h"

namespace backmark::evidence {

// Who is who for each piece that is left out.
class HandAgreement : public Agreement {
 public:
  HandAgreement(const Hands& hands,
                const std::vector<int>& makers,
                const std::vector<int>& lots)
      : makers_(makers), lots_(lots) {
    std::map<int, int> numbers;
    for (const int maker : makers) {
      const auto next = static_cast<int>(numbers.size());
      numbers.try_emplace(maker, next);
    }
    std::map<int, std::size_t> rows;
    for (std::size_t j = 0; j < makers_.size(); ++j) {
      maker_.push_back(static_cast<std::size_t>(numbers[makers_[j]]));
      const auto [at, fresh] = rows.try_emplace(lots_[j], listed_.size());
      if (fresh) {
        std::vector<bool> listed(numbers.size());
        for (const auto& [maker, number] : numbers) {
          listed[static_cast<std::size_t>(number)] = hands_listed(hands, maker, lots_[j]);
        }
        listed_.push_back(std::move(listed));
      }
      lot_.push_back(at->second);
    }
  }

  bool on_list(std::size_t j) const { return listed_[lot_[j]][maker_[j]]; }

  void row(std::size_t j, float* forth, float* back) const override {
    const auto& list = listed_[lot_[j]];
    const bool own = list[maker_[j]];
    for (std::size_t i = 0; i < j; ++i) {
      const bool theirs = listed_[lot_[i]][maker_[i]];
      const bool same = maker_[i] == maker_[j];
      forth[i] = own ? (same ? 1.0F : 0.0F) : (list[maker_[i]] ? 0.0F : 1.0F);
      back[i] = theirs ? (same ? 1.0F : 0.0F) : (listed_[lot_[i]][maker_[j]] ? 0.0F : 1.0F);
    }
  }
  double open(std::size_t j) const override { return on_list(j) ? 0 : 1; }

 private:
  static bool hands_listed(const Hands& hands, int maker, int lot);

  const std::vector<int>& makers_;
  const std::vector<int>& lots_;
  std::vector<std::size_t> maker_, lot_;
  std::vector<std::vector<bool>> listed_;  // [lot][maker]
};

class HandFit {
 public:
  static bool listed(const Hands& hands, int maker, int lot) {
    return hands.listed(maker, lot);
  }

  static Result<Hands> run(const StyleTable& table,
                           YearSpan axis,
                           const HandSettings& settings,
                           const Watch& watch,
                           const HandLessons* known) {
    Hands hands;
    hands.settings_ = settings;
    hands.axis_ = axis;
    std::vector<std::size_t> signed_pieces;
    std::map<int, int> sizes;
    for (std::size_t i = 0; i < table.pieces.size(); ++i) {
      const auto& piece = table.pieces[i];
      if (piece.maker && piece.weight > 0) {
        signed_pieces.push_back(i);
        ++hands.pieces_[*piece.maker];
        ++hands.pieces_in_lot_[{piece.lot, *piece.maker}];
        ++sizes[piece.lot];
      }
    }
    if (signed_pieces.empty()) {
      return Problem{Fault::bad_input,
                     "no hand can be told by style: no piece has a named maker", "",
                     "record the makers of signed pieces"};
    }
    for (const std::size_t i : signed_pieces) {
      const auto& piece = table.pieces[i];
      hands.maker_.push_back(*piece.maker);
      hands.lot_.push_back(piece.lot);
      hands.stated_.push_back(piece.stated);
      hands.evidence_.push_back(
          static_cast<float>(piece.weight * std::pow(sizes[piece.lot], -settings.lot_power)));
    }
    std::map<int, std::size_t> slot;
    for (const auto& [maker, count] : hands.pieces_) {
      slot[maker] = hands.slots_.size();
      hands.slots_.push_back(maker);
    }
    for (const int maker : hands.maker_) {
      hands.slot_.push_back(slot[maker]);
    }
    hands.smoother_ =
        Smoother(static_cast<std::size_t>(axis.length()), settings.date_smoothing);
    hands.pool_ = DistancePool(table, signed_pieces);
    for (const StyleCharacter& character : table.characters) {
      hands.names_.push_back(character.name);
    }
    if (known != nullptr && known->names == hands.names_ &&
        known->d.size() == hands.names_.size()) {
      hands.likeness_ = {known->d, known->open};
      hands.learned_share_ = known->listed_share;
      return hands;
    }
    return learn(std::move(hands), table, drawn_lots(table, signed_pieces, settings.fit_most),
                 watch);
  }

 private:
  static Result<Hands> learn(Hands hands,
                             const StyleTable& table,
                             const std::vector<std::size_t>& sample,
                             const Watch& watch) {
    const auto kinds = table.characters.size();
    const Likeness prior{std::vector<double>(kinds, hands.settings_.prior_d),
                         hands.settings_.prior_open};
    const DistancePool pool(table, sample);
    const PairTable pairs(table, pool, watch);
    std::vector<int> makers;
    std::vector<int> lots;
    std::vector<float> evidence;
    std::vector<double> judged;
    std::map<int, int> sizes;
    for (const std::size_t piece : sample) {
      ++sizes[table.pieces[piece].lot];
    }
    for (const std::size_t piece : sample) {
      const auto& one = table.pieces[piece];
      makers.push_back(*one.maker);
      lots.push_back(one.lot);
      judged.push_back(one.weight * std::pow(sizes[one.lot], -hands.settings_.lot_power));
      evidence.push_back(static_cast<float>(judged.back()));
    }
    const HandAgreement agreement(hands, makers, lots);
    std::vector<int> ties;
    for (std::size_t kind = 0; kind < kinds; ++kind) {
      ties.push_back(static_cast<int>(kind));
    }
    auto likeness = fit_likeness(
        {pairs, agreement, lots, evidence, judged, ties, prior, hands.settings_.ridge}, watch);
    if (!likeness) {
      return likeness.problem();
    }
    hands.likeness_ = *std::move(likeness);
    double on_list = 0.5;
    double all = 1;
    for (std::size_t j = 0; j < judged.size(); ++j) {
      on_list += agreement.on_list(j) ? judged[j] : 0;
      all += judged[j];
    }
    hands.learned_share_ = on_list / all;
    return hands;
  }
};

bool HandAgreement::hands_listed(const Hands& hands, int maker, int lot) {
  return HandFit::listed(hands, maker, lot);
}

Result<Hands> fit_hands(const StyleTable& table,
                        YearSpan axis,
                        const HandSettings& settings,
                        const Watch& watch,
                        const HandLessons* known) {
  check(table);
  return HandFit::run(table, axis, settings, watch, known);
}

HandLessons Hands::lessons() const {
  return {names_, likeness_.d, likeness_.open, learned_share_};
}

}  // namespace backmark::evidence
