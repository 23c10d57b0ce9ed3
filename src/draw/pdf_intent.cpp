// What the colours of a PDF mean, and what its pages are called.
#include <lcms2.h>
#include <memory>
#include <string>

#include "base/result.h"
#include "draw/pdf_inside.h"

namespace backmark::draw {

namespace {

struct DropProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};

// The library's own sRGB profile, written without a day: the header's date and time are bytes
// 24 to 35 (ICC.1:2010, 7.2.8), and a clock there would make every run differ.
std::string srgb_profile() {
  const std::unique_ptr<void, DropProfile> profile(cmsCreate_sRGBProfile());
  cmsUInt32Number size = 0;
  if (!profile || cmsSaveProfileToMem(profile.get(), nullptr, &size) == 0) {
    throw BrokenPromise("no sRGB profile");
  }
  std::string bytes(size, '\0');
  if (cmsSaveProfileToMem(profile.get(), bytes.data(), &size) == 0) {
    throw BrokenPromise("the sRGB profile cannot be written");
  }
  const std::string no_day{'\x07', '\xd0', 0, 1, 0, 1, 0, 0, 0, 0, 0, 0};  // 1 January 2000
  bytes.replace(24, no_day.size(), no_day);
  return bytes;
}

QPDFObjectHandle style_of(PageLabels::Style style) {
  return QPDFObjectHandle::newName(style == PageLabels::Style::roman ? "/r" : "/D");
}

}  // namespace

void write_output_intent(QPDF& pdf) {
  QPDFObjectHandle profile = QPDFObjectHandle::newStream(&pdf, srgb_profile());
  profile.getDict().replaceKey("/N", QPDFObjectHandle::newInteger(3));
  QPDFObjectHandle intent = QPDFObjectHandle::newDictionary();
  intent.replaceKey("/Type", QPDFObjectHandle::newName("/OutputIntent"));
  // The subtype that admits a profile of a screen space; it claims no standard by itself.
  intent.replaceKey("/S", QPDFObjectHandle::newName("/GTS_PDFA1"));
  const auto name = QPDFObjectHandle::newString("sRGB IEC61966-2.1");
  intent.replaceKey("/OutputConditionIdentifier", name);
  intent.replaceKey("/Info", name);
  intent.replaceKey("/DestOutputProfile", pdf.makeIndirectObject(profile));
  QPDFObjectHandle intents = QPDFObjectHandle::newArray();
  intents.appendItem(pdf.makeIndirectObject(intent));
  pdf.getRoot().replaceKey("/OutputIntents", intents);
}

void write_page_labels(QPDF& pdf, const std::vector<PageLabels>& labels) {
  if (labels.empty()) {
    return;
  }
  QPDFObjectHandle numbers = QPDFObjectHandle::newArray();
  for (const PageLabels& label : labels) {
    QPDFObjectHandle one = QPDFObjectHandle::newDictionary();
    one.replaceKey("/S", style_of(label.style));
    one.replaceKey("/St", QPDFObjectHandle::newInteger(label.first));
    numbers.appendItem(QPDFObjectHandle::newInteger(label.from_page));
    numbers.appendItem(one);
  }
  QPDFObjectHandle tree = QPDFObjectHandle::newDictionary();
  tree.replaceKey("/Nums", numbers);
  pdf.getRoot().replaceKey("/PageLabels", tree);
}

}  // namespace backmark::draw
