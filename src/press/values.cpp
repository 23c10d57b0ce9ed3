#include "press/values.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "base/csv_write.h"
#include "base/text.h"
#include "press/lent.h"
#include "press/table.h"
#include "press/type.h"
#include "words/fact.h"

namespace backmark::press {
namespace {

using words::FactKind;
using words::Place;
using Kind = TableLine::Kind;

// A piece with its opinion, lender and case.
struct Valued {
  const Place* place = nullptr;
  const model::ValueOpinion* value = nullptr;
  std::string lender;  // as the audience may see it
  std::string in;      // case
};

class Values {
 public:
  explicit Values(const PressJob& job)
      : job_(job), grammar_(job.show, job.beliefs, job.phrases) {}
  Result<Printed> print();

 private:
  void collect();
  TableLine row(const Valued& valued) const;
  void add_lenders(std::vector<TableLine>& lines, Totals& all);
  void add_cases(std::vector<TableLine>& lines, Totals& all);
  std::string csv() const;

  const PressJob& job_;
  words::Grammar grammar_;
  std::vector<Valued> pieces_;
  Printed printed_;
};

void add(Totals& totals, const model::ValueOpinion* value) {
  if (value != nullptr) {
    totals[value->worth.currency] += value->worth.minor;
  }
}

void Values::collect() {
  std::map<std::int32_t, model::Id<model::Case>> cases;
  for (const model::Placement& placement : job_.show.all<model::Placement>()) {
    cases[placement.piece.value] = placement.in;
  }
  const auto values = last_values(job_.show);
  for (const Place& place : grammar_.numbering().places()) {
    const model::Lender* lender = job_.show.find(place.piece->lender);
    if (!place.pick->in_show ||
        (!job_.only.empty() && (lender == nullptr || lender->code != job_.only))) {
      continue;
    }
    const auto at = cases.find(place.piece->id.value);
    const model::Case* in = at == cases.end() ? nullptr : job_.show.find(at->second);
    const auto value = values.find(place.piece->id.value);
    pieces_.push_back({&place, value == values.end() ? nullptr : value->second,
                       lender_text(job_, lender),
                       in == nullptr ? "not placed yet" : "Case " + in->key});
    printed_.facts.push_back(
        {"values", place.piece->number, FactKind::number, std::to_string(place.number)});
    if (pieces_.back().value == nullptr) {
      printed_.findings.push_back({Fault::not_found, "there is no opinion of its value",
                                   "piece " + place.piece->number,
                                   "note one with its day and basis"});
    }
  }
}

TableLine Values::row(const Valued& valued) const {
  const model::Piece& piece = *valued.place->piece;
  TableLine line{Kind::row,
                 {std::to_string(valued.place->number), piece.number,
                  grammar_.text_of(piece, FactKind::title)}};
  if (valued.value == nullptr) {
    line.cells.insert(line.cells.end(), {"", "", "no opinion on file", "", ""});
    return line;
  }
  const model::ValueOpinion& value = *valued.value;
  line.cells.insert(
      line.cells.end(),
      {value.worth.currency, money_text(value.worth), words::with_curved_quotes(value.basis),
       day_text(value.day), std::string(job_.show.text(value.by))});
  return line;
}

TableLine sum_line(const std::string& what, const Totals& totals) {
  TableLine line{Kind::sum, {"", "", what, "", "", "", "", ""}};
  if (totals.size() == 1) {
    line.cells[3] = totals.begin()->first;
    line.cells[4] = money_text({totals.begin()->second, totals.begin()->first});
  } else {
    line.cells[5] = totals_text(totals);
  }
  return line;
}

void Values::add_lenders(std::vector<TableLine>& lines, Totals& all) {
  std::map<std::int32_t, std::vector<const Valued*>> groups;  // by lender, own collection first
  for (const Valued& valued : pieces_) {
    groups[valued.place->piece->lender.value].push_back(&valued);
  }
  for (const auto& [lender, group] : groups) {
    Totals sum;
    lines.push_back({Kind::group, {group.front()->lender}});
    for (const Valued* valued : group) {
      lines.push_back(row(*valued));
      add(sum, valued->value);
    }
    lines.push_back(sum_line(counted(group.size(), "piece"), sum));
    for (const auto& [currency, minor] : sum) {
      all[currency] += minor;
    }
  }
}

void Values::add_cases(std::vector<TableLine>& lines, Totals& all) {
  std::map<std::string, std::pair<Totals, std::size_t>> cases;
  for (const Valued& valued : pieces_) {
    auto& [sum, count] = cases[valued.in];
    add(sum, valued.value);
    ++count;
  }
  lines.push_back({Kind::group, {"The same by case"}});
  for (const auto& [name, of_case] : cases) {
    lines.push_back(sum_line(name + ", " + counted(of_case.second, "piece"), of_case.first));
    for (const auto& [currency, minor] : of_case.first) {
      all[currency] += minor;
    }
  }
}

std::string Values::csv() const {
  std::string text;
  append_csv_row(text, {"number", "catalogue_number", "title", "lender", "case", "currency",
                        "value", "basis", "day", "by"});
  for (const Valued& valued : pieces_) {
    const TableLine line = row(valued);
    append_csv_row(text, {line.cells[0], line.cells[1], line.cells[2], valued.lender, valued.in,
                          line.cells[3], replace_all(line.cells[4], ",", ""), line.cells[5],
                          line.cells[6], line.cells[7]});
  }
  return text;
}

Result<Printed> Values::print() {
  if (auto allowed = may_print(job_, FactKind::value, "values"); !allowed) {
    return allowed.problem();
  }
  collect();
  std::vector<TableLine> lines;
  Totals by_lender;
  Totals by_case;
  add_lenders(lines, by_lender);
  add_cases(lines, by_case);
  if (by_lender != by_case) {
    throw BrokenPromise("the values by lender and by case have different sums");
  }
  lines.push_back(sum_line("Together, by both routes", by_lender));
  Sheets sheets(
      job_, {"Values",
             "Never leave this where the public can read it. Each value is of its day.", a4});
  const std::vector<Column> columns{{"No.", 10},
                                    {"Catalogue", 17, draw::Align::left, true},
                                    {"Piece", 58, draw::Align::left, false, true},
                                    {"", 9},
                                    {"Value", 19, draw::Align::right},
                                    {"Basis", 36.5, draw::Align::left, true},
                                    {"Day", 28.5, draw::Align::left, true},
                                    {"By", 8, draw::Align::left, true}};
  if (!pieces_.empty()) {
    add_table(sheets, job_, columns, lines,
              {.caution_first = "No appraisal.",
               .caution_rest =
                   "Opinions for insurance, each on the day shown, by whoever is named. A "
                   "sale, a tax or a claim needs a qualified valuer."},
              counted(pieces_.size(), "piece") + "   ·   " + totals_text(by_lender));
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"values.pdf", std::move(*pdf)}, {"values.csv", csv()}};
  return std::move(printed_);
}

}  // namespace

