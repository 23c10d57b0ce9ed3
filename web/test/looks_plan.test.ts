// The day on the clock: its minutes add up, whatever the plan.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clock, missedWords, stopsOf } from '../src/pages/looks_plan';
import type { Look, LookAnswer } from '../src/core/types';

const look = (number: string, character: string, minutes: number) => ({ number, character, label: character, minutes, answers: [] }) as unknown as Look;
const answer = {
  looks: [look('ES 1', 'stamp', 3), look('ES 1', 'fitting', 1), look('ES 2', 'stamp', 3), look('ES 3', 'cord', 2)],
  plan: [
    // 8 minutes to fetch, 3 a piece, and the looks: 8 + 3 + 4 + 3 + 3; then 8 + 3 + 2.
    { at: 'tray 1', minutes: 21, fetch_minutes: 8, gain_bits: 1, looks: [{ number: 'ES 1', character: 'stamp' }, { number: 'ES 2', character: 'stamp' }, { number: 'ES 1', character: 'fitting' }] },
    { at: 'tray 2', minutes: 13, fetch_minutes: 8, gain_bits: 1, looks: [{ number: 'ES 3', character: 'cord' }] },
  ],
} as unknown as LookAnswer;

test('what just misses the day is named by what is looked at and all its minutes', () => {
  const late = { ...answer, missed: [{ number: 'ES 3', character: 'cord', minutes: 12.6, over: 2 }] } as LookAnswer;
  assert.deepEqual(missedWords(late), [{ number: 'ES 3', words: 'cord, 13 min' }]);
});

test('a piece is one card, taken out once, as long as its looks and its handling', () => {
  const [first, second] = stopsOf(answer);
  assert.deepEqual(first.cards.map((card) => [card.number, card.start, card.minutes, card.looks.length]), [['ES 1', 8, 7, 2], ['ES 2', 15, 6, 1]]);
  assert.deepEqual(second.cards.map((card) => [card.number, card.start, card.minutes]), [['ES 3', 29, 5]]);
  assert.equal(second.start, 21);
  assert.equal(second.end, 34);
});

test('cards lie end to end in their stop, and the day is as long as its stops', () => {
  for (const stop of stopsOf(answer)) {
    let at = stop.start + stop.fetch;
    for (const card of stop.cards) {
      assert.equal(card.start, at);
      at += card.minutes;
    }
    assert.equal(at, stop.end);
  }
});

test('a minute that rounds to sixty is the next hour', () => {
  assert.equal(clock(59.6), '10:00');
  assert.equal(clock(0), '9:00');
  assert.equal(clock(425), '16:05');
});
