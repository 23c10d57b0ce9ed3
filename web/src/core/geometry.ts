// Pure reckoning of where things lie: years, millimetres, beads, bands. No page is touched.
import type { Chance, Years } from './types';

export interface Axis {
  x0: number;
  y0: number;
  y1: number;
  k: number; // pixels a year
}
export const xOf = (axis: Axis, year: number) => axis.x0 + (year - axis.y0) * axis.k;
export const yearAt = (axis: Axis, x: number) => axis.y0 + (x - axis.x0) / axis.k;

// First and last year of a rule: the 1 and 99 in 100 points of the middles and ends, widened to
// the next five years. An empty list gives fifty years up to 2000.
export function span(years: (Years | null)[]): [number, number] {
  const known = years.filter((one) => one !== null);
  if (known.length === 0) {
    return [1950, 2000];
  }
  const ends = new Float64Array(2 * known.length);
  known.forEach((one, i) => ends.set([one!.p10, one!.p90], 2 * i));
  ends.sort();
  const at = (share: number) => ends[Math.min(ends.length - 1, Math.floor(share * ends.length))];
  const from = Math.floor((at(0.01) - 1) / 5) * 5;
  return [from, Math.max(from + 10, Math.ceil((at(0.99) + 1) / 5) * 5)];
}

export interface Tick {
  year: number;
  length: 8 | 13 | 18;
  number: boolean;
}
// Ticks a year, five and ten years; only fives and tens below 7 px a year. A number that lies
// within 44 px of the flag is hidden.
export function ticks(axis: Axis, width: number, flag: number | null): Tick[] {
  const list: Tick[] = [];
  const first = Math.ceil(Math.max(axis.y0, yearAt(axis, -20)));
  const last = Math.floor(Math.min(axis.y1, yearAt(axis, width + 20)));
  for (let year = first; year <= last; year++) {
    const ten = year % 10 === 0;
    const five = year % 5 === 0;
    if (axis.k < 7 && !five) {
      continue;
    }
    const hidden = flag !== null && Math.abs(xOf(axis, flag) - xOf(axis, year)) < 44;
    const wide = axis.k < 4.6 ? year % 20 === 0 : ten;
    list.push({ year, length: ten ? 18 : five ? 13 : 8, number: !hidden && (wide || (five && axis.k > 26)) });
  }
  return list;
}

export interface Bead {
  x: number;
  heap: number; // how many lie below it
  of: number; // beads in its heap
}
// Twenty chances as beads: those that would touch are heaped at their middle.
export function beads(xs: number[], radius: number): Bead[] {
  const heaps: number[][] = [];
  for (const x of [...xs].sort((a, b) => a - b)) {
    const heap = heaps[heaps.length - 1];
    if (heap && x - heap[0] < radius * 1.75) {
      heap.push(x);
    } else {
      heaps.push([x]);
    }
  }
  return heaps.flatMap((heap) => {
    const middle = heap.reduce((sum, x) => sum + x, 0) / heap.length;
    return heap.map((_, i) => ({ x: middle, heap: i, of: heap.length }));
  });
}

// Rows that fill from the first: who begins at `from` gets the first row that has ended by then.
// A tree of minima finds it in as many steps as the rows have digits.
export class Rows {
  private least: Float64Array;
  private leaves = 1;
  constructor(most: number) {
    while (this.leaves < most) {
      this.leaves *= 2;
    }
    this.least = new Float64Array(2 * this.leaves).fill(-Infinity);
  }
  take(from: number, to: number): number {
    let at = 1;
    while (at < this.leaves) {
      at = this.least[2 * at] <= from ? 2 * at : 2 * at + 1;
    }
    const row = at - this.leaves;
    this.least[at] = to;
    for (at >>= 1; at > 0; at >>= 1) {
      this.least[at] = Math.min(this.least[2 * at], this.least[2 * at + 1]);
    }
    return row;
  }
}

// Bands in the fewest rows, in the order given: the row of each. `gap` is kept between two.
export function pack(bands: [number, number][], gap: number): number[] {
  const order = bands.map((_, i) => i).sort((a, b) => bands[a][0] - bands[b][0]);
  const free = new Rows(bands.length);
  const rows = new Array<number>(bands.length);
  for (const i of order) {
    rows[i] = free.take(bands[i][0], bands[i][1] + gap);
  }
  return rows;
}

// How many of twenty each has: whole studs that sum to twenty, by largest remainder.
export function twenty(chances: Chance[]): [string | null, number][] {
  const total = chances.reduce((sum, [, p]) => sum + p, 0) || 1;
  const shares = chances.map(([, p]) => (20 * p) / total);
  const whole = shares.map(Math.floor);
  let left = 20 - whole.reduce((sum, n) => sum + n, 0);
  const order = shares.map((s, i) => [s - whole[i], i] as const).sort((a, b) => b[0] - a[0]);
  for (let i = 0; left > 0 && i < order.length; i++, left--) {
    whole[order[i][1]]++;
  }
  return chances.map(([name], i) => [name, whole[i]]);
}

// Steps of scale, 1 : n, from coarse to fine.
export const scales = [12, 8, 5, 3, 2, 1, 0.5, 0.25];
const nearest = (n: number) => scales.reduce((best, s, i) => (Math.abs(Math.log(s / n)) < Math.abs(Math.log(scales[best] / n)) ? i : best), 0);
export const scaleNear = (n: number): number => scales[nearest(n)];
export const scaleStep = (n: number, by: number): number => scales[Math.min(scales.length - 1, Math.max(0, nearest(n) + by))];
// Pixels in a millimetre of the screen, unless a card was laid on it: 96 px an inch.
export const usualDots = 96 / 25.4;

// "1 : 5.3", "2 : 1"
export function scaleWords(n: number): string {
  return n >= 1 ? '1 : ' + (Math.round(n * 10) / 10) : Math.round(10 / n) / 10 + ' : 1';
}
