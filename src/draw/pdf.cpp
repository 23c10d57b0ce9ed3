#include "draw/pdf.h"

#include <map>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "base/markup.h"
#include "base/text.h"
#include "draw/pdf_inside.h"

namespace backmark::draw {
namespace {

constexpr double pt_per_mm = 72.0 / 25.4;

QPDFObjectHandle real(double value) {
  return QPDFObjectHandle::newReal(value, 3);
}

QPDFObjectHandle text_of(const std::string& text) {
  return QPDFObjectHandle::newUnicodeString(text);
}

// Places on the pages of one document.
class Finisher {
 public:
  Finisher(QPDF& pdf, Size trim, double bleed)
      : pdf_(pdf),
        trim_(trim),
        bleed_(bleed),
        pages_(QPDFPageDocumentHelper(pdf).getAllPages()) {}

  Result<Done> add_marks(const std::vector<Mark>& marks);
  void add_boxes();
  void add_info(const PdfInfo& info);
  void add_structure(const Structure& structure) { write_structure(pdf_, pages_, structure); }

 private:
  double x_pt(double x_mm) const { return (x_mm + bleed_) * pt_per_mm; }
  double y_pt(double y_mm) const { return (trim_.height + bleed_ - y_mm) * pt_per_mm; }
  QPDFObjectHandle box_of(const Box& box) const {
    return QPDFObjectHandle::newArray({real(x_pt(box.x)), real(y_pt(box.bottom())),
                                       real(x_pt(box.right())), real(y_pt(box.y))});
  }
  QPDFObjectHandle page(int index) const {
    return pages_.at(static_cast<std::size_t>(index)).getObjectHandle();
  }
  QPDFObjectHandle target(const Mark& mark) const {
    return QPDFObjectHandle::newArray({page(mark.page), QPDFObjectHandle::newName("/XYZ"),
                                       real(x_pt(mark.box.x)), real(y_pt(mark.box.y)),
                                       QPDFObjectHandle::newNull()});
  }
  void annotate(const Mark& mark, const std::string& key, const QPDFObjectHandle& value);
  void add_outline(const std::vector<Mark>& marks);

