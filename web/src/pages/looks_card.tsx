// A piece on the clock of the day: what to look at on it, and the years now over the years that
// the look should leave.
import { photo } from '../core/api';
import { xOf, type Axis } from '../core/geometry';
import { bitsOf, narrows } from '../core/next_looks';
import { sheetOf } from '../core/route';
import type { Look, TablePiece } from '../core/types';
import { after, clock, type Card } from './looks_plan';

function Narrowing({ look, axis, off, high }: { look: Look; axis: Axis; off: number; high: number }) {
  const then = after(look);
  const x = (year: number) => xOf(axis, year) - off;
  const band = (from: number, middle: number, to: number, y: number, thick: number, strong: number) => (
    <g>
      <rect x={from} y={y} width={Math.max(2, to - from)} height={thick} fill="var(--ink)" fill-opacity={strong} />
      <path d={`M${from} ${y - 3}v${thick + 6}M${to} ${y - 3}v${thick + 6}`} stroke="var(--ink)" stroke-width="1.4" />
      <path d={`M${middle} ${y - 2}l3 ${thick / 2 + 2}l-3 ${thick / 2 + 2}l-3 -${thick / 2 + 2}z`} fill="var(--ink)" />
    </g>
  );
  const top = Math.max(6, high / 2 - 17);
  const low = top + 22;
  return (
    <svg class="narrowing" height={high} role="img" aria-label={`now ${look.p10} to ${look.p90}` + (then ? `; expected ${Math.round(then.p10)} to ${Math.round(then.p90)}` : '')}>
      {band(x(look.p10), x(look.p50), x(look.p90), top, 5, 0.3)}
      {then && (
        <g>
          <path d={`M${x(look.p10)} ${top + 8}L${x(then.p10)} ${low - 3}M${x(look.p90)} ${top + 8}L${x(then.p90)} ${low - 3}`} stroke="var(--ink)" stroke-opacity=".5" stroke-dasharray="2 2" />
          {band(x(then.p10), x(then.p50), x(then.p90), low, 7, 0.75)}
        </g>
      )}
    </svg>
  );
}

interface LookCardProps {
  card: Card;
  piece: TablePiece | undefined;
  torn: boolean;
  on: boolean;
  done: boolean;
  high: number;
  top: number | null; // null: as it comes, on a phone
  axis: Axis | null;
  off: number; // where the card begins on the page
  onFocus: () => void;
  onDone: () => void;
}

export function LookCard({ card, piece, torn, on, done, high, top, axis, off, onFocus, onDone }: LookCardProps) {
  const front = piece?.pictures.find((picture) => picture.view === 'front');
  const [first, ...rest] = card.looks;
  const fine = `${first.part ? first.part + '; ' : ''}${bitsOf(first.gain_bits)}; ${narrows(first.gain_years)}`;
  return (
    <div
      class={'look-card' + (on ? ' on' : '') + (done ? ' done' : '') + (torn ? ' torn-card' : '')}
      tabIndex={0}
      role="group"
      aria-label={`${clock(card.start)}: ${card.number}, ${card.looks.map((look) => look.label).join(', ')}`}
      onFocus={onFocus}
      style={top === null ? { minHeight: high + 'px' } : { top: top + 'px', height: high + 'px' }}
    >
      <span class="thumb">{front && <img src={photo(card.number, 'front', 128, front.v)} style={{ maxHeight: Math.min(76, high - 10) + 'px' }} alt="" />}</span>
      <div class="of">
        <p class="what">{card.looks.map((look) => look.label).join('; ')}</p>
        <p>
          <b>{card.number}</b> · {piece?.title ?? ''}
        </p>
        {(top === null || high > 66) && !done && <small>{fine}</small>}
        {high > 100 && !done && rest.map((look) => <small key={look.character}>{`${look.label}: ${bitsOf(look.gain_bits)}`}</small>)}
      </div>
      {axis && !done && <Narrowing look={first} axis={axis} off={off} high={top === null ? 54 : high - 2} />}
      <span class="minutes">{Math.round(card.minutes)} min</span>
      <div class="do">
        <button class="btn soft" aria-pressed={done} onClick={onDone}>
          {done ? 'Not done' : 'Done'}
        </button>
        <a class="btn soft" href={sheetOf(card.number)}>
          Sheet
        </a>
      </div>
    </div>
  );
}
