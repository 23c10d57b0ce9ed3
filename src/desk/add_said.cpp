#include <array>

#include "base/date_text.h"
#include "base/text.h"
#include "desk/add_words.h"
#include "desk/open.h"
#include "exchange/maker_text.h"

namespace backmark::desk {

namespace {

using model::Claim;
using model::Show;

struct Dated {
  std::optional<Year> from, to;
  bool approximate = false;
};

Result<Dated> read_years(const std::string& key, const std::string& text) {
  const DateReading date = read_date_text(text);
  if (!date.understood || (!date.bounds.earliest && !date.bounds.latest)) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is not a date", text), key,
                   "write 1953, about 1953, 1947-1962 or before 1972"};
  }
  return Dated{date.bounds.earliest, date.bounds.latest,
               date.approximate || !date.left_over.empty()};
}

// "fitting=push button": a character and one of its values.
Result<Done> read_value(const Show& show,
                        const std::string& key,
                        const std::string& text,
                        model::Change& change,
                        Claim& claim) {
  const std::size_t at = text.find('=');
  if (at == std::string::npos || trim(text.substr(at + 1)).empty()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" names no character", text), key,
                   fmt::format("write {}=\"fitting=push button\"", key)};
  }
  const auto character = named_character(show, std::string(trim(text.substr(0, at))));
  if (!character) {
    return character.problem();
  }
  claim.about = model::About::character;
  claim.subject = (*character)->id.value;
  claim.character = (*character)->id;
  claim.word = change.word(trim(text.substr(at + 1)));
  return Done{};
}

Result<Done> read_maker(const Show& show,
                        const std::string& text,
                        model::Change& change,
                        Claim& claim) {
  const auto named = exchange::read_makers(text);
  if (named.size() != 1 || named.front().name.empty()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" names no one maker", text), "maker",
                   "write \"Oda Vessen\" or \"attributed to Oda Vessen\", one a claim"};
  }
  const auto maker = named_maker(show, named.front().name);
  if (!maker) {
    return maker.problem();
  }
  claim.maker = (*maker)->id;
  claim.qualifier = change.word(named.front().qualifier);
  claim.role = change.word(named.front().role);
  return Done{};
}

// What kind of saying the words make, with its years or value.
class ClaimReader {
 public:
  ClaimReader(const Show& show, const Words& words, model::Change& change, Claim& claim)
      : show_(show), words_(words), change_(change), claim_(claim) {}

  Result<Done> run() {
    int sayings = 0;
    for (const char* key : {"made", "place", "first", "used", "design"}) {
      sayings += has(key) ? 1 : 0;
    }
    const bool only_maker = sayings == 0 && has("maker");
    if (sayings > 1 || (sayings == 0 && !only_maker && !has("text"))) {
      return Problem{Fault::bad_input, "a claim says one thing", "",
                     "give one of made, maker, place, first, used or design"};
    }
    if (auto about = read_subject(); !about) {
      return about;
    }
    if (has("maker")) {
      if (auto named = read_maker(show_, word(words_, "maker"), change_, claim_); !named) {
        return named;
      }
    }
    return only_maker ? on_piece(model::Says::made_by) : read_saying();
  }

 private:
  bool has(const std::string& key) const { return !word(words_, key).empty(); }

  Result<Done> read_subject() {
    if (has("piece")) {
      const auto piece = find_piece(show_, word(words_, "piece"));
      if (!piece) {
        return piece.problem();
      }
      claim_.subject = (*piece)->id.value;
    } else {
      claim_.about = model::About::form;
    }
    return Done{};
  }

  Result<Done> on_piece(model::Says says) {
    claim_.says = says;
    if (!has("piece")) {
      return Problem{Fault::bad_input, "it is not said of which piece", "piece",
                     "write piece=\"ES 118\""};
    }
    return Done{};
  }

  Result<Done> read_saying() {
    if (has("made")) {
      const auto years = take_years("made");
      return years ? on_piece(model::Says::made) : years;
    }
    if (has("place")) {
      claim_.word = change_.word(word(words_, "place"));
      return on_piece(model::Says::made_at);
    }
    if (has("first")) {
      claim_.says = model::Says::first;
      claim_.word = change_.word(word(words_, "form"));
      return take_years("first");
    }
    if (has("used")) {
      claim_.says = model::Says::used;
      const auto value = read_value(show_, "value", word(words_, "value"), change_, claim_);
      return value ? take_years("used") : value;
    }
    if (has("design")) {
      claim_.says = model::Says::design_of;
      if (!claim_.maker) {
        return Problem{Fault::bad_input, "it is not said whose design it is", "maker",
                       "write maker=\"Oda Vessen\""};
      }
      return read_value(show_, "design", word(words_, "design"), change_, claim_);
    }
    return Done{};
  }

