import test from 'node:test';
import assert from 'node:assert/strict';
import type { TableAnswer, TablePiece } from '../src/core/types';
import { xOf, type Axis } from '../src/core/geometry';
import { Grid, laneOf, layTable, nextBox } from '../src/pages/table_layout';
import { readTable } from '../src/core/table';
import { shownBy } from '../src/pages/table_filter';
import { chaptersOf, moved, placeAt } from '../src/pages/show_order';

let seed = 11;
const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
const piece = (i: number, more: Partial<TablePiece> = {}): TablePiece => {
  const year = 1930 + Math.floor(random() * 60);
  return {
    number: 'P ' + i, title: 'thing', form: 'slide tie', tray: 'tray ' + (i % 4), section: null, case: null,
    pictures: [{ view: 'front', v: i, w_mm: 30 + random() * 30, h_mm: 40 + random() * 90 }],
    made: String(year), by: '', year: { p10: year - 2, p50: year, p90: year + 3, q: Array(20).fill(year), from: year - 3, p: '1359531' },
    makers: i % 3 ? [['Maker ' + (i % 5), 0.8], [null, 0.2]] : [['Maker 1', 0.2], [null, 0.8]],
    pick: null, torn: null, seen: {}, ...more,
  };
};
const tableOf = (count: number): TableAnswer => ({ pieces: Array.from({ length: count }, (_, i) => piece(i)), makers: [], sections: [] });
const axis: Axis = { x0: 190, y0: 1930, y1: 1990, k: 15 };
const lay = (table: TableAnswer, arrange: 'maker' | 'none' = 'maker') =>
  layTable({ table, shown: table.pieces.map((_, i) => i), arrange, axis, pxmm: 0.75, view: 'front', top: 56, width: 1100 });

test('every piece is laid once, at its middle year exactly', () => {
  const table = tableOf(400);
  const { boxes } = lay(table);
  assert.equal(new Set(boxes.map((box) => box.at)).size, 400);
  for (const box of boxes) {
    assert.ok(Math.abs(box.x + box.w / 2 - xOf(axis, table.pieces[box.at].year!.p50)) < 1e-6);
  }
});

test('pieces of one row do not cover each other', () => {
  const { boxes } = lay(tableOf(300), 'none');
  for (const a of boxes) {
    for (const b of boxes) {
      if (a !== b && a.y === b.y) {
        assert.ok(a.x + a.w <= b.x || b.x + b.w <= a.x);
      }
    }
  }
});

test('the unrecorded hand has a lane and it is the last', () => {
  const { lanes } = lay(tableOf(60));
  assert.equal(lanes[lanes.length - 1].name, 'Unrecorded hands');
  assert.equal(laneOf(piece(0), 'maker'), 'Unrecorded hands');
});

test('a touch finds the piece under it, as looking at every piece would', () => {
  const { boxes } = lay(tableOf(500));
  const grid = new Grid(boxes);
  for (let i = 0; i < 500; i++) {
    const x = random() * 1200;
    const y = random() * 3000;
    const hit = grid.hit(x, y, 4);
    const near = boxes.filter((box) => x > box.x - 4 && x < box.x + box.w + 4 && y > box.y - 4 && y < box.y + box.h + 4);
    assert.equal(hit >= 0, near.length > 0);
    assert.ok(hit < 0 || near.includes(boxes[hit]));
  }
});

test('an arrow never leads back, and at the edge one stays', () => {
  const { boxes } = lay(tableOf(50));
  boxes.forEach((box, i) => {
    const next = boxes[nextBox(boxes, i, 1, 0)];
    assert.ok(next === box || next.x + next.w / 2 > box.x + box.w / 2);
  });
});

test('filters show what they say', () => {
  const table = tableOf(40);
  table.pieces[3].torn = 'the cord is of another age';
  assert.deepEqual(shownBy(table, 'torn', []), [3]);
  assert.equal(shownBy(table, 'tray:tray 1', []).length, 10);
  assert.deepEqual(shownBy(table, 'find:x', ['P 7']), [7]);
  assert.equal(shownBy(table, 'all', []).length, 40);
});

