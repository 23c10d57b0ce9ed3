// The order of the show by hand: pure.
import type { TableAnswer, TablePiece } from '../core/types';

export interface Chapter {
  key: string;
  title: string;
  pieces: TablePiece[];
}

export function chaptersOf(table: TableAnswer): { chapters: Chapter[]; waiting: TablePiece[] } {
  const byRank = (a: TablePiece, b: TablePiece) => a.pick!.rank - b.pick!.rank || a.number.localeCompare(b.number, 'en', { numeric: true });
  const picked = table.pieces.filter((piece) => piece.pick);
  const chapters = table.sections.map((section) => ({ ...section, pieces: picked.filter((piece) => piece.section === section.key).sort(byRank) }));
  const loose = picked.filter((piece) => !piece.section).sort(byRank);
  if (loose.length > 0) {
    chapters.push({ key: '', title: 'In no section yet', pieces: loose });
  }
  return { chapters, waiting: table.pieces.filter((piece) => !piece.pick) };
}

// The numbers of a section after a piece is put before place `to`, counted without it.
export function moved(numbers: string[], number: string, to: number): string[] {
  const rest = numbers.filter((one) => one !== number);
  const place = Math.max(0, Math.min(rest.length, to));
  return [...rest.slice(0, place), number, ...rest.slice(place)];
}

// Where a drop falls: before the first piece whose middle is to the right in its row, or below.
export function placeAt(boxes: { x: number; y: number; w: number; h: number }[], x: number, y: number): number {
  const at = boxes.findIndex((box) => y < box.y || (y <= box.y + box.h && x < box.x + box.w / 2));
  return at < 0 ? boxes.length : at;
}

export interface Count {
  what: string;
  words: string;
}
export function coverage(table: TableAnswer): Count[] {
  const picked = table.pieces.filter((piece) => piece.pick?.show);
  const decades = new Set(picked.flatMap((piece) => (piece.year ? Math.floor(piece.year.p50 / 10) * 10 : [])));
  const all = new Set(table.pieces.flatMap((piece) => (piece.year ? Math.floor(piece.year.p50 / 10) * 10 : [])));
  const missing = [...all].filter((decade) => !decades.has(decade)).sort();
  const maker = (piece: TablePiece) => (piece.makers[0] && piece.makers[0][1] >= 0.5 ? piece.makers[0][0] : null);
  const makers = new Set(picked.map(maker).filter(Boolean));
  const known = new Set(table.pieces.map(maker).filter(Boolean));
  return [
    { what: 'In the show', words: `${picked.length} of ${table.pieces.length} pieces` },
    { what: 'In the book', words: `${table.pieces.filter((piece) => piece.pick?.book).length} pieces` },
    { what: 'Makers', words: `${makers.size} of the ${known.size} that pieces are given to` },
    { what: 'Unrecorded hands', words: `${picked.filter((piece) => maker(piece) === null).length} pieces` },
    { what: 'Decades', words: missing.length ? `all but the ${missing.map((decade) => decade + 's').join(', ')}` : 'all that the pieces reach' },
    { what: 'Evidence disagrees', words: `on ${picked.filter((piece) => piece.torn).length || 'none'} of those in the show` },
  ];
}
