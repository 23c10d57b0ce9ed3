#include "evidence/said.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"
#include "model/mark_table.h"

namespace backmark::evidence {

namespace {

using model::Claim;
using model::Event;
using model::EventKind;
using model::Says;
using model::Show;
using model::Source;
using model::SourceKind;

std::string source_words(const Show& show, model::Id<Source> id) {
  const Source* source = show.find(id);
  if (source == nullptr) {
    return "no source named";
  }
  return source->year ? fmt::format("{}, {}", source->title, source->year->value)
                      : source->title;
}

double usual_for(SourceKind kind) {
  switch (kind) {
    case SourceKind::piece:
      return 0.98;
    case SourceKind::record:
      return 0.9;
    case SourceKind::document:
      return 0.9;
    case SourceKind::publication:
      return 0.8;
    case SourceKind::own:
      return 0.8;
    case SourceKind::oral:
      return 0.6;
  }
  return 0.6;
}

std::string span_words(const std::optional<Year>& from, const std::optional<Year>& to) {
  if (from && to) {
    return *from == *to ? fmt::format("{}", from->value)
                        : fmt::format("{}-{}", from->value, to->value);
  }
  return from ? fmt::format("from {}", from->value)
         : to ? fmt::format("by {}", to->value)
              : std::string("undated");
}

// The shape that bounds give: one year, a stretch, or one side only.
std::optional<Statement> from_bounds(const std::optional<Year>& from,
                                     const std::optional<Year>& to,
                                     bool approximate) {
  Statement statement;
  if (from && to) {
    statement.first = from->value;
    statement.last = to->value;
    statement.saying = Saying::interval;
    statement.spread = approximate ? 3 : std::min(2.0, 0.1 * (*to - *from));
    return statement;
  }
  if (to) {
    statement.saying = Saying::latest;
    statement.last = to->value;
    statement.spread = approximate ? 5 : 1;
    return statement;
  }
  if (from) {
    statement.saying = Saying::earliest;
    statement.first = from->value;
    statement.spread = approximate ? 5 : 2;
    return statement;
  }
  return std::nullopt;
}

bool about_year(Says says) {
  return says == Says::made || says == Says::inscribed || says == Says::judged;
}
bool about_maker(Says says) {
  return says == Says::made_by || says == Says::judged_by;
}

void add_year_claim(const Show& show, const Claim& claim, GatheredPiece& into) {
  auto statement = from_bounds(claim.from, claim.to, claim.approximate);
  if (!statement) {
    return;
  }
  if (claim.says == Says::inscribed) {
    statement->saying = Saying::exact;
    statement->first = claim.from ? claim.from->value : claim.to->value;
    statement->spread = 0;
  }
  statement->reliability = reliability_of(show, claim.source, claim.weight);
  statement->origin = origin_of(show, claim.source);
  const std::string said = claim.text.empty() ? span_words(claim.from, claim.to) : claim.text;
  const char* verb = claim.says == Says::inscribed ? "Inscribed"
                     : claim.says == Says::judged  ? "Judged"
                                                   : "Said to be made";
  into.years.push_back({*statement, claim.id.value, fmt::format("{}: {}", verb, said),
                        source_words(show, claim.source), false,
                        claim.weight ? 0 : claim.source.value, claim.says == Says::judged});
}

// A qualifier turns a name into an opinion; some are no claim to the hand at all.
double hand_share(std::string_view qualifier) {
  if (qualifier.empty()) {
    return 1;
  }
  if (qualifier == "attributed to" || qualifier == "probably by") {
    return 0.8;
  }
  if (qualifier == "possibly by") {
    return 0.4;
  }
  return 0;  // workshop of, circle of, after ...: not this hand
}

// "Attributed to Oda Vessen", "Said to be by Oda Vessen".
std::string maker_words(std::string qualifier, std::string_view name) {
  if (qualifier.empty()) {
    return fmt::format("Said to be by {}", name);
  }
  qualifier[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(qualifier[0])));
  return fmt::format("{} {}", qualifier, name);
}

void add_maker_claim(const Show& show, const Claim& claim, GatheredPiece& into) {
  const auto& makers = show.all<model::Maker>();
  const auto at = std::find_if(makers.begin(), makers.end(),
                               [&](const model::Maker& row) { return row.id == claim.maker; });
  const std::string qualifier(show.text(claim.qualifier));
  const double share = hand_share(qualifier);
  if (at == makers.end() || share == 0 || at->kind == model::MakerKind::unrecorded) {
    return;
  }
  const Source* source = show.find(claim.source);
  const bool firm =
      source != nullptr && source->kind != SourceKind::oral && source->kind != SourceKind::own;
  into.makers.push_back(
      {.maker = static_cast<std::size_t>(at - makers.begin()),
       .reliability = reliability_of(show, claim.source, claim.weight) * share,
       .qualifier = qualifier,
       .record = claim.id.value,
       .what = maker_words(qualifier, at->name),
       .source = source_words(show, claim.source),
       .documented = firm && qualifier.empty() && claim.says == Says::made_by});
}

void add_event(const Show& show, const Event& event, Year today, GatheredPiece& into) {
  const auto latest = event.to ? event.to : event.from;
  if (!latest) {
    return;
  }
  Statement statement;
  statement.saying = Saying::latest;
  statement.last = std::min(latest->value, today.value);
  statement.reliability = 0.98;
  statement.spread = 0;
  const char* verb = "Known by";
  switch (event.kind) {
    case EventKind::acquired:
      statement.saying = Saying::acquired;
      verb = "Acquired in";
      break;
    case EventKind::commissioned:
      statement.saying = Saying::interval;
      statement.first = event.from ? event.from->value : latest->value;
      statement.last = latest->value + 1;
      statement.spread = 0.5;
      statement.reliability = 0.9;
      verb = "Commissioned in";
      break;
    case EventKind::awarded:
      verb = "Award in";
      break;
    case EventKind::exhibited:
      verb = "Exhibited in";
      break;
    case EventKind::photographed:
      verb = "Photographed in";
      break;
    case EventKind::patented:
      statement.saying = Saying::earliest;
      statement.first = event.from ? event.from->value : latest->value;
      statement.spread = 2;
      verb = "Patent granted in";
      break;
    case EventKind::altered:
      return;  // dates the change, not the piece
    default:
      break;
  }
  into.years.push_back({statement, event.id.value, fmt::format("{} {}", verb, latest->value),
                        source_words(show, event.source), true});
}

// A mark with a maker's legend names the hand, or the shop whose stamp it is.
void add_marks(std::span<const model::Mark> marks,
               const MakerLegends& legends,
               GatheredPiece& into) {
  for (const model::Mark& mark : marks) {
    const auto* makers = mark.seen == model::Seen::value ? legends.find(mark.text) : nullptr;
    if (makers == nullptr) {
      continue;
    }
    for (const std::size_t maker : *makers) {
      into.makers.push_back({.maker = maker,
                             .reliability = 0.97 * mark.certainty,
                             .record = mark.id.value,
                             .what = fmt::format("Marked {}", mark.text),
                             .source = "the piece",
                             .documented = true});
    }
  }
}

}  // namespace

