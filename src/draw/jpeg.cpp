#include "draw/jpeg.h"

// jpeglib.h needs size_t and FILE before it.
#include <csetjmp>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <jpeglib.h>
#include <vector>

#include "base/text.h"
#include "draw/jpeg_tags.h"

namespace backmark::draw {

namespace {

// The library reports errors by a call that must not return.
struct Alarm {
  jpeg_error_mgr manager;
  std::jmp_buf back;
  char text[JMSG_LENGTH_MAX];
};

void raise_alarm(j_common_ptr info) {
  auto* alarm = reinterpret_cast<Alarm*>(info->err);
  info->err->format_message(info, alarm->text);
  std::longjmp(alarm->back, 1);
}

void stay_silent(j_common_ptr) {}

void set_alarm(Alarm& alarm) {
  jpeg_std_error(&alarm.manager);
  alarm.manager.error_exit = raise_alarm;
  alarm.manager.output_message = stay_silent;
}

Problem damaged(const std::string& why) {
  return {Fault::bad_input, fmt::format("the JPEG is damaged ({})", why), "",
          "export the picture again from its original"};
}

// Only plain memory here: a jump out of the library runs no destructors.
bool read_rows(std::string_view bytes, int eighths, Picture& out, Alarm& alarm) {
  jpeg_decompress_struct info;
  info.err = &alarm.manager;
  if (setjmp(alarm.back) != 0) {
    jpeg_destroy_decompress(&info);
    return false;
  }
  jpeg_create_decompress(&info);
  jpeg_mem_src(&info, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
  jpeg_read_header(&info, TRUE);
  info.out_color_space = JCS_EXT_RGBA;
  info.dct_method = JDCT_ISLOW;
  info.scale_num = static_cast<unsigned>(eighths);
  info.scale_denom = 8;
  jpeg_start_decompress(&info);
  const std::size_t stride = static_cast<std::size_t>(info.output_width) * 4;
  while (info.output_scanline < info.output_height) {
    JSAMPROW row = &out.rgba[info.output_scanline * stride];
    jpeg_read_scanlines(&info, &row, 1);
  }
  jpeg_finish_decompress(&info);
  jpeg_destroy_decompress(&info);
  return true;
}

Picture on_white(const Picture& picture) {
  Picture out = picture;
  for (std::size_t i = 0; i < out.rgba.size(); i += 4) {
    const unsigned alpha = picture.rgba[i + 3];
    for (std::size_t c = 0; c < 3 && alpha < 255; ++c) {
      const unsigned mixed = picture.rgba[i + c] * alpha + 255U * (255U - alpha);
      out.rgba[i + c] = static_cast<std::uint8_t>((mixed + 127U) / 255U);
    }
  }
  return out;
}

// A side at so many eighths, rounded up as the library does.
int scaled(int side, int eighths) {
  return static_cast<int>((std::int64_t{side} * eighths + 7) / 8);
}

// The library makes a picture smaller by whole eighths while it decodes, in less time than it
// takes to decode it whole. The least that is not under `least`; 8 for all of it.
int eighths_for(PictureSize stored, PictureSize least) {
  int eighths = 8;
  while (eighths > 1 && least.width > 0 && least.height > 0 &&
         scaled(stored.width, eighths - 1) >= least.width &&
         scaled(stored.height, eighths - 1) >= least.height) {
    --eighths;
  }
  return eighths;
}

void start_writing(jpeg_compress_struct& info, const Picture& picture, int quality) {
  info.image_width = static_cast<JDIMENSION>(picture.width);
  info.image_height = static_cast<JDIMENSION>(picture.height);
  info.input_components = 4;
  info.in_color_space = JCS_EXT_RGBX;
  jpeg_set_defaults(&info);
  jpeg_set_quality(&info, quality, TRUE);
  info.comp_info[0].h_samp_factor = 1;
  info.comp_info[0].v_samp_factor = 1;
  info.dct_method = JDCT_ISLOW;
  jpeg_start_compress(&info, TRUE);
}

// As it is stored, before it is held upright.
Result<PictureSize> stored_size(std::string_view bytes) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
  std::size_t at = 2;
  while (at + 9 < bytes.size() && byte(at) == 0xFF) {
    const unsigned kind = byte(at + 1);
    if (kind == 0xFF) {
      ++at;
      continue;
    }
    const bool frame =
        kind >= 0xC0 && kind <= 0xCF && kind != 0xC4 && kind != 0xC8 && kind != 0xCC;
    if (frame) {
      return PictureSize{byte(at + 7) * 256 + byte(at + 8), byte(at + 5) * 256 + byte(at + 6)};
    }
    at += 2 + byte(at + 2) * 256U + byte(at + 3);
  }
  return damaged("no frame header");
}

}  // namespace

bool is_jpeg(std::string_view bytes) {
  return bytes.size() > 3 && bytes.substr(0, 3) == "\xFF\xD8\xFF";
}

Result<PictureSize> jpeg_size(std::string_view bytes) {
  auto size = stored_size(bytes);
  if (size && jpeg_orientation(bytes) >= 5) {
    std::swap(size->width, size->height);
  }
  return size;
}

Result<Picture> decode_jpeg(std::string_view bytes, PictureSize least) {
  const auto size = stored_size(bytes);
  if (!size) {
    return size.problem();
  }
  const int orientation = jpeg_orientation(bytes);
  if (orientation >= 5) {
    std::swap(least.width, least.height);
  }
  const int eighths = eighths_for(*size, least);
  Picture picture = blank_picture(scaled(size->width, eighths), scaled(size->height, eighths));
  Alarm alarm;
  set_alarm(alarm);
  if (!read_rows(bytes, eighths, picture, alarm)) {
    return damaged(alarm.text);
  }
  to_srgb(picture, jpeg_profile(bytes));
  return upright(std::move(picture), orientation);
}

std::string encode_jpeg(const Picture& picture, int quality) {
  return encode_opaque_jpeg(on_white(picture), quality);
}

std::string encode_opaque_jpeg(const Picture& picture, int quality) {
  Alarm alarm;
  set_alarm(alarm);
  jpeg_compress_struct info;
  info.err = &alarm.manager;
  unsigned char* memory = nullptr;
  unsigned long size = 0;
  if (setjmp(alarm.back) != 0) {
    jpeg_destroy_compress(&info);
    throw BrokenPromise(fmt::format("a picture could not be written as JPEG: {}", alarm.text));
  }
  jpeg_create_compress(&info);
  jpeg_mem_dest(&info, &memory, &size);
  start_writing(info, picture, quality);
  const std::size_t stride = static_cast<std::size_t>(picture.width) * 4;
  while (info.next_scanline < info.image_height) {
    auto* row = const_cast<JSAMPROW>(&picture.rgba[info.next_scanline * stride]);
    jpeg_write_scanlines(&info, &row, 1);
  }
  jpeg_finish_compress(&info);
  jpeg_destroy_compress(&info);
  std::string bytes(reinterpret_cast<char*>(memory), size);
  std::free(memory);
  return bytes;
}

}  // namespace backmark::draw
