// Which pieces the Table shows: by anything recorded or reckoned that it knows of them.
import type { Choice } from '../core/parts';
import type { TableAnswer, TablePiece } from '../core/types';
import { laneOf } from './table_layout';

// A list of pieces that another page hands over.
let handed: { words: string; numbers: Set<string> } = { words: '', numbers: new Set() };
export const hand = (words: string, numbers: string[]) => void (handed = { words, numbers: new Set(numbers) });

const tests: [string, string, (piece: TablePiece) => boolean][] = [
  ['picked', 'picked', (piece) => piece.pick !== null],
  ['open', 'not picked', (piece) => piece.pick === null],
  ['torn', 'whose evidence disagrees', (piece) => piece.torn !== null],
  ['unsigned', 'by unrecorded hands', (piece) => laneOf(piece, 'maker') === 'Unrecorded hands'],
  ['undated', 'without a year', (piece) => piece.year === null],
];

const { compare } = new Intl.Collator('en', { numeric: true });
const distinct = (list: string[]) => [...new Set(list.filter(Boolean))].sort(compare);

export function filterChoices(table: TableAnswer): Choice[] {
  const pieces = table.pieces;
  return [
    ...(handed.words ? [{ key: 'handed', label: 'with ' + handed.words }] : []),
    ...tests.filter(([, , test]) => pieces.some(test)).map(([key, label]) => ({ key, label })),
    ...distinct(pieces.map((piece) => piece.tray)).map((tray) => ({ key: 'tray:' + tray, label: 'in ' + tray })),
    ...table.sections.map((section) => ({ key: 'section:' + section.key, label: 'in "' + section.title + '"' })),
    ...distinct(pieces.map((piece) => laneOf(piece, 'maker')))
      .filter((name) => name !== 'Unrecorded hands')
      .map((name) => ({ key: 'maker:' + name, label: 'by ' + name })),
    ...distinct(pieces.map((piece) => piece.seen?.fitting ?? '')).map((name) => ({ key: 'fitting:' + name, label: 'with ' + name })),
    ...distinct(pieces.map((piece) => piece.seen?.motif ?? '')).map((name) => ({ key: 'motif:' + name, label: 'showing ' + name })),
  ];
}

export function shownBy(table: TableAnswer, filter: string, found: string[]): number[] {
  const [kind, ...rest] = filter.split(':');
  const value = rest.join(':');
  const known = tests.find(([key]) => key === filter);
  const wanted = new Set(found);
  const passes = (piece: TablePiece): boolean => {
    if (known) {
      return known[2](piece);
    }
    switch (kind) {
      case 'tray':
        return piece.tray === value;
      case 'section':
        return piece.section === value;
      case 'maker':
        return laneOf(piece, 'maker') === value;
      case 'fitting':
      case 'motif':
        return piece.seen?.[kind] === value;
      case 'handed':
        return handed.numbers.has(piece.number);
      case 'find':
        return wanted.has(piece.number);
      default:
        return true;
    }
  };
  return table.pieces.flatMap((piece, at) => (passes(piece) ? [at] : []));
}
