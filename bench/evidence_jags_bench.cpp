// The sampler on the reduced model: against the exact answer, against JAGS, and effective draws
// of the worst year and the slowest habit share for each processor second of both. Usage:
// bench_evidence_jags [JAGS SWEEPS]
#include <algorithm>
#include <cmath>
#include <ctime>

#include "evidence/reduced_model.h"

namespace {

using namespace backmark::evidence;

double variance(const Chains& chains) {
  double sum = 0;
  double squares = 0;
  double count = 0;
  for (const auto& chain : chains) {
    for (const double x : chain) {
      sum += x;
      squares += x * x;
      count += 1;
    }
  }
  return squares / count - sum / count * sum / count;
}

// Independent draws that the answer is worth: the error of its mean by batches, which see slow
// parts of a chain, against the variance of the quantity, which its draws have.
double worth(const Chains& answers, const Chains& draws) {
  const double error = batch_mean_error(answers, 20);
  return variance(draws) / (error * error);
}

struct Speed {
  double year = 1e300, habit = 1e300, rhat = 1;
};

Speed speed_of(const std::vector<Chains>& answers,
               const std::vector<Chains>& draws,
               std::size_t years,
               double seconds) {
  Speed speed;
  for (std::size_t q = 0; q < draws.size(); ++q) {
    double& least = q < years ? speed.year : speed.habit;
    least = std::min(least, worth(answers[q], draws[q]) / seconds);
    speed.rhat = std::max(speed.rhat, rank_rhat(draws[q]));
  }
  return speed;
}

void run(const char* name, const ReducedPlan& plan, int exact_draws, int sweeps) {
  const Reduced reduced = make_reduced(plan);
  const Means exact = exact_means(reduced, exact_draws, 3);
  const std::clock_t start = std::clock();
  const ChainRun ours = run_chains(reduced, 4, 20000, 1);
  const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  const std::size_t years = reduced.open.size();
  const Speed our_draws = speed_of(ours.draws, ours.draws, years, seconds);
  const Speed our_speed = speed_of(ours.answers, ours.draws, years, seconds);
  Agreed agreed = agreement(means_of(ours.answers), exact);
  fmt::print("case {}: exact worth {:.0f} draws; z against it: sd {:.2f}, worst {:.2f}\n", name,
             exact.effective, agreed.sd, agreed.worst);
  fmt::print(
      "  backmark: R-hat {:.4f}, {:.1f} CPU s; a CPU second is worth {:.0f} draws of the worst "
      "year ({:.0f} by draws alone), {:.0f} of the slowest habit share\n",
      our_draws.rhat, seconds, our_speed.year, our_draws.year, our_speed.habit);
  if (!jags_is_here()) {
    fmt::print("  skipped: jags is not installed\n");
    return;
  }
  double their_seconds = 0;
  const auto theirs = jags_draws(reduced, sweeps, their_seconds);
  const Speed their_speed = speed_of(theirs, theirs, years, their_seconds);
  fmt::print("  JAGS:     R-hat {:.4f}, {:.1f} CPU s; {:.1f} and {:.1f}\n", their_speed.rhat,
             their_seconds, their_speed.year, their_speed.habit);
  agreed = agreement(means_of(theirs), exact);
  fmt::print("  JAGS against exact: sd {:.2f}, worst {:.2f}", agreed.sd, agreed.worst);
  agreed = agreement(means_of(theirs), means_of(ours.answers));
  fmt::print("; against backmark: sd {:.2f}, worst {:.2f}\n", agreed.sd, agreed.worst);
  fmt::print(
      "  ratio: {:.0f} x for the worst year ({:.0f} x by draws alone), {:.0f} x for the "
      "slowest "
      "habit share\n",
      our_speed.year / their_speed.year, our_draws.year / their_speed.year,
      our_speed.habit / their_speed.habit);
}

}  // namespace

int main(int count, char** arguments) {
  const int sweeps = count > 1 ? std::atoi(arguments[1]) : 40000;
  run("A", case_a(), 1000000, sweeps);
  run("B", case_b(), 1000000, sweeps);
  return 0;
}
