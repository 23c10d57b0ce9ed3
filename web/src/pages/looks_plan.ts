// The plan of a day on the clock: pure, in minutes after it begins.
import type { Look, LookAnswer } from '../core/types';

// A piece on the table: it is taken out once, and each look has its own minutes.
export interface Card {
  number: string;
  looks: Look[];
  start: number;
  minutes: number;
}
export interface Stop {
  at: string;
  start: number;
  fetch: number; // minutes until its first piece lies on the table
  end: number;
  cards: Card[];
}

// Each stop where its minutes fall: fetching first, then piece after piece. What of its minutes
// no look takes is handling, as much for each piece.
export function stopsOf(answer: LookAnswer): Stop[] {
  let start = 0;
  return answer.plan.map((one) => {
    const looks = one.looks.flatMap((each) => answer.looks.find((look) => look.number === each.number && look.character === each.character) ?? []);
    const numbers = [...new Set(looks.map((look) => look.number))];
    const own = looks.reduce((sum, look) => sum + look.minutes, 0);
    const handling = Math.max(0, one.minutes - one.fetch_minutes - own) / Math.max(1, numbers.length);
    const stop: Stop = { at: one.at, start, fetch: one.fetch_minutes, end: start + one.minutes, cards: [] };
    let at = start + one.fetch_minutes;
    for (const number of numbers) {
      const mine = looks.filter((look) => look.number === number);
      const minutes = handling + mine.reduce((sum, look) => sum + look.minutes, 0);
      stop.cards.push({ number, looks: mine, start: at, minutes });
      at += minutes;
    }
    start = stop.end;
    return stop;
  });
}

// "ES 251 Tips, 25 min": what the day is too short for.
export const missedWords = (answer: LookAnswer) =>
  answer.missed.map((one) => {
    const look = answer.looks.find((each) => each.number === one.number && each.character === one.character);
    return { number: one.number, words: `${look?.label ?? one.character}, ${Math.round(one.minutes)} min` };
  });

export const clock = (minutes: number, begin = 9) => `${begin + Math.floor(Math.round(minutes) / 60)}:${String(Math.round(minutes) % 60).padStart(2, '0')}`;

// What the likeliest answers would leave, as years: the mean of their ends.
export function after(look: Look): { p10: number; p50: number; p90: number } | null {
  const weight = look.answers.reduce((sum, one) => sum + one.p, 0);
  if (weight === 0) {
    return null;
  }
  const mean = (read: (one: Look['answers'][number]) => number) => look.answers.reduce((sum, one) => sum + one.p * read(one), 0) / weight;
  return { p10: mean((one) => one.p10), p50: mean((one) => one.p50), p90: mean((one) => one.p90) };
}
