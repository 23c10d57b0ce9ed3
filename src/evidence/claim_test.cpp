#include "evidence/claim_test.h"

#include <algorithm>
#include <numeric>

#include "base/text.h"
#include "evidence/claim_looks.h"
#include "evidence/claim_on_table.h"

namespace backmark::evidence {

namespace {

using model::AskedClaim;
using model::ClaimTest;
using model::Show;
using Kind = AskedClaim::Kind;

constexpr double countable = 0.05;  // one chance in twenty
constexpr std::size_t most_carriers = 8;
constexpr double least_heard = 0.0025;  // a twentieth of one in twenty

class Tester {
 public:
  Tester(const Show& show,
         const Reckoning& reckoning,
         const AskedClaim& claim,
         std::uint64_t seed)
      : show_(show),
        reckoning_(reckoning),
        claim_(claim),
        table_(show, reckoning, claim, seed) {}

  ClaimTest run() {
    const std::vector<double>& against = table_.against();
    out_.claim = claim_;
    out_.pieces = table_.rows().size();
    out_.p_independent = table_.from_pieces(against, 0);
    out_.p_pieces = table_.from_pieces(against, usual_leaning);
    out_.p_carried = table_.from_pieces(countable_only(), usual_leaning);
    out_.p = table_.with_voices(out_.p_pieces, table_.voices());
    out_.expected = std::accumulate(against.begin(), against.end(), 0.0);
    const std::vector<std::size_t> loudest = add_carriers();
    add_sources();
    add_turns();
    out_.looks = claim_looks(show_, reckoning_, table_, claim_, loudest);
    add_notes();
    return std::move(out_);
  }

 private:
  std::vector<double> countable_only() const {
    std::vector<double> kept = table_.against();
    for (double& p : kept) {
      p = p >= countable ? p : 0;
    }
    return kept;
  }

  // Gives the rows of the pieces that carry it.
  std::vector<std::size_t> add_carriers() {
    const std::vector<double> loud = table_.loudness();
    std::vector<std::size_t> order(loud.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return loud[a] > loud[b]; });
    std::erase_if(order, [&](std::size_t r) { return loud[r] < least_heard; });
    order.resize(std::min(order.size(), most_carriers));
    for (const std::size_t r : order) {
      std::vector<double> rest = table_.against();
      rest[r] = 0;
      out_.carried_by.push_back(
          {table_.beliefs()[r].piece, loud[r],
           table_.with_voices(table_.from_pieces(rest, usual_leaning, r), table_.voices())});
    }
    return order;
  }

  void add_sources() {
    const std::vector<Voice>& voices = table_.voices();
    const std::vector<std::size_t> speaking = counted(voices);
    for (std::size_t v = 0; v < voices.size(); ++v) {
      std::vector<Voice> others = voices;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(v));
      const model::Source* origin = show_.source(voices[v].origin);
      out_.sources.push_back(
          {.source = voices[v].source,
           .for_it = voices[v].for_it,
           .reliability = voices[v].reliability,
           .origin = origin != nullptr ? origin->id : voices[v].source,
           .counted = std::find(speaking.begin(), speaking.end(), v) != speaking.end(),
           .p_without = table_.with_voices(out_.p_pieces, others),
           .says = voices[v].says});
    }
  }

  void add_turns() {
    if (!table_.voices().empty()) {
      out_.turns.push_back({"without any source", table_.with_voices(out_.p_pieces, {})});
    }
    for (const bool for_it : {true, false}) {
      std::vector<Voice> more = table_.voices();
      more.push_back({.maker = for_it ? claim_.maker : model::Id<model::Maker>{},
                      .for_it = for_it,
                      .reliability = 0.9,
                      .origin = "a further source",
                      .says = ""});
      out_.turns.push_back({for_it ? "a further document of its own (9 in 10) that says so"
                                   : "a further document of its own (9 in 10) against it",
                            table_.with_voices(out_.p_pieces, more)});
    }
    if (!out_.carried_by.empty()) {
      const auto& first = out_.carried_by.front();
      out_.turns.push_back(
          {fmt::format("{} off the table", show_.find(first.piece)->number), first.p_without});
    }
  }

  void add_notes() {
    if (table_.rows().empty()) {
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
                                       out_.expected, table_.rows().size()));
    }
    out_.notes.push_back(fmt::format(
        "Pieces are judged without what the claim is about. They lean together by {:.1f} "
        "(assumed): if the fashions are misread, all are misread alike.",
        usual_leaning));
  }

  const Show& show_;
  const Reckoning& reckoning_;
  const AskedClaim& claim_;
  ClaimOnTable table_;
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
