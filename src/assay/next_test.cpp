#include "assay/next_test.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

#include "assay/ivory.h"
#include "assay/likelihood.h"

namespace backmark::assay {

namespace {

using reference::Material;

constexpr double least_gain = 0.01;    // bits
constexpr double porous_share = 0.05;  // chance from which a thing is not wetted
constexpr double usual_u = 0.01;       // g/cm3, of a density still to be taken

double entropy(const std::vector<double>& p) {
  double bits = 0;
  for (const double x : p) {
    bits -= x > 0 ? x * std::log2(x) : 0;
  }
  return bits;
}

// A possible reading and how likely each material makes it.
struct Outcome {
  Bench reading;
  Test test = Test::density;
};

std::vector<double> after(const std::vector<Weighed>& left, const Outcome& outcome) {
  std::vector<double> p;
  double best = 0;
  for (const Weighed& one : left) {
    const Fit seen = fit(*one.material, outcome.reading, outcome.test);
    p.push_back(seen.excluded.empty() ? seen.likelihood : 0);
    best = std::max(best, p.back());
  }
  double sum = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    p[i] = left[i].weight * std::max(best > 0 ? p[i] / best : 1, 1 / cap(outcome.test));
    sum += p[i];
  }
  for (double& x : p) {
    x /= sum;
  }
  return p;
}

// Each candidate foretells its own outcomes, all alike.
using Foretold = std::function<std::vector<Outcome>(const Material&)>;

double gain(const std::vector<Weighed>& left, const Foretold& foretold) {
  std::vector<double> now;
  double expected = 0;
  for (const Weighed& one : left) {
    now.push_back(one.weight);
    const std::vector<Outcome> outcomes = foretold(*one.material);
    if (one.weight < 1e-4 || outcomes.empty()) {
      expected += one.weight * 0;
      continue;
    }
    for (const Outcome& outcome : outcomes) {
      expected +=
          one.weight / static_cast<double>(outcomes.size()) * entropy(after(left, outcome));
    }
  }
  return std::max(0.0, entropy(now) - expected);
}

std::vector<Outcome> densities(const Material& material) {
  std::vector<Outcome> outcomes;
  for (const double step : {-0.65, -0.25, 0.0, 0.25, 0.65}) {
    const double reach = step < 0 ? material.density_usual - material.density_low
                                  : material.density_high - material.density_usual;
    Outcome outcome{.test = Test::density};
    outcome.reading.density = Density{material.density_usual + step * reach, usual_u};
    outcomes.push_back(outcome);
  }
  return outcomes;
}

std::vector<Outcome> indices(const Material& material) {
  std::vector<Outcome> outcomes;
  if (!material.index_low) {
    return outcomes;
  }
  for (const double share : {0.15, 0.5, 0.85}) {
    Outcome outcome{.test = Test::index};
    const double x = *material.index_low + share * (*material.index_high - *material.index_low);
    outcome.reading.index_over = x > spot_most;
    if (x <= spot_most) {
      outcome.reading.spot_index = std::max(x, spot_least);
    }
    outcomes.push_back(outcome);
  }
  return outcomes;
}

Foretold glows(Test test) {
  return [test](const Material& material) {
    std::vector<Outcome> outcomes;
    for (const std::string& word :
         test == Test::uv_long ? material.uv_long : material.uv_short) {
      Outcome outcome{.test = test};
      (test == Test::uv_long ? outcome.reading.uv_long : outcome.reading.uv_short) = word;
      outcomes.push_back(outcome);
    }
    return outcomes;
  };
}

std::vector<Outcome> pulls(const Material& material) {
  std::vector<Outcome> outcomes;
  for (const std::string& word : material.magnet) {
    Outcome outcome{.test = Test::magnet};
    outcome.reading.magnet = word;
    outcomes.push_back(outcome);
  }
  return outcomes;
}

// What a loupe would show; a material of which nothing is listed tells nothing by it.
double loupe_gain(const std::vector<Weighed>& left) {
  constexpr double shown = 0.6;
  std::vector<double> now;
  std::vector<double> nothing;
  double expected = 0;
  double blank = 0;
  std::set<std::string> words;
  for (const Weighed& one : left) {
    now.push_back(one.weight);
    nothing.push_back(one.weight * (one.material->seen.empty() ? 1 : 1 - shown));
    blank += nothing.back();
    words.insert(one.material->seen.begin(), one.material->seen.end());
  }
  for (double& x : nothing) {
    x /= blank;
  }
  expected += blank * entropy(nothing);
  for (const std::string& word : words) {
    Outcome outcome{.test = Test::seen};
    outcome.reading.seen = {word};
    double chance = 0;
    for (const Weighed& one : left) {
      const auto& seen = one.material->seen;
      chance += std::find(seen.begin(), seen.end(), word) != seen.end()
                    ? one.weight * shown / static_cast<double>(seen.size())
                    : 0;
    }
    expected += chance * entropy(after(left, outcome));
  }
  return std::max(0.0, entropy(now) - expected);
}

std::vector<Outcome> angles(const Material& material) {
  std::vector<Outcome> outcomes;
  if (material.name == "elephant ivory" || material.name == "mammoth ivory") {
    const AngleModel& model =
        material.name == "elephant ivory" ? elephant_angles : mammoth_angles;
    for (const double z : {-1.3, -0.5, 0.0, 0.5, 1.3}) {
      Outcome outcome{.test = Test::angle};
      outcome.reading.angle = model.mean + z * model.sd;
      outcome.reading.angles = 10;
      outcomes.push_back(outcome);
    }
  }
  return outcomes;
}

double share_of(const std::vector<Weighed>& left,
                const std::function<bool(const Material&)>& is) {
  double share = 0;
  for (const Weighed& one : left) {
    share += is(*one.material) ? one.weight : 0;
  }
  return share;
}

}  // namespace

