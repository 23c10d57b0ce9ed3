#include "press/loans.h"

#include <algorithm>
#include <map>

#include "base/csv_write.h"
#include "base/text.h"
#include "press/lent.h"
#include "press/table.h"
#include "press/type.h"
#include "press/values.h"

namespace backmark::press {
namespace {

using words::FactKind;
using Kind = TableLine::Kind;

class Loans {
 public:
  explicit Loans(const PressJob& job)
      : job_(job),
        grammar_(job.show, job.beliefs, job.phrases),
        lent_(lent_pieces(job, grammar_)),
        values_(last_values(job.show)),
        with_values_(words::may_show(job.audience, FactKind::value, words::Whose::own)),
        with_contacts_(words::may_show(job.audience, FactKind::address, words::Whose::own)) {}

  Result<Printed> print();

 private:
  std::vector<Column> columns() const;
  std::vector<TableLine> lines();
  TableLine row(const Lent& lent) const;
  TableLine sum(std::size_t count, const Totals& totals) const;
  void note_facts(const Lent& lent);
  void check(const Lent& lent);
  void check_signatures();
  void check_lenders_without_loan();
  void add_contacts(Sheets& sheets) const;
  std::string value_text(const model::Piece& piece) const;
  std::string csv() const;
  void find(Fault fault, std::string what, const model::Piece& piece, std::string fix) {
    printed_.findings.push_back(
        {fault, std::move(what), "piece " + piece.number, std::move(fix)});
  }

