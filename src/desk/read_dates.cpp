#include "base/date_text.h"
#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

std::vector<std::string> texts_of(const Call& call) {
  std::vector<std::string> texts = call.texts("text");
  if (!texts.empty() || !call.standard_input) {
    return texts;
  }
  const std::string input = call.standard_input();
  for (const auto line : split(input, "\n")) {
    if (!trim(line).empty()) {
      texts.emplace_back(trim(line));
    }
  }
  return texts;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  DateHabits habits;
  const auto about = call.whole("about", habits.about);
  if (!about) {
    return about.problem();
  }
  habits.about = static_cast<int>(*about);
  const std::vector<std::string> texts = texts_of(call);
  if (texts.empty()) {
    return Problem{Fault::bad_input, "there is no date to read", "",
                   "write one behind the command, or lines on standard input"};
  }
  Answer answer;
  answer.json = Json::array();
  std::vector<DateReading> readings;
  for (const std::string& text : texts) {
    readings.push_back(read_date_text(text, habits));
    answer.json.push_back(to_json(readings.back()));
  }
  answer.text = to_table(readings);
  return answer;
}

}  // namespace

Operation read_dates() {
  return {.name = "date",
          .help = "how a date text is understood, with what was left over",
          .parameters = {{.name = "text",
                          .takes = Takes::texts,
                          .help = "dates as written; without any, lines of standard input",
                          .positional = true},
                         {.name = "about",
                          .takes = Takes::whole,
                          .help = "years either way that \"c.\" stands for (5)"}},
          .run = run};
}

}  // namespace backmark::desk
