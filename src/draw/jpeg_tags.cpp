#include "draw/jpeg_tags.h"

#include <functional>
#include <lcms2.h>
#include <map>
#include <memory>

#include "base/text.h"

namespace backmark::draw {

namespace {

unsigned byte_at(std::string_view bytes, std::size_t i) {
  return static_cast<unsigned char>(bytes[i]);
}

// Calls visit(kind, content) for every segment before the pixels; ends at the first that
// reaches past the end.
void each_segment(std::string_view bytes,
                  const std::function<void(unsigned, std::string_view)>& visit) {
  std::size_t at = 2;
  while (at + 4 <= bytes.size() && byte_at(bytes, at) == 0xFF) {
    const unsigned kind = byte_at(bytes, at + 1);
    if (kind == 0xFF) {
      ++at;
      continue;
    }
    const std::size_t length = byte_at(bytes, at + 2) * 256U + byte_at(bytes, at + 3);
    if (kind == 0xDA || length < 2 || at + 2 + length > bytes.size()) {
      return;
    }
    visit(kind, bytes.substr(at + 4, length - 2));
    at += 2 + length;
  }
}

// The numbers of a TIFF head, in its own order of bytes; 0 past the end.
class Tiff {
 public:
  explicit Tiff(std::string_view bytes) : bytes_(bytes), little_(starts_with(bytes, "II")) {}

  unsigned two(std::size_t at) const {
    if (at + 2 > bytes_.size()) {
      return 0;
    }
    const unsigned a = byte_at(bytes_, at);
    const unsigned b = byte_at(bytes_, at + 1);
    return little_ ? b * 256 + a : a * 256 + b;
  }
  std::size_t four(std::size_t at) const {
    return little_ ? two(at + 2) * 65536UL + two(at) : two(at) * 65536UL + two(at + 2);
  }

 private:
  std::string_view bytes_;
  bool little_;
};

int orientation_in(std::string_view head) {
  constexpr unsigned orientation_tag = 0x0112;
  const Tiff tiff(head);
  const std::size_t first = tiff.four(4);
  const unsigned count = tiff.two(first);
  for (unsigned i = 0; i < count && first + 2 + (i + 1) * 12UL <= head.size(); ++i) {
    const std::size_t entry = first + 2 + i * 12UL;
    if (tiff.two(entry) == orientation_tag) {
      const unsigned value = tiff.two(entry + 8);
      return value >= 1 && value <= 8 ? static_cast<int>(value) : 1;
    }
  }
  return 1;
}

// Whether a segment is needed to show the pixels: tables and frames, not what applications
// wrote. JFIF and Adobe heads say how channels become colours.
bool shows_pixels(unsigned kind, std::string_view content) {
  if (kind == 0xE0) {
    return starts_with(content, std::string_view("JFIF\0", 5));
  }
  return kind == 0xEE || kind == 0xDB || (kind >= 0xC0 && kind <= 0xCF) || kind == 0xDD;
}

// Where the pixels that begin at `at` end, just after the mark of the end (ISO/IEC 10918-1,
// B.1.1): within them 0xFF is followed by 0 or a restart mark. The end of the bytes if they are
// cut short.
std::size_t end_of_pixels(std::string_view bytes, std::size_t at) {
  while (at + 1 < bytes.size()) {
    const unsigned mark = byte_at(bytes, at + 1);
    if (byte_at(bytes, at) != 0xFF || mark == 0 || mark == 0xFF ||
        (mark >= 0xD0 && mark <= 0xD7)) {
      ++at;
    } else if (mark == 0xD9) {
      return at + 2;
    } else if (at + 3 < bytes.size()) {
      at += 2 + byte_at(bytes, at + 2) * 256U + byte_at(bytes, at + 3);
    } else {
      break;
    }
  }
  return bytes.size();
}

struct DropProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};
struct DropTransform {
  void operator()(void* transform) const { cmsDeleteTransform(transform); }
};

}  // namespace

