#include "press/condition.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "press/findings.h"
#include "press/lent.h"
#include "press/outline.h"
#include "press/sheet.h"
#include "press/type.h"
#include "reference/condition_word.h"
#include "words/fact.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Point;
using draw::Run;
using words::FactKind;
using words::Place;

constexpr double picture_height = 104;
constexpr std::size_t rows = 6;
const draw::Stroke hair{0.25 * mm_per_pt};

// "S scratched    D dented ...": what is drawn on the outlines.
std::string key_of_letters() {
  std::vector<std::string> signs;
  for (const reference::ConditionWord& one : reference::condition_words()) {
    if (!one.letter.empty()) {
      signs.push_back(one.letter + " " + one.word);
    }
  }
  return join(signs, "    ");
}

// States that are no agreed word: kept, printed, and found.
Problems states_not_agreed(const model::Show& show) {
  std::vector<std::string> agreed;
  for (const reference::ConditionWord& one : reference::condition_words()) {
    agreed.push_back(one.word);
  }
  Problems findings;
  for (const model::Condition& seen : show.all<model::Condition>()) {
    const std::string state(show.text(seen.state));
    if (reference::is_condition_word(state)) {
      continue;
    }
    const auto near = closest(state, agreed);
    const model::Piece* piece = show.find(seen.piece);
    findings.push_back(
        {Fault::bad_input, fmt::format("the state \"{}\" is no agreed word", state),
         piece == nullptr ? "" : "piece " + piece->number,
         near ? fmt::format("did you mean \"{}\"?", *near) : "choose: " + join(agreed, ", ")});
  }
  return findings;
}

// A view in its frame: the grid runs through the middle, where x_mm and y_mm are counted from.
struct Frame {
  model::View view = model::View::front;
  std::string title;
  Box box;
};

class Sheet {
 public:
  Sheet(const PressJob& job,
        const words::Grammar& grammar,
        const Place& place,
        Box body,
        const Findings& seen,
        std::size_t first,
        Problems& problems)
      : job_(job),
        grammar_(grammar),
        piece_(*place.piece),
        body_(body),
        first_(first),
        problems_(problems),
        seen_(seen) {}

  void draw(Canvas& canvas) const {
    fields(canvas);
    const double top = body_.y + 14;
    for (const Frame& frame :
         {Frame{model::View::front, "Front", {body_.x, top, 76, picture_height}},
          Frame{model::View::back, "Back", {body_.x + 80, top, 76, picture_height}},
          Frame{model::View::tips, "Tips", {body_.x + 160, top, 26, picture_height}}}) {
      show_frame(canvas, frame);
    }
    table(canvas, top + picture_height + 9);
    foot(canvas, top + picture_height + 76);
  }

 private:
  void text(Canvas& canvas,
            double x,
            double y,
            const std::string& words,
            const draw::Style& style) const {
    draw::show(canvas, job_.fonts, {x, y}, Run{words, style});
  }
  // How many findings this page shows.
  std::size_t here() const { return std::min(rows, seen_.list.size() - first_); }
  void fields(Canvas& canvas) const;
  void show_frame(Canvas& canvas, const Frame& frame) const;
  void flags(Canvas& canvas, const Frame& frame) const;
  void table(Canvas& canvas, double y) const;
  void show_finding(Canvas& canvas, std::size_t at, double base) const;
  void foot(Canvas& canvas, double y) const;

  const PressJob& job_;
  const words::Grammar& grammar_;
  const model::Piece& piece_;
  Box body_;
  std::size_t first_;  // of the findings that stand on this page
  Problems& problems_;
  const Findings& seen_;
};

void Sheet::fields(Canvas& canvas) const {
  const std::array<std::pair<const char*, double>, 5> heads{
      {{"Occasion", 41}, {"Day", 27}, {"By", 33}, {"Present", 33}, {"Light", 26}}};
  double x = body_.x;
  for (const auto& [head, width] : heads) {
    text(canvas, x, body_.y + 1.5, head, sheet_quiet());
    canvas.line({x, body_.y + 9}, {x + width - 5, body_.y + 9}, draw::grey, hair);
    x += width;
  }
  text(canvas, x, body_.y + 1.5, "Last seen", sheet_quiet());
  text(canvas, x, body_.y + 7.4,
       seen_.last_day == model::unknown_day ? "never" : day_text(seen_.last_day),
       sheet_text(7.2));
}

