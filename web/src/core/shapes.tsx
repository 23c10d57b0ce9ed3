// Drawn marks: beads, studs, bands, ribbons, tears. Shape and place carry the meaning, never hue.
import { useId } from 'preact/hooks';
import { beads } from './geometry';
import type { Chance, YearChances, Years } from './types';
import { twenty } from './geometry';

export const zigzag = (x0: number, x1: number, y: number, rise = 2.2, step = 4) => {
  const n = Math.max(2, Math.round((x1 - x0) / step));
  const w = (x1 - x0) / n;
  let d = `M${x0.toFixed(1)} ${y.toFixed(1)}`;
  for (let i = 0; i < n; i++) {
    d += `l${w.toFixed(2)} ${i % 2 ? -rise : rise}`;
  }
  return d;
};

export function Zigzag() {
  return (
    <svg class="zz" width="26" height="18" aria-hidden="true">
      <path d="M1 13l4 -8l4 8l4 -8l4 8l4 -8l4 8" fill="none" stroke="var(--rust)" stroke-width="2.4" />
    </svg>
  );
}

interface BeadsProps {
  years: Years;
  x: (year: number) => number;
  y: number;
  radius?: number;
  ghost?: boolean;
  high?: number; // a taller heap is pressed together
}
export function Beads({ years, x, y, radius = 5.2, ghost, high = 110 }: BeadsProps) {
  const list = beads(years.q.map(x), radius);
  const colour = ghost ? 'var(--brass)' : 'var(--ink)';
  const first = list[0].x;
  const last = list[list.length - 1].x;
  return (
    <g>
      {!ghost && <path d={`M${first - radius * 3} ${y}H${last + radius * 3}`} stroke="var(--ink)" stroke-width="1.2" />}
      {list.map((bead, i) => {
        const cy = y - bead.heap * Math.min(2 * radius, high / bead.of);
        return ghost ? (
          <circle key={i} class="bead" cx={bead.x} cy={cy} r={radius - 0.6} fill="none" stroke={colour} stroke-width="1.2" stroke-dasharray="2 1.6" />
        ) : (
          <g key={i}>
            <circle class="bead" cx={bead.x} cy={cy} r={radius - 0.35} fill={colour} stroke="var(--paper)" stroke-width=".8" />
            <circle class="bead" cx={bead.x - radius * 0.3} cy={cy - radius * 0.3} r={radius * 0.24} fill="var(--paper)" fill-opacity=".6" />
          </g>
        );
      })}
      {!ghost && <path d={`M${x(years.p10)} ${y + 7}v8M${x(years.p90)} ${y + 7}v8`} stroke="var(--ink)" stroke-width="2" />}
    </g>
  );
}

export const yearsSpoken = (made: string, years: Years | null, torn = 0) =>
  `Year: ${made}.` +
  (years ? ` 16 chances in 20 between ${years.p10} and ${years.p90}.` : '') +
  (torn === 1 ? ' One thing does not fit.' : torn > 1 ? ` ${torn} things do not fit.` : '');

// Chances of years as ink that fades, never as a silhouette.
interface FadeProps {
  chances: YearChances;
  x: (year: number) => number;
  y: number;
  high: number;
  ink?: string;
}
export function Fade({ chances, x, y, high, ink = 'var(--ink)' }: FadeProps) {
  const id = useId();
  const { from, p } = chances;
  const x0 = x(from - 0.5);
  const x1 = Math.max(x(from + p.length - 0.5), x0 + 3);
  const step = Math.max(1, Math.ceil(p.length / 24));
  const stops = [];
  for (let i = 0; i < p.length; i += step) {
    const peak = Math.max(...[...p.slice(i, i + step)].map(Number));
    stops.push(<stop key={i} offset={(i + step / 2) / p.length} stop-color={ink} stop-opacity={0.05 + (0.8 * peak) / 9} />);
  }
  return (
    <>
      <linearGradient id={id} gradientUnits="userSpaceOnUse" x1={x0} x2={x1} y1="0" y2="0">
        {stops}
      </linearGradient>
      <rect x={x0} y={y} width={x1 - x0} height={high} fill={`url(#${id})`} />
    </>
  );
}

// A band that fades with the chance of each year; strokes at the 10 and 90 points, a lozenge at
// the middle.
interface BandProps {
  years: Years;
  x: (year: number) => number;
  y: number;
  high: number;
  torn?: boolean;
  colour?: string;
  lozenge?: boolean;
  strokes?: boolean;
}
export function FadeBand({ years, x, y, high, torn, colour = 'var(--ink)', lozenge = true, strokes = true }: BandProps) {
  const ink = torn ? 'var(--rust)' : colour;
  const middle = x(years.p50);
  const z = Math.max(2.3, high / 2 + 0.6);
  return (
    <g>
      <Fade chances={years} x={x} y={y} high={high} ink={ink} />
      {strokes && <path d={`M${x(years.p10)} ${y - 1.5}v${high + 3}M${x(years.p90)} ${y - 1.5}v${high + 3}`} stroke={ink} stroke-width="1.3" />}
      {lozenge && (
        <path d={`M${middle} ${y + high / 2 - z - 1}l${z} ${z + 1}l${-z} ${z + 1}l${-z} ${-z - 1}z`} fill={ink} stroke="var(--paper)" stroke-width=".8" />
      )}
      {torn && <path d={zigzag(x(years.p10), x(years.p90), y + high + 1)} fill="none" stroke="var(--rust)" stroke-width="1.1" />}
    </g>
  );
}