std::vector<NextTest> next_tests(const Bench& bench, const std::vector<Weighed>& left) {
  const bool porous =
      share_of(left, [](const Material& one) { return one.porous; }) > porous_share;
  const bool opaque =
      share_of(left, [](const Material& one) { return !one.index_low.has_value(); }) > 0.95;
  const bool ivory = share_of(left, [](const Material& one) {
                       return one.name == "elephant ivory" || one.name == "mammoth ivory";
                     }) > 0.5;
  std::vector<NextTest> tests;
  const auto add = [&](bool open, NextTest test) {
    if (open && test.gain_bits >= least_gain) {
      tests.push_back(std::move(test));
    }
  };
  add(bench.seen.empty(), {"seen", loupe_gain(left), 5, "none: loupe or microscope"});
  add(bench.uv_long.empty(), {"uv_long", gain(left, glows(Test::uv_long)), 3,
                              "a few seconds of light; shield the eyes"});
  add(bench.uv_short.empty(), {"uv_short", gain(left, glows(Test::uv_short)), 3,
                               "a few seconds of light; shield eyes and skin"});
  add(bench.magnet.empty(),
      {"magnet", gain(left, pulls), 1, "none if held near; never slide it on silver"});
  add(!bench.angle && ivory, {"schreger_deg", gain(left, angles), 20,
                              "none: by microscope on a face that is there; cut none"});
  add(!bench.density,
      {"air_g and water_g", gain(left, densities), 15,
       porous ? "not to be done while it may be porous or organic: water soaks in and swells it"
              : "loose and bare only: not with cord, glue, foil, pores or pesticide residues",
       !porous});
  add(!bench.spot_index && !bench.index_over && !opaque,
      {"spot_ri", gain(left, indices), 10,
       porous ? "not to be done while it may be porous or organic: the contact liquid stains"
              : "the contact liquid is toxic: polished mineral surfaces only",
       !porous});
  std::stable_sort(tests.begin(), tests.end(), [](const NextTest& a, const NextTest& b) {
    return a.allowed != b.allowed ? a.allowed : a.gain_bits > b.gain_bits;
  });
  return tests;
}

}  // namespace backmark::assay
