// Photographs on their way into the show: sent one by one, matched to numbers by the server. What
// happened to each stays in sight until the next lot comes.
import { asProblem, hush, once, Refusal, sendFile } from './api';
import { tell } from './tell';
import { undo } from './undo';
import type { Problem } from './types';

export interface Unmatched {
  name: string;
  what: string;
  fix: string;
  number?: string; // what its name said; then the picture itself is at fault
}
interface Answer {
  taken: { name: string; number: string; view: string }[];
  same: { name: string; number: string }[];
  unmatched: Unmatched[];
}
export interface Intake {
  of: number; // pictures in this lot
  done: number;
  passed: string[]; // files that are no pictures
  taken: Answer['taken'];
  same: Answer['same'];
  unmatched: (Unmatched & { file: File })[];
  problem: Problem | null; // why it stopped before the end
}
export interface Offered {
  file: File;
  folder: string; // the nearest one it lay in
}

const nothing: Intake = { of: 0, done: 0, passed: [], taken: [], same: [], unmatched: [], problem: null };
let now = nothing;
const heard = new Set<(intake: Intake) => void>();
export function onIntake(listener: (intake: Intake) => void): () => void {
  heard.add(listener);
  listener(now);
  return () => void heard.delete(listener);
}
const set = (change: Partial<Intake>) => {
  now = { ...now, ...change };
  heard.forEach((each) => each(now));
};

const largest = 64 * 1024 * 1024;
export const isPicture = (name: string) => /\.(jpe?g|png|tiff?|webp|heic|gif|bmp)$/i.test(name);
export const isHidden = (name: string) => /^(\.|thumbs\.db$|desktop\.ini$)/i.test(name);

const pathOf = ({ file, folder }: Offered) => `${folder} ${file.name}`.trim();
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

async function send(file: File, name: string, lot = ''): Promise<Answer> {
  if (file.size > largest) {
    const what = 'the file is larger than 64 MB';
    return { taken: [], same: [], unmatched: [{ name, what, number: name, fix: 'bring it at the desk: backmark photographs SHOW FOLDER' }] };
  }
  for (let turn = 0; ; turn++) {
    try {
      return await sendFile<Answer>('/api/photograph?name=' + encodeURIComponent(name) + (lot && '&lot=' + lot), file);
    } catch (fault) {
      if (fault instanceof Refusal && fault.status === 400) {
        return { taken: [], same: [], unmatched: [{ name, number: name, what: fault.problem.what, fix: fault.problem.fix }] };
      }
      if (turn > 20 || !(fault instanceof Refusal && fault.status === 429)) {
        throw fault;
      }
      await pause(500);
    }
  }
}

// "ES 118/back.jpg" is known by its folder where its own name says no number.
async function offer({ file, folder }: Offered, lot: string): Promise<Answer> {
  const answer = await send(file, file.name, lot);
  if (answer.unmatched.length === 0 || answer.unmatched[0].number || !folder) {
    return answer;
  }
  const again = await send(file, pathOf({ file, folder }).slice(-200), lot);
  return again.unmatched.length ? answer : again;
}

// One lot is one change, also when it stops half way; one step of undo takes all of it back.
async function takeAll(list: Offered[]) {
  const lot = once();
  for (const one of list) {
    try {
      const answer = await offer(one, lot);
      set({
        done: now.done + 1,
        taken: [...now.taken, ...answer.taken],
        same: [...now.same, ...answer.same],
        unmatched: [...now.unmatched, ...answer.unmatched.map((each) => ({ ...each, name: one.file.name, file: one.file }))],
      });
    } catch (fault) {
      set({ problem: asProblem(fault) });
      break;
    }
  }
  if (now.taken.length === 0) {
    return;
  }
  try {
    const { taken } = await sendFile<Answer>('/api/photograph?lot=' + lot, new Blob());
    tell(taken.length === 1 ? '1 photograph is taken in.' : `${taken.length} photographs are taken in.`, { label: 'Undo', run: () => void undo() });
  } catch (fault) {
    set({ problem: asProblem(fault) });
  }
}

export const busy = () => now.done < now.of && !now.problem;

export async function takePhotographs(list: Offered[]) {
  if (busy()) {
    return;
  }
  const seen = list.filter(({ file }) => !isHidden(file.name)).sort((a, b) => pathOf(a).localeCompare(pathOf(b), 'en', { numeric: true }));
  const pictures = seen.filter(({ file }) => isPicture(file.name));
  set({ ...nothing, of: pictures.length, passed: seen.filter((one) => !pictures.includes(one)).map(({ file }) => file.name) });
  await hush(() => takeAll(pictures));
}

// A picture whose name said nothing, taken in under a number and a side given by hand.
export async function takeAs(one: Intake['unmatched'][number], words: string): Promise<Unmatched | null> {
  const answer = await send(one.file, words + (one.name.match(/\.\w+$/)?.[0] ?? ''));
  if (answer.unmatched.length) {
    return answer.unmatched[0];
  }
  set({ taken: [...now.taken, ...answer.taken], same: [...now.same, ...answer.same], unmatched: now.unmatched.filter((each) => each !== one) });
  return null;
}
