// Sources: who says so, who they had it from, and what the pieces say.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { xOf, type Axis } from '../core/geometry';
import { useAsk, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Pick, ProblemSlip, Sentence } from '../core/parts';
import { useRule } from '../core/square';
import type { ClaimOnFile, Source } from '../core/types';
import { hang, leastOf, sourceSpan, threads, type Ground, type Hung, type Web } from './sources_layout';
import { heldUp, SourcesSlip } from './sources_slip';

type Side = 'for' | 'against' | '';
const sideOf = (claim: ClaimOnFile | null, key: string): Side => {
  const voice = claim?.voices.find((one) => one.source === key);
  return voice ? (voice.for ? 'for' : 'against') : '';
};

const underOf = (source: Source) => `${source.kind}${source.year === null ? ', year not known' : `, ${source.year}`}${source.borne_out === null ? '; never tested' : ''}`;
const alsoSpoken = (source: Source, side: Side) => (source.borne_out === null ? '' : `; ${heldUp(source)}`) + (side ? `; speaks ${side}` : '') + (source.derives_from.length ? '; had it from another' : '');

// The thick stroke that binds the tellings of one origin.
function Bound({ web }: { web: Web }) {
  const origins = [...new Set(web.hung.map((one) => one.bound).filter(Boolean))];
  return (
    <>
      {origins.map((origin) => {
        const all = web.hung.filter((one) => one.bound === origin);
        const [x0, x1] = [all[0].x, all[all.length - 1].x];
        const y = Math.min(...all.map((one) => one.y));
        if (all.length < 2) {
          return null;
        }
        return (
          <g key={origin}>
            {all.map((one) => (
              <path key={one.source.key} d={`M${one.x} ${y}V${one.slip ? one.slip.y + 4 : one.y}`} stroke="var(--tide)" stroke-width="1.8" />
            ))}
            <path d={`M${x0} ${y}H${x1}`} stroke="var(--tide)" stroke-width="7" stroke-linecap="round" />
            <path d={`M${x0} ${y}H${x1}`} stroke="var(--paper)" stroke-width="1" stroke-dasharray="4 4" />
            <text x={x0 + 8} y={y - 11} class="binding">
              {all.length} tellings, one origin
            </text>
          </g>
        );
      })}
    </>
  );
}

function Strings({ web, ground, shift }: { web: Web; ground: Ground; shift: number }) {
  const { axis, top, px, width } = ground;
  const decades = [];
  for (let year = Math.ceil(axis.y0 / 10) * 10; year <= axis.y1; year += 10) {
    decades.push(<path key={year} d={`M${xOf(axis, year)} ${top - 10}V${web.high}`} stroke="var(--ink)" stroke-opacity=".12" />);
  }
  return (
    <svg class="strings" width={width} height={web.high} aria-hidden="true">
      <pattern id="against" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="5" height="5" fill="var(--paper)" />
        <path d="M0 0V5" stroke="var(--ink)" stroke-width="2" />
      </pattern>
      {decades}
      {[20, 15, 10, 5].filter((n) => n >= web.least).map((n) => (
        <path key={n} d={`M0 ${top + (20 - n) * px}H${width}`} stroke="var(--ink)" stroke-opacity=".12" />
      ))}
      <path d={`M0 ${web.line}H${width}`} stroke="var(--ink)" stroke-dasharray="3 4" stroke-opacity=".5" />
      <text x={shift} y={web.line - 6} class="aside">
        below this line: no piece has yet tested what it says
      </text>
      {threads(web, ground.slip).map((thread) => (
        <g key={thread.key}>
          <path d={thread.d} fill="none" stroke="var(--tide)" stroke-width="1.8" />
          <circle cx={thread.dot.x} cy={thread.dot.y} r="3.2" fill="var(--tide)" />
        </g>
      ))}
      <Bound web={web} />
      {web.hung.map((one) => (
        <g key={one.source.key}>
          {one.slip && !one.bound && one.slip.y > one.y && <path d={`M${one.x} ${one.y}V${one.slip.y + 4}`} stroke="var(--tide)" stroke-width="1.8" />}
          <circle cx={one.x} cy={one.y} r="5" fill={one.source.borne_out === null ? 'var(--paper)' : 'var(--ink)'} stroke={one.source.borne_out === null ? 'var(--ink)' : 'var(--paper)'} stroke-width="1.2" stroke-dasharray={one.source.borne_out === null ? '2 1.6' : undefined} />
        </g>
      ))}
    </svg>
  );
}

