#include "evidence/looks.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "base/text.h"
#include "evidence/look_answers.h"
#include "evidence/look_plan.h"

using namespace backmark;
using namespace backmark::model;
using namespace backmark::evidence;

namespace {

// Sixty dated pieces, thirty undated. Fitting tells the decade, motif nothing; both are missing
// on half of the undated pieces.
struct Vault {
  Show show;
  std::int32_t next = 1;
  Id<Character> fitting{next++};
  Id<Character> motif{next++};
  Id<Source> record{next++};

  Vault() {
    show.all<Character>() = {
        {.id = fitting, .key = "fitting", .label = "Fitting", .minutes = 2},
        {.id = motif, .key = "motif", .label = "Motif", .minutes = 2}};
    show.all<Source>() = {{.id = record, .key = "record", .kind = SourceKind::record}};
    Random random(5);
    for (int i = 0; i < 90; ++i) {
      const int year = 1945 + static_cast<int>(random.below(30));
      const char* fit = year < 1955 ? "wire" : year < 1965 ? "clip" : "button";
      const char* drawn = random.chance(0.5) ? "tern" : "wave";
      add(year, i < 60, i < 60 || i % 2 == 0 ? fit : "", i < 60 || i % 4 < 2 ? drawn : "", i);
    }
    show.next_id = next;
    show.settle();
  }

  void see(Id<Piece> piece, Id<Character> character, const char* value) {
    if (*value != 0) {
      show.all<Observation>().push_back({.id = {next++},
                                         .piece = piece,
                                         .character = character,
                                         .value = show.pool.take(value)});
    }
  }

  void add(int year, bool dated, const char* fit, const char* drawn, int i) {
    const Id<Piece> piece{next++};
    show.all<Piece>().push_back({.id = piece,
                                 .number = fmt::format("V {}", i),
                                 .form = show.pool.take("clasp"),
                                 .tray = show.pool.take(fmt::format("tray {}", i % 4))});
    see(piece, fitting, fit);
    see(piece, motif, drawn);
    if (dated) {
      show.all<Claim>().push_back({.id = {next++},
                                   .source = record,
                                   .subject = piece.value,
                                   .says = Says::made,
                                   .from = Year{year},
                                   .to = Year{year}});
    }
  }
};

double entropy(const std::vector<double>& p) {
  double bits = 0;
  for (const double one : p) {
    bits -= one > 0 ? one * std::log2(one) : 0;
  }
  return bits;
}

Reckoning reckoned(const Show& show) {
  auto fitted = Reckoning::fit(show, {}, {});
  REQUIRE(fitted);
  return std::move(*fitted);
}

LookList looks_of(const Show& show, const Reckoning& reckoning, std::size_t judgements) {
  auto list = next_looks(show, reckoning, {.judgements = judgements, .least_bits = 0}, {});
  REQUIRE(list);
  return std::move(*list);
}

}  // namespace

TEST_CASE("what tells the decade is worth looking at, what tells nothing is not") {
  const Vault vault;
  const Reckoning reckoning = reckoned(vault.show);
  const LookList list = looks_of(vault.show, reckoning, 100000);
  double fitting = 0;
  double motif = 0;
  for (const Look& look : list.looks) {
    CHECK(look.gain_bits >= 0);
    if (!look.again) {
      double& best = look.character == vault.fitting ? fitting : motif;
      best = std::max(best, look.bits_year);
    }
  }
  CHECK(fitting > 0.3);
  CHECK(motif < 0.1);
  CHECK(list.looks.front().character == vault.fitting);
}

TEST_CASE("the bits of a look are those of plain enumeration") {
  const Vault vault;
  const Reckoning reckoning = reckoned(vault.show);
  const LookList list = looks_of(vault.show, reckoning, 100000);
  const Look& look = list.looks.front();
  REQUIRE_FALSE(look.again);
  const auto& pieces = vault.show.all<Piece>();
  const auto row = static_cast<std::size_t>(
      std::find_if(pieces.begin(), pieces.end(),
                   [&](const Piece& piece) { return piece.id == look.piece; }) -
      pieces.begin());
  REQUIRE(look.answers.size() == 3);
  std::vector<double> mean;
  double after = 0;
  double width = 0;
  double sum = 0;
  for (const LookAnswer& answer : look.answers) {
    WhatIf change;
    change.seen.push_back({.character = look.character, .values = {answer.value}});
    const auto then = reckoning.judge_if(row, change).year;
    mean.resize(then.p.size(), 0);
    for (std::size_t t = 0; t < then.p.size(); ++t) {
      mean[t] += answer.p * then.p[t];
    }
    after += answer.p * entropy(then.p);
    width += answer.p * (then.at(0.9) - then.at(0.1));
    sum += answer.p;
  }
  CHECK(sum == doctest::Approx(1));
  CHECK(look.bits_year == doctest::Approx(entropy(mean) - after));
  CHECK(look.gain_years == doctest::Approx((look.p90 - look.p10) - width));
  CHECK(look.bits_year <= std::log2(3.0));
}

