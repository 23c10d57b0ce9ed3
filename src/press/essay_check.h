// Essays held to the record: what a sentence says outright of one piece that it names.
#pragma once

#include "press/job.h"
#include "press/prose.h"

namespace backmark::press {

// Each sentence of text, captions and notes that names exactly one piece ([#ES 118]) is held to
// that piece's odds, by the rules of words/prose_check.h. Sentences that name several pieces,
// or none, are left alone: whom they speak of is not for a program to say.
Problems check_essay(const PressJob& job, const Prose& essay);

}  // namespace backmark::press
