// One variant: its thing through a lens, its words, its use as a fading band, its pieces as beads.
import { photo } from '../core/api';
import { xOf, type Axis } from '../core/geometry';
import { Fade, zigzag } from '../core/shapes';
import type { MakerSpan, Points, TablePiece, UseGroup, UseRow } from '../core/types';
import { heaps } from './years_order';
import { sizeOf } from './table_layout';

export interface Frame {
  axis: Axis;
  width: number;
  row: number; // height of a row
  words: number; // where the words begin
  lens: boolean; // room for the thing itself
  pxmm: number; // through the lens
  radius: number; // of a bead
  small: boolean;
}
// Beads whose year is known are solid; reckoned are rings; known but hidden are dashed rings.
function RowBeads({ row, frame, base, hide }: { row: UseRow; frame: Frame; base: number; hide: boolean }) {
  const r = frame.radius;
  const room = base - r - 8;
  return (
    <>
      {heaps(row.beads ?? [], (year) => xOf(frame.axis, year), r)
        .sort((a, b) => Number(!!a.bead.torn) - Number(!!b.bead.torn))
        .map(({ bead, x, up, of }) => {
        const cy = base - r - 3 - up * Math.min(2 * r, (room - r) / Math.max(1, of - 1));
        if (bead.torn) {
          return (
            <g key={bead.number}>
              {row.start && <path d={`M${x} ${base + 2.5}H${xOf(frame.axis, row.start.p50)}`} stroke="var(--rust)" stroke-dasharray="2 3" />}
              <circle cx={x} cy={cy} r={r - 0.3} fill="var(--rust)" />
              <path d={zigzag(x - 12, x + 12, base + 5, 5)} fill="none" stroke="var(--rust)" stroke-width="2.2" />
              {!frame.small && (
                <text x={x} y={base - 2 * r - 8} text-anchor={x > frame.width - 200 ? 'end' : 'start'} class="misfit">
                  {bead.number}: {bead.torn}
                </text>
              )}
            </g>
          );
        }
        return bead.known && !hide ? (
          <g key={bead.number}>
            <circle cx={x} cy={cy} r={r - 0.3} fill="var(--ink)" stroke="var(--paper)" stroke-width=".6" />
            <circle cx={x - r * 0.3} cy={cy - r * 0.3} r={r * 0.24} fill="var(--paper)" fill-opacity=".6" />
          </g>
        ) : (
          <circle key={bead.number} cx={x} cy={cy} r={r - 1} fill="var(--paper)" fill-opacity=".75" stroke="var(--ink)" stroke-width="1.4" stroke-dasharray={bead.known ? '2 1.6' : undefined} />
        );
      })}
    </>
  );
}

export const closer = 2; // marks are drawn larger than what carries them
export const viewOf = (part: string) => (/tip/i.test(part) ? 'tips' : /mark|stamp/i.test(part) ? 'mark' : /back|fitting|solder/i.test(part) ? 'back' : 'front');

// The middle of a photograph of one piece that has it, known ones first.
function Thing({ row, group, pieces, frame, id }: { row: UseRow; group: UseGroup; pieces: Map<string, TablePiece>; frame: Frame; id: string }) {
  const view = viewOf(group.part + ' ' + group.key);
  const beads = [...(row.beads ?? [])].sort((a, b) => Number(!!a.torn) - Number(!!b.torn) || Number(b.known) - Number(a.known));
  const shown = beads.map((bead) => pieces.get(bead.number)).find((piece) => piece?.pictures.some((one) => one.view === view));
  const picture = shown?.pictures.find((one) => one.view === view);
  const r = (frame.row - 8) / 2;
  const x = frame.words - r - 12;
  const mm = shown ? sizeOf(shown, view) : { w: 0, h: 0 };
  const k = frame.pxmm * (view === 'mark' ? closer : 1);
  return (
    <>
      <clipPath id={id}>
        <circle cx={x} cy={frame.row / 2} r={r} />
      </clipPath>
      {picture && shown && <image href={photo(shown.number, view, 512, picture.v)} x={x - (mm.w * k) / 2} y={frame.row / 2 - (mm.h * k) / 2} width={mm.w * k} height={mm.h * k} clip-path={`url(#${id})`} />}
      <circle cx={x} cy={frame.row / 2} r={r} fill="none" stroke="var(--ink)" stroke-width="1.1" stroke-dasharray={picture ? undefined : '3 3'} />
    </>
  );
}

// A lineage is a stroke from the first to the last; what merely stands together has none.
function Stroke({ x, first, last, high, ordered, on }: { x: number; first: boolean; last: boolean; high: number; ordered: boolean; on: boolean }) {
  return (
    <>
      {ordered && <path d={`M${x} ${first ? high / 2 : 0}V${last ? high / 2 : high}`} stroke="var(--ink)" stroke-width="1.5" />}
      {ordered && <circle cx={x} cy={high / 2} r="3.6" fill={on ? 'var(--ink)' : 'var(--table)'} stroke="var(--ink)" stroke-width="1.5" />}
    </>
  );
}

