// The piece itself, front and back at one scale, its parts named by leader lines.
import { photo } from '../core/api';
import { usualDots } from '../core/geometry';
import type { Size } from '../core/hooks';
import { zigzag } from '../core/shapes';
import type { SheetAnswer } from '../core/types';
import { sizeOf } from './table_layout';

const plateHigh = (size: Size) => (size.phone ? 304 : size.tall ? 470 : size.h);

export function plateScale(piece: SheetAnswer | null, width: number, size: Size): { k: number; known: boolean } {
  if (!piece) {
    return { k: usualDots, known: true };
  }
  const mm = sizeOf(piece);
  const high = plateHigh(size) - (size.phone ? 76 : size.tall ? 216 : size.tablet ? 256 : 262);
  // Room above and below for the words, and a row of buttons at the near edge.
  return { k: Math.min(size.phone ? 1.6 : 4.6, high / mm.h, (width / 2 - 26) / mm.w), known: mm.known };
}

const row = 56; // of buttons, at the near edge
const lift = 8 + row / 2;

interface Callout {
  part: string;
  label: string;
  side: 'front' | 'back';
  tx: number; // where on the picture, as shares of its width and height
  ty: number;
  x: number; // where the words stand, as shares of the plate
  bottom: boolean;
  end: boolean;
}
const callouts: Callout[] = [
  { part: 'ornament', label: 'Ornament', side: 'front', tx: 0.3, ty: 0.38, x: 0, bottom: false, end: false },
  { part: 'fitting', label: 'Fitting', side: 'back', tx: 0.56, ty: 0.42, x: 1, bottom: false, end: true },
  { part: 'cord', label: 'Cord', side: 'front', tx: 0.37, ty: 0.7, x: 0, bottom: true, end: false },
  { part: 'tip', label: 'Tips', side: 'front', tx: 0.62, ty: 0.9, x: 0.4, bottom: true, end: false },
  { part: 'mark', label: 'Mark', side: 'back', tx: 0.8, ty: 0.43, x: 1, bottom: true, end: true },
];

function wordsOf(piece: SheetAnswer, part: string): string {
  if (part === 'mark') {
    return piece.marks.map((mark) => mark.text).filter(Boolean).join(', ');
  }
  const seen = piece.observations.filter((one) => one.part === part && !/remark/i.test(one.character));
  const short = seen.filter((one) => !/mm|^\d/.test(one.value)).slice(0, 3);
  const state = piece.parts.find((one) => one.kind === part)?.is ?? '';
  return [...new Set(short.map((one) => one.value))].concat(state && state !== 'unknown' ? ['· ' + state] : []).join(', ').replace(', ·', ' ·');
}

// Whole words only: what has no room is left off from the end, the state of the part last.
export function fitting(words: string, most: number): string {
  if (words.length <= most) {
    return words;
  }
  const cut = Math.max(words.lastIndexOf(',', most), words.lastIndexOf(' ·', most));
  return cut > 0 ? words.slice(0, cut) : words.slice(0, most - 1) + '…';
}

const later = (piece: SheetAnswer, part: string) => piece.misfits.some((misfit) => misfit.part === part);