export type StudKind = 'solid' | 'half' | 'cross' | 'ring' | 'open';
export const studKinds: StudKind[] = ['solid', 'cross', 'half', 'ring'];
export function Stud({ kind, x, y, r }: { kind: StudKind; x: number; y: number; r: number }) {
  if (kind === 'solid') {
    return <circle cx={x} cy={y} r={r} fill="var(--ink)" />;
  }
  if (kind === 'open') {
    return <circle cx={x} cy={y} r={r - 0.9} fill="none" stroke="var(--ink)" stroke-width="1.5" stroke-dasharray="2.6 1.8" />;
  }
  return (
    <g>
      <circle cx={x} cy={y} r={r - 0.7} fill="var(--paper)" stroke="var(--ink)" stroke-width="1.4" />
      {kind === 'half' && <path d={`M${x - r} ${y}a${r} ${r} 0 0 0 ${2 * r} 0z`} fill="var(--ink)" />}
      {kind === 'cross' && (
        <path d={`M${x - r / 2} ${y - r / 2}L${x + r / 2} ${y + r / 2}M${x + r / 2} ${y - r / 2}L${x - r / 2} ${y + r / 2}`} stroke="var(--ink)" stroke-width="1.6" />
      )}
    </g>
  );
}

export interface StudRow {
  name: string;
  count: number;
  kind: StudKind;
}
// Rows of twenty studs: named makers, then the unrecorded hand, which is always there.
export function studRows(makers: Chance[]): { rows: StudRow[]; others: number } {
  const counts = twenty(makers);
  const named = counts.filter(([name, n]) => name !== null && n > 0);
  const rows: StudRow[] = named.map(([name, count], i) => ({ name: name as string, count, kind: studKinds[Math.min(i, 3)] }));
  const hand = counts.find(([name]) => name === null);
  rows.push({ name: 'Unrecorded hand', count: hand ? hand[1] : 20, kind: 'open' });
  return { rows, others: counts.filter(([name, n]) => name !== null && n === 0).length };
}
export const studsSpoken = (rows: StudRow[]) => 'Maker: ' + rows.map((row) => `${row.name} ${row.count} in 20`).join(', ') + '.';

// All twenty in one line, for a slip.
export function StudLine({ makers, width }: { makers: Chance[]; width: number }) {
  const { rows, others } = studRows(makers);
  const r = Math.min(5.4, (width - rows.length * 9) / 20 / 2 - 0.8);
  const marks: preact.JSX.Element[] = [];
  const names: preact.JSX.Element[] = [];
  let x = r;
  let room = 0;
  const ends = rows.map((row) => row.count > 0).lastIndexOf(true);
  rows.forEach((row, n) => {
    const start = x;
    for (let i = 0; i < row.count; i++, x += 2 * r + 1.6) {
      marks.push(<Stud key={n + '.' + i} kind={row.kind} x={x} y={8} r={r} />);
    }
    const short = row.name === 'Unrecorded hand' ? 'unrec.' : row.name.split(' ').slice(-1)[0];
    const last = n === ends;
    const at = last ? width : Math.max(start - r, room);
    if (row.count > 0 && (last || at < width - 110)) {
      names.push(
        <text key={n} x={at} y={34} text-anchor={last ? 'end' : 'start'} style={{ fontSize: '12.5px', fontWeight: n ? 400 : 600 }}>
          {short} {row.count}
        </text>,
      );
    }
    room = at + 7 * (short.length + 4);
    x += 8;
  });
  return (
    <>
      <svg width={width} height="40" role="img" aria-label={studsSpoken(rows)}>
        {marks}
        {names}
      </svg>
      {others > 0 && <p class="tiny">and less than one for {others === 1 ? '1 other' : others + ' others'}</p>}
    </>
  );
}

// Years of one piece on a short rule of its own.
export function BeadChart({ made, years, width, torn }: { made: string; years: Years | null; width: number; torn?: number }) {
  if (!years) {
    return (
      <svg width={width} height="94" role="img" aria-label="No year can be said yet.">
        <path d={`M8 58H${width - 8}`} stroke="var(--ink-3)" stroke-dasharray="4 3" />
        <text x={width / 2} y="80" text-anchor="middle" style={{ fontSize: '12.5px' }}>
          no year can be said yet
        </text>
      </svg>
    );
  }
  const reach = Math.max(7, (years.q[19] - years.q[0]) / 2 + 4);
  const y0 = Math.round((years.q[0] + years.q[19]) / 2 - reach);
  const y1 = Math.round((years.q[0] + years.q[19]) / 2 + reach);
  const k = (width - 16) / (y1 - y0);
  const x = (year: number) => 8 + (year - y0) * k;
  const every = k > 20 ? 1 : k > 9 ? 2 : 5;
  const marks = [];
  for (let year = Math.ceil(y0 / every) * every; year <= y1; year += every) {
    const label = k > 24 ? year % 5 === 0 : year % 10 === 0;
    marks.push(
      <g key={year}>
        <path d={`M${x(year)} 66v${label ? 8 : 5}`} stroke="var(--ink-2)" />
        {label && x(year) > 18 && x(year) < width - 18 && (
          <text x={x(year)} y="88" text-anchor="middle" class="yr">
            {year}
          </text>
        )}
      </g>,
    );
  }
  return (
    <svg width={width} height="94" role="img" aria-label={yearsSpoken(made, years, torn)}>
      <Beads years={years} x={x} y={54} high={46} />
      {marks}
    </svg>
  );
}
