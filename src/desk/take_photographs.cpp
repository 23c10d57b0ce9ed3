#include "desk/take_photographs.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "care/rights.h"
#include "draw/picture.h"
#include "photo/file_name.h"

namespace backmark::desk {

namespace {

using model::Photograph;
using model::Piece;
using model::View;

constexpr std::size_t largest = 200UL * 1024 * 1024;  // bytes of one picture

std::vector<std::string> numbers_of(const model::Show& show) {
  std::vector<std::string> numbers;
  for (const Piece& piece : show.all<Piece>()) {
    numbers.push_back(piece.number);
  }
  return numbers;
}

}  // namespace

// What is there, what is taken, and the change that says so.
class PhotographIntake::Body {
 public:
  explicit Body(const OpenShow& open)
      : kept_(open.kept),
        show_(open.show),
        rights_(open.show),
        photos_(open.store.folder() / "photos"),
        names_(numbers_of(open.show)) {
    for (const Photograph& photograph : show_.all<Photograph>()) {
      used_.insert(photograph.file);
      std::error_code none;
      const auto size = std::filesystem::file_size(photos_ / photograph.file, none);
      if (!none) {
        by_size_.emplace(size, photograph.file);
      }
    }
  }

  Result<Done> take(const OfferedPicture& picture) {
    const auto named = names_.read(picture.name);
    if (!named) {
      leave(picture, {Fault::not_found, "its name begins with no number of this show", "",
                      "name it after its piece, as \"ES-118-back.jpg\""});
      return Done{};
    }
    const auto size =
        picture.bytes.size() > largest
            ? Result<draw::PictureSize>(Problem{
                  Fault::refused, "the file is larger than 200 MB", "", "save a smaller copy"})
            : checked_size(picture.bytes);
    if (!size) {
      leave(picture, size.problem());
      unmatched_.back()["number"] = show_.all<Piece>()[named->number].number;
      return Done{};
    }
    const Piece& piece = show_.all<Piece>()[named->number];
    if (!rights_.may(piece, model::Use::photograph)) {
      leave(picture,
            {Fault::refused, "its piece may not be photographed before its community answers",
             "", "log the answer with \"backmark leave\""});
      return Done{};
    }
    if (is_there(picture.bytes)) {
      same_.push_back({{"name", picture.name}, {"number", piece.number}});
      return Done{};
    }
    return keep(picture, piece, named->view, *size);
  }

  Result<Json> take_one(const OfferedPicture& picture) {
    const std::size_t taken = taken_.size();
    const std::size_t same = same_.size();
    const std::size_t unmatched = unmatched_.size();
    if (auto done = take(picture); !done) {
      return done.problem();
    }
    return Json{{"taken", since(taken_, taken)},
                {"same", since(same_, same)},
                {"unmatched", since(unmatched_, unmatched)}};
  }

  Result<Json> finish(OpenShow& open, const Surroundings& around) {
    if (!taken_.empty()) {
      const model::Change whole = summed_up(open.show);
      if (auto done = open.store.apply(whole, around.who, around.now); !done) {
        undo();
        return done.problem();
      }
    }
    return Json{{"taken", taken_}, {"same", same_}, {"unmatched", unmatched_}};
  }

  // Takes the copies away again.
  void undo() {
    for (const std::string& file : written_) {
      std::error_code none;
      std::filesystem::remove(photos_ / file, none);
    }
  }

 private:
  static Result<draw::PictureSize> checked_size(const std::string& bytes) {
    const auto size = draw::picture_size(bytes);
    if (size && std::int64_t{size->width} * size->height > draw::most_pixels) {
      return Problem{Fault::refused, "the picture has more pixels than are taken (120 million)",
                     "", "save a smaller copy; 24 megapixels print a full page"};
    }
    return size;
  }

  void leave(const OfferedPicture& picture, const Problem& problem) {
    unmatched_.push_back(
        {{"name", picture.name}, {"what", problem.what}, {"fix", problem.fix}});
  }

