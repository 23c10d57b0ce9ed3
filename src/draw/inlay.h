// Pictures made ready for a PDF apart from any canvas: packed once, on any thread, and put into
// the file as they are. Cairo would pack a mask again, slowly, while it ends the page.
#pragma once

#include <string>
#include <vector>

#include "draw/colour.h"
#include "draw/geometry.h"
#include "draw/picture.h"

namespace backmark::draw {

// An image of a PDF (ISO 32000-1, 8.9.5) with its soft mask (11.6.5.3).
struct Inlay {
  int width = 0;  // pixels, of colour and mask alike
  int height = 0;
  std::string jpeg;   // empty: all of one colour
  bool grey = false;  // the JPEG has one channel
  Colour flat;
  std::string mask;  // opacities, rows of differences (predictor 2), deflated; empty: opaque
};

// The picture as JPEG (quality 1 to 100, no chroma subsampling) with its opacity as mask.
Inlay inlay_of(const Picture& picture, int quality = 90);

struct ReadyPhotograph {
  Inlay inlay;
  PictureSize stored;  // upright, before it was made smaller
  Picture picture;     // as packed; for its shadow
};

// A photograph (PNG or JPEG) for a place of `most` pixels: made smaller if it has a tenth more.
// A JPEG that needs no change goes in as it is, but without what its maker wrote beside the
// pixels (place, owner). Problems: those of decode_picture.
Result<ReadyPhotograph> ready_photograph(std::string_view bytes, PictureSize most);

// A drop shadow: the shape moved and blurred, in mm. Blur is the standard deviation.
struct Shadow {
  double dx = 0;
  double dy = 0;
  double blur = 0;
  Colour colour = {0, 0, 0, 0.3};
};

struct ReadyShadow {
  Inlay inlay;
  Box box;  // where it lies
};

// What `picture`, lying in `box` (mm), casts: all shadows in one, in the colour of the first,
// gone at three blurs from the box. `pixels_per_mm` two to the least blur shows all there is.
ReadyShadow shadow_of(const Picture& picture,
                      const Box& box,
                      const std::vector<Shadow>& shadows,
                      double pixels_per_mm);

}  // namespace backmark::draw
