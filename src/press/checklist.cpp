#include "press/checklist.h"

#include <algorithm>
#include <memory>

#include "base/csv_write.h"
#include "base/text.h"
#include "press/sheet.h"
#include "press/type.h"
#include "words/fact.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Run;
using words::FactKind;
using words::Grammar;

constexpr double thumbnail = 18;
constexpr double number_x = 22;  // from the left edge of the body
constexpr double facts_x = 34;
constexpr double place_x = 147;
constexpr double leading = 4.2;
constexpr double least_row = 24.4;
constexpr double group_height = 8.6;

struct Row {
  const words::Place* place = nullptr;
  std::vector<std::string> lines;  // after the title
  std::vector<std::string> where;
  double height = least_row;
};

// What a page shows: rows, each perhaps under the name of a new section.
struct PageRows {
  std::vector<std::size_t> rows;
};

class Checklist {
 public:
  explicit Checklist(const PressJob& job)
      : job_(job), grammar_(job.show, job.beliefs, job.phrases) {
    for (const model::Placement& placement : job.show.all<model::Placement>()) {
      cases_[placement.piece.value] = placement.in;
    }
    std::vector<const model::Photograph*> fronts;
    for (const words::Place& place : grammar_.numbering().places()) {
      if (place.pick->in_show && is_wanted(*place.piece)) {
        rows_.push_back(row_of(place));
        fronts.push_back(photograph_of(job.show, place.piece->id, model::View::front));
      }
    }
    ratio_ = common_ratio(fronts, {thumbnail, thumbnail});
  }

  Result<Printed> print();

 private:
  bool is_wanted(const model::Piece& piece) const;
  Row row_of(const words::Place& place);
  std::vector<std::string> where_of(const words::Place& place) const;
  std::string fact(const model::Piece& piece, FactKind kind);
  bool starts_section(std::size_t row) const;
  std::vector<PageRows> pages(double room) const;
  double show_row(Canvas& canvas, std::size_t at, const Box& body, double y);
  std::string csv() const;

  const PressJob& job_;
  Grammar grammar_;
  std::map<std::int32_t, model::Id<model::Case>> cases_;
  std::vector<Row> rows_;
  double ratio_ = 1;
  Printed printed_;
};

// Every piece, or those of the one lender for whom the list is made.
bool Checklist::is_wanted(const model::Piece& piece) const {
  const model::Lender* lender = job_.show.find(piece.lender);
  return job_.only.empty() || (lender != nullptr && lender->code == job_.only);
}

std::string Checklist::fact(const model::Piece& piece, FactKind kind) {
  const auto whose = job_.only.empty() ? words::Whose::others : words::Whose::own;
  if (!words::may_show(job_.audience, kind, whose)) {
    return {};
  }
  std::string text = grammar_.text_of(piece, kind);
  if (!text.empty()) {
    printed_.facts.push_back({"checklist", piece.number, kind, text});
  }
  return text;
}

Row Checklist::row_of(const words::Place& place) {
  Row row{&place, {}, where_of(place), least_row};
  const model::Piece& piece = *place.piece;
  fact(piece, FactKind::number);
  fact(piece, FactKind::title);
  const std::string maker = fact(piece, FactKind::maker);
  const std::string made = fact(piece, FactKind::made);
  const double width = place_x - facts_x - 6;
  for (const std::string& text :
       {maker.empty() || made.empty() ? maker + made : maker + ". " + made,
        fact(piece, FactKind::materials), fact(piece, FactKind::size)}) {
    for (std::string& line : wrapped(job_.fonts, text, sheet_text(), width)) {
      row.lines.push_back(std::move(line));
    }
  }
  row.height = std::max(least_row, 5.6 + leading * static_cast<double>(row.lines.size()) + 4.4);
  return row;
}

std::vector<std::string> Checklist::where_of(const words::Place& place) const {
  std::vector<std::string> where{place.piece->number};
  const auto at = cases_.find(place.piece->id.value);
  const model::Case* in = at == cases_.end() ? nullptr : job_.show.find(at->second);
  where.push_back(in == nullptr ? "not placed yet" : "case " + in->key);
  if (!place.pick->in_book) {
    where.push_back("not in the book");
  }
  return where;
}

bool Checklist::starts_section(std::size_t row) const {
  return rows_[row].place->section != nullptr &&
         (row == 0 || rows_[row - 1].place->section != rows_[row].place->section);
}

