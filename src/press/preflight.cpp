#include "press/preflight.h"

#include "base/text.h"
#include "model/answers.h"

namespace backmark::press {

namespace {

using Numbers = std::vector<std::string>;

void tell(Problems& found, const std::string& what, const Numbers& of, const std::string& fix) {
  if (!of.empty()) {
    found.push_back(
        {Fault::conflict,
         fmt::format("{} of {} {}", what, of.size(), of.size() == 1 ? "piece" : "pieces"),
         "numbers " + join(of, ", "), fix});
  }
}

}  // namespace

Problems preflight(const model::Show& show, const words::Numbering& numbering) {
  Numbers refused;
  Numbers waiting;
  Numbers unasked;
  Numbers no_front;
  Numbers no_back;
  Numbers no_scale;
  const model::Answers answers(show);
  for (const words::Place& place : numbering.places()) {
    if (!place.pick->in_book) {
      continue;
    }
    const std::string number = std::to_string(place.number);
    const auto* answer = answers.on(place.piece->id.value, model::Use::print);
    if (answer == nullptr) {
      unasked.push_back(number);
    } else if (answer->leave != model::Leave::given) {
      (answer->leave == model::Leave::refused ? refused : waiting).push_back(number);
    }
    const model::Photograph* front = photograph_of(show, place.piece->id, model::View::front);
    const model::Photograph* back = photograph_of(show, place.piece->id, model::View::back);
    const bool may = answer != nullptr && answer->leave == model::Leave::given;
    if (may && front == nullptr) {  // of others it is told above why there is none
      no_front.push_back(number);
    }
    if (may && back == nullptr) {
      no_back.push_back(number);
    }
    for (const model::Photograph* one : {front, back}) {
      if (one != nullptr && one->pixels_per_mm <= 0) {
        no_scale.push_back(number);
      }
    }
  }
  Problems found;
  tell(found, "leave to print was refused: pictures", refused,
       "take the pieces out of the book");
  tell(found, "leave to print is asked for and not given: pictures", waiting,
       "wait for the answer, and record it");
  tell(found, "nobody was asked for leave to print: pictures", unasked,
       "ask, and record the answer");
  tell(found, "there is no picture of the front", no_front, "photograph it");
  tell(found, "there is no picture of the back", no_back, "photograph it");
  tell(found, "a picture has no true scale, and is not printed,", no_scale,
       "photograph it with a scale, or give its pixels a millimetre");
  return found;
}

Problems judge_lines(const draw::Quality& quality) {
  Problems found;
  const auto add = [&found](const std::string& what, const std::string& where = "") {
    found.push_back({Fault::conflict, what,
                     "the lines of the book" + (where.empty() ? "" : ": " + where),
                     "reword what stands there"});
  };
  if (quality.overfull > 0) {
    add(fmt::format("{} lines are wider than their measure", quality.overfull));
  }
  if (quality.very_loose > 0 && quality.very_loose * 100 >= quality.lines) {
    add(fmt::format("{} of {} lines have spaces over twice the natural", quality.very_loose,
                    quality.lines));
  }
  if (quality.short_last > 0) {
    add(fmt::format("{} paragraphs of {} end in a scrap of a line", quality.short_last,
                    quality.paragraphs),
        join(quality.scraps, "; "));
  }
  return found;
}

}  // namespace backmark::press
