// What the operations answer, as the pages read it.
import type { OperationName } from '../api';

export interface Problem {
  fault: string;
  what: string;
  where: string;
  fix: string;
}

export interface Hello {
  show: string;
  title: string;
  opening_day: string | null;
  days_to_opening: number | null;
  role: 'look' | 'record' | 'curate';
  token: string;
  version: string;
  counts: { pieces: number; makers: number; sources: number; waiting: number };
  inferred: boolean;
  stale: boolean;
}

// Twenty years at equal shares; one digit a year from `from`, 0 to 9 of the likeliest.
export interface Years {
  p10: number;
  p50: number;
  p90: number;
  q: number[];
  from: number;
  p: string;
}

export interface Picture {
  view: string;
  v: number;
  w_mm: number;
  h_mm: number;
  shape?: number; // width over height, where no scale is known
}

// Name (null: the unrecorded hand) and chance.
export type Chance = [string | null, number];

export interface Pick {
  rank: number;
  show: boolean;
  book: boolean;
  lead: boolean;
}

export interface TablePiece {
  number: string;
  title: string;
  form: string;
  tray: string;
  section: string | null;
  case: string | null;
  pictures: Picture[];
  made: string;
  by: string;
  year: Years | null;
  makers: Chance[];
  pick: Pick | null;
  torn: string | null;
  seen?: Record<string, string>;
}

export interface TableAnswer {
  pieces: TablePiece[];
  makers: { name: string; from: number | null; to: number | null; firm: boolean }[];
  sections: { key: string; title: string }[];
}

export interface Answer {
  made: string;
  by: string;
  overruled: string;
  year: Years | null;
  makers: Chance[];
}

export interface Evidence {
  what: string;
  source: string;
  record: number;
  bits: number;
  odds: number;
  words: string;
  torn: boolean;
  alone: Years | null;
}

export interface Observation {
  id: number;
  part: string;
  character: string;
  label: string;
  value: string;
  by: string;
  day: string;
}

export interface SheetAnswer extends Answer {
  number: string;
  title: string;
  form: string;
  tray: string;
  before: string | null;
  next: string | null;
  pictures: Picture[];
  parts: { kind: string; is: string }[];
  observations: Observation[];
  marks: { text: string; place: string }[];
  claims: { text: string; source: string; against: boolean }[];
  events: { date: string; text: string; party: string; place: string }[];
  notes: { heading: string; text: string }[];
  evidence: Evidence[];
  misfits: { what: string; part: string; p: number }[];
  alike: { number: string; title: string; share: number; why: string[]; unlike: string[] }[];
}

export interface Look {
  number: string;
  part: string;
  character: string;
  label: string;
  gain_bits: number;
  gain_years: number;
  minutes: number;
  again: boolean;
  p10: number;
  p50: number;
  p90: number;
  answers: { value: string; p: number; p10: number; p50: number; p90: number }[];
}

export interface LookAnswer {
  looks: Look[];
  conflicts: { number: string; odd_one: string; p: number; what?: string }[];
  hours: number;
  plan: { at: string; minutes: number; fetch_minutes: number; gain_bits: number; looks: { number: string; character: string }[] }[];
  missed: { number: string; character: string; minutes: number; over: number }[];
  planned_minutes: number;
  notes: string[];
}

export interface Entry {
  position: number;
  at: string;
  who: string;
  operation: string;
  summary: string;
  undoes?: number | null;
  undone_by?: number | null;
}

export interface Points {
  p10: number;
  p50: number;
  p90: number;
}
// One digit a year from `from`, 0 to 9 of certain.
export interface YearChances {
  from: number;
  p: string;
}

export interface UseBead {
  number: string;
  y: number;
  known: boolean;
  from: number | null;
  to: number | null;
  torn: string | null;
}
export interface UseRow {
  value: string;
  pieces: number;
  known: number;
  start: Points | null;
  end: Points | null;
  words: string;
  use: YearChances | null;
  decades: { year: number; pieces: number; of: number }[];
  told: { from: number | null; to: number | null; source: string }[];
  beads?: UseBead[];
}
export interface UseGroup {
  key: string;
  label: string;
  part: string;
  unit: string;
  maker: string | null;
  ordered: boolean;
  source: string | null;
  recorded: number;
  known: number;
  rows: UseRow[];
}
export interface MakerSpan {
  name: string;
  kind: string;
  place: string;
  from: number | null;
  to: number | null;
  start: Points;
  end: Points;
  pieces: number;
  known: number;
  words: string;
}
export interface CalibrationStep {
  said: number;
  seen: number;
  low: number;
  high: number;
  pieces: number;
  verdict: string;
}
export interface Calibration {
  at: string;
  stale: boolean;
  n_years: number;
  coverage: Record<string, number>;
  median_error: number;
  steps: CalibrationStep[];
  verdict: string[];
}
export interface YearsAnswer {
  reckoned: boolean;
  stale: boolean;
  pieces: number;
  known: number;
  axis: { first: number; last: number };
  groups: UseGroup[];
  makers: MakerSpan[];
  unrecorded: (Points & { pieces: number }) | null;
  calibration: Calibration | null;
}

