// The columns of every kind of record, once. Creating rows, reading them and writing them into
// the book of changes all walk over these lists; a test holds them to the tables of the schema.
#pragma once

#include <string_view>

#include "model/show.h"

namespace backmark::store {

template <class T>
inline constexpr std::string_view table = "";

#define BACKMARK_TABLE(TYPE, NAME) \
  template <>                      \
  inline constexpr std::string_view table<model::TYPE> = NAME
BACKMARK_TABLE(Piece, "piece");
BACKMARK_TABLE(Part, "part");
BACKMARK_TABLE(Observation, "observation");
BACKMARK_TABLE(Mark, "mark");
BACKMARK_TABLE(Photograph, "photograph");
BACKMARK_TABLE(Note, "note");
BACKMARK_TABLE(Row, "file_row");
BACKMARK_TABLE(Character, "character");
BACKMARK_TABLE(Lineage, "lineage");
BACKMARK_TABLE(Window, "stated_window");
BACKMARK_TABLE(Maker, "maker");
BACKMARK_TABLE(Source, "source");
BACKMARK_TABLE(Claim, "claim");
BACKMARK_TABLE(Event, "event");
BACKMARK_TABLE(Section, "section");
BACKMARK_TABLE(Pick, "pick");
BACKMARK_TABLE(Lender, "lender");
BACKMARK_TABLE(Loan, "loan");
BACKMARK_TABLE(ValueOpinion, "value_opinion");
BACKMARK_TABLE(Condition, "condition_seen");
BACKMARK_TABLE(Permission, "permission");
BACKMARK_TABLE(Overruling, "overruling");
BACKMARK_TABLE(Case, "display_case");
BACKMARK_TABLE(Placement, "placement");
BACKMARK_TABLE(Fixture, "fixture");
BACKMARK_TABLE(LightReading, "light_reading");
BACKMARK_TABLE(Exposure, "exposure");
BACKMARK_TABLE(Requirement, "requirement");
BACKMARK_TABLE(Task, "task");
BACKMARK_TABLE(Setting, "setting");
#undef BACKMARK_TABLE

// Never overwritten: superseded or withdrawn.
template <class T>
inline constexpr bool is_testimony =
    std::is_same_v<T, model::Observation> || std::is_same_v<T, model::Claim> ||
    std::is_same_v<T, model::Event>;

// Calls visit(column, member) for every member of a record, the id first. `Row` is the record
// or its const form.
template <class Row, class Visit>
void fields_of(Row& row, Visit&& visit) {
  using T = std::remove_const_t<Row>;
  visit("id", row.id);
  if constexpr (requires { row.piece; }) {
    visit("piece", row.piece);
  }
  if constexpr (std::is_same_v<T, model::Piece>) {
    visit("number", row.number), visit("title", row.title), visit("form", row.form);
    visit("lot", row.lot), visit("tray", row.tray), visit("lender", row.lender);
    visit("prose", row.prose);
  } else if constexpr (std::is_same_v<T, model::Part>) {
    visit("kind", row.kind), visit("originality", row.originality);
  } else if constexpr (std::is_same_v<T, model::Observation>) {
    visit("part", row.part), visit("character", row.character), visit("value", row.value);
    visit("number", row.number), visit("certainty", row.certainty), visit("seen", row.seen);
    visit("how", row.how), visit("by", row.by), visit("day", row.day);
    visit("source", row.source), visit("supersedes", row.supersedes);
  } else if constexpr (std::is_same_v<T, model::Mark>) {
    visit("part", row.part), visit("kind", row.kind), visit("seen", row.seen);
    visit("text", row.text), visit("place", row.place), visit("outline", row.outline);
    visit("certainty", row.certainty);
  } else if constexpr (std::is_same_v<T, model::Photograph>) {
    visit("view", row.view), visit("file", row.file);
    visit("pixels_per_mm", row.pixels_per_mm), visit("width_px", row.width_px);
    visit("height_px", row.height_px), visit("credit", row.credit);
  } else if constexpr (std::is_same_v<T, model::Note>) {
    visit("heading", row.heading), visit("text", row.text);
  } else if constexpr (std::is_same_v<T, model::Row>) {
    visit("source", row.source), visit("subject", row.subject), visit("cells", row.cells);
  } else if constexpr (std::is_same_v<T, model::Character>) {
    visit("key", row.key), visit("label", row.label), visit("part", row.part);
    visit("shape", row.shape), visit("unit", row.unit), visit("replaceable", row.replaceable);
    visit("minutes", row.minutes);
  } else if constexpr (std::is_same_v<T, model::Lineage>) {
    visit("character", row.character), visit("maker", row.maker);
    visit("variants", row.variants), visit("source", row.source);
  } else if constexpr (std::is_same_v<T, model::Window>) {
    visit("character", row.character), visit("value", row.value), visit("from_year", row.from);
    visit("to_year", row.to), visit("source", row.source);
  } else if constexpr (std::is_same_v<T, model::Maker>) {
    visit("key", row.key), visit("name", row.name), visit("inverted", row.inverted);
    visit("kind", row.kind), visit("place", row.place), visit("from_year", row.from);
    visit("to_year", row.to), visit("from_sd", row.from_sd), visit("to_sd", row.to_sd);
    visit("mark", row.mark), visit("prose", row.prose), visit("living", row.living);
  } else if constexpr (std::is_same_v<T, model::Source>) {
    visit("key", row.key), visit("title", row.title), visit("kind", row.kind);
    visit("year", row.year), visit("derives_from", row.derives_from);
    visit("reliability", row.reliability), visit("citation", row.citation);
  } else if constexpr (std::is_same_v<T, model::Claim>) {
    visit("source", row.source), visit("about", row.about), visit("subject", row.subject);
    visit("says", row.says), visit("text", row.text), visit("from_year", row.from);
    visit("to_year", row.to), visit("approximate", row.approximate), visit("maker", row.maker);
    visit("qualifier", row.qualifier), visit("role", row.role), visit("word", row.word);
    visit("character", row.character), visit("weight", row.weight);
    visit("negative", row.negative), visit("by", row.by), visit("day", row.day);
    visit("supersedes", row.supersedes);
  } else if constexpr (std::is_same_v<T, model::Event>) {
    visit("kind", row.kind), visit("date", row.date), visit("from_year", row.from);
    visit("to_year", row.to), visit("party", row.party), visit("place", row.place);
    visit("text", row.text), visit("source", row.source), visit("supersedes", row.supersedes);
  } else if constexpr (std::is_same_v<T, model::Section>) {
    visit("key", row.key), visit("title", row.title), visit("rank", row.rank);
    visit("introduction", row.introduction);
  } else if constexpr (std::is_same_v<T, model::Pick>) {
    visit("section", row.section), visit("in_show", row.in_show);
    visit("in_book", row.in_book), visit("lead", row.lead), visit("rank", row.rank);
  } else if constexpr (std::is_same_v<T, model::Lender>) {
    visit("code", row.code), visit("name", row.name), visit("address", row.address);
    visit("credit", row.credit);
  } else if constexpr (std::is_same_v<T, model::Loan>) {
    visit("lender", row.lender), visit("from_day", row.from), visit("to_day", row.to);
    visit("return_by", row.return_by), visit("conditions", row.conditions);
    visit("signed_paper", row.signed_paper);
  } else if constexpr (std::is_same_v<T, model::ValueOpinion>) {
    visit("minor", row.worth.minor), visit("currency", row.worth.currency);
    visit("basis", row.basis), visit("day", row.day), visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Condition>) {
    visit("part", row.part), visit("state", row.state), visit("text", row.text);
    visit("x_mm", row.x_mm), visit("y_mm", row.y_mm), visit("view", row.view);
    visit("day", row.day), visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Permission>) {
    visit("subject", row.subject), visit("use", row.use), visit("leave", row.leave);
    visit("terms", row.terms), visit("credit", row.credit), visit("day", row.day);
    visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Overruling>) {
    visit("of", row.of), visit("phrase", row.phrase), visit("reason", row.reason);
    visit("initials", row.initials), visit("day", row.day);
  } else if constexpr (std::is_same_v<T, model::Case>) {
    visit("key", row.key), visit("width_mm", row.width_mm), visit("height_mm", row.height_mm);
    visit("depth_mm", row.depth_mm), visit("made_of", row.made_of), visit("shelf", row.shelf);
    visit("shelf_thick_mm", row.shelf_thick_mm), visit("shelf_span_mm", row.shelf_span_mm);
    visit("leak_per_day", row.leak_per_day), visit("hours_per_day", row.hours_per_day);
    visit("buffer_kg", row.buffer_kg), visit("reservoir_g_kg", row.reservoir_g_kg);
    visit("rh_percent", row.rh_percent), visit("warmer_c", row.warmer_c);
  } else if constexpr (std::is_same_v<T, model::Placement>) {
    visit("in_case", row.in), visit("x_mm", row.x_mm), visit("y_mm", row.y_mm);
    visit("shelf", row.shelf);
  } else if constexpr (std::is_same_v<T, model::Fixture>) {
    visit("in_case", row.in), visit("name", row.name), visit("intensity_cd", row.intensity_cd);
    visit("x_mm", row.x_mm), visit("y_mm", row.y_mm), visit("z_mm", row.z_mm);
    visit("dimmed", row.dimmed), visit("uv_uw_lm", row.uv_uw_lm);
    visit("size_mm", row.size_mm);
  } else if constexpr (std::is_same_v<T, model::LightReading>) {
    visit("in_case", row.in), visit("lux", row.lux), visit("uv_uw_lm", row.uv_uw_lm);
    visit("day", row.day), visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Exposure>) {
    visit("lux_hours", row.lux_hours), visit("text", row.text), visit("day", row.day);
    visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Requirement>) {
    visit("lender", row.lender), visit("light_class", row.light_class), visit("lux", row.lux);
    visit("lux_hours_year", row.lux_hours_year), visit("rh_low", row.rh_low);
    visit("rh_high", row.rh_high), visit("c_low", row.c_low), visit("c_high", row.c_high);
    visit("waiver", row.waiver), visit("text", row.text), visit("day", row.day);
    visit("by", row.by);
  } else if constexpr (std::is_same_v<T, model::Task>) {
    visit("key", row.key), visit("group", row.group), visit("title", row.title);
    visit("after", row.after), visit("least_days", row.least_days);
    visit("likely_days", row.likely_days), visit("greatest_days", row.greatest_days);
    visit("holds", row.holds), visit("done", row.done);
  } else if constexpr (std::is_same_v<T, model::Setting>) {
    visit("key", row.key), visit("value", row.value);
  }
}

}  // namespace backmark::store
