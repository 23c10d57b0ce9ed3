#include "base/text.h"
#include "exchange/list_row.h"

namespace backmark::exchange {

using namespace model;

namespace {

const std::vector<std::pair<std::string_view, How>> hows{
    {"eye", How::eye},       {"loupe", How::loupe}, {"caliper", How::caliper},
    {"scale", How::scale},   {"lamp", How::lamp},   {"magnet", How::magnet},
    {"record", How::record}, {"told", How::told}};

struct Gathered {
  const Piece* piece = nullptr;
  std::vector<Item> items;
  long row = 0;
};

class ObservationImport {
 public:
  ObservationImport(Intake& intake, char decimal, std::vector<const TableRow*>& faulty)
      : intake_(intake), decimal_(decimal), faulty_(faulty) {}

  void run() {
    for (const TableRow& row : intake_.table.rows) {
      take(row);
    }
    for (const Gathered& one : gathered_) {
      merge(one);
    }
  }

 private:
  void take(const TableRow& table_row) {
    const ListRow row(intake_, table_row);
    std::vector<CellRemark> faults;
    const Piece* piece = intake_.show.piece(row.text(Target::number));
    if (piece == nullptr) {
      faults.push_back(row.fault(
          Target::number, fmt::format("there is no piece \"{}\"", row.text(Target::number)),
          "import the pieces first, or mend the number"));
    }
    Item item{.kind = ItemKind::observation,
              .heading = row.rule(Target::value)->heading,
              .key = to_key(row.text(Target::character)),
              .part = lower_ascii(row.text(Target::part))};
    if (item.key.empty()) {
      faults.push_back(row.fault(Target::character, "the row names no character",
                                 "say what was looked at, such as \"cord type\""));
    }
    fill_value(row, item, faults);
    if (!faults.empty()) {
      intake_.out.faults.insert(intake_.out.faults.end(), faults.begin(), faults.end());
      faulty_.push_back(&table_row);
      return;
    }
    const auto [at, is_new] = at_piece_.try_emplace(piece->id.value, gathered_.size());
    if (is_new) {
      gathered_.push_back({.piece = piece, .row = table_row.number});
    }
    gathered_[at->second].items.push_back(std::move(item));
  }

  void fill_value(const ListRow& row, Item& item, std::vector<CellRemark>& faults) const {
    const std::string text = row.text(Target::value);
    const auto is_in = [&](const std::vector<std::string>& list) {
      return std::any_of(list.begin(), list.end(), [&](const std::string& word) {
        return lower_ascii(word) == lower_ascii(text);
      });
    };
    const Character* known = intake_.show.character(item.key);
    item.shape = known != nullptr ? known->shape : Shape::category;
    if (is_in(intake_.map.none) || is_in(intake_.map.cannot_tell)) {
      item.seen = is_in(intake_.map.none) ? Seen::none : Seen::cannot_tell;
    } else if (text.empty()) {
      faults.push_back(row.fault(Target::value, "nothing was seen",
                                 "write the value, or leave the row out"));
    } else if (item.shape == Shape::number) {
      const auto number = to_number(decimal_ == ',' ? replace_all(text, ",", ".") : text);
      item.number = number.value_or(0);
      if (!number) {
        faults.push_back(row.fault(
            Target::value, fmt::format("\"{}\" is not a number of {}", text, known->unit),
            "write the number alone, in the character's unit"));
      }
    } else {
      item.text = lower_ascii(text);
    }
    read_manner(row, item, faults);
  }

  static void read_manner(const ListRow& row, Item& item, std::vector<CellRemark>& faults) {
    item.by = row.text(Target::by);
    if (const std::string text = row.text(Target::how); !text.empty()) {
      if (const auto how = one_of(hows, text)) {
        item.how = *how;
      } else {
        faults.push_back(row.fault(
            Target::how, fmt::format("\"{}\" is no way of looking", text), listed(hows)));
      }
    }
    if (const std::string text = row.text(Target::certainty); !text.empty()) {
      const auto share = to_number(text);
      if (share && *share > 0 && *share <= 1) {
        item.certainty = static_cast<float>(*share);
      } else {
        faults.push_back(row.fault(Target::certainty,
                                   fmt::format("\"{}\" is not a share between 0 and 1", text),
                                   "write 0.8 for fairly sure, 1 for sure"));
      }
    }
  }

  // What the show has from this file, of the pieces the file names.
  void merge(const Gathered& one) {
    const auto held = held_items(intake_.show, *one.piece);
    const Source* source = intake_.show.source(intake_.map.source);
    std::vector<Item> before;
    for (const Held& known : held) {
      if (source != nullptr && known.source == source->id) {
        before.push_back(known.item);
      }
    }
    std::vector<Item> now;
    for (const Item& item : one.items) {
      const auto later = std::find_if(held.begin(), held.end(), [&](const Held& known) {
        return known.superseding && known.item.slot() == item.slot() &&
               (source == nullptr || known.source != source->id);
      });
      if (later == held.end() || source == nullptr) {
        now.push_back(item);
      } else {
        intake_.out.notes.push_back(
            {one.row, item.heading,
             fmt::format("piece {} has a later observation of \"{}\", which "
                         "stands",
                         one.piece->number, item.key),
             "withdraw it in the show if the file is right"});
      }
    }
    const bool changed =
        merge_items(intake_, one.piece->id, held, std::move(before), std::move(now), one.row);
    ++(changed ? intake_.out.pieces_changed : intake_.out.pieces_same);
  }

  Intake& intake_;
  char decimal_;
  std::vector<const TableRow*>& faulty_;
  std::vector<Gathered> gathered_;
  std::unordered_map<std::int32_t, std::size_t> at_piece_;
};

}  // namespace

std::string how_word(How how) {
  for (const auto& [word, value] : hows) {
    if (value == how) {
      return std::string(word);
    }
  }
  return {};
}

void import_observations(Intake& intake, char decimal, std::vector<const TableRow*>& faulty) {
  ObservationImport(intake, decimal, faulty).run();
}

}  // namespace backmark::exchange
