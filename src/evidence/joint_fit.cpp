#include "evidence/joint_fit.h"

#include <algorithm>
#include <functional>
#include <memory>
#include <mutex>

#include "evidence/joint_chain.h"
#include "evidence/joint_check.h"
#include "evidence/parallel.h"

namespace backmark::evidence {
namespace {

// Draws kept of one chain.
struct ChainRecord {
  std::vector<std::vector<std::uint16_t>> years;  // a draw: the year of each followed piece
  std::vector<std::vector<double>> habit_share;   // a draw: one a character
  std::vector<std::vector<double>> shared;        // a draw: spans, changes of marks, doubts
  std::vector<double> replaced_share;             // sums
  std::vector<double> doubt_share;                // sums
  double unlisted = 0;
  std::vector<std::vector<double>> start;  // by maker - 1, sums
  std::vector<std::vector<double>> end;
  std::vector<std::vector<double>> span_year;
  std::vector<std::vector<std::vector<double>>> variants;
  std::unique_ptr<JointChain> chain;
};

bool year_is_known(const JointPiece& piece) {
  return std::count_if(piece.year_weight.begin(), piece.year_weight.end(),
                       [](double w) { return w > 0; }) == 1;
}

// Counts rounds over all chains; never two threads at once in the caller's function.
class Progress {
 public:
  Progress(const Watch& watch, int rounds) : watch_(watch), total_(rounds) {}
  // False: stop.
  bool round_done() {
    if (watch_.progress) {
      const std::lock_guard guard(lock_);
      ++done_;
      if (done_ % 10 == 0) {
        watch_.tell(static_cast<double>(done_) / total_);
      }
    }
    return !watch_.stop.stop_requested();
  }

