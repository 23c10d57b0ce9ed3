#include "scenario/palette.h"

namespace backmark::scenario {
namespace {

using draw::Colour;

constexpr Colour hex(std::uint32_t rgb) {
  return Colour::hex(rgb);
}

draw::Point upper_left(const draw::Box& box) {
  return {box.x + 0.12 * box.width, box.y};
}

draw::Point lower_right(const draw::Box& box) {
  return {box.right() - 0.12 * box.width, box.bottom()};
}

}  // namespace

Tones tones_of(Metal metal) {
  static const std::array<Tones, 6> tones{{
      {hex(0xfbfbf7), hex(0xd9dbd8), hex(0xb4b8b7), hex(0x868c8d), hex(0x565d60),
       hex(0x24292c)},
      {hex(0xf5f1e4), hex(0xcfccbd), hex(0xaeab9a), hex(0x827f70), hex(0x55534a),
       hex(0x282721)},
      {hex(0xfdf0b8), hex(0xe0be63), hex(0xbd9440), hex(0x8d6a28), hex(0x5c4317),
       hex(0x2c200b)},
      {hex(0xfbd9be), hex(0xdb9a6d), hex(0xb8704a), hex(0x864c2f), hex(0x57301d),
       hex(0x2b170d)},
      {hex(0xb9c0c4), hex(0x7b858a), hex(0x566066), hex(0x3a4348), hex(0x252c30),
       hex(0x0f1315)},
      {hex(0xe6e8ea), hex(0xb5babd), hex(0x939a9e), hex(0x70777b), hex(0x4c5256),
       hex(0x24282a)},
  }};
  return tones[static_cast<std::size_t>(metal)];
}

StoneTones tones_of(Stone stone) {
  static const std::array<StoneTones, 18> tones{{
      {hex(0x9aa3a6), hex(0x5d676b), hex(0x30383b), hex(0xc8cdcf)},
      {hex(0x8fc4a0), hex(0x3f7f5d), hex(0x1c4733), hex(0x16301f)},
      {hex(0xd9856a), hex(0xa8432c), hex(0x5f1f13), hex(0xefd8c8)},
      {hex(0x77858f), hex(0x47545d), hex(0x262f36), hex(0x5e6c76)},
      {hex(0xf3d9a6), hex(0xc98b45), hex(0x7b4a1d), hex(0xf8ecd2)},
      {hex(0x7fa3d6), hex(0x2f559a), hex(0x152b5c), hex(0xdbe4f2)},
      {hex(0x5c6165), hex(0x1f2326), hex(0x08090a), hex(0x34393c)},
      {hex(0xdff3ea), hex(0x9fd0c0), hex(0x5f9a8b), hex(0xf2fbf7)},
      {hex(0xffffff), hex(0xdde6ee), hex(0x98a9ba), hex(0xf6fafd)},
      {hex(0xe8f8ef), hex(0x9cc7c4), hex(0x6a8db4), hex(0xe2c6dd)},
      {hex(0xc9cfe4), hex(0x5f6aa0), hex(0x272c57), hex(0xe4e6f2)},
      {hex(0xf7a68d), hex(0xd2533d), hex(0x8a2318), hex(0xf9c4b2)},
      {hex(0xe9d6ae), hex(0xbf9a63), hex(0x7e5b30), hex(0xf2e6c9)},
      {hex(0xe0a85a), hex(0x91531d), hex(0x3e1e0a), hex(0x2a1306)},
      {hex(0xfdf8ea), hex(0xe9dcbe), hex(0xb7a47c), hex(0xcdb98f)},
      {hex(0xffd98a), hex(0xe0912a), hex(0x8f4a0c), hex(0xffe9b8)},
      {hex(0x9ec3dc), hex(0x3f7aa6), hex(0x1b3f60), hex(0xdbe9f2)},
      {hex(0xc9a076), hex(0x8d6440), hex(0x553920), hex(0x6b4a2c)},
  }};
  return tones[static_cast<std::size_t>(stone)];
}

CordTones tones_of(CordColour colour) {
  static const std::array<CordTones, 7> tones{{
      {hex(0x0c0f11), hex(0x2b3135), hex(0x6d777d)},
      {hex(0x25140a), hex(0x5b3a22), hex(0xab7d53)},
      {hex(0x54391c), hex(0x9f7945), hex(0xe0c592)},
      {hex(0x0d1c2b), hex(0x274660), hex(0x7199b6)},
      {hex(0x380e0c), hex(0x7b2b25), hex(0xc67d72)},
      {hex(0x857f6c), hex(0xd3ccb6), hex(0xfffdf3)},
      {hex(0x10241a), hex(0x2d5640), hex(0x7aab8d)},
  }};
  return tones[static_cast<std::size_t>(colour)];
}

draw::Paint sheet_paint(const Tones& t, const draw::Box& box) {
  return draw::LinearGradient{upper_left(box),
                              lower_right(box),
                              {{0, t.glint},
                               {0.22, t.light},
                               {0.46, t.middle},
                               {0.58, t.light},
                               {0.72, t.middle},
                               {1, t.shade}}};
}

draw::Paint rod_paint(const Tones& t, double left, double right) {
  return draw::LinearGradient{{left, 0},
                              {right, 0},
                              {{0, t.dark},
                               {0.16, t.middle},
                               {0.32, t.glint},
                               {0.5, t.light},
                               {0.74, t.shade},
                               {0.92, t.dark},
                               {1, t.shade}}};
}

draw::Paint bead_paint(const Tones& t, draw::Point centre, double radius) {
  return draw::RadialGradient{{centre.x - 0.35 * radius, centre.y - 0.4 * radius},
                              0,
                              centre,
                              radius,
                              {{0, t.glint}, {0.4, t.light}, {0.75, t.shade}, {1, t.dark}}};
}

draw::Paint bevel_paint(const draw::Box& box, double strength) {
  return draw::LinearGradient{upper_left(box),
                              lower_right(box),
                              {{0, {1, 1, 1, 0.95 * strength}},
                               {0.42, {1, 1, 1, 0.15 * strength}},
                               {0.56, {0, 0, 0, 0.08 * strength}},
                               {1, {0, 0, 0, 0.62 * strength}}}};
}

draw::Paint hollow_paint(const draw::Box& box, double strength) {
  return draw::LinearGradient{upper_left(box),
                              lower_right(box),
                              {{0, {0, 0, 0, 0.7 * strength}},
                               {0.45, {0, 0, 0, 0.25 * strength}},
                               {0.6, {1, 1, 1, 0.05 * strength}},
                               {1, {1, 1, 1, 0.6 * strength}}}};
}

draw::Paint slip_paint(Stone stone, const draw::Box& box) {
  const StoneTones t = tones_of(stone);
  if (stone == Stone::ormer) {
    return draw::LinearGradient{{box.x, box.y},
                                {box.right(), box.bottom()},
                                {{0, hex(0xeafaf0)},
                                 {0.2, hex(0x93ccbd)},
                                 {0.4, hex(0xc9b4da)},
                                 {0.58, hex(0x79a5c8)},
                                 {0.78, hex(0xe6cbd6)},
                                 {1, hex(0x649a9d)}}};
  }
  return draw::LinearGradient{{box.x, box.y},
                              {box.right(), box.bottom()},
                              {{0, t.light}, {0.45, t.middle}, {1, t.dark}}};
}

draw::Paint dome_paint(Stone stone, draw::Point centre, double radius) {
  const StoneTones t = tones_of(stone);
  if (stone == Stone::ormer) {
    return slip_paint(stone, {centre.x - radius, centre.y - radius, 2 * radius, 2 * radius});
  }
  return draw::RadialGradient{{centre.x - 0.3 * radius, centre.y - 0.38 * radius},
                              0,
                              {centre.x - 0.05 * radius, centre.y - 0.05 * radius},
                              1.1 * radius,
                              {{0, t.light}, {0.45, t.middle}, {0.85, t.dark}, {1, t.dark}}};
}

}  // namespace backmark::scenario
