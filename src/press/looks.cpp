#include "press/looks.h"

#include <algorithm>

#include "base/text.h"
#include "press/lent.h"
#include "press/sheet.h"
#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Run;
using model::Look;
using words::FactKind;

constexpr double thumbnail = 14;
constexpr double number_x = 17;
constexpr double piece_x = 31;
constexpr double answers_x = 79;
constexpr double minutes_x = 125;  // right edge
constexpr double bar_x = 129;
constexpr double bar_mm = 14;
constexpr double full_bits = 2;
constexpr double box_x = 146;
constexpr double row_mm = 18.4;
constexpr double group_mm = 9;
constexpr double heads_mm = 5.2;
constexpr std::size_t answers_shown = 3;
const draw::Stroke hair{0.25 * mm_per_pt};

// A look, or the head of a stop before its first look.
struct Line {
  std::string head;
  const Look* look = nullptr;
};

class Looks {
 public:
  explicit Looks(const PressJob& job)
      : job_(job), grammar_(job.show, job.beliefs, job.phrases) {}

  Result<Printed> print();

 private:
  std::vector<Line> lines() const;
  std::string stop_head(const model::LookStop& stop) const;
  std::string second_line() const;
  void heads(Canvas& canvas, const Box& body) const;
  void show_look(Canvas& canvas, const Look& look, double x, double y);
  void show_answers(Canvas& canvas, const Look& look, double x, double y) const;
  void show_at_most_two(Canvas& canvas,
                        const std::string& words,
                        draw::Point at,
                        double room,
                        const draw::Style& style) const;
  void show_gain(Canvas& canvas, const Look& look, double x, double y) const;
  void text(
      Canvas& canvas, double x, double y, std::string words, const draw::Style& style) const {
    draw::show(canvas, job_.fonts, {x, y}, Run{std::move(words), style});
  }

  const PressJob& job_;
  words::Grammar grammar_;
  double ratio_ = 1;
  Printed printed_;
};

std::string span_text(Year from, Year to) {
  return from == to ? fmt::format("{}", from.value)
                    : fmt::format("{}–{}", from.value, to.value);
}

std::string Looks::stop_head(const model::LookStop& stop) const {
  std::string where = "Not said where";
  if (const model::Lender* lender = job_.show.find(stop.lender)) {
    where = lender_text(job_, lender);
  } else if (stop.tray) {
    where = words::may_show(job_.audience, FactKind::tray)
                ? std::string(job_.show.text(stop.tray))
                : "One tray";
  }
  return fmt::format("{}   ·   {:.0f} minutes", words::sentence(std::move(where)),
                     stop.minutes);
}

std::vector<Line> Looks::lines() const {
  std::vector<Line> lines;
  const model::LookList& list = *job_.looks;
  for (const model::LookStop& stop : list.plan) {
    lines.push_back({stop_head(stop), nullptr});
    for (const std::size_t at : stop.looks) {
      lines.push_back({"", &list.looks.at(at)});
    }
  }
  if (!list.plan.empty() && !list.missed.empty()) {
    lines.push_back({"If minutes are left", nullptr});
    for (const model::LookMissed& one : list.missed) {
      lines.push_back({"", &list.looks.at(one.look)});
    }
  }
  if (list.plan.empty()) {
    for (const Look& look : list.looks) {
      if (lines.size() < most_looks) {
        lines.push_back({"", &look});
      }
    }
  }
  return lines;
}

std::string Looks::second_line() const {
  const model::LookList& list = *job_.looks;
  if (list.plan.empty()) {
    return fmt::format("{} looks worth taking, most bits a minute first", list.looks.size());
  }
  return fmt::format(
      "{:g} hours   ·   {} stops   ·   {:.0f} minutes planned   ·   {:.1f} bits "
      "expected",
      list.hours, list.plan.size(), list.planned_minutes, list.planned_bits);
}

void Looks::heads(Canvas& canvas, const Box& body) const {
  text(canvas, body.x + number_x, body.y + 3, "No.", sheet_quiet());
  text(canvas, body.x + piece_x, body.y + 3, "Piece, and what to look at", sheet_quiet());
  text(canvas, body.x + answers_x, body.y + 3, "Years now, and with each answer",
       sheet_quiet());
  draw::show(canvas, job_.fonts, {body.x + minutes_x, body.y + 3}, Run{"min", sheet_quiet()},
             draw::Align::right);
  text(canvas, body.x + bar_x, body.y + 3, "Gain, bits", sheet_quiet());
  text(canvas, body.x + box_x, body.y + 3, "Answer", sheet_quiet());
  head_rule(canvas, body.x, body.y + 4.6, body.width);
}

void Looks::show_answers(Canvas& canvas, const Look& look, double x, double y) const {
  const double room = minutes_x - answers_x - 8;
  text(canvas, x, y, "now " + span_text(look.p10, look.p90), sheet_strong(6.8));
  for (std::size_t at = 0; at < std::min(answers_shown, look.answers.size()); ++at) {
    const model::LookAnswer& answer = look.answers[at];
    const std::string years = span_text(answer.p10, answer.p90);
    const double width = job_.fonts.width(years, sheet_text(6.8));
    const double line = y + 3.5 * static_cast<double>(at + 1);
    text(canvas, x, line, fitted(job_.fonts, answer.value, sheet_text(6.8), room - width - 2),
         sheet_text(6.8));
    draw::show(canvas, job_.fonts, {x + room, line}, Run{years, sheet_text(6.8)},
               draw::Align::right);
  }
}

