// Years: when each variant was in use, as far as the pieces tell.
import { useMemo, useState } from 'preact/hooks';
import { usualDots, xOf, type Axis } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Pick, ProblemSlip, Sentence } from '../core/parts';
import { Zigzag } from '../core/shapes';
import { useRule } from '../core/square';
import type { UseGroup, UseRow, YearsAnswer } from '../core/types';
import { chosenGroups, idOf, titleOf } from './years_order';
import { SpanRow, VariantRow, viewOf, type Frame, type Span } from './years_row';
import { YearsSlip } from './years_slip';

const lens = 2.5; // 1 : n through the lens

function useFrame(answer: YearsAnswer | null): Frame {
  const size = useSize();
  const small = size.phone || size.tablet;
  const width = size.phone || size.tablet ? size.w : size.w - 366;
  const x0 = size.phone ? 168 : size.tablet ? 326 : 372;
  const [y0, y1] = answer ? [answer.axis.first, Math.max(answer.axis.last, answer.axis.first + 10)] : [1950, 2000];
  const axis: Axis = { x0, y0, y1, k: (width - x0 - (size.phone ? 12 : 30)) / (y1 - y0) };
  return { axis, width, row: small ? 44 : 54, words: size.phone ? 20 : small ? 90 : 104, lens: !size.phone, pxmm: usualDots / lens, radius: small ? 3.8 : 4.3, small };
}

function Legend() {
  return (
    <div class="legend">
      <span>
        <svg width="44" height="14" aria-hidden="true">
          <rect x="2" y="5" width="40" height="5" fill="var(--ink)" fill-opacity=".25" />
          <rect x="8" y="5" width="28" height="5" fill="var(--ink)" fill-opacity=".5" />
          <path d="M8 2v11M36 2v11" stroke="var(--ink)" stroke-width="1.3" />
        </svg>
        in use; fades where start and end are unsure
      </span>
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle cx="6" cy="6" r="4.6" fill="var(--ink)" />
        </svg>
        year known
      </span>
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle cx="6" cy="6" r="4" fill="var(--paper)" stroke="var(--ink)" stroke-width="1.4" />
        </svg>
        reckoned
      </span>
      <span>
        <Zigzag />
        does not fit
      </span>
      <span>
        <svg width="30" height="12" aria-hidden="true">
          <path d="M2 6H28" stroke="var(--tide)" stroke-width="2" stroke-dasharray="1 3" />
        </svg>
        stated by a source
      </span>
    </div>
  );
}

function Grid({ frame, chosen }: { frame: Frame; chosen: UseRow | null }) {
  const x = (year: number) => xOf(frame.axis, year);
  const decades = [];
  for (let year = Math.ceil(frame.axis.y0 / 10) * 10; year <= frame.axis.y1; year += 10) {
    decades.push(<path key={year} d={`M${x(year)} 0V4000`} stroke="var(--ink)" stroke-opacity=".13" />);
  }
  return (
    <svg class="grid" width={frame.width} aria-hidden="true">
      {chosen?.start && chosen.end && (
        <>
          <rect x={x(chosen.start.p50)} y="0" width={Math.max(1, x(chosen.end.p50) - x(chosen.start.p50))} height="4000" fill="var(--tide)" fill-opacity=".07" />
          <path d={`M${x(chosen.start.p50)} 0V4000M${x(chosen.end.p50)} 0V4000`} stroke="var(--ink)" stroke-width=".8" stroke-dasharray="2 3" stroke-opacity=".5" />
        </>
      )}
      {decades}
    </svg>
  );
}

function Makers({ answer, frame }: { answer: YearsAnswer; frame: Frame }) {
  const spans: Span[] = [...answer.makers];
  if (answer.unrecorded) {
    const { pieces, p10, p50, p90 } = answer.unrecorded;
    spans.push({ name: 'Unrecorded hands', words: `${pieces} pieces, ${p10} to ${p90}`, start: { p10, p50, p90: p50 }, end: { p10: p50, p50, p90 }, from: null, to: null, dashed: true });
  }
  return (
    <section aria-label="Makers at work">
      <h2>
        Makers at work <small>double line; an end that fades is not known to the year</small>
      </h2>
      <ul>
        {spans.map((one, i) => (
          <SpanRow key={one.name} {...one} frame={frame} id={'span' + i} />
        ))}
      </ul>
    </section>
  );
}

const Heading = ({ group }: { group: UseGroup }) => (
  <h2>
    {titleOf(group)} <small>{group.ordered ? 'in order of descent' : 'in order of their years'}{group.source ? `, after ${group.source}` : ''}{viewOf(group.part + ' ' + group.key) === 'mark' ? ', marks twice as large as the rest' : ''}</small>
  </h2>
);

