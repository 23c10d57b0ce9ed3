// The answer is written in columns, one entry a piece: a tree with a node for every field of
// every piece takes longer to make, to send and to read than all that is drawn from it.
#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
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
  explicit Words(const Show& show) : of_pool_(show.pool.size(), -1), show_(show) { place(""); }

  int place(std::string_view text) {
    const auto known = places_.find(text);
    if (known != places_.end()) {
      return known->second;
    }
    list_.emplace_back(text);
    texts_.emplace_back(text);
    return places_.emplace(texts_.back(), static_cast<int>(texts_.size()) - 1).first->second;
  }
  int place(model::Word word) {
    int& known = of_pool_[word.value];
    known = known < 0 ? place(show_.text(word)) : known;
    return known;
  }
  Json list() && { return std::move(list_); }

 private:
  std::deque<std::string> texts_;  // never move
  std::unordered_map<std::string_view, int> places_;
  std::vector<int> of_pool_;  // by word of the show; -1: not met yet
  const Show& show_;
  Json::array_t list_;
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

// Numbers as one text, parted by spaces: as a list each would cost more than all else of a
// piece.
void add_number(std::string& text, long number) {
  if (!text.empty()) {
    text += ' ';
  }
  fmt::format_to(std::back_inserter(text), "{}", number);
}

// Place of the word and thousandths of each that is listed, as makers_drawn has them; then the
// thousandths of the unrecorded hand.
std::string makers_row(const Show& show, const model::PieceBelief* belief, Words& words) {
  std::string row;
  if (belief == nullptr) {
    return row;
  }
  for (const model::MakerChance& chance : belief->maker.makers) {
    const model::Maker* known = chance.p < 0.005 ? nullptr : show.find(chance.maker);
    if (known != nullptr) {
      add_number(row, words.place(known->name));
      add_number(row, std::lround(1000 * chance.p));
    }
  }
  add_number(row, std::lround(1000 * belief->maker.unrecorded));
  return row;
}

// [view, v, w_mm, h_mm, shape] each, shape only where pictures_drawn gives one.
Json::array_t pictures_row(const Show& show, const model::Piece& piece) {
  Json::array_t row;
  for (const Json& one : pictures_drawn(show, piece.id)) {
    row.emplace_back(Json::array_t(one.begin(), one.end()));
  }
  return row;
}

using Column = Json::array_t;

// An object whose parts are laid in afterwards: one that grows copies all that it holds.
Json keys(const std::vector<std::string>& names) {
  Json all = Json::object();
  for (const std::string& name : names) {
    all[name] = nullptr;
  }
  return all;
}

// "p" is empty where no year can be said, and the others are 0. "q" has the first of twenty
// years and then how far each lies after the one before.
struct YearColumns {
  Column p10, p50, p90, from, p, q;

  void add(const model::PieceBelief* belief) {
    const bool none = belief == nullptr || belief->year.empty();
    const DrawnYears years = none ? DrawnYears() : drawn_years(belief->year);
    p10.emplace_back(years.p10);
    p50.emplace_back(years.p50);
    p90.emplace_back(years.p90);
    from.emplace_back(years.from);
    p.emplace_back(years.p);
    std::string steps;
    for (std::size_t i = 0; i < years.q.size() && !none; ++i) {
      add_number(steps, years.q[i] - (i > 0 ? years.q[i - 1] : 0));
    }
    q.emplace_back(std::move(steps));
  }

  Json json() && {
    Json all = keys({"p10", "p50", "p90", "from", "p", "q"});
    all["p10"] = std::move(p10);
    all["p50"] = std::move(p50);
    all["p90"] = std::move(p90);
    all["from"] = std::move(from);
    all["p"] = std::move(p);
    all["q"] = std::move(q);
    return all;
  }
};

// 1: in the show, 2: in the book, 4: leads its section; added up. -1: not picked.
int marks_of(const model::Pick& pick) {
  return (pick.in_show ? 1 : 0) + (pick.in_book ? 2 : 0) + (pick.lead ? 4 : 0);
}

struct Columns {
  Column number, title, form, tray, section, in, made, by, torn, rank, pick, pictures, makers;
  YearColumns year;
  std::vector<std::string> seen_keys;  // of characters
  std::vector<Column> seen;            // one for each of them

  void add(const Show& show, const ListedPiece& of, Words& words) {
    const model::Piece& piece = *of.piece;
    number.emplace_back(piece.number);
    title.emplace_back(words.place(piece.title));
    form.emplace_back(words.place(piece.form));
    tray.emplace_back(words.place(piece.tray));
    section.emplace_back(of.section != nullptr ? words.place(of.section->key) : 0);
    in.emplace_back(of.in != nullptr ? words.place(of.in->key) : 0);
    made.emplace_back(of.phrases != nullptr ? words.place(of.phrases->made) : 0);
    by.emplace_back(of.phrases != nullptr ? words.place(of.phrases->maker) : 0);
    pictures.emplace_back(pictures_row(show, piece));
    makers.emplace_back(makers_row(show, of.belief, words));
    year.add(of.belief);
  }

  Json json() && {
    Json all = keys({"number", "title", "form", "tray", "section", "case", "made", "by", "torn",
                     "rank", "pick", "pictures", "makers", "year", "seen"});
    all["seen"] = keys(seen_keys);
    all["number"] = std::move(number);
    all["title"] = std::move(title);
    all["form"] = std::move(form);
    all["tray"] = std::move(tray);
    all["section"] = std::move(section);
    all["case"] = std::move(in);
    all["made"] = std::move(made);
    all["by"] = std::move(by);
    all["torn"] = std::move(torn);
    all["rank"] = std::move(rank);
    all["pick"] = std::move(pick);
    all["pictures"] = std::move(pictures);
    all["makers"] = std::move(makers);
    all["year"] = std::move(year).json();
    for (std::size_t i = 0; i < seen.size(); ++i) {
      all["seen"][seen_keys[i]] = std::move(seen[i]);
    }
    return all;
  }
};

Result<Json> pieces_json(const Show& show, const LastRun* last, Words& words) {
  const auto pieces = listed_pieces(show, last);
  const auto seen = known_columns(show);
  const auto cells = cells_of(show, pieces, seen);
  if (!cells) {
    return cells.problem();
  }
  const auto picks = picks_of(show);
  const auto misfits = misfits_of(last);
  Columns columns;
  columns.seen_keys = seen;
  columns.seen.resize(seen.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const std::int32_t id = pieces[i].piece->id.value;
    columns.add(show, pieces[i], words);
    const auto pick = at(picks, id);
    columns.rank.emplace_back(pick ? (*pick)->rank : 0);
    columns.pick.emplace_back(pick ? marks_of(**pick) : -1);
    columns.torn.emplace_back(words.place(at(misfits, id).value_or("")));
    for (std::size_t c = 0; c < seen.size(); ++c) {
      columns.seen[c].emplace_back(words.place((*cells)[i][c]));
    }
  }
  return std::move(columns).json();
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
  Words words(open->show);
  auto columns = pieces_json(open->show, last ? &*last : nullptr, words);
  if (!columns) {
    return columns.problem();
  }
  Answer answer;
  answer.text = fmt::format("{} pieces; the table is for pages: ask with --json\n",
                            open->show.all<model::Piece>().size());
  answer.json = keys({"words", "columns", "makers", "sections"});
  answer.json["words"] = std::move(words).list();
  answer.json["columns"] = *std::move(columns);
  answer.json["makers"] = lanes_json(open->show);
  answer.json["sections"] = sections_json(open->show);
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
