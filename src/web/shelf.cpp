#include "web/shelf.h"

#include <algorithm>

#include "base/text.h"
#include "desk/cleared.h"
#include "photo/file_name.h"
#include "photo/sprite.h"
#include "web/assets.h"
#include "web/reply.h"

namespace backmark::web {

namespace {

Problem missing(std::string what) {
  return {Fault::not_found, std::move(what), "", "take one, and drop it on the page"};
}

std::string keep_for(const Request& request) {
  return request.query.contains("v") ? "private, max-age=31536000, immutable"
                                     : "private, no-cache";
}

// 0 for the original, -1 for no size that is kept.
int size_asked(const Request& request) {
  const auto at = request.query.find("size");
  if (at == request.query.end() || at->second == "full") {
    return 0;
  }
  const auto size = to_whole(at->second).value_or(-1);
  return std::find(photo::sprite_sizes.begin(), photo::sprite_sizes.end(), size) ==
                 photo::sprite_sizes.end()
             ? -1
             : static_cast<int>(size);
}

const model::Photograph* find_photograph(const model::Show& show,
                                         const model::Piece& piece,
                                         model::View view) {
  for (const model::Photograph& one : show.photographs_of(piece.id)) {
    if (one.view == view) {
      return &one;
    }
  }
  return nullptr;
}

// A plain file below `photos`, whatever the record says.
bool is_safe(const Path& photos, const std::string& file) {
  const Path below = Path(file).lexically_normal();
  if (below.empty() || below.is_absolute() || *below.begin() == "..") {
    return false;
  }
  std::error_code none;
  return std::filesystem::symlink_status(photos / below, none).type() ==
         std::filesystem::file_type::regular;
}

// Another file, or the same one changed, has another tag (FNV-1a, 64 bits).
std::string tag_of(const Path& file) {
  std::error_code none;
  const std::string all =
      fmt::format("{}|{}|{}", file.filename().string(), std::filesystem::file_size(file, none),
                  std::filesystem::last_write_time(file, none).time_since_epoch().count());
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : all) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  }
  return fmt::format("{:016x}", hash);
}

}  // namespace

bool Shelf::is_hidden(const model::Show& show, const model::Photograph& photograph) {
  const std::lock_guard lock(asking_);
  if (asked_at_ != show.position) {
    hidden_ = desk::hidden_pictures(show);
    asked_at_ = show.position;
  }
  return hidden_.contains(photograph.id);
}

Response Shelf::photograph(const Request& request, const model::Show& show) {
  if (request.path.size() != 3) {
    return reply(missing("a photograph is named by its piece and its side"));
  }
  const model::Piece* piece = show.piece(request.path[1]);
  const auto view = photo::view_named(request.path[2]);
  if (piece == nullptr || !view) {
    return reply(
        missing(piece == nullptr ? "there is no such piece" : "there is no such side"));
  }
  const int size = size_asked(request);
  if (size < 0) {
    return reply(Problem{Fault::bad_input, "this size is not kept", "size",
                         "ask for 32, 64, 128, 256, 512 or full"});
  }
  const model::Photograph* photograph = find_photograph(show, *piece, *view);
  if (photograph == nullptr || !is_safe(photos_, photograph->file)) {
    return reply(missing("there is no such photograph"));
  }
  if (is_hidden(show, *photograph)) {
    return reply(Problem{Fault::refused, "this picture is held back", piece->number,
                         "its community must answer first; log it with \"backmark leave\""});
  }
  const Path file = photos_ / photograph->file;
  const std::string tag = tag_of(file);
  return size == 0 ? original(request, file, tag) : small(request, file, tag, size);
}

Response Shelf::original(const Request& request, const Path& file, const std::string& tag) {
  auto bytes = read_file(file);
  if (!bytes) {
    return reply(missing("the photograph cannot be read"));
  }
  return reply_bytes(request, *std::move(bytes), std::string(type_of(file.string())), tag,
                     keep_for(request));
}

Response Shelf::small(const Request& request,
                      const Path& file,
                      const std::string& tag,
                      int size) {
  for (int round = 0; round < 2; ++round) {
    for (const char* ending : {"png", "jpg"}) {
      const std::string name = fmt::format("{}-{}.{}", tag, size, ending);
      if (auto bytes = read_file(photos_ / ".small" / name)) {
        return reply_bytes(request, *std::move(bytes), std::string(type_of(name)),
                           fmt::format("{}-{}", tag, size), keep_for(request));
      }
    }
    if (const auto made = make_small(file, tag); !made) {
      Problem problem = made.problem();
      problem.where = file.filename().string();
      return reply(problem);
    }
  }
  return reply(missing("the small copy cannot be read"));
}

Result<Done> Shelf::make_small(const Path& file, const std::string& tag) {
  const std::lock_guard lock(making_);  // one large picture in memory at a time
  std::error_code none;
  const Path folder = photos_ / ".small";
  if (std::filesystem::exists(folder / fmt::format("{}-32.png", tag), none) ||
      std::filesystem::exists(folder / fmt::format("{}-32.jpg", tag), none)) {
    return Done{};
  }
  const auto bytes = read_file(file);
  if (!bytes) {
    return missing("the photograph cannot be read");
  }
  const auto sprites = photo::sprites_of(*bytes);
  if (!sprites) {
    return sprites.problem();
  }
  std::filesystem::create_directories(folder, none);
  for (const photo::Sprite& sprite : *sprites) {
    const std::string name =
        fmt::format("{}-{}.{}", tag, sprite.size, sprite.png ? "png" : "jpg");
    if (!write_file(folder / name, sprite.bytes)) {
      return Problem{Fault::io, "small copies cannot be kept", "", "check the disk"};
    }
  }
  return Done{};
}

}  // namespace backmark::web
