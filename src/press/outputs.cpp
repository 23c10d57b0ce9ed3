#include "press/outputs.h"

#include <algorithm>

#include "press/book.h"
#include "press/checklist.h"
#include "press/condition.h"
#include "press/identification.h"
#include "press/labels.h"
#include "press/loans.h"
#include "press/looks.h"
#include "press/packing.h"
#include "press/schedule.h"
#include "press/values.h"

namespace backmark::press {

using words::Audience;

const std::vector<Output>& outputs() {
  static const std::vector<Output> all{
      {"book", "Book", Audience::public_, "", print_book},
      {"labels", "Labels", Audience::printer, "", print_labels},
      {"checklist", "Checklist", Audience::public_, "", print_checklist},
      {"condition", "Condition", Audience::registrar, "Handle by the edges, in gloves.",
       print_condition},
      {"loans", "Loan schedule", Audience::registrar, "", print_loans},
      {"identification", "Object identification", Audience::registrar, "",
       print_identification},
      {"look", "Look list", Audience::curator, "", print_looks},
      {"packing", "Packing list", Audience::courier, "Handle by the edges, in gloves.",
       print_packing},
      {"schedule", "Schedule", Audience::registrar, "", print_schedule},
      {"values", "Values", Audience::registrar, "No appraisal.", print_values},
  };
  return all;
}

const Output* output_named(std::string_view name) {
  const auto& all = outputs();
  const auto at = std::find_if(all.begin(), all.end(),
                               [name](const Output& one) { return one.name == name; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace backmark::press
