// Shaping by HarfBuzz, with the fonts that Pango loaded.
#include <array>

#include "base/text.h"
#include "draw/canvas_inside.h"
#include "draw/fonts.h"
#include "draw/fonts_inside.h"

namespace backmark::draw {

namespace {

constexpr double mm_per_pt = 25.4 / 72.0;
constexpr double wide_share = 0.89;

bool has_glyph(const LoadedFace& face, char32_t letter) {
  hb_codepoint_t glyph = 0;
  return hb_font_get_nominal_glyph(face.harfbuzz, letter, &glyph) != 0;
}

bool is_italic(Face face) {
  return face == Face::text_italic || face == Face::wide_italic;
}

// Marks that join the letter before them, and joiners, stay in its run.
bool follows(char32_t letter) {
  return (letter >= 0x300 && letter <= 0x36F) || letter == 0x200D || letter == 0x200C;
}

struct Part {
  std::string text;
  bool wide = false;
};

// Stretches of letters that the face has, and of those that only Gentium Plus has.
std::vector<Part> parts_of(const Fonts::Inside& inside, std::u32string_view text, Face face) {
  const LoadedFace& own = inside.of(face);
  const LoadedFace& other = inside.of(is_italic(face) ? Face::wide_italic : Face::wide);
  std::vector<Part> parts;
  std::u32string now;
  bool wide = false;
  const auto flush = [&] {
    if (!now.empty()) {
      parts.push_back({to_utf8(now), wide});
      now.clear();
    }
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char32_t letter = text[i];
    const bool marked =
        i + 1 < text.size() && follows(text[i + 1]) && !has_glyph(own, text[i + 1]);
    const bool lacks = !has_glyph(own, letter) || marked;
    const bool needs = follows(letter) ? wide : lacks && has_glyph(other, letter);
    if (needs != wide) {
      flush();
      wide = needs;
    }
    now += letter;
  }
  flush();
  return parts;
}

// The no-break space of some cuts has no width, and soft hyphens no shape: plain space,
// nothing.
std::u32string for_shaping(std::string_view text) {
  std::u32string letters;
  for (const char32_t letter : to_code_points(text)) {
    if (letter == 0xA0 || letter == 0x202F || letter == '\t' || letter == '\n') {
      letters += U' ';
    } else if (letter != 0xAD) {
      letters += letter;
    }
  }
  return letters;
}

std::vector<hb_feature_t> features_of(const Style& style) {
  std::vector<hb_feature_t> features;
  const auto set = [&](const char* name, unsigned value) {
    features.push_back(
        {HB_TAG(name[0], name[1], name[2], name[3]), value, 0, static_cast<unsigned>(-1)});
  };
  if (style.face == Face::text || style.face == Face::text_italic) {
    set(style.figures == Figures::old_style ? "onum" : "lnum", 1);
    set(style.tabular ? "tnum" : "pnum", 1);
  } else if (style.tabular) {
    set("tnum", 1);
  }
  if (style.small_caps) {
    set("smcp", 1);
    set("c2sc", 1);
  }
  if (style.tracking > 0) {
    set("liga", 0);
  }
  return features;
}

// Reads one cluster from glyph i on: how many glyphs share its first byte, and where it ends.
void add_clusters(GlyphRun& run, const hb_glyph_info_t* info, unsigned count) {
  for (unsigned i = 0; i < count;) {
    unsigned next = i;
    while (next < count && info[next].cluster == info[i].cluster) {
      ++next;
    }
    const std::size_t end = next < count ? info[next].cluster : run.text.size();
    run.clusters.push_back(
        {static_cast<int>(end - info[i].cluster), static_cast<int>(next - i)});
    i = next;
  }
}

void shape_part(const Fonts::Inside& inside, const Part& part, const Style& style, Line& line) {
  const Face face =
      part.wide ? (is_italic(style.face) ? Face::wide_italic : Face::wide) : style.face;
  const LoadedFace& loaded = inside.of(face);
  const double size_pt = style.size_pt * (part.wide ? wide_share : 1.0);
  const double unit_mm = loaded.unit * size_pt * mm_per_pt;
  const double track_mm = style.tracking / 1000 * size_pt * mm_per_pt;
  const double raise_mm = style.raise * style.size_pt * mm_per_pt;
  hb_buffer_t* buffer = inside.buffer.get();
  hb_buffer_clear_contents(buffer);
  hb_buffer_add_utf8(buffer, part.text.c_str(), static_cast<int>(part.text.size()), 0,
                     static_cast<int>(part.text.size()));
  hb_buffer_guess_segment_properties(buffer);
  hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
  const auto features = features_of(style);
  hb_shape(loaded.harfbuzz, buffer, features.data(), static_cast<unsigned>(features.size()));
  unsigned count = 0;
  const hb_glyph_info_t* info = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* place = hb_buffer_get_glyph_positions(buffer, &count);
  GlyphRun run{face, size_pt, style.colour, part.text, {}, {}};
  for (unsigned i = 0; i < count; ++i) {
    run.glyphs.push_back({info[i].codepoint, line.width + place[i].x_offset * unit_mm,
                          -place[i].y_offset * unit_mm - raise_mm});
    line.width += place[i].x_advance * unit_mm + track_mm;
  }
  add_clusters(run, info, count);
  line.runs.push_back(std::move(run));
}

std::string key_of(std::string_view text, const Style& s) {
  const auto& c = s.colour;
  return fmt::format("{}|{}|{}{}{}|{}|{}|{},{},{},{}|{}", static_cast<int>(s.face), s.size_pt,
                     static_cast<int>(s.figures), s.tabular ? 1 : 0, s.small_caps ? 1 : 0,
                     s.tracking, s.raise, c.red, c.green, c.blue, c.alpha, text);
}

void set_font(cairo_t* cr, const Fonts& fonts, const GlyphRun& run) {
  cairo_set_font_face(cr, fonts.inside().of(run.face).cairo.get());
  cairo_set_font_size(cr, run.size_pt * mm_per_pt);
}

std::vector<cairo_glyph_t> cairo_glyphs(const GlyphRun& run, Point at) {
  std::vector<cairo_glyph_t> glyphs;
  glyphs.reserve(run.glyphs.size());
  for (const Glyph& glyph : run.glyphs) {
    glyphs.push_back({glyph.id, at.x + glyph.x, at.y + glyph.y});
  }
  return glyphs;
}

}  // namespace

const Line& Fonts::shape(std::string_view text, const Style& style) const {
  std::string key = key_of(text, style);
  const auto known = inside_->shaped.find(key);
  if (known != inside_->shaped.end()) {
    return known->second;
  }
  Line line;
  for (const Part& part : parts_of(*inside_, for_shaping(text), style.face)) {
    shape_part(*inside_, part, style, line);
  }
  return inside_->shaped.emplace(std::move(key), std::move(line)).first->second;
}

Line Fonts::shape(const RichText& text) const {
  Line line;
  for (const Run& run : text) {
    append(line, shape(run.text, run.style), line.width);
  }
  return line;
}

double Fonts::width(std::string_view text, const Style& style) const {
  return shape(text, style).width;
}

double Fonts::width(const RichText& text) const {
  return shape(text).width;
}

std::u32string Fonts::missing(std::string_view text, const Style& style) const {
  std::u32string lacking;
  const LoadedFace& own = inside_->of(style.face);
  const LoadedFace& other = inside_->of(is_italic(style.face) ? Face::wide_italic : Face::wide);
  for (const char32_t letter : for_shaping(text)) {
    if (!has_glyph(own, letter) && !has_glyph(other, letter) &&
        lacking.find(letter) == std::u32string::npos) {
      lacking += letter;
    }
  }
  return lacking;
}

// One cluster of all the glyphs of a run: Cairo writes its words as ActualText.
Line read_as(Line line, std::string_view words) {
  for (GlyphRun& run : line.runs) {
    if (run.glyphs.empty()) {
      continue;
    }
    run.text = std::string(words);
    run.clusters = {{static_cast<int>(words.size()), static_cast<int>(run.glyphs.size())}};
    words = {};
  }
  return line;
}

void append(Line& to, const Line& line, double x) {
  for (GlyphRun run : line.runs) {
    for (Glyph& glyph : run.glyphs) {
      glyph.x += x;
    }
    to.runs.push_back(std::move(run));
  }
  to.width = std::max(to.width, x + line.width);
}

void show(Canvas& canvas, const Fonts& fonts, Point baseline, const Line& line) {
  cairo_t* cr = canvas.handle();
  cairo_save(cr);
  for (const GlyphRun& run : line.runs) {
    const auto glyphs = cairo_glyphs(run, baseline);
    std::vector<cairo_text_cluster_t> clusters;
    for (const Cluster& cluster : run.clusters) {
      clusters.push_back({cluster.bytes, cluster.glyphs});
    }
    set_font(cr, fonts, run);
    const Colour& c = run.colour;
    cairo_set_source_rgba(cr, c.red, c.green, c.blue, c.alpha);
    cairo_show_text_glyphs(cr, run.text.data(), static_cast<int>(run.text.size()),
                           glyphs.data(), static_cast<int>(glyphs.size()), clusters.data(),
                           static_cast<int>(clusters.size()),
                           static_cast<cairo_text_cluster_flags_t>(0));
  }
  cairo_restore(cr);
}

double show(
    Canvas& canvas, const Fonts& fonts, Point baseline, const RichText& text, Align align) {
  const Line line = fonts.shape(text);
  if (align != Align::left) {
    baseline.x -= align == Align::right ? line.width : line.width / 2;
  }
  show(canvas, fonts, baseline, line);
  return line.width;
}

double show(Canvas& canvas, const Fonts& fonts, Point baseline, const Run& run, Align align) {
  return show(canvas, fonts, baseline, RichText{run}, align);
}

void add_outline(Canvas& canvas, const Fonts& fonts, Point baseline, const Run& run) {
  cairo_t* cr = canvas.handle();
  for (const GlyphRun& part : fonts.shape(run.text, run.style).runs) {
    const auto glyphs = cairo_glyphs(part, baseline);
    set_font(cr, fonts, part);
    cairo_glyph_path(cr, glyphs.data(), static_cast<int>(glyphs.size()));
  }
}

}  // namespace backmark::draw
