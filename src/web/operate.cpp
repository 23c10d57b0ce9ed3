#include "web/operate.h"

#include <iostream>

#include "base/json.h"
#include "base/text.h"
#include "desk/fitted.h"
#include "desk/open.h"
#include "desk/overview.h"
#include "desk/reckoned.h"
#include "desk/take_photographs.h"
#include "desk/written.h"
#include "web/reply.h"

namespace backmark::web {

namespace {

constexpr int tries = 4;

// The show moved on between reading and writing, by a program beside this one: worth another
// try. A conflict that names a thing is not.
bool worth_another_try(const Result<desk::Answer>& result) {
  return !result && result.problem().fault == Fault::conflict &&
         result.problem().where.empty() &&
         contains(result.problem().what, "by somebody else meanwhile");
}

// The changes after `seen` of the piece that clashed, with their values, newest first.
Json theirs_since(store::Store& store,
                  const model::Show& show,
                  std::int64_t seen,
                  const std::string& number) {
  constexpr std::size_t most = 20;
  Json list = Json::array();
  const model::Piece* piece = show.piece(number);
  const auto book = store.book(most, piece == nullptr ? model::Id<model::Piece>{} : piece->id);
  if (!book) {
    return list;
  }
  for (const store::Entry& entry : *book) {
    if (entry.position > seen) {
      list.push_back({{"id", entry.position},
                      {"who", entry.who},
                      {"when", entry.at},
                      {"what", entry.summary},
                      {"detail", Json::parse(entry.detail, nullptr, false)}});
    }
  }
  return list;
}

std::string question_of(const desk::Operation& operation,
                        const Ask& ask,
                        const desk::Surroundings& around) {
  const std::int64_t day = around.now / (24 * 60 * 60);
  return fmt::format("{} {} {}", operation.name, day, ask.text);
}

Response fault_of_program(const char* what) {
  std::cerr << "backmark: a fault of the program: " << what << std::endl;
  Problem problem{Fault::io, "a fault of the program", "",
                  "nothing was changed; the terminal that serves says more"};
  Json json = {{"problem", to_json(problem)}};
  json["problem"]["fault"] = "program";
  return reply(json, program_fault);
}

}  // namespace

Problem Operate::without_paths(Problem problem) const {
  std::error_code none;
  for (const Path& path : {std::filesystem::absolute(show_, none), show_}) {
    for (std::string* text : {&problem.what, &problem.where, &problem.fix}) {
      const std::string name = path.lexically_normal().string();
      if (name.size() > 1) {
        *text = replace_all(std::move(*text), name, "the show");
      }
    }
  }
  return problem;
}

Response Operate::answer_of(const Result<desk::Answer>& result) const {
  if (!result) {
    return reply(without_paths(result.problem()));
  }
  if (result->json.is_binary()) {
    return reply_written(desk::to_written(result->json, -1));
  }
  if (result->problems.empty() || !result->json.is_object() ||
      result->json.contains("problems")) {
    return reply(result->json);
  }
  Json json = result->json;
  for (const Problem& problem : result->problems) {
    json["problems"].push_back(to_json(without_paths(problem)));
  }
  return reply(json);
}

Response Operate::conflict(const Ask& ask, const Problem& problem, store::Store& store) {
  Json json = {{"problem", to_json(without_paths(problem))}};
  const auto show = warm_.show(store, store::Access::change);
  if (ask.seen && show) {
    json["theirs"] = theirs_since(store, **show, *ask.seen, problem.where);
    json["yours"] = Json::parse(ask.text, nullptr, false);
  }
  return reply(json, status_of(Fault::conflict));
}

Response Operate::write(const desk::Operation& operation,
                        Ask& ask,
                        const desk::Surroundings& around) {
  const std::lock_guard lock(writing_);
  const auto hand = warm_.write_in_hand();
  auto store = store::Store::open(show_, store::Access::change);
  if (!store) {
    return reply(without_paths(store.problem()));
  }
  if (!ask.once.empty()) {
    const auto kept = store->kept(ask.once);
    if (!kept) {
      return reply(without_paths(kept.problem()));
    }
    if (*kept) {
      return (*kept)->answer.empty()
                 ? reply(Json{{"kept", true}, {"change", (*kept)->position}})
                 : reply(Json::parse((*kept)->answer, nullptr, false));
    }
  }
  ask.call.seen = ask.seen;
  ask.call.once = ask.once;
  Result<desk::Answer> result = operation.run(ask.call, around);
  for (int i = 1; i < tries && worth_another_try(result); ++i) {
    result = operation.run(ask.call, around);
  }
  if (!result && result.problem().fault == Fault::conflict) {
    return conflict(ask, result.problem(), *store);
  }
  Response response = answer_of(result);
  weigh_ahead();
  // Who wrote sees what he wrote: the show is read again before he is answered.
  if (auto fresh = warm_.show(*store, store::Access::change); !fresh) {
    return reply(without_paths(fresh.problem()));
  }
  if (result && !ask.once.empty()) {
    if (auto laid = store->keep_answer(ask.once, response.body); !laid) {
      return reply(without_paths(laid.problem()));
    }
  }
  return response;
}

std::optional<store::Moment> Operate::settled_moment() {
  const std::lock_guard lock(settling_);
  if (!settled_) {
    auto store = store::Store::open(show_, store::Access::look);
    if (!store) {
      return std::nullopt;
    }
    settled_.emplace(*std::move(store));
  }
  const auto now = settled_->moment();
  return now && warm_.position() == now->position ? std::optional(*now) : std::nullopt;
}

Response Operate::look_anew(const desk::Operation& operation,
                            const Ask& ask,
                            const desk::Surroundings& around,
                            const bool& earlier) {
  const auto before = operation.from_show_alone ? settled_moment() : std::nullopt;
  const auto result = operation.run(ask.call, around);
  Response response = answer_of(result);
  // The show in memory only moves forward: where it is as it was, this is what it says.
  if (result && before && !earlier && settled_moment() == before) {
    answers_.keep(*before, question_of(operation, ask, around), response.body);
  }
  return response;
}

void Operate::look_again(const desk::Operation& operation,
                         const Ask& ask,
                         const desk::Surroundings& around) {
  const auto job = [this, &operation, again = Ask(ask),
                    then = desk::Surroundings(around)](const std::stop_token& over) mutable {
    again.call.warm = &warm_;
    then.stop = over;
    (void)look_anew(operation, again, then, false);
  };
  later_.ask(operation.name, job);
}

Response Operate::look(const desk::Operation& operation,
                       Ask ask,
                       const desk::Surroundings& around) {
  const auto now = operation.from_show_alone ? settled_moment() : std::nullopt;
  if (now) {
    if (const auto known = answers_.find(*now, question_of(operation, ask, around))) {
      return reply_written(*known);
    }
  }
  bool earlier = false;
  desk::Warm hurried = warm_.hurried(earlier);
  ask.call.warm = &hurried;
  Response response = look_anew(operation, ask, around, earlier);
  if (earlier) {
    response.headers.emplace_back("Backmark-Weighing", "yes");
    look_again(operation, ask, around);
  }
  return response;
}

void Operate::weigh_ahead() {
  later_.ask("", [this](const std::stop_token& over) {
    desk::Call call;
    call.set("show", {show_.string()});
    call.warm = &warm_;
    desk::Surroundings around = around_now(around_.who);
    around.stop = over;
    auto open = desk::open_show(call, store::Access::look);
    if (!open) {
      return;
    }
    // Pages are told that the reckoning is stale as soon as something that bears on it changes;
    // where that was taken back, it is not, and what they were told goes.
    if (const auto last = desk::last_run(*open); last && !last->stale) {
      answers_.forget();
    }
    (void)desk::fitted_show(*open, around);
  });
}

desk::Surroundings Operate::around_now(const std::string& who) const {
  desk::Surroundings around = around_;
  around.who = who;
  around.now = around_.clock ? around_.clock() : around_.now;
  around.progress = [](double, std::string_view) {};
  return around;
}

Result<desk::OpenShow> Operate::open_to_write() {
  desk::Call call;
  call.set("show", {show_.string()});
  call.warm = &warm_;
  return desk::open_show(call, store::Access::change);
}

Response Operate::take_photograph(const std::string& name,
                                  std::string bytes,
                                  const std::string& who,
                                  const std::string& lot) {
  const std::lock_guard lock(writing_);
  const auto hand = warm_.write_in_hand();
  auto open = open_to_write();
  if (!open) {
    return reply(without_paths(open.problem()));
  }
  const desk::Surroundings around = around_now(who);
  std::optional<desk::OfferedPicture> picture = desk::OfferedPicture{name, std::move(bytes)};
  const auto taken =
      lot.empty() ? desk::take_photographs(
                        *open, [&] { return std::exchange(picture, std::nullopt); }, around)
                  : lots_.offer(who + "/" + lot, *open, *picture, around);
  return taken ? reply(*taken) : reply(without_paths(taken.problem()));
}

bool Operate::end_still_lot(const desk::Surroundings& around) {
  auto open = open_to_write();
  return open && lots_.end_still(*open, around);
}

Response Operate::end_lot(const std::string& lot, const std::string& who) {
  const std::lock_guard lock(writing_);
  const auto hand = warm_.write_in_hand();
  auto open = open_to_write();
  if (!open) {
    return reply(without_paths(open.problem()));
  }
  const auto ended = lots_.end(who + "/" + lot, *open, around_now(who));
  while (end_still_lot(around_now(who))) {
  }
  return ended ? reply(*ended) : reply(without_paths(ended.problem()));
}

Result<std::shared_ptr<const model::Show>> Operate::current_show() {
  auto store = store::Store::open(show_, store::Access::look);
  if (!store) {
    return without_paths(store.problem());
  }
  return warm_.show(*store, store::Access::look);
}

Response Operate::run(const desk::Operation& operation, Ask ask, const std::string& who) {
  try {
    const desk::Surroundings around = around_now(who);
    ask.call.set("show", {show_.string()});
    ask.call.warm = &warm_;
    ask.call.standard_input = [] { return std::string(); };
    // A reckoning takes long and is no change of the show: others may write meanwhile.
    return operation.writes && operation.name != "infer"
               ? write(operation, ask, around)
               : look(operation, std::move(ask), around);
  } catch (const std::exception& fault) {
    return fault_of_program(fault.what());
  }
}

Result<Json> Operate::overview() {
  desk::Call call;
  call.set("show", {show_.string()});
  call.warm = &warm_;
  auto open = desk::open_show(call, store::Access::look);
  if (!open) {
    return without_paths(open.problem());
  }
  return desk::overview(*open, around_.clock ? around_.clock() : around_.now);
}

}  // namespace backmark::web
