#include "scenario/scenario.h"

#include <chrono>
#include <map>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "doctest/doctest.h"
#include "model/show.h"
#include "scenario/coast.h"
#include "scenario/recorder.h"

using namespace backmark;
using namespace backmark::scenario;

namespace {

Scenario made(int pieces, std::uint64_t seed = 1954) {
  auto scenario = make({.seed = seed, .pieces = pieces});
  REQUIRE(scenario);
  return std::move(*scenario);
}

// The show that a scenario fills.
model::Show shown(const Scenario& scenario) {
  model::Show empty;
  model::Change change(empty, "demo", scenario.summary());
  fill(change, scenario);
  model::Show show;
  show.fill(change.added());
  for (const std::string& text : change.new_words()) {
    show.pool.take(text);
  }
  show.next_id = change.next_id();
  show.settle();
  return show;
}

// Every record that is printed or weighed, as text, so that two shows can be compared.
std::string written_out(const model::Show& show) {
  std::string all;
  for (const auto& piece : show.all<model::Piece>()) {
    all += fmt::format("{}|{}|{}|{}|{}\n", piece.number, piece.title, show.text(piece.lot),
                       piece.lender.value, piece.prose);
  }
  for (const auto& part : show.all<model::Part>()) {
    all += fmt::format("{}|{}|{}\n", part.piece.value, show.text(part.kind),
                       static_cast<int>(part.originality));
  }
  for (const auto& seen : show.all<model::Observation>()) {
    all += fmt::format("{}|{}|{}|{}|{}|{}|{}\n", seen.piece.value, seen.part.value,
                       seen.character.value, show.text(seen.value), seen.number,
                       static_cast<int>(seen.seen), seen.certainty);
  }
  for (const auto& claim : show.all<model::Claim>()) {
    all += fmt::format("{}|{}|{}|{}|{}\n", claim.subject, claim.source.value, claim.text,
                       claim.from.value_or(Year{0}).value, claim.maker.value);
  }
  for (const auto& event : show.all<model::Event>()) {
    all += fmt::format("{}|{}|{}\n", event.piece.value, event.date, event.text);
  }
  for (const auto& mark : show.all<model::Mark>()) {
    all += fmt::format("{}|{}\n", mark.piece.value, mark.text);
  }
  for (const auto& pick : show.all<model::Pick>()) {
    all += fmt::format("{}|{}|{}|{}\n", pick.piece.value, pick.section.value, pick.rank,
                       pick.lead);
  }
  return all;
}

}  // namespace

TEST_CASE("the same seed gives the same show, another seed another") {
  const std::string once = written_out(shown(made(312)));
  CHECK(once == written_out(shown(made(312))));
  CHECK(once != written_out(shown(made(312, 1955))));
}

TEST_CASE("nothing that cannot be seen or read reaches the show") {
  Scenario scenario = made(312);
  const std::string before = written_out(shown(scenario));
  for (Work& work : scenario.works) {
    work.made = Year{1066};
    work.maker = 3;
    work.cord_replaced = work.tips_replaced = work.fitting_replaced = Year{1067};
    work.acquired = Year{1068};
  }
  scenario.truth = Truth{};
  CHECK(before == written_out(shown(scenario)));
}

TEST_CASE("the demo show has the size that its book needs") {
  const Scenario scenario = made(312);
  const model::Show show = shown(scenario);
  CHECK(show.all<model::Piece>().size() == 312);
  CHECK(show.all<model::Maker>().size() == 14);
  CHECK(show.all<model::Section>().size() == 6);
  CHECK(show.all<model::Character>().size() >= 25);
  std::size_t in_book = 0;
  std::size_t leads = 0;
  for (const auto& pick : show.all<model::Pick>()) {
    in_book += pick.in_book ? 1U : 0U;
    leads += pick.lead ? 1U : 0U;
    const auto* piece = show.find(pick.piece);
    REQUIRE(piece != nullptr);
    if (pick.lead) {
      CHECK(piece->prose.size() >= 300);
      CHECK(piece->prose.size() <= 1200);
    }
  }
  CHECK(in_book >= 150);
  CHECK(in_book <= 200);
  CHECK(leads >= 15);
}

TEST_CASE("between 40 and 90 pieces name their maker and as many are dated to the year") {
  const Scenario scenario = made(312);
  std::set<std::size_t> dated;
  for (const Statement& statement : scenario.statements) {
    const bool exact = statement.from && statement.to && *statement.to - *statement.from <= 1;
    if (exact && statement.saying != Saying::acquired &&
        statement.saying != Saying::exhibited && statement.saying != Saying::altered) {
      dated.insert(statement.work);
    }
  }
  std::size_t names = 0;
  for (const PieceTruth& piece : scenario.truth.pieces) {
    names += piece.names_maker ? 1U : 0U;
  }
  CHECK(dated.size() >= 40);
  CHECK(dated.size() <= 90);
  CHECK(names >= 40);
  CHECK(names <= 90);
  MESSAGE("dated " << dated.size() << ", signed " << names);
}

