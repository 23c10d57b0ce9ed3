// Notes: type what you see, in any order; each part shows what it was taken for.
import { useEffect, useState } from 'preact/hooks';
import { span } from '../core/geometry';
import { useAsk, useSize } from '../core/hooks';
import { onWaiting, sendWaiting } from '../core/later';
import { ProblemSlip } from '../core/parts';
import type { Route } from '../core/route';
import { useRule } from '../core/square';
import { undo } from '../core/undo';
import type { Years } from '../core/types';
import { Entry } from './entry';
import { Empty } from './first';
import { plateScale } from './sheet_plate';
import { PiecePicture } from './table_slip';
import { Which } from './which';

export function Notes({ route }: { route: Route }) {
  const table = useAsk('table', {});
  const number = route.piece;
  const known = table.data?.pieces.find((piece) => piece.number === number);
  if (table.data?.pieces.length === 0) {
    return <Empty />;
  }
  if (!number) {
    return <Which table={table.data} to="notes" />;
  }
  if (table.data && !known) {
    return <Which table={table.data} missing={number} to="notes" />;
  }
  return <Noting number={number} years={table.data?.pieces.map((piece) => piece.year) ?? []} key={number} />;
}

function Noting({ number, years }: { number: string; years: (Years | null)[] }) {
  const asked = useAsk('sheet', { number });
  const size = useSize();
  const looks = useAsk('look', { number: [number] });
  const [waiting, count] = useState(0);
  useEffect(() => onWaiting(count), []);
  useEffect(() => {
    const again = () => void sendWaiting();
    const timer = setInterval(again, 4000);
    addEventListener('online', again);
    return () => {
      clearInterval(timer);
      removeEventListener('online', again);
    };
  }, []);
  const width = size.phone ? size.w : size.tablet ? 372 : 520;
  const plate = plateScale(asked.data, width, size);
  const left = size.phone ? 20 : width + 26;
  const [y0, y1] = span(years);
  useRule({
    axis: years.some(Boolean) ? { x0: left, y0, y1, k: (size.w - left - 30) / (y1 - y0) } : null,
    flag: asked.data?.year?.p50 ?? null,
    words: [number, asked.data?.title].filter(Boolean).join(' · ').slice(0, size.tablet ? 38 : 60),
    side: { unit: 'mm', px: plate.k, step: 5, label: 50 },
  });
  const piece = asked.data;
  const rows = new Map<string, string[]>();
  piece?.observations.forEach((one) => rows.get(one.label)?.push(one.value) ?? rows.set(one.label, [one.value]));
  // What was not understood is kept as it was typed, and stands below what was.
  const plain = piece?.notes.map((note) => note.text) ?? [];
  const high = size.phone ? 230 : size.h - 130;
  return (
    <div class="notes ready" style={size.phone ? {} : { gridTemplateColumns: width + 'px minmax(0,1fr)' }}>
      <section class="np" aria-label={`${number}, front and back`}>
        {piece && ['front', 'back'].map((view) => <PiecePicture key={view} piece={piece} view={view} width={width / 2 - 40} height={high} />)}
      </section>
      <section class="ent" aria-label="Notes">
        <div class="kept" tabIndex={0} role="region" aria-label="What is kept of this piece">
          <h1 class="nh">
            <span class="clamp" title={piece?.title}>
              {[number, piece?.title].filter(Boolean).join(' · ')}
            </span>
            <button class="btn soft" onClick={() => void undo()}>
              Undo <span class="key">Z</span>
            </button>
          </h1>
          {asked.problem && !piece && <ProblemSlip problem={asked.problem} again={asked.again} />}
          {waiting > 0 && <p class="next">{waiting === 1 ? '1 note waits' : waiting + ' notes wait'} for the desk. Kept on this machine.</p>}
          <dl>
            {[...rows].map(([label, values]) => (
              <div class="o" key={label}>
                <dt>{label}</dt>
                <dd>{values.join(', ')}</dd>
              </div>
            ))}
            {plain.length > 0 && (
              <div class="o">
                <dt>As it was typed</dt>
                <dd>{plain.join('; ')}</dd>
              </div>
            )}
          </dl>
        </div>
        <Entry number={number} parts={[...new Set(piece?.parts.map((one) => one.kind) ?? [])]} wide={!size.phone} replaces={(label) => rows.has(label) && !/^(Materials|Techniques)$/.test(label)} onKept={asked.again} next={looks.data?.looks.slice(0, size.phone ? 2 : 4)} />
      </section>
    </div>
  );
}
