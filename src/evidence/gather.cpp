#include "evidence/gather.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "evidence/said.h"

namespace backmark::evidence {

namespace {

using model::Observation;
using model::Piece;
using model::Show;
using model::Word;

constexpr double firm = 0.75;  // a statement this reliable may teach the curves

bool is_firm_year(const SaidOfYear& said) {
  const Statement& statement = said.statement;
  const bool two_ends =
      statement.saying == Saying::exact || statement.saying == Saying::interval;
  return two_ends && !said.opinion && statement.reliability >= firm;
}

bool is_firm_maker(const SaidOfMaker& said) {
  return said.documented && said.reliability >= firm;
}

class Gatherer {
 public:
  Gatherer(const Show& show, Year today, const std::set<std::int32_t>& hidden)
      : show_(show), today_(today), hidden_(hidden) {}

  Gathered run() {
    out_.columns = StyleColumns(show_);
    out_.style.characters = out_.columns.characters();
    const auto& pieces = show_.all<Piece>();
    out_.pieces.resize(pieces.size());
    out_.style.pieces.resize(pieces.size());
    const MakerLegends legends(show_);
    const MarkYears mark_years(show_);
    const Sequences sequences(show_);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const auto id = pieces[i].id;
      out_.pieces[i].sequences = sequences.on(sights_on(pieces[i]), show_.marks_of(id));
      gather_said(show_, {show_.claims_on(id), show_.events_of(id), show_.marks_of(id)},
                  legends, mark_years, today_, out_.pieces[i]);
      if (hidden_.contains(id.value)) {
        hide_known(out_.pieces[i], true, true);
      }
      encode(pieces[i], i);
    }
    number_lots();
    out_.years = grid();
    label_pieces();
    declare_windows();
    return std::move(out_);
  }

 private:
  std::vector<Sight> sights_on(const Piece& piece) const {
    std::vector<Sight> sights;
    for (const Observation& seen : show_.observations_of(piece.id)) {
      sights.push_back(
          {seen.character, seen.seen, show_.text(seen.value), seen.number, seen.id.value});
    }
    return sights;
  }

  void encode(const Piece& piece, std::size_t row) {
    auto& characters = out_.style.characters;
    const TermNumber number = [&](std::size_t column, std::string_view term) {
      return characters[column].vocabulary.add(term);
    };
    EncodedRow encoded = encode_row(show_, out_.columns, sights_on(piece),
                                    show_.text(piece.form), piece.title, number);
    out_.style.pieces[row].values = std::move(encoded.values);
    out_.pieces[row].records = std::move(encoded.records);
    out_.pieces[row].place = show_.pool.find(encoded.place);
  }

  void number_lots() {
    std::map<Word, int> lots;
    int next = 0;
    const auto& pieces = show_.all<Piece>();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (!pieces[i].lot) {
        out_.style.pieces[i].lot = next++;
        continue;
      }
      const auto [at, is_new] = lots.try_emplace(pieces[i].lot, next);
      next += is_new ? 1 : 0;
      out_.style.pieces[i].lot = at->second;
    }
  }

  void label_pieces() {
    for (std::size_t i = 0; i < out_.pieces.size(); ++i) {
      const auto span = stated_span(out_.pieces[i]);
      if (span && span->overlaps(out_.years) && span->length() <= widest_label_) {
        out_.style.pieces[i].stated = span;
        out_.any_dated = true;
      }
      out_.style.pieces[i].maker = named_hand(out_.pieces[i]);
      out_.style.pieces[i].latest = acquired_by(out_.pieces[i]);
      out_.arrivals += out_.style.pieces[i].stated && out_.style.pieces[i].latest ? 1U : 0U;
    }
    if (out_.arrivals < least_arrivals) {
      for (StylePiece& piece : out_.style.pieces) {
        piece.latest.reset();
      }
    }
  }

  static int to_five(int year, bool down) {
    const int rest = ((year % 5) + 5) % 5;
    return rest == 0 ? year : down ? year - rest : year + 5 - rest;
  }

  std::optional<Year> fixed(std::string_view key) const {
    const auto value = to_whole(show_.setting(key));
    return value ? std::optional<Year>(Year{static_cast<std::int32_t>(*value)}) : std::nullopt;
  }

