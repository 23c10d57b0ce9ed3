// What a column can be, in words: pure.
import type { Choice } from '../core/parts';
import type { Column, ImportAnswer } from '../core/types';

const simple: Record<string, string> = {
  number: 'number',
  title: 'title',
  form: 'kind of piece',
  maker: 'maker',
  made: 'year made',
  'made-from': 'made from',
  'made-to': 'made to',
  mark: 'mark',
  place: 'place',
  acquired: 'acquired',
  lot: 'came as one lot',
  lender: 'lender',
  tray: 'tray',
  note: 'kept as a note',
  ignore: 'left alone',
};
const keyOf = (heading: string) =>
  heading
    .toLowerCase()
    .replace(/\(.*\)/, '')
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '');

export function glossOf(word: string): string {
  const [kind, key, unit] = word.split(':');
  if (kind === 'character') {
    return `seen: ${key.replaceAll('_', ' ')}, split at ;`;
  }
  return kind === 'measure' ? `${key.replaceAll('_', ' ')}, ${unit}` : (simple[word] ?? word);
}

export function columnChoices(column: Column): Choice[] {
  const key = keyOf(column.heading) || 'remark';
  const words = [...Object.keys(simple), `character:${key}`, ...['height', 'width', 'depth'].flatMap((one) => ['mm', 'cm', 'in'].map((unit) => `measure:${one}:${unit}`)), 'measure:mass:g'];
  return [...new Set([column.word, ...words])].map((word) => ({ key: word, label: glossOf(word) }));
}

// What the main button will do.
export function willDo(answer: ImportAnswer): string {
  const good = answer.sheet.rows - new Set(answer.faults.map((one) => one.row)).size;
  const bad = answer.sheet.rows - good;
  return bad === 0 ? `Take in ${good}` : `Take in ${good}, set ${bad} aside`;
}