std::string money_text(const Money& money) {
  constexpr std::array<std::string_view, 5> whole{"JPY", "KRW", "ISK", "CLP", "VND"};
  const bool minor = std::find(whole.begin(), whole.end(), money.currency) == whole.end();
  const std::int64_t units = minor ? money.minor / 100 : money.minor;
  std::string digits = std::to_string(units < 0 ? -units : units);
  for (std::ptrdiff_t at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3) {
    digits.insert(static_cast<std::size_t>(at), ",");
  }
  const std::int64_t rest = money.minor < 0 ? -(money.minor % 100) : money.minor % 100;
  return (money.minor < 0 ? "−" : "") +
         (minor ? fmt::format("{}.{:02}", digits, rest) : digits);
}

std::map<std::int32_t, const model::ValueOpinion*> last_values(const model::Show& show) {
  std::map<std::int32_t, const model::ValueOpinion*> values;
  for (const model::ValueOpinion& value : show.all<model::ValueOpinion>()) {
    const model::ValueOpinion*& last = values[value.piece.value];
    if (last == nullptr || std::pair(last->day, last->id) < std::pair(value.day, value.id)) {
      last = &value;
    }
  }
  return values;
}

std::string totals_text(const Totals& totals) {
  std::vector<std::string> texts;
  for (const auto& [currency, minor] : totals) {
    texts.push_back(currency + " " + money_text({minor, currency}));
  }
  return texts.empty() ? "nothing" : join(texts, ", ");
}

Result<Printed> print_values(const PressJob& job) {
  return Values(job).print();
}

}  // namespace backmark::press
