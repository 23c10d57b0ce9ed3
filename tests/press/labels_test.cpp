#include "press/labels.h"

#include "base/text.h"
#include "demo_job.h"
#include "press/label_page.h"
#include "press/type.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

namespace {

constexpr double seconds_of_arc_tolerance_mm = 0.02;

}  // namespace

TEST_CASE("type on labels is as large as the rule for its distance asks") {
  const draw::Fonts& fonts = demo_printing().fonts;
  const double x = fonts.x_height(draw::Face::sans) * mm_per_pt;
  for (const LabelRule& rule : label_rules()) {
    CHECK(rule.text_pt * x >= rule.distance_mm / 192 - seconds_of_arc_tolerance_mm);
    CHECK(rule.credit_pt * x >= rule.distance_mm / 260 - seconds_of_arc_tolerance_mm);
    const double title_x = fonts.x_height(draw::Face::display_semibold) * mm_per_pt;
    CHECK(rule.title_pt * title_x >= rule.distance_mm / 135 - seconds_of_arc_tolerance_mm);
    if (rule.number_pt > 0) {
      const double cap = fonts.cap_height(draw::Face::display_medium) * mm_per_pt;
      CHECK(rule.number_pt * cap >= rule.distance_mm / 70 - seconds_of_arc_tolerance_mm);
    }
  }
}

TEST_CASE("ink and copper on label stock pass the contrast that labels ask") {
  // Ratios by the formula of WCAG 2.2; 7 : 1 for text and 4.5 : 1 for large text are its
  // success criteria 1.4.6 and 1.4.3.
  CHECK(draw::contrast(draw::ink, draw::label_stock) >= 7);
  CHECK(draw::contrast(draw::ink, draw::label_stock) == doctest::Approx(16.1).epsilon(0.01));
  CHECK(draw::contrast(draw::copper, draw::label_stock) >= 4.5);
}

TEST_CASE("the words to cut are just enough, and one fewer is too few") {
  const draw::Fonts& fonts = demo_printing().fonts;
  const LabelRule& rule = object_rule(600);
  Label label{"57", "ES 118", "Oval slide, rayed field", {"Unrecorded maker", "About 1953"},
              "",   "Lent"};
  for (int word = 0; word < 120; ++word) {
    label.text += (word == 0 ? "" : " ") + std::string("herring");
  }
  const int cut = words_to_cut(fonts, rule, label);
  REQUIRE(cut > 0);
  REQUIRE(cut < 120);
  const auto without = [&label](int words) {
    Label less = label;
    less.text = label.text.substr(0, label.text.size() - 8 * static_cast<std::size_t>(words));
    return less;
  };
  CHECK(words_to_cut(fonts, rule, without(cut)) == 0);
  CHECK(words_to_cut(fonts, rule, without(cut - 1)) > 0);
}

TEST_CASE("the distance chooses the next larger rule") {
  CHECK(object_rule(300).distance_mm == 400);
  CHECK(object_rule(401).distance_mm == 600);
  CHECK(object_rule(600).distance_mm == 600);
  CHECK(object_rule(5000).distance_mm == 1000);
}

TEST_CASE("an entry is cut at a full stop, never within a number or a name") {
  CHECK(first_sentences("It is 2.5 mm thick. More follows here.", 6) == "It is 2.5 mm thick.");
  CHECK(first_sentences("One two three. Four five.", 5) == "One two three. Four five.");
  CHECK(first_sentences("One two three.", 2).empty());
}

TEST_CASE("the same show printed twice is the same bytes") {
  const auto one = print_labels(demo_printing().job(Audience::printer));
  const auto two = print_labels(demo_printing().job(Audience::printer));
  REQUIRE(one);
  REQUIRE(two);
  REQUIRE(one->files.size() == 5);
  for (std::size_t at = 0; at < one->files.size(); ++at) {
    CHECK(one->files[at].bytes == two->files[at].bytes);
  }
}

TEST_CASE("a show without picks is refused in words that say what to do") {
  const model::Show empty;
  const model::Beliefs none;
  const words::PhraseBook phrases;
  const PressJob job{empty, none, phrases, demo_printing().fonts, {}};
  const auto printed = print_labels(job);
  REQUIRE_FALSE(printed);
  CHECK(contains(printed.problem().fix, "backmark pick"));
}
