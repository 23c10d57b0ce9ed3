// Where the slips of sources hang: pure. A pin stands exactly at the year and at how often the
// pieces bore the source out; its slip is moved down, never sideways, to clear a neighbour.
import { pack, xOf, type Axis } from '../core/geometry';
import type { Source, SourcesAnswer } from '../core/types';

export interface Hung {
  source: Source;
  x: number; // of the pin
  y: number;
  slip: { x: number; y: number } | null; // none: no room, the pin stands alone
  bound: string; // the origin it shares with others, or nothing
}
export interface Web {
  hung: Hung[];
  line: number; // below it: never tested
  high: number;
  least: number; // of 20, at the foot of the rule
}
export interface Ground {
  axis: Axis;
  width: number;
  top: number;
  px: number; // of one in twenty
  slip: { w: number; h: number };
}

export function sourceSpan(sources: Source[]): [number, number] {
  const years = sources.flatMap((one) => (one.year === null ? [] : [one.year]));
  if (years.length === 0) {
    return [1950, 2000];
  }
  const from = Math.floor((Math.min(...years) - 1) / 5) * 5;
  return [from, Math.max(from + 10, Math.ceil((Math.max(...years) + 1) / 5) * 5)];
}

export const leastOf = (sources: Source[]) => Math.max(0, Math.floor(Math.min(14, ...sources.map((one) => one.borne_out ?? 20))) - 1);

interface Box {
  x: number;
  y: number;
}
interface Room extends Box {
  w: number;
  h: number;
}
const clear = (box: Room, others: Room[]) => others.every((one) => box.x + box.w + 6 < one.x || one.x + one.w + 6 < box.x || box.y + box.h + 6 < one.y || one.y + one.h + 6 < box.y);

// The mouths of one origin hang at the height of the origin, or of the first of them tested.
function boundHeights(answer: SourcesAnswer): Map<string, { origin: string; at: number | null }> {
  const byKey = new Map(answer.sources.map((one) => [one.key, one]));
  const map = new Map<string, { origin: string; at: number | null }>();
  for (const { origin, tellers } of answer.echoes) {
    const all = [origin, ...tellers];
    const at = all.map((key) => byKey.get(key)?.borne_out ?? null).find((value) => value !== null) ?? null;
    tellers.forEach((key) => map.set(key, { origin, at }));
  }
  return map;
}

export function hang(answer: SourcesAnswer, shown: Source[], ground: Ground, chosen: string): Web {
  const { axis, top, px, slip, width } = ground;
  const least = leastOf(shown);
  const line = top + (20 - least) * px + 26;
  const bound = boundHeights(answer);
  const standing = (one: Source) => bound.get(one.key)?.at ?? one.borne_out;
  const xFor = (one: Source) => xOf(axis, one.year ?? axis.y0);
  const left = (x: number) => Math.max(0, Math.min(x, width - slip.w - 4));
  const tested = shown.filter((one) => standing(one) !== null);
  const rest = shown.filter((one) => standing(one) === null).sort((a, b) => xFor(a) - xFor(b));
  const weight = (one: Source) => (one.key === chosen ? 1e6 : one.claims + one.pieces);
  // The stroke that binds an origin's tellings, and the words over it, are kept clear.
  const placed: Room[] = answer.echoes.flatMap(({ origin }) => {
    const all = tested.filter((one) => bound.get(one.key)?.origin === origin).map(xFor);
    const y = all.length > 1 ? top + (20 - bound.get(tested.find((one) => bound.get(one.key)?.origin === origin)!.key)!.at!) * px : 0;
    return all.length > 1 ? [{ x: Math.min(...all), y: y - 24, w: Math.max(160, Math.max(...all) - Math.min(...all)), h: 30 }] : [];
  });
  const hung: Hung[] = [];
  for (const source of [...tested].sort((a, b) => weight(b) - weight(a) || a.key.localeCompare(b.key))) {
    const x = xFor(source);
    const y = top + (20 - standing(source)!) * px;
    const own = bound.get(source.key)?.origin ?? '';
    let at: Box | null = null;
    for (let down = own ? 16 : 0; down <= 150 && !at; down += 6) {
      const box = { x: left(x), y: y + down, ...slip };
      if (box.y + slip.h < line - 16 && clear(box, placed)) {
        at = box;
        placed.push(box);
      }
    }
    hung.push({ source, x, y, slip: at, bound: own });
  }
  // Below the line: each bound group on a stroke of its own, then the others.
  let y = line + 20;
  const lay = (list: Source[], own: string) => {
    const at = y + (own ? 34 : 0);
    const boxes = list.map((one): [number, number] => [left(xFor(one)), left(xFor(one)) + slip.w]);
    const rows = pack(boxes, 10);
    list.forEach((source, i) => {
      const down = at + rows[i] * (slip.h + 16);
      hung.push({ source, x: xFor(source), y: own ? y + 18 : down, slip: { x: left(xFor(source)), y: down }, bound: own });
    });
    y = list.length > 0 ? at + (Math.max(...rows) + 1) * (slip.h + 16) : y;
  };
  const groupOf = (one: Source) => bound.get(one.key)?.origin ?? '';
  for (const own of [...new Set(rest.map(groupOf).filter(Boolean))]) {
    lay(
      rest.filter((one) => groupOf(one) === own),
      own,
    );
  }
  lay(
    rest.filter((one) => !groupOf(one)),
    '',
  );
  const lowest = Math.max(line, ...hung.map((one) => (one.slip ? one.slip.y + slip.h : one.y)));
  return { hung: hung.sort((a, b) => a.x - b.x || a.y - b.y), line, high: lowest + 60, least };
}

export interface Thread {
  key: string;
  d: string;
  dot: Box;
}
// From a source to each that it derives from; what shares one bound stroke needs no thread.
export function threads(web: Web, slip: { w: number; h: number }): Thread[] {
  const byKey = new Map(web.hung.map((one) => [one.source.key, one]));
  return web.hung.flatMap((one) =>
    one.source.derives_from.flatMap((key) => {
      const from = byKey.get(key);
      if (!from || (one.bound && one.bound === from.bound)) {
        return [];
      }
      const box = from.slip ?? { x: from.x, y: from.y - slip.h };
      const beside = one.x > box.x + slip.w + 20;
      const dot = beside ? { x: box.x + slip.w, y: box.y + slip.h / 2 } : { x: box.x + slip.w / 3, y: box.y + slip.h };
      const d = beside ? `M${one.x} ${one.y}C${one.x - 60} ${one.y} ${dot.x + 60} ${dot.y} ${dot.x} ${dot.y}` : `M${one.x} ${one.y}C${one.x - 70} ${one.y + 30} ${dot.x} ${dot.y + 60} ${dot.x} ${dot.y}`;
      return [{ key: one.source.key + key, d, dot }];
    }),
  );
}
