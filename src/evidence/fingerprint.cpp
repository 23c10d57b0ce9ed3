#include "evidence/fingerprint.h"

#include <bit>
#include <optional>

namespace backmark::evidence {

namespace {

// FNV-1a, 64 bits (Fowler, Noll, Vo), of texts and of numbers byte by byte.
class Mark {
 public:
  std::uint64_t value = 14695981039346656037ULL;

  void put(std::uint64_t number) {
    for (int byte = 0; byte < 8; ++byte) {
      put_byte(static_cast<unsigned char>(number >> (8 * byte)));
    }
  }
  void put(std::string_view text) {
    put(static_cast<std::uint64_t>(text.size()));
    for (const char letter : text) {
      put_byte(static_cast<unsigned char>(letter));
    }
  }
  void put(double number) { put(std::bit_cast<std::uint64_t>(number)); }
  void put_int(std::int64_t number) { put(static_cast<std::uint64_t>(number)); }
  void put_year(const std::optional<Year>& year) {
    put_int(year ? year->value : std::int64_t{1} << 40);
  }

 private:
  void put_byte(unsigned char byte) { value = (value ^ byte) * 1099511628211ULL; }
};

void put_values(const Gathered& gathered, std::size_t piece, Mark& mark) {
  const StylePiece& row = gathered.style.pieces[piece];
  for (std::size_t c = 0; c < row.values.size(); ++c) {
    const StyleValue& value = row.values[c];
    mark.put(static_cast<std::uint64_t>(value.terms.size()));
    for (const int term : value.terms) {
      mark.put(gathered.style.characters[c].vocabulary.name(term));
    }
    mark.put(value.number.value_or(-1));
  }
}

void put_said(const GatheredPiece& piece, Mark& mark) {
  for (const SaidOfYear& said : piece.years) {
    const Statement& statement = said.statement;
    mark.put_int(static_cast<int>(statement.saying));
    mark.put_int(statement.first);
    mark.put_int(statement.last);
    mark.put(statement.spread);
    mark.put(statement.reliability);
    mark.put(statement.origin);
    mark.put_int(said.teller);
  }
  for (const SaidOfMaker& said : piece.makers) {
    mark.put(static_cast<std::uint64_t>(said.maker));
    mark.put(said.reliability);
  }
  for (const SeenInSequence& one : piece.sequences) {
    mark.put(static_cast<std::uint64_t>(one.lineage));
    mark.put_int(one.variant);
    mark.put(one.certainty);
  }
}

}  // namespace

std::uint64_t fingerprint_of_piece(const model::Show& show,
                                   const Gathered& gathered,
                                   std::size_t piece) {
  const model::Piece& one = show.all<model::Piece>()[piece];
  Mark mark;
  mark.put(show.text(one.lot));
  mark.put(show.text(gathered.pieces[piece].place));
  put_values(gathered, piece, mark);
  put_said(gathered.pieces[piece], mark);
  for (const model::Part& part : show.parts_of(one.id)) {
    mark.put(show.text(part.kind));
    mark.put_int(static_cast<int>(part.originality));
  }
  return mark.value;
}

std::uint64_t fingerprint_of_frame(const model::Show& show, const Gathered& gathered) {
  Mark mark;
  for (const model::Maker& maker : show.all<model::Maker>()) {
    mark.put_int(maker.id.value);
    mark.put_int(static_cast<int>(maker.kind));
    mark.put(show.text(maker.place));
    mark.put_year(maker.from);
    mark.put_year(maker.to);
    mark.put(maker.from_sd);
    mark.put(maker.to_sd);
  }
  for (const StatedWindow& window : gathered.style.windows) {
    const StyleCharacter& character = gathered.style.characters[window.character];
    mark.put(character.name);
    mark.put(character.vocabulary.name(window.term));
    mark.put_int(window.span.first.value);
    mark.put_int(window.span.last.value);
    mark.put(window.reliability);
  }
  for (const model::Lineage& lineage : show.all<model::Lineage>()) {
    mark.put_int(lineage.id.value);
    for (const model::Word variant : lineage.variants) {
      mark.put(show.text(variant));
    }
  }
  return mark.value;
}

}  // namespace backmark::evidence
