#include "evidence/claim_test.h"

#include <algorithm>

#include "base/text.h"
#include "evidence/claim_voices.h"
#include "evidence/component.h"
#include "evidence/parallel.h"
#include "evidence/together.h"

namespace backmark::evidence {

namespace {

using model::AskedClaim;
using model::ClaimTest;
using model::Piece;
using model::Show;
using Kind = AskedClaim::Kind;

constexpr int draws = 4000;
constexpr double countable = 0.05;  // one chance in twenty
constexpr std::size_t most_carriers = 8;
constexpr double least_heard = 0.0025;  // a twentieth of one in twenty

double before(const model::PieceBelief& belief, Year year) {
  return belief.year.empty() || belief.year.span.first >= year
             ? 0
             : belief.year.inside(belief.year.span.first, year - 1);
}

double original_share(const Show& show, const Piece& piece, const model::Character& character) {
  if (!character.replaceable) {
    return 1;
  }
  for (const model::Part& part : show.parts_of(piece.id)) {
    if (part.kind == character.part && part.originality != model::Originality::unknown) {
      return part.originality == model::Originality::original ? 0.99 : 0.02;
    }
  }
  const std::string_view kind = show.text(character.part);
  return 1 - (kind == "cord"  ? usual_replaced::cord
              : kind == "tip" ? usual_replaced::tips
                              : usual_replaced::fitting);
}

class Tester {
 public:
  Tester(const Show& show,
         const Reckoning& reckoning,
         const AskedClaim& claim,
         std::uint64_t seed)
      : show_(show), reckoning_(reckoning), claim_(claim), seed_(seed) {}

  ClaimTest run() {
    choose_pieces();
    judge_pieces();
    voices_ = voices_on(show_, claim_);
    out_.claim = claim_;
    out_.pieces = rows_.size();
    out_.p_independent = pieces_say(against_, 0);
    out_.p_pieces = pieces_say(against_, usual_leaning);
    out_.p_carried = pieces_say(countable_only(), usual_leaning);
    out_.p = weighed(out_.p_pieces, voices_);
    for (const double p : against_) {
      out_.expected += p;
    }
    add_carriers();
    add_sources();
    add_turns();
    add_notes();
    return std::move(out_);
  }

 private:
  bool shows_value(const Piece& piece) const {
    for (const model::Observation& seen : show_.observations_of(piece.id)) {
      if (seen.character == claim_.character && seen.seen == model::Seen::value &&
          lower_ascii(show_.text(seen.value)) == lower_ascii(show_.text(claim_.value))) {
        return true;
      }
    }
    return false;
  }

  void choose_pieces() {
    const auto& pieces = show_.all<Piece>();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const bool in = claim_.kind == Kind::first ? !claim_.form || pieces[i].form == claim_.form
                                                 : shows_value(pieces[i]);
      if (in) {
        rows_.push_back(i);
      }
    }
  }

  void judge_pieces() {
    beliefs_.resize(rows_.size());
    LeftOut without;
    if (claim_.character) {
      without.characters.insert(claim_.character.value);
    }
    in_shares(rows_.size(), 0,
              [&](std::size_t r) { beliefs_[r] = reckoning_.judge(rows_[r], without); });
    OddsMap map;
    if (claim_.year && reckoning_.style() != nullptr) {
      map = reckoning_.style()->before(*claim_.year);
    }
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      against_.push_back(speaks_against(r, map));
    }
  }

  double speaks_against(std::size_t r, const OddsMap& map) const {
    if (claim_.kind == Kind::all_by) {
      return 1 - beliefs_[r].maker.of(claim_.maker);
    }
    if (claim_.kind == Kind::design) {
      return 0;  // the race says it
    }
    double p = before(beliefs_[r], *claim_.year);
    if (!reckoning_.gathered().style.pieces[rows_[r]].stated && p > 0 && p < 1) {
      p = map(p);
    }
    if (claim_.kind == Kind::not_before) {
      p *= original_share(show_, show_.all<Piece>()[rows_[r]], *show_.find(claim_.character));
    }
    return p;
  }

