#include <algorithm>

#include "base/text.h"
#include "scenario/bench.h"
#include "scenario/coast.h"
#include "scenario/scenario.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

constexpr std::uint64_t habits_stream = 1;
constexpr std::uint64_t first_piece_stream = 1000;

std::vector<Habits> all_habits(std::uint64_t seed) {
  Random random = Random::stream(seed, habits_stream);
  std::vector<Habits> habits;
  for (const MakerCard& card : makers()) {
    habits.push_back(form_habits(random, card));
  }
  return habits;
}

int pick_maker(Random& random) {
  static const std::vector<double> shares = [] {
    std::vector<double> weights;
    double total = 0;
    for (const MakerCard& card : makers()) {
      weights.push_back(card.share);
      total += card.share;
    }
    weights.push_back(total * unrecorded_share / (1 - unrecorded_share));
    return weights;
  }();
  const auto at = random.weighted(shares);
  return at == makers().size() ? -1 : static_cast<int>(at);
}

Year pick_year(Random& random, int maker) {
  if (maker < 0) {
    return Year{std::clamp(static_cast<int>(1957 + 11 * random.normal()), 1936, 1985)};
  }
  const YearSpan span = makers()[static_cast<std::size_t>(maker)].worked;
  const double even = random.uniform();
  const double humped = (random.uniform() + random.uniform()) / 2;
  const double at = random.chance(0.5) ? even : humped;
  return span.first + static_cast<int>(at * span.length());
}

// The year, or the last one in which the maker worked.
Year latest_of(int maker, Year year) {
  return maker < 0 ? year
                   : std::min(year, makers()[static_cast<std::size_t>(maker)].worked.last);
}

void inscribe(Random& random, Work& work) {
  static const std::vector<std::string> dedications{"TO R.A. FROM THE CREW", "FOR THE PILOT",
                                                    "E. TO M.", "REGATTA WEEK", "K.L."};
  if (random.chance(0.055)) {
    work.inscription = fmt::format("{}", work.made.value);
  } else if (random.chance(0.03)) {
    work.inscription = dedications[random.below(dedications.size())];
  }
}

// A sibling of `head` in one lot: the same bench and season, mostly the same back.
Work sibling(Random& random, const Work& head, const Habits* own) {
  const Year year = latest_of(head.maker, head.made + (random.chance(0.3) ? 1 : 0));
  Work work = make_work(random, head.maker, own, year);
  if (head.worn_on_cord() && work.worn_on_cord() && random.chance(0.8)) {
    work.fitting = head.fitting;
    work.cord = head.cord;
    work.colour = head.colour;
    work.tips = head.tips;
    work.cord_thickness = head.cord_thickness;
    work.cord_length = head.cord_length;
    work.tip_length = head.tip_length;
    work.wide_button = head.wide_button;
    work.bar_kind = head.bar_kind;
    work.clip_legend = head.clip_legend;
  }
  return work;
}

// The show's two best-known pieces, as its essays speak of them, and the earliest of all.
void plant(std::uint64_t seed, std::vector<Work>& works, const std::vector<Habits>& habits) {
  if (works.size() < 150) {
    return;
  }
  const auto put = [&](std::size_t at, int maker, Year year, auto change) {
    Random random = Random::stream(seed, 10 + at);
    const Habits* own = &habits[static_cast<std::size_t>(maker)];
    Work work = make_work(random, maker, own, year);
    while (!(work.form == Form::slide_tie && change(work))) {
      work = make_work(random, maker, own, year);
    }
    work.lot = works[at].lot;
    work.acquired = year + 20;
    works[at] = work;
  };
  put(117, 6, Year{1954}, [](Work& work) {
    if (work.motif != Motif::scallop) {
      return false;
    }
    work.metal = work.tip_metal = Metal::silver;
    work.stones = {Stone::ormer, Stone::jet, Stone::none};
    work.fitting = Fitting::figure_eight;
    work.cord = CordType::vinyl_braid;
    work.colour = CordColour::black;
    work.tips = {TipForm::cone, TipForm::cone};
    work.cord_replaced = Year{1969};
    work.mark = {"VESSEN", "ENNET"};
    work.mark_form = MarkForm::stamped;
    return true;
  });
  put(56, 4, Year{1953}, [](Work& work) {
    if (work.motif != Motif::rayed_field) {
      return false;
    }
    work.metal = work.tip_metal = Metal::silver;
    work.stones = {Stone::serpentine, Stone::none, Stone::none};
    work.border = Border::rope;
    work.fitting = Fitting::bar;
    work.bar_kind = 1;
    work.cord = CordType::plaited_leather;
    work.colour = CordColour::brown;
    work.tips = {TipForm::ball, TipForm::ball};
    work.mark = {"M.OSKELD"};
    work.mark_outline = MarkOutline::rectangle;
    work.mark_form = MarkForm::stamped;
    return true;
  });
  put(4, 0, Year{1932}, [](Work& work) { return work.motif == Motif::net_lozenge; });
  put(30, 0, Year{1934}, [](Work& work) {
    work.inscription = "1934";
    return true;
  });
  put(22, 2, Year{1941}, [](Work& work) {
    work.inscription = "TO R.A. FROM THE CREW";
    return true;
  });
}