int jpeg_orientation(std::string_view bytes) {
  constexpr std::string_view mark("Exif\0\0", 6);
  int orientation = 1;
  each_segment(bytes, [&](unsigned kind, std::string_view content) {
    if (kind == 0xE1 && starts_with(content, mark) && orientation == 1) {
      orientation = orientation_in(content.substr(mark.size()));
    }
  });
  return orientation;
}

std::string jpeg_profile(std::string_view bytes) {
  constexpr std::string_view mark("ICC_PROFILE\0", 12);
  std::map<unsigned, std::string_view> parts;
  each_segment(bytes, [&](unsigned kind, std::string_view content) {
    if (kind == 0xE2 && starts_with(content, mark) && content.size() > mark.size() + 2) {
      parts.emplace(byte_at(content, mark.size()), content.substr(mark.size() + 2));
    }
  });
  std::string profile;
  for (const auto& [number, part] : parts) {
    profile += part;
  }
  return profile;
}

std::optional<PlainJpeg> plain_jpeg(std::string_view bytes) {
  if (jpeg_orientation(bytes) != 1 || !jpeg_profile(bytes).empty()) {
    return std::nullopt;
  }
  PlainJpeg plain{std::string(bytes.substr(0, 2)), false};
  bool usual = false;
  std::size_t pixels = 2;
  each_segment(bytes, [&](unsigned kind, std::string_view content) {
    const auto begins = static_cast<std::size_t>(content.data() - bytes.data()) - 4;
    pixels = begins + 4 + content.size();
    if (kind >= 0xC0 && kind <= 0xC2 &&
        content.size() > 5) {  // baseline, extended, progressive
      const unsigned channels = byte_at(content, 5);
      plain.grey = channels == 1;
      usual = byte_at(content, 0) == 8 && (channels == 1 || channels == 3);
    }
    if (shows_pixels(kind, content)) {
      plain.bytes += bytes.substr(begins, 4 + content.size());
    }
  });
  if (!usual) {
    return std::nullopt;
  }
  plain.bytes += bytes.substr(pixels, end_of_pixels(bytes, pixels) - pixels);
  return plain;
}

Picture upright(Picture picture, int orientation) {
  if (orientation <= 1 || orientation > 8) {
    return picture;
  }
  const bool swapped = orientation >= 5;
  const int width = picture.width;
  const int height = picture.height;
  Picture out = blank_picture(swapped ? height : width, swapped ? width : height);
  for (int y = 0; y < out.height; ++y) {
    for (int x = 0; x < out.width; ++x) {
      int from_x = swapped ? y : x;
      int from_y = swapped ? x : y;
      if (orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8) {
        from_x = width - 1 - from_x;
      }
      if (orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7) {
        from_y = height - 1 - from_y;
      }
      std::copy_n(picture.at(from_x, from_y), 4, out.at(x, y));
    }
  }
  return out;
}

void to_srgb(Picture& picture, const std::string& profile) {
  if (profile.empty()) {
    return;
  }
  const std::unique_ptr<void, DropProfile> from(
      cmsOpenProfileFromMem(profile.data(), static_cast<cmsUInt32Number>(profile.size())));
  if (!from || cmsGetColorSpace(from.get()) != cmsSigRgbData) {
    return;
  }
  const std::unique_ptr<void, DropProfile> srgb(cmsCreate_sRGBProfile());
  const std::unique_ptr<void, DropTransform> transform(
      cmsCreateTransform(from.get(), TYPE_RGBA_8, srgb.get(), TYPE_RGBA_8, INTENT_PERCEPTUAL,
                         cmsFLAGS_COPY_ALPHA));
  if (transform) {
    cmsDoTransform(transform.get(), picture.rgba.data(), picture.rgba.data(),
                   static_cast<cmsUInt32Number>(picture.rgba.size() / 4));
  }
}

}  // namespace backmark::draw
