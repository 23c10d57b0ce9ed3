#include "press/label_page.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/sheet.h"
#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Fonts;
using draw::Run;
using draw::Style;

constexpr double leading_ratio = 1.29;
// Where the labels of 160 x 104 have their columns; other sizes in proportion.
constexpr double usual_width = 160;

// Measures of a label in mm.
struct Frame {
  double left = 10;
  double text_x = 36;
  double text_width = 114;
  double foot = 10;
  double leading = 0;
};

Style style_of(draw::Face face, double size_pt) {
  Style style;
  style.face = face;
  style.size_pt = size_pt;
  return style;
}

Style title_style(const LabelRule& rule) {
  const bool display = rule.title_pt >= 19;
  return style_of(display ? draw::Face::display_semibold : draw::Face::sans_semibold,
                  rule.title_pt);
}

Style text_style(const LabelRule& rule) {
  return style_of(draw::Face::sans, rule.text_pt);
}

Frame frame_of(const LabelRule& rule) {
  Frame frame;
  const double grown = rule.label.width / usual_width;
  const bool numbered = rule.number_pt > 0;
  frame.left = numbered ? 10 * grown : 30;
  frame.text_x = numbered ? 36 * grown : 30;
  frame.foot = numbered ? 10 * grown : 30;
  frame.text_width = rule.label.width - frame.text_x - (numbered ? 10 * grown : 90);
  frame.leading = rule.text_pt * leading_ratio * mm_per_pt;
  return frame;
}

// A label broken into lines.
struct Set {
  std::vector<std::string> title;
  std::vector<std::string> facts;
  std::vector<std::string> text;
  double title_leading = 0;
  double title_baseline = 0;
  double facts_baseline = 0;
  double text_baseline = 0;
  double last_baseline = 0;
  double credit_baseline = 0;
};

Set set_label(const Fonts& fonts, const LabelRule& rule, const Label& label) {
  const Frame frame = frame_of(rule);
  Set set;
  set.title = balanced(fonts, label.title, title_style(rule), frame.text_width);
  for (const std::string& fact : label.facts) {
    for (std::string& line : wrapped(fonts, fact, text_style(rule), frame.text_width)) {
      set.facts.push_back(std::move(line));
    }
  }
  set.text = wrapped(fonts, label.text, text_style(rule), frame.text_width);
  set.title_leading = rule.title_pt * 1.12 * mm_per_pt;
  const Style title = title_style(rule);
  set.title_baseline = frame.foot + fonts.cap_height(title.face) * rule.title_pt * mm_per_pt;
  const double after_title =
      set.title_baseline + set.title_leading * (static_cast<double>(set.title.size()) - 1);
  set.facts_baseline = after_title + frame.leading * 1.2;
  set.text_baseline =
      set.facts_baseline + frame.leading * (static_cast<double>(set.facts.size()) +
                                            (set.facts.empty() ? 0.6 : 0.45));
  const double lines = static_cast<double>(set.text.size());
  set.last_baseline =
      set.text.empty()
          ? set.facts_baseline + frame.leading * (static_cast<double>(set.facts.size()) - 1)
          : set.text_baseline + frame.leading * (lines - 1);
  set.credit_baseline = rule.label.height - frame.foot;
  return set;
}

bool fits(const LabelRule& rule, const Set& set, const Label& label) {
  const Frame frame = frame_of(rule);
  const double room =
      label.credit.empty() ? set.credit_baseline : set.credit_baseline - frame.leading * 1.25;
  return set.last_baseline <= room + 1e-9;
}

// The text without its last `count` words.
std::string shorter(const std::string& text, int count) {
  std::string kept = text;
  for (int i = 0; i < count; ++i) {
    const std::size_t space = kept.find_last_of(" \n");
    kept.resize(space == std::string::npos ? 0 : space);
  }
  return kept;
}

void crop_marks(Canvas& canvas, const Box& box) {
  constexpr double off = 2;
  constexpr double length = 4;
  const draw::Stroke hair{0.25 * mm_per_pt};
  for (const double x : {box.x, box.right()}) {
    canvas.line({x, box.y - off}, {x, box.y - off - length}, draw::ink, hair);
    canvas.line({x, box.bottom() + off}, {x, box.bottom() + off + length}, draw::ink, hair);
  }
  for (const double y : {box.y, box.bottom()}) {
    canvas.line({box.x - off, y}, {box.x - off - length, y}, draw::ink, hair);
    canvas.line({box.right() + off, y}, {box.right() + off + length, y}, draw::ink, hair);
  }
}

