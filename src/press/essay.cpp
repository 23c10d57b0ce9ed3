#include "press/essay.h"

#include <algorithm>
#include <cmark-gfm.h>
#include <map>
#include <memory>

#include "base/text.h"
#include "press/essay_marks.h"

namespace backmark::press {

namespace {

constexpr int deepest = 12;  // quotations in lists in quotations ...

struct DropNode {
  void operator()(cmark_node* node) const { cmark_node_free(node); }
};
using Tree = std::unique_ptr<cmark_node, DropNode>;

std::string literal(cmark_node* node) {
  const char* text = cmark_node_get_literal(node);
  return text == nullptr ? std::string() : std::string(text);
}

std::string address(cmark_node* node) {
  const char* text = cmark_node_get_url(node);
  return text == nullptr ? std::string() : std::string(text);
}

class Reader {
 public:
  Reader(const EssayWorld& world, const std::string& file)
      : desk_{world, file, {}, false, {}, {}}, figures_(world.figures) {}

  void read(cmark_node* document, std::string_view source, bool needs_title);
  Essay finish() {
    return {std::move(prose_), std::move(desk_.cited), std::move(desk_.findings)};
  }

 private:
  Words inlines(cmark_node* of, long line);
  void inline_nodes(cmark_node* parent, Voice voice, int depth);
  void inline_node(cmark_node* node, Voice voice, int depth);
  void flush();
  void pend(const std::string& text, Voice voice);
  void link(cmark_node* node, Voice voice, int depth);

  void blocks(cmark_node* parent, Block::Kind kind, int level, const std::string& label);
  void block(cmark_node* node, Block::Kind kind, int level, const std::string& label);
  void items(cmark_node* list, int level);
  void paragraph(cmark_node* node, Block::Kind kind, int level, const std::string& label);
  void heading(cmark_node* node);
  void notes(cmark_node* document);
  void take_opening();
  void figure(cmark_node* image, long line);
  void number_called_figures();

