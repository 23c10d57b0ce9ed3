// What a piece may be made of: readings of the bench in, candidates as studs out, and the next
// reading that would decide. Nothing is kept.
import { useEffect, useState } from 'preact/hooks';
import { asProblem, call } from '../core/api';
import { Stud, studKinds } from '../core/shapes';
import type { Identified, Problem } from '../core/types';

// Asks 300 ms after the last key; the last question wins.
function useIdentified(number: string, line: string, on: boolean): { found: Identified | null; problem: Problem | null } {
  const [found, set] = useState<Identified | null>(null);
  const [problem, fail] = useState<Problem | null>(null);
  useEffect(() => {
    if (!on) {
      return;
    }
    let mine = true;
    const timer = setTimeout(() => {
      call('identify', { words: [number, ...pairsOf(line)] })
        .then((answer) => mine && (set(answer), fail(null)))
        .catch((fault) => mine && fail(asProblem(fault)));
    }, line ? 300 : 0);
    return () => {
      mine = false;
      clearTimeout(timer);
    };
  }, [number, line, on]);
  return { found, problem };
}

// "air_g 31.2; water_g=28.4" as the words that the operation takes.
export const pairsOf = (line: string): string[] =>
  line
    .split(';')
    .map((part) => part.trim().match(/^(\w+)\s*[=:\s]\s*(.+)$/))
    .flatMap((found) => (found ? [`${found[1]}=${found[2].trim()}`] : []));

function Candidates({ found }: { found: Identified }) {
  const rows = found.candidates
    .map((one) => ({ ...one, count: Math.round(20 * one.p) }))
    .filter((one) => one.count > 0)
    .slice(0, 6);
  return (
    <ul class="candidates">
      {rows.map((row, n) => (
        <li key={row.material}>
          <b>{row.material}</b>
          <svg width={20 * 12 + 2} height="14" aria-hidden="true">
            {Array.from({ length: row.count }, (_, i) => (
              <Stud key={i} kind={studKinds[Math.min(n, 3)]} x={6 + i * 12} y={7} r={5} />
            ))}
          </svg>
          <span>{row.count} in 20</span>
        </li>
      ))}
      {rows.length === 0 && <li class="sub">No material stands out: less than 1 in 20 each.</li>}
    </ul>
  );
}

export function Bench({ number }: { number: string }) {
  const [open, setOpen] = useState(false);
  const [line, type] = useState('');
  const { found, problem } = useIdentified(number, line, open);
  return (
    <details class="bench" onToggle={(event) => setOpen((event.target as HTMLDetailsElement).open)}>
      <summary>What it may be made of: readings of the bench</summary>
      <input aria-label={`Readings of the bench for ${number}`} value={line} placeholder="air_g=31.24; water_g=28.31; uv_long=inert" onInput={(event) => type((event.target as HTMLInputElement).value)} autocomplete="off" spellcheck={false} />
      <div role="status">
        {problem && (
          <p class="sub">
            {problem.what}. {problem.fix}
          </p>
        )}
        {found && !problem && (
          <>
            <Candidates found={found} />
            {found.excluded.length > 0 && <p class="sub">Ruled out: {found.excluded.length} others.</p>}
            {found.next.length > 0 && (
              <p class="next">
                <b>Next at the bench: {found.next[0].words}</b>
                <br />
                {found.next[0].minutes} minutes; harm: {found.next[0].harm}; settles {found.next[0].gain_bits.toFixed(1)} bits
                {found.next.length > 1 && `. Else: ${found.next.slice(1, 4).map((one) => one.words).join(', ')}`}
              </p>
            )}
            {[...found.refused.map((one) => 'Refused: ' + one), ...found.notes].map((one) => (
              <p class="sub" key={one}>
                {one}
              </p>
            ))}
            <p class="tiny">
              Never: {found.never.join(', ')}. {found.caution}
            </p>
          </>
        )}
      </div>
    </details>
  );
}
