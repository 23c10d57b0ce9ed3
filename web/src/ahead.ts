// Runs before all else, while the pages themselves are still being fetched and read: the table is
// asked for, and where it will be laid out the worker that does so is begun and reads it.
export interface Ahead {
  table: Promise<{ response: Response; bytes: ArrayBuffer }>;
  worker: Worker | null;
  read: ArrayBuffer | null; // what the worker was given
}
declare global {
  interface Window {
    ahead?: Ahead;
  }
}

const table = fetch('/api/table').then(async (response) => ({ response, bytes: await response.arrayBuffer() }));
const worker = /^\/(table(\/|$)|$)/.test(location.pathname) ? new Worker('/assets/tiles.js') : null;
table.then(
  ({ response, bytes }) => {
    if (worker && response.ok) {
      const copy = bytes.slice(0);
      worker.postMessage({ table: copy, id: 1 }, [copy]);
      window.ahead!.read = bytes;
    }
  },
  () => undefined, // told to who asks
);
window.ahead = { table, worker, read: null };
