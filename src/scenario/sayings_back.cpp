#include "scenario/sayings.h"

namespace backmark::scenario {

using Bank = std::vector<Sentences>;

const Sentences& about_fitting(Fitting fitting) {
  static const Bank bank{
      {"There is no fitting and never was one: it hung from its loop.",
       "Nothing was ever soldered to this back."},
      {"The tubes on the back are of rolled sheet, seam outward.",
       "Two lengths of tube, cut from one piece; the cuts meet when they are held together.",
       "The tubes stand a little apart at the foot, so that the cord spread when it was worn.",
       "One tube has been squeezed to grip a thinner cord."},
      {"The loops are bent from one gauge of wire and soldered at the waist only.",
       "Two eights, of which the upper is the larger; the pliers have left their teeth on it.",
       "The eights were closed after soldering, and one of them has opened again.",
       "The wire of the eights is square in section, drawn by hand."},
      {"The bar sits a little below the middle, where the weight is.",
       "The tongue of the bar still springs.",
       "The bar is riveted at one end as well as soldered, out of distrust.",
       "The channels of the bar are polished by sixty years of cord."},
      {"The clip lies flat and has kept its spring.",
       "The clip was soldered on askew and left so.",
       "The clip covers an earlier scratch, perhaps a price.",
       "The clip's lip is worn to a second edge by the cord."},
      {"The button still clicks.", "The button is stiff, and should not be tried.",
       "The knurling of the button is worn on one side, a right thumb's.",
       "The spring inside the button is a later one; it is too strong for the cord."},
      {"The pin is of harder metal than the plate and has dented it.",
       "The catch is bent from the same strip as the hinge.",
       "The pin turns in a barrel of five knuckles; the usual number is three."}};
  return bank[static_cast<std::size_t>(fitting)];
}

const Sentences& about_finish(Finish finish) {
  static const Bank bank{
      {"The back is filed one way only, from the {side}.",
       "Long file strokes were left on the back for anyone to see."},
      {"The back is filed crosswise, and the squares catch the light like cloth.",
       "Cross-filing on the back, finer than the work on the front."},
      {"The back is polished as bright as the front, a sign of late date or of pride.",
       "The back was polished, and engraving it afterwards must have been a pity."},
      {"The back has the white bloom of the pickle pan.",
       "Left white from the acid; where fingers held it, it shows grey."},
      {"The back keeps the skin of the casting, with the grain of the mould.",
       "The rough back is as it came from the mould, cuttle grain and all."}};
  return bank[static_cast<std::size_t>(finish)];
}

const Sentences& about_cord(CordType cord) {
  static const Bank bank{
      {},
      {"The leather is an eight-strand plait, tight and even.",
       "The plait has stretched by the fitting and nowhere else."},
      {"Round leather, cut from the back of a hide and greased.",
       "The round leather has cracked at the bend."},
      {"The cotton braid has faded on one side, so it lay in a window.",
       "Cotton, eight threads, with one red thread in the core."},
      {"The linen is net twine, waxed.", "Linen twist of the kind sold for sails."},
      {"Rayon, still bright, and slippery to the tip.", "The rayon braid frays at a look."},
      {"Nylon, its cut ends sealed with a match.",
       "The nylon braid has kept its colour better than the leather of its neighbours."},
      {"The cord is vinyl, and feels of it.",
       "Vinyl braid over a cotton core, sticky with age."}};
  return bank[static_cast<std::size_t>(cord)];
}

const Sentences& about_mark(MarkForm mark) {
  static const Bank bank{
      {"Nobody signed it.", "There is no mark, though there would have been room for three.",
       "Looked over with a lens twice: no mark.",
       "It carries no name, like most of what hangs near it."},
      {"The stamp was struck before the fitting was soldered, and the heat has softened its "
       "edges.",
       "The mark is deeper at the {corner}; the punch was held as one holds a pencil.",
       "It is marked, and the mark is upright to the wearer, not to the maker.",
       "The letters were struck on a hard bench: the front shows nothing."},
      {"The name was cut, not struck, and each stroke ends in a small hook.",
       "The letters were engraved by hand and lean as handwriting does.",
       "The graver slipped once in the first letter and was steadied."}};
  return bank[static_cast<std::size_t>(mark)];
}

const Sentences& about_inscription() {
  static const Sentences bank{
      "The engraved words on the back were cut by somebody used to larger letters.",
      "Whoever engraved the back ran out of room and made the last letters narrow.",
      "The inscription is shallow, done with the point of a scriber by lamplight or in a "
      "hurry."};
  return bank;
}

const Sentences& about_scar() {
  static const Sentences bank{
      "At the upper edge is a filed place, a thumbnail wide, where a loop once sat.",
      "It began as a pendant. The scar of the loop was filed flat and burnished, and still "
      "drinks the light differently."};
  return bank;
}

const Sentences& about_unmatched_tips() {
  static const Sentences bank{
      "The tips do not match; one of them has been lost and made good from a drawer.",
      "Left and right tip are strangers to each other."};
  return bank;
}

const Sentences& closings() {
  static const Sentences bank{
      "A second one was seen at Port Ember in the first survey and could not be found again.",
      "We should be glad to hear from anybody who knows the box it came in.",
      "Laid beside its neighbours it looks severe; worn, by all accounts, it did not.",
      "The owner thinks it the best in the book and may be right.",
      "It was the first piece in the tray to be photographed and the last to be understood.",
      "What it cost is not recorded, nor is it easy to guess.",
      "If a reader has its fellow, we ask for a photograph of the back.",
      "Nothing about it is rare. All of it together is.",
      "It came wrapped in a page of the Packet, undated, about the price of coal.",
      "Three people have worn it, and each of them bent the tips a little.",
      "It is lighter than it looks, and that was the point.",
      "The opinion given above is mine; Tressel, who saw it in the eighties, thought "
      "otherwise.",
      "It should be looked at from below, where a child would have seen it.",
      "There is a faint smell of paraffin about it still.",
      "One would like to know what the man at the next bench was making."};
  return bank;
}

}  // namespace backmark::scenario
