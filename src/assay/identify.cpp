#include "assay/identify.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "assay/ivory.h"
#include "assay/likelihood.h"
#include "assay/next_test.h"
#include "base/text.h"

namespace backmark::assay {

namespace {

using reference::Material;

constexpr double least_shown = 0.001;

Result<Done> known_word(const std::string& what,
                        const std::string& word,
                        const std::vector<std::string>& words) {
  if (word.empty() || std::find(words.begin(), words.end(), word) != words.end()) {
    return Done{};
  }
  const auto near = closest(word, words);
  return Problem{
      Fault::bad_input, fmt::format("\"{}\" is no word for {}", word, what), "",
      near ? fmt::format("did you mean \"{}\"?", *near) : "write one of: " + join(words, ", ")};
}

std::vector<std::string> structures() {
  std::set<std::string> words;
  for (const Material& material : reference::materials()) {
    words.insert(material.seen.begin(), material.seen.end());
  }
  return {words.begin(), words.end()};
}

Result<Done> check_words(const Bench& bench) {
  const std::vector<std::string> glow{"inert", "weak", "strong"};
  std::vector<std::string> marks;
  for (const auto& mark : reference::fineness_marks()) {
    marks.push_back(mark.mark);
  }
  for (const auto& [what, word, words] :
       {std::tuple{"long-wave fluorescence", bench.uv_long, glow},
        std::tuple{"short-wave fluorescence", bench.uv_short, glow},
        std::tuple{"the pull of a magnet", bench.magnet,
                   std::vector<std::string>{"no", "weak", "yes"}},
        std::tuple{"a mark of fineness", lower_ascii(bench.fineness_mark), marks},
        std::tuple{
            "a kind of material", bench.group,
            std::vector<std::string>{"stone", "organic", "synthetic", "glass", "metal"}}}) {
    if (auto fine = known_word(what, word, words); !fine) {
      return fine;
    }
  }
  for (const std::string& one : bench.seen) {
    if (auto fine = known_word("what is seen under the loupe", one, structures()); !fine) {
      return fine;
    }
  }
  return Done{};
}

Result<Done> check_readings(const Bench& bench) {
  if (bench.spot_index && (*bench.spot_index < spot_least || *bench.spot_index > spot_most)) {
    return Problem{Fault::refused,
                   fmt::format("no spot is read at {:g}: the method reaches from {:g} to {:g}",
                               *bench.spot_index, spot_least, spot_most),
                   "", "above the limit write spot_ri=over"};
  }
  if (bench.angle && !(*bench.angle > 0 && *bench.angle < 180)) {
    return Problem{Fault::refused, fmt::format("{:g} is no angle of lines", *bench.angle), "",
                   "give the angle between crossing lines in degrees"};
  }
  return Done{};
}

void note_angles(const Bench& bench, Identified& out) {
  if (!bench.angle) {
    return;
  }
  if (bench.angles < enough_angles) {
    out.notes.push_back(fmt::format(
        "{} angle{} of {:g} degrees decide{} little: single angles of elephant reach "
        "down to 95, of mammoth up to 115; take the mean of at least five concave and "
        "five convex outer ones and write schreger_n=10",
        bench.angles == 1 ? std::string("one") : fmt::format("{}", bench.angles),
        bench.angles == 1 ? "" : "s", *bench.angle, bench.angles == 1 ? "s" : ""));
  }
  out.notes.push_back(
      "the rule holds for the outer lines near the cement only, and one carved hippopotamus "
      "tooth "
      "showed the like; a trained examiner decides");
}

// A range of indices that a reading reaches only with its error.
std::string borderline(const Material& material, const Bench& bench) {
  if (!bench.spot_index || !material.index_low) {
    return "";
  }
  const double x = *bench.spot_index;
  const bool inside = x >= *material.index_low && x <= *material.index_high;
  return inside ? "" : fmt::format("spot index {:.2f} only within its error of 0.01", x);
}

Problem nothing_left(const Bench& bench) {
  std::string fix =
      "look whether it is set, hollow, glued, dyed or of two materials, and measure "
      "again";
  if (bench.density && bench.spot_index) {
    fix += "; density and index may be of different parts";
  }
  return {Fault::refused, "no material of the table goes with all of these readings", "", fix};
}

}  // namespace

const std::vector<std::string>& never() {
  static const std::vector<std::string> list{"hot needle",
                                             "acetone, alcohol or any solvent",
                                             "acid drop or touchstone with acids",
                                             "scratch or streak",
                                             "tooth test",
                                             "rubbing for static or smell",
                                             "heavy liquid",
                                             "sampling without consent"};
  return list;
}

std::vector<Weighed> weigh(const Bench& bench) {
  const std::vector<Test> tests = tests_of(bench);
  std::vector<Weighed> weighed;
  for (const Material& material : reference::materials()) {
    if (bench.group.empty() || bench.group == material.group) {
      weighed.push_back({&material, 1, ""});
    }
  }
  for (const Test test : tests) {
    std::vector<Fit> fits;
    double best = 0;
    for (const Weighed& one : weighed) {
      fits.push_back(fit(*one.material, bench, test));
      best = std::max(best, fits.back().likelihood);
    }
    for (std::size_t i = 0; i < weighed.size(); ++i) {
      const double share = best > 0 ? fits[i].likelihood / best : 1;
      weighed[i].weight *= std::max(share, 1 / cap(test));
      if (!fits[i].excluded.empty()) {
        weighed[i].excluded += (weighed[i].excluded.empty() ? "" : "; ") + fits[i].excluded;
      }
    }
  }
  return weighed;
}

Result<Identified> identify(const Bench& bench) {
  if (auto fine = check_words(bench); !fine) {
    return fine.problem();
  }
  if (auto fine = check_readings(bench); !fine) {
    return fine.problem();
  }
  Identified out;
  std::vector<Weighed> left;
  double sum = 0;
  for (Weighed& one : weigh(bench)) {
    if (one.excluded.empty()) {
      sum += one.weight;
      left.push_back(std::move(one));
    } else {
      out.excluded.push_back({one.material->name, one.excluded});
    }
  }
  if (left.empty()) {
    return nothing_left(bench);
  }
  for (Weighed& one : left) {
    one.weight /= sum;
    if (one.weight >= least_shown) {
      out.candidates.push_back(
          {one.material->name, one.weight, borderline(*one.material, bench)});
    }
  }
  std::stable_sort(out.candidates.begin(), out.candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.p > b.p; });
  note_angles(bench, out);
  if (!bench.fineness_mark.empty()) {
    out.notes.emplace_back("a mark of fineness is a claim, not an assay");
  }
  out.next = next_tests(bench, left);
  return out;
}

}  // namespace backmark::assay
