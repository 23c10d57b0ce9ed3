// The try square: years along the top, millimetres (or what a page measures) down the side.
import { useEffect, useMemo, useState } from 'preact/hooks';
import { ticks, xOf, type Axis } from './geometry';

export interface Rule {
  axis: Axis | null; // none: dashed, no years yet
  flag: number | null;
  words: string;
  top?: { unit: string; pxmm: number; x0?: number; to?: number }; // where the top measures millimetres
  side: { unit: string; px: number; step: number; label: number; from?: number; to?: number; off?: number; dashed?: boolean; text?: (v: number) => string } | null;
}
const bareRule: Rule = { axis: null, flag: null, words: '', side: null };

// What the page measures; the square follows. Only the square is drawn anew, never the page: it
// moves in every frame of a pan.
let latest = bareRule;
let follow: (rule: Rule) => void = () => undefined;
export function useRule(rule: Rule) {
  const key = JSON.stringify(rule);
  useEffect(() => {
    latest = rule;
    follow(rule);
  }, [key]);
}

function YearLimb({ axis, flag, width }: { axis: Axis; flag: number | null; width: number }) {
  // A pan down leaves it as it is.
  return useMemo(() => yearMarks(axis, flag, width), [axis.x0, axis.y0, axis.y1, axis.k, flag, width]);
}

function yearMarks(axis: Axis, flag: number | null, width: number) {
  return (
    <>
      {ticks(axis, width, flag).map(({ year, length, number }) => {
        const x = xOf(axis, year);
        return (
          <g key={year}>
            <path d={`M${x + 0.8} 44v${-length}`} stroke="var(--glint)" stroke-opacity=".4" />
            <path d={`M${x} 44v${-length}`} stroke="var(--ink)" stroke-width={length === 18 ? 1.4 : 0.9} stroke-opacity={length === 18 ? 1 : 0.72} />
            {number && (
              <text x={x} y={21} text-anchor="middle" style={{ fontWeight: length === 18 ? 700 : 400 }}>
                {year}
              </text>
            )}
          </g>
        );
      })}
      {flag !== null && (
        <g transform={`translate(${xOf(axis, flag)} 0)`}>
          <path d="M-21 3h42v17h-16l-5 5l-5 -5h-16z" fill="var(--ink)" />
          <text y="16" text-anchor="middle" style={{ fill: 'var(--paper)', fontWeight: 700 }}>
            {Math.round(flag)}
          </text>
          <path d="M0 44V25" stroke="var(--ink)" />
        </g>
      )}
    </>
  );
}

function TopMillimetres({ unit, pxmm, width, x0 = 0, to = Infinity }: { unit: string; pxmm: number; width: number; x0?: number; to?: number }) {
  const step = pxmm > 1.6 ? 10 : pxmm > 0.5 ? 20 : 50;
  const label = step * 5;
  const marks = [];
  for (let mm = 0; x0 + mm * pxmm < width && mm <= to; mm += step) {
    const big = mm % label === 0;
    const x = x0 + mm * pxmm;
    marks.push(
      <g key={mm}>
        <path d={`M${x} 44v${big ? -18 : -8}`} stroke="var(--ink)" stroke-width={big ? 1.4 : 0.9} stroke-opacity={big ? 1 : 0.72} />
        {big && (mm > 0 || x0 > 0) && x < width - 40 - 8 * unit.length && (
          <text x={x} y={21} text-anchor="middle">
            {mm}
          </text>
        )}
      </g>,
    );
  }
  return (
    <>
      {marks}
      <text x={width - 14} y={21} text-anchor="end" style={{ fill: 'var(--ink-2)' }}>
        {unit}
      </text>
    </>
  );
}

type Side = NonNullable<Rule['side']>;

