#include "press/packing.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/csv_write.h"
#include "base/text.h"
#include "press/findings.h"
#include "press/lent.h"
#include "press/sheet.h"
#include "press/type.h"
#include "words/handling.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Run;
using words::FactKind;

constexpr double number_x = 0;
constexpr double piece_x = 12;
constexpr double parts_x = 66;
constexpr double mass_x = 128;  // right edge
constexpr double handling_x = 134;
constexpr double leading = 3.5;
constexpr double part_leading = 5;
constexpr double fields_mm = 14;
constexpr double heads_mm = 6;
constexpr double foot_mm = 34;
const draw::Stroke hair{0.25 * mm_per_pt};

struct Item {
  const words::Place* place = nullptr;
  std::string title;
  std::string tray;  // empty for whoever may not see it
  std::vector<std::string> parts;
  std::vector<std::vector<std::string>> part_lines;  // as set
  std::string handling;
  std::vector<std::string> title_lines;
  std::vector<std::string> handling_lines;
  std::optional<double> mass;
  double height = 0;
};

// What is handed over at one place on one day.
struct Consignment {
  model::DayNumber day = model::unknown_day;
  const model::Lender* lender = nullptr;  // null: the house's own store
  std::vector<Item> items;
  std::size_t parts = 0;
  double mass = 0;
  std::size_t not_weighed = 0;
};

class Packing {
 public:
  explicit Packing(const PressJob& job)
      : job_(job),
        grammar_(job.show, job.beliefs, job.phrases),
        with_trays_(words::may_show(job.audience, FactKind::tray, words::Whose::own)),
        states_(findings_by_piece(job.show)) {}

  Result<Printed> print();

 private:
  void collect();
  Item item_of(const words::Place& place);
  void measure(Item& item) const;
  std::string handling_of(const model::Piece& piece) const;
  void add_pages(Sheets& sheets, const Consignment& of, std::size_t at);
  std::string second_line(const Consignment& of, std::size_t at) const;
  void fields(Canvas& canvas, const Box& body) const;
  void heads(Canvas& canvas, const Box& body, double y) const;
  void show_item(Canvas& canvas, const Item& item, double x, double y) const;
  void show_parts(Canvas& canvas, const Item& item, double x, double baseline) const;
  void foot(Canvas& canvas, const Consignment& of, const Box& body, double y) const;
  void text(
      Canvas& canvas, double x, double y, std::string words, const draw::Style& style) const {
    draw::show(canvas, job_.fonts, {x, y}, Run{std::move(words), style});
  }
  std::string csv() const;

  const PressJob& job_;
  words::Grammar grammar_;
  bool with_trays_;
  std::map<std::int32_t, Findings> states_;
  std::vector<Consignment> consignments_;
  Printed printed_;
};

std::string Packing::handling_of(const model::Piece& piece) const {
  std::string text = words::handling_text(job_.show, piece.id);
  const auto states = states_.find(piece.id.value);
  for (const Finding& one :
       states == states_.end() ? std::vector<Finding>{} : states->second.list) {
    if (job_.show.text(one.last->state) == "loose") {
      text = fmt::format("{} loose: carry flat, face up.{}{}",
                         words::sentence(std::string(job_.show.text(one.last->part))),
                         text.empty() ? "" : " ", text);
    }
  }
  return text;
}

Item Packing::item_of(const words::Place& place) {
  const model::Piece& piece = *place.piece;
  Item item{&place, grammar_.text_of(piece, FactKind::title)};
  item.tray = with_trays_ ? std::string(job_.show.text(piece.tray)) : "";
  for (const model::Part& part : job_.show.parts_of(piece.id)) {
    item.parts.emplace_back(job_.show.text(part.kind));
  }
  item.handling = handling_of(piece);
  item.mass = words::mass_of(job_.show, piece.id);
  if (item.parts.empty()) {
    printed_.findings.push_back({Fault::not_found, "its parts are not recorded",
                                 "piece " + piece.number, "count them before it travels"});
  }
  for (const FactKind kind : {FactKind::number, FactKind::title}) {
    printed_.facts.push_back({"packing", piece.number, kind, grammar_.text_of(piece, kind)});
  }
  measure(item);
  return item;
}

void Packing::measure(Item& item) const {
  item.title_lines = wrapped(job_.fonts, item.title, sheet_strong(7.8), parts_x - piece_x - 4);
  item.handling_lines = wrapped(job_.fonts, item.handling, sheet_text(6.6), 186 - handling_x);
  double x = parts_x;
  item.part_lines.emplace_back();
  for (const std::string& part : item.parts) {
    const double width = 9 + job_.fonts.width(part, sheet_text(7.2)) + 4;
    if (x + width > mass_x - 10 && !item.part_lines.back().empty()) {
      item.part_lines.emplace_back();
      x = parts_x;
    }
    item.part_lines.back().push_back(part);
    x += width;
  }
  item.height =
      4 + std::max({leading * static_cast<double>(item.title_lines.size() + 1),
                    part_leading * static_cast<double>(item.part_lines.size()),
                    3.1 * static_cast<double>(item.handling_lines.size()), 2 * leading});
}

