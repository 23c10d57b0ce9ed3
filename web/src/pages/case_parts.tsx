// What stands around a case: its bars explained, the pieces that wait, the piece in hand.
import { useState } from 'preact/hooks';
import { burns, Candle, MiniCandle } from '../core/check';
import { sheetOf } from '../core/route';
import type { CareAnswer, PlacedPiece, TablePiece } from '../core/types';

const bars = [[0.4, 'holds', 'of what it may have'], [0.9, 'near', 'near its end'], [1.4, 'broken', 'past it'], [null, 'ask', 'not known']] as const;
export function OfBars() {
  return (
    <p class="of-bars">
      Light by the last day:
      {bars.map(([share, state, words]) => (
        <span key={state}>
          <MiniCandle share={share} state={state} width={44} /> {words}
        </span>
      ))}
    </p>
  );
}

export function Waiting({ care, known, onSeat }: { care: CareAnswer; known: Map<string, TablePiece>; onSeat: (number: string) => void }) {
  const [open, set] = useState(8);
  if (care.waiting.length === 0) {
    return <p class="sub waits-none">Every piece of the show has a case.</p>;
  }
  return (
    <section class="waits-for" aria-label="Waiting for a place">
      <h2>
        Waiting for a place <small>{care.waiting.length === 1 ? '1 piece' : care.waiting.length + ' pieces'}</small>
      </h2>
      <ul class="waits">
        {care.waiting.slice(0, open).map((number) => (
          <li key={number}>
            <a href={sheetOf(number)}>{number}</a> {known.get(number)?.title}
            <button class="btn soft" onClick={() => onSeat(number)}>
              Seat it
            </button>
          </li>
        ))}
      </ul>
      {open < care.waiting.length && (
        <button class="btn soft" onClick={() => set(open + 24)}>
          {Math.min(24, care.waiting.length - open)} more
        </button>
      )}
    </section>
  );
}

export function Chosen({ row, onOut, still }: { row: PlacedPiece; onOut: () => void; still: boolean }) {
  return (
    <div class="held-piece">
      <p>
        <a href={sheetOf(row.number)}>{row.number}</a> {row.words}
      </p>
      <p class="row">
        {burns({ share: row.share, state: row.light }) && <Candle check={{ share: row.share, state: row.light, words: row.words }} width={180} />}
        {!still && (
          <button class="btn soft" onClick={onOut}>
            Take it out
          </button>
        )}
      </p>
    </div>
  );
}
