// Bibliography, glossary and concordance.
#include <algorithm>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/list_flow.h"
#include "press/book/type.h"
#include "words/citation.h"

namespace backmark::press::book {

namespace {

constexpr double hang = 5;

draw::Style citation_style(const Grid& grid, words::CitationVoice voice) {
  if (voice == words::CitationVoice::small_caps) {
    draw::Style style = caption(grid);
    style.small_caps = true;
    style.tracking = 20;
    return style;
  }
  return voice == words::CitationVoice::italic ? caption_italic(grid) : caption(grid);
}

// In small caps capitals stay capitals: only the small letters change their shape.
std::vector<draw::Stretch> entry_words(const Grid& grid, const model::Reference& reference) {
  std::vector<draw::Stretch> all;
  for (const words::CitationRun& run : words::list_entry(reference)) {
    all.push_back({run.text, citation_style(grid, run.voice), false});
  }
  return all;
}

struct ConcordanceRow {
  std::string lender;
  std::string catalogue;
  std::string number;
  std::string place;  // in a case: "Case 3"
  std::string name;   // of its place in the book
};

// A lender who signed to be named is still a code here: codes never stand beside names.
std::vector<ConcordanceRow> concordance(const Plan& plan) {
  const model::Show& show = plan.show();
  std::map<std::int32_t, std::string> lenders;
  for (const model::Loan& loan : show.all<model::Loan>()) {
    if (const model::Lender* lender = show.find(loan.lender)) {
      lenders.emplace(loan.piece.value, lender->code);
    }
  }
  std::map<std::int32_t, std::string> cases;
  for (const model::Placement& placement : show.all<model::Placement>()) {
    if (const model::Case* in = show.find(placement.in)) {
      cases.emplace(placement.piece.value, in->key);
    }
  }
  std::vector<ConcordanceRow> rows;
  for (const EntryPart& part : plan.parts) {
    for (const Entry& entry : part.entries) {
      const std::int32_t id = entry.piece().id.value;
      rows.push_back({lenders[id], entry.piece().number, std::to_string(entry.place->number),
                      cases[id], entry.name()});
    }
  }
  return rows;
}

// "Lender 9" before "Lender 14", "ES 9" before "ES 118".
std::pair<std::string, long> natural(const std::string& text) {
  const auto digit = text.find_last_not_of("0123456789");
  const std::size_t from = digit == std::string::npos ? 0 : digit + 1;
  const auto number = to_whole(text.substr(from));
  return {text.substr(0, from), number.value_or(0)};
}

constexpr int rows_between_rules = 5;

// One set of columns of the concordance.
class ConcordancePages {
 public:
  explicit ConcordancePages(Layout& book) : book_(book), grid_(book.grid()) {}

  void set(const std::vector<ConcordanceRow>& rows) {
    for (std::size_t at = 0; at < rows.size(); ++at) {
      if (page_ == nullptr || y_ > grid_.line(grid_.lines)) {
        next_set();
      }
      row(rows[at]);
    }
  }

 private:
  void next_set() {
    if (page_ == nullptr) {
      page_ = &open_back_matter(book_, {.title = "Concordance", .place = "concordance"},
                                "Lenders who are not named keep a code. Numbers are those of "
                                "the show; inventory numbers and pages stand beside them.");
      top_ = grid_.line(back_matter_first);
    } else if (++set_ == 2) {
      set_ = 0;
      page_ = &book_.page();
      top_ = grid_.line(2);
    }
    heads();
    y_ = top_;
    in_set_ = 0;
  }
  double x(double share) const {
    return grid_.column_left(page_->side, 1 + 3 * set_) + share * grid_.columns(3);
  }
  void heads() {
    const draw::Style quiet = caption_italic(grid_).with(draw::grey);
    const double y = top_ - 1.4 * grid_.small;
    book_.text(*page_, {x(0), y}, {{"lender", quiet}});
    book_.text(*page_, {x(0.30), y}, {{"inventory", quiet}});
    book_.text(*page_, {x(0.64), y}, {{"no.", quiet}}, draw::Align::right);
    book_.text(*page_, {x(0.70), y}, {{"case", quiet}});
    book_.text(*page_, {x(1), y}, {{"page", quiet}}, draw::Align::right);
  }
  void row(const ConcordanceRow& row) {
    if (in_set_ > 0 && in_set_ % rows_between_rules == 0) {
      const double y = y_ - 0.72 * grid_.small;
      page_->rules.push_back({{x(0), y}, {x(1), y}, 0.25, draw::rule_grey});
    }
    const draw::Style style = figures(grid_);
    book_.text(*page_, {x(0), y_}, {{row.lender, style}}, draw::Align::left, Role::table);
    book_.text(*page_, {x(0.30), y_}, {{row.catalogue, style}}, draw::Align::left, Role::table);
    book_.text(*page_, {x(0.64), y_}, {{row.number, style.with(draw::copper)}},
               draw::Align::right, Role::table);
    book_.text(*page_, {x(0.70), y_}, {{row.place, style}}, draw::Align::left, Role::table);
    if (const int at = book_.page_of(row.name); at > 0) {
      const double width = book_.text(*page_, {x(1), y_}, {{std::to_string(at), style}},
                                      draw::Align::right, Role::table);
      book_.link(*page_, {x(1) - width, y_ - 0.75 * grid_.small, width, grid_.small}, row.name);
    }
    y_ += grid_.small;
    ++in_set_;
  }

  Layout& book_;
  const Grid& grid_;
  Page* page_ = nullptr;
  int set_ = 0;
  int in_set_ = 0;
  double top_ = 0;
  double y_ = 0;
};

}  // namespace

void lay_glossary(Layout& book) {
  const Prose& glossary = book.plan().glossary;
  if (glossary.blocks.empty()) {
    return;
  }
  Page& page = open_back_matter(book, {.title = "Glossary", .place = "glossary"}, "");
  ListFlow flow(book, page, 2);
  const auto page_of = [&book](const std::string& name) { return book.page_of(name); };
  for (const Block& block : glossary.blocks) {
    Words words = block.words;
    for (Span& span : words) {  // terms are in italics here, whatever their author used
      span.voice = span.voice == Voice::strong ? Voice::italic : span.voice;
    }
    std::vector<draw::Stretch> text = stretches(words, caption(book.grid()), page_of);
    for (draw::Stretch& stretch : text) {
      stretch.tag = -1;
    }
    flow.paragraph(text, 4);
    flow.space(book.grid().small / 3);
  }
}

void lay_bibliography(Layout& book) {
  if (book.plan().cited.empty()) {
    return;
  }
  Page& page =
      open_back_matter(book, {.title = "Works cited", .place = "bibliography"},
                       "Papers that were never published are named with their kind and day; "
                       "they are kept where their owners wish.");
  ListFlow flow(book, page, 2);
  for (const model::Reference& reference : book.plan().cited) {
    flow.paragraph(entry_words(book.grid(), reference), hang);
    flow.space(book.grid().small / 3);
  }
}

void lay_concordance(Layout& book) {
  std::vector<ConcordanceRow> rows = concordance(book.plan());
  std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
    return std::pair(natural(a.lender), natural(a.number)) <
           std::pair(natural(b.lender), natural(b.number));
  });
  ConcordancePages(book).set(rows);
}

}  // namespace backmark::press::book
