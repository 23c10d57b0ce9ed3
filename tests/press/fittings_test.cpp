#include "press/fittings.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "demo_job.h"
#include "press/chronology.h"

using namespace backmark;
using namespace backmark::press;

namespace {

std::vector<FittingKind> kinds() {
  static const DemoPrinting& demo = demo_printing();
  static const PressJob job = demo.job(words::Audience::public_);
  static const words::Numbering numbering(demo.show);
  static const Prose glossary{
      .blocks = {
          {.words = {{.text = "eight, figure-eight wire — a wire loop; also on brooches."}}}}};
  return fitting_kinds(job, numbering, glossary, {{1930}, {1985}});
}

}  // namespace

TEST_CASE("every fitting of the book stands on its plate, in the order in which they came up") {
  const DemoPrinting& demo = demo_printing();
  const words::Numbering numbering(demo.show);
  // The naive twin: what the truth of the invented pieces says of those in the book.
  std::map<std::string, int> first;
  const auto all = kinds();
  REQUIRE(all.size() >= 6);
  for (const FittingKind& kind : all) {
    CHECK(kind.photograph != nullptr);
    CHECK(kind.shown != nullptr);
    CHECK_FALSE(kind.places.empty());
    if (kind.years) {
      const auto at = first.emplace(kind.fitting, kind.years->first.value).first;
      at->second = std::min(at->second, kind.years->first.value);
    }
  }
  std::vector<std::string> order;
  for (const FittingKind& kind : all) {
    if (order.empty() || order.back() != kind.fitting) {
      order.push_back(kind.fitting);
    }
  }
  CHECK(order.size() == std::map<std::string, int>(first).size());  // variants stand together
  CHECK(std::is_sorted(order.begin(), order.end(),
                       [&](const auto& a, const auto& b) { return first[a] < first[b]; }));
}

TEST_CASE("a fitting says what the glossary says of it, to the first stop") {
  const auto all = kinds();
  const auto eight = std::find_if(all.begin(), all.end(), [](const FittingKind& kind) {
    return kind.fitting == "figure-eight wire";
  });
  REQUIRE(eight != all.end());
  CHECK(eight->meaning == "a wire loop");
}

TEST_CASE("each piece of the book counts for one kind of fitting at most") {
  std::map<std::int32_t, int> counted;
  for (const FittingKind& kind : kinds()) {
    for (const words::Place* place : kind.places) {
      CHECK(++counted[place->piece->id.value] == 1);
    }
  }
}
