// The chosen variant in words, and whether the years may be trusted, in twenty steps.
import { useState } from 'preact/hooks';
import { asProblem, call } from '../core/api';
import { tellProblem } from '../core/tell';
import { go } from '../core/route';
import type { Calibration, UseGroup, UseRow } from '../core/types';
import { hand } from './table_filter';
import { stair, titleOf } from './years_order';

const likely = 18; // the step that is counted out

function Stair({ of, cell }: { of: number[]; cell: number }) {
  const pad = 30;
  const low = 20 * cell + 4;
  const px = (i: number) => pad + i * cell;
  const py = (v: number) => low - v * cell;
  const line = (height: (i: number) => number) => of.slice(1).reduce((d, _, i) => `${d}V${py(height(i + 1))}H${px(i + 1)}`, `M${px(0)} ${low}`);
  return (
    <svg width={px(20) + 12} height={low + 24} role="img" aria-label={`Calibration in twenty steps: of 20 said to be likely, ${of[likely]} were.`}>
      {[0, 5, 10, 15, 20].map((i) => (
        <g key={i}>
          <path d={`M${px(i)} ${low}V${py(20)}M${px(0)} ${py(i)}H${px(20)}`} stroke="var(--hair)" />
          <text class="yr" x={px(i)} y={low + 18} text-anchor="middle">
            {i}
          </text>
          {i > 0 && (
            <text class="yr" x={pad - 7} y={py(i) + 5} text-anchor="end">
              {i}
            </text>
          )}
        </g>
      ))}
      <path d={line((i) => of[i]) + `V${low}Z`} fill="var(--ink)" fill-opacity=".1" />
      <path d={line((i) => i)} fill="none" stroke="var(--ink-3)" stroke-width="1.3" stroke-dasharray="3 2.5" />
      <path d={line((i) => of[i])} fill="none" stroke="var(--ink)" stroke-width="2.4" />
      <rect x={px(likely - 1)} y={py(of[likely])} width={cell} height={of[likely] * cell} fill="var(--ink)" fill-opacity=".8" />
      {[...Array(of[likely])].map((_, i) => (
        <circle key={i} cx={px(likely - 1) + cell / 2} cy={py(i) - cell / 2} r={cell * 0.34} fill="var(--paper)" />
      ))}
    </svg>
  );
}

function Trust({ calibration, small }: { calibration: Calibration | null; small: boolean }) {
  const [busy, set] = useState(false);
  const run = async () => {
    set(true);
    try {
      await call('calibrate', {});
      go('/years', true);
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
    set(false);
  };
  if (!calibration) {
    return (
      <div class="trust">
        <h2>Not tried yet</h2>
        <p class="sub">Known years can be hidden and found again, to see whether the odds may be trusted. It takes some minutes.</p>
        <p class="row">
          <button class="btn soft" aria-disabled={busy} onClick={() => !busy && void run()}>
            {busy ? 'Hiding and finding' : 'Hide and find again'}
          </button>
        </p>
      </div>
    );
  }
  const of = stair(calibration.steps);
  return (
    <div class="trust">
      <h2>
        Of 20 said to be likely, {of[likely]} were
      </h2>
      <p class="tiny">
        Across: said, of 20. Up: came true, of 20. Dashes are a perfect word.
        {calibration.stale && ` As of ${calibration.at}; the show has changed since.`}
      </p>
      {!small && <Stair of={of} cell={12} />}
      <p class="sub">
        {calibration.n_years} known years were hidden and found again; the typical miss is {Math.round(10 * calibration.median_error) / 10} years. {calibration.verdict[0]}
      </p>
    </div>
  );
}

function Told({ row }: { row: UseRow }) {
  return (
    <>
      {row.told.map((one) => (
        <p class="sub" key={one.source}>
          {one.source}: {one.from !== null && `from ${one.from}`} {one.to !== null && `to ${one.to}`}
        </p>
      ))}
    </>
  );
}

// How often it was used among all on which the character was seen, in each decade, of twenty.
function Decades({ row }: { row: UseRow }) {
  const list = row.decades.filter((one) => one.of >= 1);
  if (list.length === 0) {
    return null;
  }
  return (
    <dl class="decades-of">
      {list.map((one) => (
        <div key={one.year}>
          <dt>{one.year}s</dt>
          <dd>
            <i style={{ width: `${(100 * one.pieces) / one.of}%` }} />
          </dd>
          <dd>{Math.round((20 * one.pieces) / one.of)} in 20</dd>
        </div>
      ))}
    </dl>
  );
}

export function YearsSlip({ row, group, calibration, known, alone, small, onAlone }: { row: UseRow | null; group: UseGroup | null; calibration: Calibration | null; known: number; alone: boolean; small: boolean; onAlone: () => void }) {
  const show = () => {
    hand(`${row!.value} (${titleOf(group!)})`, (row!.beads ?? []).map((bead) => bead.number));
    go('/table?handed=1');
  };
  return (
    <aside class="slip side cal" aria-label="Chosen row" tabIndex={0}>
      {row && group && (
        <div>
          <p class="tiny">{titleOf(group)}</p>
          <h2>{row.value}</h2>
          <p class="made">{row.words}</p>
          {row.start && row.end && (
            <p class="sub">
              Begins between {row.start.p10} and {row.start.p90}, ends between {row.end.p10} and {row.end.p90}, 16 chances in 20.
            </p>
          )}
          {!small && <Told row={row} />}
          {!small && <Decades row={row} />}
          <p class="row">
            <button class="btn main" onClick={show}>
              {row.pieces === 1 ? 'Show its piece' : `Show its ${row.pieces} pieces`}
            </button>
            <button class="btn soft" onClick={onAlone}>
              {alone ? 'All of them' : 'Only this'} <span class="key">↵</span>
            </button>
          </p>
          <hr class="rule" />
        </div>
      )}
      {calibration || known > 0 ? <Trust calibration={calibration} small={small} /> : <p class="sub">Once years of some pieces are known by themselves, they can be hidden and found again, to see whether the odds may be trusted.</p>}
    </aside>
  );
}
