#include "draw/picture.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <png.h>

#include "base/text.h"
#include "draw/jpeg.h"

namespace backmark::draw {

namespace {

constexpr std::string_view png_head("\x89PNG\r\n\x1A\n", 8);

struct FreePng {
  void operator()(png_image* image) const { png_image_free(image); }
};

bool is_png(std::string_view bytes) {
  return bytes.substr(0, 8) == png_head;
}

Problem damaged_png(const std::string& why) {
  return {Fault::bad_input, fmt::format("the PNG is damaged ({})", why), "",
          "export the picture again from its original"};
}

Result<Picture> decode_png(std::string_view bytes) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  const std::unique_ptr<png_image, FreePng> owner(&image);
  if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0) {
    return damaged_png(image.message);
  }
  image.format = PNG_FORMAT_RGBA;
  Picture picture =
      blank_picture(static_cast<int>(image.width), static_cast<int>(image.height));
  if (png_image_finish_read(&image, nullptr, picture.rgba.data(), 0, nullptr) == 0) {
    return damaged_png(image.message);
  }
  return picture;
}

unsigned big_endian(std::string_view bytes, std::size_t at) {
  unsigned value = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    value = value * 256 + static_cast<unsigned char>(bytes[at + i]);
  }
  return value;
}

// How much of each source pixel goes into one target pixel, along one side.
struct Share {
  int first = 0;
  std::vector<float> weight;
};

// A triangle one target pixel (or one source pixel, if that is larger) wide on either side.
std::vector<Share> shares(int from, int to) {
  const double ratio = static_cast<double>(from) / to;
  const double reach = std::max(1.0, ratio);
  std::vector<Share> all(static_cast<std::size_t>(to));
  for (int i = 0; i < to; ++i) {
    const double centre = (i + 0.5) * ratio - 0.5;
    const int first = std::max(0, static_cast<int>(std::ceil(centre - reach)));
    const int last = std::min(from - 1, static_cast<int>(std::floor(centre + reach)));
    Share share{first, {}};
    double sum = 0;
    for (int k = first; k <= last; ++k) {
      const double w = std::max(1e-6, 1.0 - std::abs(k - centre) / reach);
      share.weight.push_back(static_cast<float>(w));
      sum += w;
    }
    for (float& w : share.weight) {
      w = static_cast<float>(w / sum);
    }
    all[static_cast<std::size_t>(i)] = std::move(share);
  }
  return all;
}

// Four floats a pixel, colour multiplied by opacity so that hidden colour does not bleed out.
std::vector<float> narrowed(const Picture& picture, int width) {
  const auto across = shares(picture.width, width);
  std::vector<float> rows(static_cast<std::size_t>(width) *
                          static_cast<std::size_t>(picture.height) * 4);
  std::size_t out = 0;
  for (int y = 0; y < picture.height; ++y) {
    for (const Share& share : across) {
      const std::uint8_t* p = picture.at(share.first, y);
      for (const float weight : share.weight) {
        const float opacity = weight * static_cast<float>(p[3]);
        rows[out] += opacity * static_cast<float>(p[0]);
        rows[out + 1] += opacity * static_cast<float>(p[1]);
        rows[out + 2] += opacity * static_cast<float>(p[2]);
        rows[out + 3] += opacity;
        p += 4;
      }
      out += 4;
    }
  }
  return rows;
}

std::uint8_t to_byte(float value) {
  return static_cast<std::uint8_t>(std::clamp(value + 0.5F, 0.0F, 255.0F));
}

void add_row(std::vector<float>& sum, const float* row, float weight) {
  for (float& value : sum) {
    value += weight * *row++;
  }
}

}  // namespace

Picture blank_picture(int width, int height) {
  return {width, height,
          std::vector<std::uint8_t>(static_cast<std::size_t>(width) *
                                    static_cast<std::size_t>(height) * 4)};
}

