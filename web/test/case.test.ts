// Pieces in a case: gaps, steps and free places, by hand-drawn cases with round numbers.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { freePlace, gaps, inOrder, settled, type Hung } from '../src/pages/case_layout';
import { characterWords } from '../src/pages/new_term';
import { pairsOf } from '../src/pages/sheet_bench';

const inside = { w: 1000, h: 500 };
const at = (number: string, x: number, y = 250, w = 50, h = 100): Hung => ({ number, x, y, w, h });

test('a gap is measured from edge to edge, to the next piece at that height or to the wall', () => {
  const list = [at('a', 100), at('b', 300), at('c', 400, 50, 50, 80)];
  assert.deepEqual(gaps(list[0], list, inside), { left: 75, right: 150 });
  assert.deepEqual(gaps(list[1], list, inside), { left: 150, right: 675 }, 'what hangs lower is no neighbour');
});

test('pieces that overlap have a gap below nothing', () => {
  const list = [at('a', 100), at('b', 130)];
  assert.equal(gaps(list[0], list, inside).right, -20);
});

test('a piece settles to the step and stays in the case', () => {
  assert.deepEqual(settled(103, 251.2, inside, 5), { x: 105, y: 250 });
  assert.deepEqual(settled(103.4, 251.2, inside, 1), { x: 103, y: 251 });
  assert.deepEqual(settled(-40, 900, inside, 5), { x: 0, y: 500 });
});

test('a waiting piece is seated where it touches nobody', () => {
  const list = Array.from({ length: 12 }, (_, i) => at('p' + i, 40 + 80 * i, 430));
  const place = freePlace(50, 100, list, inside);
  const seated = at('new', place.x, place.y);
  for (const other of list) {
    assert.ok(Math.abs(other.x - seated.x) >= 60 || Math.abs(other.y - seated.y) >= 110, other.number);
  }
});

test('one walks a case from left to right', () => {
  assert.deepEqual(inOrder([at('b', 300), at('a', 100, 50), at('c', 100, 400)]).map((one) => one.number), ['c', 'a', 'b']);
});

test('readings of the bench are parted by semicolons, with or without an equals sign', () => {
  assert.deepEqual(pairsOf('air_g=31.24; water_g 28.31;uv_long: inert; '), ['air_g=31.24', 'water_g=28.31', 'uv_long=inert']);
  assert.deepEqual(pairsOf('seen=bubbles, mould seams'), ['seen=bubbles, mould seams']);
});

test('a saying without a character says what the new one is like', () => {
  assert.deepEqual(characterWords('back sheen: dull', 'ornament'), ['key=back_sheen', 'label=Back sheen', 'part=ornament']);
  assert.deepEqual(characterWords('tip wall = 0.4 mm', 'tip'), ['key=tip_wall', 'label=Tip wall', 'part=tip', 'shape=number', 'unit=mm']);
  assert.deepEqual(characterWords('beads: 12', ''), ['key=beads', 'label=Beads', 'shape=number']);
});
