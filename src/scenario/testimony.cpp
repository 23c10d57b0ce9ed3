#include "scenario/testimony.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "scenario/coast.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

int off(Random& random, double sd) {
  return static_cast<int>(std::lround(sd * random.normal()));
}

std::string maker_key(const Work& work) {
  return work.maker < 0 ? "" : makers()[static_cast<std::size_t>(work.maker)].key;
}

// The maker a dealer or a family would name: mostly right, else whoever is famous.
int named(Random& random, const Work& work, double right) {
  if (work.maker >= 0 && random.chance(right)) {
    return work.maker;
  }
  return random.chance(0.6) ? 6 : static_cast<int>(random.below(makers().size()));
}

void inscribe(std::size_t at, const Work& work, std::vector<Statement>& into) {
  if (const auto year = to_whole(work.inscription)) {
    const Year carved{static_cast<int>(*year)};
    into.push_back({.work = at,
                    .saying = Saying::inscribed,
                    .source = "piece",
                    .text = fmt::format("\"{}\" on the back", work.inscription),
                    .date = work.inscription,
                    .from = carved,
                    .to = carved});
  }
}

// A maker's own papers: the year to the year, and the name.
void look_up_papers(Random& random,
                    std::size_t at,
                    const Work& work,
                    std::vector<Statement>& into) {
  const std::string key = maker_key(work);
  const bool daybook = key == "vessen" && work.made >= Year{1950} && work.made <= Year{1963};
  const std::string source = daybook                 ? "vessen-day-book"
                             : key == "oskeld"       ? "oskeld-numbers"
                             : key == "ember-silver" ? "ember-ledger"
                                                     : "";
  if (source.empty() || !random.chance(0.22)) {
    return;
  }
  const std::string text =
      fmt::format("entry that fits this piece: {}, {}", word_of(work.motif), work.made.value);
  into.push_back({.work = at,
                  .saying = Saying::made,
                  .source = source,
                  .text = text,
                  .date = fmt::format("{}", work.made.value),
                  .from = work.made,
                  .to = work.made});
  into.push_back({.work = at,
                  .saying = Saying::made_by,
                  .source = source,
                  .text = text,
                  .maker = work.maker});
}

void find_receipt(Random& random,
                  std::size_t at,
                  const Work& work,
                  std::vector<Statement>& into) {
  if (random.chance(0.07)) {
    const Year bought = work.made + (random.chance(0.3) ? 1 : 0);
    into.push_back({.work = at,
                    .saying = Saying::made,
                    .source = "receipts",
                    .text = fmt::format("bought new, {}", bought.value),
                    .date = fmt::format("{}", bought.value),
                    .from = bought - 1,
                    .to = bought});
  }
}

void ask_dealer(Random& random,
                std::size_t at,
                const Work& work,
                std::vector<Statement>& into) {
  if (!random.chance(0.12)) {
    return;
  }
  const int guess = work.made.value + off(random, 6);
  const Year about{guess - guess % 5};
  into.push_back({.work = at,
                  .saying = Saying::made,
                  .source = "dealer-cards",
                  .text = fmt::format("\"about {}\"", about.value),
                  .date = fmt::format("about {}", about.value),
                  .from = about - 5,
                  .to = about + 5,
                  .approximate = true});
  if (random.chance(0.6)) {
    into.push_back({.work = at,
                    .saying = Saying::made_by,
                    .source = "dealer-cards",
                    .text = "name pencilled on the card",
                    .maker = named(random, work, 0.7),
                    .qualifier = "attributed to"});
  }
}

void ask_family(Random& random,
                std::size_t at,
                const Work& work,
                std::vector<Statement>& into) {
  if (!random.chance(0.08)) {
    return;
  }
  const Year told = work.made + off(random, 5);
  into.push_back({.work = at,
                  .saying = Saying::made,
                  .source = "families",
                  .text = fmt::format("\"my father had it by {}\"", told.value),
                  .date = fmt::format("about {}", told.value),
                  .from = told - 6,
                  .to = told + 2,
                  .approximate = true});
}

void read_catalogue(Random& random,
                    std::size_t at,
                    const Work& work,
                    std::vector<Statement>& into) {
  if (work.made >= Year{1972} || !random.chance(0.06)) {
    return;
  }
  const Year decade{(work.made.value + off(random, 2)) / 10 * 10};
  into.push_back({.work = at,
                  .saying = Saying::made,
                  .source = "harbour-show-1972",
                  .text = fmt::format("shown as \"{}s\"", decade.value),
                  .date = fmt::format("{}s", decade.value),
                  .from = decade,
                  .to = decade + 9});
  into.push_back({.work = at,
                  .saying = Saying::exhibited,
                  .source = "harbour-show-1972",
                  .text = "Silver of the Quays, Harbour Museum",
                  .date = "1972",
                  .from = Year{1972},
                  .to = Year{1972}});
}