function SourceSlipOn({ one, slip, side, on, onChoose }: { one: Hung; slip: Ground['slip']; side: Side; on: boolean; onChoose: () => void }) {
  const { source } = one;
  const box = one.slip ?? { x: one.x - 12, y: one.y - 12 };
  const size = one.slip ? { w: slip.w, h: slip.h } : { w: 24, h: 24 };
  return (
    <li style={{ position: 'absolute', left: box.x + 'px', top: box.y + 'px' }}>
      <button class={'hung ' + side + (on ? ' on' : '') + (source.borne_out === null ? ' untested' : '') + (one.slip ? '' : ' bare')} aria-pressed={on} aria-label={one.slip ? undefined : `${source.title}, ${underOf(source)}${alsoSpoken(source, side)}`} style={{ width: size.w + 'px', height: size.h + 'px' }} onClick={onChoose}>
        {one.slip && (
          <>
            <b>{source.title}</b>
            <small>{underOf(source)}</small>
            <span class="unseen">{alsoSpoken(source, side)}</span>
          </>
        )}
      </button>
    </li>
  );
}

function Column({ sources, claim, chosen, onChoose }: { sources: Source[]; claim: ClaimOnFile | null; chosen: string; onChoose: (key: string) => void }) {
  const order = [...sources].sort((a, b) => (b.borne_out ?? -1) - (a.borne_out ?? -1));
  return (
    <ul class="column">
      {order.map((source) => (
        <li key={source.key}>
          <button class={'hung ' + sideOf(claim, source.key) + (source.key === chosen ? ' on' : '') + (source.borne_out === null ? ' untested' : '')} aria-pressed={source.key === chosen} onClick={() => onChoose(source.key)}>
            <b>{source.title}</b>
            <small>
              {source.year ?? 'year not known'} · {heldUp(source)}
            </small>
          </button>
        </li>
      ))}
    </ul>
  );
}