function Leaders({ piece, width, high, k }: { piece: SheetAnswer; width: number; high: number; k: number }) {
  const mm = sizeOf(piece);
  const top = (high - mm.h * k) / 2 - lift;
  return (
    <svg class="leaders" width={width} height={high} aria-hidden="true">
      {callouts.map((one) => {
        const words = wordsOf(piece, one.part);
        const isTie = mm.h > 1.5 * mm.w;
        if (!words || (!isTie && (one.part === 'cord' || one.part === 'tip'))) {
          return null;
        }
        const centre = width * (one.side === 'front' ? 0.27 : 0.735);
        const x = centre + (one.tx - 0.5) * mm.w * k;
        const y = top + (isTie ? one.ty : 0.5) * mm.h * k;
        const tx = one.x === 1 ? width - 24 : one.x === 0 ? 24 : centre + mm.w * k * 0.3 + 14;
        const ty = one.bottom ? high - 56 - row : 34;
        const torn = later(piece, one.part);
        return (
          <g key={one.part}>
            <path d={`M${x} ${y}L${tx + (one.end ? -6 : 6)} ${one.bottom ? ty - 2 : ty + 40}`} stroke="var(--ink)" stroke-width="1" />
            <circle cx={x} cy={y} r="2.6" fill="var(--paper)" stroke="var(--ink)" stroke-width="1.2" />
            <text class="callout" x={tx} y={ty + 15} text-anchor={one.end ? 'end' : 'start'} style={torn ? { fill: 'var(--rust)' } : {}}>
              {one.label}
            </text>
            <text class="callout2" x={tx} y={ty + 32} text-anchor={one.end ? 'end' : 'start'}>
              {fitting(words, one.part === 'cord' ? Math.floor(width / 22) : 34)}
            </text>
            {torn && one.part === 'cord' && [-0.14, 0.14].map((dx) => <path key={dx} d={zigzag(centre + dx * mm.w * k - 13, centre + dx * mm.w * k + 13, top + 0.66 * mm.h * k, -6, 4.4)} fill="none" stroke="var(--rust)" stroke-width="2.2" />)}
          </g>
        );
      })}
    </svg>
  );
}

interface PlateProps {
  piece: SheetAnswer;
  width: number;
  size: Size;
  large: string;
  onLarge: (view: string) => void;
  onThink: () => void;
}
export function Plate({ piece, width, size, large, onLarge, onThink }: PlateProps) {
  const { k } = plateScale(piece, width, size);
  const high = plateHigh(size);
  const shown = large ? [large] : ['front', 'back'];
  const others = piece.pictures.filter((one) => one.view !== 'front' && one.view !== 'back');
  const bar = 10 * k;
  return (
    <section class="plate" aria-label={`${piece.number}, front and back, parts labelled`} style={{ height: high + 'px' }}>
      {!size.phone && !large && <Leaders piece={piece} width={width} high={high} k={k} />}
      {shown.map((view) => {
        const picture = piece.pictures.find((one) => one.view === view);
        const mm = sizeOf(piece, view);
        const up = large ? 8 : size.phone ? 30 : lift;
        const z = large ? Math.min((width - 40) / mm.w, (high - 60) / mm.h) : k;
        const centre = width * (large ? 0.5 : view === 'front' ? 0.27 : 0.735);
        const style = { left: centre - (mm.w * z) / 2 + 'px', top: (high - mm.h * z) / 2 - up + 'px', width: mm.w * z + 'px', height: mm.h * z + 'px' };
        return (
          <button key={view} class="face" style={style} aria-label={`${piece.title}, ${picture ? view : `no picture of the ${view}`}: ${large ? 'make smaller' : 'make larger'}`} onClick={() => onLarge(large ? '' : view)}>
            {picture ? <img src={photo(piece.number, view, 'full', picture.v)} width={mm.w * z} height={mm.h * z} alt="" /> : <span class="nopicture">no picture of the {view}</span>}
          </button>
        );
      })}
      {!large && (
        <svg class="bar" width={bar + 60} height="20" role="img" aria-label="Scale bar, 10 mm" style={size.phone ? { left: (width - bar - 58) / 2 + 'px', top: high - 92 + 'px' } : { left: width / 2 - bar / 2 + 'px' }}>
          <path d={`M1 4v7h${bar}v-7`} fill="none" stroke="var(--ink)" stroke-width="1.4" />
          <text x={bar + 8} y="12" style={{ fontSize: '12.5px' }}>
            10 mm
          </text>
        </svg>
      )}
      {!large && (
        <p class="others">
          {others.map((one) => (
            <button key={one.view} class="btn soft" onClick={() => onLarge(one.view)}>
              {one.view}
            </button>
          ))}
          <button class="btn soft" onClick={onThink}>
            What if <span class="key">W</span>
          </button>
        </p>
      )}
    </section>
  );
}
