#include "draw/fonts.h"

#include <filesystem>
#include <hb-ot.h>
#include <pango/pangofc-fontmap.h>

#include "base/text.h"
#include "draw/fonts_inside.h"

namespace backmark::draw {

namespace {

struct FontFile {
  const char* file;    // without its ending
  const char* folder;  // of the Debian package, below the font folder
  const char* ending;
  const char* package;
  const char* name;  // as a PDF lists it
};

// In the order of Face.
constexpr std::array<FontFile, face_count> font_files = {{
    {"EBGaramond12-Regular", "opentype/ebgaramond", ".otf", "fonts-ebgaramond",
     "EBGaramond12-Regular"},
    {"EBGaramond12-Italic", "opentype/ebgaramond", ".otf", "fonts-ebgaramond",
     "EBGaramond12-Italic"},
    {"Inter-Regular", "opentype/inter", ".otf", "fonts-inter", "Inter-Regular"},
    {"Inter-Medium", "opentype/inter", ".otf", "fonts-inter", "Inter-Medium"},
    {"Inter-SemiBold", "opentype/inter", ".otf", "fonts-inter", "Inter-SemiBold"},
    {"InterDisplay-Medium", "opentype/inter", ".otf", "fonts-inter", "InterDisplay-Medium"},
    {"InterDisplay-SemiBold", "opentype/inter", ".otf", "fonts-inter", "InterDisplay-SemiBold"},
    {"GentiumPlus-Regular", "truetype/gentiumplus", ".ttf", "fonts-sil-gentiumplus",
     "GentiumPlus"},
    {"GentiumPlus-Italic", "truetype/gentiumplus", ".ttf", "fonts-sil-gentiumplus",
     "GentiumPlus-Italic"},
}};

std::string private_family(const FontFile& file) {
  return std::string("Backmark ") + file.file + " face";
}

// Each file becomes a family of its own: the packages give one family name to several optical
// sizes, and a family name that ends in a number would be read as a size.
std::string private_config() {
  std::string xml =
      "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig>";
  for (const FontFile& file : font_files) {
    xml += fmt::format(
        "<match target=\"scan\"><test name=\"file\" compare=\"contains\"><string>/{}{}</string>"
        "</test><edit name=\"family\" mode=\"assign\" "
        "binding=\"same\"><string>{}</string></edit>"
        "</match>",
        file.file, file.ending, private_family(file));
  }
  return xml + "</fontconfig>";
}

Result<Path> find_font(const FontFile& file, const std::vector<Path>& folders) {
  const std::string name = std::string(file.file) + file.ending;
  for (const Path& folder : folders) {
    for (const Path& path : {folder / name, folder / file.folder / name}) {
      std::error_code none;
      if (std::filesystem::is_regular_file(path, none)) {
        return path;
      }
    }
  }
  return Problem{Fault::not_found, fmt::format("the font {} is not there", name), "",
                 fmt::format("install the Debian package {}", file.package)};
}

Result<Done> add_files(FcConfig* config, const std::vector<Path>& folders) {
  for (const FontFile& file : font_files) {
    const auto path = find_font(file, folders);
    if (!path) {
      return path.problem();
    }
    const auto* text = reinterpret_cast<const FcChar8*>(path->c_str());
    if (FcConfigAppFontAddFile(config, text) == FcFalse) {
      return Problem{Fault::io, "the font file cannot be read", path->string(),
                     fmt::format("install the Debian package {} again", file.package)};
    }
  }
  return Done{};
}

// No hinting: outlines and advances as they were designed, at any size.
void set_options(PangoContext* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
}

double metric(hb_font_t* font, hb_ot_metrics_tag_t tag, double unit) {
  hb_position_t value = 0;
  return hb_ot_metrics_get_position(font, tag, &value) ? value * unit : 0;
}

Result<Done> load_face(Fonts::Inside& inside, std::size_t index) {
  constexpr double size_pt = 1000;
  const FontFile& file = font_files[index];
  PangoFontDescription* wanted = pango_font_description_new();
  pango_font_description_set_family(wanted, private_family(file).c_str());
  pango_font_description_set_absolute_size(wanted, size_pt * PANGO_SCALE);
  if (contains(file.file, "Italic")) {
    pango_font_description_set_style(wanted, PANGO_STYLE_ITALIC);
  }
  LoadedFace& face = inside.faces[index];
  face.pango.reset(pango_font_map_load_font(inside.map.get(), inside.context.get(), wanted));
  pango_font_description_free(wanted);
  if (!face.pango) {
    return Problem{Fault::not_found, fmt::format("the font {} could not be loaded", file.file),
                   "", fmt::format("install the Debian package {} again", file.package)};
  }
  auto* scaled = pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(face.pango.get()));
  face.cairo.reset(cairo_font_face_reference(cairo_scaled_font_get_font_face(scaled)));
  face.harfbuzz = pango_font_get_hb_font(face.pango.get());
  int scale_x = 0;
  int scale_y = 0;
  hb_font_get_scale(face.harfbuzz, &scale_x, &scale_y);
  face.unit = 1.0 / scale_x;
  face.x_height = metric(face.harfbuzz, HB_OT_METRICS_TAG_X_HEIGHT, 1.0 / scale_x);
  face.cap_height = metric(face.harfbuzz, HB_OT_METRICS_TAG_CAP_HEIGHT, 1.0 / scale_x);
  return Done{};
}

}  // namespace

std::string plain_text(const RichText& text) {
  std::string all;
  for (const Run& run : text) {
    all += run.text;
  }
  return all;
}

std::vector<Path> font_folders() {
  std::vector<Path> folders;
  std::error_code none;
  const Path program = std::filesystem::read_symlink("/proc/self/exe", none);
  if (!none) {
    folders.push_back(program.parent_path() / "fonts");
  }
  folders.emplace_back("/usr/share/fonts");
  return folders;
}

Fonts::Fonts(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Fonts::Fonts(Fonts&&) noexcept = default;
Fonts& Fonts::operator=(Fonts&&) noexcept = default;
Fonts::~Fonts() = default;

Result<Fonts> Fonts::load(const std::vector<Path>& folders) {
  auto inside = std::make_unique<Inside>();
  inside->config.reset(FcConfigCreate());
  const std::string xml = private_config();
  FcConfigParseAndLoadFromMemory(inside->config.get(),
                                 reinterpret_cast<const FcChar8*>(xml.c_str()), FcFalse);
  const auto added = add_files(inside->config.get(), folders);
  if (!added) {
    return added.problem();
  }
  inside->map.reset(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(inside->map.get()), inside->config.get());
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(inside->map.get()), 72);
  inside->context.reset(pango_font_map_create_context(inside->map.get()));
  set_options(inside->context.get());
  inside->buffer.reset(hb_buffer_create());
  for (std::size_t i = 0; i < face_count; ++i) {
    const auto loaded = load_face(*inside, i);
    if (!loaded) {
      return loaded.problem();
    }
  }
  return Fonts(std::move(inside));
}

double Fonts::x_height(Face face) const {
  return inside_->of(face).x_height;
}
double Fonts::cap_height(Face face) const {
  return inside_->of(face).cap_height;
}

std::vector<std::string> Fonts::names() {
  std::vector<std::string> all;
  for (const FontFile& file : font_files) {
    all.emplace_back(file.name);
  }
  return all;
}

}  // namespace backmark::draw