void show_label(Canvas& canvas,
                const Fonts& fonts,
                const LabelRule& rule,
                const Label& label,
                const Box& box) {
  const Frame frame = frame_of(rule);
  const Set set = set_label(fonts, rule, label);
  canvas.rectangle(box);
  canvas.fill(draw::label_stock);
  crop_marks(canvas, box);
  if (!label.number.empty()) {
    const Style number =
        style_of(draw::Face::display_medium, rule.number_pt).with(draw::copper);
    const double baseline =
        frame.foot + fonts.cap_height(number.face) * rule.number_pt * mm_per_pt;
    draw::show(canvas, fonts, {box.x + frame.left, box.y + baseline},
               Run{label.number, number});
  }
  const double x = box.x + frame.text_x;
  show_lines(canvas, fonts, {x, box.y + set.title_baseline}, set.title, title_style(rule),
             set.title_leading);
  show_lines(canvas, fonts, {x, box.y + set.facts_baseline}, set.facts, text_style(rule),
             frame.leading);
  show_lines(canvas, fonts, {x, box.y + set.text_baseline}, set.text, text_style(rule),
             frame.leading);
  draw::show(canvas, fonts, {x, box.y + set.credit_baseline},
             Run{label.credit, text_style(rule).sized(rule.credit_pt)});
}

}  // namespace

int words_on(const Label& label) {
  int words = word_count(label.title) + word_count(label.text) + word_count(label.credit);
  for (const std::string& fact : label.facts) {
    words += word_count(fact);
  }
  return words;
}

int words_to_cut(const Fonts& fonts, const LabelRule& rule, const Label& label) {
  const int over = std::max(0, word_count(label.text) - refused_words);
  if (over == 0 && fits(rule, set_label(fonts, rule, label), label)) {
    return 0;
  }
  // Fewer words never need more lines, so the least cut is found by halving.
  int low = std::max(over, 1);
  int high = std::max(low, word_count(label.text));
  while (low < high) {
    const int middle = (low + high) / 2;
    Label less = label;
    less.text = shorter(label.text, middle);
    if (fits(rule, set_label(fonts, rule, less), less)) {
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return low;
}

void show_labels(Canvas& canvas,
                 const Fonts& fonts,
                 const LabelRule& rule,
                 const std::vector<const Label*>& labels,
                 const Box& body) {
  constexpr double gap = 18;  // room for the marks of two neighbours
  const double width = rule.across * rule.label.width + (rule.across - 1) * gap;
  const double x = body.x + (body.width - width) / 2;
  const double y = body.y + 8;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const auto column = static_cast<double>(i % static_cast<std::size_t>(rule.across));
    const auto line = static_cast<double>(i / static_cast<std::size_t>(rule.across));
    show_label(canvas, fonts, rule, *labels[i],
               {x + column * (rule.label.width + gap), y + line * (rule.label.height + gap),
                rule.label.width, rule.label.height});
  }
}

void show_tags(Canvas& canvas,
               const Fonts& fonts,
               const std::vector<std::string>& numbers,
               const Box& body) {
  constexpr double width = 18;
  constexpr double height = 13;
  constexpr double gap = 5.4;
  Style style = style_of(draw::Face::display_medium, 19).with(draw::copper);
  const draw::Stroke hair{0.25 * mm_per_pt};
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const Box box{body.x + 1 + static_cast<double>(i % tags_across) * (width + gap),
                  body.y + 6 + static_cast<double>(i / tags_across) * (height + gap + 1.6),
                  width, height};
    canvas.rectangle(box);
    canvas.fill(draw::label_stock);
    for (const double x : {box.x, box.right()}) {
      canvas.line({x, box.y - 1}, {x, box.y - 2.4}, draw::ink, hair);
      canvas.line({x, box.bottom() + 1}, {x, box.bottom() + 2.4}, draw::ink, hair);
    }
    const double cap = fonts.cap_height(style.face) * style.size_pt * mm_per_pt;
    draw::show(canvas, fonts, {box.centre().x, box.centre().y + cap / 2},
               Run{numbers[i], style}, draw::Align::centre);
  }
}

void show_large_print(Canvas& canvas, const Fonts& fonts, const Label& label, const Box& body) {
  constexpr double size = 18;
  const double leading = 26 * mm_per_pt;
  const Style text = style_of(draw::Face::sans, size);
  const Style title = style_of(draw::Face::display_semibold, 28);
  double y = body.y + 16;
  draw::show(canvas, fonts, {body.x, y},
             Run{label.number, style_of(draw::Face::display_medium, 40).with(draw::copper)});
  y += 16;
  y = show_lines(canvas, fonts, {body.x, y}, balanced(fonts, label.title, title, body.width),
                 title, 28 * 1.2 * mm_per_pt);
  y += 1;
  for (const std::string& fact : label.facts) {
    y = show_lines(canvas, fonts, {body.x, y}, wrapped(fonts, fact, text, body.width), text,
                   leading);
  }
  y += leading * 0.5;
  y = show_lines(canvas, fonts, {body.x, y}, wrapped(fonts, label.text, text, body.width), text,
                 leading);
  y += leading * 0.5;
  show_lines(canvas, fonts, {body.x, y}, wrapped(fonts, label.credit, text, body.width), text,
             leading);
}

}  // namespace backmark::press