export function Sources() {
  const quick = useAsk('sources', {});
  const weighed = useAsk('sources', { weigh: true }, quick.data !== null && quick.data.sources.length > 0);
  const table = useAsk('table', {});
  const pieces = useMemo(() => new Map(table.data?.pieces.map((piece) => [piece.number, piece])), [table.data]);
  const [about, setAbout] = useState('');
  const [chosen, choose] = useState('');
  const [scroll, setScroll] = useState(0);
  const size = useSize();
  const box = useRef<HTMLDivElement>(null);
  const answer = weighed.data ?? quick.data;
  const claim = answer?.claims.find((one) => one.ask === about) ?? null;
  const bearing = new Set(claim?.voices.map((voice) => voice.source));
  const shown = (answer?.sources ?? []).filter((one) => !claim || bearing.has(one.key));
  const [y0, y1] = sourceSpan(shown);
  const width = size.phone || size.tablet ? size.w : size.w - 366;
  const slip = size.tablet ? { w: 160, h: 60 } : { w: 186, h: 62 };
  const axis: Axis = { x0: 26, y0, y1, k: (width - 26 - 40) / (y1 - y0) };
  const high = size.h - (size.tablet ? 206 : 40);
  const top = size.tablet ? 84 : 98;
  const px = Math.max(18, (high - 130 - top) / (20 - leastOf(shown)));
  const ground: Ground = { axis, width, top, px, slip };
  const web = useMemo(() => (answer ? hang(answer, shown, ground, chosen) : null), [answer, about, chosen, width, px]);
  const source = shown.find((one) => one.key === chosen) ?? null;
  useRule({
    axis: shown.length ? axis : null,
    flag: source?.year ?? null,
    words: '',
    side: shown.length === 0 ? null : { unit: 'borne out, of 20', px, step: 1, label: 5, from: 0, to: 20 - leastOf(shown), off: top - scroll, text: (v) => String(20 - v) },
  });
  useEffect(() => box.current?.scrollTo(0, 0), [about]);
  const step = (by: number) => {
    const all = [...document.querySelectorAll<HTMLElement>('.hung')];
    const at = all.indexOf(document.activeElement as HTMLElement);
    const next = all[Math.max(0, Math.min(all.length - 1, at + by))];
    next?.focus();
    next?.scrollIntoView({ block: 'nearest' });
  };
  useKeys({ ArrowDown: () => step(1), ArrowUp: () => step(-1), t: () => document.getElementById('test-claim')?.focus(), Escape: () => (setAbout(''), choose('')) });
  if (quick.problem && !answer) {
    return <ProblemSlip problem={quick.problem} again={quick.again} />;
  }
  if (!answer || !web) {
    return <p class="waiting">Fetching the sources</p>;
  }
  const choices = [{ key: '', label: 'anything' }, ...answer.claims.map((one) => ({ key: one.ask, label: one.words }))];
  return (
    <div class="sources ready" data-weighed={answer.weighed}>
      <Sentence>
        {claim ? `The ${shown.length} of ${answer.sources.length} sources` : `All ${answer.sources.length} sources`} that bear on{' '}
        <Pick label={claim ? claim.words : 'anything'} name="bearing on" choices={choices} chosen={about} onPick={(key) => (setAbout(key), choose(''))} />, by the year they speak and how they held up
      </Sentence>
      <div class="scroller" tabIndex={-1} ref={box} onScroll={(event) => setScroll((event.target as HTMLElement).scrollTop)}>
        {answer.sources.length === 0 && <p class="note">Nobody has said anything yet. Note a source on any piece.</p>}
        {!answer.weighed && answer.sources.length > 0 && <p class="note asking">{weighed.problem ? weighed.problem.what : 'The pieces are being asked how each held up'}</p>}
        {size.phone ? (
          <Column sources={shown} claim={claim} chosen={chosen} onChoose={choose} />
        ) : answer.sources.length === 0 ? null : (
          <div style={{ position: 'relative', height: web.high + 'px' }}>
            <Strings web={web} ground={ground} shift={22} />
            <ul aria-label={`${shown.length} sources over the years they speak`}>
              {web.hung.map((one) => (
                <SourceSlipOn key={one.source.key} one={one} slip={slip} side={sideOf(claim, one.source.key)} on={one.source.key === chosen} onChoose={() => choose(one.source.key)} />
              ))}
            </ul>
          </div>
        )}
      </div>
      {!size.phone && !size.tablet && <Legend />}
      <SourcesSlip claim={source ? null : claim} source={source} answer={answer} pieces={pieces} />
    </div>
  );
}

function Legend() {
  return (
    <div class="legend">
      <span>
        <i class="hung for" /> speaks for
      </span>
      <span>
        <i class="hung against" /> speaks against
      </span>
      <span>
        <svg width="40" height="12" aria-hidden="true">
          <path d="M4 6H34" stroke="var(--tide)" stroke-width="1.8" />
          <circle cx="5" cy="6" r="3.2" fill="var(--tide)" />
        </svg>
        had it from
      </span>
      <span>
        <svg width="40" height="12" aria-hidden="true">
          <path d="M5 6H35" stroke="var(--tide)" stroke-width="7" stroke-linecap="round" />
        </svg>
        one origin, counted once
      </span>
      <span>
        <span class="key">T</span> test a claim
      </span>
    </div>
  );
}
