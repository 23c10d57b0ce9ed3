// What stands under the ribbons: what does not fit, what is alike, what was seen and told, and
// what was done to the record.
import { useAsk } from '../core/hooks';
import { NextLooks } from '../core/next_looks';
import { sheetOf } from '../core/route';
import { Zigzag } from '../core/shapes';
import { undo } from '../core/undo';
import type { SheetAnswer } from '../core/types';
import { Care } from './sheet_care';

const inTwenty = (p: number) => Math.round(20 * p);

function Seen({ piece }: { piece: SheetAnswer }) {
  const rows = new Map<string, string[]>();
  for (const one of piece.observations) {
    rows.get(one.label)?.push(one.value) ?? rows.set(one.label, [one.value]);
  }
  return (
    <details>
      <summary>
        {piece.observations.length} observations{piece.notes.length > 0 && `, ${piece.notes.length} as typed`}
      </summary>
      <dl class="seen">
        {[...rows].map(([label, values]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{values.join(', ')}</dd>
          </div>
        ))}
        {piece.notes.map((note, i) => (
          <div key={'n' + i}>
            <dt>{note.heading || 'Noted'}</dt>
            <dd>{note.text}</dd>
          </div>
        ))}
        {piece.marks.map((mark, i) => (
          <div key={'m' + i}>
            <dt>Mark</dt>
            <dd>
              {mark.text} {mark.place && `(${mark.place})`}
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

function Told({ piece }: { piece: SheetAnswer }) {
  const count = piece.claims.length + piece.events.length;
  if (count === 0) {
    return null;
  }
  return (
    <details>
      <summary>
        {piece.claims.length} told, {piece.events.length} events
      </summary>
      <ul class="told-list">
        {piece.claims.map((claim, i) => (
          <li key={i} class={claim.against ? 'against' : 'for'}>
            "{claim.text}" <small>{claim.source}</small>
          </li>
        ))}
        {piece.events.map((event, i) => (
          <li key={'e' + i}>
            {event.date}: {[event.text, event.party, event.place].filter(Boolean).join(', ')}
          </li>
        ))}
      </ul>
    </details>
  );
}

function History({ number }: { number: string }) {
  const { data } = useAsk('history', { number });
  return (
    <details>
      <summary>history{data ? ` ${data.length}` : ''}</summary>
      <ul class="told-list">
        {(data ?? []).map((entry) => (
          <li key={entry.position} class="step">
            <span class={entry.undone_by ? 'struck' : ''}>
              {entry.at} · {entry.who}: {entry.operation}, {entry.summary.slice(0, 120)}
            </span>
            {entry.undone_by ? (
              <small>taken back</small>
            ) : (
              <button class="btn soft" onClick={() => void undo(entry.position)}>
                Undo
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

export function Below({ piece }: { piece: SheetAnswer }) {
  return (
    <div class="below">
      <div>
        {piece.misfits.length === 0 && <p class="sub">Nothing on this piece speaks against the rest.</p>}
        {piece.misfits.slice(0, 3).map((misfit) => (
          <div key={misfit.what} class="misfit">
            <p class="torn">
              <Zigzag />
              <span>Does not fit: {misfit.what}</span>
            </p>
            <p class="sub">{inTwenty(misfit.p)} chances in 20. Set aside, not thrown away.</p>
          </div>
        ))}
        <NextLooks of={piece.number} most={3} />
      </div>
      <div>
        <h2>Most like it</h2>
        <ul class="alike">
          {piece.alike.map((one) => (
            <li key={one.number}>
              <a href={sheetOf(one.number)}>{one.number}</a> {one.title}
              <small>{one.why.slice(0, 3).join(', ')}</small>
            </li>
          ))}
        </ul>
      </div>
      <Care number={piece.number} />
      <div class="more-of-it">
        <Seen piece={piece} />
        <Told piece={piece} />
        <History number={piece.number} />
      </div>
    </div>
  );
}