TEST_CASE("the rough order keeps the best looks when few can be weighed out") {
  const Vault vault;
  const Reckoning reckoning = reckoned(vault.show);
  const LookList all = looks_of(vault.show, reckoning, 100000);
  const LookList few = looks_of(vault.show, reckoning, 60);
  CHECK(few.looks.size() < all.looks.size());
  REQUIRE_FALSE(few.notes.empty());
  // The best of the few are the best of all, to a tenth of a bit.
  for (std::size_t l = 0; l < 5; ++l) {
    CHECK(few.looks[l].gain_bits > all.looks[l].gain_bits - 0.1);
  }
}

TEST_CASE("a character that never goes with the form is not asked for") {
  Vault vault;
  const Id<Piece> odd{vault.next++};
  for (int i = 0; i < 6; ++i) {
    const Id<Piece> piece = i == 0 ? odd : Id<Piece>{vault.next++};
    vault.show.all<Piece>().push_back(
        {.id = piece, .number = fmt::format("P {}", i), .form = vault.show.pool.take("pin")});
    vault.see(piece, vault.motif, "tern");
  }
  vault.show.settle();
  const Reckoning reckoning = reckoned(vault.show);
  for (const Look& look : looks_of(vault.show, reckoning, 100000).looks) {
    CHECK_FALSE((look.piece == odd && look.character == vault.fitting));
  }
}

TEST_CASE("a plan keeps to its hours, goes tray by tray, and more hours settle no less") {
  const Vault vault;
  const Reckoning reckoning = reckoned(vault.show);
  LookList list = looks_of(vault.show, reckoning, 100000);
  double before = 0;
  for (const double hours : {0.25, 0.5, 1.0, 3.0}) {
    plan_looks(vault.show, hours, Visit::tray, {}, list);
    CHECK(list.planned_minutes <= hours * 60);
    CHECK(list.planned_bits >= before - 1e-9);
    before = list.planned_bits;
    double minutes = 0;
    for (const LookStop& stop : list.plan) {
      minutes += stop.minutes;
      for (const std::size_t l : stop.looks) {
        CHECK(vault.show.find(list.looks[l].piece)->tray == stop.tray);
      }
    }
    CHECK(minutes == doctest::Approx(list.planned_minutes));
  }
  CHECK(before > 0);
  plan_looks(vault.show, 0.05, Visit::tray, {}, list);
  CHECK(list.plan.empty());
}

TEST_CASE("what a day just misses is not in it, and is when the day is that much longer") {
  const Vault vault;
  const Reckoning reckoning = reckoned(vault.show);
  LookList list = looks_of(vault.show, reckoning, 100000);
  plan_looks(vault.show, 0.5, Visit::tray, {}, list);
  REQUIRE_FALSE(list.missed.empty());
  CHECK(list.missed.size() <= 3);
  const auto planned = [&](std::size_t look) {
    return std::any_of(list.plan.begin(), list.plan.end(), [&](const LookStop& stop) {
      return std::find(stop.looks.begin(), stop.looks.end(), look) != stop.looks.end();
    });
  };
  const LookMissed first = list.missed.front();
  CHECK_FALSE(planned(first.look));
  CHECK(first.over > 0);
  CHECK(list.planned_minutes + first.minutes == doctest::Approx(30 + first.over));
  plan_looks(vault.show, 0.5 + first.over / 60 + 1e-9, Visit::tray, {}, list);
  CHECK(planned(first.look));
  plan_looks(vault.show, 1000, Visit::tray, {}, list);
  CHECK(list.missed.empty());
}

TEST_CASE("a show without dated pieces says that looks cannot be weighed") {
  Vault vault;
  vault.show.all<Claim>().clear();
  vault.show.settle();
  const Reckoning reckoning = reckoned(vault.show);
  const LookList list = looks_of(vault.show, reckoning, 1000);
  CHECK(list.looks.empty());
  CHECK(contains(list.notes.front(), "No piece is dated"));
}
