#include "desk/table_reckoned.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "desk/belief_json.h"

namespace backmark::desk {

namespace {

// Numbers as one text, parted by spaces: as a list each would cost more than all else of a
// piece.
void write_number(long number, std::string& to) {
  if (to.back() != '"') {
    to += ' ';
  }
  fmt::format_to(std::back_inserter(to), "{}", number);
}

}  // namespace

TableReckoned::TableReckoned(const model::Show& show, std::shared_ptr<const store::Run> run)
    : run_(std::move(run)) {
  for (const model::Maker& maker : show.all<model::Maker>()) {
    makers_.push_back(maker.name);
    maker_ids_.push_back(maker.id.value);
  }
  if (run_ == nullptr) {
    return;
  }
  for (std::size_t row = 0; row < run_->beliefs.pieces.size(); ++row) {
    const model::Phrases& phrases = run_->phrases[row];
    end_of(ReckonedColumn::made) += std::to_string(words_.place(phrases.made));
    end_of(ReckonedColumn::by) += std::to_string(words_.place(phrases.maker));
    add_makers(show, run_->beliefs.pieces[row].maker);
    add_years(run_->beliefs.pieces[row].year);
    for (Cells& column : cells_) {
      column.end_cell();
    }
  }
}

bool TableReckoned::holds(const model::Show& show, const store::Run* run) const {
  const auto& makers = show.all<model::Maker>();
  if (run_.get() != run || makers.size() != makers_.size()) {
    return false;
  }
  for (std::size_t i = 0; i < makers.size(); ++i) {
    if (makers[i].id.value != maker_ids_[i] || makers[i].name != makers_[i]) {
      return false;
    }
  }
  return true;
}

std::string_view TableReckoned::empty_cell(ReckonedColumn column) {
  const bool text = column == ReckonedColumn::makers || column == ReckonedColumn::p ||
                    column == ReckonedColumn::q;
  return text ? "\"\"" : "0";
}

std::string& TableReckoned::end_of(ReckonedColumn column) {
  return cells_[static_cast<std::size_t>(column)].text;
}

void TableReckoned::add_makers(const model::Show& show, const model::MakerBelief& maker) {
  std::string& row = end_of(ReckonedColumn::makers);
  row += '"';
  for (const model::MakerChance& chance : maker.makers) {
    const model::Maker* known = chance.p < 0.005 ? nullptr : show.find(chance.maker);
    if (known != nullptr) {
      write_number(words_.place(known->name), row);
      write_number(std::lround(1000 * chance.p), row);
    }
  }
  write_number(std::lround(1000 * maker.unrecorded), row);
  row += '"';
}

void TableReckoned::add_years(const model::YearBelief& year) {
  const DrawnYears years = year.empty() ? DrawnYears() : drawn_years(year);
  end_of(ReckonedColumn::p10) += std::to_string(years.p10);
  end_of(ReckonedColumn::p50) += std::to_string(years.p50);
  end_of(ReckonedColumn::p90) += std::to_string(years.p90);
  end_of(ReckonedColumn::from) += std::to_string(years.from);
  end_of(ReckonedColumn::p) += '"' + years.p + '"';
  std::string& steps = end_of(ReckonedColumn::q);
  steps += '"';
  for (std::size_t i = 0; i < years.q.size() && !year.empty(); ++i) {
    write_number(years.q[i] - (i > 0 ? years.q[i - 1] : 0), steps);
  }
  steps += '"';
}

}  // namespace backmark::desk