// From the first mark on, as far as `reach` pixels.
function sideMarks({ px, step, label, from = 0, dashed, text }: Side, reach: number) {
  const marks = [];
  for (let i = 0; i * step * px <= reach && i < 2000; i++) {
    const y = i * step * px;
    const value = from + i * step;
    const big = value % label === 0;
    marks.push(
      <g key={i}>
        <path d={`M34 ${y + 0.8}h${big ? -15 : -8}`} stroke="var(--glint)" stroke-opacity=".4" />
        <path d={`M34 ${y}h${big ? -15 : -8}`} stroke="var(--ink)" stroke-width={big ? 1.3 : 0.8} stroke-opacity={big ? 1 : 0.7} stroke-dasharray={dashed ? '3 2' : undefined} />
        {big && (
          <text transform={`translate(13 ${y}) rotate(-90)`} text-anchor="middle">
            {text ? text(value) : value}
          </text>
        )}
      </g>,
    );
  }
  return marks;
}

// A pan moves the marks as a whole; they are drawn anew only when they run out.
function SideLimb({ side, height }: { side: Side; height: number }) {
  const { unit, px, step, label, from = 0, to, off = 0, dashed } = side;
  const reach = to === undefined ? height + 400 * Math.ceil(Math.max(0, -off) / 400) : (to - from) * px;
  const marks = useMemo(() => sideMarks(side, reach), [px, step, label, from, dashed, reach]);
  return (
    <svg role="img" aria-label={'Side rule, ' + (unit || 'the time of day')}>
      <g style={{ transform: `translateY(${off}px)` }}>{marks}</g>
      {unit && <rect x="0" y={height - 64} width="20" height="64" fill="color-mix(in srgb,var(--steel-1),var(--steel-2) 30%)" />}
      <text transform={`translate(13 ${height - 22}) rotate(-90)`} style={{ fill: 'var(--ink-2)' }}>
        {unit}
      </text>
    </svg>
  );
}

export function Square({ title, onMenu, menuOpen }: { title: string; onMenu: () => void; menuOpen: boolean }) {
  const [rule, setRule] = useState(latest);
  useEffect(() => {
    follow = setRule;
    setRule(latest);
    return () => void (follow = () => undefined);
  }, []);
  const [size, set] = useState({ w: innerWidth, h: innerHeight });
  useEffect(() => {
    const read = () => set({ w: innerWidth, h: innerHeight });
    addEventListener('resize', read);
    return () => removeEventListener('resize', read);
  }, []);
  const phone = size.w <= 600;
  const width = size.w - (phone ? 0 : 34);
  const axis = rule.axis;
  const name = rule.top
    ? 'Top rule, ' + rule.top.unit
    : axis
      ? `Year rule, ${Math.round(axis.y0)} to ${Math.round(axis.y1)}` + (rule.flag !== null ? `, at ${Math.round(rule.flag)}` : '')
      : 'Year rule: no years yet';
  return (
    <>
      <button class="corner" aria-label={title + ': show menu'} aria-expanded={menuOpen} onClick={onMenu}>
        <svg width="26" height="26" viewBox="0 0 26 26" aria-hidden="true">
          <path d="M3 3H23V9H9V23H3Z" fill="none" stroke="var(--ink)" stroke-width="1.7" />
          <path d="M9 6v3M13 6v3M17 6v3M6 13h3M6 17h3" stroke="var(--ink)" stroke-width="1.1" />
          <circle cx="17.5" cy="17.5" r="3.4" fill="var(--brass-hi)" stroke="var(--ink)" stroke-width="1.2" />
        </svg>
      </button>
      <div class="limb">
        <svg role="img" aria-label={name}>
          {rule.top ? (
            <TopMillimetres {...rule.top} width={width} />
          ) : axis ? (
            <YearLimb axis={axis} flag={rule.flag} width={width} />
          ) : (
            <path d={`M16 35H${width - 16}`} stroke="var(--ink-2)" stroke-dasharray="9 7" />
          )}
          {(!phone || !axis) && !rule.top && (
            <text x={14} y={21} style={{ fill: 'var(--ink-2)', fontWeight: 400 }}>
              {rule.words}
            </text>
          )}
        </svg>
      </div>
      <div class="limbl">{rule.side && !phone && <SideLimb side={rule.side} height={size.h - 100} />}</div>
    </>
  );
}
