#include "desk/years_json.h"

#include <cmath>
#include <map>

#include "base/json.h"
#include "base/text.h"
#include "desk/or_null.h"
#include "words/use_phrase.h"

namespace backmark::desk {

namespace {

using evidence::Use;
using evidence::UseGroup;
using evidence::UseRow;
using model::Show;

constexpr int decade = 10;

Json end_json(const model::YearEnd& end) {
  return {{"p10", end.p10.value}, {"p50", end.p50.value}, {"p90", end.p90.value}};
}

Json chance_json(const Use& use) {
  std::size_t first = 0;
  std::size_t last = use.chance.size();
  const auto nothing = [&](std::size_t t) { return use.chance[t] < 0.05; };
  while (first < last && nothing(first)) {
    ++first;
  }
  while (last > first && nothing(last - 1)) {
    --last;
  }
  std::string digits;
  for (std::size_t t = first; t < last; ++t) {
    digits += static_cast<char>('0' + std::lround(9 * use.chance[t]));
  }
  return {{"from", use.years.first.value + static_cast<int>(first)}, {"p", digits}};
}

// What the last reckoning says of each piece of the chart, in its order.
class Reckoned {
 public:
  Reckoned(const UseChart& chart, const LastRun* last) : chart_(chart) {
    const auto& pieces = chart.show->all<model::Piece>();
    years_.resize(pieces.size(), nullptr);
    for (std::size_t i = 0; last != nullptr && i < pieces.size(); ++i) {
      const model::PieceBelief* belief = last->run.beliefs.of(pieces[i].id);
      years_[i] = belief != nullptr && !belief->year.empty() ? &belief->year : nullptr;
    }
    if (last != nullptr) {
      for (const model::Misfit& misfit : last->run.beliefs.misfits) {
        torn_[{misfit.piece.value, misfit.part}] = misfit.what;
      }
    }
    first_ = floor_to_decade(chart.axis.first.value);
    decades_ = static_cast<std::size_t>((chart.axis.last.value - first_) / decade + 1);
  }

  // Expected pieces of each decade of the axis; a known year counts as known.
  std::vector<double> by_decade(const std::vector<std::size_t>& pieces) const {
    std::vector<double> counts(decades_, 0);
    for (const std::size_t piece : pieces) {
      for (std::size_t d = 0; d < decades_; ++d) {
        const Year from{first_ + static_cast<int>(d) * decade};
        counts[d] += share(piece, {from, from + (decade - 1)});
      }
    }
    return counts;
  }
  int first_decade() const { return first_; }

  Json bead(std::size_t piece, model::Word part) const {
    const model::Piece& row = chart_.show->all<model::Piece>()[piece];
    const auto& known = chart_.known[piece];
    const auto torn = torn_.find({row.id.value, part});
    return {{"number", row.number},
            {"y", year_of(piece)},
            {"known", known.has_value()},
            {"from", known ? Json(known->first.value) : Json()},
            {"to", known ? Json(known->last.value) : Json()},
            {"torn", !part || torn == torn_.end() ? Json() : Json(torn->second)}};
  }

 private:
  static int floor_to_decade(int year) { return year - ((year % decade) + decade) % decade; }

  double share(std::size_t piece, YearSpan span) const {
    if (const auto& known = chart_.known[piece]) {
      const int from = std::max(known->first.value, span.first.value);
      const int to = std::min(known->last.value, span.last.value);
      return to < from ? 0 : (to - from + 1) / static_cast<double>(known->length());
    }
    return years_[piece] == nullptr ? 0 : years_[piece]->inside(span.first, span.last);
  }

  // Null: no year can be said.
  Json year_of(std::size_t piece) const {
    if (const auto& known = chart_.known[piece]) {
      return known->first.value + (known->length() - 1) / 2;
    }
    return years_[piece] == nullptr ? Json() : Json(years_[piece]->at(0.5).value);
  }