Result<PictureSize> picture_size(std::string_view bytes) {
  if (is_jpeg(bytes)) {
    return jpeg_size(bytes);
  }
  if (!is_png(bytes)) {
    return Problem{Fault::bad_input, "the file is neither a PNG nor a JPEG picture", "",
                   "export the picture as PNG or JPEG"};
  }
  if (bytes.size() < 24) {
    return damaged_png("cut short");
  }
  const unsigned width = big_endian(bytes, 16);
  const unsigned height = big_endian(bytes, 20);
  if (width == 0 || height == 0 || width > 0x7FFFFFFFU || height > 0x7FFFFFFFU) {
    return damaged_png("no size");
  }
  return PictureSize{static_cast<int>(width), static_cast<int>(height)};
}

Result<Picture> decode_picture(std::string_view bytes, PictureSize least) {
  const auto size = picture_size(bytes);
  if (!size) {
    return size.problem();
  }
  const std::int64_t pixels = std::int64_t{size->width} * size->height;
  if (pixels > most_pixels) {
    return Problem{Fault::refused,
                   fmt::format("the picture has {} megapixels, more than the {} that are taken",
                               pixels / 1'000'000, most_pixels / 1'000'000),
                   "", "save a smaller copy; 24 megapixels print a full page"};
  }
  if (pixels == 0) {
    return Problem{Fault::bad_input, "the picture has no pixels", "", "export it again"};
  }
  return is_jpeg(bytes) ? decode_jpeg(bytes, least) : decode_png(bytes);
}

Result<Picture> read_picture(const Path& path) {
  auto bytes = read_file(path);
  if (!bytes) {
    return bytes.problem();
  }
  auto picture = decode_picture(*bytes);
  if (!picture) {
    Problem problem = picture.problem();
    problem.where = path.string();
    return problem;
  }
  return picture;
}

std::string encode_png(const Picture& picture) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = static_cast<png_uint_32>(picture.width);
  image.height = static_cast<png_uint_32>(picture.height);
  image.format = PNG_FORMAT_RGBA;
  const std::unique_ptr<png_image, FreePng> owner(&image);
  // Room for the worst case, so that the picture is packed once and not twice.
  std::string bytes(PNG_IMAGE_PNG_SIZE_MAX(image), '\0');
  png_alloc_size_t size = bytes.size();
  if (png_image_write_to_memory(&image, bytes.data(), &size, 0, picture.rgba.data(), 0,
                                nullptr) == 0) {
    throw BrokenPromise(
        fmt::format("a picture could not be written as PNG: {}", image.message));
  }
  bytes.resize(size);
  return bytes;
}

Picture resized(const Picture& picture, int width, int height) {
  if (width == picture.width && height == picture.height) {
    return picture;
  }
  const std::vector<float> rows = narrowed(picture, width);
  const std::size_t stride = static_cast<std::size_t>(width) * 4;
  Picture out = blank_picture(width, height);
  std::uint8_t* p = out.rgba.data();
  for (const Share& share : shares(picture.height, height)) {
    std::vector<float> sum(stride);
    auto y = static_cast<std::size_t>(share.first);
    for (const float weight : share.weight) {
      add_row(sum, &rows[y++ * stride], weight);
    }
    for (std::size_t i = 0; i < stride; i += 4, p += 4) {
      const float opacity = sum[i + 3];
      for (std::size_t c = 0; c < 3 && opacity > 0; ++c) {
        p[c] = to_byte(sum[i + c] / opacity);
      }
      p[3] = to_byte(opacity);
    }
  }
  return out;
}

Picture cropped(const Picture& picture, int x, int y, PictureSize size) {
  if (x < 0 || y < 0 || x + size.width > picture.width || y + size.height > picture.height) {
    throw BrokenPromise("a crop reached outside its picture");
  }
  Picture out = blank_picture(size.width, size.height);
  for (int row = 0; row < size.height; ++row) {
    std::copy_n(picture.at(x, y + row), size.width * 4, out.at(0, row));
  }
  return out;
}

}  // namespace backmark::draw
