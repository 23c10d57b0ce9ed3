// What of the Table is chosen, and what has to be in sight.
import { scaleNear, scales } from '../core/geometry';
import type { TableAnswer } from '../core/types';
import type { Zoom } from './table_cloth';
import type { Box, Layout } from './table_layout';

interface Place {
  x: number;
  y: number;
}

// The place of the chosen piece; without a choice the topmost that disagrees with itself, if it is
// in sight without a scroll, else the first of all.
export function chosenOf(boxes: Box[], { pieces }: TableAnswer, number: string, bottom: number): number {
  if (number) {
    return Math.max(0, boxes.findIndex((box) => pieces[box.at]?.number === number));
  }
  let top = -1;
  boxes.forEach((box, i) => {
    if (pieces[box.at]?.torn && box.y + box.h + 30 < bottom && (top < 0 || box.y < boxes[top].y)) {
      top = i;
    }
  });
  return Math.max(0, top);
}

// How far one may scroll: `bottom` and `right` bound what nothing covers.
export const within = (to: Place, layout: Layout, bottom: number, right: number): Place => ({
  x: Math.max(0, Math.min(layout.width - right + 60, to.x)),
  y: Math.max(0, Math.min(layout.height - bottom + 20, to.y)),
});

// The scroll that brings a box into sight, moved as little as will do.
export function inSight(at: Place, box: Box, layout: Layout, bottom: number, right: number): Place {
  const y = box.y - 60 < at.y ? box.y - 60 : box.y + box.h + 30 > at.y + bottom ? box.y + box.h + 30 - bottom : at.y;
  const x = box.x < at.x ? box.x - 80 : box.x + box.w > at.x + right ? box.x + box.w - right : at.x;
  return { x: Math.max(0, Math.min(x, layout.width)), y: Math.max(0, Math.min(y, layout.height)) };
}

interface Scale {
  n: number; // 1 : n
  zoom: number; // of the years
}
// Things and years grow together, as on a map. Years alone may also be narrowed, but a hand that
// makes things smaller leaves all years as wide as the window.
function years(from: Scale, by: Zoom, things: number): number {
  const least = by.things === 1 ? 0.4 : Math.min(1, from.zoom);
  const wanted = from.zoom * (by.things === 1 ? by.years : things);
  return Math.min(12, Math.max(least, wanted));
}
// While the hand is at it.
export function stretchTo(from: Scale, by: Zoom): { sx: number; sy: number } {
  const n = Math.min(scales[0], Math.max(scales[scales.length - 1], from.n / by.things));
  return { sx: years(from, by, from.n / n) / from.zoom, sy: from.n / n };
}
// Once it rests: a step of the scale.
export function zoomTo(from: Scale, by: Zoom): Scale {
  const n = scaleNear(from.n / by.things);
  return { n, zoom: years(from, by, from.n / n) };
}

// The side rule: numbers as near to each other as they can be read.
export function sideOf(pxmm: number, down: number) {
  const [label, step] = [[10, 2], [20, 5], [50, 10], [100, 20], [200, 50]].find(([mm]) => mm * pxmm >= 34) ?? [500, 100];
  const round = 500 * pxmm; // what is scrolled past is left out by whole numbers
  return { unit: 'mm', px: pxmm, step, label, off: -(down % round), from: Math.floor(down / round) * 500 };
}