void remember_occasion(Random& random,
                       std::size_t at,
                       const Work& work,
                       std::vector<Statement>& into) {
  if (random.chance(0.03)) {
    into.push_back({.work = at,
                    .saying = Saying::awarded,
                    .source = "regatta-programmes",
                    .text = "second prize for small silver, regatta week",
                    .date = fmt::format("{}-07", work.made.value),
                    .from = work.made,
                    .to = work.made,
                    .party = "Regatta committee"});
  } else if (random.chance(0.04)) {
    const Year ordered = work.made - (random.chance(0.4) ? 1 : 0);
    into.push_back({.work = at,
                    .saying = Saying::commissioned,
                    .source = "lifeboat-minutes",
                    .text = "ordered for the coxswain of the Corrow Light boat",
                    .date = fmt::format("{}", ordered.value),
                    .from = ordered,
                    .to = ordered,
                    .party = "Lifeboat committee"});
  }
}

void note_acquisition(Random& random,
                      std::size_t at,
                      const Work& work,
                      std::vector<Statement>& into) {
  if (random.chance(0.62)) {
    static const std::vector<std::string> from{"bought at a house sale", "bought from a dealer",
                                               "gift", "bequest", "bought at the quay market"};
    into.push_back({.work = at,
                    .saying = Saying::acquired,
                    .source = random.chance(0.3) ? "museum-register" : "collectors-lists",
                    .text = from[random.below(from.size())],
                    .date = fmt::format("{}", work.acquired.value),
                    .from = work.acquired,
                    .to = work.acquired});
  }
  if (work.cord_replaced && random.chance(0.12)) {
    into.push_back({.work = at,
                    .saying = Saying::altered,
                    .source = "collectors-lists",
                    .text = "new cord",
                    .date = fmt::format("{}", work.cord_replaced->value),
                    .from = work.cord_replaced,
                    .to = work.cord_replaced});
  }
}

// The first piece that a story could be told of and cannot be true of.
template <class Suits>
std::optional<std::size_t> find_work(const std::vector<Work>& works,
                                     std::size_t from,
                                     Suits suits) {
  for (std::size_t i = from; i < works.size(); ++i) {
    if (suits(works[i])) {
      return i;
    }
  }
  return std::nullopt;
}

Statement tale(std::size_t at,
               const std::string& source,
               const std::string& text,
               YearSpan years) {
  return {.work = at,
          .saying = Saying::made,
          .source = source,
          .text = text,
          .date = fmt::format("about {}", (years.first.value + years.last.value) / 2),
          .from = years.first,
          .to = years.last,
          .approximate = true};
}

}  // namespace

void testify(Random& random, std::size_t at, const Work& work, std::vector<Statement>& into) {
  inscribe(at, work, into);
  look_up_papers(random, at, work, into);
  find_receipt(random, at, work, into);
  ask_dealer(random, at, work, into);
  ask_family(random, at, work, into);
  read_catalogue(random, at, work, into);
  remember_occasion(random, at, work, into);
  note_acquisition(random, at, work, into);
}

std::vector<WrongStory> tell_wrong_stories(const std::vector<Work>& works,
                                           std::vector<Statement>& into) {
  std::vector<WrongStory> wrong;
  const auto told = [&](std::optional<std::size_t> at, const Statement& statement, int maker) {
    if (!at) {
      return;
    }
    into.push_back(statement);
    if (maker >= 0) {
      into.push_back({.work = *at,
                      .saying = Saying::made_by,
                      .source = statement.source,
                      .text = statement.text,
                      .maker = maker});
    }
    wrong.push_back({works[*at].number, statement.source, statement.text});
  };
  const std::size_t start = works.size() / 5;
  const auto rudd = find_work(works, start, [](const Work& work) {
    return work.fitting == Fitting::clip && work.made >= Year{1956} && work.maker != 0 &&
           !work.fitting_replaced;
  });
  told(rudd,
       tale(rudd.value_or(0), "family-rudd",
            "\"Ivar Strand made it for the regatta of 1937, my grandfather rowed stroke\"",
            {{1936}, {1938}}),
       0);
  const auto lamb = find_work(works, start, [](const Work& work) {
    return work.made >= Year{1963} && work.maker != 6 && work.motif == Motif::tern;
  });
  told(lamb,
       tale(lamb.value_or(0), "family-lamb",
            "\"Oda Vessen cut it for my mother's wedding, that was 1948\"", {{1947}, {1949}}),
       6);
  const auto orrin = find_work(works, start, [](const Work& work) {
    return work.made >= Year{1957} && work.motif == Motif::herring && work.worn_on_cord();
  });
  told(
      orrin,
      tale(orrin.value_or(0), "family-orrin",
           "\"it came back in the pocket of a drowned man, before the war\"", {{1930}, {1939}}),
      -1);
  return wrong;
}

}  // namespace backmark::scenario