TEST_CASE("makers sign as often as the coast says they do") {
  // Binomial share of n pieces: within four standard errors of the rate in coast.cpp.
  const Scenario scenario = made(20'000);
  std::map<std::string, std::pair<double, double>> counts;
  for (const PieceTruth& piece : scenario.truth.pieces) {
    auto& [signs, all] = counts[piece.maker];
    signs += piece.names_maker ? 1 : 0;
    all += 1;
  }
  for (const MakerCard& card : makers()) {
    const auto [signs, all] = counts[card.key];
    REQUIRE(all > 100);
    const double error = std::sqrt(card.signs * (1 - card.signs) / all);
    CHECK(std::abs(signs / all - card.signs) < 4 * error);
  }
  const double unrecorded = counts[""].second / 20'000;
  CHECK(std::abs(unrecorded - unrecorded_share) < 0.03);
}

TEST_CASE("every piece was made while its maker worked, and changed later") {
  const Scenario scenario = made(5'000);
  for (const Work& work : scenario.works) {
    if (work.maker >= 0) {
      const YearSpan span = makers()[static_cast<std::size_t>(work.maker)].worked;
      CHECK(span.contains(work.made));
    }
    for (const auto& year : {work.cord_replaced, work.tips_replaced, work.fitting_replaced}) {
      if (year) {
        CHECK(*year > work.made);
      }
    }
    CHECK(work.acquired >= work.made);
  }
}

TEST_CASE("no cord, clip or button is older than its trade") {
  const Scenario scenario = made(5'000);
  for (const Work& work : scenario.works) {
    const Year cord = work.cord_replaced.value_or(work.made);
    const Year fitting = work.fitting_replaced.value_or(work.made);
    CHECK((work.cord != CordType::vinyl_braid || cord >= vinyl_from));
    CHECK((work.cord != CordType::nylon_braid || cord >= nylon_from));
    CHECK((work.cord != CordType::rayon_braid || cord >= rayon_from));
    CHECK((work.fitting != Fitting::clip || fitting >= clip_from));
    CHECK((work.fitting != Fitting::button || fitting >= button_from));
  }
}

TEST_CASE("three families are wrong, and the truth says so") {
  const Scenario scenario = made(312);
  REQUIRE(scenario.truth.stories.size() == 3);
  for (const WrongStory& story : scenario.truth.stories) {
    bool told = false;
    for (const Statement& statement : scenario.statements) {
      const Work& work = scenario.works[statement.work];
      if (work.number == story.number && statement.source == story.source && statement.from) {
        told = true;
        CHECK((work.made < *statement.from || *statement.to < work.made));
      }
    }
    CHECK(told);
  }
}

TEST_CASE("four sources say who was first, and two of them had it from a third") {
  const model::Show show = shown(made(312));
  std::map<std::string, int> derived;
  int sayings = 0;
  for (const auto& claim : show.all<model::Claim>()) {
    if (claim.says == model::Says::first) {
      ++sayings;
      for (const auto from : show.find(claim.source)->derives_from) {
        ++derived[show.find(from)->key];
      }
    }
  }
  CHECK(sayings == 4);
  CHECK(derived["corrow-telling"] == 2);
  const Scenario scenario = made(312);
  CHECK(scenario.truth.first_maker == "strand");
}

TEST_CASE("looked for and not there, and undecided, are both in use") {
  const model::Show show = shown(made(312));
  std::map<model::Seen, int> counts;
  for (const auto& seen : show.all<model::Observation>()) {
    ++counts[seen.seen];
  }
  CHECK(counts[model::Seen::none] > 100);
  CHECK(counts[model::Seen::cannot_tell] > 50);
  CHECK(counts[model::Seen::value] > 4000);
}

TEST_CASE("every citation of the essays has a reference, and every reference is a source") {
  const Scenario scenario = made(40);
  const model::Show show = shown(scenario);
  std::set<std::string> references;
  std::string essays;
  for (const TextFile& file : texts(scenario)) {
    if (file.path == "essays/references.json") {
      for (const auto& item : Json::parse(file.text)) {
        references.insert(item["id"].get<std::string>());
        CHECK(show.source(item["id"].get<std::string>()) != nullptr);
      }
    } else if (file.path != "README.md") {
      essays += file.text;
    } else {
      CHECK(contains(file.text, "invented"));
    }
  }
  std::size_t citations = 0;
  for (std::size_t at = essays.find("[@"); at != std::string::npos;
       at = essays.find("[@", at + 1)) {
    ++citations;
    CHECK(references.count(essays.substr(at + 2, essays.find(']', at) - at - 2)) == 1);
  }
  CHECK(citations > 15);
  CHECK(contains(show.setting("about"), "invented"));
}

TEST_CASE("a show of no pieces or of too many is refused in words") {
  const auto none = make({.pieces = 0});
  REQUIRE(!none);
  CHECK(to_line(none.problem()) ==
        "--pieces: a demo show of 0 pieces cannot be made; ask for 1 to 100000");
  CHECK(!make({.pieces = 100'001}));
}

TEST_CASE("a show of one piece is a show") {
  const model::Show show = shown(made(1));
  CHECK(show.all<model::Piece>().size() == 1);
}

TEST_SUITE("slow") {
  TEST_CASE("ten times the pieces take about ten times as long") {
    const auto seconds = [](int pieces) {
      const auto start = std::chrono::steady_clock::now();
      const model::Show show = shown(made(pieces));
      CHECK(show.all<model::Piece>().size() == static_cast<std::size_t>(pieces));
      return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    };
    seconds(1'000);
    const double small = seconds(5'000);
    const double large = seconds(50'000);
    MESSAGE("5,000 pieces " << small << " s, 50,000 pieces " << large << " s");
    CHECK(large < 25 * small);
  }
}
