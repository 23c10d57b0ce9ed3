// Inlays (draw/inlay.h) take the places of the pixels that stood for them in Cairo's PDF.
#include <charconv>
#include <cmath>

#include "base/text.h"
#include "draw/jpeg.h"
#include "draw/masks.h"
#include "draw/pdf_inside.h"

namespace backmark::draw {

namespace {

constexpr std::string_view remark = "backmark inlay ";
constexpr std::size_t remark_digits = 8;

QPDFObjectHandle name(const char* text) {
  return QPDFObjectHandle::newName(text);
}

QPDFObjectHandle whole(long long value) {
  return QPDFObjectHandle::newInteger(value);
}

// The number of the inlay that an image stands for; nothing if it is an image of its own.
std::optional<std::size_t> stands_for(QPDFObjectHandle& object) {
  if (!object.isStream() || !object.getDict().getKey("/Subtype").isNameAndEquals("/Image") ||
      !object.getDict().getKey("/Filter").isNameAndEquals("/DCTDecode")) {
    return std::nullopt;
  }
  const auto bytes = object.getRawStreamData();
  const std::string_view text(reinterpret_cast<const char*>(bytes->getBuffer()),
                              std::min<std::size_t>(bytes->getSize(), 64));
  const std::size_t at = text.find(remark);
  if (at == std::string_view::npos) {
    return std::nullopt;
  }
  std::size_t number = 0;
  const char* first = text.data() + at + remark.size();
  std::from_chars(first, first + remark_digits, number);
  return number;
}

QPDFObjectHandle mask_of(QPDF& pdf, Inlay& inlay) {
  QPDFObjectHandle mask = QPDFObjectHandle::newStream(&pdf);
  QPDFObjectHandle about = mask.getDict();
  about.replaceKey("/Type", name("/XObject"));
  about.replaceKey("/Subtype", name("/Image"));
  about.replaceKey("/Width", whole(inlay.width));
  about.replaceKey("/Height", whole(inlay.height));
  about.replaceKey("/ColorSpace", name("/DeviceGray"));
  about.replaceKey("/BitsPerComponent", whole(8));
  about.replaceKey("/Interpolate", QPDFObjectHandle::newBool(true));
  QPDFObjectHandle how = QPDFObjectHandle::newDictionary();
  how.replaceKey("/Predictor", whole(2));
  how.replaceKey("/Columns", whole(inlay.width));
  mask.replaceStreamData(inlay.mask, name("/FlateDecode"), how);
  inlay.mask = {};
  return mask;
}

// One colour for all pixels, as a palette of one.
QPDFObjectHandle palette_of(const Colour& colour) {
  std::string entry;
  for (const double part : {colour.red, colour.green, colour.blue}) {
    entry += static_cast<char>(static_cast<unsigned char>(std::lround(part * 255)));
  }
  return QPDFObjectHandle::newArray(
      {name("/Indexed"), name("/DeviceRGB"), whole(0), QPDFObjectHandle::newString(entry)});
}

void put(QPDF& pdf, QPDFObjectHandle& image, Inlay& inlay) {
  QPDFObjectHandle about = image.getDict();
  about.replaceKey("/Width", whole(inlay.width));
  about.replaceKey("/Height", whole(inlay.height));
  about.replaceKey("/Interpolate", QPDFObjectHandle::newBool(true));
  about.replaceKey("/BitsPerComponent", whole(8));
  if (inlay.jpeg.empty()) {
    about.replaceKey("/ColorSpace", palette_of(inlay.flat));
    const auto pixels =
        static_cast<std::size_t>(inlay.width) * static_cast<std::size_t>(inlay.height);
    image.replaceStreamData(deflated(std::vector<std::uint8_t>(pixels)), name("/FlateDecode"),
                            QPDFObjectHandle::newNull());
  } else {
    about.replaceKey("/ColorSpace", name(inlay.grey ? "/DeviceGray" : "/DeviceRGB"));
    image.replaceStreamData(inlay.jpeg, name("/DCTDecode"), QPDFObjectHandle::newNull());
    inlay.jpeg = {};
  }
  if (!inlay.mask.empty()) {
    about.replaceKey("/SMask", mask_of(pdf, inlay));
  }
}

}  // namespace

std::string stand_in(std::size_t number) {
  std::string jpeg = encode_opaque_jpeg(blank_picture(2, 2), 50);
  std::string note = fmt::format("{}{:0{}}", remark, number, remark_digits);
  note.insert(0, {'\xFF', '\xFE', 0, static_cast<char>(note.size() + 2)});
  jpeg.insert(2, note);
  return jpeg;
}

void write_inlays(QPDF& pdf, std::vector<Inlay>& inlays) {
  std::size_t written = 0;
  for (QPDFObjectHandle& object : pdf.getAllObjects()) {
    if (const auto number = stands_for(object)) {
      put(pdf, object, inlays.at(*number));
      ++written;
    }
  }
  if (written != inlays.size()) {
    throw BrokenPromise(
        fmt::format("{} of {} inlays have a place in the PDF", written, inlays.size()));
  }
}

}  // namespace backmark::draw
