// Files as whole values. Every writer is atomic: the file is as it was, or as it shall be.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace backmark {

using Path = std::filesystem::path;

// The bytes of a file. Problems: not_found, io (a folder, no right to read).
Result<std::string> read_file(const Path& path);

// Writes beside the target, syncs, and renames over it. Problems: io (the folder is missing or
// full). The old file, if any, is untouched when a Problem comes back.
Result<Done> write_file(const Path& path, std::string_view bytes);

}  // namespace backmark