 private:
  const Watch& watch_;
  int total_;
  int done_ = 0;
  std::mutex lock_;
};

std::vector<double> shared_quantities(const JointState& state) {
  std::vector<double> all = state.doubt_share;
  for (std::size_t m = 1; m < state.start.size(); ++m) {
    all.push_back(state.start[m]);
    all.push_back(state.end[m]);
  }
  for (const LineageState& lineage : state.lineage) {
    all.insert(all.end(), lineage.change.begin(), lineage.change.end());
  }
  return all;
}

void record_round(const JointShow& show,
                  const std::vector<std::size_t>& followed,
                  bool judged,
                  ChainRecord& record) {
  const JointState& state = record.chain->state();
  if (judged) {
    std::vector<std::uint16_t> years;
    for (const std::size_t i : followed) {
      years.push_back(static_cast<std::uint16_t>(state.piece[i].year));
    }
    record.years.push_back(std::move(years));
    record.habit_share.push_back(state.habit_share);
    record.shared.push_back(shared_quantities(state));
  }
  for (std::size_t kind = 0; kind < state.doubt_share.size(); ++kind) {
    record.doubt_share[kind] += state.doubt_share[kind];
  }
  for (std::size_t g = 0; g < state.replaced_share.size(); ++g) {
    record.replaced_share[g] += state.replaced_share[g];
  }
  record.unlisted += state.open_share[0];
  for (std::size_t m = 1; m < state.start.size(); ++m) {
    const auto s = static_cast<std::size_t>(state.start[m]);
    const auto e = static_cast<std::size_t>(state.end[m]);
    record.start[m - 1][s] += 1;
    record.end[m - 1][e] += 1;
    for (std::size_t t = s; t <= e; ++t) {
      record.span_year[m - 1][t] += 1 / static_cast<double>(e - s + 1);
    }
  }
  for (std::size_t l = 0; l < state.lineage.size(); ++l) {
    const auto curves = variant_curves(state.lineage[l], show.years.length());
    for (std::size_t v = 0; v < curves.size(); ++v) {
      std::transform(curves[v].begin(), curves[v].end(), record.variants[l][v].begin(),
                     record.variants[l][v].begin(), std::plus<>());
    }
  }
}

ChainRecord empty_record(const JointShow& show) {
  const auto years = static_cast<std::size_t>(show.years.length());
  ChainRecord record;
  record.replaced_share.assign(static_cast<std::size_t>(show.components), 0);
  record.doubt_share.assign(show.doubts.size(), 0);
  record.start.assign(show.makers.size(), std::vector<double>(years, 0));
  record.end = record.start;
  record.span_year = record.start;
  for (const JointLineage& lineage : show.lineages) {
    record.variants.emplace_back(static_cast<std::size_t>(lineage.variants),
                                 std::vector<double>(years, 0));
  }
  return record;
}

void run_chain(const JointShow& show,
               const JointRun& run,
               const std::vector<std::size_t>& followed,
               Progress& progress,
               ChainRecord& record) {
  const int warm_up = run.warm_start.empty() ? run.warm_up : run.warm_up / 5;
  for (int round = 0; round < warm_up + run.keep; ++round) {
    const bool judged = round % run.judge_each == 0;
    record.chain->record(round >= warm_up);
    record.chain->sweep();
    if (judged) {
      record.chain->judge_others();
    }
    if (round >= warm_up) {
      record_round(show, followed, judged, record);
    }
    if (!progress.round_done()) {
      return;
    }
  }
}

JointPieceBelief belief_of(const std::vector<ChainRecord>& records, std::size_t piece) {
  JointPieceBelief belief;
  double sweeps = 0;
  const auto add = [](std::vector<double>& to, const std::vector<double>& from) {
    to.resize(from.size(), 0);
    std::transform(from.begin(), from.end(), to.begin(), to.begin(), std::plus<>());
  };
  for (const ChainRecord& record : records) {
    const PieceSums& sums = record.chain->sums()[piece];
    add(belief.year, sums.year);
    add(belief.maker, sums.maker);
    add(belief.replaced_p, sums.replaced);
    sweeps += sums.sweeps;
  }
  for (auto* row : {&belief.year, &belief.maker, &belief.replaced_p}) {
    for (double& x : *row) {
      x /= std::max(1.0, sweeps);
    }
  }
  return belief;
}

// `rows`: the draws of one chain, each a row of quantities.
template <class Rows>
Convergence judge_rows(const std::vector<ChainRecord>& records,
                       Rows ChainRecord::*rows,
                       int threads) {
  const std::size_t quantities = (records.front().*rows).front().size();
  // In blocks, each judged by one thread, put together afterwards.
  const std::size_t blocks = 16;
  std::vector<std::vector<Chains>> block(blocks);
  for (std::size_t q = 0; q < quantities; ++q) {
    Chains chains;
    for (const ChainRecord& record : records) {
      std::vector<double> draws;
      for (const auto& row : record.*rows) {
        draws.push_back(static_cast<double>(row[q]));
      }
      chains.push_back(std::move(draws));
    }
    block[q % blocks].push_back(std::move(chains));
  }
  std::vector<Convergence> judged(blocks);
  in_shares(blocks, threads, [&](std::size_t b) { judged[b] = judge_convergence(block[b]); });
  return joined(judged);
}

void average_shared(const JointShow& show,
                    std::vector<ChainRecord>& records,
                    double rounds,
                    JointFit& fit) {
  ChainRecord total = empty_record(show);
  const auto add = [rounds](std::vector<double>& to, const std::vector<double>& from) {
    for (std::size_t i = 0; i < to.size(); ++i) {
      to[i] += from[i] / rounds;
    }
  };
  for (ChainRecord& record : records) {
    add(total.replaced_share, record.replaced_share);
    add(total.doubt_share, record.doubt_share);
    total.unlisted += record.unlisted / rounds;
    for (std::size_t m = 0; m < show.makers.size(); ++m) {
      add(total.start[m], record.start[m]);
      add(total.end[m], record.end[m]);
      add(total.span_year[m], record.span_year[m]);
    }
    for (std::size_t l = 0; l < total.variants.size(); ++l) {
      for (std::size_t v = 0; v < total.variants[l].size(); ++v) {
        add(total.variants[l][v], record.variants[l][v]);
      }
    }
    fit.last.push_back(record.chain->state());
  }
  fit.replaced_share = total.replaced_share;
  fit.doubt_share = total.doubt_share;
  fit.unlisted_share = total.unlisted;
  fit.variants = total.variants;
  for (std::size_t m = 0; m < show.makers.size(); ++m) {
    fit.spans.push_back({total.start[m], total.end[m], total.span_year[m]});
  }
}

void judge_habits(const std::vector<ChainRecord>& records,
                  std::size_t characters,
                  JointFit& fit) {
  std::vector<Chains> quantities;
  for (std::size_t c = 0; c < characters; ++c) {
    Chains chains;
    double sum = 0;
    double draws = 0;
    for (const ChainRecord& record : records) {
      std::vector<double> chain;
      for (const auto& row : record.habit_share) {
        chain.push_back(row[c]);
        sum += row[c];
        draws += 1;
      }
      chains.push_back(std::move(chain));
    }
    fit.habit_share.push_back(sum / draws);
    quantities.push_back(std::move(chains));
  }
  fit.habit_shares = judge_convergence(quantities);
}

}  // namespace

Result<JointFit> fit_joint(const JointShow& show,
                           const JointSettings& settings,
                           const JointRun& run,
                           const Watch& watch) {
  if (auto problem = check_joint_show(show, settings)) {
    return *problem;
  }
  if (run.chains < 1 || run.judge_each < 1 || run.keep / run.judge_each < 4) {
    return Problem{Fault::bad_input, "too few rounds to judge the chains by", "keep",
                   "keep at least 100 rounds"};
  }
  std::vector<std::size_t> followed;
  for (std::size_t i = 0; i < show.pieces.size(); ++i) {
    if (!year_is_known(show.pieces[i])) {
      followed.push_back(i);
    }
  }
  std::vector<ChainRecord> records;
  for (int c = 0; c < run.chains; ++c) {
    records.push_back(empty_record(show));
  }
  Progress progress(watch, run.chains * (run.warm_up + run.keep));
  in_shares(static_cast<std::size_t>(run.chains), watch.threads, [&](std::size_t c) {
    ChainRecord& record = records[c];
    const JointState* start =
        run.warm_start.empty() ? nullptr : &run.warm_start[c % run.warm_start.size()];
    record.chain =
        std::make_unique<JointChain>(show, settings, start, Random::stream(run.seed, c));
    run_chain(show, run, followed, progress, record);
  });
  if (watch.stop.stop_requested()) {
    return stopped();
  }
  JointFit fit;
  fit.pieces.resize(show.pieces.size());
  for (std::size_t i = 0; i < fit.pieces.size(); ++i) {
    fit.pieces[i] = belief_of(records, i);
  }
  average_shared(show, records, static_cast<double>(run.chains) * run.keep, fit);
  judge_habits(records, show.characters.size(), fit);
  fit.years = judge_rows(records, &ChainRecord::years, watch.threads);
  fit.shared = judge_rows(records, &ChainRecord::shared, watch.threads);
  fit.converged = fit.years.rhat_good_share >= 0.99 && fit.years.ess_good_share >= 0.99 &&
                  fit.years.rhat_max <= 1.05;
  return fit;
}

}  // namespace backmark::evidence