  Result<Done> take_years(const std::string& key) {
    const auto years = read_years(key, word(words_, key));
    if (!years) {
      return years.problem();
    }
    claim_.from = years->from;
    claim_.to = years->to;
    claim_.approximate = years->approximate;
    return Done{};
  }

  const Show& show_;
  const Words& words_;
  model::Change& change_;
  Claim& claim_;
};

Result<Done> read_weight(const Words& words, Claim& claim) {
  const std::string text = word(words, "weight");
  if (text.empty()) {
    return Done{};
  }
  const auto share = to_number(text);
  if (!share || *share < 0 || *share > 1) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is not a share between 0 and 1", text),
                   "weight", "write 0.7 for seven times in ten"};
  }
  claim.weight = *share;
  return Done{};
}

// "made about 1950, maker Oda Vessen", where nobody wrote down the very words.
std::string said_in(const Words& words) {
  std::vector<std::string> parts;
  for (const char* key : {"made", "first", "used", "value", "design", "place", "maker"}) {
    if (const std::string text = word(words, key); !text.empty()) {
      parts.push_back(fmt::format("{} {}", key, text));
    }
  }
  return join(parts, ", ");
}

constexpr std::array<std::string_view, 9> event_kinds = {
    "acquired",  "commissioned", "awarded",  "altered", "lent",
    "exhibited", "photographed", "patented", "other"};

}  // namespace

Result<Added> add_claim(const Show& show, const Words& words, const std::string& who) {
  if (auto known =
          only_words(words, {"source", "piece", "made", "maker", "place", "first", "form",
                             "used", "value", "design", "text", "weight", "against"});
      !known) {
    return known.problem();
  }
  const auto key = needed(words, "source", "write source=KEY; \"backmark sources\" has them");
  if (!key) {
    return key.problem();
  }
  const auto source = named_source(show, *key);
  if (!source) {
    return source.problem();
  }
  Added added{model::Change(show, "add",
                            fmt::format("claim of {}: {}", (*source)->title, said_in(words))),
              "The claim is on file."};
  Claim claim{.source = (*source)->id};
  if (auto read = ClaimReader(show, words, added.change, claim).run(); !read) {
    return read.problem();
  }
  if (auto weight = read_weight(words, claim); !weight) {
    return weight.problem();
  }
  claim.text = word(words, "text").empty() ? said_in(words) : word(words, "text");
  claim.negative = word(words, "against") == "yes";
  claim.by = added.change.word(who);
  added.change.add(claim);
  return added;
}

Result<Added> add_event(const Show& show, const Words& words) {
  if (auto known =
          only_words(words, {"piece", "kind", "date", "party", "place", "text", "source"});
      !known) {
    return known.problem();
  }
  const std::string kind = word(words, "kind").empty() ? "other" : word(words, "kind");
  const auto at = std::find(event_kinds.begin(), event_kinds.end(), kind);
  if (at == event_kinds.end()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no kind of event", kind), "kind",
                   "write one of: " + join({event_kinds.begin(), event_kinds.end()}, ", ")};
  }
  model::Event event;
  event.kind = static_cast<model::EventKind>(at - event_kinds.begin());
  Added added{
      model::Change(show, "add",
                    fmt::format("{} {} {}", kind, word(words, "piece"), word(words, "date"))),
      "The event is on file."};
  if (const std::string number = word(words, "piece"); !number.empty()) {
    const auto piece = find_piece(show, number);
    if (!piece) {
      return piece.problem();
    }
    event.piece = (*piece)->id;
  }
  if (event.date = word(words, "date"); !event.date.empty()) {
    const auto years = read_years("date", event.date);
    if (!years) {
      return years.problem();
    }
    event.from = years->from;
    event.to = years->to;
  }
  if (const std::string key = word(words, "source"); !key.empty()) {
    const auto source = named_source(show, key);
    if (!source) {
      return source.problem();
    }
    event.source = (*source)->id;
  }
  event.party = added.change.word(word(words, "party"));
  event.place = added.change.word(word(words, "place"));
  event.text = word(words, "text");
  if (event.date.empty() && event.text.empty()) {
    return Problem{Fault::bad_input, "the event says nothing", "", "give date= or text="};
  }
  added.change.add(event);
  return added;
}

}  // namespace backmark::desk
