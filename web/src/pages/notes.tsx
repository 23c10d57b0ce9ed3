// Notes: type what you see, in any order; each part shows what it was taken for.
import { useEffect, useState } from 'preact/hooks';
import { photo } from '../core/api_photo';
import { span } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { onWaiting, sendWaiting } from '../core/later';
import { ProblemSlip } from '../core/parts';
import { go, type Route } from '../core/route';
import { useRule } from '../core/square';
import { undo } from '../core/undo';
import type { TableAnswer, Years } from '../core/types';
import { Entry } from './entry';
import { plateScale } from './sheet_plate';
import { PiecePicture } from './table_slip';

export function Notes({ route }: { route: Route }) {
  const table = useAsk('table', {});
  const number = route.piece;
  const known = table.data?.pieces.find((piece) => piece.number === number);
  if (!number) {
    return <Which table={table.data} />;
  }
  if (table.data && !known) {
    return <Which table={table.data} missing={number} />;
  }
  return <Noting number={number} years={table.data?.pieces.map((piece) => piece.year) ?? []} key={number} />;
}

// The first pieces of the day plan, each a button: most often one of them is on the table.
function Planned({ table }: { table: TableAnswer }) {
  const [hours] = useKept<number>('hours', 6);
  const [by] = useKept<string>('by', 'tray');
  const { data } = useAsk('look', { hours, by });
  const numbers = [...new Set(data?.plan.flatMap((stop) => stop.looks.map((look) => look.number)))].slice(0, 6);
  if (numbers.length === 0) {
    return null;
  }
  return (
    <section class="planned" aria-label="Next by the day plan">
      <h2>Next by the day plan</h2>
      <ul>
        {numbers.map((number) => {
          const front = table.pieces.find((piece) => piece.number === number)?.pictures.find((picture) => picture.view === 'front');
          return (
            <li key={number}>
              <a href={'/notes/' + encodeURIComponent(number)}>
                {front && <img src={photo(number, 'front', 128, front.v)} alt="" />}
                {number}
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Which({ table, missing }: { table: TableAnswer | null; missing?: string }) {
  useRule({ axis: null, flag: null, words: '', side: null });
  return (
    <div class="which ready">
      <h1>Which piece is on the table?</h1>
      {missing && <p class="torn">There is no piece {missing} in this show.</p>}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          const typed = new FormData(event.target as HTMLFormElement).get('number') as string;
          const wanted = typed.trim().toLowerCase();
          const found = table?.pieces.find((piece) => piece.number.toLowerCase() === wanted || piece.number.replace(/\D+0*/, '') === wanted.replace(/\D+0*/, ''));
          go('/notes/' + encodeURIComponent(found?.number ?? typed.trim()));
        }}
      >
        <input name="number" aria-label="Number of the piece" autocomplete="off" autofocus placeholder="ES 118" list="numbers" />
        <datalist id="numbers">{(table?.pieces ?? []).slice(0, 2000).map((piece) => <option key={piece.number} value={piece.number} label={piece.title} />)}</datalist>
        <button class="btn main">Begin</button>
      </form>
      {table && table.pieces.length > 0 && <Planned table={table} />}
    </div>
  );
}

function Noting({ number, years }: { number: string; years: (Years | null)[] }) {
  const asked = useAsk('sheet', { number });
  const size = useSize();
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
  const high = size.phone ? 230 : size.h - 130;
  return (
    <div class="notes ready" style={size.phone ? {} : { gridTemplateColumns: width + 'px minmax(0,1fr)' }}>
      <section class="np" aria-label={`${number}, front and back`}>
        {piece && ['front', 'back'].map((view) => <PiecePicture key={view} piece={piece} view={view} width={width / 2 - 40} height={high} />)}
      </section>
      <section class="ent" aria-label="Notes">
        <div class="kept" tabIndex={0} role="region" aria-label="What is kept of this piece">
          <h1 class="nh">
            {number} · {piece?.title ?? ''}
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
          </dl>
        </div>
        <Entry number={number} parts={[...new Set(piece?.parts.map((one) => one.kind) ?? [])]} wide={!size.phone} replaces={(label) => rows.has(label) && !/^(Materials|Techniques)$/.test(label)} onKept={asked.again} />
      </section>
    </div>
  );
}