const countOf = (row: UseRow) => (row.pieces === 1 ? '1 piece' : row.pieces + ' pieces');
const alsoSpoken = (row: UseRow) => {
  const torn = (row.beads ?? []).filter((bead) => bead.torn).length;
  return `, the year of ${row.known} is known` + (torn ? `, ${torn} do not fit` : '');
};

interface RowProps {
  row: UseRow;
  group: UseGroup;
  at: number;
  frame: Frame;
  pieces: Map<string, TablePiece>;
  on: boolean;
  hide: boolean;
  id: string;
  onChoose: () => void;
}
export function VariantRow({ row, group, at, frame, pieces, on, hide, id, onChoose }: RowProps) {
  const high = frame.row;
  const base = high - (frame.small ? 10 : 13);
  const x = (year: number) => xOf(frame.axis, year);
  const band = on ? 7 : 5;
  return (
    <li>
      <button class={'variant' + (on ? ' on' : '')} aria-pressed={on} style={{ height: high + 'px' }} onClick={onChoose}>
        <svg width={frame.width} height={high} aria-hidden="true">
          <Stroke x={frame.lens ? 22 : 9} first={at === 0} last={at === group.rows.length - 1} high={high} ordered={group.ordered} on={on} />
          {frame.lens && <Thing row={row} group={group} pieces={pieces} frame={frame} id={id} />}
          {row.told.map((one, i) => (
            <path key={i} d={`M${x(one.from ?? frame.axis.y0)} ${base + 9}H${x(one.to ?? frame.axis.y1)}`} stroke="var(--tide)" stroke-width="2" stroke-dasharray="1 3" />
          ))}
          {row.use && <Fade chances={row.use} x={x} y={base} high={band} />}
          {row.start && row.end && <path d={`M${x(row.start.p50)} ${base - 2.4}v${band + 4.8}M${x(row.end.p50)} ${base - 2.4}v${band + 4.8}`} stroke="var(--ink)" stroke-width="1.6" />}
          <RowBeads row={row} frame={frame} base={base} hide={hide} />
        </svg>
        <span class="of" style={{ left: frame.words + 'px', width: frame.axis.x0 - frame.words - 12 + 'px' }}>
          <b>{row.value}</b>
          <small>
            {row.words}
            <span class="n"> · {countOf(row)}</span>
          </small>
          <span class="unseen">{alsoSpoken(row)}</span>
        </span>
      </button>
    </li>
  );
}

// A maker at work: two lines; a hard end is a stroke, an end that is not known fades.
export function SpanRow({ name, words, start, end, from, to, dashed, frame, id }: { name: string; words: string; start: Points; end: Points; from: number | null; to: number | null; dashed?: boolean; frame: Frame; id: string }) {
  const x = (year: number) => Math.max(frame.axis.x0 - 24, Math.min(frame.width - 4, xOf(frame.axis, year)));
  const x0 = x(from ?? start.p10);
  const x1 = Math.max(x0 + 8, x(to ?? end.p90));
  const middle = frame.small ? 13 : 15;
  const left = x1 + 200 > frame.width;
  const share = (year: number) => Math.max(0, Math.min(1, (x(year) - x0) / (x1 - x0)));
  return (
    <li class="maker-row" style={{ height: 2 * middle + 'px' }} aria-label={`${name}: ${words}`}>
      <b style={{ width: frame.axis.x0 - 36 + 'px' }}>{name}</b>
      <svg width={frame.width} height={2 * middle} aria-hidden="true">
        <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={x0} x2={x1} y1="0" y2="0">
          <stop offset="0" stop-color="var(--ink)" stop-opacity={from === null ? 0 : 1} />
          <stop offset={from === null ? share(start.p90) : 0} stop-color="var(--ink)" />
          <stop offset={to === null ? share(end.p10) : 1} stop-color="var(--ink)" />
          <stop offset="1" stop-color="var(--ink)" stop-opacity={to === null ? 0 : 1} />
        </linearGradient>
        {[-2.6, 2.6].map((off) => (
          <path key={off} d={`M${x0} ${middle + off}L${x1} ${middle + off + 0.01}`} stroke={`url(#${id})`} stroke-width="1.6" stroke-dasharray={dashed ? '7 4' : undefined} />
        ))}
        {from !== null && <path d={`M${x0} ${middle - 7}v14`} stroke="var(--ink)" stroke-width="1.8" />}
        {to !== null && <path d={`M${x1} ${middle - 7}v14`} stroke="var(--ink)" stroke-width="1.8" />}
        {!frame.small && (
          <text x={left ? x0 - 9 : x1 + 9} y={middle + 4.5} text-anchor={left ? 'end' : 'start'} class="aside">
            {words}
          </text>
        )}
      </svg>
    </li>
  );
}

export type Span = Pick<MakerSpan, 'name' | 'words' | 'start' | 'end' | 'from' | 'to'> & { dashed?: boolean };
