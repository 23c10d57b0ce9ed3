#include "exchange/xlsx.h"

#include <memory>
#include <pugixml.hpp>
#include <unordered_set>
#include <zip.h>

#include "base/text.h"

namespace backmark::exchange {

namespace {

// A workbook unpacks to more than its bytes; past this it is taken for a trap, not a
// spreadsheet.
constexpr zip_uint64_t largest_part = 1U << 30U;
constexpr std::size_t widest_sheet = 16384;  // ECMA-376: columns A to XFD
constexpr std::size_t longest_sheet = 1048576;

struct ZipCloser {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
struct ZipFileCloser {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};
using Archive = std::unique_ptr<zip_t, ZipCloser>;

Archive open_archive(std::string_view bytes) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  Archive archive(source != nullptr ? zip_open_from_source(source, ZIP_RDONLY, &error)
                                    : nullptr);
  if (!archive && source != nullptr) {
    zip_source_free(source);
  }
  zip_error_fini(&error);
  return archive;
}

// The text of one member; empty if it is missing, damaged or too large.
std::string member(zip_t* archive, const std::string& path) {
  zip_stat_t stat;
  zip_stat_init(&stat);
  if (zip_stat(archive, path.c_str(), 0, &stat) != 0 || stat.size > largest_part) {
    return {};
  }
  const std::unique_ptr<zip_file_t, ZipFileCloser> file(zip_fopen(archive, path.c_str(), 0));
  if (!file) {
    return {};
  }
  std::string text(stat.size, '\0');
  const zip_int64_t got = zip_fread(file.get(), text.data(), text.size());
  text.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
  return text;
}

// Names without their prefix: some programs write <x:row>.
std::string_view local(const char* name) {
  const std::string_view full(name);
  const std::size_t colon = full.rfind(':');
  return colon == std::string_view::npos ? full : full.substr(colon + 1);
}

template <class Visit>
void each(const pugi::xml_node& parent, std::string_view name, Visit&& visit) {
  for (const pugi::xml_node child : parent.children()) {
    if (local(child.name()) == name) {
      visit(child);
    }
  }
}

pugi::xml_node first(const pugi::xml_node& parent, std::string_view name) {
  for (const pugi::xml_node child : parent.children()) {
    if (local(child.name()) == name) {
      return child;
    }
  }
  return {};
}

// A string is one <t>, or several in runs <r>; reading aids <rPh> are not part of it.
std::string string_of(const pugi::xml_node& node) {
  std::string text = first(node, "t").child_value();
  each(node, "r", [&](const pugi::xml_node& run) { text += first(run, "t").child_value(); });
  return text;
}

std::vector<std::string> shared_strings(zip_t* archive) {
  std::vector<std::string> strings;
  const std::string text = member(archive, "xl/sharedStrings.xml");
  pugi::xml_document document;
  document.load_buffer(text.data(), text.size(), pugi::parse_default | pugi::parse_ws_pcdata);
  each(first(document, "sst"), "si",
       [&](const pugi::xml_node& item) { strings.push_back(string_of(item)); });
  return strings;
}

// Number formats 14 to 22 and 45 to 47 are dates and times (ECMA-376 part 1, 18.8.30); a custom
// one is if it names day, month, year or hour outside quotes and brackets.
bool shows_dates(int format, std::string_view code) {
  if ((format >= 14 && format <= 22) || (format >= 45 && format <= 47)) {
    return true;
  }
  char inside = 0;
  for (const char character : code) {
    if (inside != 0) {
      inside = character == inside ? '\0' : inside;
    } else if (character == '"') {
      inside = '"';
    } else if (character == '[') {
      inside = ']';
    } else if (contains("dDmMyYhH", std::string_view(&character, 1))) {
      return true;
    }
  }
  return false;
}

// Which cell styles show dates, by their number.
std::unordered_set<int> date_styles(zip_t* archive) {
  const std::string text = member(archive, "xl/styles.xml");
  pugi::xml_document document;
  document.load_buffer(text.data(), text.size());
  const pugi::xml_node sheet = first(document, "styleSheet");
  std::unordered_set<int> formats;
  each(first(sheet, "numFmts"), "numFmt", [&](const pugi::xml_node& format) {
    if (shows_dates(0, format.attribute("formatCode").value())) {
      formats.insert(format.attribute("numFmtId").as_int());
    }
  });
  std::unordered_set<int> styles;
  int number = 0;
  each(first(sheet, "cellXfs"), "xf", [&](const pugi::xml_node& style) {
    const int format = style.attribute("numFmtId").as_int();
    if (shows_dates(format, "") || formats.contains(format)) {
      styles.insert(number);
    }
    ++number;
  });
  return styles;
}

struct Workbook {
  Archive archive;
  std::vector<std::string> strings;
  std::unordered_set<int> dates;
};

// Column of "BC12", from 0; `fallback` if there is no such reference.
std::size_t column_of(std::string_view reference, std::size_t fallback) {
  std::size_t column = 0;
  for (const char letter : reference) {
    if (letter < 'A' || letter > 'Z' || column > widest_sheet) {
      break;
    }
    column = column * 26 + static_cast<std::size_t>(letter - 'A' + 1);
  }
  return column == 0 ? fallback : column - 1;
}

std::string cell_text(const pugi::xml_node& cell, const Workbook& book) {
  const std::string_view type = cell.attribute("t").value();
  const char* value = first(cell, "v").child_value();
  if (type == "s") {
    const auto at = to_whole(value);
    return at && *at >= 0 && static_cast<std::size_t>(*at) < book.strings.size()
               ? book.strings[static_cast<std::size_t>(*at)]
               : std::string();
  }
  if (type == "inlineStr") {
    return string_of(first(cell, "is"));
  }
  if (type == "b") {
    return std::string_view(value) == "1" ? "TRUE" : "FALSE";
  }
  // 5.8750000000000002 is how a workbook writes 5.875.
  const auto number = type.empty() || type == "n" ? to_number(value) : std::nullopt;
  return number ? fmt::format("{:.15g}", *number) : std::string(value);
}

// Sheet names with the members that hold them, in the workbook's order.
std::vector<std::pair<std::string, std::string>> sheets_of(zip_t* archive) {
  const std::string links_text = member(archive, "xl/_rels/workbook.xml.rels");
  const std::string book_text = member(archive, "xl/workbook.xml");
  pugi::xml_document links;
  pugi::xml_document book;
  links.load_buffer(links_text.data(), links_text.size());
  book.load_buffer(book_text.data(), book_text.size());
  std::vector<std::pair<std::string, std::string>> sheets;
  each(first(first(book, "workbook"), "sheets"), "sheet", [&](const pugi::xml_node& sheet) {
    const std::string_view id = sheet.attribute("r:id").value();
    each(first(links, "Relationships"), "Relationship", [&](const pugi::xml_node& link) {
      if (!id.empty() && id == link.attribute("Id").value()) {
        const std::string target = link.attribute("Target").value();
        sheets.emplace_back(sheet.attribute("name").value(),
                            starts_with(target, "/") ? target.substr(1) : "xl/" + target);
      }
    });
  });
  return sheets;
}

struct Sheet {
  std::vector<Cells> records;
  std::vector<std::string> dated;  // references of cells shown as dates
};

Result<Done> read_row(const pugi::xml_node& row, const Workbook& book, Sheet& sheet) {
  const auto number =
      static_cast<std::size_t>(row.attribute("r").as_ullong(sheet.records.size() + 1));
  if (number > longest_sheet) {
    return Problem{.what = fmt::format("row {} lies outside any sheet", number)};
  }
  if (number > sheet.records.size()) {
    sheet.records.resize(number);
  }
  Cells& cells = sheet.records[number == 0 ? 0 : number - 1];
  std::size_t next = 0;
  for (const pugi::xml_node cell : row.children()) {
    if (local(cell.name()) != "c") {
      continue;
    }
    const std::size_t column = column_of(cell.attribute("r").value(), next);
    if (column >= widest_sheet) {
      return Problem{.what = fmt::format("row {} is wider than any sheet", number)};
    }
    next = column + 1;
    if (cells.size() < next) {
      cells.resize(next);
    }
    cells[column] = cell_text(cell, book);
    if (!is_utf8(cells[column])) {
      cells[column] = to_utf8(to_code_points(cells[column]));
    }
    const std::string_view type = cell.attribute("t").value();
    if (!cells[column].empty() && (type.empty() || type == "n") &&
        book.dates.contains(cell.attribute("s").as_int(-1))) {
      sheet.dated.emplace_back(cell.attribute("r").value());
    }
  }
  return Done{};
}

Result<Sheet> read_sheet(const std::string& text, const Workbook& book) {
  pugi::xml_document document;
  if (!document.load_buffer(text.data(), text.size(),
                            pugi::parse_default | pugi::parse_ws_pcdata)) {
    return Problem{.what = "the sheet is damaged"};
  }
  Sheet sheet;
  for (const pugi::xml_node row : first(first(document, "worksheet"), "sheetData").children()) {
    if (local(row.name()) != "row") {
      continue;
    }
    if (const auto done = read_row(row, book, sheet); !done) {
      return done.problem();
    }
  }
  return sheet;
}

Problem damaged(const std::string& name, std::string what) {
  return {.fault = Fault::bad_input,
          .what = std::move(what),
          .where = name,
          .fix = "open it in the spreadsheet and save it again, or save it as \"CSV UTF-8\""};
}

Result<std::string> member_of_sheet(zip_t* archive,
                                    const std::string& name,
                                    const std::string& wanted) {
  const auto sheets = sheets_of(archive);
  std::vector<std::string> names;
  for (const auto& [title, path] : sheets) {
    if (wanted.empty() || title == wanted) {
      return path;
    }
    names.push_back("\"" + title + "\"");
  }
  if (sheets.empty()) {
    return Problem{
        .fault = Fault::refused,
        .what = "this is a zip archive but no .xlsx workbook",
        .where = name,
        .fix = "open it in the spreadsheet and save it as \"CSV UTF-8\" or as .xlsx"};
  }
  return Problem{.fault = Fault::not_found,
                 .what = "the workbook has no sheet \"" + wanted + "\"",
                 .where = name,
                 .fix = "its sheets are " + join(names, ", ")};
}

}  // namespace

bool is_zip(std::string_view bytes) {
  return starts_with(bytes, "PK\x03\x04");
}

Result<Table> read_xlsx(std::string_view bytes,
                        const std::string& name,
                        const std::string& sheet) {
  Workbook book{.archive = open_archive(bytes)};
  if (!book.archive) {
    return damaged(name, "the workbook is damaged: its archive does not open");
  }
  const auto path = member_of_sheet(book.archive.get(), name, sheet);
  if (!path) {
    return path.problem();
  }
  book.strings = shared_strings(book.archive.get());
  book.dates = date_styles(book.archive.get());
  auto read = read_sheet(member(book.archive.get(), *path), book);
  if (!read) {
    return damaged(name, read.problem().what);
  }
  const std::vector<std::string> dated = std::move(read->dated);
  return to_table(std::move(read->records), name).then([&](Table table) -> Result<Table> {
    if (!dated.empty()) {
      table.said.push_back(
          fmt::format("{} cells are shown as dates and stored as day numbers, the first is {}; "
                      "they were taken "
                      "as plain numbers: format the column as text and type the dates as text",
                      dated.size(), dated.front()));
    }
    return table;
  });
}

}  // namespace backmark::exchange