test('a piece moved within its section keeps the others in their order', () => {
  assert.deepEqual(moved(['a', 'b', 'c', 'd'], 'a', 2), ['b', 'c', 'a', 'd']);
  assert.deepEqual(moved(['a', 'b', 'c'], 'c', -3), ['c', 'a', 'b']);
  assert.deepEqual(moved(['a', 'b'], 'z', 9), ['a', 'b', 'z']);
});

test('a drop falls before the first piece to its right in the row, or behind all', () => {
  const boxes = [{ x: 0, y: 0, w: 10, h: 10 }, { x: 20, y: 0, w: 10, h: 10 }, { x: 0, y: 20, w: 10, h: 10 }];
  assert.equal(placeAt(boxes, 12, 5), 1);
  assert.equal(placeAt(boxes, 90, 5), 2);
  assert.equal(placeAt(boxes, 90, 90), 3);
});

test('picks stand in their section in the order of their rank', () => {
  const table = tableOf(0);
  table.sections = [{ key: 'eights', title: 'The Eights' }];
  const pick = (rank: number) => ({ rank, show: true, book: true, lead: false });
  table.pieces = [piece(1, { section: 'eights', pick: pick(2) }), piece(2, { section: 'eights', pick: pick(1) }), piece(3), piece(4, { pick: pick(1) })];
  const { chapters, waiting } = chaptersOf(table);
  assert.deepEqual(chapters.map((chapter) => chapter.pieces.map((one) => one.number)), [['P 2', 'P 1'], ['P 4']]);
  assert.deepEqual(waiting.map((one) => one.number), ['P 3']);
});

test('the table comes in columns and is read piece by piece', () => {
  const columns = {
    number: ['ES 1', 'ES 2'], title: [1, 0], form: [2, 2], tray: [0, 3], section: [4, 0], case: [0, 0], made: [5, 0], by: [0, 0], torn: [0, 6], rank: [7, 0], pick: [5, -1],
    pictures: [[['front', 12, 30.5, 40], ['back', 13, 0, 0, 0.75]], []] as [string, number, number, number, number?][][],
    makers: ['8 700 300', ''],
    year: { p10: [1950, 0], p50: [1954, 0], p90: [1960, 0], from: [1949, 0], p: ['0129', ''], q: ['1950' + ' 1'.repeat(19), ''] },
    seen: { fitting: [9, 0] },
  };
  const words = ['', 'Urchin', 'clasp', 'tray 2', 'sea', 'about 1954', 'cord later', '', 'Oda', 'two loops'];
  const { pieces } = readTable({ words, columns, makers: [], sections: [] });
  const keys = ['number', 'title', 'form', 'tray', 'section', 'case', 'made', 'by', 'torn', 'pictures', 'makers', 'pick'] as const;
  const { p10, p50, p90, from, p, q } = pieces[0].year!;
  assert.deepEqual({ ...Object.fromEntries(keys.map((key) => [key, pieces[0][key]])), year: { p10, p50, p90, from, p, q } }, {
    number: 'ES 1', title: 'Urchin', form: 'clasp', tray: '', section: 'sea', case: null, made: 'about 1954', by: '', torn: null,
    pictures: [{ view: 'front', v: 12, w_mm: 30.5, h_mm: 40 }, { view: 'back', v: 13, w_mm: 0, h_mm: 0, shape: 0.75 }],
    makers: [['Oda', 0.7], [null, 0.3]],
    year: { p10: 1950, p50: 1954, p90: 1960, from: 1949, p: '0129', q: Array.from({ length: 20 }, (_, i) => 1950 + i) },
    pick: { rank: 7, show: true, book: false, lead: true },
  });
  assert.deepEqual([pieces[0].seen?.fitting, pieces[1].seen?.fitting, pieces[0].seen?.cord], ['two loops', '', undefined]);
  assert.deepEqual([pieces[1].year, pieces[1].pick, pieces[1].makers, pieces[1].torn], [null, null, [], 'cord later']);
});
