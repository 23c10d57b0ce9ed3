#include "evidence/in_use.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "base/text.h"
#include "evidence/evenly.h"
#include "evidence/number_fifths.h"
#include "evidence/year_grid.h"

namespace backmark::evidence {

namespace {

using model::Character;
using model::Show;
using model::Word;

constexpr double stray = 0.05;             // dated pieces that tell nothing of the use
constexpr double stray_replaceable = 0.2;  // common practice, no source
constexpr double length_mean = 20;         // years a variant is in use; common practice
constexpr double length_sd = 15;
constexpr double window_sd = 5;  // years by which a stated window's ends are off
constexpr std::size_t most_pieces = 200;
constexpr int margin = 40;  // years of the grid beyond the dated pieces

model::YearEnd end_of(YearSpan years, const std::vector<double>& p) {
  return {quantile(years, p, 0.1), quantile(years, p, 0.5), quantile(years, p, 0.9)};
}

Use use_of(YearSpan years, const SpanBelief& belief) {
  Use use{end_of(years, belief.start_p), end_of(years, belief.end_p), years, {}};
  double begun = 0;
  double over = 0;
  for (std::size_t t = 0; t < belief.start_p.size(); ++t) {
    begun += belief.start_p[t];
    use.chance.push_back(std::clamp(begun - over, 0.0, 1.0));
    over += belief.end_p[t];
  }
  return use;
}

// The years in which pieces or documented ends lie, with a margin, within the axis.
YearSpan grid_for(const SpanPrior& prior, const std::vector<YearSpan>& dated, YearSpan axis) {
  int first = axis.last.value;
  int last = axis.first.value;
  const auto reach = [&](int from, int to) {
    first = std::min(first, from);
    last = std::max(last, to);
  };
  for (const YearSpan& span : dated) {
    reach(span.first.value, span.last.value);
  }
  if (prior.start) {
    reach(*prior.start, *prior.start);
  }
  if (prior.end) {
    reach(*prior.end, *prior.end);
  }
  const int low = std::clamp(first - margin, axis.first.value, axis.last.value);
  const int high = std::clamp(last + margin, axis.first.value, axis.last.value);
  return {{std::min(low, high)}, {std::max(low, high)}};
}

std::optional<Use> learned_use(const SpanPrior& prior,
                               const std::vector<YearSpan>& all_dated,
                               YearSpan axis,
                               double stray_share) {
  if (all_dated.empty() && !prior.start && !prior.end) {
    return std::nullopt;
  }
  const std::vector<YearSpan> dated = evenly_spread(all_dated, most_pieces);
  const YearSpan years = grid_for(prior, dated, axis);
  std::vector<std::vector<double>> pieces;
  for (const YearSpan& span : dated) {
    std::vector<double> p(static_cast<std::size_t>(years.length()), 0);
    add_span(YearGrid{years}, span, 1, p);
    pieces.push_back(std::move(p));
  }
  return use_of(years, span_belief(prior, years, pieces, stray_share));
}

// What windows say of the use of a variant: the mean of their ends.
SpanPrior told_of(const std::vector<const model::Window*>& windows) {
  SpanPrior prior;
  prior.length_mean = length_mean;
  prior.length_sd = length_sd;
  const auto mean = [&](auto end) -> std::optional<int> {
    double sum = 0;
    int count = 0;
    for (const model::Window* window : windows) {
      if (window->*end) {
        sum += (window->*end)->value;
        ++count;
      }
    }
    return count == 0 ? std::nullopt
                      : std::optional<int>(static_cast<int>(std::lround(sum / count)));
  };
  prior.start = mean(&model::Window::from);
  prior.end = mean(&model::Window::to);
  prior.start_sd = prior.end_sd = window_sd;
  return prior;
}

class Uses {
 public:
  Uses(const Show& show, const Gathered& gathered) : show_(show), gathered_(gathered) {
    for (const model::Window& window : show.all<model::Window>()) {
      windows_[{window.character.value, window.value}].push_back(&window);
    }
    read_sights();
  }

