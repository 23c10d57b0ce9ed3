// The parts of a picture, each drawn round the middle of the ornament, in millimetres.
#pragma once

#include <string>
#include <vector>

#include "scenario/graver.h"

namespace backmark::scenario {

// The ornament from the front, with its motif.
void draw_front(Graver& graver);
// The plate from behind (turned about its vertical axis), with finish, scars and marks, without
// the fitting.
void draw_back_plate(Graver& graver);
// The fitting as it lies over plate and cord.
void draw_fitting(Graver& graver);
// The folded cord, with both tips: above and below the ornament.
void draw_cord(Graver& graver);
// A pair of tips, collars level at y = 0, with cord ends fading upward.
void draw_tips(Graver& graver);
// The mark large, on a field of the back that fills the box.
void draw_mark_detail(Graver& graver, const draw::Box& box);

// The clip is made in one size; on small pieces a smaller one was cut down from it: the factor.
double clip_scale(const Work& work);

// Half the distance between the two runs of the cord behind the ornament.
double cord_apart(const Work& work);

// Letters struck or cut into metal: capitals, figures and . · & / of a height, centred.
// Engraved ones are thinner and lean.
void draw_letters(
    Graver& graver, const std::string& text, draw::Point centre, double height, bool engraved);
// Width of the text at that height.
double letters_width(const std::string& text, double height);
// The whole legend with its outline, as on the back.
void draw_mark(Graver& graver, draw::Point centre, double height);

// Motifs, by kind of work.
void draw_struck(Graver& graver);    // urchin, cabochon, rayed field, herringbone
void draw_inlaid(Graver& graver);    // compass, scallop, nautilus, lighthouse, channel work
void draw_laid(Graver& graver);      // boat, net, moon over water
void draw_modelled(Graver& graver);  // herring, whale tail, crescent, tern, knot, star

}  // namespace backmark::scenario
