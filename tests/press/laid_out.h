// One kind of page of the demo's book, laid out once in a trim.
#pragma once

#include <functional>

#include "demo_job.h"
#include "press/book/kinds.h"

namespace backmark::press::book {

struct LaidOut {
  LaidOut(
      const char* trim,
      void (*lay)(Layout&),
      const std::function<void(model::Show&)>& change = [](model::Show&) {}) {
    change(show);
    show.all<model::Setting>().push_back({{9999}, "book.trim", trim});
    show.settle();
    plan = *plan_book(job);
    layout = std::make_unique<Layout>(*plan);
    layout->begin_pass();
    lay(*layout);
  }
  model::Show show = show_of(demo_printing().demo);
  PressJob usual = demo_printing().job(words::Audience::public_);
  PressJob job{show,           usual.beliefs, usual.phrases, usual.fonts, usual.photograph,
               usual.audience, usual.day};
  std::unique_ptr<const Plan> plan;
  std::unique_ptr<Layout> layout;
};

}  // namespace backmark::press::book
