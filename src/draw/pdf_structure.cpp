// The structure tree. In the content that Cairo writes every stretch begins with a line
//   /Span << /MCID n >> BDC
// and ends with a line EMC, n counting from 0 on each page; within it Cairo may mark glyphs
// with the words they stand for (ActualText) by other BDC and EMC lines.
#include <algorithm>
#include <string_view>

#include "base/result.h"
#include "base/text.h"
#include "draw/pdf_inside.h"

namespace backmark::draw {

namespace {

constexpr std::string_view stretch_begins = "/Span << /MCID ";
constexpr std::string_view artifact_begins = "/Artifact BMC\n";
constexpr std::string_view ends = "EMC\n";

std::string type_of(const Element& element) {
  switch (element.role) {
    case Role::part:
      return "/Part";
    case Role::section:
      return "/Sect";
    case Role::heading:
      return fmt::format("/H{}", element.level);
    case Role::paragraph:
      return "/P";
    case Role::quotation:
      return "/BlockQuote";
    case Role::note:
      return "/Note";
    case Role::figure:
      return "/Figure";
    case Role::caption:
      return "/Caption";
    case Role::list:
      return "/L";
    case Role::item:
      return "/LI";
    case Role::contents:
      return "/TOC";
    case Role::contents_line:
      return "/TOCI";
    case Role::index:
      return "/Index";
    case Role::table:
      return "/Table";
    case Role::row:
      return "/TR";
    case Role::cell:
      return "/TD";
    case Role::head_cell:
      return "/TH";
  }
  return "/P";
}

// Copies a page's content line by line; what lies outside the stretches is put into artifacts.
class StretchWriter {
 public:
  explicit StretchWriter(const std::vector<std::string>& properties)
      : properties_(properties) {}

  void take(std::string_view line) {
    const bool continues = in_string_;
    in_string_ = line.size() >= 2 && line[line.size() - 2] == '\\';
    if (!continues && depth_ == 0 && line.substr(0, stretch_begins.size()) == stretch_begins) {
      begin_stretch();
      return;
    }
    if (depth_ == 0 && !in_artifact_) {
      out_ += artifact_begins;
      in_artifact_ = true;
    }
    out_ += line;
    if (!continues) {
      count(line);
    }
  }

  std::string finish() {
    end_artifact();
    if (depth_ != 0 || next_ != properties_.size()) {
      throw BrokenPromise("stretches of content that were begun are not those that came out");
    }
    return std::move(out_);
  }

 private:
  void begin_stretch() {
    end_artifact();
    if (next_ == properties_.size()) {
      throw BrokenPromise("a stretch of content that nobody began");
    }
    out_ += fmt::format("/Span <</MCID {}{}>> BDC\n", next_, properties_[next_]);
    ++next_;
    depth_ = 1;
  }
  void end_artifact() {
    if (in_artifact_) {
      out_ += ends;
      in_artifact_ = false;
    }
  }
  // Marked words within an artifact are balanced in themselves.
  void count(std::string_view line) {
    if (in_artifact_) {
      return;
    }
    if (line == ends) {
      --depth_;
    } else if (line.size() > 4 && line.substr(line.size() - 5) == " BDC\n") {
      ++depth_;
    }
  }

  const std::vector<std::string>& properties_;
  std::string out_;
  std::size_t next_ = 0;
  int depth_ = 0;
  bool in_artifact_ = false;
  bool in_string_ = false;
};

QPDFObjectHandle name(const std::string& text) {
  return QPDFObjectHandle::newName(text);
}

class TreeWriter {
 public:
  TreeWriter(QPDF& pdf,
             const std::vector<QPDFPageObjectHelper>& pages,
             const Structure& structure)
      : pdf_(pdf), pages_(pages), structure_(structure), parents_(pages.size()) {}

  void write() {
    QPDFObjectHandle root = pdf_.makeIndirectObject(QPDFObjectHandle::newDictionary());
    root.replaceKey("/Type", name("/StructTreeRoot"));
    root.replaceKey("/K", element(0, root));
    root.replaceKey("/ParentTree", parent_tree());
    root.replaceKey("/ParentTreeNextKey",
                    QPDFObjectHandle::newInteger(static_cast<long long>(pages_.size())));
    pdf_.getRoot().replaceKey("/StructTreeRoot", root);
    QPDFObjectHandle marked = QPDFObjectHandle::newDictionary();
    marked.replaceKey("/Marked", QPDFObjectHandle::newBool(true));
    pdf_.getRoot().replaceKey("/MarkInfo", marked);
    for (std::size_t at = 0; at < pages_.size(); ++at) {
      rewrite_page(at);
    }
  }

