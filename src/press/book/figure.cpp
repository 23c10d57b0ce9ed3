#include "press/book/figure.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

constexpr double between = 8;     // mm from one cut-out to another
constexpr double above_bar = 5;   // from the pictures to the bar's foot
constexpr double label_room = 5;  // under pictures that have numbers
const draw::Size frame{40, 30};   // of a picture that there is none of

draw::Size size_at(const FigurePicture& picture, double ratio) {
  return picture.photograph == nullptr ? frame : size_of(*picture.photograph, ratio);
}

double caption_lead(const Grid& grid) {
  return grid.small;
}

std::vector<draw::Stretch> caption_words(Layout& book, const Block& block) {
  const Grid& grid = book.grid();
  auto words = stretches(block.words, caption(grid),
                         [&book](const std::string& place) { return book.page_of(place); });
  words.insert(words.begin(), {fmt::format("Fig.\u00A0{}  ", block.number),
                               caption(grid).with(draw::copper), false});
  return words;
}

draw::Paragraph caption_lines(Layout& book, const Block& block, double width) {
  return book.set_ragged(caption_words(book, block), {width, 0});
}

const model::Photograph* picture_of(const model::Show& show,
                                    const model::Piece& piece,
                                    std::string_view view) {
  using model::View;
  constexpr std::array<std::pair<std::string_view, View>, 6> views{{{"front", View::front},
                                                                    {"back", View::back},
                                                                    {"tips", View::tips},
                                                                    {"mark", View::mark},
                                                                    {"side", View::side},
                                                                    {"detail", View::detail}}};
  for (const auto& [name, which] : views) {
    if (name == view) {
      return photograph_of(show, piece.id, which);
    }
  }
  return nullptr;
}

FigurePicture picture_of_piece(Layout& book, const FigurePiece& one, const Block& block) {
  const Plan& plan = book.plan();
  const model::Piece* piece = plan.show().piece(one.piece);
  const words::Place* place =
      piece == nullptr ? nullptr : plan.grammar.numbering().place_of(piece->id);
  FigurePicture picture;
  if (place == nullptr) {
    return picture;
  }
  picture.label = std::to_string(place->number);
  picture.alternative =
      fmt::format("{}, {}", plan.grammar.text_of(*piece, words::FactKind::title), one.view);
  picture.photograph = picture_of(plan.show(), *piece, one.view);
  if (picture.photograph == nullptr) {
    book.find(
        {Fault::not_found,
         fmt::format("figure {} has no picture of {}, {}", block.number, one.piece, one.view),
         block.where, "photograph it, ask for leave to print it, or show another view"});
  } else if (picture.photograph->pixels_per_mm <= 0) {
    picture.photograph = nullptr;
    book.find({Fault::conflict,
               fmt::format("the picture of {}, {}, has no true scale, and is not printed",
                           one.piece, one.view),
               block.where, "photograph it with a scale, or give its pixels a millimetre"});
  }
  return picture;
}

std::vector<FigurePicture> pictures_of(Layout& book, const Block& block) {
  std::vector<FigurePicture> pictures;
  for (const FigurePiece& one : block.pieces) {
    if (one.file.empty()) {
      pictures.push_back(picture_of_piece(book, one, block));
      continue;
    }
    const auto loose = book.plan().loose.find(one.file);
    pictures.push_back({loose == book.plan().loose.end() ? nullptr : &loose->second,
                        {},
                        plain_text(block.words)});
  }
  return pictures;
}

// Rows as wide as `width`, each as full as it goes; none if a picture is wider or the rows are
// higher than `most` in all.
std::vector<Figure::Row> rows_of(const std::vector<FigurePicture>& pictures,
                                 double ratio,
                                 draw::Size most,
                                 double under_row) {
  std::vector<Figure::Row> rows;
  double x = 0;
  double height = 0;
  for (const FigurePicture& picture : pictures) {
    const draw::Size size = size_at(picture, ratio);
    if (size.width > most.width + 0.1) {
      return {};
    }
    if (rows.empty() || x + size.width > most.width + 0.1) {
      rows.emplace_back();
      x = 0;
    }
    rows.back().pictures.push_back(picture);
    rows.back().height = std::max(rows.back().height, size.height);
    x += size.width + between;
  }
  for (const Figure::Row& row : rows) {
    height += row.height + under_row;
  }
  return height > most.height + 0.1 ? std::vector<Figure::Row>() : rows;
}

