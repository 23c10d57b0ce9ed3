#include "press/book/layout.h"

#include "base/text.h"

namespace backmark::press::book {

namespace {

constexpr int most_hyphen_pairs = 1;  // lines of a chapter that follow each other

}  // namespace

void Layout::begin_pass() {
  known_places_ = std::move(places_);
  known_chapters_ = std::move(chapters_);
  places_.clear();
  chapters_.clear();
  pages_.clear();
  findings_.clear();
  facts_.clear();
  quality_ = {};
  hyphen_pairs_ = 0;
}

void Layout::judge_chapter() {
  const int pairs = quality_.hyphens_in_a_row - hyphen_pairs_;
  if (pairs > most_hyphen_pairs) {
    find({Fault::conflict,
          fmt::format("{} times a line and the next both end in a hyphen", pairs),
          chapters_.back().title, "reword what stands there"});
  }
  hyphen_pairs_ = quality_.hyphens_in_a_row;
}

bool Layout::settled() const {
  if (places_ != known_places_ || chapters_.size() != known_chapters_.size()) {
    return false;
  }
  for (std::size_t at = 0; at < chapters_.size(); ++at) {
    if (chapters_[at].page != known_chapters_[at].page ||
        chapters_[at].note != known_chapters_[at].note) {
      return false;
    }
  }
  return true;
}

void Layout::open(Chapter chapter) {
  const bool wrong_side = (chapter.starts == Starts::recto && next_side() == Side::verso) ||
                          (chapter.starts == Starts::verso && next_side() == Side::recto);
  if (wrong_side) {
    page().folio = false;
  }
  judge_chapter();
  if (chapter.foot.empty()) {
    chapter.foot = chapter.title;
  }
  chapter.page = next_number();
  places_.emplace(chapter.place, chapter.page);
  chapters_.push_back(std::move(chapter));
}

Page& Layout::page() {
  auto made = std::make_unique<Page>();
  made->number = next_number();
  made->side = side_of(made->number);
  if (!chapters_.empty()) {
    const Chapter& now = chapters_.back();
    made->foot = now.foot;
    if (now.page == made->number) {
      made->outline = now.listed ? now.title : "";
      made->outline_level = now.part.empty() ? 0 : 1;
      made->places.push_back({now.place, {0, 0}});
    }
  }
  pages_.push_back(std::move(made));
  return *pages_.back();
}

int Layout::page_of(const std::string& place) const {
  const auto at = known_places_.find(place);
  return at == known_places_.end() ? 0 : at->second;
}

void Layout::place(Page& page, const std::string& name, draw::Point at) {
  if (places_.emplace(name, page.number).second) {
    page.places.push_back({name, at});
  }
}

double Layout::text(Page& page,
                    draw::Point baseline,
                    const draw::RichText& words,
                    draw::Align align,
                    Role role) {
  draw::Line line = plan_.fonts().shape(words);
  if (align != draw::Align::left) {
    baseline.x -= align == draw::Align::right ? line.width : line.width / 2;
  }
  const double width = line.width;
  page.lines.push_back({baseline, std::move(line), role});
  return width;
}

double Layout::ragged(Page& page,
                      draw::Point baseline,
                      const draw::RichText& words,
                      double width,
                      double leading,
                      Role role) {
  std::vector<draw::Stretch> text;
  for (const draw::Run& run : words) {
    text.push_back({run.text, run.style});
  }
  const int paragraph = new_paragraph();
  const draw::Paragraph& set = set_ragged(text, {width, 0});
  quality_.add_ragged(set);
  for (const draw::ParagraphLine& line : set) {
    page.lines.push_back({baseline, line.line, role, paragraph});
    baseline.y += leading;
  }
  return baseline.y;
}

void Layout::link(Page& page, const draw::Box& box, const std::string& place) {
  page.links.push_back({box, place, {}});
}

void Layout::fact(const model::Piece& piece, words::FactKind kind, const std::string& text) {
  facts_.push_back({"book", piece.number, kind, text});
}

}  // namespace backmark::press::book
