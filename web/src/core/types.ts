// What the operations answer, as the pages read it.
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
  counts: { pieces: number; makers: number; sources: number; waiting?: number };
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
  evidence: Evidence[];
  misfits: { what: string; part: string; p: number }[];
  alike: { number: string; title: string; share: number; why: string[]; unlike: string[] }[];
}

export interface Look {
  number: string;
  part: string;
  character: string;
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
  plan: { at: string; minutes: number; gain_bits: number; looks: { number: string; character: string }[] }[];
  planned_minutes: number;
  notes: string[];
}

export interface Entry {
  position: number;
  at: string;
  who: string;
  operation: string;
  summary: string;
}
