// How long the book takes: 200 pages with 300 photographs (the figure asked: 10 s, 1 GB), and
// its words alone beside LuaLaTeX, both without pictures. Usage: bench_book [PICKS]
//
// Each picture is drawn, packed as PNG and read anew for its plate. The answer that is checked:
// as many pages and plates as said, no plate missing, the same bytes twice.
#define DOCTEST_CONFIG_IMPLEMENT  // of the tests only the demo show is used
#include <atomic>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <mutex>
#include <sys/resource.h>
#include <thread>

#include "base/text.h"
#include "draw/paragraph.h"
#include "draw/pdf.h"
#include "press/book.h"
#include "press/book/plan.h"
#include "press/demo_job.h"
#include "scenario/pictures.h"

using namespace backmark;
using namespace backmark::press;

namespace {

double now() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch())
      .count();
}

// Of the processor, spent by this program or by those that it started and that have ended.
double processor_seconds(int whose) {
  rusage usage{};
  getrusage(whose, &usage);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
  };
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

long peak_mb() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024;
}

// The demo show with its first picks only. Its photographs are drawn when they are first asked
// for.
struct Bench {
  DemoPrinting demo;
  std::map<std::string, const scenario::Shot*> shots;
  std::vector<scenario::Shot> all_shots = scenario::shots(demo.demo);
  std::vector<TextFile> texts;
  mutable std::map<std::string, std::string> photographs;
  mutable std::mutex drawing;
  mutable std::atomic<int> read = 0;

  explicit Bench(std::size_t picks) {
    auto& all = demo.show.all<model::Pick>();
    all.resize(std::min(all.size(), picks));
    demo.show.settle();
    for (const scenario::TextFile& text : scenario::texts(demo.demo)) {
      if (starts_with(text.path, "essays/")) {
        texts.push_back({text.path, text.text});
      }
    }
    for (const scenario::Shot& shot : all_shots) {
      shots.emplace(shot.file, &shot);
    }
  }

  Result<std::string> load(const model::Photograph& one) const {
    ++read;
    const std::scoped_lock lock(drawing);
    std::string& bytes = photographs[one.file];
    if (bytes.empty()) {
      bytes = draw::encode_png(scenario::picture(demo.demo, *shots.at(one.file)));
    }
    return bytes;
  }

  PressJob job() const {
    PressJob job = demo.job(words::Audience::public_);
    job.texts = texts;
    job.photograph = [this](const model::Photograph& one) { return load(one); };
    return job;
  }
};

struct Timed {
  double seconds = 0;
  double processor = 0;
  Printed printed;
};

Timed timed(const PressJob& job) {
  const double before = now();
  const double spent = processor_seconds(RUSAGE_SELF);
  auto printed = print_book(job);
  if (!printed) {
    std::printf("%s\n", to_line(printed.problem()).c_str());
    std::exit(1);
  }
  return {now() - before, processor_seconds(RUSAGE_SELF) - spent, *std::move(printed)};
}

// Counted by another program; 0 if it is not here.
int pages_of(const std::string& pdf) {
  const Path file = std::filesystem::temp_directory_path() / "backmark-bench-book.pdf";
  if (!write_file(file, pdf)) {
    return 0;
  }
  int pages = 0;
  FILE* told = popen(fmt::format("pdfinfo '{}' 2>/dev/null", file.string()).c_str(), "r");
  char line[200];
  while (told != nullptr && std::fgets(line, sizeof line, told) != nullptr) {
    const std::string_view text(line);
    pages = starts_with(text, "Pages:") ? std::atoi(line + 6) : pages;
  }
  if (told != nullptr) {
    pclose(told);
  }
  std::filesystem::remove(file);
  return pages;
}

void say(bool right, const std::string& line) {
  std::printf("%s %s\n", right ? "right" : "WRONG", line.c_str());
}

void with_pictures(Bench& bench) {
  timed(bench.job());  // draws them
  bench.read = 0;
  const Timed first = timed(bench.job());
  const int plates = bench.read;
  const Timed second = timed(bench.job());
  const std::string& pdf = first.printed.files.front().bytes;
  say(pdf == second.printed.files.front().bytes, "the same bytes twice");
  say(plates >= 300, fmt::format("{} photographs", plates));
  std::printf(
      "with pictures: %d pages in %.2f s, then %.2f s (%.2f s of the processor, %u cores); "
      "%.1f "
      "MB of PDF; peak %ld MB with the pictures of the bench\n",
      pages_of(pdf), first.seconds, second.seconds, second.processor,
      std::thread::hardware_concurrency(), static_cast<double>(pdf.size()) / 1e6, peak_mb());
}

// --- words alone, beside LuaLaTeX

std::string for_tex(std::string_view text) {
  std::string out;
  for (const char letter : text) {
    if (std::string_view("#$%&_{}").find(letter) != std::string_view::npos) {
      out += '\\';
    }
    out += letter == '\\' || letter == '~' || letter == '^' ? ' ' : letter;
  }
  return out;
}

