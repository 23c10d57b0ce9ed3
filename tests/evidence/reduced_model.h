// A reduced joint model that other means can answer too: spans known, steps of fashion fixed,
// habits around equal shares, nothing replaced, nobody signs. Exact answers by drawing all
// shared parts from their prior and summing every piece out; and the same model in the words of
// JAGS.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <limits>
#include <string>
#include <sys/resource.h>
#include <vector>

#include "evidence/convergence.h"
#include "evidence/joint_chain.h"
#include "evidence/joint_fashion.h"

namespace backmark::evidence {

struct ReducedPlan {
  int pieces = 10;
  int years = 8;
  int makers = 2;
  int characters = 2;
  std::uint64_t seed = 20260;
};

inline ReducedPlan case_a() {
  return {};
}
inline ReducedPlan case_b() {
  return {14, 20, 3, 3, 20260};
}

struct Reduced {
  JointShow show;
  std::vector<int> told;          // the year told of a piece, -1 none
  std::vector<std::size_t> open;  // pieces of unknown year
};

inline JointSettings reduced_settings() {
  JointSettings settings;
  settings.fashion_step = {0.14};
  settings.concentration = {2};
  settings.habit_share = {2, 2};
  settings.flat_habit_base = true;
  settings.unlisted_weight = 2;
  settings.signing = false;
  settings.learn_density = false;
  return settings;
}

// Everything that pieces share.
struct ReducedShared {
  std::vector<double> phi;                   // 0..K
  std::vector<double> w;                     // one a character
  std::vector<std::vector<double>> fashion;  // a character: value x year
  std::vector<double> theta;                 // (maker, character, value)
};

inline std::vector<double> draw_shares(const std::vector<double>& weight, Random& random) {
  std::vector<double> p;
  double sum = 0;
  for (const double w : weight) {
    p.push_back(random.gamma(w));
    sum += p.back();
  }
  for (double& x : p) {
    x /= sum;
  }
  return p;
}

inline ReducedShared draw_reduced(const JointShow& show, Random& random) {
  ReducedShared shared;
  std::vector<double> weight(show.makers.size() + 1, 1);
  weight[0] = 2;
  shared.phi = draw_shares(weight, random);
  for (std::size_t c = 0; c < show.characters.size(); ++c) {
    shared.w.push_back(draw_beta(2, 2, random));
    const auto sticks = draw_sticks_prior(3, show.years.length(), 0.14, 1.5, random);
    shared.fashion.push_back(fashion_of(sticks));
  }
  for (std::size_t m = 0; m <= show.makers.size(); ++m) {
    for (std::size_t c = 0; c < show.characters.size(); ++c) {
      const auto theta = draw_shares({2.0 / 3, 2.0 / 3, 2.0 / 3}, random);
      shared.theta.insert(shared.theta.end(), theta.begin(), theta.end());
    }
  }
  return shared;
}

inline double chance_of(const JointShow& show,
                        const ReducedShared& shared,
                        std::size_t maker,
                        std::size_t character,
                        int value,
                        int year) {
  const auto t = static_cast<std::size_t>(value * show.years.length() + year);
  const double pi = shared.fashion[character][t];
  if (maker == 0) {
    return pi;
  }
  const std::size_t at = (maker * show.characters.size() + character) * 3;
  return (1 - shared.w[character]) * pi +
         shared.w[character] * shared.theta[at + static_cast<std::size_t>(value)];
}

// p(told | year): eight in ten normal around it with sd 5, two in ten any year.
inline double chance_told(int told, int year, int years) {
  double all = 0;
  for (int d = 0; d < years; ++d) {
    all += std::exp(-0.5 * (d - year) * (d - year) / 25.0);
  }
  return 0.8 * std::exp(-0.5 * (told - year) * (told - year) / 25.0) / all + 0.2 / years;
}

inline Reduced make_reduced(const ReducedPlan& plan) {
  Random random(plan.seed);
  Reduced made;
  JointShow& show = made.show;
  show.years = {{1900}, {1900 + plan.years - 1}};
  show.characters.assign(static_cast<std::size_t>(plan.characters), {3, 0});
  for (int k = 0; k < plan.makers; ++k) {
    const int start = static_cast<int>(plan.years * (0.05 + 0.15 * k));
    const int end = std::min(plan.years - 1, start + static_cast<int>(0.35 * plan.years));
    show.makers.push_back({{}, std::pair{start, end}});
  }
  const ReducedShared truth = draw_reduced(show, random);
  for (int i = 0; i < plan.pieces; ++i) {
    JointPiece piece;
    const std::size_t m = random.weighted(truth.phi);
    const auto [start, end] =
        m == 0 ? std::pair{0, plan.years - 1} : *show.makers[m - 1].known_span;
    const int year =
        start + static_cast<int>(random.below(static_cast<std::size_t>(end - start + 1)));
    for (std::size_t c = 0; c < show.characters.size(); ++c) {
      std::vector<double> p;
      for (int v = 0; v < 3; ++v) {
        p.push_back(chance_of(show, truth, m, c, v, year));
      }
      const int value = static_cast<int>(random.weighted(p));
      piece.values.push_back(random.chance(0.2) ? -1 : value);
    }
    piece.maker = random.chance(0.35) ? static_cast<int>(m) : -1;
    made.told.push_back(-1);
    if (random.chance(0.25)) {
      piece.year_weight.assign(static_cast<std::size_t>(plan.years), 0);
      piece.year_weight[static_cast<std::size_t>(year)] = 1;
    } else {
      made.open.push_back(static_cast<std::size_t>(i));
      if (random.chance(0.3)) {
        std::vector<double> p;
        for (int d = 0; d < plan.years; ++d) {
          p.push_back(chance_told(d, year, plan.years));
        }
        made.told.back() = static_cast<int>(random.weighted(p));
        for (int t = 0; t < plan.years; ++t) {
          piece.year_weight.push_back(chance_told(made.told.back(), t, plan.years));
        }
      }
    }
    show.pieces.push_back(std::move(piece));
  }
  return made;
}

// Means of the unknown years, then of the w, with their standard errors.
struct Means {
  std::vector<double> mean, error;
  double effective = 0;
};

// Likelihood of one piece, all makers and years summed, and the mean year under it.
inline std::pair<double, double> weigh_reduced(const JointShow& show,
                                               const ReducedShared& shared,
                                               const JointPiece& piece) {
  double all = 0;
  double years = 0;
  for (std::size_t m = 0; m <= show.makers.size(); ++m) {
    if (piece.maker >= 0 && piece.maker != static_cast<int>(m)) {
      continue;
    }
    const auto [start, end] =
        m == 0 ? std::pair{0, show.years.length() - 1} : *show.makers[m - 1].known_span;
    for (int t = start; t <= end; ++t) {
      double p = shared.phi[m] / (end - start + 1);
      p *= piece.year_weight.empty() ? 1 : piece.year_weight[static_cast<std::size_t>(t)];
      for (std::size_t c = 0; p > 0 && c < piece.values.size(); ++c) {
        p *= piece.values[c] < 0 ? 1 : chance_of(show, shared, m, c, piece.values[c], t);
      }
      all += p;
      years += p * t;
    }
  }
  return {all, all > 0 ? years / all : 0};
}

inline Means exact_means(const Reduced& reduced, int draws, std::uint64_t seed) {
  const JointShow& show = reduced.show;
  Random random(seed);
  const std::size_t quantities = reduced.open.size() + show.characters.size();
  std::vector<std::vector<double>> values;
  std::vector<double> weights;
  std::vector<double> year(show.pieces.size());
  double sum = 0;
  double squares = 0;
  for (int d = 0; d < draws; ++d) {
    const ReducedShared shared = draw_reduced(show, random);
    double weight = 1;
    for (std::size_t i = 0; i < show.pieces.size(); ++i) {
      const auto [all, mean] = weigh_reduced(show, shared, show.pieces[i]);
      weight *= 10 * all;
      year[i] = mean;
    }
    std::vector<double> row;
    for (const std::size_t i : reduced.open) {
      row.push_back(year[i]);
    }
    row.insert(row.end(), shared.w.begin(), shared.w.end());
    values.push_back(std::move(row));
    weights.push_back(weight);
    sum += weight;
    squares += weight * weight;
  }
  Means means;
  means.mean.assign(quantities, 0);
  means.error.assign(quantities, 0);
  means.effective = sum * sum / squares;
  for (std::size_t d = 0; d < weights.size(); ++d) {
    for (std::size_t q = 0; q < quantities; ++q) {
      means.mean[q] += weights[d] * values[d][q] / sum;
    }
  }
  for (std::size_t d = 0; d < weights.size(); ++d) {
    for (std::size_t q = 0; q < quantities; ++q) {
      const double off = weights[d] / sum * (values[d][q] - means.mean[q]);
      means.error[q] += off * off;
    }
  }
  for (double& error : means.error) {
    error = std::sqrt(error);
  }
  return means;
}

// What each kept round leaves of every quantity (unknown years, then the w): the draw, and the
// mean given everything else, which is what answers are made of (JointFit::pieces averages
// conditional odds); of a w the draw itself. One row a chain.
struct ChainRun {
  std::vector<Chains> draws;
  std::vector<Chains> answers;
};

// The mean year of the newest round, from sums that now hold one round more.
inline double newest_mean(const PieceSums& now, std::vector<double>& before) {
  double mean = 0;
  for (std::size_t t = 0; t < now.year.size(); ++t) {
    mean += static_cast<double>(t) * (now.year[t] - before[t]);
  }
  before = now.year;
  return mean;
}

inline ChainRun run_chains(const Reduced& reduced, int chains, int rounds, int thin) {
  const std::size_t years = reduced.open.size();
  const std::size_t quantities = years + reduced.show.characters.size();
  ChainRun run;
  run.draws.assign(quantities, Chains(static_cast<std::size_t>(chains)));
  run.answers = run.draws;
  for (std::size_t k = 0; k < static_cast<std::size_t>(chains); ++k) {
    JointChain chain(reduced.show, reduced_settings(), nullptr, Random::stream(5, k));
    for (int d = 0; d < rounds / 20 * thin; ++d) {
      chain.sweep();
    }
    std::vector<std::vector<double>> sums(
        years, std::vector<double>(static_cast<std::size_t>(reduced.show.years.length()), 0));
    for (int d = 0; d < rounds; ++d) {
      for (int i = 1; i < thin; ++i) {
        chain.sweep();
      }
      chain.record(true);
      chain.sweep();
      chain.record(false);
      for (std::size_t q = 0; q < quantities; ++q) {
        const bool year = q < years;
        run.draws[q][k].push_back(year ? chain.state().piece[reduced.open[q]].year
                                       : chain.state().habit_share[q - years]);
        run.answers[q][k].push_back(year ? newest_mean(chain.sums()[reduced.open[q]], sums[q])
                                         : run.draws[q][k].back());
      }
    }
  }
  return run;
}

inline std::vector<Chains> chain_draws(const Reduced& reduced,
                                       int chains,
                                       int rounds,
                                       int thin) {
  return run_chains(reduced, chains, rounds, thin).draws;
}

inline Means means_of(const std::vector<Chains>& draws) {
  Means means;
  for (const Chains& chains : draws) {
    double sum = 0;
    double count = 0;
    for (const auto& chain : chains) {
      for (const double x : chain) {
        sum += x;
        count += 1;
      }
    }
    means.mean.push_back(sum / count);
    means.error.push_back(batch_mean_error(chains, 20));
  }
  return means;
}

struct Agreed {
  double sd = 0;     // of the z of all quantities
  double worst = 0;  // largest |z|
};

inline Agreed agreement(const Means& a, const Means& b) {
  Agreed agreed;
  for (std::size_t q = 0; q < a.mean.size(); ++q) {
    const double z =
        (a.mean[q] - b.mean[q]) / std::sqrt(a.error[q] * a.error[q] + b.error[q] * b.error[q]);
    agreed.sd += z * z / static_cast<double>(a.mean.size());
    agreed.worst = std::max(agreed.worst, std::abs(z));
  }
  agreed.sd = std::sqrt(agreed.sd);
  return agreed;
}

inline bool jags_is_here() {
  return std::system("command -v jags > /dev/null 2>&1") == 0;
}

inline const char* jags_model() {
  return R"(model {
  phi ~ ddirch(alpha)
  for (c in 1:C) {
    w[c] ~ dbeta(2, 2)
    for (m in 1:M) { theta[c, m, 1:3] ~ ddirch(base) }
    for (k in 1:2) {
      psi[c, k, 1] ~ dnorm(first[k], 1 / 2.25)
      for (t in 2:T) { psi[c, k, t] ~ dnorm(psi[c, k, t - 1], 1 / 0.0196) }
    }
    for (t in 1:T) {
      pi[c, t, 1] <- ilogit(psi[c, 1, t])
      pi[c, t, 2] <- (1 - pi[c, t, 1]) * ilogit(psi[c, 2, t])
      pi[c, t, 3] <- 1 - pi[c, t, 1] - pi[c, t, 2]
    }
  }
  for (i in 1:N) {
    maker[i] ~ dcat(phi)
    year[i] ~ dcat(span[maker[i], 1:T])
  }
  for (j in 1:O) {
    for (v in 1:3) {
      p[j, v] <- (1 - w[co[j]] * listed[maker[po[j]]]) * pi[co[j], year[po[j]], v]
                 + w[co[j]] * listed[maker[po[j]]] * theta[co[j], maker[po[j]], v]
    }
    x[j] ~ dcat(p[j, 1:3])
  }
  for (s in 1:S) { told[s] ~ dcat(say[year[ps[s]], 1:T]) }
}
)";
}

