// The answer is written in columns, one entry a piece: a tree with a node for every field of
// every piece takes longer to make, to send and to read than all that is drawn from it.
#include <algorithm>
#include <array>
#include <map>
#include <unordered_map>

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

// The texts of the answer, each once; columns name them by their place. The first is empty.
class Words {
 public:
  Words() { place(""); }

  std::size_t place(std::string_view text) {
    const auto [at, is_new] = places_.try_emplace(std::string(text), places_.size());
    if (is_new) {
      list_.push_back(text);
    }
    return at->second;
  }
  Json list() && { return std::move(list_); }

 private:
  std::unordered_map<std::string, std::size_t> places_;
  Json list_ = Json::array();
};

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

std::map<std::int32_t, const model::Pick*> picks_of(const Show& show) {
  std::map<std::int32_t, const model::Pick*> picks;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    picks[pick.piece.value] = &pick;
  }
  return picks;
}

template <class T>
std::optional<T> at(const std::map<std::int32_t, T>& map, std::int32_t id) {
  const auto found = map.find(id);
  return found == map.end() ? std::nullopt : std::optional<T>(found->second);
}

// [place of the word, thousandths, ... of the listed, thousandths of the unrecorded hand].
Json makers_row(const Show& show, const model::PieceBelief* belief, Words& words) {
  Json row = Json::array();
  if (belief == nullptr) {
    return row;
  }
  for (const Json& one : makers_drawn(show, belief->maker)) {
    if (!one[0].is_null()) {
      row.push_back(words.place(one[0].get_ref<const std::string&>()));
    }
    row.push_back(std::lround(1000 * one[1].get<double>()));
  }
  return row;
}

// [view, v, w_mm, h_mm, shape] each, shape only where pictures_drawn gives one.
Json pictures_row(const Show& show, const model::Piece& piece) {
  Json row = Json::array();
  for (const Json& one : pictures_drawn(show, piece.id)) {
    Json& picture = row.emplace_back(Json::array());
    for (const Json& value : one) {
      picture.push_back(value);
    }
  }
  return row;
}

// Years of one entry each; "p" is empty where no year can be said, and the others are 0. "q"
// has the first of twenty years and then how far each lies after the one before.
void add_years(const model::PieceBelief* belief, Json& columns) {
  const bool none = belief == nullptr || belief->year.empty();
  const DrawnYears years = none ? DrawnYears() : drawn_years(belief->year);
  columns["p10"].push_back(years.p10);
  columns["p50"].push_back(years.p50);
  columns["p90"].push_back(years.p90);
  columns["from"].push_back(years.from);
  columns["p"].push_back(years.p);
  Json steps = Json::array();
  for (std::size_t i = 0; i < years.q.size() && !none; ++i) {
    steps.push_back(years.q[i] - (i > 0 ? years.q[i - 1] : 0));
  }
  columns["q"].push_back(std::move(steps));
}

// 1: in the show, 2: in the book, 4: leads its section; added up. -1: not picked.
int marks_of(const model::Pick& pick) {
  return (pick.in_show ? 1 : 0) + (pick.in_book ? 2 : 0) + (pick.lead ? 4 : 0);
}

void add_piece(const Show& show, const ListedPiece& of, Words& words, Json& columns) {
  const model::Piece& piece = *of.piece;
  columns["number"].push_back(piece.number);
  const auto add = [&](const char* name, std::string_view text) {
    columns[name].push_back(words.place(text));
  };
  add("title", piece.title);
  add("form", show.text(piece.form));
  add("tray", show.text(piece.tray));
  add("section", of.section != nullptr ? of.section->key : "");
  add("case", of.in != nullptr ? of.in->key : "");
  add("made", of.phrases != nullptr ? of.phrases->made : "");
  add("by", of.phrases != nullptr ? of.phrases->maker : "");
  columns["pictures"].push_back(pictures_row(show, piece));
  columns["makers"].push_back(makers_row(show, of.belief, words));
  add_years(of.belief, columns["year"]);
}

Result<Json> pieces_json(const Show& show, const LastRun* last, Words& words) {
  const auto pieces = listed_pieces(show, last);
  const auto seen = known_columns(show);
  const auto cells = cells_of(show, pieces, seen);
  if (!cells) {
    return cells.problem();
  }
  const auto picks = picks_of(show);
  const auto misfits = misfits_of(last);
  Json columns = {{"number", Json::array()}, {"year", Json::object()}};
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const std::int32_t id = pieces[i].piece->id.value;
    add_piece(show, pieces[i], words, columns);
    const auto pick = at(picks, id);
    columns["rank"].push_back(pick ? (*pick)->rank : 0);
    columns["pick"].push_back(pick ? marks_of(**pick) : -1);
    columns["torn"].push_back(words.place(at(misfits, id).value_or("")));
    for (std::size_t c = 0; c < seen.size(); ++c) {
      columns["seen"][seen[c]].push_back(words.place((*cells)[i][c]));
    }
  }
  return columns;
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

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto last = last_run(*open);
  Words words;
  auto columns = pieces_json(open->show, last ? &*last : nullptr, words);
  if (!columns) {
    return columns.problem();
  }
  Answer answer;
  answer.text = fmt::format("{} pieces; the table is for pages: ask with --json\n",
                            (*columns)["number"].size());
  answer.json = {{"words", std::move(words).list()},
                 {"columns", *std::move(columns)},
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
