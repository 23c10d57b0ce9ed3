#include "desk/formulas.h"

#include "base/amount.h"
#include "desk/bench_formulas.h"
#include "desk/formula_lists.h"
#include "evidence/statement.h"
#include "press/labels.h"
#include "words/score.h"

namespace backmark::desk {

namespace {

constexpr double any = 1e12;

int whole(double number) {
  return static_cast<int>(number);
}

// A statement of reliability r against all else, whose weight of evidence for it is b. The
// engine's own function, on a grid of two years of which the statement allows the first.
double still_wrong(double r, double b) {
  const evidence::StatementFactor factor{r, {2, 0}, {}};
  return evidence::wrong_probability(factor, {b / 2, 1 - b / 2});
}

std::vector<Formula> own_formulas() {
  return {
      {"label_text",
       "type size of label text for a reading distance",
       {{"distance", "mm", 100, 1000}},
       "pt",
       "house rule, common practice level: x-height = distance / 192",
       "the size of the next distance that a label is made for",
       [](const std::vector<double>& in) { return press::object_rule(in[0]).text_pt; }},
      {"label_title",
       "type size of a label's title for a reading distance",
       {{"distance", "mm", 100, 1000}},
       "pt",
       "house rule, common practice level: x-height = distance / 135",
       "",
       [](const std::vector<double>& in) { return press::object_rule(in[0]).title_pt; }},
      {"points",
       "millimetres as points of paper",
       {{"length", "mm", -any, any}},
       "pt",
       "1 inch = 25.4 mm = 72 points",
       "",
       [](const std::vector<double>& in) { return to_points({in[0]}).value; }},
      {"millimetres",
       "points of paper as millimetres",
       {{"length", "pt", -any, any}},
       "mm",
       "1 inch = 25.4 mm = 72 points",
       "",
       [](const std::vector<double>& in) { return to_millimetres({in[0]}).value; }},
      {"rate_low",
       "lower end of the 90 % interval of a rate",
       {{"hits", "", 0, 1e9}, {"n", "", 1, 1e9}},
       "",
       "E. B. Wilson 1927, Journal of the American Statistical Association 22",
       "",
       [](const std::vector<double>& in) {
         return words::wilson(whole(in[0]), whole(in[1])).low;
       }},
      {"rate_high",
       "upper end of the 90 % interval of a rate",
       {{"hits", "", 0, 1e9}, {"n", "", 1, 1e9}},
       "",
       "E. B. Wilson 1927, Journal of the American Statistical Association 22",
       "",
       [](const std::vector<double>& in) {
         return words::wilson(whole(in[0]), whole(in[1])).high;
       }},
      {"empty_talk",
       "chance that a statement is empty talk",
       {{"reliability", "", 0, 1}, {"for", "", 0, 2}},
       "",
       "Bayes' rule: (1 - r) / ((1 - r) + r B)",
       "for: weight of all other evidence for what was said; 1 says nothing, 0 rules it out",
       [](const std::vector<double>& in) { return still_wrong(in[0], in[1]); }},
  };
}

}  // namespace

double Given::number(const std::string& name, double fallback) const {
  const auto at = numbers_.find(name);
  return at == numbers_.end() ? fallback : at->second;
}

double Given::number(const std::string& name) const {
  const auto at = numbers_.find(name);
  if (at == numbers_.end()) {
    throw BrokenPromise("a formula asks for \"" + name + "\", which it lets be left out");
  }
  return at->second;
}

std::string Given::text(const std::string& name) const {
  const auto at = texts_.find(name);
  return at == texts_.end() ? std::string() : at->second;
}

Problem missing_input(const std::string& what, const std::string& fix) {
  return {Fault::bad_input, what, "", fix};
}

const std::vector<Formula>& formulas() {
  static const std::vector<Formula> list = [] {
    std::vector<Formula> all = own_formulas();
    for (auto* subject :
         {weighing_formulas, alloy_formulas, stone_formulas, legibility_formulas,
          light_formulas, lamp_formulas, air_formulas, buffer_formulas, load_formulas,
          schedule_formulas, access_formulas, book_formulas}) {
      const auto more = subject();
      all.insert(all.end(), more.begin(), more.end());
    }
    return all;
  }();
  return list;
}

}  // namespace backmark::desk
