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
    /** whatever gave way is a fault */
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
    /** the folder of the show, or the first reading */
    'show': string;
    /** readings as key=value (air_g, water_g, water_C, reading_g, air_density, density, density_u, spot_ri, ri_low, ri_high, uv_long, uv_short, magnet, seen, schreger_deg, schreger_n, fineness_mark, group, set, stone, metal), or the number of a piece and a part */
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
}

export type OperationName = keyof Asks;
