// Laying out the book. A kind of page is a function that is handed the layout and adds its
// pages:
//
//   void lay_colophon(Layout& book) {
//     book.open({.title = "Colophon", .place = "colophon"});
//     Page& page = book.page();
//     book.text(page, {x, y}, {{"...", caption(book.grid())}});
//   }
//
// The list of kinds is press/book/kinds.cpp. The whole list is run again until no page number
// moves, so a kind may ask page_of() for any place of the book, before or after it; in the
// first pass it answers 0. Findings and facts of all passes but the last are forgotten.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "draw/quality.h"
#include "press/book/page.h"
#include "press/book/plan.h"
#include "press/book/set_once.h"

namespace backmark::press::book {

struct EntrySize {
  double head = 0;  // mm
  int prose = 0;    // lines of text
};

// The same in half the width of the type area, in grid lines.
struct CellSize {
  int names = 0;  // title, maker, place and year
  int prose = 0;
  int facts = 0;
  int facts_shared = 0;  // where some share a paragraph
  int why = 0;           // lines of the reasons, in caption type
};

enum class Starts { next, recto, verso };

// A part of the book with a line in the contents and a running foot.
struct Chapter {
  std::string title;
  std::string place;      // a name for links and page_of
  std::string part = {};  // word over it in the contents: "Essays"; may be empty
  std::string note = {};  // after the title in the contents: author, entry range
  Starts starts = Starts::next;
  bool listed = true;     // in the contents and the outline
  std::string foot = {};  // running foot; empty: the title
  int page = 0;           // set by the layout
};

class Layout {
 public:
  explicit Layout(const Plan& plan) : plan_(plan) {}

  const Plan& plan() const { return plan_; }
  const Grid& grid() const { return plan_.grid; }

  // --- pages
  // Ends what was open, and tells if too many of its lines end in hyphens; inserts a blank page
  // if the chapter must start on the other side.
  void open(Chapter chapter);
  // A new page. The reference holds as long as the layout.
  Page& page();
  // The number the next page would have.
  int next_number() const { return static_cast<int>(pages_.size()) + 1; }
  Side next_side() const { return side_of(next_number()); }

  // --- places, known from the pass before
  int page_of(const std::string& place) const;
  // Chapters of the pass before.
  const std::vector<Chapter>& chapters() const { return known_chapters_; }
  // Where facts about a piece stand, by its catalogue number: the pages that speak of it.
  void place(Page& page, const std::string& name, draw::Point at);

  // --- setting
  // Returns the width.
  double text(Page& page,
              draw::Point baseline,
              const draw::RichText& words,
              draw::Align align = draw::Align::left,
              Role role = Role::caption);
  // A ragged paragraph; returns the y of the baseline after its last line.
  double ragged(Page& page,
                draw::Point baseline,
                const draw::RichText& words,
                double width,
                double leading,
                Role role = Role::caption);
  // Paragraphs as draw::set_ragged and draw::set_justified set them, once for all passes.
  const draw::Paragraph& set_ragged(const std::vector<draw::Stretch>& text,
                                    const draw::Measures& measures) {
    return set_.ragged(plan_.fonts(), text, measures);
  }
  const draw::Paragraph& set_justified(const std::vector<draw::Stretch>& text,
                                       const draw::Measures& measures) {
    return set_.justified(plan_.fonts(), plan_.hyphens, text, measures);
  }
  // A number that lines of one paragraph share, for readers of structure.
  int new_paragraph() { return ++paragraphs_; }
  void link(Page& page, const draw::Box& box, const std::string& place);

  // --- entries
  // Sizes of entries that were measured in any pass.
  std::map<const Entry*, EntrySize>& entry_sizes() { return entry_sizes_; }
  std::map<const Entry*, CellSize>& cell_sizes() { return cell_sizes_; }
  // Pieces that get a spread to fill the last signature.
  std::set<const Entry*>& raised() { return raised_; }

  // --- what is reported
  // How well the paragraphs of this pass are set.
  draw::Quality& quality() { return quality_; }
  void fact(const model::Piece& piece, words::FactKind kind, const std::string& text);
  void find(Problem finding) { findings_.push_back(std::move(finding)); }

  // --- for whoever runs the passes
  void begin_pass();
  // Whether all places and pages are where the pass before left them.
  bool settled() const;
  const std::vector<std::unique_ptr<Page>>& pages() const { return pages_; }
  std::vector<std::unique_ptr<Page>>& pages() { return pages_; }
  const Problems& findings() const { return findings_; }
  const std::vector<PrintedFact>& facts() const { return facts_; }

 private:
  void judge_chapter();

  const Plan& plan_;
  SetOnce set_;
  std::vector<std::unique_ptr<Page>> pages_;
  std::vector<Chapter> chapters_;
  std::vector<Chapter> known_chapters_;
  std::map<std::string, int> places_;
  std::map<std::string, int> known_places_;
  Problems findings_;
  std::vector<PrintedFact> facts_;
  draw::Quality quality_;
  std::map<const Entry*, EntrySize> entry_sizes_;
  std::map<const Entry*, CellSize> cell_sizes_;
  std::set<const Entry*> raised_;
  int paragraphs_ = 0;
  int hyphen_pairs_ = 0;  // in the chapters before
};

}  // namespace backmark::press::book
