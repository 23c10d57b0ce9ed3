// The wording of single facts, from what was seen and recorded.
#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "words/fact.h"
#include "words/seen.h"
#include "words/year_phrase.h"

namespace backmark::words {
namespace {

using model::Id;
using model::Piece;
using model::Show;

constexpr std::string_view space = "\u00A0";  // no-break
constexpr std::string_view times = "\u00A0×\u00A0";

// Told is not seen, and the wording keeps the difference.
std::string as_known(const SeenWord& word) {
  return word.how == model::How::told ? "said to be " + word.text : word.text;
}

std::string first_word(const Show& show, Id<Piece> piece, std::string_view key) {
  const auto words = words_seen(show, piece, {key});
  return words.empty() ? "" : as_known(words.back());
}

std::string all_words(const Show& show,
                      Id<Piece> piece,
                      const std::vector<std::string_view>& keys) {
  std::vector<std::string> words;
  for (const SeenWord& word : words_seen(show, piece, keys)) {
    words.push_back(as_known(word));
  }
  return join(words, ", ");
}

std::string cord_text(const Show& show, Id<Piece> piece) {
  const std::string type = first_word(show, piece, "cord_type");
  const std::string colour = first_word(show, piece, "cord_colour");
  if (type.empty()) {
    return {};
  }
  return "cord of " + (colour.empty() ? type : colour + " " + type);
}

bool has_cord(const Show& show, Id<Piece> piece) {
  for (const model::Part& part : show.parts_of(piece)) {
    if (show.text(part.kind) == "cord") {
      return true;
    }
  }
  return false;
}

bool is_round(const Show& show, Id<Piece> piece) {
  const std::string outline = first_word(show, piece, "outline");
  return outline == "disc" || outline == "round";
}

std::string outline_size(const Show& show, Id<Piece> piece) {
  const auto height = measure_seen(show, piece, {"height"});
  const auto width = measure_seen(show, piece, {"width"});
  const auto depth = measure_seen(show, piece, {"depth"});
  const auto diameter = measure_seen(show, piece, {"diameter"});
  std::vector<std::string> sides;
  if (diameter ||
      (is_round(show, piece) && height && width && std::abs(*height - *width) < 0.5)) {
    sides.push_back("Ø" + std::string(space) + measure_text(diameter ? *diameter : *height));
  } else {
    for (const auto& side : {height, width}) {
      if (side) {
        sides.push_back(measure_text(*side));
      }
    }
  }
  if (sides.empty()) {
    return {};
  }
  if (sides.size() == 1 && !diameter && !(height && width)) {
    return (height ? "height " : "width ") + sides[0] + std::string(space) + "mm";
  }
  if (depth) {
    sides.push_back(measure_text(*depth));
  }
  return join(sides, times) + std::string(space) + "mm";
}

std::string mark_text(const Show& show, const model::Mark& mark) {
  constexpr std::array<std::string_view, 4> kinds{"struck", "engraved", "signed", "printed"};
  const std::string outline(show.text(mark.outline));
  const std::string place(show.text(mark.place));
  std::string text = mark.text;
  if (!outline.empty()) {
    text += (contains("aeiou", outline.substr(0, 1)) ? " in an " : " in a ") + outline;
  }
  text += ", " + std::string(kinds[static_cast<std::size_t>(mark.kind)]);
  return place.empty() ? text : text + ", " + place;
}

std::string_view story_verb(model::EventKind kind) {
  switch (kind) {
    case model::EventKind::acquired:
      return "acquired";
    case model::EventKind::commissioned:
      return "commissioned";
    case model::EventKind::awarded:
      return "awarded a prize";
    case model::EventKind::exhibited:
      return "exhibited";
    default:
      return "";
  }
}

std::string event_year(const model::Event& event) {
  return event.from && event.to ? year_range({*event.from, *event.to}) : event.date;
}

// Whoever took part, unless it is an owner who did not sign to be named.
std::string public_party(const Show& show, const model::Event& event) {
  const std::string party(show.text(event.party));
  for (const model::Lender& lender : show.all<model::Lender>()) {
    if (lender.credit.empty() && !lender.name.empty() && contains(party, lender.name)) {
      return {};
    }
  }
  return party;
}

}  // namespace

std::string measure_text(double value) {
  return value >= 9.95 ? fmt::format("{:.0f}", value) : fmt::format("{:.1f}", value);
}

std::string subject_text(const Show& show, Id<Piece> piece) {
  return all_words(show, piece, {"subject", "motif"});
}

std::string technique_text(const Show& show, Id<Piece> piece) {
  return all_words(show, piece, {"technique"});
}

std::optional<double> mass_of(const Show& show, Id<Piece> piece) {
  return measure_seen(show, piece, {"mass", "mass_with_cord", "mass_without_cord"});
}

std::string materials_text(const Show& show, Id<Piece> piece) {
  std::vector<std::string> parts;
  for (const SeenWord& word : words_seen(show, piece, {"material", "metal", "stone"})) {
    parts.push_back(as_known(word));
  }
  if (const std::string cord = cord_text(show, piece); !cord.empty()) {
    parts.push_back(cord);
  }
  if (const std::string tips = first_word(show, piece, "tip_material"); !tips.empty()) {
    parts.push_back("tips of " + tips);
  }
  return sentence(join(parts, ", "));
}

std::string size_text(const Show& show, const Piece& piece) {
  std::vector<std::string> sizes;
  if (const std::string outline = outline_size(show, piece.id); !outline.empty()) {
    sizes.push_back(outline);
  }
  const auto millimetres = [&](const char* key) { return measure_seen(show, piece.id, {key}); };
  if (const auto tip = millimetres("tip_length")) {
    sizes.push_back(fmt::format("tips {}{}mm", measure_text(*tip), space));
  }
  const auto thickness = millimetres("cord_thickness");
  const auto length = millimetres("cord_length");
  if (thickness && length) {
    sizes.push_back(fmt::format("cord {}{}{}{}mm", measure_text(*thickness), times,
                                measure_text(*length), space));
  } else if (thickness || length) {
    sizes.push_back(fmt::format("cord {}{}mm {}",
                                measure_text(thickness ? *thickness : *length), space,
                                thickness ? "thick" : "long"));
  }
  if (const auto mass = measure_seen(show, piece.id, {"mass", "mass_with_cord"})) {
    sizes.push_back(
        fmt::format("{:.1f}{}g{}", *mass, space, has_cord(show, piece.id) ? " with cord" : ""));
  } else if (const auto bare = measure_seen(show, piece.id, {"mass_without_cord"})) {
    sizes.push_back(fmt::format("{:.1f}{}g without cord", *bare, space));
  }
  return join(sizes, "; ");
}

std::string fitting_text(const Show& show, Id<Piece> piece) {
  switch (looked_for(show, piece, "fitting")) {
    case Looked::no:
      return "Back not looked at.";
    case Looked::none:
      return "Back: no fitting.";
    case Looked::cannot_tell:
      return "Back: fitting not made out.";
    case Looked::value:
      break;
  }
  std::string text = "Back: " + first_word(show, piece, "fitting");
  for (const char* key : {"bar_kind", "clip_legend", "button_bore"}) {
    if (const std::string more = first_word(show, piece, key); !more.empty()) {
      text += ", " + more;
    }
  }
  return text + ".";
}

std::string marks_text(const Show& show, Id<Piece> piece) {
  std::vector<std::string> texts;
  bool looked = false;
  bool unread = false;
  for (const model::Mark& mark : show.marks_of(piece)) {
    looked = true;
    unread = unread || mark.seen == model::Seen::cannot_tell;
    if (mark.seen == model::Seen::value) {
      texts.push_back(mark_text(show, mark));
    }
  }
  if (!texts.empty()) {
    return (texts.size() == 1 ? "Mark: " : "Marks: ") + join(texts, "; ");
  }
  if (unread) {
    return "Mark not made out";
  }
  return looked ? "No mark" : "Marks not looked at";
}

std::string story_text(const Show& show, Id<Piece> piece) {
  std::vector<std::string> steps;
  for (const model::Event& event : show.events_of(piece)) {
    const std::string_view done = story_verb(event.kind);
    if (done.empty() || (!event.from && event.date.empty())) {
      continue;
    }
    const model::Source* source = show.find(event.source);
    const bool told = source != nullptr && source->kind == model::SourceKind::oral;
    const std::string party = public_party(show, event);
    steps.push_back(sentence((told ? "said to have been " : "") + std::string(done) +
                             (party.empty() ? "" : " (" + party + ")") + " in " +
                             event_year(event) + "."));
  }
  return join(steps, " ");
}

std::string literature_text(const Show& show, Id<Piece> piece) {
  std::vector<std::string> titles;
  for (const model::Claim& claim : show.claims_on(piece)) {
    const model::Source* source = show.find(claim.source);
    if (source != nullptr && source->kind == model::SourceKind::publication) {
      titles.push_back(source->title);
    }
  }
  std::sort(titles.begin(), titles.end());
  titles.erase(std::unique(titles.begin(), titles.end()), titles.end());
  return titles.empty() ? "" : "Literature: " + join(titles, "; ");
}

}  // namespace backmark::words