 private:
  QPDFObjectHandle page(std::size_t at) const {
    return QPDFPageObjectHelper(pages_[at]).getObjectHandle();
  }

  // Depth is that of a book's parts, no more than a handful.
  QPDFObjectHandle element(ElementNumber number, const QPDFObjectHandle& parent) {
    const auto at = static_cast<std::size_t>(number);
    const Element& what = structure_.elements[at];
    QPDFObjectHandle node = pdf_.makeIndirectObject(QPDFObjectHandle::newDictionary());
    node.replaceKey("/Type", name("/StructElem"));
    node.replaceKey("/S", name(number == 0 ? "/Document" : type_of(what)));
    node.replaceKey("/P", parent);
    if (!what.alt.empty()) {
      node.replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(what.alt));
    }
    if (!what.language.empty()) {
      node.replaceKey("/Lang", QPDFObjectHandle::newUnicodeString(what.language));
    }
    QPDFObjectHandle kids = QPDFObjectHandle::newArray();
    for (const Child& child : structure_.children[at]) {
      kids.appendItem(child.element != 0 ? element(child.element, node)
                                         : stretch(structure_.stretches[child.stretch], node));
    }
    node.replaceKey("/K", kids);
    return node;
  }

  QPDFObjectHandle stretch(const ContentStretch& of, const QPDFObjectHandle& node) {
    const auto at = static_cast<std::size_t>(of.page);
    auto& parents = parents_.at(at);
    parents.resize(std::max(parents.size(), static_cast<std::size_t>(of.place) + 1));
    parents[static_cast<std::size_t>(of.place)] = node;
    QPDFObjectHandle reference = QPDFObjectHandle::newDictionary();
    reference.replaceKey("/Type", name("/MCR"));
    reference.replaceKey("/Pg", page(at));
    reference.replaceKey("/MCID", QPDFObjectHandle::newInteger(of.place));
    return reference;
  }

  QPDFObjectHandle parent_tree() {
    QPDFObjectHandle numbers = QPDFObjectHandle::newArray();
    for (std::size_t at = 0; at < parents_.size(); ++at) {
      numbers.appendItem(QPDFObjectHandle::newInteger(static_cast<long long>(at)));
      numbers.appendItem(pdf_.makeIndirectObject(QPDFObjectHandle::newArray(parents_[at])));
    }
    QPDFObjectHandle tree = QPDFObjectHandle::newDictionary();
    tree.replaceKey("/Nums", numbers);
    return pdf_.makeIndirectObject(tree);
  }

  void rewrite_page(std::size_t at) {
    QPDFObjectHandle on = page(at);
    on.replaceKey("/StructParents", QPDFObjectHandle::newInteger(static_cast<long long>(at)));
    on.replaceKey("/Tabs", name("/S"));
    std::vector<std::string> properties(parents_[at].size());
    for (const ContentStretch& of : structure_.stretches) {
      if (static_cast<std::size_t>(of.page) == at && !of.how.language.empty()) {
        properties[static_cast<std::size_t>(of.place)] =
            " /Lang " + QPDFObjectHandle::newUnicodeString(of.how.language).unparse();
      }
    }
    QPDFObjectHandle content = on.getKey("/Contents");
    const auto bytes = content.getStreamData(qpdf_dl_generalized);
    content.replaceStreamData(
        with_stretches({reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()},
                       properties),
        QPDFObjectHandle::newNull(), QPDFObjectHandle::newNull());
  }

  QPDF& pdf_;
  const std::vector<QPDFPageObjectHelper>& pages_;
  const Structure& structure_;
  std::vector<std::vector<QPDFObjectHandle>> parents_;  // by page and place
};

}  // namespace

std::string with_stretches(const std::string& content,
                           const std::vector<std::string>& properties) {
  StretchWriter writer(properties);
  const std::string_view all = content;
  for (std::size_t from = 0; from < all.size();) {
    const std::size_t end = std::min(all.find('\n', from), all.size() - 1) + 1;
    writer.take(all.substr(from, end - from));
    from = end;
  }
  return writer.finish();
}

void write_structure(QPDF& pdf,
                     const std::vector<QPDFPageObjectHelper>& pages,
                     const Structure& structure) {
  if (structure.elements.size() > 1) {
    TreeWriter(pdf, pages, structure).write();
  }
}

}  // namespace backmark::draw