void Sheet::show_frame(Canvas& canvas, const Frame& frame) const {
  canvas.scoped([&] {
    canvas.rectangle(frame.box);
    canvas.clip();
    const Point middle = frame.box.centre();
    for (double off = 0; off < frame.box.height; off += 5) {
      for (const double side : {-off, off}) {
        canvas.line({middle.x + side, frame.box.y}, {middle.x + side, frame.box.bottom()},
                    draw::rule_grey.with_alpha(0.6), hair);
        canvas.line({frame.box.x, middle.y + side}, {frame.box.right(), middle.y + side},
                    draw::rule_grey.with_alpha(0.6), hair);
      }
    }
    // Cords may run out of the frame; the piece itself keeps its true size.
    if (const auto* photograph = photograph_of(job_.show, piece_.id, frame.view)) {
      show_outline(canvas, job_, *photograph, middle, {frame.box.width, frame.box.height}, 1,
                   problems_);
    }
  });
  canvas.rectangle(frame.box);
  canvas.stroke(draw::rule_grey, hair);
  text(canvas, frame.box.x + 2, frame.box.y + 4.4, frame.title, sheet_strong(7.2));
  flags(canvas, frame);
}

void Sheet::flags(Canvas& canvas, const Frame& frame) const {
  for (std::size_t at = 0; at < here(); ++at) {
    const model::Condition& state = *seen_.list[first_ + at].last;
    if (state.view != frame.view) {
      continue;
    }
    const Point spot{frame.box.centre().x + state.x_mm, frame.box.centre().y + state.y_mm};
    const bool right = state.x_mm >= 0;
    const Point flag{right ? frame.box.right() - 6 : frame.box.x + 6,
                     frame.box.y + 14 + static_cast<double>(at) * 14};
    canvas.line(spot, flag, draw::copper, hair);
    canvas.circle(spot, 0.6);
    canvas.fill(draw::copper);
    canvas.circle(flag, 2.2);
    canvas.fill_keep(draw::white);
    canvas.stroke(draw::copper, hair);
    draw::show(canvas, job_.fonts, {flag.x, flag.y + 0.95},
               Run{std::to_string(first_ + at + 1), sheet_strong(7).with(draw::copper)},
               draw::Align::centre);
  }
}

// Where the columns of the table begin.
constexpr std::array<double, 6> columns{0, 9, 30, 52, 112, 150};

void Sheet::show_finding(Canvas& canvas, std::size_t at, double base) const {
  const Finding& finding = seen_.list[first_ + at];
  const model::Condition& state = *finding.last;
  const auto word = [&](double x, double width, std::string_view words) {
    text(canvas, body_.x + x, base, fitted(job_.fonts, words, sheet_text(7.6), width),
         sheet_text(7.6));
  };
  word(columns[1], columns[2] - columns[1] - 2, job_.show.text(state.part));
  word(columns[2], columns[3] - columns[2] - 2, job_.show.text(state.state));
  const double room = columns[4] - columns[3] - 3;
  text(canvas, body_.x + columns[3], base - 1.4,
       fitted(job_.fonts, words::with_curved_quotes(state.text), sheet_text(7.2), room),
       sheet_text(7.2));
  text(canvas, body_.x + columns[3], base + 1.8,
       fitted(job_.fonts, since_last(finding, seen_), sheet_quiet(6), room), sheet_quiet(6));
}

void Sheet::table(Canvas& canvas, double y) const {
  const std::array<const char*, 6> heads{
      "No.", "Part", "State", "Seen, and before", "Today", "Change since last"};
  for (std::size_t at = 0; at < heads.size(); ++at) {
    text(canvas, body_.x + columns[at], y, heads[at], sheet_quiet());
  }
  head_rule(canvas, body_.x, y + 1.8, body_.width);
  for (std::size_t row = 0; row < rows; ++row) {
    const double base = y + 1.8 + 9.2 * static_cast<double>(row) + 5.8;
    const bool seen = row < here();
    text(canvas, body_.x, base, std::to_string(first_ + row + 1),
         seen ? sheet_strong(7.6).with(draw::copper) : sheet_quiet(7.6));
    if (seen) {
      show_finding(canvas, row, base);
    }
    double x = body_.x + columns[5];
    for (const char* change : {"none", "more", "new"}) {
      canvas.rectangle({x, base - 2.4, 2.8, 2.8});
      canvas.stroke(draw::ink, hair);
      text(canvas, x + 3.8, base, change, sheet_text(6.4));
      x += 12.5;
    }
    hairline(canvas, body_.x, base + 3.4, body_.width);
  }
}

