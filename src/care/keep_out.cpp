#include "care/keep_out.h"

#include <algorithm>

#include "base/text.h"
#include "care/made_of.h"
#include "reference/display.h"
#include "reference/words_in.h"

namespace backmark::care {

namespace {

using reference::CaseMaterial;

struct Inhabitant {
  const model::Piece* piece = nullptr;
  std::vector<MadeOf> made;
};

std::vector<std::string> harmed_by(const CaseMaterial& material,
                                   const std::vector<Inhabitant>& pieces,
                                   const model::Piece* except) {
  std::vector<std::string> numbers;
  for (const Inhabitant& one : pieces) {
    const bool hurt = std::any_of(one.made.begin(), one.made.end(), [&](const MadeOf& made) {
      return reference::longest_word_in(made.value, material.harms) > 0;
    });
    if (hurt && one.piece != except) {
      numbers.push_back(one.piece->number);
    }
  }
  return numbers;
}

KeepOut found(std::string what, const CaseMaterial& row, std::vector<std::string> harmed) {
  return {std::move(what), row.verdict, row.emits,        row.note,
          row.source,      row.status,  std::move(harmed)};
}

}  // namespace

std::vector<KeepOut> keep_out_of(const model::Show& show, const CaseContents& contents) {
  std::vector<Inhabitant> pieces;
  for (const model::Placement* placement : contents.placed) {
    const model::Piece* piece = show.find(placement->piece);
    pieces.push_back({piece, made_of(show, *piece)});
  }
  std::vector<KeepOut> list;
  for (const std::string_view part : split(contents.in->made_of, ";")) {
    const std::string what(trim(part));
    const CaseMaterial* row = reference::case_material(what);
    if (!what.empty() && row == nullptr) {
      list.push_back({what,
                      "unknown",
                      "",
                      "not in the table: have it tested (accelerated "
                      "corrosion test, 28 days)",
                      "",
                      "",
                      {}});
    } else if (row != nullptr && row->verdict != "preferred" && row->verdict != "sorbent") {
      list.push_back(found(what, *row, harmed_by(*row, pieces, nullptr)));
    }
  }
  for (const Inhabitant& one : pieces) {
    for (const MadeOf& made : one.made) {
      const CaseMaterial* row = reference::case_material(made.value);
      if (row != nullptr && row->verdict == "isolate") {
        list.push_back(found(one.piece->number + ", " + made.value, *row,
                             harmed_by(*row, pieces, one.piece)));
      }
    }
  }
  return list;
}

}  // namespace backmark::care
