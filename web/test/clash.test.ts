import assert from 'node:assert/strict';
import { test } from 'node:test';
import { linesOf, yourLines } from '../src/core/clash';

test('a thing that was replaced is told field by field, what is the same is left out', () => {
  const detail = { replaced: [{ kind: 'pick', id: 4, was: { id: 4, rank: 1, lead: false }, is: { id: 4, rank: 3, lead: false } }] };
  assert.deepEqual(linesOf(detail), ['pick, rank: 1 → 3']);
});

test('what was added or superseded is told by its words, or by its kind where it has none', () => {
  assert.deepEqual(linesOf({ added: { observation: [{ text: 'leather' }], stated_window: [{ from: 3 }] } }), ['added observation: leather', 'added stated window']);
  assert.deepEqual(linesOf({ added: { pick: 3 } }), ['added pick']);
  assert.deepEqual(linesOf(null), []);
});

test('what one wrote oneself is told without the numbers that only the desk needs', () => {
  assert.deepEqual(yourLines({ number: ['ES 1'], line: 'cord: leather', lead: true, seen: 7, once: 'abcdefgh', drop: false }), ['line: cord: leather', 'lead']);
});
