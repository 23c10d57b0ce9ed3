#include "model/show.h"

#include <algorithm>
#include <utility>

namespace backmark::model {

namespace {

// A show that was settled before is in order but for a few rows at its end: to sort all of it
// took longer than everything else that a note costs.
template <class T, class Less>
void in_order(std::vector<T>& rows, const Less& less) {
  const auto rest = std::is_sorted_until(rows.begin(), rows.end(), less);
  std::sort(rest, rows.end(), less);
  std::inplace_merge(rows.begin(), rest, rows.end(), less);
}

bool on_piece(const Claim& claim) {
  return claim.about == About::piece;
}

template <class T>
void settle_rows(std::vector<T>& rows) {
  if constexpr (stands_by_piece<T>) {
    in_order(rows, [](const T& a, const T& b) {
      return std::tie(a.piece, a.id) < std::tie(b.piece, b.id);
    });
  } else if constexpr (std::is_same_v<T, Claim>) {
    in_order(rows, [](const Claim& a, const Claim& b) {
      const int a_off = on_piece(a) ? 0 : 1;
      const int b_off = on_piece(b) ? 0 : 1;
      return std::tie(a_off, a.subject, a.id) < std::tie(b_off, b.subject, b.id);
    });
  } else {
    in_order(rows, [](const T& a, const T& b) { return a.id < b.id; });
  }
}

template <class T>
std::span<const T> of_piece(const std::vector<T>& rows, Id<Piece> piece) {
  const auto less = [](const T& row, Id<Piece> want) { return row.piece < want; };
  const auto more = [](Id<Piece> want, const T& row) { return want < row.piece; };
  const auto first = std::lower_bound(rows.begin(), rows.end(), piece, less);
  const auto last = std::upper_bound(first, rows.end(), piece, more);
  return {first, last};
}

template <class T>
const T* with_key(const std::vector<T>& rows, std::string_view key) {
  const auto at =
      std::find_if(rows.begin(), rows.end(), [key](const T& row) { return row.key == key; });
  return at != rows.end() ? &*at : nullptr;
}

}  // namespace

Word Pool::find(std::string_view text) const {
  if (older_ != nullptr) {
    if (const auto at = older_->index.find(text); at != older_->index.end()) {
      return {at->second};
    }
  }
  const auto at = newer_.index.find(text);
  return at == newer_.index.end() ? Word{} : Word{at->second};
}

Word Pool::take(std::string_view text) {
  if (text.empty()) {
    return {};
  }
  if (const Word known = find(text)) {
    return known;
  }
  const Word word{static_cast<std::uint32_t>(size())};
  newer_.index.emplace(text, word.value);
  newer_.texts.emplace_back(text);
  return word;
}

void Pool::reserve(std::size_t count) {
  newer_.texts.reserve(count + 1);
  newer_.index.reserve(count);
}

void Pool::settle() {
  constexpr std::size_t few = 200;
  if (newer_.texts.size() < few + first_newer_ / 8) {
    return;
  }
  auto all = older_ == nullptr ? std::make_shared<Texts>() : std::make_shared<Texts>(*older_);
  if (older_ == nullptr) {
    *all = std::move(newer_);
  } else {
    all->texts.insert(all->texts.end(), newer_.texts.begin(), newer_.texts.end());
    all->index.insert(newer_.index.begin(), newer_.index.end());
  }
  newer_ = {};
  first_newer_ = static_cast<std::uint32_t>(all->texts.size());
  older_ = std::move(all);
}

const Maker* Show::maker(std::string_view key) const {
  return with_key(all<Maker>(), key);
}
const Source* Show::source(std::string_view key) const {
  return with_key(all<Source>(), key);
}
const Character* Show::character(std::string_view key) const {
  return with_key(all<Character>(), key);
}

const Piece* Show::piece(std::string_view number) const {
  const auto at = by_number_->at.find(number);
  return at == by_number_->at.end() ? nullptr : &all<Piece>()[at->second];
}

std::string_view Show::setting(std::string_view key) const {
  const Setting* found = with_key(all<Setting>(), key);
  return found != nullptr ? std::string_view(found->value) : std::string_view();
}

std::span<const Observation> Show::observations_of(Id<Piece> piece) const {
  return of_piece(all<Observation>(), piece);
}
std::span<const Part> Show::parts_of(Id<Piece> piece) const {
  return of_piece(all<Part>(), piece);
}
std::span<const Mark> Show::marks_of(Id<Piece> piece) const {
  return of_piece(all<Mark>(), piece);
}
std::span<const Photograph> Show::photographs_of(Id<Piece> piece) const {
  return of_piece(all<Photograph>(), piece);
}
std::span<const Note> Show::notes_of(Id<Piece> piece) const {
  return of_piece(all<Note>(), piece);
}
std::span<const Event> Show::events_of(Id<Piece> piece) const {
  return of_piece(all<Event>(), piece);
}

std::span<const Claim> Show::claims_on(Id<Piece> piece) const {
  // Claims about pieces stand first, by piece.
  const auto& rows = all<Claim>();
  const auto end = std::partition_point(rows.begin(), rows.end(), on_piece);
  const auto first =
      std::lower_bound(rows.begin(), end, piece.value,
                       [](const Claim& row, std::int32_t want) { return row.subject < want; });
  const auto last =
      std::upper_bound(first, end, piece.value,
                       [](std::int32_t want, const Claim& row) { return want < row.subject; });
  return {first, last};
}

std::array<Show::Kind, Show::kind_count> Show::no_records() {
  static const std::array<Kind, kind_count> none =
      []<class... T>(const std::tuple<std::vector<T>...>*) {
        return std::array<Kind, kind_count>{Kind{std::make_shared<std::vector<T>>()}...};
      }(static_cast<const Records*>(nullptr));
  return none;
}

Show::Show() : kinds_(no_records()), by_number_(std::make_shared<ByNumber>()) {}

void Show::fill(Records records) {
  std::apply([&](auto&... rows) { (fill(std::move(rows)), ...); }, records);
}

void Show::settle() {
  pool.settle();
  const bool numbered_anew = !kinds_[place<Piece>].settled;
  each_kind([&]<class T>(const std::vector<T>&) {
    if (!kinds_[place<T>].settled) {
      settle_rows(all<T>());
      kinds_[place<T>].settled = true;
    }
  });
  if (!numbered_anew) {
    return;
  }
  auto by_number = std::make_shared<ByNumber>();
  by_number->pieces = kinds_[place<Piece>].rows;
  const auto& pieces = std::as_const(*this).all<Piece>();
  by_number->at.reserve(pieces.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    by_number->at.emplace(pieces[i].number, i);
  }
  by_number_ = std::move(by_number);
}

}  // namespace backmark::model