  std::vector<UseGroup> all() {
    std::vector<UseGroup> groups;
    const auto& lineages = show_.all<model::Lineage>();
    for (std::size_t l = 0; l < lineages.size(); ++l) {
      add_group(lineages[l].maker ? marks_of(l) : variants_of(lineages[l]), groups);
    }
    for (const Character& character : show_.all<Character>()) {
      if (character.shape == model::Shape::number) {
        add_group(numbers_of(character), groups);
      } else if (character.shape != model::Shape::text &&
                 character.shape != model::Shape::words) {
        add_group(words_of(character), groups);
      }
    }
    return groups;
  }

 private:
  using Seen = std::pair<std::int32_t, Word>;  // character, value

  void read_sights() {
    const auto& pieces = show_.all<model::Piece>();
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      for (const model::Observation& seen : show_.observations_of(pieces[i].id)) {
        if (seen.seen != model::Seen::value || on_later_part(pieces[i], seen)) {
          continue;
        }
        const Character* character = show_.find(seen.character);
        if (character->shape == model::Shape::number) {
          numbers_[character->id.value].push_back({seen.number, i});
        } else {
          auto& list = words_[character->id.value][seen.value];
          if (list.empty() || list.back() != i) {
            list.push_back(i);
          }
        }
      }
    }
  }

  bool on_later_part(const model::Piece& piece, const model::Observation& seen) const {
    for (const model::Part& part : show_.parts_of(piece.id)) {
      if (part.id == seen.part) {
        return part.originality == model::Originality::replaced;
      }
    }
    return false;
  }

  bool dated(std::size_t piece) const {
    return gathered_.style.pieces[piece].stated.has_value();
  }

  UseRow row(std::string value,
             std::vector<std::size_t> pieces,
             std::vector<const model::Window*> told,
             double stray_share) const {
    UseRow row{std::move(value), std::move(pieces), 0, {}, std::move(told)};
    std::vector<YearSpan> years;
    for (const std::size_t piece : row.pieces) {
      if (dated(piece)) {
        years.push_back(*gathered_.style.pieces[piece].stated);
      }
    }
    row.known = years.size();
    row.use = learned_use(told_of(row.told), years, gathered_.years, stray_share);
    return row;
  }

  std::vector<const model::Window*> windows_on(const Seen& seen) const {
    const auto told = windows_.find(seen);
    return told == windows_.end() ? std::vector<const model::Window*>() : told->second;
  }

  UseRow word_row(const Character& character, Word value) {
    return row(std::string(show_.text(value)), words_[character.id.value][value],
               windows_on({character.id.value, value}),
               character.replaceable ? stray_replaceable : stray);
  }

  UseGroup variants_of(const model::Lineage& lineage) {
    UseGroup group{lineage.character, &lineage, {}, 0, {}};
    const Character* character = show_.find(lineage.character);
    for (const Word value : lineage.variants) {
      group.rows.push_back(word_row(*character, value));
      in_lineage_.insert({character->id.value, value});
    }
    return group;
  }

  // Stamps are seen as marks; which of a lineage a mark is, the gathering has told.
  UseGroup marks_of(std::size_t place) {
    const model::Lineage& lineage = show_.all<model::Lineage>()[place];
    UseGroup group{lineage.character, &lineage, {}, 0, {}};
    std::vector<std::vector<std::size_t>> pieces(lineage.variants.size());
    for (std::size_t i = 0; i < gathered_.pieces.size(); ++i) {
      for (const SeenInSequence& seen : gathered_.pieces[i].sequences) {
        if (seen.lineage == place) {
          pieces[static_cast<std::size_t>(seen.variant)].push_back(i);
        }
      }
    }
    for (std::size_t v = 0; v < pieces.size(); ++v) {
      const Word value = lineage.variants[v];
      group.rows.push_back(row(std::string(show_.text(value)), std::move(pieces[v]),
                               windows_on({lineage.character.value, value}), stray));
    }
    return group;
  }

