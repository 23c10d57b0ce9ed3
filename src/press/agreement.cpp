#include "press/agreement.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "base/json.h"
#include "base/text.h"

namespace backmark::press {
namespace {

using words::FactKind;

constexpr std::array<std::string_view, words::fact_kinds> kind_names{
    "number",      "title",     "maker",
    "made",        "materials", "size",
    "back",        "marks",     "story",
    "lender",      "compare",   "literature",
    "prose",       "odds",      "lender_code",
    "lender_name", "address",   "delivery",
    "value",       "condition", "condition_summary",
    "handling",    "care",      "care_wording",
    "loan",        "tray"};

using Key = std::tuple<std::string, std::string, FactKind>;  // paper, piece, kind

std::map<Key, const PrintedFact*> by_key(const std::vector<PrintedFact>& facts) {
  std::map<Key, const PrintedFact*> all;
  for (const PrintedFact& fact : facts) {
    all.emplace(Key{fact.output, fact.piece, fact.kind}, &fact);
  }
  return all;
}

bool is_space(char32_t letter) {
  return letter == U' ' || letter == U'\n' || letter == U'\r' || letter == U'\t' ||
         letter == U'\f' || letter == 0xA0 || letter == 0x202F || letter == 0x2009;
}

void add_ligature(std::u32string& out, char32_t letter) {
  constexpr std::array<std::u32string_view, 5> letters{U"ff", U"fi", U"fl", U"ffi", U"ffl"};
  out += letters[letter - 0xFB00];
}

std::string money_text(const Money& money) {
  return fmt::format("{}", money.minor / 100);
}

}  // namespace

std::string_view fact_name(FactKind kind) {
  return kind_names[static_cast<std::size_t>(kind)];
}

std::string flattened(std::string_view text) {
  std::u32string out;
  for (const char32_t letter : to_code_points(text)) {
    if (is_space(letter)) {
      if (!out.empty() && out.back() != U' ') {
        out += U' ';
      }
    } else if (letter >= 0xFB00 && letter <= 0xFB04) {
      add_ligature(out, letter);
    } else if (letter != 0xAD) {
      out += letter;
    }
  }
  return std::string(trim(to_utf8(out)));
}

Problems disagreements(const std::vector<PrintedFact>& facts) {
  // By piece and kind: each wording and the first paper that has it.
  std::map<std::pair<std::string, FactKind>, std::map<std::string, std::string>> wordings;
  for (const PrintedFact& fact : facts) {
    wordings[{fact.piece, fact.kind}].emplace(flattened(fact.text), fact.output);
  }
  Problems problems;
  for (const auto& [key, said] : wordings) {
    for (auto other = said.begin(); other != said.end() && ++other != said.end();) {
      problems.push_back({Fault::conflict,
                          fmt::format("{} of {} is \"{}\" in {} and \"{}\" in {}",
                                      fact_name(key.second), key.first, said.begin()->first,
                                      said.begin()->second, other->first, other->second),
                          key.first, "print both again from one version of the show"});
    }
  }
  return problems;
}

Problems not_found_in(std::string_view extracted, const std::vector<PrintedFact>& facts) {
  const std::string text = flattened(extracted);
  Problems problems;
  for (const PrintedFact& fact : facts) {
    if (!contains(text, flattened(fact.text))) {
      problems.push_back({Fault::conflict,
                          fmt::format("{} \"{}\" is not on the paper", fact_name(fact.kind),
                                      flattened(fact.text)),
                          fmt::format("{}, piece {}", fact.output, fact.piece),
                          "print it again from this version of the show"});
    }
  }
  return problems;
}

std::vector<PrivateText> private_texts(const model::Show& show, words::Audience audience) {
  std::set<std::pair<std::string, FactKind>> texts;
  std::set<std::string_view> known;  // as makers and their places
  for (const model::Maker& maker : show.all<model::Maker>()) {
    known.insert(maker.name);
    known.insert(show.text(maker.place));
  }
  for (const model::Lender& lender : show.all<model::Lender>()) {
    if (!contains(lender.credit, lender.name) && known.count(lender.name) == 0) {
      texts.emplace(lender.name, FactKind::lender_name);
    }
    if (known.count(lender.address) == 0) {
      texts.emplace(lender.address, FactKind::address);
    }
  }
  for (const model::Piece& piece : show.all<model::Piece>()) {
    texts.emplace(std::string(show.text(piece.tray)), FactKind::tray);
  }
  for (const model::ValueOpinion& value : show.all<model::ValueOpinion>()) {
    texts.emplace(value.worth.currency + " " + money_text(value.worth), FactKind::value);
    texts.emplace(money_text(value.worth) + " " + value.worth.currency, FactKind::value);
  }
  std::vector<PrivateText> kept;
  for (const auto& [text, kind] : texts) {
    if (text.size() >= 4 && !words::may_show(audience, kind)) {
      kept.push_back({text, kind});
    }
  }
  return kept;
}

Problems leaks(std::string_view extracted,
               const std::vector<PrivateText>& texts,
               std::string_view paper) {
  const std::string text = lower_ascii(flattened(extracted));
  const auto is_word = [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
  };
  Problems problems;
  for (const PrivateText& secret : texts) {
    const std::string want = lower_ascii(flattened(secret.text));
    for (std::size_t at = text.find(want); at != std::string::npos;
         at = text.find(want, at + 1)) {
      const std::size_t end = at + want.size();
      if ((at > 0 && is_word(text[at - 1])) || (end < text.size() && is_word(text[end]))) {
        continue;  // part of a longer word or number: "tray 1" in "tray 12"
      }
      problems.push_back({Fault::refused,
                          fmt::format("{} \"{}\" stands on a paper that must not have it",
                                      fact_name(secret.kind), secret.text),
                          std::string(paper), "take it out of the text it stands in"});
      break;
    }
  }
  return problems;
}

std::vector<FactChange> changes(const std::vector<PrintedFact>& frozen,
                                const std::vector<PrintedFact>& now) {
  const auto before = by_key(frozen);
  const auto after = by_key(now);
  std::vector<FactChange> all;
  for (const auto& [key, fact] : before) {
    const auto at = after.find(key);
    const std::string text = at == after.end() ? "" : at->second->text;
    if (flattened(fact->text) != flattened(text)) {
      all.push_back({fact->output, fact->piece, fact->kind, fact->text, text});
    }
  }
  for (const auto& [key, fact] : after) {
    if (before.count(key) == 0) {
      all.push_back({fact->output, fact->piece, fact->kind, "", fact->text});
    }
  }
  return all;
}

Json to_json(const std::vector<PrintedFact>& facts) {
  Json list = Json::array();
  for (const PrintedFact& fact : facts) {
    list.push_back({{"output", fact.output},
                    {"piece", fact.piece},
                    {"kind", fact_name(fact.kind)},
                    {"text", fact.text}});
  }
  return list;
}

Result<std::vector<PrintedFact>> facts_from_json(const std::string& text) {
  const Problem broken{Fault::bad_input, "the frozen facts cannot be read", "",
                       "freeze them again"};
  const Json list = Json::parse(text, nullptr, false);
  if (!list.is_array()) {
    return broken;
  }
  std::vector<PrintedFact> facts;
  for (const Json& row : list) {
    const auto field = [&row](const char* key) -> std::optional<std::string> {
      const auto at = row.find(key);
      return at != row.end() && at->is_string() ? std::optional(at->get<std::string>())
                                                : std::nullopt;
    };
    const auto kind =
        std::find(kind_names.begin(), kind_names.end(), field("kind").value_or(""));
    if (!row.is_object() || !field("piece") || !field("text") || kind == kind_names.end()) {
      return broken;
    }
    facts.push_back({field("output").value_or(""), *field("piece"),
                     static_cast<FactKind>(kind - kind_names.begin()), *field("text")});
  }
  return facts;
}

}  // namespace backmark::press
