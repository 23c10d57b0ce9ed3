// What the chains find of all pieces together: how far each source is to be believed, how often
// parts were replaced, when marks changed. Style stands still meanwhile; what is found replaces
// the values that one piece alone is judged by. Spans of makers whose marks changed are drawn
// too, but pieces are judged by the spans of the dated pieces alone: a span that has heard an
// undated piece would tell it its own opinion again (docs/manual/method-joint.md, "Within a
// reckoning").
#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "evidence/evenly.h"
#include "evidence/joint_fit.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t heard_most = 80;  // pieces that speak for one source or kind of part
constexpr double stray = 0.05;        // of a maker's pieces, as for spans that are not sampled
constexpr double source_weight = 10;  // pieces that the first belief in a source is worth
constexpr double part_weight = 40;    // the same for the share of replaced parts
constexpr int gap = 10;               // years, as in component.h

// exp of the logs, the largest 1.
std::vector<double> from_logs(const std::vector<double>& logs, double top) {
  std::vector<double> x;
  for (const double log : logs) {
    x.push_back(std::exp(log - top));
  }
  return x;
}

void multiply(std::vector<double>& p, const std::vector<double>& by) {
  for (std::size_t t = 0; t < p.size(); ++t) {
    p[t] *= by[t];
  }
}

}  // namespace

// Builds the show that the chains run on, and takes their result back.
class JointPart {
 public:
  explicit JointPart(Reckoning::Inside& inside) : inside_(inside) {}

  Result<Done> run(const Watch& watch) {
    choose();
    if (rows_.empty()) {
      return Done{};
    }
    add_pieces(watch);
    JointSettings settings;
    settings.signing = false;
    settings.equal_makers = true;
    settings.learn_density = false;
    settings.mark_stray = usual_stray;
    auto fit = longer_until_settled(settings, watch);
    if (!fit) {
      return fit.problem();
    }
    take(*fit);
    return Done{};
  }

 private:
  // Again and each time twice as long, from where the chains are, until they agree.
  Result<JointFit> longer_until_settled(const JointSettings& settings, const Watch& watch) {
    constexpr int tries = 3;
    constexpr double part = 1.0 / tries;
    JointRun run;
    run.chains = inside_.settings.chains;
    run.warm_up = 100;
    run.keep = inside_.settings.rounds;
    run.judge_each = 1;
    run.seed = inside_.settings.seed;
    auto fit = fit_joint(joint_, settings, run, watch.part(0, part));
    for (int again = 1; again < tries && fit && !settled(*fit); ++again) {
      run.warm_start = std::move(fit->last);
      run.keep *= 2;
      ++run.seed;
      fit = fit_joint(joint_, settings, run, watch.part(again * part, (again + 1) * part));
    }
    return fit;
  }

  // Looser than JointFit::converged, which some of a thousand years miss by chance alone.
  static bool settled(const JointFit& fit) {
    return fit.years.rhat_max <= 1.05 && fit.years.ess_good_share >= 0.99 &&
           fit.shared.rhat_max <= 1.05;
  }

  void want(std::size_t row, std::map<std::uint64_t, std::vector<std::size_t>>& by_kind) {
    const GatheredPiece& piece = inside_.gathered.pieces[row];
    for (const SaidOfYear& said : piece.years) {
      if (said.teller != 0) {
        by_kind[static_cast<std::uint32_t>(said.teller)].push_back(row);
      }
    }
    const auto& columns = inside_.gathered.columns;
    for (std::size_t c = 0; c < columns.ids().size(); ++c) {
      const model::Character* character = inside_.show->find(columns.ids()[c]);
      if (character != nullptr && character->replaceable &&
          !inside_.gathered.style.pieces[row].values[c].missing()) {
        by_kind[(1ULL << 32U) + columns.parts()[c].value].push_back(row);
      }
    }
  }

