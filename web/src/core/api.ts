// The one way to the server: operations by name, the token, the place in the book of changes.
import { askClash, type Clash, type Theirs } from './clash';
import type { Asks, OperationName } from '../api';
import { readTable, type TableColumns } from './table';
import type { AnswerOf, Hello, Problem, TableAnswer } from './types';

export { photo } from './api_photo';

export class Refusal extends Error {
  constructor(
    readonly problem: Problem,
    readonly status: number,
    readonly theirs?: unknown,
    readonly yours?: unknown,
  ) {
    super(problem.what);
  }
}

let token = '';
let last = 0;
const heard = new Set<() => void>();
let hushed = 0;
let missed = false;
export { ring as ringAll };
function ring() {
  if (hushed > 0) {
    missed = true;
  } else {
    heard.forEach((each) => each());
  }
}

// While a long piece of work makes many changes, pages ask anew only at its end.
export async function hush<T>(work: () => Promise<T>): Promise<T> {
  hushed++;
  try {
    return await work();
  } finally {
    hushed--;
    if (hushed === 0 && missed) {
      missed = false;
      ring();
    }
  }
}

// The last change that what is on the page rests on; a question that is answered later does not
// move it, or somebody's change would pass unseen between two answers.
export const lastChange = () => last;
let newest = 0;
export const newestChange = () => newest;
const mine = new Set<number>();
export function onChange(listener: () => void): () => void {
  heard.add(listener);
  return () => heard.delete(listener);
}

function note(response: Response, own: boolean) {
  const change = Number(response.headers.get('Backmark-Change') ?? '0');
  newest = Math.max(newest, change);
  if (own && response.ok) {
    mine.add(change);
  }
  if (last === 0 || (own && change === last + 1)) {
    last = change;
  }
}

// Answers from what was last weighed, before the show moved on; worth asking again soon.
const earlier = new WeakSet<object>();
export const isEarlier = (answer: object) => earlier.has(answer);

const parsed = (bytes: ArrayBuffer) => {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
};

async function read(response: Response, own = false, bytes?: ArrayBuffer): Promise<unknown> {
  note(response, own);
  const body = bytes ? parsed(bytes) : await response.json().catch(() => null);
  if (response.ok && body !== null) {
    if (response.headers.has('Backmark-Weighing')) {
      earlier.add(body);
    }
    return body;
  }
  const problem = body?.problem ?? {
    fault: 'io',
    what: 'the answer could not be read',
    where: response.url,
    fix: 'load the page again',
  };
  throw new Refusal(problem, response.status, body?.theirs, body?.yours);
}

let greeting: Promise<Hello> | null = null;
export function hello(): Promise<Hello> {
  greeting ??= fetch('/api/hello')
    .then((response) => read(response))
    .then((answer) => {
      token = (answer as Hello).token;
      return answer as Hello;
    })
    .finally(() => (greeting = null));
  return greeting;
}

// The table as it came, for the worker, which reads it for itself while the page does.
const written = new WeakMap<object, ArrayBuffer>();
export const writtenOf = (table: TableAnswer) => written.get(table)!;
let tableCame: (bytes: ArrayBuffer) => void = () => undefined;
export function onTableCame(listener: (bytes: ArrayBuffer) => void): () => void {
  tableCame = listener;
  return () => void (tableCame === listener && (tableCame = () => undefined));
}
async function tableIn(response: Response, bytes?: ArrayBuffer): Promise<TableAnswer> {
  bytes ??= await response.arrayBuffer();
  if (response.ok) {
    tableCame(bytes);
  }
  const table = readTable((await read(response, false, bytes)) as TableColumns);
  written.set(table, bytes);
  return table;
}

async function post(operation: string, parameters: object, own: boolean): Promise<unknown> {
  if (!token) {
    await hello();
  }
  const response = await fetch('/api/' + operation, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', 'Backmark-Token': token },
    body: JSON.stringify(parameters),
  });
  return operation === 'table' ? tableIn(response) : read(response, own);
}

