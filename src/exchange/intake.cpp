#include "exchange/intake.h"

#include <algorithm>
#include <array>

#include "base/json.h"
#include "base/text.h"
#include "exchange/maker_text.h"

namespace backmark::exchange {

using namespace model;

namespace {

// A short mark of a text (FNV-1a, 64 bits), only to notice that it changed.
std::string mark_of(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char character : text) {
    hash = (hash ^ static_cast<unsigned char>(character)) * 1099511628211ULL;
  }
  return fmt::format("{:016x}", hash);
}

std::string row_json(const TableRow& row, const Cells& headings) {
  Json json = Json::object();
  for (std::size_t i = 0; i < headings.size(); ++i) {
    if (!row.cells[i].empty()) {
      json[headings[i]] = row.cells[i];
    }
  }
  return json.dump();
}

MakerKind kind_of(std::string_view name, std::string_view role) {
  if (contains(role, "manufactur") || contains(role, "retailer")) {
    return MakerKind::firm;
  }
  const std::string lower = lower_ascii(name);
  constexpr std::array<std::string_view, 14> firms{
      " inc",       " ltd", " co.",    " company", "corporation", "factory", "manufactory",
      "manufaktur", " & ",  " et cie", " gmbh",    " ag",         " works",  "s.p.a"};
  const bool firm = std::any_of(firms.begin(), firms.end(),
                                [&](std::string_view word) { return contains(lower, word); });
  if (firm) {
    return MakerKind::firm;
  }
  return contains(lower, "workshop") || contains(lower, "studio") ? MakerKind::workshop
                                                                  : MakerKind::person;
}

std::string label_of(std::string_view key) {
  std::string label = replace_all(std::string(key), "_", " ");
  if (!label.empty() && label[0] >= 'a' && label[0] <= 'z') {
    label[0] = static_cast<char>(label[0] - 'a' + 'A');
  }
  return label;
}

}  // namespace

TableRow cells_of(const Row& row, const Cells& headings) {
  TableRow table_row{.cells = Cells(headings.size())};
  const Json json = Json::parse(row.cells, nullptr, false);
  for (std::size_t i = 0; json.is_object() && i < headings.size(); ++i) {
    const auto at = json.find(headings[i]);
    if (at != json.end() && at->is_string()) {
      table_row.cells[i] = at->get<std::string>();
    }
  }
  return table_row;
}

Cells known_headings(const Show& show, const std::string& source) {
  const Json json = Json::parse(show.setting("import." + source + ".columns"), nullptr, false);
  Cells headings;
  for (std::size_t i = 0; json.is_array() && i < json.size(); ++i) {
    if (json[i].is_string()) {
      headings.push_back(json[i].get<std::string>());
    }
  }
  return headings;
}

Intake::Intake(const Show& show_,
               const Table& table_,
               const ImportMap& map_,
               ImportOutcome& out_)
    : show(show_), table(table_), map(map_), out(out_) {
  if (const Source* known = show.source(map.source)) {
    source_ = known->id;
    for (const Row& row : show.all<Row>()) {
      if (row.source == known->id) {
        rows_[row.subject] = &row;
      }
    }
  }
  map_unchanged_ = show.setting(setting_key("map")) == mark_of(map.text) &&
                   known_headings(show, map.source) == table.headings;
  for (const Maker& maker : show.all<Maker>()) {
    makers_.try_emplace(lower_ascii(maker.name), maker.id);
    maker_keys_.try_emplace(maker.key, maker.id.value);
  }
  for (const Lender& lender : show.all<Lender>()) {
    lenders_.try_emplace(lender.code, lender.id);
  }
  for (const Character& character : show.all<Character>()) {
    characters_.try_emplace(character.key, character.id);
  }
}

std::string Intake::setting_key(std::string_view what) const {
  return fmt::format("import.{}.{}", map.source, what);
}

Id<Source> Intake::source() {
  if (!source_) {
    source_ = out.change.add(Source{.key = map.source,
                                    .title = map.title,
                                    .kind = SourceKind::record,
                                    .citation = map.title});
  }
  return source_;
}

const Row* Intake::last_row(std::int32_t subject) const {
  const auto at = rows_.find(subject);
  return at == rows_.end() ? nullptr : at->second;
}

bool Intake::keep_row(std::int32_t subject, const TableRow& row) {
  std::string cells = row_json(row, table.headings);
  const Row* last = last_row(subject);
  if (last == nullptr) {
    out.change.add(Row{.source = source(), .subject = subject, .cells = std::move(cells)});
    return true;
  }
  if (last->cells == cells) {
    return false;
  }
  out.change.replace(Row{
      .id = last->id, .source = last->source, .subject = subject, .cells = std::move(cells)});
  return true;
}

std::string Intake::unused_maker_key(const std::string& name) {
  const std::string key = to_key(name).empty() ? "maker" : to_key(name);
  std::string unused = key;
  for (int again = 2; !maker_keys_.try_emplace(unused, 0).second; ++again) {
    unused = fmt::format("{}_{}", key, again);
  }
  return unused;
}

Id<Maker> Intake::maker(const std::string& name, std::string_view role) {
  const std::string lower = lower_ascii(name);
  if (const auto at = makers_.find(lower); at != makers_.end()) {
    return at->second;
  }
  const MakerKind kind = kind_of(name, role);
  const auto id =
      out.change.add(Maker{.key = unused_maker_key(name),
                           .name = name,
                           .inverted = kind == MakerKind::person ? inverted_order(name) : name,
                           .kind = kind});
  makers_.emplace(lower, id);
  ++out.others_new;
  return id;
}

Id<Lender> Intake::lender(const std::string& text) {
  if (text.empty()) {
    return {};
  }
  auto [at, is_new] = lenders_.try_emplace(text);
  if (is_new) {
    at->second = out.change.add(Lender{.code = text});
  }
  return at->second;
}

Id<Character> Intake::character(const Item& item) {
  auto [at, is_new] = characters_.try_emplace(item.key);
  if (is_new) {
    at->second =
        out.change.add(Character{.key = item.key,
                                 .label = item.label.empty() ? label_of(item.key) : item.label,
                                 .part = out.change.word(item.part),
                                 .shape = item.shape,
                                 .unit = item.unit});
  }
  return at->second;
}

Id<Part> Intake::part(Id<Piece> piece, const std::string& kind) {
  if (kind.empty()) {
    return {};
  }
  for (const Part& part : show.parts_of(piece)) {
    if (show.text(part.kind) == kind) {
      return part.id;
    }
  }
  auto [at, is_new] = parts_.try_emplace(fmt::format("{} {}", piece.value, kind));
  if (is_new) {
    at->second = out.change.add(Part{.piece = piece, .kind = out.change.word(kind)});
  }
  return at->second;
}

void Intake::set(const std::string& key, const std::string& value) {
  for (const Setting& setting : show.all<Setting>()) {
    if (setting.key == key) {
      if (setting.value != value) {
        out.change.replace(Setting{.id = setting.id, .key = key, .value = value});
      }
      return;
    }
  }
  out.change.add(Setting{.key = key, .value = value});
}

void Intake::finish() {
  set(setting_key("columns"), Json(table.headings).dump());
  set(setting_key("map"), mark_of(map.text));
}

}  // namespace backmark::exchange