std::vector<double> ratios_for(const std::vector<FigurePicture>& pictures) {
  const bool marks =
      std::all_of(pictures.begin(), pictures.end(), [](const FigurePicture& one) {
        return one.photograph != nullptr && one.photograph->view == model::View::mark;
      });
  return marks ? std::vector<double>{4, 3, 2, 1}
               : std::vector<double>{1, 3.0 / 4, 2.0 / 3, 1.0 / 2, 1.0 / 3, 1.0 / 4};
}

bool several_pieces(const std::vector<FigurePicture>& pictures) {
  return std::any_of(pictures.begin(), pictures.end(), [&](const FigurePicture& one) {
    return !one.label.empty() && one.label != pictures.front().label;
  });
}

// Without a scale a photograph is as wide as what it stands in.
void fit_loose(Figure& figure, const std::vector<FigurePicture>& pictures, double width) {
  for (const FigurePicture& picture : pictures) {
    const draw::Size at_one = size_at(picture, 1);
    figure.rows.push_back({{picture}, at_one.height * width / std::max(1.0, at_one.width)});
  }
  figure.ratio = 0;
  figure.width = width;
}

// Tries the places from small to large; the first that holds it at its best ratio is taken.
void fit(const Grid& grid, const std::vector<FigurePicture>& pictures, Figure& figure) {
  struct Room {
    Figure::Where where;
    draw::Size size;
  };
  const double page = grid.lines * grid.step;
  std::vector<Room> rooms;
  if (grid.side_column) {
    rooms.push_back({Figure::Where::side, {grid.side_width(), 0.62 * page}});
  }
  rooms.push_back({Figure::Where::text, {grid.text_width(), 0.5 * page}});
  rooms.push_back({Figure::Where::wide, {grid.width(), 0.6 * page}});
  const double under_row = figure.labels ? label_room + between / 2 : between / 2;
  for (const double ratio : ratios_for(pictures)) {
    for (const Room& room : rooms) {
      auto rows = rows_of(pictures, ratio, room.size, under_row);
      if (rows.empty() || (room.where == Figure::Where::side && rows.size() > 2)) {
        continue;
      }
      figure.rows = std::move(rows);
      figure.ratio = ratio;
      figure.where = room.where;
      figure.width = room.size.width;
      return;
    }
  }
  figure.rows = {{pictures, frame.height}};
  figure.width = grid.text_width();
}

double bar_length(const Figure& figure) {
  return figure.ratio >= 2 ? 5 : 20;
}

void draw_frame(Layout& book, Page& page, const draw::Box& box) {
  page.drawings.push_back([box](draw::Canvas& canvas) {
    canvas.rectangle(box);
    canvas.stroke(draw::copper,
                  {0.35 * mm_per_point, draw::Cap::butt, draw::Join::miter, {1, 1}});
  });
  book.text(page, box.centre(),
            {{"photograph missing", sans(book.grid(), 5.6).with(draw::copper)}},
            draw::Align::centre);
}

// Returns the y under the row.
double place_row(
    Layout& book, Page& page, const Figure& figure, const Figure::Row& row, draw::Point at) {
  const Grid& grid = book.grid();
  const double floor = at.y + row.height;
  for (const FigurePicture& picture : row.pictures) {
    draw::Size size = size_at(picture, figure.ratio);
    if (picture.photograph == nullptr) {
      draw_frame(book, page, {at.x, floor - size.height, size.width, size.height});
    } else {
      const double ratio = figure.ratio > 0
                               ? figure.ratio
                               : figure.width / size_of(*picture.photograph, 1).width;
      size = size_of(*picture.photograph, ratio);
      Plate& plate =
          add_plate(page, picture.photograph, {at.x + size.width / 2, floor - size.height / 2},
                    ratio, picture.alternative);
      plate.shadow = plate.shadow && figure.ratio > 0;
    }
    if (figure.labels) {
      draw::Style number = caption(grid).with(draw::copper);
      book.text(page, {at.x, floor + label_room}, {{picture.label, number}});
    }
    at.x += size.width + between;
  }
  return floor + (figure.labels ? label_room : 0);
}

}  // namespace