inline std::string r_vector(const std::string& name,
                            const std::vector<double>& values,
                            const std::string& dim = "") {
  std::string text = "`" + name + "` <-\n" + (dim.empty() ? "c(" : "structure(c(");
  for (std::size_t i = 0; i < values.size(); ++i) {
    text += i > 0 ? ", " : "";
    text += std::isnan(values[i]) ? "NA" : fmt::format("{}", values[i]);
  }
  return text + (dim.empty() ? ")\n" : "), .Dim = c(" + dim + "))\n");
}

inline std::string jags_data(const Reduced& reduced) {
  const JointShow& show = reduced.show;
  const double unknown = std::numeric_limits<double>::quiet_NaN();
  const int years = show.years.length();
  const std::size_t makers = show.makers.size() + 1;
  std::vector<double> span, say, maker, year, po, co, x, told, ps;
  std::vector<double> listed(makers, 1), alpha(makers, 1);
  listed[0] = 0;
  alpha[0] = 2;
  for (int t = 0; t < years; ++t) {  // column by column
    for (std::size_t m = 0; m < makers; ++m) {
      const auto [s, e] = m == 0 ? std::pair{0, years - 1} : *show.makers[m - 1].known_span;
      span.push_back(t >= s && t <= e ? 1.0 / (e - s + 1) : 0);
    }
    for (int from = 0; from < years; ++from) {
      say.push_back(chance_told(t, from, years));
    }
  }
  for (std::size_t i = 0; i < show.pieces.size(); ++i) {
    const JointPiece& piece = show.pieces[i];
    maker.push_back(piece.maker < 0 ? unknown : static_cast<double>(piece.maker + 1));
    const bool open =
        std::find(reduced.open.begin(), reduced.open.end(), i) != reduced.open.end();
    year.push_back(open ? unknown
                        : static_cast<double>(std::max_element(piece.year_weight.begin(),
                                                               piece.year_weight.end()) -
                                              piece.year_weight.begin() + 1));
    for (std::size_t c = 0; c < piece.values.size(); ++c) {
      if (piece.values[c] >= 0) {
        po.push_back(static_cast<double>(i + 1));
        co.push_back(static_cast<double>(c + 1));
        x.push_back(piece.values[c] + 1);
      }
    }
    if (reduced.told[i] >= 0) {
      told.push_back(reduced.told[i] + 1);
      ps.push_back(static_cast<double>(i + 1));
    }
  }
  return fmt::format("C <- {}\nM <- {}\nT <- {}\nN <- {}\nO <- {}\nS <- {}\n",
                     show.characters.size(), makers, years, show.pieces.size(), x.size(),
                     told.size()) +
         r_vector("alpha", alpha) + r_vector("base", {2.0 / 3, 2.0 / 3, 2.0 / 3}) +
         r_vector("first", {-std::log(2.0), 0}) + r_vector("listed", listed) +
         r_vector("span", span, fmt::format("{}, {}", makers, years)) +
         r_vector("say", say, fmt::format("{}, {}", years, years)) + r_vector("maker", maker) +
         r_vector("year", year) + r_vector("po", po) + r_vector("co", co) + r_vector("x", x) +
         r_vector("told", told) + r_vector("ps", ps);
}