void Packing::collect() {
  std::map<std::int32_t, const Lent> lent;
  for (const Lent& one : lent_pieces(job_, grammar_)) {
    lent.emplace(one.piece->id.value, one);
  }
  // By day, then lender; what needs no loan comes last.
  std::map<std::tuple<bool, model::DayNumber, std::int32_t>, Consignment> all;
  for (const words::Place& place : grammar_.numbering().places()) {
    const auto loan = lent.find(place.piece->id.value);
    const bool own = loan == lent.end();
    if (!place.pick->in_show || (own && !job_.only.empty())) {
      continue;
    }
    const model::DayNumber day = own ? model::unknown_day : loan->second.loan->from;
    const model::Lender* lender = own ? nullptr : loan->second.lender;
    Consignment& of = all[{own, day, lender == nullptr ? 0 : lender->id.value}];
    of.day = day;
    of.lender = lender;
    of.items.push_back(item_of(place));
    of.parts += of.items.back().parts.size();
    of.mass += of.items.back().mass.value_or(0);
    of.not_weighed += of.items.back().mass ? 0 : 1;
    if (!own && day == model::unknown_day) {
      printed_.findings.push_back({Fault::not_found, "its loan has no first day",
                                   "piece " + place.piece->number,
                                   "agree on the day it is fetched"});
    }
  }
  for (auto& [key, of] : all) {
    if (of.not_weighed > 0) {
      printed_.findings.push_back(
          {Fault::not_found,
           fmt::format("{} of {} pieces are not weighed", of.not_weighed, of.items.size()),
           of.lender == nullptr ? "packing, own store" : "packing, " + of.lender->code,
           "weigh them when they are packed"});
    }
    if (with_trays_) {
      std::stable_sort(of.items.begin(), of.items.end(),
                       [](const Item& a, const Item& b) { return a.tray < b.tray; });
    }
    consignments_.push_back(std::move(of));
  }
}

std::string Packing::second_line(const Consignment& of, std::size_t at) const {
  const std::string_view set = job_.show.setting("delivery");
  const std::string_view to = set.empty() ? job_.show.setting("house") : set;
  return fmt::format("{} of {}   ·   {}   ·   {}{}", at + 1, consignments_.size(),
                     of.lender == nullptr ? "own store" : lender_text(job_, of.lender),
                     of.day == model::unknown_day ? "day not set" : day_text(of.day),
                     to.empty() || !words::may_show(job_.audience, FactKind::delivery)
                         ? ""
                         : "   ·   bring to " + std::string(to));
}

void Packing::fields(Canvas& canvas, const Box& body) const {
  double x = body.x;
  for (const auto& [head, width] : {std::pair{"Vehicle", 44.0},
                                    {"Crate", 30.0},
                                    {"Seal", 36.0},
                                    {"Out: day, hour", 38.0},
                                    {"In: day, hour", 38.0}}) {
    text(canvas, x, body.y + 1.5, head, sheet_quiet());
    canvas.line({x, body.y + 9},
                {x + width - (x + width > body.right() - 1 ? 0 : 5), body.y + 9}, draw::grey,
                hair);
    x += width;
  }
}

void Packing::heads(Canvas& canvas, const Box& body, double y) const {
  text(canvas, body.x + number_x, y, "No.", sheet_quiet());
  text(canvas, body.x + piece_x, y,
       with_trays_ ? "Piece, object number, tray" : "Piece, object number", sheet_quiet());
  text(canvas, body.x + parts_x, y, "Parts: first box out, second box in", sheet_quiet());
  draw::show(canvas, job_.fonts, {body.x + mass_x, y}, Run{"g", sheet_quiet()},
             draw::Align::right);
  text(canvas, body.x + handling_x, y, "Handling", sheet_quiet());
  head_rule(canvas, body.x, y + 1.6, body.width);
}

void Packing::show_parts(Canvas& canvas, const Item& item, double x, double baseline) const {
  if (item.parts.empty()) {
    text(canvas, x, baseline, "not recorded: count them", sheet_quiet(7.2));
  }
  for (const auto& line : item.part_lines) {
    double at = x;
    for (const std::string& part : line) {
      for (const double box : {0.0, 3.9}) {
        canvas.rectangle({at + box, baseline - 2.5, 2.9, 2.9});
        canvas.stroke(draw::ink, hair);
      }
      text(canvas, at + 8, baseline, part, sheet_text(7.2));
      at += 9 + job_.fonts.width(part, sheet_text(7.2)) + 4;
    }
    baseline += part_leading;
  }
}