  // Pieces with a variant in order, others by the same makers, and some of those that each
  // source and kind of part is met on.
  void choose() {
    const auto& pieces = inside_.gathered.pieces;
    std::map<std::uint64_t, std::vector<std::size_t>> by_kind;
    std::vector<char> chosen(pieces.size(), 0);
    std::set<std::size_t> open_makers;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      want(i, by_kind);
      chosen[i] = pieces[i].sequences.empty() ? 0 : 1;
      const auto maker = inside_.gathered.style.pieces[i].maker;
      if (maker && chosen[i] != 0) {
        open_makers.insert(static_cast<std::size_t>(*maker));
      }
    }
    for (auto& [kind, rows] : by_kind) {
      rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
      for (const std::size_t row : evenly_spread(rows, heard_most)) {
        chosen[row] = 1;
      }
    }
    std::map<std::size_t, std::vector<std::size_t>> by_maker;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const auto maker = inside_.gathered.style.pieces[i].maker;
      if (maker && open_makers.contains(static_cast<std::size_t>(*maker))) {
        by_maker[static_cast<std::size_t>(*maker)].push_back(i);
      }
    }
    for (const auto& [maker, rows] : by_maker) {
      maker_number_[maker] = static_cast<int>(makers_.size()) + 1;
      makers_.push_back(maker);
      joint_.makers.push_back({inside_.prior_of(maker), std::nullopt});
      for (const std::size_t row : evenly_spread(rows, heard_most)) {
        chosen[row] = 1;
      }
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (chosen[i] != 0) {
        rows_.push_back(i);
      }
    }
  }

  int kind_of(std::uint64_t key, double fails, double weight) {
    const auto [at, is_new] = kinds_.try_emplace(key, static_cast<int>(joint_.doubts.size()));
    if (is_new) {
      const double share = std::clamp(fails, 0.005, 0.995);
      joint_.doubts.push_back({weight * share, weight * (1 - share)});
    }
    return at->second;
  }

  void add_pieces(const Watch& watch) {
    joint_.years = inside_.axis;
    const auto& lineages = inside_.show->all<model::Lineage>();
    for (const model::Lineage& lineage : lineages) {
      joint_.lineages.push_back({std::max(2, static_cast<int>(lineage.variants.size()))});
    }
    std::vector<Judged> judged(rows_.size());
    in_shares(rows_.size(), watch.threads, [&](std::size_t i) {
      if (!watch.stop.stop_requested()) {
        inside_.weigh_style(inside_.asked(rows_[i], {}), false, false, judged[i]);
      }
    });
    for (std::size_t i = 0; i < rows_.size() && !watch.stop.stop_requested(); ++i) {
      joint_.pieces.push_back(piece_of(inside_.asked(rows_[i], {}), rows_[i], judged[i]));
    }
  }

  JointPiece piece_of(const Asked& asked, std::size_t row, Judged& judged) {
    JointPiece piece;
    piece.maker = 0;
    piece.year_weight = judged.style_p;
    add_parts(asked, judged, piece);
    add_said(asked, piece);
    for (const SeenInSequence& one : asked.said.sequences) {
      piece.marks.push_back({static_cast<int>(one.lineage), one.variant});
      const auto column = one.seen ? inside_.gathered.columns.column(one.seen) : std::nullopt;
      if (column && *column < judged.style.lines.size() &&
          !judged.style.lines[*column].nats.empty()) {
        divide(judged.style.lines[*column].nats, piece.year_weight);
      }
    }
    const auto maker = inside_.gathered.style.pieces[row].maker;
    const auto number =
        maker ? maker_number_.find(static_cast<std::size_t>(*maker)) : maker_number_.end();
    if (number != maker_number_.end()) {
      piece.maker = -1;
      piece.maker_weight.assign(joint_.makers.size() + 1, 0);
      piece.maker_weight[0] = stray;
      piece.maker_weight[static_cast<std::size_t>(number->second)] = 1 - stray;
    }
    return piece;
  }

  static void divide(const std::vector<double>& nats, std::vector<double>& p) {
    for (std::size_t t = 0; t < p.size(); ++t) {
      p[t] *= std::exp(-nats[t]);
    }
  }

  void add_parts(const Asked& asked, const Judged& judged, JointPiece& piece) {
    for (const auto& [part, nats] : inside_.part_lines(judged)) {
      const double share = inside_.replaced_share(asked, part);
      divide(nats, piece.year_weight);
      const std::vector<double> later = later_log(nats, gap);
      const double top = *std::max_element(nats.begin(), nats.end());
      std::vector<double> holds = from_logs(nats, top);
      std::vector<double> fails = from_logs(later, top);
      const bool known = share > 0.9 || share < 0.02;  // the curator has said so
      if (known) {
        for (std::size_t t = 0; t < holds.size(); ++t) {
          piece.year_weight[t] *= (1 - share) * holds[t] + share * fails[t];
        }
        continue;
      }
      piece.doubts.push_back({kind_of((1ULL << 32U) + part.value, share, part_weight),
                              std::move(holds), std::move(fails)});
    }
  }

  void add_said(const Asked& asked, JointPiece& piece) {
    for (const StatementFactor& factor :
         statement_factors(inside_.statements_of(asked), inside_.shapes)) {
      const std::int32_t teller = asked.said.years[factor.members.front()].teller;
      if (teller == 0) {
        multiply(piece.year_weight, factor_on_years(factor));
        continue;
      }
      piece.doubts.push_back(
          {kind_of(static_cast<std::uint32_t>(teller), 1 - factor.reliability, source_weight),
           factor.shape,
           {}});
    }
  }

  void take(const JointFit& fit) {
    Sampled& out = inside_.sampled;
    out.chains = inside_.settings.chains;
    out.rhat_max = std::max(fit.years.rhat_max, fit.shared.rhat_max);
    out.ess_min = std::min(fit.years.ess_min, fit.shared.ess_min);
    out.converged = settled(fit);
    for (const auto& [key, kind] : kinds_) {
      const double share = fit.doubt_share[static_cast<std::size_t>(kind)];
      if ((key >> 32U) != 0) {
        const model::Word part{static_cast<std::uint32_t>(key)};
        out.replaced[std::string(inside_.show->text(part))] = share;
      } else {
        out.reliability[static_cast<std::int32_t>(key)] = 1 - share;
      }
    }
    const auto& lineages = inside_.show->all<model::Lineage>();
    for (const JointPiece& piece : joint_.pieces) {
      for (const JointMark& mark : piece.marks) {
        const auto l = static_cast<std::size_t>(mark.lineage);
        out.variants[lineages[l].id.value] = fit.variants[l];
      }
    }
  }

  Reckoning::Inside& inside_;
  std::vector<std::size_t> rows_;            // pieces in the chains
  std::vector<std::size_t> makers_;          // makers in the chains
  std::map<std::size_t, int> maker_number_;  // their numbers there, from 1
  std::map<std::uint64_t, int> kinds_;       // of doubts
  JointShow joint_;
};

Result<Done> Reckoning::Inside::sample(const Watch& watch) {
  if (settings.chains <= 0 || !style) {
    return Done{};
  }
  return JointPart(*this).run(watch);
}

}  // namespace backmark::evidence
