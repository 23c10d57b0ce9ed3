#include "press/book/grid.h"

namespace backmark::press::book {

Grid grid_named(std::string_view name, double bleed) {
  Grid grid;
  if (name == "B") {
    grid = {.trim = {170, 240},
            .inner = 170.0 / 12,
            .head = 20,
            .outer = 170.0 / 6,
            .step = 4.5,
            .small = 3.375,
            .lines = 40,
            .column = 17.5,
            .gutter = 4.5,
            .text_columns = 5,
            .side_column = false,
            .type = 0.9};
  }
  grid.bleed = bleed;
  return grid;
}

}  // namespace backmark::press::book