MakerLegends::MakerLegends(const Show& show) {
  std::unordered_map<std::int32_t, std::size_t> place;
  const auto add = [this](std::string_view legend, std::size_t maker) {
    auto& known = makers_[plain_legend(legend)];
    if (std::find(known.begin(), known.end(), maker) == known.end()) {
      known.push_back(maker);
    }
  };
  const auto& makers = show.all<model::Maker>();
  for (std::size_t i = 0; i < makers.size(); ++i) {
    place.emplace(makers[i].id.value, i);
    add(makers[i].mark, i);
  }
  for (const model::Lineage& lineage : show.all<model::Lineage>()) {
    const auto maker = place.find(lineage.maker.value);
    for (const model::Word variant : lineage.variants) {
      if (maker != place.end()) {
        add(show.text(variant), maker->second);
      }
    }
  }
  for (auto& [legend, known] : makers_) {
    std::sort(known.begin(), known.end());
  }
}

const std::vector<std::size_t>* MakerLegends::find(std::string_view legend) const {
  const std::string plain = plain_legend(legend);
  const auto at = makers_.find(plain);
  // One letter is no legend: many makers share it.
  return plain.size() < 2 || at == makers_.end() ? nullptr : &at->second;
}

MarkYears::MarkYears(const Show& show) {
  const model::Character* marks = show.character(model::mark_table_key);
  for (const model::Window& window : show.all<model::Window>()) {
    if (marks != nullptr && window.character == marks->id) {
      windows_[std::string(show.text(window.value))].push_back(&window);
    }
  }
}

void MarkYears::add(const Show& show, const model::Mark& mark, GatheredPiece& into) const {
  const auto found = windows_.find(std::string(trim(mark.text)));
  if (mark.seen != model::Seen::value || found == windows_.end()) {
    return;
  }
  for (const model::Window* window : found->second) {
    auto statement = from_bounds(window->from, window->to, false);
    if (!statement) {
      continue;
    }
    statement->spread = 0;
    statement->reliability = reliability_of(show, window->source, std::nullopt) *
                             static_cast<double>(mark.certainty);
    // Windows of one mark are one statement: either of them, not both.
    statement->origin = fmt::format("mark {}", mark.id.value);
    into.years.push_back({.statement = *statement,
                          .record = mark.id.value,
                          .what = fmt::format("Marked {}: in use {}", mark.text,
                                              span_words(window->from, window->to)),
                          .source = source_words(show, window->source),
                          .opinion = found->second.size() > 1});
  }
}

double reliability_of(const Show& show, model::Id<Source> id, std::optional<double> weight) {
  if (weight) {
    return *weight;
  }
  const Source* source = show.find(id);
  if (source == nullptr) {
    return usual_for(SourceKind::oral);
  }
  return source->reliability.value_or(usual_for(source->kind));
}

std::string origin_of(const Show& show, model::Id<Source> id) {
  // A chain of tellers cannot be longer than there are sources; a circle ends there.
  std::size_t steps = show.all<Source>().size();
  const Source* source = show.find(id);
  while (source != nullptr && !source->derives_from.empty() && steps-- > 0) {
    source = show.find(source->derives_from.front());
  }
  // Each record of a museum stands for itself; only retold stories share one origin.
  if (source == nullptr || source->kind == SourceKind::record ||
      source->kind == SourceKind::piece) {
    return "";
  }
  return source->key;
}

void gather_said(const Show& show,
                 const OnFile& on_file,
                 const MakerLegends& legends,
                 const MarkYears& mark_years,
                 Year today,
                 GatheredPiece& into) {
  for (const Claim& claim : on_file.claims) {
    if (claim.negative) {
      continue;
    }
    if (about_year(claim.says)) {
      add_year_claim(show, claim, into);
    } else if (about_maker(claim.says)) {
      add_maker_claim(show, claim, into);
    }
  }
  for (const Event& event : on_file.events) {
    add_event(show, event, today, into);
  }
  add_marks(on_file.marks, legends, into);
  for (const model::Mark& mark : on_file.marks) {
    mark_years.add(show, mark, into);
  }
}

}  // namespace backmark::evidence
