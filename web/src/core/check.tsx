// A check in words: its mark, what it is about, and what stands behind it. The mark is a shape, so
// that nothing depends on its colour.
import type { CareCheck, CareState } from './types';

const spoken: Record<CareState, string> = {
  holds: 'holds',
  near: 'near its limit',
  broken: 'broken',
  held: 'held back until it is answered',
  ask: 'cannot be known yet',
  told: '',
};

export function Mark({ state }: { state: CareState }) {
  const name = spoken[state];
  return (
    <svg class={'mark-of is-' + state} width="22" height="22" viewBox="0 0 22 22" role={name ? 'img' : undefined} aria-label={name || undefined} aria-hidden={name ? undefined : true}>
      {state === 'holds' && <path d="M6.5 11.5l3 3l6 -7M11 2a9 9 0 1 0 .01 0z" />}
      {state === 'near' && <path d="M11 2.5L20.5 19.5H1.5zM11 8.5v5M11 16v1.4" />}
      {state === 'broken' && <path d="M1 14l3.3 -7l3.4 7l3.3 -7l3.3 7l3.4 -7l3.3 7" />}
      {state === 'held' && <path d="M3 3h16v16h-16zM3 11l8 -8M3 19l16 -16M11 19l8 -8" />}
      {state === 'ask' && <path d="M11 2a9 9 0 1 0 .01 0z" stroke-dasharray="3 2.6" />}
      {state === 'told' && <path d="M9 11h4" />}
    </svg>
  );
}

export function Check({ check }: { check: CareCheck }) {
  const words = (
    <span>
      <b>{check.what}</b> {check.words}
    </span>
  );
  return (
    <li class={'check is-' + check.state}>
      <Mark state={check.state} />
      {check.more.length === 0 ? (
        words
      ) : (
        <details>
          <summary>{words}</summary>
          {check.more.filter(Boolean).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </details>
      )}
    </li>
  );
}

export function Hatch({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0v5" stroke="var(--ink)" stroke-width="2.2" />
      </pattern>
    </defs>
  );
}

// Whether there is anything to draw: what light does not change has no candle.
export const burns = (one: { share: number | null; state: CareState }) => one.share !== null || one.state === 'ask';

// Light spent by the last day: hatched when near, torn past its end, dashed when not known.
export function Candle({ check, width }: { check: CareCheck | { share: number | null; state: CareState; words: string }; width: number }) {
  const { share, state } = check;
  const full = width - 14;
  const reach = Math.min(1, share ?? 0) * full;
  return (
    <svg width={width} height="18" role="img" aria-label={'Light spent: ' + check.words}>
      <Hatch id="hatch-candle" />
      <rect x=".75" y="3" width={full} height="11" fill="var(--paper)" stroke={share === null ? 'var(--ink-3)' : 'var(--ink)'} stroke-dasharray={share === null ? '3 2.4' : undefined} />
      {share !== null && <rect x=".75" y="3" width={reach} height="11" fill={state === 'near' ? 'url(#hatch-candle)' : 'var(--ink-2)'} />}
      {share !== null && share > 1 && <path d={`M${full + 1} 1l5 4l-5 3.6l5 3.6l-5 4`} fill="none" stroke="var(--rust)" stroke-width="2.2" />}
      {share !== null && share <= 1 && <path d={`M${reach + 0.75} 1v15`} stroke="var(--ink)" stroke-width="1.6" />}
    </svg>
  );
}

// The same at the size of a piece in its case, torn where the light breaks any limit. The page holds the
// hatch for all of them (<Hatch id="hatch" />).
export function MiniCandle({ share, state, width }: { share: number | null; state: CareState; width: number }) {
  const full = Math.max(10, width - 1);
  return (
    <svg class="mini" width={full + 7} height="9" aria-hidden="true">
      <rect x=".5" y="2.5" width={full - 6} height="4" fill="var(--paper)" stroke={share === null ? 'var(--ink-3)' : 'var(--ink)'} stroke-dasharray={share === null ? '2 2' : undefined} />
      {share !== null && <rect x=".5" y="2.5" width={Math.min(1, share) * (full - 6)} height="4" fill={state === 'near' ? 'url(#hatch)' : 'var(--ink)'} />}
      {state === 'broken' && <path d={`M${full - 6} .5l4 2.6l-4 2.6l4 2.6`} fill="none" stroke="var(--rust)" stroke-width="1.8" />}
    </svg>
  );
}
