#include "scenario/essays.h"

namespace backmark::scenario {

std::string_view essay_on_beginnings() {
  return R"(# Who Was First

*Ina Rell*

Every small art has a founder in the telling. Ours has Oda Vessen. Ask on the quay at Ennet who first
put a slide to a cord, and you will hear of the summer in which she opened, the chandler's window, the
young man who would not wear a knotted tie in a boat. It is a good story, and it is told the same way by
everyone, which is the first thing to notice about it.[^1]

## One voice, three times

I have found the story in three places. Annis Corrow told it to Coll Tressel in 1957, sitting on a fish
box, and Tressel wrote it down that evening [@corrow-telling]. A dealer put it into a letter thirteen
years later [@dealer-letter]. A leaflet for visitors has it in print [@regatta-silver]. Three witnesses, one
might say; but the dealer had been a customer of Corrow's and says so, and the leaflet borrows her very
turn of phrase, down to the young man in the boat. What we have is one voice heard three times. It may be
right. It does not become more right by being repeated.

Against it stands a single sheet in another hand. In March 1949 the harbour master asked his board to buy
the bench of a mender of instruments who had given up work, and in passing called him the man "who first
put a slide to a cord for our pilots, these fifteen years gone or so" [@harbour-board-letter]. The harbour
master wanted a bench, not a place in history. He had no reason to flatter Ivar Strand, who was past caring,
and every reason to keep the sentence short.[^2]

## What the pieces say

Papers are quickly exhausted; pieces are not. The oldest backs in this book have tubes, and tubes ask for a
cord that is threaded once and for all. If the form began in 1946, with wire eights as the story wants, the
tubes must be a detour taken by people who did not know better. If it began ten years earlier they are simply
the beginning. The survey of fittings, made before anyone had asked the question, puts tubes first
[@survey-of-fittings]. I put them first too, and the section called Two Tubes and a Knot is arranged so that
readers may disagree with the objects in front of them.

![Tubes, on no. [#{tubes}]. The cord is threaded once and for all.](<{tubes} back>)

One piece with a year cut into its back weighs more than all of this. There are such pieces. They should be
looked at under a lens, because a year may be added at any time by anyone who owns a scriber and a grievance.

## What she did

None of it makes Vessen smaller. Her day-book, as far as it is kept, is the record of someone who tried things:
"eights again", she writes, and on the next line the price of ormer by the dozen [@vessen-day-book]. Her grandson
reads the eights as hers [@vessen-grandson]. He reads them out of the same day-book, so that he too is an echo, if an
affectionate one. What can be said is that she set shell thinner than anyone, that the loop came into general use
while she worked, and that when a form needs a founder it will choose the one with the best window.

[^1]: The variants are few. In one the young man is a pilot; in another it is raining.
[^2]: The board bought the bench. It stands in the net loft, and its vice is still in use.
)";
}

std::string_view essay_on_backs() {
  return R"(# Reading a Back

*Ina Rell*

> Turn it over, and it stops talking.

A front is made to be seen and a back is made to work. That is why this book prints both at one size, and why I
would give up the fronts first. A maker who copies a neighbour's ray and border will still solder as he learned to
solder; and what he buys from the trade he buys in a certain year.

## Five ways to hold a cord

There are five. Tubes come first, then wire bent into eights, then the bar; the clip arrives in 1951 and the button in
1964. Brooches have a pin. The order is that of a survey which looked at backs by the hundred [@survey-of-fittings], and
the later years have papers: the clip was applied for in September 1951 and granted in 1955 [@patent-clip], the button
patented in two bores in 1964 [@patent-button]. No fitting drives out the one before. A drawer of old stock lasts for years,
an old man's habit longer.[^1]

![One of each to one measure, from left to right: tubes, eights, bar, clip and button.](<{tubes} back, {eights} back, {bar} back, {clip} back, {button} back>)

In [fig {tubes}] they stand side by side. The eye goes to the metal; it ought to go to the room that each leaves for a cord.

The small bore of the button takes a cord of four millimetres and the large one of five and a half. Where a thin cord rattles
in a large bore, something has been changed. Where it fits, nothing has been proved.

## A legend that grew shorter

The clip carries words, at first `TARN WORKS ENNET PAT.APP.FOR` in letters that one needs a lens for; then the number
of the patent takes the place of the boast; then the works forgets its own second name; and at last there is only `TARN`. Nobody
decided this. Dies wear out, and each time the man who cut the new one saw no reason to be wordy [@survey-of-marks]. For us it is
a clock with three ticks. It has to be read with two cautions. The clip was sold to all, so that a clip by Tarn is no slide by
Tarn. And a clip can be changed: a slide of one year may have a back of another.[^2]

![A stamp on no. [#{mark}], struck before the fitting was soldered.](<{mark} mark>)

The same thing happens to personal stamps. Maren Oskeld struck her name and her quay, then her name, then two letters and a
point. Oda Vessen's three forms are as well known. A stamp cut short is nearly always the later one, and I know of only one
maker on any coast who made hers longer.

## Cords lie

Cords are worn, broken, chewed and replaced. Rayon was not to be had before 1946, nylon not before 1955, and vinyl is first offered
in a trade list of spring 1968 [@cord-trade-list]; a slide that hangs on vinyl is not for that reason a slide of 1968 or after. In our
list a cord dates the cord. Tips, too: a pair that matches may have been matched by a dealer.

I have kept a list of what was replaced when an owner could remember, and of what only looks replaced. The second list is
longer and I trust it less [@rell-notes].

[^1]: Eights were soldered on at Hask until the last smith there stopped for lack of sight.
[^2]: Look at the solder. Two colours of it on one joint mean two heatings.
)";
}

std::string_view essay_on_materials() {
  return R"(# What the Coast Gave

*Ina Rell*

Most of what is set into this silver was picked up within sight of the bench. Serpentine and jasper come out of the cliff at Anvil
Bay, slate off the roofs, jet from the tide line after northerlies; the standard account, written by a schoolteacher with a hammer,
is still the best [@lore-cliff]. Shell was eaten first. Glass had been bottles.

## Stone and shell

![Serpentine, cut high, on no. [#{serpentine}] (page [page #{serpentine}]).](<{serpentine} front>)

The cutters were few. Varrow had a wheel; the others had a sheet of sand and patience. That is why cabochons are high and facets
unknown, and why inlay was cut from what is flat by nature: slate, mussel, ormer. Behind the stone one finds pitch and sawdust,
later card, then nothing but metal. A stone that has been out and in again shows a broken line of pitch at the girdle.[^1]

## Things one may not simply move

Some of what was used here was once an animal that the law now protects, or looks as though it were. There is red that may be
coral, a mottle that may be turtle, white that may be ivory and is probably mutton bone. There is a feather under glass. I have
written what it looks like and how we know; where we do not know, the list says so, and the piece stays in its tray until somebody who
is entitled to an opinion has given one. None of this is advice about law. Whoever lends, carries or buys such a piece should ask
the office that issues permits, and ask early.

There is a second caution. Horn, feather and fur were dusted in the old days against moth, and some of the powders are poisons that do
not fade. Gloves; no tasting, whatever the handbook of 1920 recommends; no hot needle.

## Fashions

Materials have their years like fittings, though looser ones. Jet is early. Sea glass belongs to the war and after, when there was
nothing else. Sodalite came by post once there was post to speak of, and the milky glass of the sound follows the lamp works that made it.
The shop list of one firm shows the change in a single winter [@ember-ledger]. Maren Oskeld's paper of numbers, which gives no names, gives
stones [@oskeld-numbers]; so it is from her that we know what a pilot paid for green.[^2]

[^1]: Under long-wave light the pitch is dull and modern glue is not.
[^2]: Eleven shillings, the winter of 1952 to 1953, "large, green, in a hurry".
)";
}

std::string_view glossary() {
  return R"(# Glossary

**bail** — the loop by which a pendant hangs. Where a pendant was made into a slide it is filed off.

**bar slide** — a fitting with two channels and a tongue between them. The first kind was filed from solid, the second stamped.

**bezel** — the strip of metal bent round a stone to hold it; *saw-tooth* when its edge is cut into points.

**channel work** — stones laid side by side in troughs with walls of metal between them, and ground level.

**eight, figure-eight wire** — a wire loop soldered at its waist; the cord runs through both eyes.

**granulation** — small grains of metal fixed to a surface.

**inlay** — material let into a recess so that its face is flush.

**lot** — pieces that came together, as a set, a pair or one purchase.

**married** — put together of parts that did not begin together.

**overlay** — a pierced sheet soldered over a whole one, whose ground is often blackened.

**pickle** — the acid bath in which soldered silver is cleaned; it leaves a white bloom.

**push button** — a fitting of 1964 whose spring is released with the thumb; made in two bores.

**slide, slide tie** — an ornament that runs on a cord worn round the neck.

**spring clip** — a stamped fitting with a sprung lip, by Tarn Works.

**stampwork** — a pattern struck with punches.

**tip** — the metal end of a cord.

**tubes** — the oldest fitting: two short lengths of tube soldered to the back.

**unrecorded hand** — a maker of whom nothing is known but the work. Not the same as a maker we failed to name.
)";
}

}  // namespace backmark::scenario