std::vector<PageRows> Checklist::pages(double room) const {
  std::vector<PageRows> all;
  double used = room + 1;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    const double height = rows_[row].height + (starts_section(row) ? group_height : 0);
    if (used + height > room || all.back().rows.size() == 10) {
      all.emplace_back();
      used = 0;
    }
    all.back().rows.push_back(row);
    used += height;
  }
  return all;
}

double Checklist::show_row(Canvas& canvas, std::size_t at, const Box& body, double y) {
  const Row& row = rows_[at];
  const model::Piece& piece = *row.place->piece;
  if (starts_section(at)) {
    draw::show(canvas, job_.fonts, {body.x, y + 5.2},
               Run{words::with_curved_quotes(row.place->section->title), sheet_strong(9.6)});
    y += group_height;
    head_rule(canvas, body.x, y - 1, body.width);
  }
  const double middle = y + (row.height - 1) / 2;
  show_piece(canvas, job_, photograph_of(job_.show, piece.id, model::View::front),
             {body.x, middle - thumbnail / 2, thumbnail, thumbnail}, ratio_, printed_.findings);
  const double baseline = y + 5.6;
  draw::Style number = sheet_strong(10.5).with(draw::copper);
  draw::show(canvas, job_.fonts, {body.x + number_x, baseline},
             Run{std::to_string(row.place->number), number});
  const double facts_width = place_x - facts_x - 6;
  draw::show(canvas, job_.fonts, {body.x + facts_x, baseline},
             Run{fitted(job_.fonts, grammar_.text_of(piece, FactKind::title), sheet_strong(8.4),
                        facts_width),
                 sheet_strong(8.4)});
  show_lines(canvas, job_.fonts, {body.x + facts_x, baseline + leading}, row.lines,
             sheet_text(), leading);
  show_lines(canvas, job_.fonts, {body.x + place_x, baseline}, row.where, sheet_quiet(7.2),
             leading);
  hairline(canvas, body.x, y + row.height - 0.6, body.width);
  return y + row.height;
}

std::string Checklist::csv() const {
  std::string text;
  append_csv_row(text, {"number", "catalogue_number", "title", "maker", "made", "materials",
                        "size", "section", "case"});
  for (const Row& row : rows_) {
    const model::Piece& piece = *row.place->piece;
    std::vector<std::string> cells{std::to_string(row.place->number), piece.number};
    for (const FactKind kind : {FactKind::title, FactKind::maker, FactKind::made,
                                FactKind::materials, FactKind::size}) {
      cells.push_back(words::may_show(job_.audience, kind) ? grammar_.text_of(piece, kind)
                                                           : "");
    }
    cells.push_back(row.place->section == nullptr ? "" : row.place->section->title);
    const auto at = cases_.find(piece.id.value);
    const model::Case* in = at == cases_.end() ? nullptr : job_.show.find(at->second);
    cells.push_back(in == nullptr ? "" : in->key);
    append_csv_row(text, cells);
  }
  return text;
}

Result<Printed> Checklist::print() {
  if (rows_.empty() && !job_.only.empty()) {
    return Problem{Fault::not_found,
                   fmt::format("no piece of \"{}\" is in the show", job_.only), "checklist",
                   "pick one, or name another lender"};
  }
  Sheets sheets(job_, {"Checklist",
                       "In the order of the show. No values, no owners who did not sign. "
                       "Words agree with labels and book of the same version."});
  const Box body = sheets.body();
  const std::string scale = ratio_ < 1 ? fmt::format("1 : {:.0f}", 1 / ratio_) : "true size";
  for (const PageRows& page : pages(body.height)) {
    const auto& first = rows_[page.rows.front()];
    const std::string range =
        fmt::format("{}–{}", first.place->number, rows_[page.rows.back()].place->number);
    sheets.add(fmt::format("numbers {}   ·   {}   ·   pictures {}", range,
                           counted(rows_.size(), "piece"), scale),
               range, [this, page, body](Canvas& canvas) {
                 double y = body.y;
                 for (const std::size_t row : page.rows) {
                   y = show_row(canvas, row, body, y);
                 }
               });
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"checklist.pdf", std::move(*pdf)}, {"checklist.csv", csv()}};
  return std::move(printed_);
}

}  // namespace

Result<Printed> print_checklist(const PressJob& job) {
  return Checklist(job).print();
}

}  // namespace backmark::press
