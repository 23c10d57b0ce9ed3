#include <cmath>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/looks.h"

namespace backmark::desk {

namespace {

using model::Look;
using model::LookList;
using model::Show;

Json answers_json(const Look& look) {
  Json list = Json::array();
  for (const model::LookAnswer& answer : look.answers) {
    list.push_back({{"value", answer.value},
                    {"p", answer.p},
                    {"p10", answer.p10.value},
                    {"p50", answer.p50.value},
                    {"p90", answer.p90.value}});
  }
  return list;
}

Json look_json(const Show& show, const Look& look) {
  return {{"number", show.find(look.piece)->number},
          {"part", show.text(look.part)},
          {"character", show.find(look.character)->key},
          {"label", look_label(show, look.character, look.again)},
          {"gain_bits", look.gain_bits},
          {"bits_year", look.bits_year},
          {"bits_maker", look.bits_maker},
          {"gain_years", look.gain_years},
          {"minutes", look.minutes},
          {"again", look.again},
          {"p10", look.p10.value},
          {"p50", look.p50.value},
          {"p90", look.p90.value},
          {"answers", answers_json(look)}};
}

std::string stop_name(const Show& show, const model::LookStop& stop) {
  if (const model::Lender* lender = show.find(stop.lender)) {
    return lender->code;
  }
  return stop.tray ? std::string(show.text(stop.tray)) : "not said where";
}

Json plan_json(const Show& show, const LookList& list) {
  Json stops = Json::array();
  for (const model::LookStop& stop : list.plan) {
    Json looks = Json::array();
    for (const std::size_t l : stop.looks) {
      looks.push_back({{"number", show.find(list.looks[l].piece)->number},
                       {"character", show.find(list.looks[l].character)->key}});
    }
    stops.push_back({{"at", stop_name(show, stop)},
                     {"minutes", stop.minutes},
                     {"fetch_minutes", stop.fetch_minutes},
                     {"gain_bits", stop.gain_bits},
                     {"looks", looks}});
  }
  return stops;
}

Json missed_json(const Show& show, const LookList& list) {
  Json missed = Json::array();
  for (const model::LookMissed& one : list.missed) {
    missed.push_back({{"number", show.find(list.looks[one.look].piece)->number},
                      {"character", show.find(list.looks[one.look].character)->key},
                      {"minutes", one.minutes},
                      {"over", one.over}});
  }
  return missed;
}

Json to_json(const Show& show, const LookList& list) {
  Json looks = Json::array();
  for (const Look& look : list.looks) {
    looks.push_back(look_json(show, look));
  }
  Json conflicts = Json::array();
  for (const model::Misfit& misfit : list.conflicts) {
    conflicts.push_back(
        {{"number", show.find(misfit.piece)->number},
         {"odd_one", misfit.part ? std::string(show.text(misfit.part)) : misfit.what},
         {"p", misfit.p},
         {"odds", misfit.p < 1 ? Json(misfit.p / (1 - misfit.p)) : Json()}});
  }
  return {{"looks", looks},
          {"conflicts", conflicts},
          {"hours", list.hours},
          {"plan", plan_json(show, list)},
          {"missed", missed_json(show, list)},
          {"planned_minutes", list.planned_minutes},
          {"planned_bits", list.planned_bits},
          {"notes", list.notes}};
}

std::string answers_text(const Look& look) {
  std::vector<std::string> parts;
  for (const model::LookAnswer& answer : look.answers) {
    if (parts.size() < 3) {
      parts.push_back(fmt::format("{}: {}-{}", shortened(answer.value, 18), answer.p10.value,
                                  answer.p90.value));
    }
  }
  return join(parts, "; ");
}

std::string look_text(const Show& show, const Look& look) {
  return fmt::format("  {:>4.2f} bits {:>4.0f} min  {}  {}  {}-{}; {}\n", look.gain_bits,
                     look.minutes, padded(show.find(look.piece)->number, 8),
                     padded(shortened(look_label(show, look.character, look.again), 22), 22),
                     look.p10.value, look.p90.value, answers_text(look));
}

std::string plan_text(const Show& show, const LookList& list) {
  std::string text = fmt::format("\n{:g} hours: {:.0f} minutes planned, {:.1f} bits expected\n",
                                 list.hours, list.planned_minutes, list.planned_bits);
  for (const model::LookStop& stop : list.plan) {
    text += fmt::format("{} ({:.0f} minutes, {:.1f} bits)\n", stop_name(show, stop),
                        stop.minutes, stop.gain_bits);
    for (const std::size_t l : stop.looks) {
      text += look_text(show, list.looks[l]);
    }
  }
  for (const model::LookMissed& one : list.missed) {
    const Look& look = list.looks[one.look];
    text += fmt::format(
        "{}{} {}, {:.0f} min ({:.0f} over)",
        &one == list.missed.data() ? "Just missed: " : "; ", show.find(look.piece)->number,
        look_label(show, look.character, look.again), one.minutes, std::ceil(one.over));
  }
  text += list.missed.empty() ? "" : "\n";
  return text;
}

std::string odds_words(double p) {
  return p >= 0.5 ? fmt::format("{:.0f} to 1", p / std::max(1e-6, 1 - p))
                  : fmt::format("1 to {:.0f}", (1 - p) / std::max(1e-6, p));
}

std::string conflicts_text(const Show& show, const LookList& list) {
  std::string text =
      fmt::format("\n{} things that do not fit, with the odds on it\n", list.conflicts.size());
  for (std::size_t i = 0; i < std::min<std::size_t>(10, list.conflicts.size()); ++i) {
    const model::Misfit& misfit = list.conflicts[i];
    text += fmt::format("  {:>9}  {}  {}\n", odds_words(misfit.p),
                        padded(show.find(misfit.piece)->number, 8), shortened(misfit.what, 70));
  }
  return text;
}

std::string to_text(const Show& show, const LookList& list) {
  std::string text;
  if (list.plan.empty() && list.hours == 0) {
    text = fmt::format(
        "{} looks worth taking, most bits a minute first (years now; after each answer)\n",
        list.looks.size());
    for (std::size_t l = 0; l < std::min<std::size_t>(20, list.looks.size()); ++l) {
      text += look_text(show, list.looks[l]);
    }
  } else {
    text = plan_text(show, list);
  }
  text += conflicts_text(show, list);
  for (const std::string& note : list.notes) {
    text += note + "\n";
  }
  return text;
}

// Only what concerns these pieces, most bits a minute first.
Result<Answer> of_pieces(const OpenShow& open,
                         const std::vector<std::string>& numbers,
                         LookList list) {
  std::set<std::int32_t> wanted;
  for (const std::string& number : numbers) {
    const auto piece = find_piece(open.show, number);
    if (!piece) {
      return piece.problem();
    }
    wanted.insert((*piece)->id.value);
  }
  std::erase_if(list.looks,
                [&](const Look& look) { return !wanted.contains(look.piece.value); });
  std::erase_if(list.conflicts, [&](const model::Misfit& misfit) {
    return !wanted.contains(misfit.piece.value);
  });
  return Answer{
      .json = to_json(open.show, list), .text = to_text(open.show, list), .problems = {}};
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto wish = look_wish_of(call);
  if (!wish) {
    return wish.problem();
  }
  wish->wants = Wants::last_made;
  if (call.has("number") && wish->hours > 0) {
    return Problem{Fault::bad_input, "a plan is of the whole show", "--hours",
                   "leave the numbers of pieces out"};
  }
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto settings = settings_of(call, around);
  if (!settings) {
    return settings.problem();
  }
  const auto list = looks_of(*open, *wish, *settings, around);
  if (!list) {
    return list.problem();
  }
  if (call.has("number")) {
    return of_pieces(*open, call.texts("number"), *list);
  }
  return Answer{
      .json = to_json(open->show, *list), .text = to_text(open->show, *list), .problems = {}};
}

}  // namespace

Operation look_list() {
  return {.name = "look",
          .help = "what to look at next and what it should settle; what does not fit",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "number",
                          .takes = Takes::texts,
                          .help = "only looks at these pieces",
                          .positional = true},
                         hours_parameter(),
                         by_parameter(),
                         seed_parameter(),
                         unlisted_parameter(),
                         chains_parameter(),
                         rounds_parameter()},
          .run = run};
}

}  // namespace backmark::desk
