// The index. Its words come from the record and from the essays; its page numbers are those of
// the pass before, and only pages on which the word is really printed are named.
#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/list_flow.h"
#include "press/book/type.h"
#include "press/book_index.h"

namespace backmark::press::book {

namespace {

constexpr double hang = 4;

std::string text_of(const Page& page) {
  std::string text;
  for (const TextLine& line : page.lines) {
    if (line.role == Role::artifact) {
      continue;
    }
    for (const draw::GlyphRun& run : line.line.runs) {
      text += run.text;
    }
    if (ends_with(text, "\u00ad")) {
      text.resize(text.size() - 2);  // a word that the line divides
    } else {
      text += " ";
    }
  }
  return text;
}

// Pages of the pass under way that come before the index itself: their numbers are final when
// the layout settles, since nothing after them moves them.
std::vector<std::string> pages_before(const Layout& book) {
  std::vector<std::string> pages;
  for (const auto& page : book.pages()) {
    pages.push_back(text_of(*page));
  }
  return pages;
}

// Makers by every spelling, places, and what the entries are made of and bear.
std::vector<IndexMention> mentions(const Layout& book, const std::vector<std::string>& pages) {
  const Plan& plan = book.plan();
  std::vector<IndexMention> all;
  for (const EntryPart& part : plan.parts) {
    for (const Entry& entry : part.entries) {
      const int at = book.page_of(entry.name());
      const bool pictured = entry.front != nullptr || entry.back != nullptr;
      for (IndexMention term : index_terms(plan.show(), plan.job.beliefs, entry.piece())) {
        term.page = at;
        term.plate = pictured;
        const bool said =
            pictured || (at > 0 && static_cast<std::size_t>(at) <= pages.size() &&
                         contains(pages[static_cast<std::size_t>(at) - 1], term.head));
        if (at > 0 && said) {
          all.push_back(std::move(term));
        }
      }
    }
  }
  for (const model::Maker& maker : plan.show().all<model::Maker>()) {
    const std::string& head = maker.inverted.empty() ? maker.name : maker.inverted;
    for (std::size_t at = 0; at < pages.size(); ++at) {
      if (!maker.name.empty() && contains(pages[at], maker.name)) {
        all.push_back({head, "", static_cast<int>(at) + 1, false});
      }
    }
  }
  return all;
}

std::vector<IndexSee> sees(const Plan& plan) {
  std::vector<IndexSee> all;
  for (const model::Maker& maker : plan.show().all<model::Maker>()) {
    if (!maker.inverted.empty() && !maker.mark.empty() && maker.mark != maker.name) {
      all.push_back({maker.mark + " (mark)", maker.inverted});
    }
  }
  return all;
}

// Words of one head with its locators, as stretches.
class HeadWords {
 public:
  explicit HeadWords(const Grid& grid) : grid_(grid) {}

  std::vector<draw::Stretch> of(const IndexHead& head) {
    add(head.words, caption(grid_));
    locators(head.locators);
    for (std::size_t at = 0; at < head.subs.size(); ++at) {
      add((at == 0 && head.locators.empty() ? ", " : "; ") + head.subs[at].words,
          caption(grid_));
      locators(head.subs[at].locators);
    }
    if (!head.see.empty()) {
      add(", ", caption(grid_));
      add("see ", caption_italic(grid_));
      add(head.see, caption(grid_));
    }
    return std::move(words_);
  }

 private:
  void add(const std::string& text, const draw::Style& style) {
    words_.push_back({text, style, false});
  }
  void locators(const std::vector<IndexLocator>& all) {
    for (const IndexLocator& one : all) {
      add(", ", caption(grid_));
      const draw::Style plate = sans_strong(grid_, 0.77 * 9.2).with(draw::copper);
      add(locator_text(one), one.plate ? plate : caption(grid_));
    }
  }

  const Grid& grid_;
  std::vector<draw::Stretch> words_;
};

char32_t first_letter(const std::string& head) {
  for (const char32_t letter : to_code_points(lower_ascii(head))) {
    if ((letter >= U'a' && letter <= U'z') || letter >= 0xC0) {
      return letter;
    }
  }
  return U'0';
}

}  // namespace

void lay_index(Layout& book) {
  const std::vector<std::string> pages = pages_before(book);
  const std::vector<IndexHead> index = make_index(mentions(book, pages), sees(book.plan()));
  if (index.empty()) {
    return;
  }
  for (Problem& finding : not_on_pages(index, pages)) {
    book.find(std::move(finding));
  }
  for (Problem& finding : crowded(index)) {
    book.find(std::move(finding));
  }
  Page& page = open_back_matter(book, {.title = "Index", .place = "index"},
                                "Numbers are pages; those in bold are plates.");
  ListFlow flow(book, page, 3);
  char32_t letter = 0;
  for (const IndexHead& head : index) {
    if (letter != 0 && first_letter(head.words) != letter) {
      flow.space(book.grid().small);
    }
    letter = first_letter(head.words);
    flow.paragraph(HeadWords(book.grid()).of(head), hang, {}, head.words + " (cont.)");
  }
}

}  // namespace backmark::press::book
