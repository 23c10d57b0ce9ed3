// Small shows for the tests of this room: a case, its light, and pieces of one material each.
#pragma once

#include <string>

#include "model/show.h"

namespace backmark::care {

class SmallShow {
 public:
  SmallShow() {
    const auto character = [&](const char* key, const char* part, model::Shape shape) {
      return add(model::Character{
          .key = key, .label = key, .part = show.pool.take(part), .shape = shape});
    };
    material = character("material", "", model::Shape::set);
    cord = character("cord_type", "cord", model::Shape::category);
    colour = character("cord_colour", "cord", model::Shape::category);
    motif = character("motif", "ornament", model::Shape::category);
  }

  template <class T>
  model::Id<T> add(T record) {
    record.id = {show.next_id++};
    show.all<T>().push_back(std::move(record));
    return show.all<T>().back().id;
  }

  model::Id<model::Case> add_case(double hours = 8) {
    return add(model::Case{.key = fmt_key(),
                           .width_mm = 1000,
                           .height_mm = 1000,
                           .depth_mm = 300,
                           .hours_per_day = hours});
  }

  model::Id<model::Piece> add_piece(const std::string& number) {
    return add(model::Piece{.number = number, .title = number});
  }
  model::Id<model::Piece> add_piece(const std::string& number, const char* made_of) {
    const auto piece = add_piece(number);
    see(piece, material, made_of);
    return piece;
  }

  void see(model::Id<model::Piece> piece,
           model::Id<model::Character> character,
           const char* value) {
    add(model::Observation{
        .piece = piece, .character = character, .value = show.pool.take(value)});
  }

  void put(model::Id<model::Piece> piece, model::Id<model::Case> in) {
    add(model::Placement{.piece = piece, .in = in, .x_mm = 500, .y_mm = 500});
  }

  void measure(model::Id<model::Case> in, double lux, double uv = 5) {
    add(model::LightReading{.in = in, .lux = lux, .uv_uw_lm = uv, .day = 20000});
  }

  void pick_free(model::Id<model::Piece> piece) {
    add(model::Pick{.piece = piece});
    add(model::Permission{
        .subject = piece.value, .use = model::Use::show, .leave = model::Leave::given});
  }

  model::Show& settled() {
    show.settle();
    return show;
  }

  model::Show show;
  model::Id<model::Character> material;
  model::Id<model::Character> cord;
  model::Id<model::Character> colour;
  model::Id<model::Character> motif;

 private:
  std::string fmt_key() const {
    return "case-" + std::to_string(show.all<model::Case>().size());
  }
};

}  // namespace backmark::care
