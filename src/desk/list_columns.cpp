#include "desk/list_columns.h"

#include <algorithm>
#include <functional>
#include <unordered_map>

#include "base/text.h"

namespace backmark::desk {

namespace {

using model::Show;

using Cell = std::function<std::string(const Show&, const ListedPiece&)>;

struct Column {
  std::string name;
  Cell cell;
};

std::string maker_name(const Show& show, const ListedPiece& of, std::size_t rank) {
  if (of.belief == nullptr || of.belief->maker.makers.size() <= rank) {
    return "";
  }
  const model::Maker* maker = show.find(of.belief->maker.makers[rank].maker);
  return maker != nullptr ? maker->name : "";
}

std::string maker_chance(const ListedPiece& of, std::size_t rank) {
  if (of.belief == nullptr || of.belief->maker.makers.size() <= rank) {
    return "";
  }
  return fmt::format("{:.4f}", of.belief->maker.makers[rank].p);
}

Cell year_at(double share) {
  return [share](const Show&, const ListedPiece& of) {
    return of.belief == nullptr || of.belief->year.empty()
               ? std::string()
               : std::to_string(of.belief->year.at(share).value);
  };
}

// What sources say of it, as they wrote it.
Cell as_recorded(std::vector<model::Says> says) {
  return [says = std::move(says)](const Show& show, const ListedPiece& of) {
    std::vector<std::string> texts;
    for (const model::Claim& claim : show.claims_on(of.piece->id)) {
      if (std::find(says.begin(), says.end(), claim.says) != says.end()) {
        texts.push_back(claim.text);
      }
    }
    return join(texts, " | ");
  };
}

const std::vector<Column>& built_in() {
  static const std::vector<Column> list = {
      {"number", [](const Show&, const ListedPiece& of) { return of.piece->number; }},
      {"title", [](const Show&, const ListedPiece& of) { return of.piece->title; }},
      {"form", [](const Show& show,
                  const ListedPiece& of) { return std::string(show.text(of.piece->form)); }},
      {"maker",
       [](const Show& show, const ListedPiece& of) { return maker_name(show, of, 0); }},
      {"maker_p", [](const Show&, const ListedPiece& of) { return maker_chance(of, 0); }},
      {"maker_2",
       [](const Show& show, const ListedPiece& of) { return maker_name(show, of, 1); }},
      {"maker_2_p", [](const Show&, const ListedPiece& of) { return maker_chance(of, 1); }},
      {"unrecorded_p",
       [](const Show&, const ListedPiece& of) {
         return of.belief == nullptr ? "" : fmt::format("{:.4f}", of.belief->maker.unrecorded);
       }},
      {"year_p2_5", year_at(0.025)},
      {"year_p10", year_at(0.1)},
      {"year_p25", year_at(0.25)},
      {"year_p50", year_at(0.5)},
      {"year_p75", year_at(0.75)},
      {"year_p90", year_at(0.9)},
      {"year_p97_5", year_at(0.975)},
      {"conflict",
       [](const Show&, const ListedPiece& of) {
         return of.belief == nullptr ? "" : fmt::format("{:.3f}", of.belief->conflict);
       }},
      {"look_gain_bits",
       [](const Show&, const ListedPiece& of) {
         return of.look_gain_bits ? fmt::format("{:.3f}", *of.look_gain_bits) : std::string();
       }},
      {"section",
       [](const Show&, const ListedPiece& of) {
         return of.section == nullptr ? std::string() : of.section->key;
       }},
      {"case",
       [](const Show&, const ListedPiece& of) {
         return of.in == nullptr ? std::string() : of.in->key;
       }},
      {"words_made",
       [](const Show&, const ListedPiece& of) {
         return of.phrases == nullptr ? std::string() : of.phrases->made;
       }},
      {"words_maker",
       [](const Show&, const ListedPiece& of) {
         return of.phrases == nullptr ? std::string() : of.phrases->maker;
       }},
      {"recorded_made", as_recorded({model::Says::made, model::Says::inscribed})},
      {"recorded_maker", as_recorded({model::Says::made_by, model::Says::made_at})},
  };
  return list;
}

Result<Cell> cell_for(const Show& show, const std::string& name) {
  std::vector<std::string> names;
  for (const Column& column : built_in()) {
    if (column.name == name) {
      return column.cell;
    }
    names.push_back(column.name);
  }
  if (const model::Character* character = show.character(name)) {
    return Cell([character](const Show& of_show, const ListedPiece& of) {
      return observed(of_show, of_show.observations_of(of.piece->id), *character);
    });
  }
  for (const model::Character& character : show.all<model::Character>()) {
    names.push_back(character.key);
  }
  const auto near = closest(name, names);
  return Problem{
      Fault::not_found, fmt::format("there is no column \"{}\"", name), "--columns",
      near ? fmt::format("did you mean \"{}\"?", *near) : "columns are: " + join(names, ", ")};
}

}  // namespace

std::string observed(const Show& show,
                     std::span<const model::Observation> of_piece,
                     const model::Character& character) {
  std::vector<std::string> values;
  for (const model::Observation& seen : of_piece) {
    if (seen.character != character.id) {
      continue;
    }
    if (seen.seen == model::Seen::none) {
      values.emplace_back("none");
    } else if (seen.seen == model::Seen::cannot_tell) {
      values.emplace_back("cannot tell");
    } else if (character.shape == model::Shape::number) {
      values.push_back(fmt::format("{:g}", seen.number));
    } else {
      values.emplace_back(show.text(seen.value));
    }
  }
  return join(values, "; ");
}

const std::vector<std::string>& short_columns() {
  static const std::vector<std::string> names = {
      "number", "title", "words_made", "words_maker", "year_p10", "year_p50", "year_p90"};
  return names;
}

const std::vector<std::string>& recorded_columns() {
  static const std::vector<std::string> names = {"number", "title", "recorded_made",
                                                 "recorded_maker"};
  return names;
}

const std::vector<std::string>& all_columns() {
  static const std::vector<std::string> names = [] {
    std::vector<std::string> all;
    for (const Column& column : built_in()) {
      all.push_back(column.name);
    }
    return all;
  }();
  return names;
}

std::vector<ListedPiece> listed_pieces(const Show& show, const LastRun* last) {
  std::unordered_map<std::int32_t, const model::Section*> sections;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    sections[pick.piece.value] = show.find(pick.section);
  }
  std::unordered_map<std::int32_t, const model::Case*> cases;
  for (const model::Placement& placement : show.all<model::Placement>()) {
    cases[placement.piece.value] = show.find(placement.in);
  }
  const auto at = [](const auto& map, std::int32_t id) {
    const auto found = map.find(id);
    return found == map.end() ? nullptr : found->second;
  };
  std::vector<ListedPiece> list;
  list.reserve(show.all<model::Piece>().size());
  for (const model::Piece& piece : show.all<model::Piece>()) {
    ListedPiece& listed = list.emplace_back();
    listed.piece = &piece;
    listed.section = at(sections, piece.id.value);
    listed.in = at(cases, piece.id.value);
    if (last != nullptr) {
      listed.belief = last->run.beliefs.of(piece.id);
    }
    if (listed.belief != nullptr) {
      const auto row = listed.belief - last->run.beliefs.pieces.data();
      listed.phrases = &last->run.phrases[static_cast<std::size_t>(row)];
    }
  }
  return list;
}

Result<std::vector<std::vector<std::string>>> cells_of(
    const Show& show,
    const std::vector<ListedPiece>& pieces,
    const std::vector<std::string>& columns) {
  std::vector<Cell> cells;
  for (const std::string& name : columns) {
    auto cell = cell_for(show, name);
    if (!cell) {
      return cell.problem();
    }
    cells.push_back(std::move(*cell));
  }
  std::vector<std::vector<std::string>> rows;
  rows.reserve(pieces.size());
  for (const ListedPiece& piece : pieces) {
    auto& row = rows.emplace_back();
    for (const Cell& cell : cells) {
      row.push_back(cell(show, piece));
    }
  }
  return rows;
}

}  // namespace backmark::desk
