// The demo author's sentences, by what they are about. {stone}, {metal}, {side}, {few} and
// {many} are filled in per piece.
#pragma once

#include <string_view>
#include <vector>

#include "scenario/work.h"

namespace backmark::scenario {

using Sentences = std::vector<std::string_view>;

const Sentences& about_motif(Motif motif);  // may open an entry
const Sentences& about_fitting(Fitting fitting);
const Sentences& about_stone(Stone stone);
const Sentences& about_border(Border border);
const Sentences& about_finish(Finish finish);
const Sentences& about_cord(CordType cord);
const Sentences& about_mark(MarkForm mark);
const Sentences& about_inscription();
const Sentences& about_scar();
const Sentences& about_unmatched_tips();
const Sentences& closings();

}  // namespace backmark::scenario
