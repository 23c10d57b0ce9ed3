// Where every piece and band of the Table lies, in pixels of the world: pure, for any number of
// pieces. A piece's x is its middle year, exactly; it is moved down, never sideways.
import { pack, Rows, span, usualDots, xOf, yearAt, type Axis } from '../core/geometry';
import type { TableAnswer, TablePiece } from '../core/types';

export type Arrange = 'maker' | 'fitting' | 'section' | 'material' | 'tray' | 'form' | 'none';
export const arrangements: Arrange[] = ['maker', 'fitting', 'section', 'material', 'tray', 'form', 'none'];

export interface Box {
  at: number; // place in `pieces`
  x: number; // left
  y: number; // top
  w: number;
  h: number;
  lane: number;
  bandY: number;
}
// Boxes as numbers, to cross from thread to thread without a copy.
const fields = ['at', 'x', 'y', 'w', 'h', 'lane', 'bandY'] as const;
export function packBoxes(boxes: Box[]): Float32Array {
  const packed = new Float32Array(boxes.length * fields.length);
  boxes.forEach((box, i) => fields.forEach((field, f) => (packed[i * fields.length + f] = box[field])));
  return packed;
}
export function unpackBoxes(packed: Float32Array): Box[] {
  return Array.from({ length: packed.length / fields.length }, (_, i) => {
    const at = i * fields.length;
    return { at: packed[at], x: packed[at + 1], y: packed[at + 2], w: packed[at + 3], h: packed[at + 4], lane: packed[at + 5], bandY: packed[at + 6] };
  });
}
export interface Lane {
  name: string;
  words: string[];
  y: number;
  high: number;
  from: number | null; // working span
  to: number | null;
  baseY: number;
  unrecorded: boolean;
}
export interface Layout {
  axis: Axis;
  boxes: Box[]; // lane by lane, left to right
  lanes: Lane[];
  width: number;
  height: number;
}

const unrecordedLane = 'Unrecorded hands';
export function laneOf(piece: TablePiece, arrange: Arrange): string {
  if (arrange === 'maker') {
    const top = piece.makers[0];
    const hand = piece.makers[piece.makers.length - 1];
    return top && top[0] !== null && top[1] > (hand?.[1] ?? 0) ? top[0] : unrecordedLane;
  }
  const value = {
    fitting: piece.seen?.fitting,
    material: piece.seen?.metal || piece.seen?.material,
    section: piece.section ?? '',
    tray: piece.tray,
    form: piece.form,
    none: 'All pieces',
  }[arrange];
  return value || 'not recorded';
}

// Size of a piece in millimetres, from its picture, else from the record; `known`: with a scale.
// A picture without a scale has the recorded height, in its own shape.
type Sized = Pick<TablePiece, 'pictures' | 'seen'> & { observations?: { character: string; value: string }[] };
export function sizeOf(piece: Sized, view = 'front'): { w: number; h: number; known: boolean } {
  const picture = piece.pictures.find((one) => one.view === view) ?? piece.pictures[0];
  if (picture && picture.w_mm > 0) {
    return { w: picture.w_mm, h: picture.h_mm, known: true };
  }
  const read = (text: string | undefined) => Number.parseFloat(text ?? '') || 0;
  const recorded = (key: string) => read(piece.seen?.[key] ?? piece.observations?.find((one) => one.character === key)?.value);
  const w = recorded('width') || 40;
  const h = recorded('height') || w;
  return { w: picture?.shape ? h * picture.shape : w, h, known: false };
}

const spanWords = (from: number | null, to: number | null) =>
  from === null && to === null ? '' : `${from ?? ''}–${to !== null && from !== null && Math.floor(to / 100) === Math.floor(from / 100) ? String(to).slice(2) : (to ?? '')}`;

interface Group {
  name: string;
  members: number[];
}
function grouped(table: TableAnswer, shown: number[], arrange: Arrange): Group[] {
  const groups = new Map<string, number[]>();
  for (const at of shown) {
    const name = laneOf(table.pieces[at], arrange);
    groups.get(name)?.push(at) ?? groups.set(name, [at]);
  }
  const order = new Map<string, number>();
  table.sections.forEach((section, i) => order.set(section.key, i));
  const middles = new Map<string, number>();
  groups.forEach((members, name) => {
    const years = members.flatMap((at) => table.pieces[at].year?.p50 ?? []);
    middles.set(name, years.reduce((sum, year) => sum + year, 0) / (years.length || 1));
  });
  const last = (name: string) => name === unrecordedLane || name === 'not recorded';
  return [...groups]
    .map(([name, members]) => ({ name, members }))
    .sort(
      (a, b) =>
        Number(last(a.name)) - Number(last(b.name)) ||
        (arrange === 'section' ? (order.get(a.name) ?? 99) - (order.get(b.name) ?? 99) : middles.get(a.name)! - middles.get(b.name)!),
    );
}