void Packing::show_item(Canvas& canvas, const Item& item, double x, double y) const {
  const double baseline = y + 5;
  text(canvas, x + number_x, baseline, std::to_string(item.place->number),
       sheet_strong(9.6).with(draw::copper));
  const double under = show_lines(canvas, job_.fonts, {x + piece_x, baseline}, item.title_lines,
                                  sheet_strong(7.8), leading);
  text(canvas, x + piece_x, under,
       item.place->piece->number + (item.tray.empty() ? "" : "   ·   " + item.tray),
       sheet_quiet(6.8));
  show_parts(canvas, item, x + parts_x, baseline);
  draw::Style figures = sheet_text(7.6);
  figures.tabular = true;
  draw::show(canvas, job_.fonts, {x + mass_x, baseline},
             Run{item.mass ? fmt::format("{:.1f}", *item.mass) : "–", figures},
             draw::Align::right);
  show_lines(canvas, job_.fonts, {x + handling_x, baseline}, item.handling_lines,
             sheet_text(6.6), 3.1);
  hairline(canvas, x, y + item.height, 186);
}

void Packing::foot(Canvas& canvas, const Consignment& of, const Box& body, double y) const {
  text(canvas, body.x + piece_x, y + 5,
       fmt::format("{}, {}{}", counted(of.items.size(), "piece"), counted(of.parts, "part"),
                   of.not_weighed == 0 ? "" : fmt::format("; {} not weighed", of.not_weighed)),
       sheet_strong(7.8));
  draw::Style sum = sheet_strong(7.8);
  sum.tabular = true;
  draw::show(canvas, job_.fonts, {body.x + mass_x, y + 5},
             Run{of.not_weighed == of.items.size() ? "–" : fmt::format("{:.1f}", of.mass), sum},
             draw::Align::right);
  double x = body.x;
  for (const char* who :
       {"Packed: name, signature", "Carried: name, signature", "Received: name, signature"}) {
    canvas.line({x, y + 24}, {x + 58, y + 24}, draw::ink, hair);
    text(canvas, x, y + 27.6, who, sheet_quiet());
    x += 64;
  }
}

void Packing::add_pages(Sheets& sheets, const Consignment& of, std::size_t at) {
  const Box body = sheets.body();
  const std::string second = second_line(of, at);
  std::size_t first = 0;
  while (first < of.items.size()) {
    double y = body.y + (first == 0 ? fields_mm : 0) + heads_mm;
    std::size_t end = first;
    // The foot must fit below the last item; else that item opens another page.
    const auto fits = [&](std::size_t item, double top) {
      const double need = of.items[item].height + (item + 1 == of.items.size() ? foot_mm : 0);
      return top + need <= body.bottom();
    };
    while (end < of.items.size() && (end == first || fits(end, y))) {
      y += of.items[end++].height;
    }
    const std::string outline =
        first > 0
            ? ""
            : fmt::format("{} · {}", of.lender == nullptr ? "own store" : of.lender->code,
                          of.day == model::unknown_day ? "day not set" : day_text(of.day));
    sheets.add(second, outline, [this, &of, body, first, end](Canvas& canvas) {
      double top = body.y;
      if (first == 0) {
        fields(canvas, body);
        top += fields_mm;
      }
      heads(canvas, body, top + 3);
      top += heads_mm;
      for (std::size_t item = first; item < end; ++item) {
        show_item(canvas, of.items[item], body.x, top);
        top += of.items[item].height;
      }
      if (end == of.items.size()) {
        foot(canvas, of, body, top);
      }
    });
    first = end;
  }
}

std::string Packing::csv() const {
  std::vector<std::string> heads{"consignment", "day",   "from", "number",  "catalogue_number",
                                 "title",       "parts", "g",    "handling"};
  if (with_trays_) {
    heads.emplace_back("tray");
  }
  std::string text;
  append_csv_row(text, heads);
  for (std::size_t at = 0; at < consignments_.size(); ++at) {
    const Consignment& of = consignments_[at];
    for (const Item& item : of.items) {
      std::vector<std::string> cells{std::to_string(at + 1),
                                     of.day == model::unknown_day ? "" : day_text(of.day),
                                     of.lender == nullptr ? "own store" : of.lender->code,
                                     std::to_string(item.place->number),
                                     item.place->piece->number,
                                     item.title,
                                     join(item.parts, "; "),
                                     item.mass ? fmt::format("{:.1f}", *item.mass) : "",
                                     item.handling};
      if (with_trays_) {
        cells.push_back(item.tray);
      }
      append_csv_row(text, cells);
    }
  }
  return text;
}

Result<Printed> Packing::print() {
  if (auto allowed = may_print(job_, FactKind::handling, "packing"); !allowed) {
    return allowed.problem();
  }
  collect();
  if (consignments_.empty()) {
    return job_.only.empty()
               ? Problem{Fault::not_found, "no piece of the show is to be packed", "packing",
                         "pick pieces first: backmark pick SHOW NUMBER"}
               : no_loans(job_, "packing");
  }
  Sheets sheets(job_,
                {"Packing list",
                 with_trays_ ? "For the store: shows where pieces lie. No values."
                             : "No values, no places of keeping. Tick each part out and in; "
                               "write down what is missing."});
  for (std::size_t at = 0; at < consignments_.size(); ++at) {
    add_pages(sheets, consignments_[at], at);
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"packing.pdf", std::move(*pdf)}, {"packing.csv", csv()}};
  return std::move(printed_);
}

}  // namespace

Result<Printed> print_packing(const PressJob& job) {
  return Packing(job).print();
}

}  // namespace backmark::press
