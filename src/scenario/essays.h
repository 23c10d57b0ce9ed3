// The texts of the demo's book that are not entries: Markdown with footnotes ([^1]) and
// citations
// ([@key], a key of references.json and of model::Source).
#pragma once

#include <string>
#include <string_view>

#include "scenario/scenario.h"

namespace backmark::scenario {

std::string_view essay_on_beginnings();  // essays/1-who-was-first.md
std::string_view essay_on_backs();       // essays/2-reading-a-back.md
std::string_view essay_on_materials();   // essays/3-what-the-coast-gave.md

// The essay with the numbers of pieces of the show in place of {tubes}, {eights}, {bar},
// {clip}, {button}, {serpentine} and {mark}; a paragraph that names what the show has not is
// left out.
std::string with_figures(std::string_view essay, const Scenario& scenario);
std::string_view glossary();  // essays/glossary.md: "**term** — words" paragraphs

}  // namespace backmark::scenario