  const UseChart& chart_;
  std::vector<const model::YearBelief*> years_;
  std::map<std::pair<std::int32_t, model::Word>, std::string> torn_;
  int first_ = 0;
  std::size_t decades_ = 0;
};

Json told_json(const Show& show, const UseRow& row) {
  Json list = Json::array();
  for (const model::Window* window : row.told) {
    const model::Source* source = show.find(window->source);
    list.push_back({{"from", or_null(window->from)},
                    {"to", or_null(window->to)},
                    {"source", source == nullptr ? "" : source->title}});
  }
  return list;
}

Json decades_json(const std::vector<double>& with,
                  const std::vector<double>& of,
                  int first_decade) {
  Json list = Json::array();
  const auto rounded = [](double x) { return std::round(10 * x) / 10; };
  for (std::size_t d = 0; d < with.size(); ++d) {
    if (of[d] >= 0.05) {
      list.push_back({{"year", first_decade + static_cast<int>(d) * decade},
                      {"pieces", rounded(with[d])},
                      {"of", rounded(of[d])}});
    }
  }
  return list;
}

Json row_json(const UseChart& chart, const UseRow& row) {
  Json json = {{"value", row.value}, {"pieces", row.pieces.size()},
               {"known", row.known}, {"start", Json()},
               {"end", Json()},      {"words", "no dated piece"},
               {"use", Json()}};
  if (row.use) {
    json["start"] = end_json(row.use->start);
    json["end"] = end_json(row.use->end);
    json["words"] = words::phrase_use(row.use->start, row.use->end, chart.axis);
    json["use"] = chance_json(*row.use);
  }
  return json;
}

Json group_json(const UseChart& chart,
                const UseGroup& group,
                const Reckoned& reckoned,
                bool beads) {
  const Show& show = *chart.show;
  const model::Character* character = show.find(group.character);
  const model::Lineage* lineage = group.lineage;
  const model::Maker* maker = lineage == nullptr ? nullptr : show.find(lineage->maker);
  const model::Source* source = lineage == nullptr ? nullptr : show.find(lineage->source);
  const model::Word part = character == nullptr ? model::Word{} : character->part;
  const auto all = reckoned.by_decade(group.recorded);
  Json rows = Json::array();
  for (const UseRow& row : group.rows) {
    Json json = row_json(chart, row);
    json["decades"] =
        decades_json(reckoned.by_decade(row.pieces), all, reckoned.first_decade());
    json["told"] = told_json(show, row);
    for (std::size_t i = 0; beads && i < row.pieces.size(); ++i) {
      json["beads"].push_back(reckoned.bead(row.pieces[i], part));
    }
    rows.push_back(std::move(json));
  }
  return {{"key", character == nullptr ? "mark" : character->key},
          {"label", character == nullptr ? "Mark" : character->label},
          {"part", show.text(part)},
          {"unit", character == nullptr ? "" : character->unit},
          {"maker", maker == nullptr ? Json() : Json(maker->name)},
          {"ordered", lineage != nullptr},
          {"source", source == nullptr ? Json() : Json(source->title)},
          {"recorded", group.recorded.size()},
          {"known", group.known},
          {"rows", rows}};
}

Json maker_json(const UseChart& chart, const evidence::MakerUse& one) {
  static constexpr const char* kinds[] = {"person", "workshop", "firm", "unrecorded"};
  const model::Maker& maker = *chart.show->find(one.maker);
  return {{"name", maker.name},
          {"kind", kinds[static_cast<std::size_t>(maker.kind)]},
          {"place", chart.show->text(maker.place)},
          {"from", or_null(maker.from)},
          {"to", or_null(maker.to)},
          {"from_sd", maker.from_sd},
          {"to_sd", maker.to_sd},
          {"start", end_json(one.use.start)},
          {"end", end_json(one.use.end)},
          {"pieces", one.pieces},
          {"known", one.known},
          {"words", words::phrase_use(one.use.start, one.use.end, chart.axis)}};
}

// The pieces whose likeliest hand is on no list, their years taken together.
Json unrecorded_json(const LastRun* last) {
  if (last == nullptr) {
    return Json();
  }
  std::size_t pieces = 0;
  std::map<int, double> years;
  double all = 0;
  for (const model::PieceBelief& belief : last->run.beliefs.pieces) {
    const auto& makers = belief.maker.makers;
    if (belief.year.empty() ||
        (!makers.empty() && makers.front().p > belief.maker.unrecorded)) {
      continue;
    }
    ++pieces;
    all += 1;
    for (std::size_t t = 0; t < belief.year.p.size(); ++t) {
      years[belief.year.span.first.value + static_cast<int>(t)] += belief.year.p[t];
    }
  }
  if (pieces == 0) {
    return Json();
  }
  const auto at = [&](double share) {
    double sum = 0;
    for (const auto& [year, p] : years) {
      sum += p;
      if (sum >= share * all) {
        return year;
      }
    }
    return years.rbegin()->first;
  };
  return {{"pieces", pieces}, {"p10", at(0.1)}, {"p50", at(0.5)}, {"p90", at(0.9)}};
}

}  // namespace

Json years_json(const UseChart& chart,
                const std::vector<const UseGroup*>& groups,
                const LastRun* last,
                bool beads) {
  const Reckoned reckoned(chart, last);
  Json list = Json::array();
  for (const UseGroup* group : groups) {
    list.push_back(group_json(chart, *group, reckoned, beads));
  }
  Json makers = Json::array();
  for (const evidence::MakerUse& one : chart.makers) {
    makers.push_back(maker_json(chart, one));
  }
  const auto known = std::count_if(chart.known.begin(), chart.known.end(),
                                   [](const auto& year) { return year.has_value(); });
  return {{"reckoned", last != nullptr},
          {"stale", last != nullptr && last->stale},
          {"pieces", chart.known.size()},
          {"known", known},
          {"axis", {{"first", chart.axis.first.value}, {"last", chart.axis.last.value}}},
          {"groups", list},
          {"makers", makers},
          {"unrecorded", unrecorded_json(last)}};
}

}  // namespace backmark::desk
