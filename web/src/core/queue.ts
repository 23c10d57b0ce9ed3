import type { Asks } from '../api';

// What is noted while the desk is out of reach waits here and is sent later: none lost, none
// twice. Every note carries a name of its own from the moment it is typed; the server does a name
// only once, so a note may be sent again whenever it is not known to have arrived.
export interface Waiting {
  once: string;
  operation: 'note';
  parameters: Asks['note'];
  at: number;
  seen: number; // the last change that its writer had seen
}

export interface Shelf {
  all(): Promise<Waiting[]>;
  put(one: Waiting): Promise<void>;
  drop(once: string): Promise<void>;
}

export type Sent = 'kept' | 'refused' | 'away';

// Sends what waits, oldest first; stops where the desk cannot be reached. A note leaves the shelf
// only when the desk has answered for it.
export async function drain(shelf: Shelf, send: (one: Waiting) => Promise<Sent>): Promise<{ kept: number; refused: Waiting[]; left: number }> {
  const waiting = (await shelf.all()).sort((a, b) => a.at - b.at);
  const refused: Waiting[] = [];
  let kept = 0;
  for (const one of waiting) {
    const sent = await send(one);
    if (sent === 'away') {
      break;
    }
    await shelf.drop(one.once);
    if (sent === 'kept') {
      kept++;
    } else {
      refused.push(one);
    }
  }
  return { kept, refused, left: waiting.length - kept - refused.length };
}

const ask = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });

let opened: Promise<IDBDatabase> | null = null;
function database(): Promise<IDBDatabase> {
  opened ??= new Promise((done, fail) => {
    const request = indexedDB.open('backmark', 1);
    request.onupgradeneeded = () => request.result.createObjectStore('waiting', { keyPath: 'once' });
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
  return opened;
}

const store = async (mode: IDBTransactionMode) => (await database()).transaction('waiting', mode).objectStore('waiting');

export const shelf: Shelf = {
  all: async () => ask((await store('readonly')).getAll() as IDBRequest<Waiting[]>),
  put: async (one) => void (await ask((await store('readwrite')).put(one))),
  drop: async (once) => void (await ask((await store('readwrite')).delete(once))),
};
