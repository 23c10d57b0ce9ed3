#include "press/identification.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "press/findings.h"
#include "press/lent.h"
#include "press/sheet.h"
#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Box;
using draw::Canvas;
using draw::Run;
using words::FactKind;

constexpr double pictures_mm = 92;
constexpr double value_x = 46;
constexpr double value_pt = 8.6;
constexpr double leading = 4.4;
const draw::Stroke hair{0.25 * mm_per_pt};

struct Field {
  std::string name;
  std::string text;  // empty: not recorded
};

struct Picture {
  std::string title;
  const model::Photograph* photograph = nullptr;
};

class Identification {
 public:
  explicit Identification(const PressJob& job)
      : job_(job),
        grammar_(job.show, job.beliefs, job.phrases),
        states_(findings_by_piece(job.show)) {
    for (const model::Piece& piece : job.show.all<model::Piece>()) {
      if (piece.lot != model::Word{}) {
        lots_[piece.lot.value].push_back(&piece);
      }
    }
  }

  Result<Printed> print();

 private:
  std::vector<Field> fields(const Lent& lent);
  std::string features(const model::Piece& piece) const;
  std::string related(const model::Piece& piece) const;
  std::vector<Picture> pictures(const model::Piece& piece);
  std::string fact(const model::Piece& piece, FactKind kind);
  void add_page(Sheets& sheets, const Lent& lent);
  void show_pictures(Canvas& canvas, const Box& body, const std::vector<Picture>& pictures);
  void show_fields(Canvas& canvas, const Box& body, double y, const std::vector<Field>& fields);

  const PressJob& job_;
  words::Grammar grammar_;
  std::map<std::int32_t, Findings> states_;
  std::map<std::uint32_t, std::vector<const model::Piece*>> lots_;
  std::size_t without_features_ = 0;
  Printed printed_;
};

std::string Identification::fact(const model::Piece& piece, FactKind kind) {
  if (!words::may_show(job_.audience, kind, words::Whose::own)) {
    return {};
  }
  std::string text = grammar_.text_of(piece, kind);
  if (!text.empty()) {
    printed_.facts.push_back({"identification", piece.number, kind, text});
  }
  return text;
}

// Damage and repair tell pieces of one pattern apart better than anything else.
std::string Identification::features(const model::Piece& piece) const {
  std::vector<std::string> all;
  const auto states = states_.find(piece.id.value);
  if (states != states_.end()) {
    for (const Finding& one : states->second.list) {
      const std::string part(job_.show.text(one.last->part));
      const std::string text = one.last->text.empty()
                                   ? std::string(job_.show.text(one.last->state))
                                   : one.last->text;
      all.push_back(part.empty() ? text : part + ": " + text);
    }
  }
  for (const model::Part& part : job_.show.parts_of(piece.id)) {
    if (part.originality == model::Originality::replaced) {
      all.push_back(std::string(job_.show.text(part.kind)) + " replaced");
    }
  }
  return words::with_curved_quotes(words::sentence(join(all, "; ")));
}

std::string Identification::related(const model::Piece& piece) const {
  const auto lot = lots_.find(piece.lot.value);
  std::vector<std::string> numbers;
  if (lot != lots_.end()) {
    for (const model::Piece* other : lot->second) {
      if (other->id != piece.id) {
        numbers.push_back(other->number);
      }
    }
  }
  return numbers.empty() ? "" : "came together with " + join(numbers, ", ");
}

std::vector<Field> Identification::fields(const Lent& lent) {
  const model::Piece& piece = *lent.piece;
  const std::string form(job_.show.text(piece.form));
  std::vector<Field> all{
      {"Distinguishing features", features(piece)},
      {"Type of object", words::sentence(form)},
      {"Title", fact(piece, FactKind::title)},
      {"Subject", words::sentence(words::subject_text(job_.show, piece.id))},
      {"Materials", fact(piece, FactKind::materials)},
      {"Techniques", words::sentence(words::technique_text(job_.show, piece.id))},
      {"Measurements", fact(piece, FactKind::size)},
      {"Inscriptions and marks", fact(piece, FactKind::marks)},
      {"Back and fitting", fact(piece, FactKind::back)},
      {"Date or period, place", fact(piece, FactKind::made)},
      {"Maker", fact(piece, FactKind::maker)},
      {"Related objects", related(piece)},
      {"Object number", piece.number}};
  if (all.front().text.empty()) {
    ++without_features_;
  }
  return all;
}

