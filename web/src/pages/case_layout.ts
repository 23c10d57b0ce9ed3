// Where pieces hang in a case: pure reckoning in millimetres from the left and from the floor.
export const caseAddress = (key: string) => '/show?see=case' + (key ? '&case=' + encodeURIComponent(key) : '');

export interface Hung {
  number: string;
  x: number; // of its middle
  y: number;
  w: number;
  h: number;
}
export interface Inside {
  w: number;
  h: number;
}

const clamp = (value: number, least: number, most: number) => Math.max(least, Math.min(most, value));

// The middle of a piece, kept within the case and settled to a step.
export function settled(x: number, y: number, inside: Inside, step: number): { x: number; y: number } {
  const to = (value: number) => Math.round(value / step) * step;
  return { x: clamp(to(x), 0, inside.w), y: clamp(to(y), 0, inside.h) };
}

// Free width to the nearest neighbour on each side, or to the wall; neighbours count that share some
// of its height. Below 0: they overlap.
export function gaps(piece: Hung, others: Hung[], inside: Inside): { left: number; right: number } {
  let left = piece.x - piece.w / 2;
  let right = inside.w - piece.x - piece.w / 2;
  for (const other of others) {
    if (other.number === piece.number || Math.abs(other.y - piece.y) >= (other.h + piece.h) / 2) {
      continue;
    }
    const between = Math.abs(other.x - piece.x) - (other.w + piece.w) / 2;
    if (other.x < piece.x) {
      left = Math.min(left, between);
    } else {
      right = Math.min(right, between);
    }
  }
  return { left: Math.round(left), right: Math.round(right) };
}

// The first free place from the left, in rows from the top; the middle where nothing is free.
export function freePlace(w: number, h: number, others: Hung[], inside: Inside, apart = 10): { x: number; y: number } {
  for (let y = inside.h - h / 2 - apart; y >= h / 2; y -= 20) {
    for (let x = w / 2 + apart; x <= inside.w - w / 2 - apart; x += 10) {
      const free = others.every((other) => Math.abs(other.x - x) >= (other.w + w) / 2 + apart || Math.abs(other.y - y) >= (other.h + h) / 2 + apart);
      if (free) {
        return { x: Math.round(x), y: Math.round(y) };
      }
    }
  }
  return { x: inside.w / 2, y: inside.h / 2 };
}

// Left to right, then from the top, as one walks along a case.
export const inOrder = (list: Hung[]) => [...list].sort((a, b) => a.x - b.x || b.y - a.y);
