#include <array>

#include "scenario/sayings.h"

namespace backmark::scenario {
namespace {

using Bank = std::vector<Sentences>;

// In the order of Motif.
const Bank& motifs() {
  static const Bank bank{
      {"An urchin seen from above, its ten seams ruled with a compass and its knobs graded "
       "from the pole outward.",
       "The knobs were raised one at a time over a block; {few} at the {corner} are flat, and "
       "one can feel where the afternoon ended.",
       "Whoever drew this had an urchin on the bench. The plates narrow where they should, "
       "which no pattern book of the coast gets right.",
       "Grains of {metal} stand on the seams instead of between them, the quick way of doing "
       "it, and from a step back nobody would know."},
      {"The card of a ship's compass without its letters. The points are cut straight through "
       "and let into {stone}.",
       "Eight points, of which the four lesser ones were cut from the offcuts of the greater; "
       "the sawcuts can be fitted together.",
       "North is a hair to the {side}. It is the same error on {few} other compass pieces, so "
       "it belongs to a template and not to a tired hand.",
       "A compass card is the easiest circle to get wrong, and this one was corrected: a "
       "second centre mark shows below the boss."},
      {"A stone and a ring of metal, nothing else; the proportion carries it.",
       "The {stone} is cut higher than was usual and takes the light from the window side "
       "first, as a lens does.",
       "The plainest kind of slide, and the hardest to attribute. What speaks here is the "
       "width of the rim against the stone, roughly one to four.",
       "The beads round the stone are not counted off but fitted in, and the last two had to "
       "be filed to make room."},
      {"The rays were struck with one chisel-ended punch, {many} blows, a little crowded at "
       "the {side} where there was no room left.",
       "A rayed field of the calm sort: long strokes and short ones taking turns, each short "
       "stroke ending in a half-round.",
       "The strokes fan from a centre that lies under the stone, a finger's breadth above the "
       "middle of the plate. It gives the oval a brow.",
       "Of the rayed ovals this is the one with the deepest blows. The back shows every one of "
       "them as a bruise."},
      {"A scallop with its ribs chased from the front, thin slips of shell laid in every "
       "second furrow.",
       "The hinge is modelled and the ears are equal, which a living scallop's never are.",
       "The slips are cut so thin that the silver warms them from behind. Held against the "
       "window the {side} one shows a pencil number.",
       "Ribs, slips and a dark bead at the hinge: the pattern that every bench on the coast "
       "tried once."},
      {"A herring, and not just a fish: the lower jaw stands out, the eye is too large, and "
       "the scales run in the right number of rows.",
       "The scales were struck from the tail forward, each blow overlapping the last, as "
       "slates are laid.",
       "The belly is filed to an edge along the {side}, and the edge has worn smooth on "
       "somebody's shirt.",
       "The tail rays were engraved after the scales were struck; one slip of the tool runs "
       "out over the rim."},
      {"A whale going down, only the flukes left. The stone in the stem is the one upright "
       "thing on a piece that is all curves.",
       "Cast, then engraved; the lines on the {side} fluke were gone over twice, and a third "
       "line was begun and left.",
       "The flukes are thinner than they look. The caster hollowed the back to spare {metal}.",
       "The left fluke is the larger by a millimetre and a half. Turned over, it is the right "
       "one, and one begins to suspect a pattern used from both sides."},
      {"A lugger on a beam reach, the sails let in flush and the hull laid on.",
       "The mainsail is {stone}, cut with the grain running up the leech, so that it seems to "
       "fill.",
       "Two rows of waves, the nearer one cut with a wider saw. The boat sits between them as "
       "it should.",
       "The rig is that of the Hask boats, with the mizzen stepped to the {side}; a man who "
       "had sailed one drew it."},
      {"Chambers of a nautilus, sawn out and filled alternately, the joints closing as they go "
       "inward until a blade would not pass.",
       "The spiral was laid out by eye. It tightens too soon and recovers, and the recovery is "
       "what makes it live.",
       "The inner {few} chambers are filled with metal filings and glue, a repair or an "
       "impatience."},
      {"A crescent with its horns drawn in until they nearly hold the stone between them.",
       "The grains along the belly were soldered in one heat, sliding a little to the {side} "
       "as they went.",
       "Hung by its horns it would be a pendant; as it is, it must have swung, and both tips "
       "are rubbed bright."},
      {"A lozenge with five meshes of net cut through and laid on a dark ground.",
       "Mesh over mesh, cut with a saw whose blade broke {few} times: each break is a small "
       "star at the crossing.",
       "Net-makers knew this lozenge as the sign for a finished length. Made in {metal} it "
       "says so more quietly."},
      {"A lighthouse at night, its beams two slips of amber light in a dark sea of stone.",
       "The tower leans to the {side} by a degree. So does the one at Corrow Light.",
       "Everything here is straight but the water; the water was sawn last, freehand, and is "
       "the best of it."},
      {"A tern turning, the tail open. The engraving on the wings runs with the feathers near "
       "the body and across them at the tips.",
       "The bird is sawn from one sheet and domed over a spoon, or something of that curve.",
       "The eye is a drilled hole, not a punched one; against the light it is the brightest "
       "point of the piece."},
      {"Three rings worked into a knot that cannot be undone and cannot really be tied.",
       "Cast in three parts and sprung together; the last join, at the {corner}, was soldered "
       "from behind and scraped.",
       "The over-and-under fails once, at the lower crossing. Every knot from this pattern "
       "fails there."},
      {"The moon over five lines of water, cut through the upper sheet and blackened in the "
       "lower.",
       "The waves were sawn in pairs, two sheets pinned together; somewhere there is or was "
       "another that answers this one.",
       "The moon is left full thickness and stands up from the water by the width of a nail."},
      {"A shield of stones in channels, row under row, no two slips alike and no gap wide "
       "enough for a hair.",
       "The rows lean one way and then the other, so the field seems woven. The lowest slip on "
       "the {side} is a later filling.",
       "It was ground level after setting. The {metal} walls between the stones are as worn as "
       "the stones, which is how one knows."},
      {"Eight points, four long and four short, each with a ridge that the light runs down.",
       "A star cast solid and filed to its ridges; on the {side} the file slipped and the slip "
       "was made into a line.",
       "The points are sharp enough to catch wool, and two of them have been blunted by "
       "someone who found out."},
      {"A tablet struck all over with a herringbone of two punches, left and right, never "
       "changed for a third.",
       "The rows were ruled first with a scriber. Where the rule was missed, at the {corner}, "
       "the pattern wavers and picks itself up.",
       "A plain tablet, and the plainness was meant: the corners are relieved by hand."}};
  return bank;
}

// In the order of Stone.
const Bank& stones() {
  static const Bank bank{
      {},
      {"The serpentine has the dark threads of the cliff at Anvil Bay.",
       "The green runs paler towards the {side}; it has not been dyed, for it is the same in "
       "the cracks.",
       "Serpentine of two cuttings, to judge by the polish."},
      {"The jasper is the brick-red kind from the upper beach.",
       "A white vein crosses the jasper and was placed on purpose."},
      {"The slate is roofing slate, still with its bedding.",
       "Slate takes no polish, and nobody here asked it to."},
      {"The agate is banded and was cut across the bands.",
       "Agate of the warm sort that was sold by weight at regatta time."},
      {"Sodalite came by post; none is found here.",
       "The blue is sodalite, with one cloud of white near the {corner}."},
      {"The jet is warm to the lip and very light; it has crazed a little.",
       "Looked at edgeways the jet is brown, as true jet is."},
      {"The sea glass was used as found, frosted, and only its back was ground.",
       "A piece of bottle, some decades in the water, chosen for its edge."},
      {"Moon glass, the milky kind that a works across the sound made for lamps.",
       "The glass has seed bubbles, all drawn out to the {side}."},
      {"The ormer shell changes from green to rose as one walks past.",
       "The ormer was cut from near the rim, where the colour is strongest and the shell "
       "thinnest."},
      {"The mussel shell keeps its blue edge.",
       "Mussel shell, laid with the growth lines running across."},
      {"The red is looked on as coral until somebody tests it; the question stands open in our "
       "list.",
       "Coral, or a good imitation of it. We have not scratched it to find out."},
      {"The pale brown is horn, pressed flat; what beast it came from is an open question.",
       "Horn, with the fibres showing at the cut."},
      {"The mottled slip looks like tortoiseshell and may be pressed plastic; until it is "
       "known the piece does not travel.",
       "It has the mottle of turtle shell. A lamp would tell, and has been asked for."},
      {"The white is bone or something dearer; the lens has not yet settled which.",
       "Fine dark pores in the white speak for bone; they are not on both faces."},
      {"The amber has crazed at the rim and holds one wing of an insect.",
       "Amber, or copal: it was not tested with anything hot, and will not be."},
      {"Under the glass lies a piece of feather, whose bird should be named before the piece "
       "crosses a border.",
       "The feather under the glass has kept its blue."},
      {"Driftwood, oiled, its grain running with the length.",
       "The wood is from a boat, by the paint in its pores."}};
  return bank;
}

}  // namespace

const Sentences& about_motif(Motif motif) {
  return motifs()[static_cast<std::size_t>(motif)];
}

const Sentences& about_stone(Stone stone) {
  return stones()[static_cast<std::size_t>(stone)];
}

const Sentences& about_border(Border border) {
  static const Bank bank{
      {"There is no border, and the edge was left as the shears left it.",
       "Nothing frames it; the rim is only broken with a file."},
      {"The bevel is wider at the {corner}, where the file had more room.",
       "A bevel, quickly filed and slowly polished."},
      {"The twisted wire of the border meets itself at the {corner}, with a gap no wider than "
       "a "
       "hair.",
       "Two wires twisted to the left, flattened, and soldered down in one heat."},
      {"The punch of the border is a half-round with a nick in it, and the nick comes round "
       "{many} times.",
       "The border was struck before the plate was cut out: half a blow is missing at the "
       "{side}."},
      {"The grains of the border are of two sizes, and not by design.",
       "The granules were melted on charcoal, sorted through a sieve, and set with a brush."},
      {"The double line was drawn with a wheel, twice round.",
       "Two lines run round the edge and part company at the {corner}."}};
  return bank[static_cast<std::size_t>(border)];
}

}  // namespace backmark::scenario
