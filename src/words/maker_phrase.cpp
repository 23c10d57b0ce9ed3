#include "words/maker_phrase.h"

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.h"
#include "words/table.h"

namespace backmark::words {
namespace {

using model::Id;
using model::Maker;
using model::Show;

constexpr double rounding = 1e-9;

// The named makers of a belief, likeliest first, each with its own hand's chance.
struct Named {
  const Maker* maker = nullptr;
  double p = 0;    // with shop or circle
  double own = 0;  // the hand itself
  Closeness closeness;
  bool documented = false;
};

struct Field {
  std::vector<Named> named;
  double unrecorded = 0;
};

Field field_of(const Show& show, const model::PieceBelief& belief) {
  Field field{{}, belief.maker.unrecorded};
  for (const auto& chance : belief.maker.makers) {
    const Maker* maker = show.find(chance.maker);
    if (maker == nullptr || maker->kind == model::MakerKind::unrecorded) {
      field.unrecorded += chance.p;
      continue;
    }
    const bool first = field.named.empty();
    const Closeness closeness =
        first ? closeness_of(show, belief.piece, maker->id) : Closeness{};
    field.named.push_back({maker, chance.p, chance.p * closeness.own, closeness,
                           first && belief.maker.documented});
  }
  return field;
}

// By how much a row holds: negative, it does not. `p` is the chance of what it claims.
struct Holding {
  std::string text;
  double margin = -1;
  double p = 0;
};

double next_best(const Field& field, std::size_t leader) {
  double best = field.unrecorded;
  for (std::size_t at = 0; at < field.named.size(); ++at) {
    if (at != leader) {
      best = std::max(best, field.named[at].p);
    }
  }
  return best;
}

Holding pair_row(const Field& field, std::size_t leader, double floor) {
  const std::size_t second = leader + 1;
  if (second >= field.named.size()) {
    return {};
  }
  const Named& x = field.named[leader];
  const Named& z = field.named[second];
  const double both = x.own + z.own;
  return {fmt::format("{} or {}", x.maker->name, z.maker->name),
          std::min({both - floor, 2 * z.own - x.own, 2 * x.own - z.own}), both};
}

Holding row_holds(int row, const Field& field, std::size_t leader) {
  const Named& x = field.named[leader];
  const double floor = row_of(maker_table(), row).floor;
  const std::string& name = x.maker->name;
  switch (row) {
    case 1:
      return {name, x.documented ? x.own - floor : -1, x.own};
    case 2:
      return {"workshop of " + name,
              x.closeness.nearness == Nearness::shop ? std::min(x.p - floor, 0.50 - x.own) : -1,
              x.p};
    case 3:
      return {"attributed to " + name,
              std::min(x.own - floor, x.own - 2 * next_best(field, leader)), x.own};
    case 4:
      return pair_row(field, leader, floor);
    case 5:
      return {"circle of " + name, x.closeness.nearness == Nearness::around ? x.p - floor : -1,
              x.p};
    case 6:
      return {"possibly by " + name, std::min(x.own - floor, 0.60 - field.unrecorded), x.own};
    default:
      return {};
  }
}

constexpr int last_named_row = 6;

// The frozen phrase, if some named maker still stands behind it.
MakerPhrase kept(const Field& field, std::string_view frozen) {
  for (std::size_t leader = 0; leader < field.named.size(); ++leader) {
    for (int row = 1; row <= last_named_row; ++row) {
      const Holding old = row_holds(row, field, leader);
      if (old.text != frozen || old.margin < -frozen_margin - rounding) {
        continue;
      }
      for (int better = 1; better < row; ++better) {
        if (row_holds(better, field, 0).margin >= frozen_margin) {
          return {};
        }
      }
      return {old.text, row, old.p};
    }
  }
  return {};
}

const Maker* maker_named(const Show& show, std::string_view name) {
  const auto& makers = show.all<Maker>();
  const auto at = std::find_if(makers.begin(), makers.end(),
                               [name](const Maker& maker) { return maker.name == name; });
  return at == makers.end() ? nullptr : &*at;
}

struct Role {
  std::string_view role;   // as claims have it
  std::string_view plain;  // "designed by"
  std::string_view doubt;  // "design attributed to"
};
constexpr std::array<Role, 8> roles{{
    {"designer", "designed by ", "design attributed to "},
    {"design", "designed by ", "design attributed to "},
    {"stone cutter", "stone by ", "stone attributed to "},
    {"lapidary", "stone by ", "stone attributed to "},
    {"shop", "mark of ", "mark perhaps of "},
    {"retailer", "sold by ", "said to be sold by "},
    {"seller", "sold by ", "said to be sold by "},
    {"dealer", "sold by ", "said to be sold by "},
}};

double weight_of(const Show& show, const model::Claim& claim) {
  if (claim.weight) {
    return *claim.weight;
  }
  const model::Source* source = show.find(claim.source);
  return source != nullptr && source->reliability ? *source->reliability : 0.8;
}

}  // namespace

Closeness closeness_of(const Show& show, Id<model::Piece> piece, Id<Maker> maker) {
  Closeness found;
  for (const model::Claim& claim : show.claims_on(piece)) {
    if (claim.says != model::Says::judged_by || claim.maker != maker || claim.negative) {
      continue;
    }
    const std::string_view qualifier = show.text(claim.qualifier);
    const bool shop =
        starts_with(qualifier, "workshop of") || starts_with(qualifier, "studio of");
    const bool around = starts_with(qualifier, "circle of") ||
                        starts_with(qualifier, "pupil of") ||
                        starts_with(qualifier, "associate of");
    found = {shop     ? Nearness::shop
             : around ? Nearness::around
                      : Nearness::hand,
             shop || around ? 1 - weight_of(show, claim) : 1};
  }
  return found;
}

MakerPhrase phrase_maker(const Show& show,
                         const model::PieceBelief& belief,
                         std::string_view frozen) {
  const Field field = field_of(show, belief);
  if (const MakerPhrase old = kept(field, frozen); !old.text.empty()) {
    return old;
  }
  for (int row = 1; row <= last_named_row && !field.named.empty(); ++row) {
    Holding holding = row_holds(row, field, 0);
    if (holding.margin >= -rounding) {
      return {std::move(holding.text), row, holding.p};
    }
  }
  const std::string place = phrase_place(show, belief.place);
  return {place.empty() ? "unrecorded maker" : "unrecorded maker, " + place, 7, 1};
}

ClaimedMakers claimed_makers(const Show& show, std::string_view phrase) {
  constexpr std::array<std::pair<std::string_view, int>, 4> heads{
      {{"workshop of ", 2}, {"attributed to ", 3}, {"circle of ", 5}, {"possibly by ", 6}}};
  for (const auto& [head, row] : heads) {
    if (starts_with(phrase, head)) {
      const Maker* maker = maker_named(show, phrase.substr(head.size()));
      return maker == nullptr ? ClaimedMakers{} : ClaimedMakers{row, {maker->id}};
    }
  }
  if (const Maker* maker = maker_named(show, phrase)) {
    return {1, {maker->id}};
  }
  const auto ends = split(phrase, " or ");
  if (ends.size() != 2) {
    return {};
  }
  const Maker* x = maker_named(show, ends[0]);
  const Maker* z = maker_named(show, ends[1]);
  return x == nullptr || z == nullptr ? ClaimedMakers{} : ClaimedMakers{4, {x->id, z->id}};
}

std::string phrase_place(const Show& show, const model::PlaceBelief& belief) {
  const std::string place(show.text(belief.place));
  if (place.empty() || belief.p < row_of(place_table(), 2).floor - rounding) {
    return {};
  }
  return belief.p >= row_of(place_table(), 1).floor - rounding ? place : "probably " + place;
}

std::string contributions(const Show& show, Id<model::Piece> piece) {
  std::vector<std::string> said;
  for (const model::Claim& claim : show.claims_on(piece)) {
    const Maker* maker = show.find(claim.maker);
    const auto role = std::find_if(roles.begin(), roles.end(), [&](const Role& row) {
      return row.role == show.text(claim.role);
    });
    if (claim.says != model::Says::made_by || claim.negative || maker == nullptr ||
        role == roles.end()) {
      continue;
    }
    const double p = weight_of(show, claim);
    if (p >= row_of(maker_table(), 3).floor) {
      const bool sure = p >= row_of(maker_table(), 1).floor;
      said.push_back(std::string(sure ? role->plain : role->doubt) + maker->name);
    }
  }
  std::sort(said.begin(), said.end());
  said.erase(std::unique(said.begin(), said.end()), said.end());
  return join(said, "; ");
}

}  // namespace backmark::words