std::vector<Work> all_works(const Options& options, const std::vector<Habits>& habits) {
  std::vector<Work> works;
  works.reserve(static_cast<std::size_t>(options.pieces));
  int lots = 0;
  int left_in_lot = 0;
  Work head;
  for (int i = 0; i < options.pieces; ++i) {
    Random random =
        Random::stream(options.seed, first_piece_stream + static_cast<std::uint64_t>(i));
    const int maker = left_in_lot > 0 ? head.maker : pick_maker(random);
    const Habits* own = maker < 0 ? nullptr : &habits[static_cast<std::size_t>(maker)];
    Work work = left_in_lot > 0 ? sibling(random, head, own)
                                : make_work(random, maker, own, pick_year(random, maker));
    if (left_in_lot > 0) {
      --left_in_lot;
      work.lot = lots;
    } else if (random.chance(0.05)) {
      left_in_lot = 1 + static_cast<int>(random.below(3));
      work.lot = ++lots;
      head = work;
    }
    inscribe(random, work);
    age(random, work);
    works.push_back(std::move(work));
  }
  return works;
}

Truth truth_of(const Scenario& scenario) {
  Truth truth;
  const Work* first = nullptr;
  for (const Work& work : scenario.works) {
    PieceTruth piece{.number = work.number, .year = work.made};
    if (work.maker >= 0) {
      piece.maker = makers()[static_cast<std::size_t>(work.maker)].key;
      piece.names_maker = !work.mark.empty();
    }
    const auto note = [&](std::string_view kind, const std::optional<Year>& year) {
      if (year) {
        piece.replaced.push_back({std::string(kind), *year});
      }
    };
    note("fitting", work.fitting_replaced);
    note("cord", work.cord_replaced);
    note("tip", work.tips_replaced);
    truth.pieces.push_back(std::move(piece));
    if (work.form == Form::slide_tie && (first == nullptr || work.made < first->made)) {
      first = &work;
    }
  }
  if (first != nullptr && first->maker >= 0) {
    truth.first_maker = makers()[static_cast<std::size_t>(first->maker)].key;
    truth.first_year = first->made;
  }
  truth.lineages.push_back(
      {"clip_legend", "", clip_legends(), {std::begin(clip_changed), std::end(clip_changed)}});
  truth.lineages.push_back({"bar_kind", "", bar_kinds(), {bar_changed}});
  for (const MakerCard& card : makers()) {
    if (!card.changed.empty()) {
      std::vector<std::string> variants;
      for (const auto& legend : card.legends) {
        variants.push_back(replace_all(legend, "/", " "));
      }
      truth.lineages.push_back({"stamp", card.key, variants, card.changed});
    }
  }
  return truth;
}

}  // namespace

std::string Scenario::summary() const {
  return fmt::format("the invented Ennet coast, {} pieces, seed {}", options.pieces,
                     options.seed);
}

Result<Scenario> make(const Options& options) {
  if (options.pieces < 1 || options.pieces > most_pieces) {
    return Problem{Fault::refused,
                   fmt::format("a demo show of {} pieces cannot be made", options.pieces),
                   "--pieces", fmt::format("ask for 1 to {}", most_pieces)};
  }
  Scenario scenario;
  scenario.options = options;
  const auto habits = all_habits(options.seed);
  scenario.works = all_works(options, habits);
  plant(options.seed, scenario.works, habits);
  for (std::size_t i = 0; i < scenario.works.size(); ++i) {
    scenario.works[i].number = fmt::format("ES {:03}", i + 1);
    Random random = Random::stream(options.seed, 2'000'000 + i);
    testify(random, i, scenario.works[i], scenario.statements);
  }
  scenario.truth = truth_of(scenario);
  scenario.truth.stories = tell_wrong_stories(scenario.works, scenario.statements);
  std::stable_sort(scenario.statements.begin(), scenario.statements.end(),
                   [](const Statement& a, const Statement& b) { return a.work < b.work; });
  return scenario;
}

}  // namespace backmark::scenario
