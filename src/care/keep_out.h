// What a case is made of and lined with, and pieces that give off something themselves, against
// what lies in it.
#pragma once

#include "care/climate_plan.h"

namespace backmark::care {

// Materials of the case by the table case-materials: what is to be avoided, what is to be
// tested, and what the table does not know; then pieces of a material that wants a case of its
// own. What is preferred or a sorbent is left out.
std::vector<KeepOut> keep_out_of(const model::Show& show, const CaseContents& contents);

}  // namespace backmark::care