void Sheet::foot(Canvas& canvas, double y) const {
  double x = body_.x + 32;
  text(canvas, body_.x, y, "Parts counted", sheet_strong(7.2));
  for (const model::Part& part : job_.show.parts_of(piece_.id)) {
    const std::string kind(job_.show.text(part.kind));
    canvas.rectangle({x, y - 2.4, 2.8, 2.8});
    canvas.stroke(draw::ink, hair);
    text(canvas, x + 3.8, y, kind, sheet_text(7.2));
    x += 3.8 + job_.fonts.width(kind, sheet_text(7.2)) + 7;
  }
  text(canvas, body_.x, y + 6.6, "Size and mass", sheet_strong(7.2));
  text(canvas, body_.x + 32, y + 6.6, grammar_.text_of(piece_, FactKind::size),
       sheet_text(7.2));
  text(canvas, body_.x, y + 13.2, "Key", sheet_strong(7.2));
  text(canvas, body_.x + 32, y + 13.2, key_of_letters(), sheet_text(7.2));
  caution_box(canvas, job_.fonts, {body_.x, y + 18, body_.width, 0},
              "Handle by the edges, in gloves.",
              "Old leather, horn and feather may carry pesticide residues. Do not polish, wash "
              "or dip.");
  const double line = y + 42;
  for (const auto& [left, who] : {std::pair{0.0, "For the lender: name, signature, day, hour"},
                                  {96.0, "For the borrower: name, signature, day, hour"}}) {
    canvas.line({body_.x + left, line}, {body_.x + left + 88, line}, draw::ink, hair);
    text(canvas, body_.x + left, line + 3.6, who, sheet_quiet());
  }
}

}  // namespace

Result<Printed> print_condition(const PressJob& job) {
  if (auto allowed = may_print(job, FactKind::condition, "condition"); !allowed) {
    return allowed.problem();
  }
  const words::Grammar grammar(job.show, job.beliefs, job.phrases);
  auto findings = findings_by_piece(job.show);
  Printed printed;
  printed.findings = states_not_agreed(job.show);
  Sheets sheets(job,
                {"Condition",
                 "No values, no place of keeping. Draw on the outlines; number what is new."});
  for (const Place& place : grammar.numbering().places()) {
    const model::Piece& piece = *place.piece;
    const model::Lender* lender = job.show.find(piece.lender);
    if (!place.pick->in_show ||
        (!job.only.empty() && (lender == nullptr || lender->code != job.only))) {
      continue;
    }
    for (const FactKind kind : {FactKind::number, FactKind::title, FactKind::size}) {
      if (std::string text = grammar.text_of(piece, kind); !text.empty()) {
        printed.facts.push_back({"condition", piece.number, kind, std::move(text)});
      }
    }
    const std::string second =
        fmt::format("{}   {}   ·   {}   ·   outlines at true size, grid 5 mm", place.number,
                    grammar.text_of(piece, FactKind::title), piece.number);
    const Findings& seen = findings[piece.id.value];
    // More findings than rows: another sheet of the same piece.
    for (std::size_t first = 0; first == 0 || first < seen.list.size(); first += rows) {
      sheets.add(second, first == 0 ? fmt::format("{} {}", place.number, piece.number) : "",
                 [&job, &grammar, &place, &printed, &seen, first,
                  body = sheets.body()](Canvas& canvas) {
                   Sheet(job, grammar, place, body, seen, first, printed.findings).draw(canvas);
                 });
    }
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed.files = {{"condition.pdf", std::move(*pdf)}};
  return printed;
}

}  // namespace backmark::press
