#include "press/book/tell.h"

namespace backmark::press::book {

namespace {

draw::Element element_of(Role role, draw::ElementNumber section) {
  switch (role) {
    case Role::title:
      return {.role = draw::Role::heading, .within = section, .level = 1};
    case Role::heading:
      return {.role = draw::Role::heading, .within = section, .level = 2};
    case Role::note:
      return {.role = draw::Role::note, .within = section};
    default:
      return {.role = draw::Role::paragraph, .within = section};
  }
}

}  // namespace

void Teller::begin(const Page& page) {
  if (!page.outline.empty() || section_ == 0) {
    section_ = canvas_.element({.role = draw::Role::section});
  }
}

void Teller::line(const TextLine& line, const std::function<void()>& draw) {
  if (line.role == Role::artifact) {
    draw();
    return;
  }
  const auto known = paragraphs_.find(line.paragraph);
  if (line.paragraph != 0 && known != paragraphs_.end()) {
    canvas_.content(known->second, draw);
    return;
  }
  const draw::ElementNumber element = canvas_.element(element_of(line.role, section_));
  if (line.paragraph != 0) {
    paragraphs_.emplace(line.paragraph, element);
  }
  canvas_.content(element, draw);
}

void Teller::picture(const std::string& alternative, const std::function<void()>& draw) {
  if (alternative.empty()) {
    draw();
    return;
  }
  canvas_.content(
      canvas_.element({.role = draw::Role::figure, .within = section_, .alt = alternative}),
      draw);
}

}  // namespace backmark::press::book