  YearSpan grid() const {
    std::vector<int> ends;
    for (const GatheredPiece& piece : out_.pieces) {
      if (const auto span = stated_span(piece)) {
        ends.push_back(span->first.value);
        ends.push_back(span->last.value);
      }
    }
    for (const model::Window& window : show_.all<model::Window>()) {
      for (const auto& end : {window.from, window.to}) {
        if (end) {
          ends.push_back(end->value);
        }
      }
    }
    if (ends.empty()) {
      return {fixed("years.first").value_or(today_ - 150),
              fixed("years.last").value_or(today_)};
    }
    std::sort(ends.begin(), ends.end());
    const int low = ends[ends.size() / 100];
    const int high = ends[ends.size() - 1 - ends.size() / 100];
    const int margin = std::max(5, (high - low) / 10);
    const Year first = fixed("years.first").value_or(Year{to_five(low - margin, true)});
    const Year last =
        fixed("years.last").value_or(std::min(Year{to_five(high + margin, false)}, today_));
    return {first, std::max(last, first + 10)};
  }

  // Windows on file, and claims that a value was in use in some years.
  void declare_windows() {
    for (const model::Window& window : show_.all<model::Window>()) {
      declare_window(window.character, window.value, window.from, window.to, window.source,
                     std::nullopt);
    }
    for (const model::Claim& claim : show_.all<model::Claim>()) {
      if (claim.says == model::Says::used && !claim.negative) {
        declare_window(claim.character, claim.word, claim.from, claim.to, claim.source,
                       claim.weight);
      }
    }
  }

  void declare_window(model::Id<model::Character> character,
                      Word value,
                      std::optional<Year> from,
                      std::optional<Year> to,
                      model::Id<model::Source> source,
                      std::optional<double> weight) {
    const auto column = out_.columns.column(character);
    if (!column || (!from && !to)) {
      return;
    }
    const bool is_set = show_.find(character)->shape == model::Shape::set;
    const std::string text(show_.text(value));
    const auto term =
        out_.style.characters[*column].vocabulary.find(is_set ? lower_ascii(text) : text);
    if (!term) {
      return;
    }
    StatedWindow stated{
        *column, *term, {from.value_or(out_.years.first), to.value_or(out_.years.last)}};
    const model::Source* from_source = show_.find(source);
    if (weight) {
      stated.reliability = *weight;
    } else if (from_source != nullptr && from_source->reliability) {
      stated.reliability = *from_source->reliability;
    }
    out_.style.windows.push_back(stated);
  }

  static constexpr int widest_label_ =
      120;  // years; a wider statement teaches nothing of style

  const Show& show_;
  Year today_;
  const std::set<std::int32_t>& hidden_;
  Gathered out_;
};

}  // namespace

std::optional<YearSpan> stated_span(const GatheredPiece& piece) {
  std::optional<YearSpan> best;
  for (const SaidOfYear& said : piece.years) {
    if (!is_firm_year(said)) {
      continue;
    }
    const Statement& statement = said.statement;
    const YearSpan span{{statement.first}, {std::max(statement.first, statement.last)}};
    if (!best || span.length() < best->length()) {
      best = span;
    }
  }
  return best;
}

std::optional<int> named_hand(const GatheredPiece& piece) {
  for (const SaidOfMaker& said : piece.makers) {
    if (is_firm_maker(said)) {
      return static_cast<int>(said.maker);
    }
  }
  return std::nullopt;
}

std::optional<Year> acquired_by(const GatheredPiece& piece) {
  std::optional<Year> first;
  for (const SaidOfYear& said : piece.years) {
    const Year year{said.statement.last};
    if (said.statement.saying == Saying::acquired && (!first || year < *first)) {
      first = year;
    }
  }
  return first;
}

void hide_known(GatheredPiece& piece, bool years, bool makers) {
  if (years) {
    std::set<std::string> origins;  // of what is hidden: its retellings would give it away
    for (const SaidOfYear& said : piece.years) {
      if (is_firm_year(said) && !said.statement.origin.empty()) {
        origins.insert(said.statement.origin);
      }
    }
    std::erase_if(piece.years, [&](const SaidOfYear& said) {
      return is_firm_year(said) || (!said.limit && origins.contains(said.statement.origin));
    });
  }
  if (makers) {
    std::erase_if(piece.makers, is_firm_maker);
    std::erase_if(piece.sequences, [](const SeenInSequence& one) { return one.of_maker; });
  }
}

Gathered gather(const Show& show, Year today, const std::set<std::int32_t>& hidden) {
  return Gatherer(show, today, hidden).run();
}

}  // namespace backmark::evidence