function laneWords(table: TableAnswer, group: Group, arrange: Arrange): Pick<Lane, 'words' | 'from' | 'to'> {
  const count = group.members.length === 1 ? '1 piece' : group.members.length + ' pieces';
  if (arrange !== 'maker') {
    return { words: [count], from: null, to: null };
  }
  if (group.name === unrecordedLane) {
    return { words: [count, 'always on the table'], from: null, to: null };
  }
  const maker = table.makers.find((one) => one.name === group.name);
  const years = spanWords(maker?.from ?? null, maker?.to ?? null);
  const words = years ? [count, (maker?.firm ? 'firm, ' : 'worked ') + years] : [count];
  return { words, from: maker?.from ?? null, to: maker?.to ?? null };
}

// Where the years lie: `zoom` times as wide as they fit between left and right.
export interface Room {
  left: number;
  right: number;
  zoom: number;
}
export function axisOf(table: TableAnswer, { left, right, zoom }: Room): Axis {
  const [y0, y1] = span(table.pieces.map((piece) => piece.year));
  return { x0: left, y0, y1, k: Math.max(0.5, ((right - left) / (y1 - y0)) * zoom) };
}

export interface Wish {
  table: TableAnswer;
  shown: number[];
  arrange: Arrange;
  axis: Axis;
  pxmm: number;
  view: string;
  top: number; // first lane begins here
  head?: number; // of a lane, above its pieces: where its name has no room beside them
  width: number;
}

// In order of x, each into the first row that is clear.
function seat(order: { x: number; w: number }[]): number[] {
  const free = new Rows(order.length);
  return order.map((one) => free.take(one.x, one.x + one.w + 3));
}

function layLane(wish: Wish, group: Group, lane: number, y: number): { boxes: Box[]; bottom: number; base: number } {
  const { table, axis, pxmm, view, head = 8 } = wish;
  let spare = axis.x0;
  const spots = group.members.map((at): Box => {
    const piece = table.pieces[at];
    const size = sizeOf(piece, view);
    const w = Math.max(4, size.w * pxmm);
    const h = Math.max(4, size.h * pxmm);
    if (piece.year) {
      const middle = Math.min(axis.y1 + 2, Math.max(axis.y0 - 2, piece.year.p50));
      return { at, x: xOf(axis, middle) - w / 2, y: 0, w, h, lane, bandY: 0 };
    }
    spare = spare + w + 6 > wish.width ? axis.x0 : spare;
    spare += w + 6;
    return { at, x: spare - w - 6, y: 0, w, h, lane, bandY: 0 };
  });
  spots.sort((a, b) => a.x - b.x);
  const rows = seat(spots);
  const deep: number[] = [];
  const clear: number[] = [];
  spots.forEach(({ at, h }, i) => {
    // A row stands a little into the one above: ties hang free below their slides.
    const free = table.pieces[at].pictures.length > 0 ? 0.78 : 1;
    deep[rows[i]] = Math.max(deep[rows[i]] ?? 0, h);
    clear[rows[i]] = Math.max(clear[rows[i]] ?? 0, h * free);
  });
  const tops: number[] = [];
  clear.reduce((top, high, row) => ((tops[row] = top), top + high + 4), y + head);
  const lastRow = deep.length - 1;
  const base = Math.max(y + 66, lastRow < 0 ? y : tops[lastRow] + deep[lastRow]) + 8;
  const bands = spots.map((spot): [number, number] => {
    const year = table.pieces[spot.at].year;
    return year ? [xOf(axis, year.from - 0.5), Math.max(xOf(axis, year.from + year.p.length - 0.5), xOf(axis, year.from) + 8)] : [0, 0];
  });
  const hem = pack(bands, 5);
  spots.forEach((spot, i) => {
    spot.y = tops[rows[i]];
    spot.bandY = base + 6 + hem[i] * 6.5;
  });
  return { boxes: spots, base, bottom: base + 14 + (Math.max(-1, ...hem) + 1) * 6.5 };
}