  UseGroup words_of(const Character& character) {
    UseGroup group{character.id, nullptr, {}, 0, {}};
    for (const auto& [value, pieces] : words_[character.id.value]) {
      const Seen seen{character.id.value, value};
      if (!in_lineage_.contains(seen) && (pieces.size() > 1 || windows_.contains(seen))) {
        group.rows.push_back(word_row(character, value));
      }
    }
    const auto start = [](const UseRow& row) {
      return row.use ? row.use->start.p50.value : std::numeric_limits<std::int32_t>::max();
    };
    std::sort(group.rows.begin(), group.rows.end(), [&](const UseRow& a, const UseRow& b) {
      return std::pair(start(a), std::string_view(a.value)) <
             std::pair(start(b), std::string_view(b.value));
    });
    return group;
  }

  UseGroup numbers_of(const Character& character) {
    UseGroup group{character.id, nullptr, {}, 0, {}};
    for (const Fifth& fifth : in_fifths(numbers_[character.id.value])) {
      group.rows.push_back(row(words_for(fifth, character.unit), fifth.pieces, {},
                               character.replaceable ? stray_replaceable : stray));
    }
    return group;
  }

  void add_group(UseGroup group, std::vector<UseGroup>& groups) const {
    std::set<std::size_t> recorded;
    for (const UseRow& row : group.rows) {
      recorded.insert(row.pieces.begin(), row.pieces.end());
    }
    if (group.rows.empty() || (recorded.empty() && group.lineage == nullptr)) {
      return;
    }
    group.recorded.assign(recorded.begin(), recorded.end());
    group.known = static_cast<std::size_t>(
        std::count_if(recorded.begin(), recorded.end(), [&](auto i) { return dated(i); }));
    groups.push_back(std::move(group));
  }

  const Show& show_;
  const Gathered& gathered_;
  std::map<Seen, std::vector<const model::Window*>> windows_;
  std::map<std::int32_t, std::map<Word, std::vector<std::size_t>>> words_;
  std::map<std::int32_t, std::vector<Measured>> numbers_;
  std::set<Seen> in_lineage_;
};

double spread_for(model::MakerKind kind, double person, double firm) {
  return kind == model::MakerKind::person ? person : firm;
}

}  // namespace

std::vector<UseGroup> uses(const Show& show, const Gathered& gathered) {
  return Uses(show, gathered).all();
}

SpanPrior span_prior(const model::Maker& maker) {
  SpanPrior prior;
  if (maker.from) {
    prior.start = maker.from->value;
    prior.start_sd = std::max(0.5, maker.from_sd);
  }
  if (maker.to) {
    prior.end = maker.to->value;
    prior.end_sd = std::max(0.5, maker.to_sd);
  }
  prior.length_mean = spread_for(maker.kind, 25, 40);
  prior.length_sd = spread_for(maker.kind, 12, 30);
  return prior;
}

std::vector<MakerUse> maker_uses(const Show& show, const Gathered& gathered) {
  const auto& makers = show.all<model::Maker>();
  std::vector<std::vector<YearSpan>> dated(makers.size());
  std::vector<std::size_t> pieces(makers.size(), 0);
  for (const StylePiece& piece : gathered.style.pieces) {
    if (piece.maker) {
      const auto maker = static_cast<std::size_t>(*piece.maker);
      ++pieces[maker];
      if (piece.stated) {
        dated[maker].push_back(*piece.stated);
      }
    }
  }
  std::vector<MakerUse> list;
  for (std::size_t m = 0; m < makers.size(); ++m) {
    const std::size_t known = dated[m].size();
    auto use = learned_use(span_prior(makers[m]), dated[m], gathered.years, stray);
    if (use) {
      list.push_back({makers[m].id, std::move(*use), pieces[m], known});
    }
  }
  return list;
}

}  // namespace backmark::evidence