  EssayDesk desk_;
  int figures_;  // so far in the book
  Prose prose_;
  Words words_;          // of the block under way
  std::string pending_;  // words not yet read for marks
  Voice pending_voice_ = Voice::roman;
  long pending_line_ = 0;
  long line_ = 1;
  int depth_ = 0;
};

void Reader::flush() {
  if (!pending_.empty()) {
    add_marked(words_, pending_, pending_voice_, pending_line_, desk_);
    pending_.clear();
  }
}

void Reader::pend(const std::string& text, Voice voice) {
  if (!pending_.empty() && pending_voice_ != voice) {
    flush();
  }
  if (pending_.empty()) {
    pending_line_ = line_;
    pending_voice_ = voice;
  }
  pending_ += text;
}

void Reader::link(cmark_node* node, Voice voice, int depth) {
  const std::string to = address(node);
  if (!starts_with(to, "https://") && !starts_with(to, "http://") &&
      !starts_with(to, "mailto:")) {
    desk_.find(line_, fmt::format("the link to \"{}\" leads nowhere in a book", to),
               "write an address with https://, or [#ES 118] for a piece");
    inline_nodes(node, voice, depth);
    return;
  }
  flush();
  const std::size_t from = words_.size();
  inline_nodes(node, voice, depth);
  flush();
  for (std::size_t at = from; at < words_.size(); ++at) {
    if (words_[at].kind == Span::Kind::words) {
      words_[at].kind = Span::Kind::address;
      words_[at].key = to;
    }
  }
}

void Reader::inline_node(cmark_node* node, Voice voice, int depth) {
  switch (cmark_node_get_type(node)) {
    case CMARK_NODE_TEXT:
      pend(literal(node), voice);
      return;
    case CMARK_NODE_SOFTBREAK:
    case CMARK_NODE_LINEBREAK:
      pend("\n", voice);
      ++line_;
      return;
    case CMARK_NODE_EMPH:
      inline_nodes(node, voice == Voice::italic ? Voice::roman : Voice::italic, depth);
      return;
    case CMARK_NODE_STRONG:
      inline_nodes(node, Voice::strong, depth);
      return;
    case CMARK_NODE_CODE:
      flush();
      words_.push_back({Span::Kind::words, Voice::small_caps, literal(node), {}, -1});
      return;
    case CMARK_NODE_LINK:
      link(node, voice, depth);
      return;
    case CMARK_NODE_FOOTNOTE_REFERENCE: {
      flush();
      const auto number = to_whole(literal(node));
      words_.push_back(
          {Span::Kind::note, voice, {}, {}, number ? static_cast<int>(*number) - 1 : -1});
      return;
    }
    case CMARK_NODE_IMAGE:
      desk_.find(line_, "a picture within a line of text is not printed",
                 "put it into a paragraph of its own: it becomes a figure");
      return;
    default:
      desk_.find(line_, "HTML is not printed", "write it in Markdown, or take it away");
  }
}

void Reader::inline_nodes(cmark_node* parent, Voice voice, int depth) {
  if (depth > deepest) {
    desk_.find(line_, "emphasis within emphasis goes too deep", "use plain words");
    return;
  }
  for (cmark_node* node = cmark_node_first_child(parent); node != nullptr;
       node = cmark_node_next(node)) {
    inline_node(node, voice, depth + 1);
  }
}

Words Reader::inlines(cmark_node* of, long line) {
  words_.clear();
  line_ = line;
  inline_nodes(of, Voice::roman, 0);
  flush();
  return std::move(words_);
}

void Reader::paragraph(cmark_node* node,
                       Block::Kind kind,
                       int level,
                       const std::string& label) {
  const long line = cmark_node_get_start_line(node);
  cmark_node* only = cmark_node_first_child(node);
  if (only != nullptr && cmark_node_get_type(only) == CMARK_NODE_IMAGE &&
      cmark_node_next(only) == nullptr) {
    figure(only, line);
    return;
  }
  prose_.blocks.push_back(
      {kind, level, label, inlines(node, line), {}, 0, {}, desk_.where(line)});
}

void Reader::figure(cmark_node* image, long line) {
  Block figure{Block::Kind::figure, 0, {}, inlines(image, line), {}, 0, {}, desk_.where(line)};
  figure.pieces = figure_pieces(address(image), line, desk_);
  if (const char* credit = cmark_node_get_title(image)) {
    figure.credit = trim(credit);
  }
  if (!figure.pieces.empty()) {
    figure.number = ++figures_;
    prose_.blocks.push_back(std::move(figure));
  }
}

// Calls of figures get the number of the first figure that shows what they name.
void Reader::number_called_figures() {
  std::map<std::string, int> shown;
  for (const Block& block : prose_.blocks) {
    for (const FigurePiece& piece : block.pieces) {
      shown.emplace(piece.piece.empty() ? piece.file : piece.piece, block.number);
    }
  }
  const auto number = [&shown](Words& words) {
    for (Span& span : words) {
      if (span.kind == Span::Kind::figure) {
        const auto at = shown.find(span.key);
        span.text +=
            at == shown.end() ? ". [" + span.key + "]" : fmt::format(".\u00A0{}", at->second);
        span.key = at == shown.end() ? "" : fmt::format("figure {}", at->second);
      }
    }
  };
  for (Block& block : prose_.blocks) {
    number(block.words);
  }
  for (Words& note : prose_.notes) {
    number(note);
  }
  for (const auto& [line, name] : desk_.figures_called) {
    if (shown.count(name) == 0) {
      desk_.find(line, fmt::format("no figure of this chapter shows \"{}\"", name),
                 "name what a figure of the chapter shows, or add the figure");
    }
  }
}

void Reader::heading(cmark_node* node) {
  const long line = cmark_node_get_start_line(node);
  const int level = cmark_node_get_heading_level(node);
  Words words = inlines(node, line);
  if (level == 1 && prose_.title.empty() && prose_.blocks.empty()) {
    prose_.title = plain_text(words);
    return;
  }
  if (level == 1) {
    desk_.find(line, "a second title", "a chapter has one; write ## for a head within it");
  }
  prose_.blocks.push_back({Block::Kind::heading,
                           std::max(level, 2),
                           {},
                           std::move(words),
                           {},
                           0,
                           {},
                           desk_.where(line)});
}

void Reader::items(cmark_node* list, int level) {
  const bool counted = cmark_node_get_list_type(list) == CMARK_ORDERED_LIST;
  int number = cmark_node_get_list_start(list);
  for (cmark_node* item = cmark_node_first_child(list); item != nullptr;
       item = cmark_node_next(item)) {
    blocks(item, Block::Kind::item, level, counted ? fmt::format("{}.", number++) : "•");
  }
}

void Reader::block(cmark_node* node, Block::Kind kind, int level, const std::string& label) {
  const long line = cmark_node_get_start_line(node);
  switch (cmark_node_get_type(node)) {
    case CMARK_NODE_PARAGRAPH:
      paragraph(node, kind, level, label);
      return;
    case CMARK_NODE_HEADING:
      heading(node);
      return;
    case CMARK_NODE_BLOCK_QUOTE:
      blocks(node, Block::Kind::quotation, level, {});
      return;
    case CMARK_NODE_LIST:
      items(node, kind == Block::Kind::item ? level + 1 : 1);
      return;
    case CMARK_NODE_FOOTNOTE_DEFINITION:
      return;  // notes() reads them
    case CMARK_NODE_CODE_BLOCK:
      desk_.find(line, "indented or fenced code is not printed",
                 "begin paragraphs at the left edge");
      return;
    case CMARK_NODE_THEMATIC_BREAK:
      desk_.find(line, "a rule is not printed", "use a head, or nothing");
      return;
    default:
      desk_.find(line, "HTML is not printed", "write it in Markdown, or take it away");
  }
}

void Reader::blocks(cmark_node* parent, Block::Kind kind, int level, const std::string& label) {
  if (++depth_ > deepest) {
    desk_.find(cmark_node_get_start_line(parent), "lists and quotations go too deep",
               "use fewer levels");
  } else {
    for (cmark_node* node = cmark_node_first_child(parent); node != nullptr;
         node = cmark_node_next(node)) {
      block(node, kind, level, label);
    }
  }
  --depth_;
}

// In the order of their marks, which is the order in which the parser leaves them.
void Reader::notes(cmark_node* document) {
  for (cmark_node* node = cmark_node_first_child(document); node != nullptr;
       node = cmark_node_next(node)) {
    if (cmark_node_get_type(node) != CMARK_NODE_FOOTNOTE_DEFINITION) {
      continue;
    }
    Words all;
    for (cmark_node* part = cmark_node_first_child(node); part != nullptr;
         part = cmark_node_next(part)) {
      Words words = inlines(part, cmark_node_get_start_line(part));
      if (!all.empty()) {
        all.push_back({Span::Kind::words, Voice::roman, " ", {}, -1});
      }
      all.insert(all.end(), words.begin(), words.end());
    }
    prose_.notes.push_back(std::move(all));
  }
}

// The line of italics and the quotation that follow a title are author and epigraph.
void Reader::take_opening() {
  auto& blocks = prose_.blocks;
  const auto is_author = [](const Block& block) {
    return block.kind == Block::Kind::paragraph && block.words.size() == 1 &&
           block.words[0].voice == Voice::italic;
  };
  if (!blocks.empty() && is_author(blocks.front())) {
    prose_.author = blocks.front().words[0].text;
    blocks.erase(blocks.begin());
  }
  if (!blocks.empty() && blocks.front().kind == Block::Kind::quotation) {
    prose_.epigraph = std::move(blocks.front().words);
    blocks.erase(blocks.begin());
  }
}

void Reader::read(cmark_node* document, std::string_view source, bool needs_title) {
  prose_.file = desk_.file;
  blocks(document, Block::Kind::paragraph, 0, {});
  desk_.in_note = true;
  notes(document);
  find_notes_without_mark(source, desk_);
  number_called_figures();
  if (needs_title) {
    take_opening();
    if (prose_.title.empty()) {
      desk_.find(1, "the text has no title", "begin it with a line \"# Title\"");
    }
  }
}

Result<Essay> read_text(std::string_view text,
                        const std::string& file,
                        const EssayWorld& world,
                        bool needs_title) {
  if (!is_utf8(text) || contains(text, std::string_view("\0", 1))) {
    return Problem{Fault::bad_input, "this is no UTF-8 text", file, "save it as UTF-8"};
  }
  constexpr int options = CMARK_OPT_FOOTNOTES | CMARK_OPT_SMART;
  const Tree tree(cmark_parse_document(text.data(), text.size(), options));
  cmark_consolidate_text_nodes(tree.get());
  Reader reader(world, file);
  reader.read(tree.get(), text, needs_title);
  return reader.finish();
}

}  // namespace

Result<Essay> read_essay(std::string_view text,
                         const std::string& file,
                         const EssayWorld& world) {
  return read_text(text, file, world, true);
}

Result<Essay> read_passage(std::string_view text,
                           const std::string& where,
                           const EssayWorld& world) {
  return read_text(text, where, world, false);
}

}  // namespace backmark::press