// The table that was asked for before this script ran (ahead.ts). Nearly every page needs it;
// whoever asks within the first seconds gets it, unless something changed since.
let early: Promise<TableAnswer> | null = null;
export function tableAhead() {
  const first = window.ahead ? window.ahead.table.then(({ response, bytes }) => tableIn(response, bytes)) : fetch('/api/table').then((response) => tableIn(response));
  early = first.catch(() => post('table', {}, false) as Promise<TableAnswer>);
  early.catch(() => undefined); // told to who asks
  const over = () => {
    early = null;
    heard.delete(over);
  };
  heard.add(over);
  setTimeout(over, 5000);
}

// A question or a change. A token that has gone stale (the server was started again) is fetched
// anew once.
export async function call<N extends OperationName>(operation: N, parameters: Asks[N], own = false): Promise<AnswerOf<N>> {
  if (operation === 'table' && early) {
    return (await early) as AnswerOf<N>;
  }
  try {
    return (await post(operation, parameters, own)) as AnswerOf<N>;
  } catch (fault) {
    if (!(fault instanceof Refusal) || (fault.status !== 401 && fault.status !== 403)) {
      throw fault;
    }
    const before = token;
    await hello();
    if (token === before) {
      throw fault;
    }
    return (await post(operation, parameters, own)) as AnswerOf<N>;
  }
}

// A change by this page: it says which change it saw last, and a name of its own, so that a
// repeated request is done once.
export const once = () => crypto.randomUUID?.() ?? String(Math.random()).slice(2) + Date.now();
export async function write<N extends OperationName>(operation: N, parameters: Asks[N]): Promise<AnswerOf<N>> {
  const answer = await decided(operation, { ...parameters, seen: last, once: once() });
  ring();
  return answer;
}

// Where somebody wrote of the same thing meanwhile, both are shown and one is chosen. Choosing
// yours sends it again without a view of what it rests on.
export async function decided<N extends OperationName>(operation: N, parameters: Asks[N]): Promise<AnswerOf<N>> {
  try {
    return await call(operation, parameters, true);
  } catch (fault) {
    if (!(fault instanceof Refusal) || fault.status !== 409 || !Array.isArray(fault.theirs)) {
      throw fault;
    }
    const clash: Clash = { where: fault.problem.where, operation, theirs: fault.theirs as Theirs[], yours: { ...parameters } };
    if (await askClash(clash)) {
      return await call(operation, { ...parameters, seen: undefined, once: once() }, true);
    }
    last = newest;
    ring();
    throw new Refusal({ fault: 'left', what: `${clash.where} is left as it stands`, where: '', fix: '' }, 409);
  }
}

// A file as it is, such as a photograph.
export async function sendFile<T>(path: string, file: Blob): Promise<T> {
  if (!token) {
    await hello();
  }
  const answer = (await read(await fetch(path, { method: 'POST', headers: { 'Backmark-Token': token }, body: file }), true)) as T;
  ring();
  return answer;
}

export interface Heard {
  last: number;
  changes: { id: number; who: string; what: string; pieces: string[] }[];
}

// Listens for changes made elsewhere, for as long as the page lives.
export async function listen(tell: (heard: Heard) => void, reach: (there: boolean) => void) {
  for (;;) {
    try {
      const before = last;
      const answer = (await read(await fetch('/api/changes?after=' + before))) as Heard;
      reach(true);
      if (answer.last > before) {
        last = Math.max(last, answer.last);
        tell({ ...answer, changes: answer.changes.filter((one) => !mine.has(one.id)) });
        ring();
      } else {
        await new Promise((done) => setTimeout(done, 200));
      }
    } catch {
      reach(false);
      await new Promise((done) => setTimeout(done, 2000));
    }
  }
}

export function asProblem(fault: unknown): Problem {
  if (fault instanceof Refusal) {
    return fault.problem;
  }
  return {
    fault: 'io',
    what: 'the desk cannot be reached',
    where: '',
    fix: 'what is on the page stays; it tries again by itself',
  };
}
