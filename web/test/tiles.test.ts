import test from 'node:test';
import assert from 'node:assert/strict';
import type { TableAnswer } from '../src/core/types';
import { scales, usualDots } from '../src/core/geometry';
import { chosenOf, sideOf, stretchTo, within, zoomTo } from '../src/pages/table_sight';
import { scrollUnder, underPoint, type Box } from '../src/pages/table_layout';
import { inkBand, wordOf } from '../src/pages/tiles_draw';

const side = 64;
const alpha = (data: Uint32Array, x: number, y: number) => data[y * side + x] >>> 24;
const band = (p: string, step = 8) => ({ y: 10, x0: 8, step, p, p10: 12, p50: 20, p90: 28 });

test('a band is darkest at its likeliest year and fades evenly to both sides', () => {
  const data = new Uint32Array(side * side);
  inkBand(data, side, band('0369630'), 0, 0, 1, wordOf('#' + '102030'));
  const row = Array.from({ length: 56 }, (_, i) => alpha(data, 8 + i, 10));
  const peak = row.indexOf(Math.max(...row));
  assert.ok(Math.abs(8 + peak - (8 + 3.5 * 8)) <= 1);
  for (let i = 1; i < row.length; i++) {
    assert.ok(i <= peak ? row[i] >= row[i - 1] : row[i] <= row[i - 1], `at ${i}`);
  }
  assert.equal(data[10 * side + 30] & 0xffffff, 0x302010, 'red first in memory');
});

test('a band is four points high and stays within its tile', () => {
  const data = new Uint32Array(side * side);
  inkBand(data, side, band('99999999999'), 0, 0, 1, 0);
  assert.deepEqual([9, 10, 13, 14].map((y) => alpha(data, 20, y) > 0), [false, true, true, false]);
  assert.equal(alpha(data, 7, 10), 0);
  assert.equal(data.slice(14 * side).some((word) => word !== 0), false, 'nothing runs over into the next row');
  const finer = new Uint32Array(side * side);
  inkBand(finer, side, band('9', 4), 4, 8, 2, 0);
  assert.deepEqual([4, 11, 12].map((y) => alpha(finer, 10, y) > 0), [true, true, false], 'twice as many points, twice as high');
});

const box = (at: number, x: number, y: number): Box => ({ at, x, y, w: 40, h: 60, lane: 0, bandY: y + 80 });
const axis = { x0: 100, y0: 1900, y1: 2000, k: 10 };

test('what lay under the hand lies there again when the things are larger', () => {
  const before = { axis, boxes: [box(0, 100, 50), box(1, 300, 400), box(2, 500, 900)] };
  const after = { axis, boxes: [box(2, 490, 1900), box(1, 290, 800), box(0, 90, 90)].map((one) => ({ ...one, w: 80, h: 120 })) };
  const under = underPoint(before, { x: 0, y: 300 }, 325, 130)!;
  assert.equal(under.at, 1);
  const scroll = scrollUnder(after, under)!;
  assert.equal(scroll.y + 130, 800 + 120 * 0.5, 'the same place of the same piece');
  assert.equal(scroll.x, 0, 'the same year');
  assert.equal(scrollUnder({ axis, boxes: [box(7, 0, 0)] }, under), null);
});

test('without a choice the topmost that disagrees with itself is chosen', () => {
  const table = { pieces: [{ number: 'A', torn: 'x' }, { number: 'B', torn: 'y' }, { number: 'C', torn: null }] } as unknown as TableAnswer;
  const boxes = [box(0, 0, 500), box(1, 50, 60), box(2, 90, 0)];
  assert.equal(chosenOf(boxes, table, '', 700), 1);
  assert.equal(chosenOf(boxes.slice(0, 1), table, '', 500), 0);
  assert.equal(chosenOf([box(2, 0, 0), box(0, 0, 500)], table, '', 500), 0, 'what is out of sight does not have the Table scroll');
  assert.equal(chosenOf(boxes, table, 'C', 700), 2);
  assert.equal(chosenOf(boxes, table, 'gone', 700), 0);
});

test('one cannot scroll past the ends', () => {
  const layout = { axis, boxes: [], lanes: [], width: 1000, height: 2000 };
  assert.deepEqual(within({ x: -5, y: 9e9 }, layout, 700, 1300), { x: 0, y: 1320 });
  assert.deepEqual(within({ x: 50, y: 50 }, { ...layout, height: 100 }, 700, 800), { x: 50, y: 0 });
});

test('things and years grow together, and settle on a step', () => {
  const by = (things: number) => ({ things, years: things });
  const held = stretchTo({ n: 5, zoom: 1 }, by(1.5));
  assert.ok(Math.abs(held.sx - 1.5) < 1e-9 && Math.abs(held.sy - 1.5) < 1e-9);
  const to = zoomTo({ n: 5, zoom: 1 }, by(1.5));
  assert.equal(to.n, 3);
  assert.ok(Math.abs(to.zoom - 5 / 3) < 1e-9);
  assert.deepEqual(zoomTo({ n: 5, zoom: 1 }, by(1.05)), { n: 5, zoom: 1 }, 'a little is nothing');
  assert.deepEqual(zoomTo({ n: 5, zoom: 1 }, by(0.6)), { n: 8, zoom: 1 }, 'all years stay as wide as the window');
  assert.equal(stretchTo({ n: 12, zoom: 1 }, by(0.5)).sy, 1, 'no smaller than the last step');
});

test('years alone leave things as they are', () => {
  const by = { things: 1, years: 2 };
  assert.deepEqual(stretchTo({ n: 5, zoom: 1 }, by), { sx: 2, sy: 1 });
  assert.deepEqual(zoomTo({ n: 5, zoom: 1 }, by), { n: 5, zoom: 2 });
  assert.equal(zoomTo({ n: 5, zoom: 1 }, { things: 1, years: 0.1 }).zoom, 0.4);
});

test('numbers of the side rule can be read at every scale', () => {
  for (const n of scales) {
    const { label, step, px, off, from } = sideOf(usualDots / n, 12345);
    assert.ok(label * px >= 34 && step * px >= 4, `1 : ${n}`);
    assert.ok(off <= 0 && Math.abs(from * px - off - 12345) < 1e-6 && from % label === 0);
  }
});
