#include "press/labels.h"

#include <algorithm>
#include <array>

#include "base/csv_write.h"
#include "base/text.h"
#include "press/label_page.h"
#include "press/sheet.h"
#include "press/type.h"
#include "reference/label_distance.h"
#include "words/fact.h"

namespace backmark::press {
namespace {

using draw::Canvas;
using words::FactKind;
using words::Grammar;

// The words of the label's own, if somebody wrote them.
std::string own_words(const model::Show& show, model::Id<model::Piece> piece) {
  for (const model::Note& note : show.notes_of(piece)) {
    if (lower_ascii(show.text(note.heading)) == "label") {
      return without_marks(note.text);
    }
  }
  return {};
}

class Labels {
 public:
  explicit Labels(const PressJob& job)
      : job_(job),
        grammar_(job.show, job.beliefs, job.phrases),
        rule_(object_rule(job.number_setting("labels.distance", 600))) {}

  Result<Printed> print();

 private:
  Label label_of(const words::Place& place);
  void fit_text(Label& label, const words::Place& place);
  std::string fact(const model::Piece& piece, FactKind kind);
  std::string rule_text(const LabelRule& rule) const;
  Result<Done> add(const char* name, const Sheets& sheets);
  void add_object_sheets(Sheets& sheets) const;
  void add_tags(Sheets& sheets) const;
  void add_sections(Sheets& sheets);
  void add_large_print(Sheets& sheets) const;
  std::string csv() const;

