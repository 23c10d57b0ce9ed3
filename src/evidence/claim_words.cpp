#include "evidence/claim_words.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace backmark::evidence {

namespace {

using model::AskedClaim;
using model::Show;

constexpr std::string_view forms_of_claim =
    "write \"first made in YEAR by MAKER\", \"pieces with VALUE are by MAKER\", \"VALUE was "
    "not "
    "used before YEAR\" or \"design VALUE is MAKER's\"";

// The texts on both sides of `between`, without case; nothing if it does not occur.
std::optional<std::pair<std::string, std::string>> parted(const std::string& text,
                                                          std::string_view between) {
  const std::size_t at = text.find(between);
  if (at == std::string::npos) {
    return std::nullopt;
  }
  return std::pair(std::string(trim(text.substr(0, at))),
                   std::string(trim(text.substr(at + between.size()))));
}

Problem no_such(std::string_view kind,
                const std::string& name,
                const std::vector<std::string>& known) {
  const auto near = closest(name, known);
  return {Fault::bad_input, fmt::format("there is no {} \"{}\" in this show", kind, name),
          "claim",
          near ? fmt::format("did you mean \"{}\"?", *near) : std::string(forms_of_claim)};
}

Result<Year> read_year(const std::string& text) {
  const auto year = to_whole(text);
  if (!year || *year < -3000 || *year > 3000) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is not a year", text), "claim",
                   "write a whole year such as 1946"};
  }
  return Year{static_cast<std::int32_t>(*year)};
}

Result<model::Id<model::Maker>> read_maker(const Show& show, const std::string& text) {
  std::vector<std::string> known;
  for (const model::Maker& maker : show.all<model::Maker>()) {
    if (lower_ascii(maker.name) == text || lower_ascii(maker.key) == text) {
      return maker.id;
    }
    known.push_back(lower_ascii(maker.name));
  }
  return no_such("maker", text, known);
}

// Every character that someone saw with this value, in the order of the show.
std::vector<std::pair<model::Id<model::Character>, model::Word>> with_value(
    const Show& show, const std::string& value) {
  std::set<std::pair<std::int32_t, std::uint32_t>> found;
  const auto add = [&](model::Id<model::Character> character, model::Word word) {
    if (word && lower_ascii(show.text(word)) == value) {
      found.insert({character.value, word.value});
    }
  };
  for (const model::Observation& seen : show.all<model::Observation>()) {
    add(seen.character, seen.value);
  }
  for (const model::Window& window : show.all<model::Window>()) {
    add(window.character, window.value);
  }
  std::vector<std::pair<model::Id<model::Character>, model::Word>> list;
  for (const auto& [character, word] : found) {
    list.push_back({{character}, {word}});
  }
  return list;
}

Result<Done> read_value(const Show& show, std::string text, AskedClaim& into) {
  std::string key;
  if (const auto named = parted(text, "=")) {
    key = named->first;
    text = named->second;
  }
  std::vector<std::string> known;
  for (const model::Character& character : show.all<model::Character>()) {
    known.push_back(lower_ascii(character.key));
  }
  if (!key.empty() && std::find(known.begin(), known.end(), key) == known.end()) {
    return no_such("character", key, known);
  }
  std::vector<std::string> in;
  for (const auto& [id, word] : with_value(show, text)) {
    const model::Character* character = show.find(id);
    if (character != nullptr && (key.empty() || lower_ascii(character->key) == key)) {
      into.character = id;
      into.value = word;
      in.push_back(character->key);
    }
  }
  if (in.size() > 1) {
    return Problem{
        Fault::bad_input,
        fmt::format("\"{}\" is a word of several characters: {}", text, join(in, ", ")),
        "claim", fmt::format("write {}={}", in.front(), text)};
  }
  if (in.empty()) {
    std::set<std::string> words;
    for (const model::Observation& seen : show.all<model::Observation>()) {
      words.insert(lower_ascii(show.text(seen.value)));
    }
    return no_such("value", text, {words.begin(), words.end()});
  }
  return Done{};
}

std::string maker_name(const Show& show, model::Id<model::Maker> id) {
  const model::Maker* maker = show.find(id);
  return maker != nullptr ? maker->name : "anyone";
}

