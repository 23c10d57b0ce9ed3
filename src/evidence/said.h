// Claims, events and marks as statements with a reliability.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "evidence/gather.h"

namespace backmark::evidence {

// The legends by which marks name makers: the usual mark of each and the variants of its
// lineage, compared without case, points and brackets. Holds places in Show::all<Maker>().
class MakerLegends {
 public:
  explicit MakerLegends(const model::Show& show);
  // Makers with this legend, in the order of the show; null: none.
  const std::vector<std::size_t>* find(std::string_view legend) const;

 private:
  std::unordered_map<std::string, std::vector<std::size_t>> makers_;
};

// The years of marks that a mark table dates (model/mark_table.h), by the mark as it stands.
class MarkYears {
 public:
  explicit MarkYears(const model::Show& show);
  // Adds what a mark says of the year: within one of its windows, each as likely.
  void add(const model::Show& show, const model::Mark& mark, GatheredPiece& into) const;

 private:
  std::unordered_map<std::string, std::vector<const model::Window*>> windows_;
};

// What is on file about one piece.
struct OnFile {
  std::span<const model::Claim> claims;
  std::span<const model::Event> events;
  std::span<const model::Mark> marks;
};

// Fills years and makers of `into` from what is said of a piece.
void gather_said(const model::Show& show,
                 const OnFile& on_file,
                 const MakerLegends& legends,
                 const MarkYears& mark_years,
                 Year today,
                 GatheredPiece& into);

// How far a source is to be believed: its own figure, the weight of the claim, or what is usual
// for its kind (common practice, no source).
double reliability_of(const model::Show& show,
                      model::Id<model::Source> source,
                      std::optional<double> weight);

// The first teller: the source that `source` had it from, followed back to its origin.
std::string origin_of(const model::Show& show, model::Id<model::Source> source);

}  // namespace backmark::evidence