std::vector<Picture> Identification::pictures(const model::Piece& piece) {
  std::vector<Picture> all{{"Front", photograph_of(job_.show, piece.id, model::View::front)},
                           {"Back", photograph_of(job_.show, piece.id, model::View::back)}};
  for (const Picture& one : all) {
    if (one.photograph == nullptr) {
      printed_.findings.push_back(
          {Fault::not_found,
           fmt::format("there is no photograph of its {}", lower_ascii(one.title)),
           "piece " + piece.number, "take one with a scale beside it"});
    }
  }
  for (const auto& [title, view] : {std::pair{"Mark", model::View::mark},
                                    {"Detail", model::View::detail},
                                    {"Tips", model::View::tips}}) {
    const model::Photograph* photograph = photograph_of(job_.show, piece.id, view);
    if (all.size() == 2 && photograph != nullptr) {
      all.push_back({title, photograph});
    }
  }
  return all;
}

void Identification::show_pictures(Canvas& canvas,
                                   const Box& body,
                                   const std::vector<Picture>& pictures) {
  const double gap = 4;
  const double narrow = pictures.size() > 2 ? 38 : 0;
  const double wide =
      (body.width - narrow - gap * static_cast<double>(pictures.size() - 1)) / 2;
  double x = body.x;
  for (std::size_t at = 0; at < pictures.size(); ++at) {
    const Box frame{x, body.y, at < 2 ? wide : narrow, pictures_mm};
    const Box room{frame.x + 3, frame.y + 7, frame.width - 6, frame.height - 15};
    canvas.rectangle(frame);
    canvas.stroke(draw::rule_grey, hair);
    draw::show(canvas, job_.fonts, {frame.x + 2, frame.y + 4.4},
               Run{pictures[at].title, sheet_strong(7.2)});
    const double ratio = common_ratio({pictures[at].photograph}, {room.width, room.height});
    show_piece(canvas, job_, pictures[at].photograph, room, ratio, printed_.findings);
    if (pictures[at].photograph != nullptr && pictures[at].photograph->pixels_per_mm > 0) {
      const double foot = frame.bottom() - 4;
      const double length = (at < 2 ? 20 : 10) * ratio;
      canvas.line({frame.x + 3, foot}, {frame.x + 3 + length, foot}, draw::ink,
                  {0.5 * mm_per_pt});
      for (const double end : {0.0, length}) {
        canvas.line({frame.x + 3 + end, foot - 1}, {frame.x + 3 + end, foot + 1}, draw::ink,
                    hair);
      }
      draw::show(canvas, job_.fonts, {frame.x + 5 + length, foot + 0.9},
                 Run{at < 2 ? "20 mm" : "10 mm", sheet_quiet(6.4)});
    }
    x += frame.width + gap;
  }
}

void Identification::show_fields(Canvas& canvas,
                                 const Box& body,
                                 double y,
                                 const std::vector<Field>& fields) {
  for (const Field& field : fields) {
    const bool none = field.text.empty();
    auto lines =
        wrapped(job_.fonts, none ? "not recorded" : field.text,
                none ? sheet_quiet(value_pt) : sheet_text(value_pt), body.width - value_x);
    draw::show(canvas, job_.fonts, {body.x, y + 4.6}, Run{field.name, sheet_strong(7.4)});
    const double under =
        show_lines(canvas, job_.fonts, {body.x + value_x, y + 4.6}, lines,
                   none ? sheet_quiet(value_pt) : sheet_text(value_pt), leading);
    y = under - leading + 2.4;
    hairline(canvas, body.x, y, body.width);
  }
}

void Identification::add_page(Sheets& sheets, const Lent& lent) {
  const Box body = sheets.body();
  const std::string title = grammar_.text_of(*lent.piece, FactKind::title);
  sheets.add(
      fmt::format("{}   ·   {}   ·   recorded {}", lent.piece->number, title,
                  day_text(job_.day)),
      lent.piece->number,
      [this, body, pictures = pictures(*lent.piece), fields = fields(lent)](Canvas& canvas) {
        show_pictures(canvas, body, pictures);
        show_fields(canvas, body, body.y + pictures_mm + 5, fields);
      });
}

Result<Printed> Identification::print() {
  if (auto allowed = may_print(job_, FactKind::condition_summary, "identification"); !allowed) {
    return allowed.problem();
  }
  const auto lent = lent_pieces(job_, grammar_);
  if (lent.empty()) {
    return no_loans(job_, "identification");
  }
  Sheets sheets(job_,
                {"Object identification",
                 "Facts only: no values, no owner, no place of keeping. Keep a copy apart "
                 "from the piece."});
  for (const Lent& one : lent) {
    add_page(sheets, one);
  }
  if (without_features_ > 0) {
    printed_.findings.push_back(
        {Fault::not_found,
         fmt::format("{} of {} lent pieces have no distinguishing feature on record",
                     without_features_, lent.size()),
         "identification", "note losses, repairs and solder before they travel"});
  }
  auto pdf = sheets.finish();
  if (!pdf) {
    return pdf.problem();
  }
  printed_.files = {{"identification.pdf", std::move(*pdf)}};
  return std::move(printed_);
}

}  // namespace

Result<Printed> print_identification(const PressJob& job) {
  return Identification(job).print();
}

}  // namespace backmark::press