Figure make_figure(Layout& book, const Block& block) {
  const Grid& grid = book.grid();
  Figure figure;
  figure.block = &block;
  const auto pictures = pictures_of(book, block);
  figure.labels = several_pieces(pictures);
  const bool loose = std::any_of(block.pieces.begin(), block.pieces.end(),
                                 [](const FigurePiece& one) { return !one.file.empty(); });
  if (loose) {
    figure.where = grid.side_column ? Figure::Where::side : Figure::Where::text;
    fit_loose(figure, pictures, grid.side_column ? grid.side_width() : grid.columns(4));
  } else {
    fit(grid, pictures, figure);
  }
  for (std::size_t at = 0; at < figure.rows.size(); ++at) {
    figure.height +=
        figure.rows[at].height + (at > 0 ? between / 2 : 0) + (figure.labels ? label_room : 0);
  }
  figure.height += figure.ratio > 0 ? above_bar : 0;
  const auto lines = caption_lines(book, block, std::min(figure.width, grid.text_width()));
  figure.height +=
      1.2 * caption_lead(grid) + caption_lead(grid) * (static_cast<double>(lines.size()) - 1);
  return figure;
}

void place_figure(Layout& book, Page& page, const Figure& figure, draw::Point at) {
  const Grid& grid = book.grid();
  book.place(page, fmt::format("figure {}", figure.block->number), at);
  double y = at.y;
  for (std::size_t row = 0; row < figure.rows.size(); ++row) {
    y = place_row(book, page, figure, figure.rows[row],
                  {at.x, y + (row > 0 ? between / 2 : 0)});
  }
  if (figure.ratio > 0) {
    y += above_bar;
    const double bar = bar_length(figure);
    add_scale_bar(book, page, {at.x, y}, bar, figure.ratio);
    book.text(page, {at.x + scale_bar_width(book, bar, figure.ratio) + 2, y},
              {{ratio_words(figure.ratio), caption_italic(grid).with(draw::grey)}});
  }
  y += 1.2 * caption_lead(grid);
  const int paragraph = book.new_paragraph();
  for (draw::ParagraphLine& line :
       caption_lines(book, *figure.block, std::min(figure.width, grid.text_width()))) {
    add_links(book, page, line.tags, figure.block->words, {at.x, y});
    page.lines.push_back({{at.x, y}, std::move(line.line), Role::caption, paragraph});
    y += caption_lead(grid);
  }
}

int figure_lines(const Grid& grid, const Figure& figure) {
  return static_cast<int>(std::ceil(figure.height / grid.step)) + 1;
}

void add_links(Layout& book,
               Page& page,
               const std::vector<draw::Tagged>& tags,
               const Words& words,
               draw::Point baseline) {
  for (const draw::Tagged& tagged : tags) {
    const Span& span = words[static_cast<std::size_t>(tagged.tag)];
    const double height = book.grid().step;
    const draw::Box box{baseline.x + tagged.x, baseline.y - 0.75 * height, tagged.width,
                        height};
    if (span.kind == Span::Kind::address) {
      page.links.push_back({box, {}, span.key});
    } else if (span.kind == Span::Kind::citation) {
      book.link(page, box, "bibliography");
    } else if (span.kind == Span::Kind::piece) {
      book.link(page, box, "piece " + span.key);
    } else if (span.kind == Span::Kind::page || span.kind == Span::Kind::figure) {
      book.link(page, box, span.key);
    }
  }
}

}  // namespace backmark::press::book
