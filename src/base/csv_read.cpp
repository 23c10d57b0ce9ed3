#include "base/csv_read.h"

#include "base/text.h"

namespace backmark {

namespace {

bool ends_line(char character) {
  return character == '\n' || character == '\r';
}

}  // namespace

bool CsvReader::fail(std::string what, std::string fix) {
  problem_ = Problem{.fault = Fault::bad_input,
                     .what = std::move(what),
                     .where = fmt::format("row {}", row_),
                     .fix = std::move(fix)};
  return false;
}

bool CsvReader::at_end_of_cell() const {
  return at_ == text_.size() || text_[at_] == separator_ || ends_line(text_[at_]);
}

bool CsvReader::read_quoted(std::string& cell) {
  ++at_;
  for (;;) {
    const std::size_t quote = text_.find('"', at_);
    if (quote == std::string_view::npos) {
      return fail("a quoted cell begins here and never ends",
                  "close the quote, or double a quote that belongs to the text");
    }
    cell += text_.substr(at_, quote - at_);
    at_ = quote + 1;
    if (at_ == text_.size() || text_[at_] != '"') {
      break;
    }
    cell += '"';
    ++at_;
  }
  return at_end_of_cell() ||
         fail(fmt::format("text follows the closing quote of the cell \"{}\"",
                          cell.substr(0, 40)),
              "double every quote inside a quoted cell, or save the file again as CSV");
}

void CsvReader::read_plain(std::string& cell) {
  const std::size_t begin = at_;
  while (!at_end_of_cell()) {
    ++at_;
  }
  cell = text_.substr(begin, at_ - begin);
}

bool CsvReader::next(std::vector<std::string>& cells) {
  if (problem_ || at_ == text_.size()) {
    return false;
  }
  ++row_;
  std::size_t count = 0;
  for (;;) {
    if (cells.size() == count) {
      cells.emplace_back();
    }
    std::string& cell = cells[count++];
    cell.clear();
    if (at_ < text_.size() && text_[at_] == '"') {
      if (!read_quoted(cell)) {
        return false;
      }
    } else {
      read_plain(cell);
    }
    if (at_ == text_.size() || text_[at_] != separator_) {
      break;
    }
    ++at_;
  }
  cells.resize(count);
  if (at_ < text_.size()) {
    at_ += text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n' ? 2 : 1;
  }
  return true;
}

}  // namespace backmark
