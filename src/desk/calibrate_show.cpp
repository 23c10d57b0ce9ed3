#include <cmath>
#include <filesystem>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/kept_calibration.h"
#include "desk/reckoned.h"
#include "evidence/trial.h"
#include "press/calibration_plot.h"

namespace backmark::desk {

namespace {

using model::Calibration;
using model::Trust;

const char* trust_word(Trust trust) {
  switch (trust) {
    case Trust::trusted:
      return "trusted";
    case Trust::too_sure:
      return "too sure";
    case Trust::too_cautious:
      return "too cautious";
    case Trust::too_few:
      return "too few to tell";
  }
  return "";
}

double rounded(double value) {
  return std::round(value * 10000) / 10000;
}

Json share_json(const model::SaidShare& share) {
  return {{"said", rounded(share.said)},
          {"seen", rounded(share.seen.share)},
          {"low", rounded(share.seen.low)},
          {"high", rounded(share.seen.high)},
          {"pieces", share.pieces},
          {"trials", rounded(share.seen.trials)},
          {"verdict", trust_word(share.trust)}};
}

Json shares_json(const std::vector<model::SaidShare>& shares) {
  Json list = Json::array();
  for (const model::SaidShare& share : shares) {
    list.push_back(share_json(share));
  }
  return list;
}

Json coverage_json(const model::YearCalibration& years) {
  Json json;
  const char* names[3] = {"50", "80", "95"};
  for (std::size_t s = 0; s < 3; ++s) {
    json[names[s]] = rounded(years.coverage[s].seen.share);
  }
  return json;
}

Json groups_json(const Calibration& found) {
  Json list = Json::array();
  for (const model::CalibrationGroup& group : found.groups) {
    list.push_back({{"kind", group.kind},
                    {"name", group.name},
                    {"n_years", group.years.pieces},
                    {"lots", rounded(group.years.lots)},
                    {"coverage", coverage_json(group.years)},
                    {"median_width_80", group.years.median_width_80},
                    {"median_error", group.years.median_error},
                    {"log_score", rounded(group.years.log_score)},
                    {"verdict", trust_word(group.years.trust)}});
  }
  return list;
}

Json before_json(const model::YearCalibration& years) {
  Json list = Json::array();
  for (const model::BeforeCheck& check : years.before) {
    list.push_back({{"year", check.year.value},
                    {"n", check.pieces},
                    {"ece", rounded(check.calibration_error)},
                    {"sure", check.sure},
                    {"sure_right", check.sure_right}});
  }
  return list;
}

Json to_json(const Calibration& found) {
  const auto& years = found.years;
  const auto& makers = found.makers;
  return {{"by_lot", found.by_lot},
          {"folds", found.folds},
          {"n_years", years.pieces},
          {"lots", rounded(years.lots)},
          {"coverage", coverage_json(years)},
          {"coverage_detail", shares_json({years.coverage.begin(), years.coverage.end()})},
          {"median_width_80", years.median_width_80},
          {"median_error", years.median_error},
          {"log_score", rounded(years.log_score)},
          {"log_score_any", rounded(years.log_score_any)},
          {"ranks", years.ranks},
          {"steps", shares_json(years.steps)},
          {"before", before_json(years)},
          {"years_verdict", trust_word(years.trust)},
          {"n_makers", makers.pieces},
          {"maker_groups", makers.groups},
          {"maker_top1", rounded(makers.top_1)},
          {"maker_top3", rounded(makers.top_3)},
          {"maker_log_loss", rounded(makers.log_loss)},
          {"maker_ece", rounded(makers.calibration_error)},
          {"maker_ece_chance", rounded(makers.chance_of_error)},
          {"maker_bins", shares_json(makers.bins)},
          {"n_unlisted", makers.unlisted},
          {"listed_auc", rounded(makers.listed_auc)},
          {"makers_verdict", trust_word(makers.trust)},
          {"verdict", {evidence::verdict(years), evidence::verdict(makers)}},
          {"groups", groups_json(found)},
          {"notes", found.notes}};
}

std::string years_text(const model::YearCalibration& years) {
  std::string text = fmt::format(
      "Years: {} hidden and found again, in lots that count as {:.0f}\n"
      "  said to hold   did           chance leaves open\n",
      years.pieces, years.lots);
  for (const model::SaidShare& share : years.coverage) {
    text +=
        fmt::format("  {:>4.0f} in 20      {:>4.1f} in 20    {:>4.1f} to {:.1f} in 20   {}\n",
                    20 * share.said, 20 * share.seen.share, 20 * share.seen.low,
                    20 * share.seen.high, trust_word(share.trust));
  }
  text += fmt::format(
      "  The 16-in-20 span is {:.0f} years wide and the middle {:.0f} years off, at the "
      "median.\n"
      "  Log score {:.3f}; one curve for every piece would score {:.3f}.\n",
      years.median_width_80, years.median_error, years.log_score, years.log_score_any);
  for (const model::BeforeCheck& check : years.before) {
    text += fmt::format(
        "  Made before {}: off by {:.3f} on average over {} pieces; {} of {} sure answers "
        "right\n",
        check.year.value, check.calibration_error, check.pieces, check.sure_right, check.sure);
  }
  return text;
}

std::string makers_text(const model::MakerCalibration& makers) {
  std::string text;
  if (makers.pieces > 0) {
    text = fmt::format(
        "Makers: {} pieces by hands of whom five stayed in view, {} lots by hand\n"
        "  First name right {:.1f} in 20, among the first three {:.1f} in 20; log loss "
        "{:.2f}.\n"
        "  Said and right are {:.3f} apart on average.\n",
        makers.pieces, makers.groups, 20 * makers.top_1, 20 * makers.top_3, makers.log_loss,
        makers.calibration_error);
  } else {
    text = "Makers: of no hidden hand did five pieces stay in view.\n";
  }
  if (makers.listed_auc > 0) {
    text += fmt::format(
        "  By anyone on the list? A piece that is gets the better odds {:.1f} times in 20 "
        "({} are not).\n",
        20 * makers.listed_auc, makers.unlisted);
  }
  return text;
}

std::string groups_text(const Calibration& found) {
  std::string text =
      "\nBy group              pieces  10, 16, 19 in 20 held     off, years  may be trusted\n";
  for (const model::CalibrationGroup& group : found.groups) {
    const auto& years = group.years;
    text += fmt::format("  {} {:>6}  {:>4.1f}  {:>4.1f}  {:>4.1f}         {:>6.0f}       {}\n",
                        padded(shortened(group.kind + ": " + group.name, 19), 19), years.pieces,
                        20 * years.coverage[0].seen.share, 20 * years.coverage[1].seen.share,
                        20 * years.coverage[2].seen.share, years.median_error,
                        trust_word(years.trust));
  }
  return text;
}

std::string to_text(const Calibration& found) {
  std::string text = evidence::verdict(found.years) + "\n" + evidence::verdict(found.makers) +
                     "\n\n" + years_text(found.years) + makers_text(found.makers) +
                     (found.groups.empty() ? "" : groups_text(found));
  for (const std::string& note : found.notes) {
    text += note + "\n";
  }
  return text +
         fmt::format(
             "Rule: a span is too sure (or cautious) when it held {:.1f} in 20 less (more) "
             "often than said and chance does\nthat less than once in 100; below {:.0f} "
             "lots nothing is said.\n",
             20 * evidence::slack, evidence::least_lots);
}

Result<Done> write_plots(const Path& prints, const Calibration& found) {
  const auto fonts = draw::Fonts::load();
  if (!fonts) {
    return fonts.problem();
  }
  const auto svg = press::calibration_svg(*fonts, found);
  const auto pdf = press::calibration_pdf(*fonts, found);
  if (!svg || !pdf) {
    return svg ? pdf.problem() : svg.problem();
  }
  std::error_code failed;
  std::filesystem::create_directories(prints, failed);
  if (auto written = write_file(prints / "calibration.svg", *svg); !written) {
    return written;
  }
  return write_file(prints / "calibration.pdf", *pdf);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto settings = settings_of(call, around);
  const auto folds = call.whole("folds", 10);
  if (!settings || !folds) {
    return settings ? folds.problem() : settings.problem();
  }
  if (*folds < 2 || *folds > 1000) {
    return Problem{Fault::bad_input, "known pieces are hidden in 2 to 1000 parts", "--folds",
                   "write 10"};
  }
  const evidence::TrialPlan plan{static_cast<std::size_t>(*folds), call.flag("by-lot")};
  const auto trials = evidence::run_trials(open->show, *settings, plan,
                                           watch_of(around, "hiding and finding again"));
  if (!trials) {
    return trials.problem();
  }
  around.progress(1, "");
  const Calibration found = evidence::calibration_of(*trials, plan);
  const Path prints = open->store.folder() / "prints";
  if (auto written = write_plots(prints, found); !written) {
    return written.problem();
  }
  Answer answer{.json = to_json(found), .text = to_text(found), .problems = {}};
  if (auto kept = keep_calibration(*open, answer.json, around.now); !kept) {
    return kept.problem();
  }
  answer.json["plots"] = {"prints/calibration.svg", "prints/calibration.pdf"};
  answer.text += "Drawn in prints/calibration.svg and prints/calibration.pdf.\n";
  return answer;
}

}  // namespace

Operation calibrate_show() {
  return {.name = "calibrate",
          .help = "hide known years and makers, find them again: may the odds be trusted?",
          .parameters = {show_folder(),
                         {.name = "by-lot",
                          .takes = Takes::flag,
                          .help = "hide whole lots (a set knows its own date)"},
                         {.name = "folds",
                          .takes = Takes::whole,
                          .help = "in how many parts (10): so many times the show is reckoned"},
                         seed_parameter(),
                         unlisted_parameter(),
                         chains_parameter(),
                         rounds_parameter()},
          .run = run};
}

}  // namespace backmark::desk