  std::vector<Racer> racers(std::optional<std::size_t> without) const {
    std::vector<Racer> list;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (r != without && !beliefs_[r].year.empty()) {
        list.push_back({&beliefs_[r].year.p, beliefs_[r].maker.of(claim_.maker)});
      }
    }
    return list;
  }

  // The chance of the claim from pieces alone.
  double pieces_say(const std::vector<double>& against,
                    double leaning,
                    std::optional<std::size_t> without = std::nullopt) const {
    if (claim_.kind != Kind::design) {
      return 1 - any_of(against, leaning);
    }
    const std::vector<Racer> race = racers(without);
    return leaning > 0 ? oldest_is_by(race, leaning, draws, seed_) : oldest_is_by(race);
  }

  std::vector<double> countable_only() const {
    std::vector<double> kept = against_;
    for (double& p : kept) {
      p = p >= countable ? p : 0;
    }
    return kept;
  }

  double weighed(double p_pieces, const std::vector<Voice>& voices) const {
    return weigh_voices(
        show_, claim_, p_pieces, voices, [this](model::Id<model::Maker> maker, Year year) {
          std::vector<double> older;
          for (const model::PieceBelief& belief : beliefs_) {
            older.push_back(before(belief, year) * (1 - belief.maker.of(maker)));
          }
          return 1 - any_of(older, usual_leaning);
        });
  }

  void add_carriers() {
    std::vector<double> loud = against_;
    if (claim_.kind == Kind::design) {
      loud.assign(rows_.size(), 0);
      const std::vector<double> oldest = chance_oldest(racers(std::nullopt));
      std::size_t at = 0;
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        loud[r] = beliefs_[r].year.empty() ? 0 : oldest[at++];
      }
    }
    std::vector<std::size_t> order(rows_.size());
    for (std::size_t r = 0; r < order.size(); ++r) {
      order[r] = r;
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return loud[a] > loud[b]; });
    order.resize(std::min(order.size(), most_carriers));
    for (const std::size_t r : order) {
      if (loud[r] < least_heard) {
        break;
      }
      std::vector<double> rest = against_;
      rest[r] = 0;
      out_.carried_by.push_back({show_.all<Piece>()[rows_[r]].id, loud[r],
                                 weighed(pieces_say(rest, usual_leaning, r), voices_)});
    }
  }

  void add_sources() {
    const std::vector<std::size_t> speaking = counted(voices_);
    for (std::size_t v = 0; v < voices_.size(); ++v) {
      std::vector<Voice> others = voices_;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(v));
      const model::Source* origin = show_.source(voices_[v].origin);
      out_.sources.push_back(
          {.source = voices_[v].source,
           .for_it = voices_[v].for_it,
           .reliability = voices_[v].reliability,
           .origin = origin != nullptr ? origin->id : voices_[v].source,
           .counted = std::find(speaking.begin(), speaking.end(), v) != speaking.end(),
           .p_without = weighed(out_.p_pieces, others),
           .says = voices_[v].says});
    }
  }

  void add_turns() {
    if (!voices_.empty()) {
      out_.turns.push_back({"without any source", weighed(out_.p_pieces, {})});
    }
    for (const bool for_it : {true, false}) {
      std::vector<Voice> more = voices_;
      more.push_back({.maker = for_it ? claim_.maker : model::Id<model::Maker>{},
                      .for_it = for_it,
                      .reliability = 0.9,
                      .origin = "a further source",
                      .says = ""});
      out_.turns.push_back({for_it ? "a further document of its own (9 in 10) that says so"
                                   : "a further document of its own (9 in 10) against it",
                            weighed(out_.p_pieces, more)});
    }
    if (!out_.carried_by.empty()) {
      const auto& first = out_.carried_by.front();
      out_.turns.push_back(
          {fmt::format("{} off the table", show_.find(first.piece)->number), first.p_without});
    }
  }

  void add_notes() {
    if (rows_.empty()) {
      out_.notes.push_back("No piece on the table bears on it; only sources speak.");
    }
    if (claim_.year && *claim_.year <= reckoning_.axis().first) {
      out_.notes.push_back(fmt::format(
          "Years before {} were not weighed; the setting years.first would let them in.",
          reckoning_.axis().first.value));
    }
    if (claim_.kind != Kind::design && out_.p_carried - out_.p_pieces > 0.1) {
      out_.notes.push_back(
          fmt::format("Much of this comes from many small chances, none of which is 1 in 20. "
                      "The pieces that "
                      "can be named leave the claim {:.0f} in 20.",
                      20 * out_.p_carried));
    }
    if (claim_.kind == Kind::all_by) {
      out_.notes.push_back(fmt::format("On average {:.1f} of {} pieces would be by others.",
                                       out_.expected, rows_.size()));
    }
    out_.notes.push_back(fmt::format(
        "Pieces are judged without what the claim is about. They lean together by {:.1f} "
        "(assumed): if the fashions are misread, all are misread alike.",
        usual_leaning));
  }

  const Show& show_;
  const Reckoning& reckoning_;
  const AskedClaim& claim_;
  std::uint64_t seed_;
  std::vector<std::size_t> rows_;  // pieces in play
  std::vector<model::PieceBelief> beliefs_;
  std::vector<double> against_;
  std::vector<Voice> voices_;
  ClaimTest out_;
};

}  // namespace

ClaimTest test_claim(const Show& show,
                     const Reckoning& reckoning,
                     const AskedClaim& claim,
                     std::uint64_t seed) {
  return Tester(show, reckoning, claim, seed).run();
}

}  // namespace backmark::evidence
