import test from 'node:test';
import assert from 'node:assert/strict';
import { drain, type Sent, type Shelf, type Waiting } from '../src/core/queue';

const memory = (): Shelf & { list: Map<string, Waiting> } => {
  const list = new Map<string, Waiting>();
  return {
    list,
    all: async () => [...list.values()],
    put: async (one) => void list.set(one.once, one),
    drop: async (once) => void list.delete(once),
  };
};

test('over 1,000 flips of the network no note is lost and none is taken twice', async () => {
  let seed = 3;
  const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
  const shelf = memory();
  // A desk as the server is: a name that was done once is answered again and not done again.
  const done = new Map<string, number>();
  let noted = 0;
  const send = async (one: Waiting): Promise<Sent> => {
    const way = random();
    if (way < 0.3) {
      return 'away'; // it never came
    }
    done.set(one.once, (done.get(one.once) ?? 0) || 1);
    return way < 0.5 ? 'away' : 'kept'; // it came, and the answer was lost on the way back
  };
  for (let flip = 0; flip < 1000; flip++) {
    await shelf.put({ once: 'n' + noted, operation: 'note', parameters: {}, at: noted, seen: 0 });
    noted++;
    await drain(shelf, send);
  }
  while (shelf.list.size > 0) {
    await drain(shelf, send);
  }
  assert.equal(done.size, noted);
  assert.ok([...done.values()].every((times) => times === 1));
});

test('notes go in the order in which they were taken, and a refused one does not hold the rest', async () => {
  const shelf = memory();
  for (const at of [3, 1, 2]) {
    await shelf.put({ once: 'n' + at, operation: 'note', parameters: {}, at });
  }
  const order: string[] = [];
  const result = await drain(shelf, async (one) => {
    order.push(one.once);
    return one.once === 'n2' ? 'refused' : 'kept';
  });
  assert.deepEqual(order, ['n1', 'n2', 'n3']);
  assert.deepEqual(result.refused.map((one) => one.once), ['n2']);
  assert.equal(shelf.list.size, 0);
});
