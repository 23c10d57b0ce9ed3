// Written by the program from its list of operations; edit that list, not this file.

/** What each operation takes: POST /api/NAME. */
export interface Asks {
  /** take pieces, makers, sources or observations in from a spreadsheet */
  'import': {
    /** the rows themselves, as CSV; columns are read by headings */
    'text'?: string;
    /** what the rows of --text are called */
    'name'?: string;
    /** what a column of --text is, as HEADING=made */
    'columns'?: string[];
    /** a cell of --text put right, as 14:made=195X */
    'mend'?: string[];
    /** say what would be taken in, change nothing */
    'look'?: boolean;
    /** sheet of an .xlsx file (the first) */
    'sheet'?: string;
    /** take the good rows, set the others aside */
    'skip-faulty'?: boolean;
    /** the file was exported with --guard */
    'guarded'?: boolean;
    seen?: number;
    once?: string;
  };
  /** weigh all evidence: years and makers of every piece */
  'infer': {
    /** seed of the reckoning, recorded with it (1) */
    'seed'?: number;
    /** share of pieces by hands that are not on the list, 0 to 1 (learned) */
    'unlisted'?: number;
    /** chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4) */
    'chains'?: number;
    /** rounds that each chain keeps, at least 100 (300) */
    'rounds'?: number;
    /** learn everything again, also what a small change leaves much as it is */
    'anew'?: boolean;
    seen?: number;
    once?: string;
  };
  /** a row a piece, recorded and reckoned */
  'list': {
    /** names joined by commas; any character by its key */
    'columns'?: string;
    /** as CSV, every built-in column unless named */
    'csv'?: boolean;
    /** only so many rows */
    'limit'?: number;
  };
  /** why this year and this maker: each piece of evidence and its weight */
  'explain': {
    /** the piece */
    'number': string;
    /** share of pieces by hands that are not on the list, 0 to 1 (learned) */
    'unlisted'?: number;
    /** seed of the reckoning, recorded with it (1) */
    'seed'?: number;
    /** chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4) */
    'chains'?: number;
    /** rounds that each chain keeps, at least 100 (300) */
    'rounds'?: number;
  };
  /** what holds for the whole show: title, opening day, trim of the book ... */
  'setting': {
    /** which; all of them without */
    'key'?: string;
    /** what it shall be */
    'value'?: string;
    /** take it away */
    'unset'?: boolean;
    seen?: number;
    once?: string;
  };
  /** begin a section of the show, or change its title, place or introduction */
  'section': {
    /** short name of the section */
    'key': string;
    /** as printed */
    'title'?: string;
    /** place in the order of sections */
    'rank'?: number;
    seen?: number;
    once?: string;
  };
  /** take pieces into the show and the book by hand, in order, or drop them */
  'pick': {
    /** numbers, in their order */
    'number'?: string[];
    /** every piece not yet picked; with --drop, every pick */
    'all'?: boolean;
    /** the section they stand in */
    'section'?: string;
    /** place of the first; others follow */
    'rank'?: number;
    /** deserves a spread in the book */
    'lead'?: boolean;
    /** not in the book */
    'show-only'?: boolean;
    /** not in the cases */
    'book-only'?: boolean;
    /** neither any more */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
  /** whether all printed papers agree with each other and with the show */
  'check': {
    /** the name of a frozen set: list what changed since */
    'frozen'?: string;
  };
  /** print a paper of the show, or all of them, into its prints folder */
  'print': {
    /** labels, checklist ... or all */
    'what': string;
    /** for whom it is made: public, registrar, lender ... */
    'for'?: string;
    /** only for the lender of this code */
    'lender'?: string;
    /** keep what these papers say under this name, for "check --frozen" */
    'freeze'?: string;
    /** plan so many hours of looking */
    'hours'?: number;
    /** plan by tray or by lender (tray) */
    'by'?: string;
    /** whatever gave way is a fault, and then nothing is written */
    'strict'?: boolean;
  };
  /** give the show out again: csv, by the map that took it in */
  'export': {
    /** csv */
    'format': string;
    /** put an apostrophe before cells a spreadsheet would run */
    'guard'?: boolean;
  };
  /** pieces by any words of their number, title, marks, notes or observations */
  'find': {
    /** words to look for; accents do not matter */
    'words': string[];
  };
  /** the book of changes: who changed what, when and why */
  'history': {
    /** only what touches this piece */
    'number'?: string;
    /** how many entries (20) */
    'limit'?: number;
  };
  /** how a date text is understood, with what was left over */
  'date': {
    /** dates as written; without any, lines of standard input */
    'text'?: string[];
    /** years either way that "c." stands for (5) */
    'about'?: number;
  };
  /** any formula the program uses, by name */
  'reckon': {
    /** the formula */
    'name'?: string;
    /** key=value */
    'inputs'?: string[];
    /** all formulas: inputs, units, limits, source */
    'list'?: boolean;
  };
  /** hide known years and makers, find them again: may the odds be trusted? */
  'calibrate': {
    /** hide whole lots (a set knows its own date) */
    'by-lot'?: boolean;
    /** in how many parts (10): so many times the show is reckoned */
    'folds'?: number;
    /** seed of the reckoning, recorded with it (1) */
    'seed'?: number;
    /** share of pieces by hands that are not on the list, 0 to 1 (learned) */
    'unlisted'?: number;
    /** chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4) */
    'chains'?: number;
    /** rounds that each chain keeps, at least 100 (300) */
    'rounds'?: number;
  };
  /** what the pieces and the sources say of a claim */
  'test': {
    /** "first made in YEAR by MAKER" and other forms */
    'claim': string[];
    /** seed of the reckoning, recorded with it (1) */
    'seed'?: number;
    /** share of pieces by hands that are not on the list, 0 to 1 (learned) */
    'unlisted'?: number;
    /** chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4) */
    'chains'?: number;
    /** rounds that each chain keeps, at least 100 (300) */
    'rounds'?: number;
  };
  /** what to look at next and what it should settle; what does not fit */
  'look': {
    /** only looks at these pieces */
    'number'?: string[];
    /** plan so many hours of looking */
    'hours'?: number;
    /** plan by tray or by lender (tray) */
    'by'?: string;
    /** seed of the reckoning, recorded with it (1) */
    'seed'?: number;
    /** share of pieces by hands that are not on the list, 0 to 1 (learned) */
    'unlisted'?: number;
    /** chains of the sampled part: reliabilities, changes of marks; 0 leaves it out (4) */
    'chains'?: number;
    /** rounds that each chain keeps, at least 100 (300) */
    'rounds'?: number;
  };
  /** every piece as the Table lays it: measures, pictures, years and makers */
  'table': Record<string, never>;
  /** one piece as the Sheet lays it: pictures, parts, evidence, answers */
  'sheet': {
    /** the piece */
    'number': string;
    /** only the answer, with these records laid aside */
    'without'?: string[];
  };
  /** candidate materials from what was measured at the bench, and what to measure next */
  'identify': {
    /** readings as key=value (air_g, water_g, water_C, reading_g, air_density, density, density_u, spot_ri, ri_low, ri_high, uv_long, uv_short, magnet, seen, schreger_deg, schreger_n, fineness_mark, group, set, stone, metal), or the number of a piece, a part of it, and readings that stand over those on record */
    'words'?: string[];
  };
  /** restricted materials: what to ask and hold, per piece */
  'screen': {
    /** one piece, in full */
    'number'?: string;
  };
  /** every paper that can be printed, and whether it still says what the show says */
  'papers': Record<string, never>;
  /** what would be said of a piece if this were seen on it; nothing is kept */
  'what-if': {
    /** the piece */
    'number': string;
    /** "cord: braided leather; height: 49.5; tips: none" */
    'line': string;
  };
  /** keep what is seen on a piece, as a line of shorthand */
  'note': {
    /** the piece */
    'number': string;
    /** "cord: braided leather; height: 49.5; tips: none" */
    'line': string;
    /** why it replaces what was seen before */
    'reason'?: string;
    seen?: number;
    once?: string;
  };
  /** take pictures in, matched to pieces by their names; or say what is missing */
  'photographs': {
    seen?: number;
    once?: string;
  };
  /** dates back from opening day, floats, and the chance of being on time */
  'schedule': {
    /** print the list of tasks as CSV, to be edited */
    'csv'?: boolean;
    /** the day work goes on from, as 2026-11-25 */
    'today'?: string;
    /** of the draws; 1 */
    'seed'?: number;
    /** how many; 4000 */
    'draws'?: number;
  };
  /** take a change back: your newest, or any by its number */
  'undo': {
    /** its number in "history", whoever made it */
    'change'?: number;
    /** do again what was undone last */
    'again'?: boolean;
    seen?: number;
    once?: string;
  };
  /** how each character and maker came and went, as far as dated pieces tell */
  'years': {
    /** only these, each piece listed (by their keys) */
    'character'?: string[];
  };
  /** who says so, who they had it from, and what the pieces say */
  'sources': {
    /** hold each source and claim to the pieces */
    'weigh'?: boolean;
  };
  /** add a piece, maker, source, claim, event, character, lineage or window */
  'add': {
    /** what is added */
    'kind': string;
    /** what is said of it, as number="ES 400" made="about 1955" */
    'words': string[];
    seen?: number;
    once?: string;
  };
  /** take a record out of the show, with the reason; the book keeps it */
  'withdraw': {
    /** the number of an observation, claim, event, maker ... */
    'record'?: number;
    /** a piece, with all that is of it */
    'piece'?: string;
    /** why, for the book */
    'reason': string;
    seen?: number;
    once?: string;
  };
  /** begin a display case, say what it is like, or list the cases */
  'case': {
    /** short name; all cases without */
    'key'?: string;
    /** inside, mm */
    'width'?: string;
    /** inside, mm */
    'height'?: string;
    /** inside, mm */
    'depth'?: string;
    /** what shares its air: "acrylic; MDF; wool felt" */
    'made-of'?: string;
    /** material of its shelves */
    'shelf'?: string;
    /** mm */
    'shelf-thick'?: string;
    /** mm between supports */
    'shelf-span'?: string;
    /** measured air changes a day, or unknown */
    'leak'?: string;
    /** a day that the lights are on, or unknown */
    'hours'?: string;
    /** kg of silica gel or the like */
    'buffer'?: string;
    /** g of water a kg of it gives for 1 % RH, by its supplier */
    'reservoir'?: string;
    /** % that is to be held inside */
    'rh'?: string;
    /** degrees above the room while the lights are on */
    'warmer'?: string;
    /** with its lights and places */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
  /** a light of a case: candela and place, so that its lux can be reckoned */
  'fixture': {
    /** key of the case */
    'case': string;
    /** of the light */
    'name': string;
    /** in the middle of its beam */
    'candela'?: string;
    /** m to the middle of the case */
    'distance'?: string;
    /** degrees from straight in front (0) */
    'angle'?: string;
    /** mm from the left; instead of --distance */
    'x'?: string;
    /** mm up from the floor of the case */
    'y'?: string;
    /** mm in front of the pieces */
    'z'?: string;
    /** share of its full light, 1 undimmed */
    'dimmed'?: string;
    /** microwatts of ultraviolet in a lumen, or unknown */
    'uv'?: string;
    /** mm, largest measure of what shines */
    'size'?: string;
    /** take it away */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
  /** say in which case pieces lie, and where, by hand or from a file */
  'put': {
    /** the pieces */
    'number'?: string[];
    /** key of the case */
    'case'?: string;
    /** mm from the left (the middle) */
    'x'?: string;
    /** mm up from its floor (the middle) */
    'y'?: string;
    /** counted from below; 0: on a mount */
    'shelf'?: string;
    /** in no case any more */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
  /** what a light meter showed in a case, or at a piece in it */
  'reading': {
    /** key of the case */
    'case': string;
    /** with every light on */
    'lux': string;
    /** microwatts of ultraviolet in a lumen */
    'uv'?: string;
    /** number of the piece it was measured at */
    'at'?: string;
    /** of the measurement (today) */
    'day'?: string;
    /** who measured (you) */
    'by'?: string;
    seen?: number;
    once?: string;
  };
  /** light that a piece had before this show */
  'exposure': {
    /** the piece */
    'number': string;
    /** in all */
    'lux-hours'?: string;
    /** level; with --hours instead of --lux-hours */
    'lux'?: string;
    /** it lasted */
    'hours'?: string;
    /** where and when */
    'text'?: string;
    /** of its end */
    'day'?: string;
    seen?: number;
    once?: string;
  };
  /** what a piece, or everything of a lender, may have of light and air */
  'require': {
    /** number of a piece, or code of a lender */
    'subject': string;
    /** R0 to R3 over what the record says, or unknown */
    'light-class'?: string;
    /** highest level */
    'lux'?: string;
    /** most in a year */
    'lux-hours'?: string;
    /** relative humidity in %, as 40-55 */
    'rh'?: string;
    /** temperature, as 16-24 */
    'celsius'?: string;
    /** who may waive it */
    'waiver'?: string;
    /** where it stands written */
    'text'?: string;
    /** nothing is required any more */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
  /** light of every placed piece over the run, against what it may have */
  'light': {
    /** one piece, in full */
    'number'?: string;
    /** of the limits: "CIE 157", merged, strict */
    'rule'?: string;
    /** on which the lights are on (opening to last day) */
    'days'?: string;
    /** what if every light had this share of its level */
    'dim'?: string;
  };
  /** air of every case: what all bear, who is in whose way, how long it keeps */
  'climate': {
    /** of the room */
    'celsius'?: string;
    /** % relative humidity of the room */
    'rh'?: string;
    /** of the run (opening to last day) */
    'days'?: string;
    /** parts per trillion of hydrogen sulphide in the air */
    'h2s'?: string;
  };
  /** what shelves and mounts carry: sag, stress, weights, drops of cords */
  'loads': Record<string, never>;
  /** log an answer: what may be shown, printed, put on the web; or how things stand */
  'leave': {
    /** a piece, the file of a photograph, a maker or a source */
    'subject'?: string;
    /** show, print, web, all; examine, photograph, consent (of what may be a cultural item) */
    'use'?: string;
    /** asked, given or refused */
    'answer'?: string;
    /** on which terms */
    'terms'?: string;
    /** what must stand beside it */
    'credit'?: string;
    /** who answered (you) */
    'by'?: string;
    /** of the answer (today) */
    'day'?: string;
    seen?: number;
    once?: string;
  };
  /** what a piece or a case must hold to: light, air, weight, law and leave */
  'care': {
    /** one piece */
    'number'?: string;
    /** one case, by its key */
    'case'?: string;
    /** as if this piece of the case stood at --x and --y; nothing is kept */
    'moved'?: string;
    /** mm from the left */
    'x'?: number;
    /** mm from the floor */
    'y'?: number;
  };
  /** keeps the list of tasks: one changed, added, done or dropped, or a whole list */
  'task': {
    /** of one task */
    'key'?: string;
    /** what is done */
    'title'?: string;
    /** a word that gathers tasks */
    'group'?: string;
    /** keys it waits for, parted by spaces */
    'after'?: string;
    /** calendar days if all goes well */
    'least'?: string;
    /** calendar days, most likely */
    'likely'?: string;
    /** calendar days if all goes badly */
    'greatest'?: string;
    /** which pieces it holds up: show, book, loan */
    'holds'?: string;
    /** yes or no */
    'done'?: string;
    /** take it off the list */
    'drop'?: boolean;
    seen?: number;
    once?: string;
  };
}

export type OperationName = keyof Asks;
