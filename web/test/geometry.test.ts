import test from 'node:test';
import assert from 'node:assert/strict';
import { beads, pack, scaleStep, scaleWords, span, ticks, twenty, usualDots, xOf, yearAt, type Axis } from '../src/core/geometry';
import type { Chance, Years } from '../src/core/types';

const axis: Axis = { x0: 100, y0: 1930, y1: 1990, k: 15 };
const years = (p10: number, p50: number, p90: number): Years => ({ p10, p50, p90, q: Array(20).fill(p50), from: p10, p: '9' });

test('a year and its place on the rule are each other\'s inverse', () => {
  for (const year of [1930, 1954.5, 1990]) {
    assert.ok(Math.abs(yearAt(axis, xOf(axis, year)) - year) < 1e-9);
  }
});

test('a tick stands at every year, long at tens, and a number hides within 44 px of the flag', () => {
  const all = ticks(axis, 1200, 1954);
  assert.equal(all.length, 61);
  assert.deepEqual(all.filter((tick) => tick.length === 18).map((tick) => tick.year % 10), Array(7).fill(0));
  const numbers = all.filter((tick) => tick.number).map((tick) => tick.year);
  // 1950 is 60 px from 1954 and stays; the year under a flag at 1951 would not.
  assert.deepEqual(numbers, [1930, 1940, 1950, 1960, 1970, 1980, 1990]);
  assert.ok(!ticks(axis, 1200, 1951).find((tick) => tick.year === 1950)!.number);
});

test('below 7 px a year only fives and tens have ticks', () => {
  assert.ok(ticks({ ...axis, k: 6 }, 1200, null).every((tick) => tick.year % 5 === 0));
});

test('twenty beads stay twenty, and those that would touch are heaped at one place', () => {
  const laid = beads([10, 10, 11, 60, 61, 100], 5);
  assert.equal(laid.length, 6);
  assert.deepEqual(laid.map((bead) => bead.of), [3, 3, 3, 2, 2, 1]);
  assert.equal(new Set(laid.slice(0, 3).map((bead) => bead.x)).size, 1);
  const places = [...new Set(laid.map((bead) => bead.x))];
  places.slice(1).forEach((x, i) => assert.ok(x - places[i] >= 5 * 1.75));
});

// The fewest rows that intervals need is the most that lie over one point (interval graphs are
// perfect: Golumbic, Algorithmic Graph Theory and Perfect Graphs; from memory).
test('bands pack into as few rows as lie over any one point, and never overlap in a row', () => {
  let seed = 7;
  const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
  for (let round = 0; round < 50; round++) {
    const bands = Array.from({ length: 60 }, (): [number, number] => {
      const start = random() * 1000;
      return [start, start + 5 + random() * 150];
    });
    const rows = pack(bands, 0);
    const deepest = Math.max(...bands.map(([at]) => bands.filter(([a, b]) => a <= at && at < b).length));
    assert.equal(Math.max(...rows) + 1, deepest);
    bands.forEach(([a, b], i) => bands.forEach(([c, d], j) => assert.ok(i === j || rows[i] !== rows[j] || b <= c || d <= a)));
  }
});

test('studs are always twenty, whatever the chances, and each is within one of its share', () => {
  const cases: Chance[][] = [
    [['a', 0.983], ['b', 0.005], [null, 0.012]],
    [['a', 1 / 3], ['b', 1 / 3], [null, 1 / 3]],
    [[null, 1]],
    [['a', 0.5], [null, 0.45]],
  ];
  for (const chances of cases) {
    const total = chances.reduce((sum, [, p]) => sum + p, 0);
    const studs = twenty(chances);
    assert.equal(studs.reduce((sum, [, n]) => sum + n, 0), 20);
    studs.forEach(([, n], i) => assert.ok(Math.abs(n - (20 * chances[i][1]) / total) < 1));
  }
});

test('the rule reaches past what it shows, to the next five years', () => {
  const [from, to] = span([years(1941, 1945, 1952), years(1958, 1963, 1971), null]);
  assert.ok(from % 5 === 0 && to % 5 === 0 && from <= 1941 && to >= 1971);
  assert.deepEqual(span([]), [1950, 2000]);
});

test('scale goes step by step and never past its ends', () => {
  assert.equal(scaleStep(5, 1), 3);
  assert.equal(scaleStep(12, -1), 12);
  assert.equal(scaleStep(0.25, 1), 0.25);
  assert.equal(scaleWords(5.333), '1 : 5.3');
  assert.equal(scaleWords(0.5), '2 : 1');
  // CSS defines an inch as 96 px and as 25.4 mm (CSS Values and Units, absolute lengths).
  assert.ok(Math.abs(usualDots * 25.4 - 96) < 1e-9);
});
