#include <algorithm>
#include <array>
#include <map>

#include "base/json.h"
#include "base/text.h"
#include "desk/belief_json.h"
#include "desk/each.h"
#include "desk/list_columns.h"

namespace backmark::desk {

namespace {

using model::Show;

// Characters that the Table arranges and filters by, where the show knows them.
constexpr std::array wanted = {"fitting", "metal", "material", "motif", "height", "width"};

std::vector<std::string> known_columns(const Show& show) {
  std::vector<std::string> columns;
  for (const char* key : wanted) {
    if (show.character(key) != nullptr) {
      columns.emplace_back(key);
    }
  }
  return columns;
}

Json pick_json(const model::Pick* pick) {
  return pick == nullptr ? Json()
                         : Json{{"rank", pick->rank},
                                {"show", pick->in_show},
                                {"book", pick->in_book},
                                {"lead", pick->lead}};
}

// The likeliest thing that does not fit, in words, by piece.
std::map<std::int32_t, std::string> misfits_of(const LastRun* last) {
  std::map<std::int32_t, std::string> words;
  std::map<std::int32_t, double> best;
  if (last == nullptr) {
    return words;
  }
  for (const model::Misfit& misfit : last->run.beliefs.misfits) {
    if (misfit.p > best[misfit.piece.value]) {
      best[misfit.piece.value] = misfit.p;
      words[misfit.piece.value] = misfit.what;
    }
  }
  return words;
}

Json piece_json(const Show& show, const ListedPiece& of) {
  const model::Piece& piece = *of.piece;
  Json row = {{"number", piece.number},
              {"title", piece.title},
              {"form", show.text(piece.form)},
              {"tray", show.text(piece.tray)},
              {"section", of.section != nullptr ? Json(of.section->key) : Json()},
              {"case", of.in != nullptr ? Json(of.in->key) : Json()},
              {"pictures", pictures_drawn(show, piece.id)},
              {"made", of.phrases != nullptr ? of.phrases->made : ""},
              {"by", of.phrases != nullptr ? of.phrases->maker : ""},
              {"year", of.belief != nullptr ? years_drawn(of.belief->year) : Json()},
              {"makers", Json::array()}};
  if (of.belief != nullptr) {
    row["makers"] = makers_drawn(show, of.belief->maker);
  }
  return row;
}

Json lanes_json(const Show& show) {
  Json list = Json::array();
  for (const model::Maker& maker : show.all<model::Maker>()) {
    list.push_back({{"name", maker.name},
                    {"from", maker.from ? Json(maker.from->value) : Json()},
                    {"to", maker.to ? Json(maker.to->value) : Json()},
                    {"firm", maker.kind == model::MakerKind::firm}});
  }
  return list;
}

Json sections_json(const Show& show) {
  auto sections = show.all<model::Section>();
  std::stable_sort(sections.begin(), sections.end(),
                   [](const auto& a, const auto& b) { return a.rank < b.rank; });
  Json list = Json::array();
  for (const model::Section& section : sections) {
    list.push_back({{"key", section.key}, {"title", section.title}});
  }
  return list;
}

Result<Json> pieces_json(const Show& show, const LastRun* last) {
  const auto pieces = listed_pieces(show, last);
  const auto columns = known_columns(show);
  const auto cells = cells_of(show, pieces, columns);
  if (!cells) {
    return cells.problem();
  }
  std::map<std::int32_t, const model::Pick*> picks;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    picks[pick.piece.value] = &pick;
  }
  const auto misfits = misfits_of(last);
  Json list = Json::array();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Json row = piece_json(show, pieces[i]);
    const std::int32_t id = pieces[i].piece->id.value;
    const auto pick = picks.find(id);
    row["pick"] = pick_json(pick == picks.end() ? nullptr : pick->second);
    const auto misfit = misfits.find(id);
    row["torn"] = misfit == misfits.end() ? Json() : Json(misfit->second);
    for (std::size_t c = 0; c < columns.size(); ++c) {
      row["seen"][columns[c]] = (*cells)[i][c];
    }
    list.push_back(std::move(row));
  }
  return list;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto last = last_run(*open);
  auto pieces = pieces_json(open->show, last ? &*last : nullptr);
  if (!pieces) {
    return pieces.problem();
  }
  Answer answer;
  answer.text =
      fmt::format("{} pieces; the table is for pages: ask with --json\n", pieces->size());
  answer.json = {{"pieces", *std::move(pieces)},
                 {"makers", lanes_json(open->show)},
                 {"sections", sections_json(open->show)}};
  return answer;
}

}  // namespace

Operation table_pieces() {
  return {.name = "table",
          .help = "every piece as the Table lays it: measures, pictures, years and makers",
          .from_show_alone = true,
          .parameters = {show_folder()},
          .run = run};
}

}  // namespace backmark::desk