  QPDF& pdf_;
  Size trim_;
  double bleed_;
  std::vector<QPDFPageObjectHelper> pages_;
};

void Finisher::annotate(const Mark& mark,
                        const std::string& key,
                        const QPDFObjectHandle& value) {
  QPDFObjectHandle annotation = QPDFObjectHandle::newDictionary();
  annotation.replaceKey("/Type", QPDFObjectHandle::newName("/Annot"));
  annotation.replaceKey("/Subtype", QPDFObjectHandle::newName("/Link"));
  annotation.replaceKey("/Rect", box_of(mark.box));
  annotation.replaceKey("/Border", QPDFObjectHandle::newArray({real(0), real(0), real(0)}));
  annotation.replaceKey(key, value);
  QPDFObjectHandle on = page(mark.page);
  if (!on.hasKey("/Annots")) {
    on.replaceKey("/Annots", QPDFObjectHandle::newArray());
  }
  on.getKey("/Annots").appendItem(pdf_.makeIndirectObject(annotation));
}

Result<Done> Finisher::add_marks(const std::vector<Mark>& marks) {
  std::map<std::string, QPDFObjectHandle> places;
  for (const Mark& mark : marks) {
    if (mark.kind == Mark::Kind::destination) {
      places.emplace(mark.target, target(mark));
    }
  }
  for (const Mark& mark : marks) {
    if (mark.kind == Mark::Kind::address) {
      QPDFObjectHandle action = QPDFObjectHandle::newDictionary();
      action.replaceKey("/S", QPDFObjectHandle::newName("/URI"));
      action.replaceKey("/URI", QPDFObjectHandle::newString(mark.target));
      annotate(mark, "/A", action);
    } else if (mark.kind == Mark::Kind::link) {
      const auto at = places.find(mark.target);
      if (at == places.end()) {
        return Problem{Fault::refused,
                       fmt::format("a link leads to \"{}\", which is nowhere", mark.target),
                       fmt::format("page {}", mark.page + 1),
                       "set the destination or drop the link"};
      }
      annotate(mark, "/Dest", at->second);
    }
  }
  add_outline(marks);
  return Done{};
}

// Every line of the outline hangs under the last line of a lower level before it.
void Finisher::add_outline(const std::vector<Mark>& marks) {
  struct Node {
    QPDFObjectHandle item;
    int level = -1;
    int children = 0;
  };
  QPDFObjectHandle root = pdf_.makeIndirectObject(QPDFObjectHandle::newDictionary());
  std::vector<Node> open{{root, -1, 0}};
  const auto close = [&open] {
    const Node last = open.back();
    open.pop_back();
    if (last.children > 0) {
      // The top is open, deeper levels are folded.
      QPDFObjectHandle item = last.item;
      item.replaceKey("/Count", QPDFObjectHandle::newInteger(last.level < 0 ? last.children
                                                                            : -last.children));
    }
  };
  for (const Mark& mark : marks) {
    if (mark.kind != Mark::Kind::outline) {
      continue;
    }
    while (open.back().level >= mark.level) {
      close();
    }
    Node& parent = open.back();
    QPDFObjectHandle item = pdf_.makeIndirectObject(QPDFObjectHandle::newDictionary());
    item.replaceKey("/Title", text_of(mark.target));
    item.replaceKey("/Parent", parent.item);
    item.replaceKey("/Dest", target(mark));
    if (parent.children == 0) {
      parent.item.replaceKey("/First", item);
    } else {
      QPDFObjectHandle before = parent.item.getKey("/Last");
      before.replaceKey("/Next", item);
      item.replaceKey("/Prev", before);
    }
    parent.item.replaceKey("/Last", item);
    ++parent.children;
    open.push_back({item, mark.level, 0});
  }
  while (open.size() > 1) {
    close();
  }
  if (open.front().children > 0) {
    close();
    root.replaceKey("/Type", QPDFObjectHandle::newName("/Outlines"));
    pdf_.getRoot().replaceKey("/Outlines", root);
  }
}

void Finisher::add_boxes() {
  const Box trim{0, 0, trim_.width, trim_.height};
  for (const QPDFPageObjectHelper& helper : pages_) {
    QPDFObjectHandle on = QPDFPageObjectHelper(helper).getObjectHandle();
    on.replaceKey("/TrimBox", box_of(trim));
    on.replaceKey("/BleedBox", box_of(trim.grown(bleed_)));
  }
}

// Dublin Core in XMP (ISO 16684-1): title, creator, description, language.
std::string xmp_of(const PdfInfo& info) {
  std::string body;
  body += fmt::format(
      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt></dc:title>",
      escaped_markup(info.title));
  if (!info.author.empty()) {
    body += fmt::format("<dc:creator><rdf:Seq><rdf:li>{}</rdf:li></rdf:Seq></dc:creator>",
                        escaped_markup(info.author));
  }
  if (!info.subject.empty()) {
    body += fmt::format(
        "<dc:description><rdf:Alt><rdf:li "
        "xml:lang=\"x-default\">{}</rdf:li></rdf:Alt></dc:description>",
        escaped_markup(info.subject));
  }
  body += fmt::format("<dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>",
                      escaped_markup(info.language));
  return "<?xpacket begin=\"\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>"
         "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
         "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
         "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">" +
         body + "</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end=\"w\"?>";
}

void Finisher::add_info(const PdfInfo& info) {
  QPDFObjectHandle dictionary = QPDFObjectHandle::newDictionary();
  dictionary.replaceKey("/Title", text_of(info.title));
  if (!info.author.empty()) {
    dictionary.replaceKey("/Author", text_of(info.author));
  }
  if (!info.subject.empty()) {
    dictionary.replaceKey("/Subject", text_of(info.subject));
  }
  dictionary.replaceKey("/Producer", text_of("Backmark"));
  pdf_.getTrailer().replaceKey("/Info", pdf_.makeIndirectObject(dictionary));
  QPDFObjectHandle root = pdf_.getRoot();
  root.replaceKey("/Lang", text_of(info.language));
  QPDFObjectHandle viewer = QPDFObjectHandle::newDictionary();
  viewer.replaceKey("/DisplayDocTitle", QPDFObjectHandle::newBool(true));
  root.replaceKey("/ViewerPreferences", viewer);
  QPDFObjectHandle metadata = QPDFObjectHandle::newStream(&pdf_, xmp_of(info));
  metadata.getDict().replaceKey("/Type", QPDFObjectHandle::newName("/Metadata"));
  metadata.getDict().replaceKey("/Subtype", QPDFObjectHandle::newName("/XML"));
  root.replaceKey("/Metadata", metadata);
}

std::string written(QPDF& pdf) {
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.write();
  const auto buffer = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace

Result<std::string> finish_pdf(Canvas& canvas, const PdfInfo& info) {
  const std::vector<Mark> marks = canvas.marks();
  const Size trim = canvas.trim();
  const double bleed = canvas.bleed();
  const Structure& structure = canvas.structure();
  auto bytes = canvas.finish();
  if (!bytes) {
    return bytes.problem();
  }
  try {
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("drawing", bytes->data(), bytes->size());
    Finisher finisher(pdf, trim, bleed);
    if (auto added = finisher.add_marks(marks); !added) {
      return added.problem();
    }
    finisher.add_boxes();
    write_inlays(pdf, canvas.inlays());
    finisher.add_info(info);
    finisher.add_structure(structure);
    write_page_labels(pdf, info.labels);
    write_output_intent(pdf);
    return written(pdf);
  } catch (const std::exception& fault) {
    throw BrokenPromise(std::string("the program's own PDF cannot be finished: ") +
                        fault.what());
  }
}

}  // namespace backmark::draw
