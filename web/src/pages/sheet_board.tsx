// The board of the Sheet: the words, the beads, a ribbon a piece of evidence, makers as studs.
import type { Axis } from '../core/geometry';
import { Beads, Stud, studRows, studsSpoken, yearsSpoken, Zigzag } from '../core/shapes';
import type { Answer, Evidence, Problem, SheetAnswer } from '../core/types';
import { Ribbon } from './ribbon';
import { Below } from './sheet_below';

export interface BoardProps {
  piece: SheetAnswer;
  ribbons: { main: Evidence[]; little: Evidence[] };
  x: (year: number) => number;
  axis: Axis;
  width: number;
  labels: number;
  lifted: number[];
  at: number;
  without: Answer | null;
  waiting: boolean;
  onLift: (i: number) => void;
  problem: Problem | null;
  since: string;
}

function Verdict({ piece, x, axis, width, labels, lifted, without, waiting }: BoardProps) {
  const year = piece.year;
  const narrow = labels === 0;
  const high = narrow ? 184 : 168;
  const base = narrow ? 160 : 148;
  return (
    <header class="verdict" style={{ height: high + 'px' }}>
      <div class="words">
        <p class="made">{piece.made || 'not dated'}</p>
        <p class="by clamp" title={piece.by}>
          {piece.by}
        </p>
        {!narrow && (
          <p class="tiny">
            {year ? `16 chances in 20: ${year.p10} to ${year.p90}` : 'No year can be said yet.'}
            <br />
            {piece.overruled ? `by ${piece.overruled}` : 'Words by the rule printed in the book'}
          </p>
        )}
      </div>
      <svg width={width} height={high} role="img" aria-label={yearsSpoken(piece.made, year, piece.misfits.length)}>
        {year && (
          <g class={waiting ? 'weigh' : ''}>
            {without?.year && <Beads years={without.year} x={x} y={base} radius={5.6} ghost high={narrow ? 62 : 112} />}
            <Beads years={year} x={x} y={base} radius={5.6} high={narrow ? 62 : 112} />
          </g>
        )}
      </svg>
      {lifted.length > 0 && (
        <p class="lifted" role="status" style={narrow ? {} : { left: Math.min(width - 230, x(Math.min(axis.y1 - 14, (without?.year ?? year)?.p90 ?? axis.y0) + 3)) + 'px' }}>
          {without ? (
            <>
              with {lifted.length === 1 ? 'this ribbon' : lifted.length + ' ribbons'} lifted off:
              <br />
              {without.made}
              {without.year && `, ${without.year.p10} to ${without.year.p90}`}
              {without.by !== piece.by && (
                <>
                  <br />
                  {without.by}
                </>
              )}
            </>
          ) : (
            'weighing'
          )}
        </p>
      )}
    </header>
  );
}

function Lines(props: BoardProps) {
  const { ribbons, x, axis, width, labels, lifted, at, onLift, piece } = props;
  const decades = [];
  for (let year = Math.ceil(axis.y0 / 10) * 10; year <= axis.y1; year += 10) {
    decades.push(year);
  }
  return (
    <ul class="ribbons" aria-label={`Evidence on ${piece.number}, most pull first`}>
      <svg class="decades" aria-hidden="true" width={width}>
        {decades.map((year) => (
          <path key={year} d={`M${x(year)} 0V2000`} stroke="var(--hair)" stroke-opacity=".7" />
        ))}
        {piece.year && <rect x={x(piece.year.p10)} y="0" width={Math.max(2, x(piece.year.p90) - x(piece.year.p10))} height="2000" fill="var(--tide)" opacity=".07" />}
      </svg>
      {ribbons.main.length === 0 && <li class="none">No evidence yet. The years are what the whole show would suggest.</li>}
      {ribbons.main.map((line, i) => {
        const up = lifted.includes(line.record) && line.record > 0;
        return (
          <li key={line.record + line.what} class={(up ? 'up' : '') + (line.torn ? ' rent' : '')}>
            <button aria-pressed={up} class={i === at ? 'walked' : ''} onClick={() => onLift(i)}>
              <span class="what" style={labels ? { width: labels + 'px' } : {}}>
                <b>{line.what}</b>
                <small>
                  <b>{line.words}</b> · {line.source}
                  {up && <span class="unseen">, lifted off</span>}
                </small>
              </span>
              <svg width={width} height={labels ? 56 : 76} aria-hidden="true">
                {line.alone && <Ribbon line={line} x={x} y={labels ? 28 : 57} lifted={up} from={labels ? labels + 10 : 4} to={width - 6} />}
              </svg>
            </button>
          </li>
        );
      })}
      {ribbons.little.length > 0 && (
        <li class="little">
          <details>
            <summary>and {ribbons.little.length} that move little</summary>
            <p>{ribbons.little.map((line) => line.what).join(' · ')}</p>
          </details>
        </li>
      )}
    </ul>
  );
}

function Makers({ piece, x, axis, width, labels }: BoardProps) {
  const { rows, others } = studRows(piece.makers);
  const r = labels && width > 760 ? 6.4 : 4.6;
  return (
    <section class="makers" aria-label={studsSpoken(rows)}>
      {rows.map((row) => (
        <div key={row.name}>
          <b style={labels ? { width: x(axis.y0) - 8 + 'px' } : { width: '150px' }}>{row.name}</b>
          <svg width={20 * (2 * r + 1.6)} height="16" aria-hidden="true">
            {Array.from({ length: row.count }, (_, i) => (
              <Stud key={i} kind={row.kind} x={r + 1 + i * (2 * r + 1.6)} y={8} r={r} />
            ))}
          </svg>
          <span>
            {row.count > 0 ? (
              <>
                <b>{row.count}</b> in 20
              </>
            ) : (
              'fewer than 1 in 20'
            )}
          </span>
        </div>
      ))}
      {others > 0 && <p class="tiny">and less than one for {others === 1 ? '1 other' : others + ' others'}</p>}
    </section>
  );
}

export function Board(props: BoardProps) {
  return (
    <section class="board" aria-label="Evidence and answer" tabIndex={0}>
      {props.problem && (
        <p class="torn stale">
          <Zigzag />
          <span>
            as of {props.since}; could not be reckoned since: {props.problem.what}
          </span>
        </p>
      )}
      <Verdict {...props} />
      <Lines {...props} />
      <Makers {...props} />
      <Below piece={props.piece} />
    </section>
  );
}
