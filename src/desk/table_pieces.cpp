// The answer is written in columns, one entry a piece, as text at once: a tree with a node for
// every field of every piece takes longer to make, to send and to read than all that is drawn
// from it. What follows from the reckoning alone is kept until the next one
// (desk/table_reckoned.h), so that a change of the record costs only what is recorded.
#include <algorithm>
#include <array>
#include <unordered_map>

#include "base/json.h"
#include "base/text.h"
#include "desk/belief_json.h"
#include "desk/each.h"
#include "desk/list_columns.h"
#include "desk/table_reckoned.h"
#include "desk/warm.h"

namespace backmark::desk {

namespace {

using model::Show;

// Characters that the Table arranges and filters by, where the show knows them.
constexpr std::array wanted = {"fitting", "metal", "material", "motif", "height", "width"};

std::vector<const model::Character*> known_characters(const Show& show) {
  std::vector<const model::Character*> known;
  for (const char* key : wanted) {
    if (const model::Character* character = show.character(key)) {
      known.push_back(character);
    }
  }
  return known;
}

// Places of the show's words among the texts of the answer.
class Places {
 public:
  Places(const Show& show, TableWords& words)
      : of_pool_(show.pool.size(), -1), show_(show), words_(words) {}

  int of(std::string_view text) { return words_.place(text); }
  int of(model::Word word) {
    int& known = of_pool_[word.value];
    known = known < 0 ? words_.place(show_.text(word)) : known;
    return known;
  }
  // Of what was seen of the character, as the list says it.
  int of(std::span<const model::Observation> seen, const model::Character& character) {
    const model::Observation* only = nullptr;
    for (const model::Observation& one : seen) {
      if (one.character != character.id) {
        continue;
      }
      if (only != nullptr) {
        return of(observed(show_, seen, character));
      }
      only = &one;
    }
    if (only == nullptr) {
      return 0;
    }
    const bool word =
        only->seen == model::Seen::value && character.shape != model::Shape::number;
    return word ? of(only->value) : of(observed(show_, {only, 1}, character));
  }

 private:
  std::vector<int> of_pool_;  // by word of the show; -1: not met yet
  const Show& show_;
  TableWords& words_;
};

// The likeliest thing that does not fit, by piece.
std::unordered_map<std::int32_t, const model::Misfit*> misfits_of(const LastRun* last) {
  std::unordered_map<std::int32_t, const model::Misfit*> worst;
  if (last == nullptr) {
    return worst;
  }
  for (const model::Misfit& misfit : last->run.beliefs.misfits) {
    const model::Misfit*& before = worst[misfit.piece.value];
    if (misfit.p > (before == nullptr ? 0 : before->p)) {
      before = &misfit;
    }
  }
  return worst;
}

std::unordered_map<std::int32_t, const model::Pick*> picks_of(const Show& show) {
  std::unordered_map<std::int32_t, const model::Pick*> picks;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    picks[pick.piece.value] = &pick;
  }
  return picks;
}

template <class T>
const T* at(const std::unordered_map<std::int32_t, const T*>& map, std::int32_t id) {
  const auto found = map.find(id);
  return found == map.end() ? nullptr : found->second;
}

// [view, v, w_mm, h_mm, shape] each, shape only where it is known.
std::string pictures_row(const Show& show, const model::Piece& piece) {
  std::string row = "[";
  for (const model::Photograph& one : show.photographs_of(piece.id)) {
    const DrawnPicture picture = drawn_picture(one);
    row += fmt::format("{}[\"{}\",{},{},{}", row.size() > 1 ? "," : "", picture.view, picture.v,
                       picture.w_mm, picture.h_mm);
    row += picture.shape > 0 ? fmt::format(",{}]", picture.shape) : "]";
  }
  return row + "]";
}

// 1: in the show, 2: in the book, 4: leads its section; added up. -1: not picked.
int marks_of(const model::Pick* pick) {
  return pick == nullptr
             ? -1
             : (pick->in_show ? 1 : 0) + (pick->in_book ? 2 : 0) + (pick->lead ? 4 : 0);
}

// What the record says of each piece.
struct RecordedColumns {
  explicit RecordedColumns(std::size_t characters) : seen(characters) {}

  WrittenList number, title, form, tray, section, in, rank, pick, torn, pictures;
  std::vector<WrittenList> seen;  // one for each character

