// What Fonts holds; for the bodies of this room only.
#pragma once

#include <array>
#include <cairo.h>
#include <fontconfig/fontconfig.h>
#include <hb.h>
#include <memory>
#include <pango/pangocairo.h>
#include <string>
#include <unordered_map>

#include "draw/fonts.h"

namespace backmark::draw {

struct DropConfig {
  void operator()(FcConfig* config) const { FcConfigDestroy(config); }
};
struct DropObject {
  void operator()(void* object) const { g_object_unref(object); }
};
struct DropFace {
  void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
struct DropBuffer {
  void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};

inline constexpr std::size_t face_count = 9;

struct LoadedFace {
  std::unique_ptr<PangoFont, DropObject> pango;
  std::unique_ptr<cairo_font_face_t, DropFace> cairo;
  hb_font_t* harfbuzz = nullptr;  // owned by the Pango font
  double unit = 0;                // em per HarfBuzz unit
  double x_height = 0;            // em
  double cap_height = 0;
};

struct Fonts::Inside {
  std::unique_ptr<FcConfig, DropConfig> config;
  std::unique_ptr<PangoFontMap, DropObject> map;
  std::unique_ptr<PangoContext, DropObject> context;
  std::array<LoadedFace, face_count> faces;
  std::unique_ptr<hb_buffer_t, DropBuffer> buffer;
  std::unordered_map<std::string, Line> shaped;

  const LoadedFace& of(Face face) const { return faces[static_cast<std::size_t>(face)]; }
};

}  // namespace backmark::draw
