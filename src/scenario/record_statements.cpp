#include "scenario/coast.h"
#include "scenario/recorder.h"

namespace backmark::scenario {
namespace {

using model::Says;

model::EventKind event_kind(Saying saying) {
  switch (saying) {
    case Saying::acquired:
      return model::EventKind::acquired;
    case Saying::commissioned:
      return model::EventKind::commissioned;
    case Saying::awarded:
      return model::EventKind::awarded;
    case Saying::exhibited:
      return model::EventKind::exhibited;
    case Saying::altered:
      return model::EventKind::altered;
    default:
      return model::EventKind::other;
  }
}

void record_claim(Recorder& recorder, const Statement& statement) {
  const Says says = statement.saying == Saying::made_by     ? Says::made_by
                    : statement.saying == Saying::inscribed ? Says::inscribed
                                                            : Says::made;
  recorder.change.add(model::Claim{
      .source = recorder.sources.at(statement.source),
      .subject = recorder.pieces[statement.work].value,
      .says = says,
      .text = statement.date.empty() ? statement.text : statement.date + ": " + statement.text,
      .from = statement.from,
      .to = statement.to,
      .approximate = statement.approximate,
      .maker = statement.maker < 0 ? model::Id<model::Maker>{}
                                   : recorder.makers[static_cast<std::size_t>(statement.maker)],
      .qualifier = recorder.word(statement.qualifier),
      .by = recorder.word("I.R."),
      .day = first_day});
}

void record_event(Recorder& recorder, const Statement& statement) {
  recorder.change.add(model::Event{.piece = recorder.pieces[statement.work],
                                   .kind = event_kind(statement.saying),
                                   .date = statement.date,
                                   .from = statement.from,
                                   .to = statement.to,
                                   .party = recorder.word(statement.party),
                                   .text = statement.text,
                                   .source = recorder.sources.at(statement.source)});
}

// What bears on no one piece: who was first, what was patented, whose the loop is.
void record_general(Recorder& recorder) {
  const auto maker_id = [&](std::string_view key) {
    for (std::size_t i = 0; i < makers().size(); ++i) {
      if (makers()[i].key == key) {
        return recorder.makers[i];
      }
    }
    return model::Id<model::Maker>{};
  };
  for (const FirstSaying& saying : first_sayings()) {
    recorder.change.add(model::Claim{.source = recorder.sources.at(saying.source),
                                     .about = model::About::form,
                                     .says = Says::first,
                                     .text = saying.text,
                                     .from = saying.from,
                                     .to = saying.to,
                                     .maker = maker_id(saying.maker),
                                     .word = recorder.word("slide tie"),
                                     .by = recorder.word("I.R."),
                                     .day = first_day});
  }
  recorder.change.add(model::Claim{.source = recorder.sources.at("vessen-grandson"),
                                   .about = model::About::character,
                                   .subject = recorder.characters.at("fitting").value,
                                   .says = Says::design_of,
                                   .text = "\"the eight is hers, it is in the day-book\"",
                                   .maker = maker_id("vessen"),
                                   .word = recorder.word("figure-eight wire"),
                                   .character = recorder.characters.at("fitting"),
                                   .by = recorder.word("I.R."),
                                   .day = first_day});
  const auto patent = [&](const char* source, const char* date, Year year, const char* text) {
    recorder.change.add(model::Event{.kind = model::EventKind::patented,
                                     .date = date,
                                     .from = year,
                                     .to = year,
                                     .party = recorder.word("Tarn Works"),
                                     .place = recorder.word("Tarn Head"),
                                     .text = text,
                                     .source = recorder.sources.at(source)});
  };
  patent("patent-clip", "1951-09", clip_from, "spring clip for cords, applied for");
  patent("patent-clip", "1955-02", Year{1955}, "spring clip for cords, granted as 20417");
  patent(
      "patent-button", "1964-05", button_from,
      "push-button slide in two bores, for cords of four and of five and a half millimetres");
}

}  // namespace

void record_statements(Recorder& recorder) {
  for (const Statement& statement : recorder.scenario.statements) {
    switch (statement.saying) {
      case Saying::made:
      case Saying::made_by:
      case Saying::inscribed:
        record_claim(recorder, statement);
        break;
      default:
        record_event(recorder, statement);
    }
  }
  record_general(recorder);
}

}  // namespace backmark::scenario
