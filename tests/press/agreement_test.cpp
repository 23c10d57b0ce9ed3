#include "press/agreement.h"

#include <doctest/doctest.h>

#include "base/json.h"
#include "base/text.h"
#include "demo_job.h"
#include "press/outputs.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;
using words::FactKind;

namespace {

// All papers for everybody of the demo show, printed once.
const Printed& everything() {
  static const Printed all = [] {
    Printed sum;
    const model::LookList looks = two_looks(demo_printing().show);
    const PlannedWork work = small_plan();
    for (const Output& output : outputs()) {
      PressJob job = demo_printing().job(output.audience);
      job.looks = &looks;
      job.work = &work;
      auto printed = output.print(job);
      REQUIRE_MESSAGE(printed.ok(), output.name);
      if (words::may_show(output.audience, FactKind::value)) {
        continue;  // not for the public: nothing to find there
      }
      sum.files.insert(sum.files.end(), printed->files.begin(), printed->files.end());
      sum.facts.insert(sum.facts.end(), printed->facts.begin(), printed->facts.end());
    }
    return sum;
  }();
  return all;
}

const std::string& file(const std::string& name) {
  for (const PrintedFile& one : everything().files) {
    if (one.name == name) {
      return one.bytes;
    }
  }
  FAIL(name);
  return everything().files.front().bytes;
}

std::vector<PrintedFact> of_output(const std::string& output) {
  std::vector<PrintedFact> facts;
  for (const PrintedFact& fact : everything().facts) {
    if (fact.output == output) {
      facts.push_back(fact);
    }
  }
  return facts;
}

}  // namespace

TEST_CASE("all papers of one version agree, and one changed word is found") {
  CHECK(everything().facts.size() > 1000);
  CHECK(disagreements(everything().facts).empty());
  auto facts = everything().facts;
  auto& planted = facts[facts.size() / 2];
  planted.text += " indeed";
  const auto problems = disagreements(facts);
  REQUIRE(problems.size() == 1);
  CHECK(contains(problems[0].what, "indeed"));
  CHECK(problems[0].where == planted.piece);
}

TEST_CASE("every fact said to be printed is read back from the PDF") {
  const std::string checklist = text_in(file("checklist.pdf"));
  if (checklist.empty()) {
    return;
  }
  const auto facts = of_output("checklist");
  CHECK(not_found_in(checklist, facts).empty());
  // A single word planted in the paper is found, and only there.
  const std::string from = "Attributed to ";
  const std::size_t at = checklist.find(from);
  REQUIRE(at != std::string::npos);
  std::string planted = checklist;
  std::size_t changed = 0;
  for (std::size_t place = at; place != std::string::npos; place = planted.find(from, place)) {
    planted.replace(place, from.size(), "Ascribed to ");
    ++changed;
  }
  CHECK(not_found_in(planted, facts).size() >= 1);
  CHECK(changed >= 1);
  CHECK(not_found_in(text_in(file("labels.pdf")), of_output("labels")).empty());
}

TEST_CASE("nothing private stands on any paper for the public") {
  const auto secrets = private_texts(demo_printing().show, Audience::public_);
  CHECK(secrets.size() > 40);
  for (const PrintedFile& one : everything().files) {
    const bool pdf = ends_with(one.name, ".pdf");
    const std::string text = pdf ? text_in(one.bytes) : one.bytes;
    for (const Problem& problem : leaks(text, secrets, one.name)) {
      FAIL_CHECK(to_line(problem));
    }
  }
}

TEST_CASE("a planted owner, address, tray or value is found, and part of a number is not") {
  const auto& show = demo_printing().show;
  const auto secrets = private_texts(show, Audience::public_);
  for (const auto& secret : secrets) {
    CHECK_MESSAGE(leaks("Seen at " + secret.text + ".", secrets, "x").size() >= 1, secret.text);
  }
  CHECK(leaks("tray 12", {{"tray 1", FactKind::address}}, "x").empty());
  CHECK(leaks("TRAY\n1,", {{"tray 1", FactKind::address}}, "x").size() == 1);
  // The registrar may read all of them.
  CHECK(private_texts(show, Audience::registrar).empty());
}

TEST_CASE("what changed since the facts were frozen is listed, and they survive the file") {
  const std::vector<PrintedFact> frozen{{"book", "ES 1", FactKind::made, "About 1953"},
                                        {"book", "ES 1", FactKind::title, "Slide"},
                                        {"book", "ES 2", FactKind::title, "Clasp"}};
  auto now = frozen;
  now[0].text = "About 1954";
  now.pop_back();
  now.push_back({"book", "ES 3", FactKind::title, "Brooch"});
  const auto read = facts_from_json(to_json(frozen).dump());
  REQUIRE(read);
  CHECK(*read == frozen);
  const auto list = changes(*read, now);
  REQUIRE(list.size() == 3);
  CHECK(list[0].output == "book");
  CHECK(list[0].before == "About 1953");
  CHECK(list[0].now == "About 1954");
  CHECK(list[1].now.empty());
  CHECK(list[2].before.empty());
  CHECK(list[2].piece == "ES 3");
  CHECK(changes(frozen, frozen).empty());
  // The same words on another paper are that paper's own fact.
  CHECK(changes(frozen, {{"labels", "ES 2", FactKind::title, "Clasp"}}).size() == 4);
  CHECK_FALSE(facts_from_json("[{\"piece\": 3}]"));
  CHECK_FALSE(facts_from_json("[3]"));
  CHECK_FALSE(facts_from_json("nonsense"));
}

TEST_CASE("text is compared without regard to line ends, spaces of any kind and ligatures") {
  CHECK(flattened(" 54\u00A0×\u00A041\n mm ") == "54 × 41 mm");
  CHECK(flattened("\uFB01tting, o\u00ADther") == "fitting, other");
}