// Paragraphs of essays and entries, as the book has them.
std::vector<std::string> paragraphs_of(const PressJob& job) {
  std::vector<std::string> all;
  const auto plan = book::plan_book(job);
  for (const Prose& essay : (*plan)->essays) {
    for (const Block& block : essay.blocks) {
      all.push_back(plain_text(block.words));
    }
  }
  for (const book::EntryPart& part : (*plan)->parts) {
    for (const book::Entry& entry : part.entries) {
      for (const words::Fact& fact : entry.facts) {
        all.push_back(fact.text);
      }
    }
  }
  return all;
}

std::string tex_of(const std::vector<std::string>& paragraphs) {
  std::string tex =
      "\\documentclass[12pt]{article}\n\\usepackage{fontspec}\n"
      "\\usepackage[paperwidth=240mm,paperheight=300mm,left=20mm,textwidth=118mm,top=25mm,"
      "textheight=225mm]{geometry}\n"
      "\\setmainfont[Extension=.otf,ItalicFont=EBGaramond12-Italic,Numbers=OldStyle]"
      "{EBGaramond12-Regular}\n\\usepackage[english]{babel}\n"
      "\\begin{document}\n";
  for (const std::string& paragraph : paragraphs) {
    tex += for_tex(paragraph) + "\n\n";
  }
  return tex + "\\end{document}\n";
}

std::size_t words_in(const std::string& text) {
  return split(text, " ").size();
}

// Seconds of the processor in the second run, when its fonts are known; nothing if it is not
// here.
std::optional<double> seconds_of_peer(const std::string& tex) {
  const Path folder = std::filesystem::temp_directory_path() / "backmark-bench-book";
  std::filesystem::create_directories(folder);
  if (!write_file(folder / "book.tex", tex)) {
    return std::nullopt;
  }
  const std::string run = fmt::format(
      "cd '{}' && lualatex -interaction=batchmode book.tex >/dev/null 2>&1", folder.string());
  double spent = 0;
  for (int turn = 0; turn < 2; ++turn) {
    const double before = processor_seconds(RUSAGE_CHILDREN);
    if (std::system(run.c_str()) != 0) {
      return std::nullopt;
    }
    spent = processor_seconds(RUSAGE_CHILDREN) - before;
  }
  return spent;
}

// The peer's very text by our setter: the same measure, size and page, and a PDF of it.
struct SameText {
  int pages = 1;
  double processor = 0;
  std::string pdf;
};

SameText same_text(const std::vector<std::string>& paragraphs) {
  constexpr double top = 25;
  constexpr double foot = 250;
  constexpr double leading = 5;
  const double spent = processor_seconds(RUSAGE_SELF);
  const draw::Fonts fonts = *draw::Fonts::load();
  const draw::Hyphens hyphens = *draw::Hyphens::load();
  draw::Style style;
  style.size_pt = 12;
  draw::Canvas canvas = draw::Canvas::pages({240, 300}, 0);
  SameText set;
  double y = top;
  for (const std::string& paragraph : paragraphs) {
    for (const auto& one :
         draw::set_justified(fonts, hyphens, {{paragraph, style}}, {118, 6})) {
      if (y > foot) {
        (void)canvas.next_page();
        ++set.pages;
        y = top;
      }
      draw::show(canvas, fonts, {20, y}, one.line);
      y += leading;
    }
  }
  set.pdf = *draw::finish_pdf(canvas, {.title = "The same text"});
  set.processor = processor_seconds(RUSAGE_SELF) - spent;
  return set;
}

void words_alone(Bench& bench) {
  bench.demo.show.all<model::Photograph>().clear();
  bench.demo.show.settle();
  const PressJob job = bench.job();
  const auto paragraphs = paragraphs_of(job);
  std::size_t words = 0;
  for (const std::string& paragraph : paragraphs) {
    words += words_in(paragraph);
  }
  const Timed first = timed(job);
  const Timed second = timed(job);
  const double ours = std::min(first.processor, second.processor);
  say(first.printed.files.front().bytes == second.printed.files.front().bytes,
      "the same bytes twice");
  std::printf(
      "words alone: %d pages, %zu words in essays and entries, set with contents, index "
      "and the rest in %.2f s of the processor\n",
      pages_of(first.printed.files.front().bytes), words, ours);
  const SameText same = same_text(paragraphs);
  say(same_text(paragraphs).pdf == same.pdf, "the same bytes twice");
  std::printf("essays and entries only: %d pages in %.3f s of the processor\n", same.pages,
              same.processor);
  if (const auto peer = seconds_of_peer(tex_of(paragraphs))) {
    std::printf("LuaLaTeX, essays and entries only, its second run: %.2f s, %.1f times ours\n",
                *peer, *peer / same.processor);
  } else {
    std::printf(
        "skipped: lualatex with EB Garamond is not here (texlive-luatex, "
        "texlive-latex-recommended)\n");
  }
}

}  // namespace

int main(int count, char** arguments) {
  Bench bench(count > 1 ? static_cast<std::size_t>(std::atoi(arguments[1])) : 140);
  with_pictures(bench);
  words_alone(bench);
}