// The draws of one JAGS run of four chains, thinned by ten, in the order of chain_draws; empty
// if it could not run. `seconds`: processor time of the child.
inline std::vector<Chains> jags_draws(const Reduced& reduced, int sweeps, double& seconds) {
  const auto folder = std::filesystem::temp_directory_path() /
                      fmt::format("backmark_jags_{}", reduced.show.pieces.size());
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "model.txt") << jags_model();
  std::ofstream(folder / "data.txt") << jags_data(reduced);
  std::string script = "model in model.txt\ndata in data.txt\ncompile, nchains(4)\n";
  for (int k = 1; k <= 4; ++k) {
    const double w[4] = {0.10, 0.35, 0.65, 0.90};
    std::ofstream(folder / fmt::format("start{}.txt", k))
        << fmt::format("`.RNG.name` <- \"base::Mersenne-Twister\"\n`.RNG.seed` <- {}\n", 40 + k)
        << r_vector("w", std::vector<double>(reduced.show.characters.size(), w[k - 1]));
    script += fmt::format("parameters in start{}.txt, chain({})\n", k, k);
  }
  script += fmt::format(
      "initialize\nupdate 2000\nmonitor year, thin(10)\nmonitor w, thin(10)\nupdate {}\ncoda "
      "*\n",
      sweeps);
  std::ofstream(folder / "run.cmd") << script;
  rusage before{}, after{};
  getrusage(RUSAGE_CHILDREN, &before);
  if (std::system(("cd " + folder.string() + " && jags run.cmd > log.txt 2>&1").c_str()) != 0) {
    return {};
  }
  getrusage(RUSAGE_CHILDREN, &after);
  seconds = static_cast<double>(after.ru_utime.tv_sec - before.ru_utime.tv_sec) +
            1e-6 * static_cast<double>(after.ru_utime.tv_usec - before.ru_utime.tv_usec);
  // CODAindex.txt: name first last; CODAchainK.txt: two columns.
  std::vector<std::string> wanted;
  for (const std::size_t i : reduced.open) {
    wanted.push_back(fmt::format("year[{}]", i + 1));
  }
  for (std::size_t c = 0; c < reduced.show.characters.size(); ++c) {
    wanted.push_back(fmt::format("w[{}]", c + 1));
  }
  std::vector<Chains> all(wanted.size(), Chains(4));
  for (std::size_t k = 0; k < 4; ++k) {
    std::ifstream chain(folder / fmt::format("CODAchain{}.txt", k + 1));
    std::vector<double> values;
    for (double at = 0, value = 0; chain >> at >> value;) {
      values.push_back(value);
    }
    std::ifstream index(folder / "CODAindex.txt");
    std::string name;
    for (std::size_t first = 0, last = 0; index >> name >> first >> last;) {
      const auto q = static_cast<std::size_t>(std::find(wanted.begin(), wanted.end(), name) -
                                              wanted.begin());
      if (q < wanted.size() && last <= values.size()) {
        const double shift = q < reduced.open.size() ? 1 : 0;
        for (std::size_t i = first - 1; i < last; ++i) {
          all[q][k].push_back(values[i] - shift);
        }
      }
    }
  }
  std::filesystem::remove_all(folder);
  return all;
}

}  // namespace backmark::evidence
