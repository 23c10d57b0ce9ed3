// What two people wrote of the same thing, as lines to be laid side by side: pure, but for the
// one place where the page puts the question.
export interface Theirs {
  id: number;
  who: string;
  when: number; // seconds since 1970-01-01 UTC
  what: string;
  detail: unknown;
}
export interface Clash {
  where: string; // the piece
  operation: string;
  theirs: Theirs[];
  yours: Record<string, unknown>;
}
type Row = Record<string, unknown>;

const small = new Set(['id', 'piece', 'since', 'ended', 'kind', 'seen', 'once', 'number', 'character', 'source']);
const text = (value: unknown): string => (value === null || value === undefined || value === '' ? 'nothing' : Array.isArray(value) ? value.map(text).join(', ') : typeof value === 'object' ? JSON.stringify(value) : String(value));
const isRow = (value: unknown): value is Row => typeof value === 'object' && value !== null && !Array.isArray(value);
const words = (key: string) => key.replace(/[_-]/g, ' ');

function differing(kind: string, was: Row, is: Row): string[] {
  return Object.keys(is)
    .filter((key) => !small.has(key) && text(was[key]) !== text(is[key]))
    .map((key) => `${words(kind)}, ${words(key)}: ${text(was[key])} → ${text(is[key])}`);
}

// A line of the book of changes in detail: what was replaced, field by field; what was added or
// taken away, by its words.
export function linesOf(detail: unknown): string[] {
  if (!isRow(detail)) {
    return [];
  }
  return Object.entries(detail).flatMap(([what, things]) => {
    if (Array.isArray(things)) {
      return things.filter(isRow).flatMap((thing) => (isRow(thing.was) && isRow(thing.is) ? differing(text(thing.kind), thing.was, thing.is) : [`${what}: ${text(thing.kind)}`]));
    }
    if (!isRow(things)) {
      return [];
    }
    return Object.entries(things).flatMap(([kind, list]) => {
      const rows = Array.isArray(list) ? list.filter(isRow) : [];
      const said = rows.map((row) => row.text ?? row.value ?? row.summary).filter((one) => one !== undefined && one !== '');
      return said.length > 0 ? [`${what} ${words(kind)}: ${said.map(text).join(', ')}`] : [`${what} ${words(kind)}`];
    });
  });
}

export const yourLines = (yours: Row): string[] =>
  Object.entries(yours)
    .filter(([key, value]) => !['seen', 'once', 'number'].includes(key) && value !== false && value !== '')
    .map(([key, value]) => (value === true ? words(key) : `${words(key)}: ${text(value)}`));

export const timeOf = (seconds: number) => new Date(1000 * seconds).toISOString().slice(0, 16).replace('T', ' ') + ' UTC';

// Answers true when yours shall stand over theirs. Without a page to ask, theirs stand.
let asker: (clash: Clash) => Promise<boolean> = () => Promise.resolve(false);
export const onClash = (ask: (clash: Clash) => Promise<boolean>) => void (asker = ask);
export const askClash = (clash: Clash) => asker(clash);
