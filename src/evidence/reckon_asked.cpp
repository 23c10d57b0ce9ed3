// The piece that is asked about: as recorded, without something, or as it might be.
#include <algorithm>

#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

using model::Piece;
using model::Seen;

// Records of one kind without those to be ignored, and with those added.
template <class T>
std::vector<T> changed(std::span<const T> recorded,
                       const std::set<std::int32_t>& removed,
                       const std::vector<T>& added) {
  std::vector<T> rows;
  std::copy_if(recorded.begin(), recorded.end(), std::back_inserter(rows),
               [&](const T& row) { return !removed.contains(row.id.value); });
  rows.insert(rows.end(), added.begin(), added.end());
  return rows;
}

std::vector<Sight> sights_if(const model::Show& show,
                             const Piece* piece,
                             const WhatIf& change) {
  std::set<std::int32_t> told;
  std::vector<Sight> sights;
  for (const SeenInstead& one : change.seen) {
    told.insert(one.character.value);
    if (one.values.empty()) {
      sights.push_back({one.character, one.seen, "", one.number, 0});
    }
    for (const std::string& value : one.values) {
      sights.push_back({one.character, one.seen, value, one.number, 0});
    }
  }
  if (piece == nullptr) {
    return sights;
  }
  for (const model::Observation& seen : show.observations_of(piece->id)) {
    if (!told.contains(seen.character.value) && !change.removed.contains(seen.id.value)) {
      sights.push_back(
          {seen.character, seen.seen, show.text(seen.value), seen.number, seen.id.value});
    }
  }
  return sights;
}

// Numbers of terms as the table has them; words it has not met get numbers beyond its own.
class KnownTerms {
 public:
  explicit KnownTerms(const StyleTable& table) : table_(table) {}
  int operator()(std::size_t column, std::string_view term) {
    const Vocabulary& known = table_.characters[column].vocabulary;
    if (const auto number = known.find(term)) {
      return *number;
    }
    return static_cast<int>(known.size()) + unknown_[column].add(term);
  }

 private:
  const StyleTable& table_;
  std::unordered_map<std::size_t, Vocabulary> unknown_;
};

}  // namespace

Asked Reckoning::Inside::asked(std::size_t piece, const LeftOut& without) const {
  const StylePiece& row = gathered.style.pieces[piece];
  Asked asked{show->all<Piece>()[piece].id, gathered.pieces[piece], row.values, row.lot};
  const auto left_out = [&](const auto& said) { return without.records.contains(said.record); };
  std::erase_if(asked.said.years, left_out);
  std::erase_if(asked.said.makers, left_out);
  std::erase_if(asked.said.sequences, [&](const SeenInSequence& one) {
    return left_out(one) || (one.seen && without.characters.contains(one.seen.value));
  });
  hide_known(asked.said, without.known_year, without.known_maker);
  for (std::size_t c = 0; c < asked.values.size(); ++c) {
    const auto character = gathered.columns.ids()[c];
    if (character && without.characters.contains(character.value)) {
      asked.values[c] = {};
    }
  }
  return asked;
}

Asked Reckoning::Inside::asked_if(const Piece* piece, const WhatIf& change) const {
  Asked asked;
  std::span<const model::Claim> claims;
  std::span<const model::Event> events;
  std::span<const model::Mark> marks;
  std::string title;
  std::string form;
  if (piece != nullptr) {
    asked.id = piece->id;
    const auto row = static_cast<std::size_t>(piece - show->all<Piece>().data());
    asked.lot = gathered.style.pieces[row].lot;
    claims = show->claims_on(piece->id);
    events = show->events_of(piece->id);
    marks = show->marks_of(piece->id);
    title = piece->title;
    form = show->text(piece->form);
  }
  const auto all_claims = changed(claims, change.removed, change.claims);
  const auto all_events = changed(events, change.removed, change.events);
  const auto all_marks = changed(marks, change.removed, change.marks);
  gather_said(*show, {all_claims, all_events, all_marks}, *legends, *mark_years, settings.today,
              asked.said);
  const auto sights = sights_if(*show, piece, change);
  asked.said.sequences = sequences->on(sights, all_marks);
  if (settings.hidden.contains(asked.id.value)) {
    hide_known(asked.said, true, true);
  }
  EncodedRow encoded = encode_row(*show, gathered.columns, sights, change.form.value_or(form),
                                  change.title.value_or(title), KnownTerms(gathered.style));
  asked.values = std::move(encoded.values);
  asked.said.records = std::move(encoded.records);
  asked.said.place = show->pool.find(encoded.place);
  return asked;
}

}  // namespace backmark::evidence