  const PressJob& job_;
  Grammar grammar_;
  const LabelRule& rule_;
  std::vector<Label> labels_;
  Printed printed_;
};

std::string Labels::fact(const model::Piece& piece, FactKind kind) {
  if (!words::may_show(job_.audience, kind)) {
    return {};
  }
  std::string text = grammar_.text_of(piece, kind);
  if (!text.empty()) {
    printed_.facts.push_back({"labels", piece.number, kind, text});
  }
  return text;
}

Label Labels::label_of(const words::Place& place) {
  const model::Piece& piece = *place.piece;
  Label label;
  label.catalogue_number = piece.number;
  label.number = fact(piece, FactKind::number);
  label.title = fact(piece, FactKind::title);
  for (const FactKind kind : {FactKind::maker, FactKind::made, FactKind::materials}) {
    if (std::string text = fact(piece, kind); !text.empty()) {
      label.facts.push_back(std::move(text));
    }
  }
  label.credit = fact(piece, FactKind::lender);
  fit_text(label, place);
  return label;
}

// Words of the label's own are set whole or refused; otherwise the entry's first sentences, as
// many as there is room for.
void Labels::fit_text(Label& label, const words::Place& place) {
  label.text = words::with_curved_quotes(own_words(job_.show, place.piece->id));
  if (!label.text.empty()) {
    label.cut = words_to_cut(job_.fonts, rule_, label);
    return;
  }
  const std::string prose = without_marks(grammar_.text_of(*place.piece, FactKind::prose));
  for (int words = most_words; words > 0;) {
    label.text = first_sentences(prose, words);
    if (words_to_cut(job_.fonts, rule_, label) == 0) {
      return;
    }
    words = std::max(0, word_count(label.text) - 1);
  }
  label.text.clear();
  label.cut = words_to_cut(job_.fonts, rule_, label);
}

std::string Labels::rule_text(const LabelRule& rule) const {
  const double x = job_.fonts.x_height(draw::Face::sans) * mm_per_pt;
  return fmt::format(
      "reading distance {:.0f} mm   ·   x-height: text {:.1f} mm (1/192), credit {:.1f} mm "
      "(1/260)"
      "   ·   ink on stock {:.1f} : 1",
      rule.distance_mm, x * rule.text_pt, x * rule.credit_pt,
      draw::contrast(draw::ink, draw::label_stock));
}

Result<Done> Labels::add(const char* name, const Sheets& sheets) {
  if (sheets.count() == 0) {
    return Done{};
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files.push_back({name, std::move(*pdf)});
  return Done{};
}

void Labels::add_object_sheets(Sheets& sheets) const {
  std::vector<const Label*> fitting;
  for (const Label& label : labels_) {
    if (label.cut == 0) {
      fitting.push_back(&label);
    }
  }
  const auto a_sheet = static_cast<std::size_t>(rule_.across * rule_.down);
  for (std::size_t from = 0; from < fitting.size(); from += a_sheet) {
    const std::vector<const Label*> page(
        fitting.begin() + static_cast<std::ptrdiff_t>(from),
        fitting.begin() +
            static_cast<std::ptrdiff_t>(std::min(from + a_sheet, fitting.size())));
    sheets.add(rule_text(rule_),
               fmt::format("{}–{}", page.front()->number, page.back()->number),
               [this, page, body = sheets.body()](Canvas& canvas) {
                 show_labels(canvas, job_.fonts, rule_, page, body);
               });
  }
}

void Labels::add_tags(Sheets& sheets) const {
  std::vector<std::string> numbers;
  for (const Label& label : labels_) {
    numbers.push_back(label.number);
  }
  const auto a_sheet = static_cast<std::size_t>(tags_across * tags_down);
  for (std::size_t from = 0; from < numbers.size(); from += a_sheet) {
    const std::vector<std::string> page(numbers.begin() + static_cast<std::ptrdiff_t>(from),
                                        numbers.begin() + static_cast<std::ptrdiff_t>(std::min(
                                                              from + a_sheet, numbers.size())));
    sheets.add(fmt::format("18 × 13 mm, 19 pt   ·   copper on warm white, {:.1f} : 1",
                           draw::contrast(draw::copper, draw::label_stock)),
               fmt::format("Tags {}–{}", page.front(), page.back()),
               [this, page, body = sheets.body()](Canvas& canvas) {
                 show_tags(canvas, job_.fonts, page, body);
               });
  }
}

void Labels::add_sections(Sheets& sheets) {
  std::vector<const model::Section*> sections;
  for (const model::Section& section : job_.show.all<model::Section>()) {
    sections.push_back(&section);
  }
  std::sort(sections.begin(), sections.end(), [](const auto* a, const auto* b) {
    return std::pair(a->rank, a->id) < std::pair(b->rank, b->id);
  });
  for (const model::Section* section : sections) {
    Label label;
    label.title = words::with_curved_quotes(section->title);
    label.text = words::with_curved_quotes(without_marks(section->introduction));
    label.cut = words_to_cut(job_.fonts, section_rule(), label);
    if (word_count(label.text) < 20 || label.cut > 0) {
      printed_.findings.push_back(
          {Fault::refused,
           label.cut > 0 ? fmt::format("the section label is {} words too long", label.cut)
                         : "the section label has fewer than 20 words",
           "section " + section->key, "write 20 to 150 words as the section's introduction"});
    }
    if (label.cut == 0) {
      sheets.add(rule_text(section_rule()), section->title,
                 [this, label, body = sheets.body()](Canvas& canvas) {
                   show_labels(canvas, job_.fonts, section_rule(), {&label}, body);
                 });
    }
  }
}

void Labels::add_large_print(Sheets& sheets) const {
  for (const Label& label : labels_) {
    sheets.add("18 on 26 points   ·   one piece a page, in the order of the cases",
               label.number + " " + label.title,
               [this, &label, body = sheets.body()](Canvas& canvas) {
                 show_large_print(canvas, job_.fonts, label, body);
               });
  }
}

std::string Labels::csv() const {
  std::string text;
  append_csv_row(text, {"number", "catalogue_number", "words", "words_to_cut"});
  for (const Label& label : labels_) {
    append_csv_row(text, {label.number, label.catalogue_number, std::to_string(words_on(label)),
                          std::to_string(label.cut)});
  }
  return text;
}

Result<Printed> Labels::print() {
  for (const words::Place& place : grammar_.numbering().places()) {
    if (!place.pick->in_show) {
      continue;
    }
    labels_.push_back(label_of(place));
    if (const Label& label = labels_.back(); label.cut > 0) {
      printed_.findings.push_back(
          {Fault::refused,
           fmt::format("the label does not fit at {:.0f} mm: cut {} words", rule_.distance_mm,
                       label.cut),
           fmt::format("label {}, piece {}", label.number, label.catalogue_number),
           "shorten the note \"label\" of the piece; type never shrinks"});
    }
  }
  const std::string agrees =
      "Trim to the marks. Board 1.5 mm, matt. Text agrees with the "
      "catalogue of this version. No values, no owners who did not sign.";
  Sheets objects(job_, {"Object labels", agrees, rule_.paper});
  Sheets tags(job_, {"Number tags", agrees, a4});
  Sheets sections(job_, {"Section labels", agrees, section_rule().paper});
  Sheets large(job_, {"Labels in large print",
                      "To be lent at the desk. The same words as the "
                      "labels, set for the hand."});
  add_object_sheets(objects);
  add_tags(tags);
  add_sections(sections);
  add_large_print(large);
  if (labels_.empty()) {
    return Problem{Fault::refused, "no piece is picked for the show, so there are no labels",
                   "", "backmark pick SHOW NUMBER"};
  }
  for (const auto& [name, sheets] :
       {std::pair<const char*, const Sheets*>{"labels.pdf", &objects},
        {"number-tags.pdf", &tags},
        {"section-labels.pdf", &sections},
        {"large-print.pdf", &large}}) {
    if (auto added = add(name, *sheets); !added) {
      return added.problem();
    }
  }
  printed_.files.push_back({"labels.csv", csv()});
  return std::move(printed_);
}

}  // namespace

const std::vector<LabelRule>& label_rules() {
  static const std::vector<LabelRule> rules = [] {
    std::vector<LabelRule> list;
    for (const reference::LabelDistance& one : reference::label_distances()) {
      list.push_back({one.distance_mm,
                      one.text_pt,
                      one.title_pt,
                      one.number_pt,
                      one.credit_pt,
                      {one.label_width_mm, one.label_height_mm},
                      {one.paper_width_mm, one.paper_height_mm},
                      one.across,
                      one.down});
    }
    return list;
  }();
  return rules;
}

const LabelRule& object_rule(double distance_mm) {
  const auto& rules = label_rules();
  const auto last = rules.end() - 2;
  const auto at = std::find_if(rules.begin(), last, [distance_mm](const LabelRule& rule) {
    return rule.distance_mm >= distance_mm;
  });
  return *at;
}

const LabelRule& section_rule() {
  return label_rules().back();
}

std::string first_sentences(std::string_view text, int words) {
  std::string kept;
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t end = text.find_first_of(".!?\n", at);
    while (end != std::string_view::npos && text[end] != '\n' && end + 1 < text.size() &&
           text[end + 1] != ' ' && text[end + 1] != '\n') {
      end = text.find_first_of(".!?\n", end + 1);  // "2.5", a closing quote
    }
    const std::size_t stop = end == std::string_view::npos ? text.size() : end + 1;
    const std::string longer = kept + std::string(text.substr(at, stop - at));
    if (word_count(longer) > words) {
      break;
    }
    kept = longer;
    at = stop;
  }
  return std::string(trim(kept));
}

Result<Printed> print_labels(const PressJob& job) {
  return Labels(job).print();
}

}  // namespace backmark::press