void Looks::show_gain(Canvas& canvas, const Look& look, double x, double y) const {
  canvas.rectangle({x, y - 2.2, bar_mm, 2.4});
  canvas.stroke(draw::rule_grey, hair);
  canvas.rectangle({x, y - 2.2, bar_mm * std::min(1.0, look.gain_bits / full_bits), 2.4});
  canvas.fill(draw::copper);
  text(canvas, x, y + 4, fmt::format("{:.2f}", look.gain_bits), sheet_text(6.8));
}

void Looks::show_at_most_two(Canvas& canvas,
                             const std::string& words,
                             draw::Point at,
                             double room,
                             const draw::Style& style) const {
  auto lines = wrapped(job_.fonts, words, style, room);
  if (lines.size() > 2) {
    lines.resize(2);
    lines.back() = fitted(job_.fonts, lines.back() + " …", style, room);
  }
  show_lines(canvas, job_.fonts, at, lines, style, 3.3);
}

void Looks::show_look(Canvas& canvas, const Look& look, double x, double y) {
  const model::Piece& piece = *job_.show.find(look.piece);
  const model::Character* character = job_.show.find(look.character);
  show_piece(canvas, job_, photograph_of(job_.show, piece.id, model::View::front),
             {x, y + (row_mm - thumbnail) / 2, thumbnail, thumbnail}, ratio_,
             printed_.findings);
  const double line = y + 5;
  const words::Place* place = grammar_.numbering().place_of(piece.id);
  text(canvas, x + number_x, line, place == nullptr ? "–" : std::to_string(place->number),
       sheet_strong(9.6).with(draw::copper));
  text(canvas, x + number_x, line + 3.8, piece.number, sheet_quiet(6.4));
  const double room = answers_x - piece_x - 3;
  show_at_most_two(canvas, grammar_.text_of(piece, FactKind::title), {x + piece_x, line}, room,
                   sheet_strong(7.8));
  const std::string part(job_.show.text(look.part));
  const std::string what = character == nullptr ? "" : character->label;
  show_at_most_two(
      canvas, (look.again ? "Again: " : "") + what + (part.empty() ? "" : ", on the " + part),
      {x + piece_x, line + 7.2}, room, sheet_text(7.6));
  show_answers(canvas, look, x + answers_x, line);
  draw::show(canvas, job_.fonts, {x + minutes_x, line},
             Run{fmt::format("{:.0f}", look.minutes), sheet_text(7.6)}, draw::Align::right);
  show_gain(canvas, look, x + bar_x, line);
  canvas.rectangle({x + box_x, y + 3, 40, 9});
  canvas.stroke(draw::grey, hair);
  hairline(canvas, x, y + row_mm, 186);
}

// Where pages of so many mm begin.
std::vector<std::size_t> starts_in(const std::vector<Line>& all, double room) {
  std::vector<std::size_t> starts;
  double left = 0;
  for (std::size_t at = 0; at < all.size(); ++at) {
    // A head takes its first look along.
    const bool head = all[at].look == nullptr;
    if (starts.empty() || left < (head ? group_mm + row_mm : row_mm)) {
      starts.push_back(at);
      left = room;
    }
    left -= head ? group_mm : row_mm;
  }
  return starts;
}

// The same on no more pages, none of them fuller than it must be: no page ends the list with a
// line or two.
std::vector<std::size_t> even_starts(const std::vector<Line>& all, double room) {
  auto starts = starts_in(all, room);
  for (double less = room - row_mm; less >= row_mm; less -= row_mm) {
    auto fewer = starts_in(all, less);
    if (fewer.size() > starts.size()) {
      break;
    }
    starts = std::move(fewer);
  }
  return starts;
}

Result<Printed> Looks::print() {
  if (auto allowed = may_print(job_, FactKind::odds, "look"); !allowed) {
    return allowed.problem();
  }
  const std::vector<Line> all = job_.looks == nullptr ? std::vector<Line>{} : lines();
  if (all.empty()) {
    return Problem{Fault::not_found, "no look is worth taking", "look",
                   "reckon the show first: backmark infer SHOW"};
  }
  std::vector<const model::Photograph*> fronts;
  for (const Line& line : all) {
    if (line.look != nullptr) {
      fronts.push_back(photograph_of(job_.show, line.look->piece, model::View::front));
    }
  }
  ratio_ = common_ratio(fronts, {thumbnail, thumbnail});
  Sheets sheets(job_, {"Look list",
                       "Write what you see, or \"none\" or \"cannot tell\": three different "
                       "things. Gains are expectations, not promises."});
  const Box body = sheets.body();
  const auto starts = even_starts(all, body.height - heads_mm);
  for (std::size_t page = 0; page < starts.size(); ++page) {
    const std::size_t first = starts[page];
    const std::size_t end = page + 1 < starts.size() ? starts[page + 1] : all.size();
    const std::string outline = all[first].look == nullptr ? all[first].head : "";
    sheets.add(second_line(), outline, [this, &all, body, first, end](Canvas& canvas) {
      heads(canvas, body);
      double at = body.y + heads_mm;
      for (std::size_t i = first; i < end; ++i) {
        if (all[i].look == nullptr) {
          text(canvas, body.x, at + 6, all[i].head, sheet_strong(8.4));
          hairline(canvas, body.x, at + group_mm, body.width);
          at += group_mm;
        } else {
          show_look(canvas, *all[i].look, body.x, at);
          at += row_mm;
        }
      }
    });
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"look.pdf", std::move(*pdf)}};
  return std::move(printed_);
}

}  // namespace

Result<Printed> print_looks(const PressJob& job) {
  return Looks(job).print();
}

}  // namespace backmark::press