std::string value_name(const Show& show, const AskedClaim& claim) {
  return fmt::format("{} \"{}\"", lower_ascii(show.find(claim.character)->label),
                     show.text(claim.value));
}

Result<Done> read_form(const Show& show, const std::string& text, AskedClaim& into) {
  std::vector<std::string> known;
  for (const model::Piece& piece : show.all<model::Piece>()) {
    const std::string form = lower_ascii(show.text(piece.form));
    if (form == text) {
      into.form = piece.form;
      return Done{};
    }
    if (std::find(known.begin(), known.end(), form) == known.end()) {
      known.push_back(form);
    }
  }
  return no_such("form", text, known);
}

// "in 1946 by Oda Vessen" or "by Oda Vessen in 1946".
Result<AskedClaim> read_first(const Show& show, const std::string& form, std::string rest) {
  AskedClaim claim{.kind = AskedClaim::Kind::first};
  if (!form.empty()) {
    if (auto read = read_form(show, form, claim); !read) {
      return read.problem();
    }
  }
  std::string year;
  std::string maker;
  if (starts_with(rest, "in ")) {
    const auto parts = parted(rest + " ", " by ");
    year = trim(parts ? parts->first.substr(3) : rest.substr(3));
    maker = parts ? parts->second : "";
  } else if (starts_with(rest, "by ")) {
    const std::size_t at = rest.rfind(" in ");
    year = at == std::string::npos ? "" : std::string(trim(rest.substr(at + 4)));
    maker = trim(rest.substr(3, at == std::string::npos ? at : at - 3));
  }
  if (const auto read = read_year(year)) {
    claim.year = *read;
  } else {
    return read.problem();
  }
  if (!maker.empty()) {
    const auto read = read_maker(show, maker);
    if (!read) {
      return read.problem();
    }
    claim.maker = *read;
  }
  claim.words =
      fmt::format("the first {}was made in {}{}",
                  claim.form ? std::string(show.text(claim.form)) + " " : "", claim.year->value,
                  claim.maker ? " by " + maker_name(show, claim.maker) : "");
  return claim;
}

// A claim about a value and a maker.
Result<AskedClaim> read_by(const Show& show,
                           AskedClaim::Kind kind,
                           const std::string& value,
                           const std::string& maker) {
  AskedClaim claim{.kind = kind};
  if (auto read = read_value(show, value, claim); !read) {
    return read.problem();
  }
  const auto read = read_maker(show, maker);
  if (!read) {
    return read.problem();
  }
  claim.maker = *read;
  const std::string name = maker_name(show, claim.maker);
  claim.words =
      kind == AskedClaim::Kind::design
          ? fmt::format("the design {} is {}'s: the oldest piece with it is by that hand",
                        value_name(show, claim), name)
          : fmt::format("every piece with {} is by {}", value_name(show, claim), name);
  return claim;
}

std::string without_genitive(std::string name) {
  for (const std::string_view ending : {"'s", "’s", "'"}) {
    if (ends_with(name, ending)) {
      return name.substr(0, name.size() - ending.size());
    }
  }
  return name;
}

}  // namespace

Result<AskedClaim> read_claim(const Show& show, std::string_view given) {
  const std::string text = lower_ascii(trim(given));
  if (const auto parts = parted(text, "first made ")) {
    return read_first(show, parts->first, parts->second);
  }
  if (const auto parts = parted(text, " was not used before ")) {
    AskedClaim claim{.kind = AskedClaim::Kind::not_before};
    const auto year = read_year(parts->second);
    if (!year) {
      return year.problem();
    }
    if (auto read = read_value(show, parts->first, claim); !read) {
      return read.problem();
    }
    claim.year = *year;
    claim.words =
        fmt::format("{} was not used before {}", value_name(show, claim), year->value);
    return claim;
  }
  if (const auto parts = parted(text, " are by "); parts && starts_with(text, "pieces with ")) {
    return read_by(show, AskedClaim::Kind::all_by, parts->first.substr(12), parts->second);
  }
  if (const auto parts = parted(text, " is "); parts && starts_with(text, "design ")) {
    return read_by(show, AskedClaim::Kind::design, parts->first.substr(7),
                   without_genitive(parts->second));
  }
  return Problem{Fault::bad_input, fmt::format("the claim \"{}\" was not understood", given),
                 "claim", std::string(forms_of_claim)};
}

}  // namespace backmark::evidence
