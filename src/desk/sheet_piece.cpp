#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/belief_json.h"
#include "desk/calendar.h"
#include "desk/each.h"
#include "desk/evidence_words.h"
#include "desk/fitted.h"
#include "words/phrase.h"

namespace backmark::desk {

namespace {

using Why = evidence::Reckoning::Why;
using model::Show;

Json belief_json(const Show& show, const model::PieceBelief& belief) {
  const model::Phrases phrases = words::phrase_piece(show, belief);
  return {{"made", phrases.made},
          {"by", phrases.maker},
          {"overruled", phrases.initials},
          {"year", years_drawn(belief.year)},
          {"makers", makers_drawn(show, belief.maker)}};
}

Json line_json(const model::EvidenceLine& line) {
  return {{"what", line.what},           {"source", line.source},
          {"record", line.record},       {"bits", line.bits_year},
          {"odds", line.maker_log_odds}, {"words", moved_words(line)},
          {"torn", line.disagrees},      {"alone", years_drawn(line.alone)}};
}

Json evidence_json(const Why& why) {
  Json list = Json::array();
  for (const model::EvidenceLine& line : why.lines) {
    list.push_back(line_json(line));
  }
  return list;
}

Json alike_json(const Show& show, const Why& why) {
  Json list = Json::array();
  for (const model::Comparandum& one : why.comparanda) {
    const model::Piece* piece = show.find(one.piece);
    if (piece == nullptr) {
      continue;  // withdrawn since it was weighed
    }
    list.push_back({{"number", piece->number},
                    {"title", piece->title},
                    {"share", one.share},
                    {"why", one.why},
                    {"unlike", one.unlike}});
  }
  return list;
}

Json misfits_json(const Show& show, const Why& why) {
  Json list = Json::array();
  for (const model::Misfit& misfit : why.misfits) {
    list.push_back({{"what", misfit.what}, {"part", show.text(misfit.part)}, {"p", misfit.p}});
  }
  return list;
}

std::string seen_text(const Show& show,
                      const model::Observation& seen,
                      const model::Character& character) {
  if (seen.seen == model::Seen::none) {
    return "looked for, none";
  }
  if (seen.seen == model::Seen::cannot_tell) {
    return "cannot tell";
  }
  return character.shape == model::Shape::number
             ? fmt::format("{:g} {}", seen.number, character.unit)
             : std::string(show.text(seen.value));
}

std::string kind_of(const Show& show, const model::Piece& piece, model::Id<model::Part> id) {
  for (const model::Part& part : show.parts_of(piece.id)) {
    if (part.id == id) {
      return std::string(show.text(part.kind));
    }
  }
  return "";
}

Json observations_json(const Show& show, const model::Piece& piece) {
  Json list = Json::array();
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character* character = show.find(seen.character);
    list.push_back({{"id", seen.id.value},
                    {"part", seen.part ? kind_of(show, piece, seen.part)
                                       : std::string(show.text(character->part))},
                    {"character", character->key},
                    {"label", character->label},
                    {"value", seen_text(show, seen, *character)},
                    {"by", show.text(seen.by)},
                    {"day", seen.day == model::unknown_day ? "" : to_long_day(seen.day)}});
  }
  return list;
}

Json parts_json(const Show& show, const model::Piece& piece) {
  static constexpr const char* names[] = {"unknown", "original", "replaced"};
  Json list = Json::array();
  for (const model::Part& part : show.parts_of(piece.id)) {
    list.push_back({{"kind", show.text(part.kind)},
                    {"is", names[static_cast<std::size_t>(part.originality)]}});
  }
  return list;
}

Json marks_json(const Show& show, const model::Piece& piece) {
  Json list = Json::array();
  for (const model::Mark& mark : show.marks_of(piece.id)) {
    list.push_back({{"id", mark.id.value},
                    {"text", mark.seen == model::Seen::none ? "looked for, none" : mark.text},
                    {"place", show.text(mark.place)}});
  }
  return list;
}

Json told_json(const Show& show, const model::Piece& piece) {
  Json list = Json::array();
  for (const model::Claim& claim : show.claims_on(piece.id)) {
    const model::Source* source = show.find(claim.source);
    list.push_back({{"id", claim.id.value},
                    {"text", claim.text},
                    {"source", source != nullptr ? source->title : ""},
                    {"against", claim.negative}});
  }
  return list;
}

Json events_json(const Show& show, const model::Piece& piece) {
  Json list = Json::array();
  for (const model::Event& event : show.events_of(piece.id)) {
    list.push_back({{"id", event.id.value},
                    {"date", event.date},
                    {"text", event.text},
                    {"party", show.text(event.party)},
                    {"place", show.text(event.place)}});
  }
  return list;
}

Json notes_json(const Show& show, const model::Piece& piece) {
  Json list = Json::array();
  for (const model::Note& note : show.notes_of(piece.id)) {
    list.push_back({{"heading", show.text(note.heading)}, {"text", note.text}});
  }
  return list;
}

Json facts_json(const Show& show, const model::Piece& piece) {
  const auto& all = show.all<model::Piece>();
  const auto row = &piece - all.data();
  const auto number = [&](std::ptrdiff_t at) {
    return at < 0 || at >= std::ssize(all) ? Json()
                                           : Json(all[static_cast<std::size_t>(at)].number);
  };
  return {{"number", piece.number},
          {"title", piece.title},
          {"form", show.text(piece.form)},
          {"tray", show.text(piece.tray)},
          {"before", number(row - 1)},
          {"next", number(row + 1)},
          {"pictures", pictures_drawn(show, piece.id)},
          {"parts", parts_json(show, piece)},
          {"observations", observations_json(show, piece)},
          {"marks", marks_json(show, piece)},
          {"claims", told_json(show, piece)},
          {"events", events_json(show, piece)},
          {"notes", notes_json(show, piece)}};
}

Result<evidence::LeftOut> left_out(const Call& call) {
  evidence::LeftOut without;
  for (const std::string& text : call.texts("without")) {
    const auto record = to_whole(text);
    if (!record) {
      return Problem{Fault::bad_input, fmt::format("\"{}\" is no record", shortened(text, 20)),
                     "--without", "give the numbers that the sheet says beside its evidence"};
    }
    without.records.insert(static_cast<std::int32_t>(*record));
  }
  return without;
}

// The answer that every other page and paper gives, if it is of this very show.
model::PieceBelief settled(OpenShow& open,
                           const model::Piece& piece,
                           const model::PieceBelief& fitted) {
  const auto last = last_run(open);
  const bool holds = last && !last->stale;
  const model::PieceBelief* recorded = holds ? last->run.beliefs.of(piece.id) : nullptr;
  return recorded == nullptr ? fitted : *recorded;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto piece = find_piece(open->show, call.text("number"));
  if (!piece) {
    return piece.problem();
  }
  const auto without = left_out(call);
  if (!without) {
    return without.problem();
  }
  const auto in_fit = fitted_piece(*open, **piece, around);
  if (!in_fit) {
    return in_fit.problem();
  }
  const evidence::Reckoning& reckoning = in_fit->fitted->reckoning;
  Answer answer;
  answer.text = (*piece)->number + ": the sheet is for pages: ask with --json\n";
  if (!without->records.empty()) {
    answer.json = belief_json(open->show, reckoning.judge(in_fit->row, *without));
    return answer;
  }
  const auto explained = in_fit->fitted->explained->of(reckoning, in_fit->row, 4);
  const Why& why = *explained;
  answer.json = facts_json(open->show, **piece);
  answer.json.update(belief_json(open->show, settled(*open, **piece, why.belief)));
  answer.json["evidence"] = evidence_json(why);
  answer.json["misfits"] = misfits_json(open->show, why);
  answer.json["alike"] = alike_json(open->show, why);
  return answer;
}

}  // namespace

Operation sheet_piece() {
  return {.name = "sheet",
          .help = "one piece as the Sheet lays it: pictures, parts, evidence, answers",
          .from_show_alone = true,
          .parameters =
              {show_folder(),
               {.name = "number", .help = "the piece", .positional = true, .required = true},
               {.name = "without",
                .takes = Takes::texts,
                .help = "only the answer, with these records laid aside"}},
          .run = run};
}

}  // namespace backmark::desk
