// Every page of the workbench, in the order of the drawers.
import type { FunctionComponent } from 'preact';
import type { Route } from './core/route';
import type { Hello } from './core/types';
import { Looks } from './pages/looks';
import { Notes } from './pages/notes';
import { Prints } from './pages/prints';
import { Sheet } from './pages/sheet';
import { Show } from './pages/show';
import { Sources } from './pages/sources';
import { Table } from './pages/table';
import { Years } from './pages/years';

export interface Page {
  key: string;
  title: string;
  help: string;
  draw: FunctionComponent<{ route: Route }>;
  count: (hello: Hello, piece: string) => string;
  near: boolean; // in a phone's drawers
  keys: [string, string][];
}

export const pages: Page[] = [
  {
    key: 'table',
    title: 'Table',
    help: 'Everything you have, at one size, over the years; turn it all over with B.',
    draw: Table,
    count: (hello) => (hello.counts.pieces ? hello.counts.pieces + ' pieces' : 'none yet'),
    near: true,
    keys: [['arrows', 'nearest piece that way'], ['Tab', 'next lane'], ['Enter', 'open the sheet'], ['B', 'turn all over'], ['L', 'lens'], ['C', 'set beside'], ['P', 'pick or drop'], ['+ −', 'scale'], ['[ ]', 'fewer or more years'], ['A', 'arrange']],
  },
  {
    key: 'sheet',
    title: 'Sheet',
    help: 'Each ribbon is one thing you know; lift it to see the answer without it.',
    draw: Sheet,
    count: (_, piece) => piece || 'one piece',
    near: true,
    keys: [['1–9', 'lift a ribbon'], ['↑ ↓', 'walk the ribbons'], ['F', 'front or back large'], ['W', 'what if'], ['J K', 'next or earlier piece'], ['P', 'pick or drop'], ['Esc', 'lay all back']],
  },
  {
    key: 'notes',
    title: 'Notes',
    help: 'Type what you see, in any order; each part shows what it was taken for.',
    draw: Notes,
    count: (_, piece) => piece || 'one piece',
    near: true,
    keys: [['Tab', 'takes the first chip'], ['alt 1–6', 'takes another'], ['alt N', 'a new term'], ['Enter', 'keeps'], ['↑', 'brings the last line back'], [';', 'ends a saying']],
  },
  {
    key: 'years',
    title: 'Years',
    help: 'When each variant was in use, as far as your pieces tell.',
    draw: Years,
    count: (hello) => (hello.counts.pieces ? 'in use' : 'none yet'),
    near: false,
    keys: [['↑ ↓', 'walk the rows'], ['Enter', 'only this character, or all again'], ['H', 'hide known years']],
  },
  {
    key: 'looks',
    title: 'Looks',
    help: 'The day in minutes: what to look at, and how much narrower it should leave each year.',
    draw: Looks,
    count: (hello) => (hello.inferred ? 'day plan' : 'none yet'),
    near: true,
    keys: [['↑ ↓', 'walk the cards'], ['D', 'done'], ['Enter', 'open the sheet']],
  },
  {
    key: 'sources',
    title: 'Sources',
    help: 'Who says so, who they had it from, and what the pieces say.',
    draw: Sources,
    count: (hello) => (hello.counts.sources ? String(hello.counts.sources) : 'none yet'),
    near: false,
    keys: [['↑ ↓', 'walk the sources'], ['Enter', 'opens one'], ['T', 'test a claim'], ['Esc', 'all sources again']],
  },
  {
    key: 'show',
    title: 'Show',
    help: 'Drag a piece; every check follows your hand.',
    draw: Show,
    count: (hello) => (hello.counts.waiting ? hello.counts.waiting + ' wait' : 'sections'),
    near: false,
    keys: [['Tab', 'next piece'], ['shift ← →', 'move the piece'], ['shift ↑ ↓', 'into another section'], ['P', 'drop'], ['arrows', 'in a case: by 5 mm, shift 50, alt 1'], ['Delete', 'out of its case']],
  },
  {
    key: 'prints',
    title: 'Prints',
    help: 'What will leave the house, and whether it still agrees with the record.',
    draw: Prints,
    count: () => 'papers',
    near: false,
    keys: [['Enter', 'preview'], ['M', 'make']],
  },
];