  void add(const Show& show, const ListedPiece& of, Places& places) {
    number.add_quoted(of.piece->number);
    title.add(places.of(of.piece->title));
    form.add(places.of(of.piece->form));
    tray.add(places.of(of.piece->tray));
    section.add(of.section != nullptr ? places.of(of.section->key) : 0);
    in.add(of.in != nullptr ? places.of(of.in->key) : 0);
    pictures.add_written(pictures_row(show, *of.piece));
  }

  void write(WrittenObject& all) const {
    all.add("number", number);
    all.add("title", title);
    all.add("form", form);
    all.add("tray", tray);
    all.add("section", section);
    all.add("case", in);
    all.add("rank", rank);
    all.add("pick", pick);
    all.add("torn", torn);
    all.add("pictures", pictures);
  }
};

RecordedColumns recorded_columns(const Show& show,
                                 const std::vector<ListedPiece>& pieces,
                                 const LastRun* last,
                                 Places& places) {
  const auto characters = known_characters(show);
  const auto picks = picks_of(show);
  const auto misfits = misfits_of(last);
  RecordedColumns columns(characters.size());
  for (const ListedPiece& of : pieces) {
    columns.add(show, of, places);
    const model::Pick* pick = at(picks, of.piece->id.value);
    const model::Misfit* misfit = at(misfits, of.piece->id.value);
    columns.rank.add(pick != nullptr ? pick->rank : 0);
    columns.pick.add(marks_of(pick));
    columns.torn.add(misfit != nullptr ? places.of(misfit->what) : 0);
    const auto seen = show.observations_of(of.piece->id);
    for (std::size_t c = 0; c < characters.size(); ++c) {
      columns.seen[c].add(places.of(seen, *characters[c]));
    }
  }
  return columns;
}

WrittenList reckoned_column(const std::vector<ListedPiece>& pieces,
                            const LastRun* last,
                            const TableReckoned& reckoned,
                            ReckonedColumn column) {
  WrittenList list;
  for (const ListedPiece& of : pieces) {
    list.add_written(
        of.belief == nullptr
            ? TableReckoned::empty_cell(column)
            : reckoned.cell(column, static_cast<std::size_t>(of.belief -
                                                             last->run.beliefs.pieces.data())));
  }
  return list;
}

std::string columns_written(const Show& show,
                            const LastRun* last,
                            const TableReckoned& reckoned,
                            TableWords& words) {
  const auto pieces = listed_pieces(show, last);
  Places places(show, words);
  const RecordedColumns recorded = recorded_columns(show, pieces, last, places);
  const auto column = [&](ReckonedColumn which) {
    return reckoned_column(pieces, last, reckoned, which);
  };
  WrittenObject all;
  recorded.write(all);
  all.add("made", column(ReckonedColumn::made));
  all.add("by", column(ReckonedColumn::by));
  all.add("makers", column(ReckonedColumn::makers));
  WrittenObject year;
  year.add("p10", column(ReckonedColumn::p10));
  year.add("p50", column(ReckonedColumn::p50));
  year.add("p90", column(ReckonedColumn::p90));
  year.add("from", column(ReckonedColumn::from));
  year.add("p", column(ReckonedColumn::p));
  year.add("q", column(ReckonedColumn::q));
  all.add_written("year", std::move(year).json());
  WrittenObject seen;
  const auto characters = known_characters(show);
  for (std::size_t c = 0; c < characters.size(); ++c) {
    seen.add(characters[c]->key, recorded.seen[c]);
  }
  all.add_written("seen", std::move(seen).json());
  return std::move(all).json();
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

std::shared_ptr<const TableReckoned> reckoned_of(OpenShow& open, const LastRun* last) {
  const auto run = last == nullptr ? nullptr : last->kept;
  const auto make = [&] { return std::make_shared<const TableReckoned>(open.show, run); };
  return open.warm == nullptr ? make()
                              : open.warm->kept<TableReckoned>(
                                    "table",
                                    [&](const TableReckoned& before) {
                                      return before.holds(open.show, run.get());
                                    },
                                    make);
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto found = last_run(*open);
  const LastRun* last = found ? &*found : nullptr;
  const auto reckoned = reckoned_of(*open, last);
  TableWords words(&reckoned->words());
  WrittenObject table;
  table.add_written("columns", columns_written(open->show, last, *reckoned, words));
  table.add("words", words.list());
  table.add_written("makers", lanes_json(open->show).dump());
  table.add_written("sections", sections_json(open->show).dump());
  Answer answer;
  answer.text = fmt::format("{} pieces; the table is for pages: ask with --json\n",
                            open->show.all<model::Piece>().size());
  answer.json = as_written(std::move(table).json());
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