  bool is_there(const std::string& bytes) const {
    const auto [first, last] = by_size_.equal_range(bytes.size());
    return std::any_of(first, last, [&](const auto& one) {
      const auto other = read_file(photos_ / one.second);
      return other && *other == bytes;
    });
  }

  std::string free_name(const std::string& number, View view, std::string_view ending) const {
    std::string name = photo::copy_name(number, view, ending);
    const std::string stem = name.substr(0, name.size() - ending.size() - 1);
    std::error_code none;
    for (int i = 2; used_.contains(name) || std::filesystem::exists(photos_ / name, none);
         ++i) {
      name = fmt::format("{}-{}.{}", stem, i, ending);
    }
    return name;
  }

  Result<Done> keep(const OfferedPicture& picture,
                    const Piece& piece,
                    View view,
                    const draw::PictureSize& size) {
    const std::string_view ending = starts_with(picture.bytes, "\x89PNG") ? "png" : "jpg";
    const std::string file = free_name(piece.number, view, ending);
    std::error_code none;
    std::filesystem::create_directories(photos_, none);
    if (auto written = write_file(photos_ / file, picture.bytes); !written) {
      return written.problem();
    }
    used_.insert(file);
    written_.push_back(file);
    by_size_.emplace(picture.bytes.size(), file);
    photographs_.push_back({.piece = piece.id,
                            .view = view,
                            .file = file,
                            .width_px = size.width,
                            .height_px = size.height});
    taken_.push_back({{"name", picture.name},
                      {"number", piece.number},
                      {"view", photo::name_of(view)},
                      {"file", file}});
    return Done{};
  }

  static Json since(const Json& list, std::size_t from) {
    Json rest = Json::array();
    for (std::size_t i = from; i < list.size(); ++i) {
      rest.push_back(list[i]);
    }
    return rest;
  }

  model::Change summed_up(const model::Show& show) const {
    model::Change change(show, "photographs",
                         taken_.size() == 1
                             ? fmt::format("{} of {}", taken_[0].value("view", ""),
                                           taken_[0].value("number", ""))
                             : fmt::format("{} photographs", taken_.size()));
    for (const Photograph& photograph : photographs_) {
      change.add(photograph);
    }
    return change;
  }

  std::shared_ptr<const model::Show> kept_;
  const model::Show& show_;
  care::Rights rights_;
  Path photos_;
  photo::NameReader names_;
  std::set<std::string> used_;
  std::multimap<std::uintmax_t, std::string> by_size_;
  std::vector<std::string> written_;
  std::vector<Photograph> photographs_;
  Json taken_ = Json::array();
  Json same_ = Json::array();
  Json unmatched_ = Json::array();
};

PhotographIntake::PhotographIntake(const OpenShow& open)
    : body_(std::make_unique<Body>(open)) {}
PhotographIntake::PhotographIntake(PhotographIntake&&) noexcept = default;
PhotographIntake::~PhotographIntake() = default;

Result<Json> PhotographIntake::take(const OfferedPicture& picture) {
  return body_->take_one(picture);
}

Result<Json> PhotographIntake::finish(OpenShow& open, const Surroundings& around) {
  return body_->finish(open, around);
}

void PhotographIntake::undo() {
  body_->undo();
}

Result<Json> take_photographs(OpenShow& open,
                              const NextPicture& next,
                              const Surroundings& around) {
  PhotographIntake intake(open);
  while (const auto picture = next()) {
    if (auto taken = intake.take(*picture); !taken) {
      intake.undo();
      return taken.problem();
    }
  }
  return intake.finish(open, around);
}

Json missing_views(const model::Show& show) {
  Json list = Json::array();
  for (const Piece& piece : show.all<Piece>()) {
    Json missing = Json::array();
    for (const View view : {View::front, View::back}) {
      const auto all = show.photographs_of(piece.id);
      if (std::none_of(all.begin(), all.end(),
                       [view](const Photograph& one) { return one.view == view; })) {
        missing.push_back(photo::name_of(view));
      }
    }
    if (!missing.empty()) {
      list.push_back({{"number", piece.number}, {"missing", missing}});
    }
  }
  return list;
}

}  // namespace backmark::desk
