#include "evidence/lessons.h"

#include <algorithm>
#include <doctest/doctest.h>

#include "base/text.h"
#include "evidence/grown_show.h"
#include "evidence/reckon.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// A quick reckoning with all of its parts.
ReckonSettings quick() {
  ReckonSettings settings;
  settings.chains = 2;
  settings.rounds = 100;
  return settings;
}

Grown small_show() {
  return Grower(GrowthPlan{.pieces = 240, .makers = 8, .characters = 8, .seed = 5}).grow();
}

Reckoning fitted(const model::Show& show, const Lessons* known, double most_changed = 1) {
  auto reckoning = Reckoning::fit(show, quick(), {}, known, most_changed);
  REQUIRE(reckoning);
  return std::move(*reckoning);
}

bool same_answers(const Reckoning& a, const Reckoning& b) {
  const auto all_a = a.judge_all({});
  const auto all_b = b.judge_all({});
  REQUIRE(all_a);
  REQUIRE(all_b);
  for (std::size_t i = 0; i < all_a->pieces.size(); ++i) {
    const model::PieceBelief& one = all_a->pieces[i];
    const model::PieceBelief& other = all_b->pieces[i];
    if (one.year.p != other.year.p || one.maker.unrecorded != other.maker.unrecorded) {
      return false;
    }
  }
  return all_a->notes == all_b->notes && all_a->misfits.size() == all_b->misfits.size() &&
         all_a->rhat_max == all_b->rhat_max;
}

std::size_t marks_apart(const Lessons& a, const Lessons& b) {
  std::size_t apart = 0;
  for (const auto& [id, mark] : a.pieces) {
    apart += b.pieces.at(id) == mark ? 0U : 1U;
  }
  return apart;
}

}  // namespace

TEST_CASE("a fit that is given what it learned answers the same to the last bit") {
  const Grown grown = small_show();
  const Reckoning first = fitted(grown.show, nullptr);
  const auto kept = lessons_of(to_bytes(first.lessons()));
  REQUIRE(kept);
  const Reckoning second = fitted(grown.show, &*kept);
  CHECK_FALSE(first.changed_since_learned());
  REQUIRE(second.changed_since_learned());
  CHECK(*second.changed_since_learned() == 0);
  CHECK(same_answers(first, second));
  CHECK(to_bytes(second.lessons()) == to_bytes(first.lessons()));
}

TEST_CASE(
    "what is seen anew on one piece changes its answer under the old lessons, and is said") {
  Grown grown = small_show();
  const Reckoning first = fitted(grown.show, nullptr);
  const Lessons lessons = first.lessons();
  std::size_t asked = 0;
  while (first.gathered().style.pieces[asked].stated) {
    ++asked;
  }
  const model::Piece piece = grown.show.all<model::Piece>()[asked];
  const model::Id<model::Source> notebook{grown.show.next_id++};  // nobody has cited it yet
  grown.show.all<model::Source>().push_back({.id = notebook, .key = "notebook"});
  grown.show.all<model::Claim>().push_back({.id = {grown.show.next_id++},
                                            .source = notebook,
                                            .subject = piece.id.value,
                                            .says = model::Says::inscribed,
                                            .from = Year{1870},
                                            .to = Year{1870}});
  grown.show.settle();
  const Reckoning second = fitted(grown.show, &lessons);
  CHECK(*second.changed_since_learned() == doctest::Approx(1.0 / 240));
  CHECK(contains(second.notes().back(), "0.4 in 100 pieces are new or say something else"));
  CHECK(second.judge(asked).year.p != first.judge(asked).year.p);
  CHECK(fitted(grown.show, &lessons, 0.001).changed_since_learned() == std::nullopt);
}

TEST_CASE("lessons of other settings, of another axis or of a hidden piece do not serve") {
  Grown grown = small_show();
  const Lessons lessons = fitted(grown.show, nullptr).lessons();
  ReckonSettings other = quick();
  other.seed = 2;
  CHECK(serve(lessons, quick()));
  CHECK_FALSE(serve(lessons, other));
  other = quick();
  other.hidden.insert(grown.show.all<model::Piece>()[0].id.value);
  CHECK_FALSE(serve(lessons, other));
  grown.show.all<model::Setting>().push_back({.key = "years.last", .value = "2010"});
  grown.show.settle();
  CHECK(fitted(grown.show, &lessons).changed_since_learned() == std::nullopt);
}

TEST_CASE("a mark moves with what one piece says and with nothing else") {
  Grown grown = small_show();
  const Lessons before = fitted(grown.show, nullptr).lessons();
  CHECK(changed_share(before, before) == 0);
  grown.show.all<model::Piece>()[7].title = "Brooch with quite another title";
  grown.show.settle();
  const Lessons titled = fitted(grown.show, &before, 0).lessons();
  CHECK(marks_apart(before, titled) == 1);
  CHECK(changed_share(before, titled) == doctest::Approx(1.0 / 240));
  grown.show.all<model::Maker>()[0].from = Year{1901};
  grown.show.settle();
  const Lessons another_maker = fitted(grown.show, &titled, 0).lessons();
  CHECK(marks_apart(titled, another_maker) == 0);
  CHECK(changed_share(titled, another_maker) == 1);
}

TEST_CASE("torn lessons are refused, wherever they are torn") {
  const Grown grown = small_show();
  const std::string bytes = to_bytes(fitted(grown.show, nullptr).lessons());
  for (std::size_t length = 0; length < bytes.size(); length += 1 + bytes.size() / 61) {
    CHECK_FALSE(lessons_of(std::string_view(bytes).substr(0, length)));
  }
  CHECK_FALSE(lessons_of(bytes + "x"));
  std::string huge = bytes;
  std::fill_n(huge.begin() + static_cast<std::ptrdiff_t>(bytes.find('\n')) + 1, 8,
              '\xff');  // the first count: more than there is
  const auto refused = lessons_of(huge);
  REQUIRE_FALSE(refused);
  CHECK(refused.problem().fix == "run \"backmark infer\" again");
}
