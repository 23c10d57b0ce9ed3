// Notes to the desk, now or when it can be reached.
import type { Asks } from '../api';
import { asProblem, decided, lastChange, newestChange, once, Refusal, ringAll } from './api';
import { drain, shelf, type Sent, type Waiting } from './queue';
import { tell, tellProblem } from './tell';
import { undo } from './undo';

const heard = new Set<(count: number) => void>();
let busy: Promise<void> | null = null;

export async function waitingCount(): Promise<number> {
  return (await shelf.all()).length;
}
export function onWaiting(listener: (count: number) => void): () => void {
  heard.add(listener);
  void waitingCount().then(listener);
  return () => void heard.delete(listener);
}
const report = async () => {
  const count = await waitingCount();
  heard.forEach((each) => each(count));
};

// What this device wrote of a piece itself is no surprise to it.
const own = new Map<unknown, number>();

async function send(one: Waiting): Promise<Sent> {
  const { number } = one.parameters;
  try {
    await decided(one.operation, { ...one.parameters, seen: Math.max(one.seen, own.get(number) ?? 0), once: one.once });
    own.set(number, newestChange());
    return 'kept';
  } catch (fault) {
    // Only a clear word against the note itself takes it off the shelf; a fault of the desk,
    // a busy desk or no answer does not.
    if (fault instanceof Refusal && [400, 404, 409].includes(fault.status)) {
      tellProblem(asProblem(fault));
      return 'refused';
    }
    return 'away';
  }
}

export function sendWaiting(): Promise<void> {
  busy ??= drain(shelf, send)
    .then(({ kept, left }) => {
      if (kept > 0) {
        ringAll();
      }
      if (kept === 1 && left === 0) {
        tell('Kept.', { label: 'Undo', run: () => void undo() });
      } else if (kept > 1) {
        tell(`${kept} notes went to the desk.` + (left ? ` ${left} wait.` : ''));
      }
    })
    .finally(() => {
      busy = null;
      void report();
    });
  return busy;
}

// Kept on this device first, then sent.
export async function note(parameters: Asks['note']) {
  await shelf.put({ once: once(), operation: 'note', parameters, at: Date.now(), seen: lastChange() });
  await report();
  await sendWaiting();
}