export function layTable(wish: Wish): Layout {
  const boxes: Box[] = [];
  const lanes: Lane[] = [];
  let y = wish.top;
  grouped(wish.table, wish.shown, wish.arrange).forEach((group, lane) => {
    const laid = layLane(wish, group, lane, y);
    boxes.push(...laid.boxes);
    lanes.push({
      name: wish.arrange === 'section' ? (wish.table.sections.find((one) => one.key === group.name)?.title ?? group.name) : group.name,
      ...laneWords(wish.table, group, wish.arrange),
      y,
      high: laid.bottom - y,
      baseY: laid.base,
      unrecorded: group.name === unrecordedLane,
    });
    y = laid.bottom + 4;
  });
  return { axis: wish.axis, boxes, lanes, width: xOf(wish.axis, wish.axis.y1) + 60, height: y };
}

// A uniform grid of 128 px cells over the boxes.
export class Grid {
  private cells = new Map<string, number[]>();
  constructor(private boxes: Box[]) {
    boxes.forEach((box, i) => {
      for (let cx = Math.floor(box.x / 128); cx <= Math.floor((box.x + box.w) / 128); cx++) {
        for (let cy = Math.floor(box.y / 128); cy <= Math.floor((box.y + box.h) / 128); cy++) {
          const key = cx + ',' + cy;
          this.cells.get(key)?.push(i) ?? this.cells.set(key, [i]);
        }
      }
    });
  }
  // The box whose middle is nearest, among those within `slack` of the point; -1: none.
  hit(x: number, y: number, slack: number): number {
    let best = -1;
    let near = Infinity;
    for (let cx = Math.floor((x - slack) / 128); cx <= Math.floor((x + slack) / 128); cx++) {
      for (let cy = Math.floor((y - slack) / 128); cy <= Math.floor((y + slack) / 128); cy++) {
        for (const i of this.cells.get(cx + ',' + cy) ?? []) {
          const box = this.boxes[i];
          const inside = x > box.x - slack && x < box.x + box.w + slack && y > box.y - slack && y < box.y + box.h + slack;
          const far = Math.hypot(x - box.x - box.w / 2, (y - box.y - box.h / 2) / 2);
          if (inside && far < near) {
            near = far;
            best = i;
          }
        }
      }
    }
    return best;
  }
}

// What lies under a point of the window, and the scroll that has it lie there again in another
// layout of the same pieces.
export interface Under {
  at: number;
  share: number; // of its height
  year: number;
  x: number;
  y: number;
}
export function underPoint({ boxes, axis }: Pick<Layout, 'boxes' | 'axis'>, scroll: { x: number; y: number }, x: number, y: number): Under | null {
  const far = (box: Box) => Math.hypot(scroll.x + x - box.x - box.w / 2, scroll.y + y - box.y - box.h / 2);
  const box = boxes.reduce<Box | null>((best, one) => (!best || far(one) < far(best) ? one : best), null);
  return box && { at: box.at, share: (scroll.y + y - box.y) / box.h, year: yearAt(axis, scroll.x + x), x, y };
}
export function scrollUnder({ boxes, axis }: Pick<Layout, 'boxes' | 'axis'>, { at, share, year, x, y }: Under): { x: number; y: number } | null {
  const box = boxes.find((one) => one.at === at);
  return box ? { x: xOf(axis, year) - x, y: box.y + share * box.h - y } : null;
}

// The nearest box in a direction from box `from`; the same if there is none.
export function nextBox(boxes: Box[], from: number, dx: number, dy: number): number {
  const here = boxes[from];
  let best = from;
  let least = Infinity;
  boxes.forEach((box, i) => {
    const x = box.x + box.w / 2 - here.x - here.w / 2;
    const y = box.y + box.h / 2 - here.y - here.h / 2;
    const along = x * dx + y * dy;
    const across = Math.abs(x * dy) + Math.abs(y * dx);
    const cost = along + 3 * across;
    if (i !== from && along > 0.5 && cost < least) {
      least = cost;
      best = i;
    }
  });
  return best;
}

export const pxmmOf = (n: number, dots = usualDots) => dots / n;
