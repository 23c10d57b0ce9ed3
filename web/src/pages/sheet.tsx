// The Sheet: one piece, what is known of it, and what each thing known does to the answer.
import { useEffect, useMemo, useState } from 'preact/hooks';
import { asProblem, call } from '../core/api';
import { useAsk, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { ProblemSlip } from '../core/parts';
import { go, sheetOf, type Route } from '../core/route';
import { useRule } from '../core/square';
import { tellProblem } from '../core/tell';
import { span, xOf, type Axis } from '../core/geometry';
import type { Answer, Evidence } from '../core/types';
import { Board } from './sheet_board';
import { Entry } from './entry';
import { Empty } from './first';
import { Which } from './which';
import { Plate, plateScale } from './sheet_plate';
import { togglePick } from './picking';

export function Sheet({ route }: { route: Route }) {
  const table = useAsk('table', {}, !route.piece);
  if (!route.piece) {
    const first = table.data?.pieces[0];
    if (first) {
      go(sheetOf(first.number), true);
    }
    if (table.data && !first) {
      return <Empty />;
    }
    return <p class="waiting">Fetching a piece</p>;
  }
  return <One number={route.piece} key={route.piece} />;
}

// One ribbon a record: what a mark says of the year and of its maker lifts together.
export function ribbonsOf(evidence: Evidence[]): { main: Evidence[]; little: Evidence[] } {
  const seen = new Map<string, Evidence>();
  for (const line of evidence) {
    const key = line.record ? String(line.record) : line.what;
    const kept = seen.get(key);
    if (!kept) {
      seen.set(key, line);
    } else if (!kept.alone && line.alone) {
      seen.set(key, line);
    }
  }
  const all = [...seen.values()];
  const moves = (line: Evidence) => line.torn || line.bits >= 0.02 || Math.abs(line.odds) >= 0.1 || line.source !== 'the piece';
  const strong = all.filter(moves);
  const main = strong.slice(0, 8);
  return { main: [...main.filter((line) => !line.torn), ...main.filter((line) => line.torn)], little: [...strong.slice(8), ...all.filter((line) => !moves(line))] };
}

// The answer with some records laid aside; null while nothing is lifted or the answer is not there.
function useLifted(number: string, lifted: number[]): { without: Answer | null; waiting: boolean } {
  const [without, set] = useState<Answer | null>(null);
  const [waiting, wait] = useState(false);
  useEffect(() => {
    let mine = true;
    set(null);
    wait(lifted.length > 0);
    if (lifted.length > 0) {
      call('sheet', { number, without: lifted.map(String) })
        .then((answer) => mine && set(answer))
        .catch((fault) => mine && tellProblem(asProblem(fault)))
        .finally(() => mine && wait(false));
    }
    return () => void (mine = false);
  }, [number, lifted.join()]);
  return { without, waiting };
}

function One({ number }: { number: string }) {
  const asked = useAsk('sheet', { number });
  const pieces = useAsk('table', {});
  const size = useSize();
  const [lifted, lift] = useState<number[]>([]);
  const [at, walk] = useState(-1); // none until a hand walks them
  const [large, enlarge] = useState('');
  const [thinking, think] = useState(false);
  const { without, waiting } = useLifted(number, lifted);
  const piece = asked.data;
  const ribbons = useMemo(() => ribbonsOf(piece?.evidence ?? []), [piece]);
  const toggle = (i: number) => {
    const line = ribbons.main[i];
    if (line?.record) {
      walk(i);
      lift(lifted.includes(line.record) ? lifted.filter((one) => one !== line.record) : [...lifted, line.record]);
    }
  };
  const keys: Record<string, () => void> = {
    ArrowDown: () => walk(Math.min(ribbons.main.length - 1, at + 1)),
    ArrowUp: () => walk(Math.max(0, at - 1)),
    ' ': () => toggle(Math.max(0, at)),
    Escape: () => (thinking ? think(false) : large ? enlarge('') : lift([])),
    w: () => think(true),
    f: () => enlarge(large === '' ? 'front' : large === 'front' ? 'back' : ''),
    j: () => piece?.next && go(sheetOf(piece.next)),
    k: () => piece?.before && go(sheetOf(piece.before)),
    p: () => {
      const known = pieces.data?.pieces.find((one) => one.number === number);
      if (known) {
        void togglePick(known);
      }
    },
  };
  for (let i = 0; i < 9; i++) {
    keys[String(i + 1)] = () => toggle(i);
  }
  useKeys(keys);

  const stacked = size.phone || size.tall;
  const plateWidth = stacked ? size.w : size.tablet ? 392 : Math.min(560, Math.round(size.w * 0.4));
  const boardWidth = stacked ? size.w : size.w - plateWidth;
  const labels = size.phone || (size.tablet && !size.tall) ? 0 : 300;
  const drawn = [piece?.year ?? null, ...ribbons.main.map((line) => line.alone)];
  const [y0, y1] = span(pieces.data ? [...pieces.data.pieces.map((one) => one.year), piece?.year ?? null] : drawn);
  const x0 = labels + 26;
  const axis: Axis = { x0, y0, y1, k: (boardWidth - x0 - 30) / (y1 - y0) };
  const plate = plateScale(piece, plateWidth, size);
  useRule({
    axis: piece ? { ...axis, x0: x0 + (stacked ? 0 : plateWidth) } : null,
    flag: piece?.year?.p50 ?? null,
    words: size.phone ? '' : [number, piece?.title, size.tablet ? '' : piece?.tray].filter(Boolean).join(' · ').slice(0, size.tablet ? 40 : 90),
    side: { unit: 'mm', px: plate.k, step: plate.k > 2 ? 2 : 5, label: plate.k > 2 ? 20 : 50, dashed: !plate.known },
  });
  if (asked.problem?.fault === 'not_found' && !piece) {
    return <Which table={pieces.data} missing={number} to="sheet" />;
  }
  if (asked.problem && !piece) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  if (!piece) {
    return <p class="waiting">Weighing {number}</p>;
  }
  return (
    <div class={'sheet ready' + (stacked ? ' stacked' : '') + (labels ? '' : ' narrow')} style={stacked ? {} : { gridTemplateColumns: plateWidth + 'px minmax(0,1fr)' }}>
      <h1 class="unseen">
        {piece.number}, {piece.title}
      </h1>
      <Plate piece={piece} width={plateWidth} size={size} large={large} onLarge={enlarge} onThink={() => think(!thinking)} />
      {thinking && (
        <section class="slip whatif" aria-label="What if" style={stacked ? {} : { width: plateWidth - 28 + 'px' }}>
          <p class="tiny">
            What if …
            <button class="btn soft" onClick={() => think(false)}>
              Put away
            </button>
          </p>
          <Entry number={number} parts={[...new Set(piece.parts.map((one) => one.kind))]} wide={false} replaces={(label) => piece.observations.some((one) => one.label === label) && !/^(Materials|Techniques)$/.test(label)} onKept={asked.again} />
        </section>
      )}
      <Board piece={piece} ribbons={ribbons} x={(year) => xOf(axis, year)} axis={axis} width={boardWidth} labels={labels} lifted={lifted} at={at} without={without} waiting={waiting || asked.earlier} onLift={toggle} problem={asked.problem} since={asked.at} />
    </div>
  );
}
