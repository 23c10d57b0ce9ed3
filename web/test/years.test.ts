import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Source, SourcesAnswer, UseBead, UseGroup, YearsAnswer } from '../src/core/types';
import { hang, sourceSpan, threads } from '../src/pages/sources_layout';
import { chosenGroups, heaps, stair } from '../src/pages/years_order';

const points = { p10: 1940, p50: 1942, p90: 1944 };
const group = (key: string, ordered: boolean, known: number, dated = true): UseGroup => ({
  key, label: key, part: '', unit: '', maker: null, ordered, source: null, recorded: known, known,
  rows: [{ value: 'one', pieces: 2, known, start: dated ? points : null, end: dated ? points : null, words: '', use: null, decades: [], told: [] }],
});
const answer = (groups: UseGroup[]) => ({ groups }) as YearsAnswer;

test('the lineages come first; without any, the characters best known; what has no dated row never', () => {
  const groups = [group('cord', false, 9), group('fitting', true, 3), group('motif', false, 12), group('tip', true, 5, false)];
  assert.deepEqual(chosenGroups(answer(groups), 'lineages').map((one) => one.key), ['fitting']);
  assert.deepEqual(chosenGroups(answer([groups[0], groups[2]]), 'lineages').map((one) => one.key), ['motif', 'cord']);
  assert.deepEqual(chosenGroups(answer(groups), 'all').map((one) => one.key), ['cord', 'fitting', 'motif']);
  assert.deepEqual(chosenGroups(answer(groups), 'cord').map((one) => one.key), ['cord']);
});

test('every bead is laid once, the known ones lowest, and a torn one stands alone', () => {
  const beads: UseBead[] = [
    { number: 'a', y: 1950, known: false, from: null, to: null, torn: null },
    { number: 'b', y: 1950.1, known: true, from: null, to: null, torn: null },
    { number: 'c', y: 1950.2, known: true, from: null, to: null, torn: 'a receipt of 1941' },
    { number: 'd', y: 1960, known: false, from: null, to: null, torn: null },
  ];
  const laid = heaps(beads, (year) => (year - 1900) * 5, 4);
  assert.deepEqual(laid.map((one) => one.bead.number).sort(), ['a', 'b', 'c', 'd']);
  assert.deepEqual(laid.slice(0, 2).map((one) => [one.bead.number, one.up]), [['b', 0], ['a', 1]]);
  assert.equal(laid.find((one) => one.bead.number === 'c')!.of, 1);
});

test('the stair begins at none, ends at certain, and keeps what was seen between', () => {
  const of = stair([{ said: 0.9, seen: 0.85 }, { said: 0.5, seen: 0.6 }]);
  assert.equal(of.length, 21);
  assert.deepEqual([of[0], of[10], of[18], of[20]], [0, 12, 17, 20]);
});

const source = (key: string, year: number | null, borne: number | null, from: string[] = []): Source => ({
  key, title: key, kind: 'document', year, citation: '', derives_from: from, origin: from[0] ?? key, reliability: 0.8, stated: false, claims: 1, pieces: 1, borne_out: borne, tested: borne === null ? 0 : 4,
});
const ground = { axis: { x0: 0, y0: 1940, y1: 2000, k: 15 }, width: 1100, top: 80, px: 40, slip: { w: 180, h: 60 } };
const web = (sources: Source[], echoes: SourcesAnswer['echoes'] = []) => hang({ weighed: true, sources, echoes, claims: [], said: [] }, sources, ground, '');

test('a pin stands exactly at its year and at how often the pieces bore it out', () => {
  const { hung } = web([source('letter', 1950, 18)]);
  assert.deepEqual([hung[0].x, hung[0].y], [150, 160]);
});

test('no two slips lie over each other, and none slides off the page', () => {
  const many = Array.from({ length: 40 }, (_, i) => source('s' + i, 1945 + ((i * 7) % 50), i % 3 ? 8 + (i % 11) : null));
  const slips = web(many).hung.flatMap((one) => (one.slip ? [one.slip] : []));
  assert.ok(slips.length > 20);
  for (const [i, a] of slips.entries()) {
    assert.ok(a.x >= 0 && a.x + 180 <= 1100);
    for (const b of slips.slice(i + 1)) {
      assert.ok(Math.abs(a.x - b.x) >= 180 || Math.abs(a.y - b.y) >= 60, `${JSON.stringify(a)} ${JSON.stringify(b)}`);
    }
  }
});

test('the tellings of one origin hang at one height and need no thread; others have one', () => {
  const sources = [source('quay', 1950, 12), source('leaflet', 1970, null, ['quay']), source('survey', 1980, 15, ['ledger']), source('ledger', 1945, 17)];
  const laid = web(sources, [{ origin: 'quay', tellers: ['quay', 'leaflet'] }]);
  const at = (key: string) => laid.hung.find((one) => one.source.key === key)!;
  assert.equal(at('quay').y, at('leaflet').y);
  assert.deepEqual(threads(laid, ground.slip).map((one) => one.key), ['surveyledger']);
});

test('the years of sources are those that are known', () => {
  assert.deepEqual(sourceSpan([source('a', 1951, 1), source('b', null, 1), source('c', 1988, 1)]), [1950, 1990]);
  assert.deepEqual(sourceSpan([]), [1950, 2000]);
});