export interface Source {
  key: string;
  title: string;
  kind: string;
  year: number | null;
  citation: string;
  derives_from: string[];
  origin: string;
  reliability: number;
  stated: boolean;
  claims: number;
  pieces: number;
  borne_out: number | null; // of 20
  tested: number;
}
export interface Voice {
  source: string;
  title: string;
  for: boolean;
  says: string;
  reliability: number;
  origin: string;
  counted: boolean;
}
// A look at a piece that carries a claim; `moves` is a chance.
export interface ClaimLook {
  number: string;
  character: string;
  label: string;
  moves: number;
  minutes: number;
  answers: { value: string; p: number; p_claim: number }[];
}
export interface ClaimOnFile {
  ask: string;
  words: string;
  p: number | null;
  p_pieces: number | null;
  voices: Voice[];
  carried_by: { number: string; p: number }[];
  looks: ClaimLook[];
  turns: { what: string; p: number }[];
}
export interface Saying {
  record: number;
  source: string;
  number: string;
  text: string;
  against: boolean;
  p: number | null;
  torn: boolean;
}
export interface SourcesAnswer {
  weighed: boolean;
  sources: Source[];
  echoes: { origin: string; tellers: string[] }[];
  claims: ClaimOnFile[];
  said: Saying[];
}

export interface Paper {
  name: string;
  title: string;
  for: string;
  caution: string;
  stays: boolean;
  made: boolean;
  files: string[];
  facts: number;
  changed: { number: string; printed: string; now: string }[];
}
export interface PapersAnswer {
  papers: Paper[];
}
export interface Printed {
  printed: { output: string; files: string[]; findings: Problem[] }[];
}

export interface Reading {
  text: string;
  label: string;
  value: string;
  trouble: string;
  near: string[];
  fresh: string[]; // words that become terms with the note
  groups: string[]; // whole sayings that would make it a term
  new_character: boolean;
}
export type Thought = Answer & { read: Reading[] };

export interface Column {
  heading: string;
  word: string;
  example: string;
}
export interface Remark {
  row: number;
  column: string;
  what: string;
  fix: string;
}
export interface ImportAnswer {
  pieces_new: number;
  pieces_same: number;
  pieces_changed: number;
  faults: Remark[];
  notes: Remark[];
  said: string[];
  sheet: { columns: Column[]; faulty: { row: number; cells: string[] }[]; rest: string; rows: number };
}

export interface Missing {
  missing: { number: string; missing: string[] }[];
}
export interface Undone {
  by: number;
  words: string;
}
export interface Tested {
  claim: string;
  p: number;
  p_pieces: number;
}

export type CareState = 'holds' | 'near' | 'broken' | 'held' | 'ask' | 'told';
export interface CareCheck {
  what: string;
  state: CareState;
  words: string;
  more: string[];
  share: number | null; // of the light it may have
}
export interface PlacedPiece {
  number: string;
  x_mm: number;
  y_mm: number;
  shelf: number;
  light: CareState;
  share: number | null;
  words: string;
}
// Of a piece, of a case, or of neither: then what cases there are.
export interface CareAnswer {
  notes: string[];
  checks: CareCheck[];
  number?: string;
  case: string | null;
  width_mm: number;
  height_mm: number;
  shelf: string;
  pieces: PlacedPiece[];
  fixtures: { x_mm: number; y_mm: number }[];
  cases: { case: string; pieces: number }[];
  waiting: string[];
}

export interface Task {
  task: string;
  group: string;
  title: string;
  done: boolean;
  latest_start: string;
  latest_finish: string;
  float_days: number;
}
export interface ScheduleAnswer {
  opening: string;
  today: string;
  days_left: number;
  p_open: number;
  p_book: number;
  p_both: number;
  days: { p50: number; p80: number };
  breakers: string[];
  tasks: Task[];
  pieces: { number: string; decide_by: string; because: string }[];
  notes: string[];
}

export interface Identified {
  candidates: { material: string; p: number }[];
  excluded: { material: string; by: string }[];
  refused: string[];
  next: { test: string; words: string; gain_bits: number; minutes: number; harm: string }[];
  never: string[];
  notes: string[];
  caution: string;
}

// What each operation answers, by its name; what it takes is written by the program (../api.ts).
export interface Answers {
  table: TableAnswer;
  sheet: SheetAnswer;
  years: YearsAnswer;
  sources: SourcesAnswer;
  look: LookAnswer;
  papers: PapersAnswer;
  print: Printed;
  history: Entry[];
  'what-if': Thought;
  import: ImportAnswer;
  photographs: Missing;
  undo: Undone;
  test: Tested;
  care: CareAnswer;
  schedule: ScheduleAnswer;
  identify: Identified;
  find: { number: string }[];
}
export type AnswerOf<N extends OperationName> = N extends keyof Answers ? Answers[N] : unknown;
