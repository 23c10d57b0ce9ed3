#include "press/schedule.h"

#include "base/text.h"
#include "demo_job.h"
#include "press/schedule_wall.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("the run sheet says what to begin by when, in that order, and what is late") {
  const PlannedWork work = small_plan();
  PressJob job = demo_printing().job(Audience::registrar);
  job.work = &work;
  const auto printed = print_schedule(job);
  REQUIRE(printed);
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (paper.empty()) {
    return;
  }
  // 12 February 2027 was a Friday, by the calendar.
  const auto late = paper.find("Fri 12 Feb 2027 Thu 11 Mar 2027 Ask lenders Cases 17 late");
  const auto lamps = paper.find("Hang the lamps Cases 63");
  const auto crates = paper.find("Pack the crates Cases 0");
  CHECK(late != std::string::npos);
  CHECK(late < lamps);
  CHECK(lamps < crates);
  CHECK(crates != std::string::npos);
  CHECK(paper.find("To be begun before today") < late);
  CHECK_FALSE(contains(paper, "Sweep the gallery"));  // done
  CHECK(contains(paper, "opens 26 June 2027"));
  CHECK(contains(paper, "117 days left"));
  CHECK(contains(paper, "show 62 %, book more than 99 %"));
  CHECK(contains(paper, "Times are drawn as independent"));
}

TEST_CASE("pieces are to be decided on before the first task that they hold up begins") {
  const PlannedWork work = small_plan();
  PressJob job = demo_printing().job(Audience::curator);
  job.work = &work;
  const std::string paper = flattened(text_in(print_schedule(job)->files[0].bytes));
  if (!paper.empty()) {
    CHECK(contains(paper, "Fri 12 Feb 2027 Pieces whose loan is not signed"));
    CHECK(contains(paper, "Mon 3 May 2027 Pieces of the show"));
    CHECK(paper.find("Fri 12 Feb 2027 Pieces") < paper.find("Mon 3 May 2027 Pieces"));
    CHECK_FALSE(contains(paper, "Pieces of the book"));  // nothing holds them
  }
}

TEST_CASE("the wall plan names every undone task, today and opening day, on one sheet") {
  const PlannedWork work = small_plan();
  PressJob job = demo_printing().job(Audience::registrar);
  job.work = &work;
  const auto printed = print_schedule(job);
  REQUIRE(printed);
  CHECK(printed->files[1].name == "schedule-wall.pdf");
  const std::string text = text_in(printed->files[1].bytes);
  if (text.empty()) {
    return;
  }
  CHECK(std::count(text.begin(), text.end(), '\f') == 1);
  for (const char* words : {"Hang the lamps", "Ask lenders", "Pack the crates", "May 2027",
                            "today, 1 Mar 2027", "opens 26 Jun 2027"}) {
    CAPTURE(words);
    CHECK(contains(flattened(text), words));
  }
  CHECK_FALSE(contains(text, "Sweep the gallery"));
}

TEST_CASE("tasks that find no room on the wall are told, and stand on the run sheet") {
  PlannedWork work = small_plan();
  while (work.tasks.size() <= most_on_wall + 3) {
    work.tasks.push_back(work.tasks.front());
  }
  work.tasks.front().task.title = "The very last thing";
  work.tasks.front().latest_start = work.opening;
  PressJob job = demo_printing().job(Audience::registrar);
  job.work = &work;
  const auto printed = print_schedule(job);
  REQUIRE(printed);
  REQUIRE(printed->findings.size() == 1);
  CHECK(contains(printed->findings[0].what, "have no room on the wall plan"));
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  CHECK((paper.empty() || contains(paper, "The very last thing")));
}

TEST_CASE("the schedule is for registrar and curator, and wants an opening day") {
  const PlannedWork work = small_plan();
  for (const Audience audience :
       {Audience::public_, Audience::printer, Audience::lender, Audience::insurer}) {
    PressJob job = demo_printing().job(audience);
    job.work = &work;
    CHECK_FALSE(print_schedule(job));
  }
  const auto none = print_schedule(demo_printing().job(Audience::registrar));
  REQUIRE_FALSE(none);
  CHECK(none.problem().what == "there is no opening day to plan for");
}

TEST_CASE("the same plan prints the same bytes") {
  const PlannedWork work = small_plan();
  PressJob job = demo_printing().job(Audience::registrar);
  job.work = &work;
  for (const std::size_t file : {0U, 1U}) {
    CHECK(print_schedule(job)->files[file].bytes == print_schedule(job)->files[file].bytes);
  }
}