  const PressJob& job_;
  words::Grammar grammar_;
  std::vector<Lent> lent_;
  std::map<std::int32_t, const model::ValueOpinion*> values_;
  bool with_values_;
  bool with_contacts_;
  Printed printed_;
};

std::string day_cell(model::DayNumber day) {
  return day == model::unknown_day ? "not agreed" : short_day_text(day);
}

std::vector<Column> Loans::columns() const {
  std::vector<Column> columns{
      {"No.", 10},
      {"Object", 18, draw::Align::left, true},
      {"Piece", with_values_ ? 68.0 : 84.0, draw::Align::left, false, true},
      {"From", 23},
      {"To", 23},
      {"Back by", 23},
      {"Conditions", with_values_ ? 62.0 : 74.0, draw::Align::left, false, true},
      {"Paper", 18, draw::Align::left, true}};
  if (with_values_) {
    columns.push_back({"Value", 28, draw::Align::right});
  }
  return columns;
}

std::string Loans::value_text(const model::Piece& piece) const {
  const auto value = values_.find(piece.id.value);
  return value == values_.end()
             ? "none on file"
             : value->second->worth.currency + " " + money_text(value->second->worth);
}

TableLine Loans::row(const Lent& lent) const {
  const model::Loan& loan = *lent.loan;
  TableLine line{
      Kind::row,
      {lent.number(), lent.piece->number, grammar_.text_of(*lent.piece, FactKind::title),
       day_cell(loan.from), day_cell(loan.to), day_cell(loan.return_by),
       words::with_curved_quotes(loan.conditions.empty() ? "none" : loan.conditions),
       loan.signed_paper ? "signed" : "not signed"}};
  if (with_values_) {
    line.cells.push_back(value_text(*lent.piece));
  }
  return line;
}

TableLine Loans::sum(std::size_t count, const Totals& totals) const {
  TableLine line{Kind::sum, {"", "", counted(count, "piece"), "", "", "", "", ""}};
  if (with_values_) {
    line.cells.push_back(totals_text(totals));
  }
  return line;
}

void Loans::note_facts(const Lent& lent) {
  for (const FactKind kind : {FactKind::number, FactKind::title}) {
    std::string text = grammar_.text_of(*lent.piece, kind);
    // A number of the show is a fact of pieces that are shown.
    if (!text.empty() && (kind == FactKind::title || lent.number() == text)) {
      printed_.facts.push_back({"loans", lent.piece->number, kind, std::move(text)});
    }
  }
}

std::vector<TableLine> Loans::lines() {
  std::vector<TableLine> lines;
  for (std::size_t at = 0; at < lent_.size();) {
    std::size_t end = at;
    Totals totals;
    const model::Lender* lender = lent_[at].lender;
    const std::string credit = lender == nullptr || lender->credit.empty()
                                   ? "no credit signed"
                                   : "credit: " + lender->credit;
    lines.push_back(
        {Kind::group,
         {fmt::format("{}   ·   {}",
                      lender == nullptr ? "Nobody named" : lender_text(job_, lender),
                      words::with_curved_quotes(credit))}});
    for (; end < lent_.size() && lent_[end].loan->lender == lent_[at].loan->lender; ++end) {
      lines.push_back(row(lent_[end]));
      note_facts(lent_[end]);
      check(lent_[end]);
      if (const auto value = values_.find(lent_[end].piece->id.value); value != values_.end()) {
        totals[value->second->worth.currency] += value->second->worth.minor;
      }
    }
    lines.push_back(sum(end - at, totals));
    at = end;
  }
  return lines;
}

void Loans::check(const Lent& lent) {
  const model::Loan& loan = *lent.loan;
  const auto known = [](model::DayNumber day) { return day != model::unknown_day; };
  const auto opens = parse_day(job_.show.setting("opens"));
  const auto closes = parse_day(job_.show.setting("closes"));
  if (lent.lender == nullptr) {
    find(Fault::not_found, "its loan names no lender", *lent.piece, "say who lends it");
  }
  if (known(loan.to) && known(loan.return_by) && loan.return_by < loan.to) {
    find(Fault::conflict,
         fmt::format("it is to be back by {}, before its loan ends on {}",
                     day_text(loan.return_by), day_text(loan.to)),
         *lent.piece, "agree on one of the two with the lender");
  }
  const bool shown = lent.place != nullptr && lent.place->pick->in_show;
  if (shown && opens && known(loan.from) && *opens < loan.from) {
    find(Fault::conflict, "its loan begins after the show opens", *lent.piece,
         "agree on an earlier day, or leave the piece out");
  }
  if (shown && closes && known(loan.to) && loan.to < *closes) {
    find(Fault::conflict, "its loan ends before the show closes", *lent.piece,
         "agree on a later day, or leave the piece out");
  }
}

void Loans::check_signatures() {
  std::map<std::int32_t, std::pair<int, int>> papers;  // by lender: not signed, all
  for (const Lent& lent : lent_) {
    auto& [open, all] = papers[lent.loan->lender.value];
    open += lent.loan->signed_paper ? 0 : 1;
    ++all;
  }
  for (const auto& [id, count] : papers) {
    const model::Lender* lender = job_.show.find(model::Id<model::Lender>{id});
    if (count.first > 0) {
      printed_.findings.push_back(
          {Fault::not_found,
           fmt::format("{} of {} loans are not signed", count.first, count.second),
           lender == nullptr ? "nobody named" : lender->code, "send the agreement again"});
    }
  }
}

// Lent pieces of the show that no loan brings, by lender; a house's own pieces need none.
void Loans::check_lenders_without_loan() {
  std::map<std::int32_t, int> missing;
  std::map<std::int32_t, bool> lends;
  for (const model::Loan& loan : job_.show.all<model::Loan>()) {
    lends[loan.lender.value] = true;
  }
  std::map<std::int32_t, bool> has_loan;
  for (const Lent& lent : lent_) {
    has_loan[lent.piece->id.value] = true;
  }
  for (const words::Place& place : grammar_.numbering().places()) {
    const model::Lender* lender = job_.show.find(place.piece->lender);
    if (lender != nullptr && lends[lender->id.value] && place.pick->in_show &&
        (job_.only.empty() || lender->code == job_.only) && !has_loan[place.piece->id.value]) {
      find(Fault::not_found, "no loan brings it to the show", *place.piece,
           "record its loan, or leave the piece out");
    }
  }
}

void Loans::add_contacts(Sheets& sheets) const {
  std::vector<TableLine> lines;
  std::int32_t last = -1;
  for (const Lent& lent : lent_) {
    if (lent.lender != nullptr && lent.lender->id.value != last) {
      last = lent.lender->id.value;
      lines.push_back(
          {Kind::row,
           {lent.lender->code, lent.lender->name, lent.lender->address,
            words::with_curved_quotes(lent.lender->credit.empty() ? "no credit signed"
                                                                  : lent.lender->credit)}});
    }
  }
  add_table(sheets, job_,
            {{"Code", 26},
             {"Name", 70, draw::Align::left, false, true},
             {"Address", 90, draw::Align::left, false, true},
             {"Credit line as signed", 87, draw::Align::left, false, true}},
            lines, {}, "Contacts: keep this page apart from the others");
}

std::string Loans::csv() const {
  std::vector<std::string> heads{"number", "catalogue_number", "title",      "lender", "from",
                                 "to",     "back_by",          "conditions", "paper"};
  if (with_values_) {
    heads.insert(heads.end(), {"currency", "value"});
  }
  std::string text;
  append_csv_row(text, heads);
  for (const Lent& lent : lent_) {
    const TableLine line = row(lent);
    std::vector<std::string> cells(line.cells.begin(), line.cells.begin() + 8);
    cells.insert(cells.begin() + 3, lender_text(job_, lent.lender));
    if (with_values_) {
      const auto value = values_.find(lent.piece->id.value);
      const bool none = value == values_.end();
      cells.push_back(none ? "" : value->second->worth.currency);
      cells.push_back(none ? "" : replace_all(money_text(value->second->worth), ",", ""));
    }
    append_csv_row(text, cells);
  }
  return text;
}

Result<Printed> Loans::print() {
  if (auto allowed = may_print(job_, FactKind::loan, "loans"); !allowed) {
    return allowed.problem();
  }
  if (lent_.empty()) {
    return no_loans(job_, "loans");
  }
  const std::string insurer(job_.show.setting("insurance"));
  if (insurer.empty()) {
    printed_.findings.push_back({Fault::not_found, "nobody is named as insurer",
                                 "setting \"insurance\"", "say who insures the loans"});
  }
  Sheets sheets(job_,
                {"Loan schedule",
                 with_values_ ? "Never leave this where the public can read it. Each value "
                                "is of its day."
                              : "No values. Days and conditions as agreed with each lender.",
                 a4_landscape});
  auto table = lines();
  check_signatures();
  check_lenders_without_loan();
  TableLook look;
  if (with_values_) {
    look.caution_first = "No appraisal.";
    look.caution_rest =
        "Opinions for insurance, each on the day shown in the values schedule. A sale, a tax "
        "or a claim needs a qualified valuer.";
  }
  add_table(sheets, job_, columns(), std::move(table), look,
            fmt::format("{} loans   ·   insured by {}", lent_.size(),
                        insurer.empty() ? "nobody named yet" : insurer));
  if (with_contacts_) {
    add_contacts(sheets);
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"loans.pdf", std::move(*pdf)}, {"loans.csv", csv()}};
  return std::move(printed_);
}

}  // namespace

Result<Printed> print_loans(const PressJob& job) {
  return Loans(job).print();
}

}  // namespace backmark::press