export function Years() {
  const list = useAsk('years', {});
  const [choice, choose] = useKept<string>('years-of', 'lineages');
  const [beside, setBeside] = useKept<string>('years-beside', 'makers');
  const [hide, setHide] = useState(false);
  const [at, walk] = useState(0);
  const size = useSize();
  const usable = list.data ? chosenGroups(list.data, choice) : [];
  const first = size.phone && choice === 'lineages' ? usable.slice(0, 1) : usable;
  const keys = [...new Set(first.map((group) => group.key))].sort();
  const full = useAsk('years', { character: keys }, keys.length > 0);
  const table = useAsk('table', {});
  const pieces = useMemo(() => new Map(table.data?.pieces.map((piece) => [piece.number, piece])), [table.data]);
  const frame = useFrame(list.data);
  const groups = first.map((group) => full.data?.groups.find((one) => idOf(one) === idOf(group)) ?? group);
  const flat = groups.flatMap((group) => group.rows.map((row) => ({ row, group })));
  const chosen = flat[Math.min(at, flat.length - 1)] ?? null;
  const middle = chosen?.row.start && chosen.row.end ? (chosen.row.start.p50 + chosen.row.end.p50) / 2 : null;
  useRule({ axis: list.data && flat.length ? frame.axis : null, flag: middle, words: size.tablet ? '' : 'when each variant was in use', side: { unit: 'mm', px: frame.pxmm, step: 10, label: 50 } });
  const step = (by: number) => {
    const next = Math.max(0, Math.min(flat.length - 1, at + by));
    walk(next);
    document.querySelectorAll<HTMLElement>('.variant')[next]?.focus();
  };
  const isolate = () => {
    const alone = groups.length === 1;
    choose(alone || !chosen ? 'lineages' : idOf(chosen.group));
    walk(alone || !chosen ? 0 : chosen.group.rows.findIndex((row) => row.value === chosen.row.value));
  };
  useKeys({ ArrowDown: () => step(1), ArrowUp: () => step(-1), Enter: isolate, h: () => setHide(!hide) });
  if (list.problem && !list.data) {
    return <ProblemSlip problem={list.problem} again={list.again} />;
  }
  if (!list.data) {
    return <p class="waiting">Following each variant through the years</p>;
  }
  const choices = [{ key: 'lineages', label: 'The lineages' }, { key: 'all', label: 'Every character' }, ...list.data.groups.filter((group) => group.rows.some((row) => row.start)).map((group) => ({ key: idOf(group), label: titleOf(group) }))];
  const label = choices.find((one) => one.key === choice)?.label ?? choices[0].label;
  let before = 0;
  return (
    <div class={'years' + (full.data || keys.length === 0 ? ' ready' : '')}>
      <Sentence>
        <Pick label={label} name="characters" choices={choices} chosen={choice} onPick={(key) => (choose(key), walk(0))} /> as they came and went on {list.data.pieces} pieces, beside{' '}
        <Pick label={beside === 'makers' ? "makers' spans" : 'nothing else'} name="beside" chosen={beside} choices={[{ key: 'makers', label: "makers' spans" }, { key: 'none', label: 'nothing else' }]} onPick={setBeside} />,{' '}
        <button class="pick" aria-pressed={hide} onClick={() => setHide(!hide)}>
          known years {hide ? 'hidden' : 'shown'}
        </button>
      </Sentence>
      <div class="scroller" tabIndex={-1}>
        {flat.length > 0 && <Grid frame={frame} chosen={chosen?.row ?? null} />}
        {flat.length === 0 && <p class="note">Give two dated pieces a character and it appears here.</p>}
        {list.data.stale && <p class="note">The show has changed since it was weighed; weigh it again to have the years follow.</p>}
        {groups.map((group) => {
          const start = before;
          before += group.rows.length;
          return (
            <section key={idOf(group)} aria-label={titleOf(group)}>
              <Heading group={group} />
              <ul>
                {group.rows.map((row, i) => (
                  <VariantRow key={row.value} row={row} group={group} at={i} frame={frame} pieces={pieces} on={start + i === at} hide={hide} id={`lens${start + i}`} onChoose={() => walk(start + i)} />
                ))}
              </ul>
            </section>
          );
        })}
        {beside === 'makers' && list.data.makers.length > 0 && <Makers answer={list.data} frame={frame} />}
      </div>
      {!frame.small && <Legend />}
      <YearsSlip row={chosen?.row ?? null} group={chosen?.group ?? null} calibration={list.data.calibration} known={list.data.known} alone={groups.length === 1} small={frame.small} onAlone={isolate} />
    </div>
  );
}
