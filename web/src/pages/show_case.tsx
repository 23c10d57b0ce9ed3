// A case at true scale from the front: its pieces, moved by hand or by key, and what it must hold to.
import { useState } from 'preact/hooks';
import { asProblem, photo, write } from '../core/api';
import { burns, Check, Hatch, MiniCandle } from '../core/check';
import { useAsk, useSize } from '../core/hooks';
import { Pick, ProblemSlip, Sentence, useSaid } from '../core/parts';
import { go, sheetOf } from '../core/route';
import { useRule } from '../core/square';
import { tell, tellProblem } from '../core/tell';
import { undo } from '../core/undo';
import type { CareAnswer, PlacedPiece, TablePiece } from '../core/types';
import { Chosen, OfBars, Waiting } from './case_parts';
import { caseAddress, freePlace, gaps, inOrder, settled, type Hung } from './case_layout';
import { useTrial, type InHand } from './case_trial';
import { NewCase } from './new_case';
import { sizeOf } from './table_layout';

async function put(number: string, key: string, x: number, y: number, shelf: number) {
  try {
    await write('put', { number: [number], case: key, x: String(x), y: String(y), shelf: String(shelf) });
    tell(`${number} hangs at ${x}, ${y} mm in ${key}.`);
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
}

async function takeOut(number: string) {
  try {
    await write('put', { number: [number], drop: true });
    tell(`${number} is taken out of its case.`, { label: 'Undo', run: () => void undo() });
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
}

interface ElevationProps {
  care: CareAnswer;
  known: Map<string, TablePiece>;
  k: number; // pixels a millimetre
  chosen: string;
  still: boolean; // a phone: look and check only
  onChoose: (number: string) => void;
  onMove: (at: InHand | null) => void; // null: let go
}

// A free width beside the piece in hand; overlapping pieces are torn.
function Span({ from, to, mm, left }: { from: number; to: number; mm: number; left?: boolean }) {
  const wide = 10 * String(mm).length + 12;
  // Never over the piece in hand, however narrow the gap.
  const middle = to - from > wide + 12 ? (from + to) / 2 : left ? to - wide / 2 - 6 : from + wide / 2 + 6;
  return (
    <g class={mm < 0 ? 'gap tight' : 'gap'}>
      <path d={`M${from} -6v12M${to} -6v12M${from} 0H${to}`} />
      <rect x={middle - wide / 2} y="-11" width={wide} height="22" rx="3" />
      <text x={middle} y="5" text-anchor="middle">
        {mm}
      </text>
    </g>
  );
}

function Elevation({ care, known, k, chosen, still, onChoose, onMove }: ElevationProps) {
  const [hand, hold] = useState<InHand | null>(null);
  const inside = { w: care.width_mm, h: care.height_mm };
  const hung = inOrder(
    care.pieces.map((one): Hung => {
      const piece = known.get(one.number);
      const mm = piece ? sizeOf(piece) : { w: 40, h: 40 };
      const at = hand?.number === one.number ? hand : { x: one.x_mm, y: one.y_mm };
      return { number: one.number, x: at.x, y: at.y, w: mm.w, h: mm.h };
    }),
  );
  const placed = (number: string) => care.pieces.find((one) => one.number === number) as PlacedPiece;
  const held = hung.find((one) => one.number === chosen);
  const free = held ? gaps(held, hung, inside) : null;
  const shelves = [...new Set(care.pieces.map((one) => one.shelf))].filter((shelf) => shelf > 0);

  const take = (piece: Hung) => (event: PointerEvent) => {
    onChoose(piece.number);
    if (still || event.button !== 0) {
      return;
    }
    const from = { x: event.clientX, y: event.clientY };
    let last: InHand | null = null;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    const move = (next: PointerEvent) => {
      const far = Math.hypot(next.clientX - from.x, next.clientY - from.y) > 4;
      if (far || last) {
        const to = settled(piece.x + (next.clientX - from.x) / k, piece.y - (next.clientY - from.y) / k, inside, next.altKey ? 1 : 5);
        hold((last = { number: piece.number, ...to }));
        onMove(last);
      }
    };
    const drop = async (up: PointerEvent) => {
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', drop);
      removeEventListener('pointercancel', drop);
      onMove(null);
      if (up.type === 'pointerup' && last) {
        await put(piece.number, care.case!, last.x, last.y, placed(piece.number).shelf);
      }
      hold(null);
    };
    addEventListener('pointermove', move);
    addEventListener('pointerup', drop);
    addEventListener('pointercancel', drop);
  };
  const press = (piece: Hung) => (event: KeyboardEvent) => {
    const step = event.altKey ? 1 : event.shiftKey ? 50 : 5;
    const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[event.key];
    if (by && !still) {
      event.preventDefault();
      event.stopPropagation();
      const to = settled(piece.x + by[0], piece.y + by[1], inside, 1);
      void put(piece.number, care.case!, to.x, to.y, placed(piece.number).shelf);
    } else if (event.key === 'Enter') {
      go(sheetOf(piece.number));
    } else if (event.key === 'Delete' && !still) {
      void takeOut(piece.number);
    }
  };
  const edge = 18;
  return (
    <div class="elevation" style={{ width: inside.w * k + 2 * edge + 'px', height: inside.h * k + 2 * edge + 12 + 'px' }}>
      <ol class="inside" style={{ left: edge + 'px', top: edge + 'px', width: inside.w * k + 'px', height: inside.h * k + 'px' }}>
        {hung.map((piece) => {
          const row = placed(piece.number);
          const own = known.get(piece.number);
          const front = own?.pictures.find((one) => one.view === 'front');
          return (
            <li
              key={piece.number}
              class={'hung-in' + (piece.number === chosen ? ' on' : '')}
              data-number={piece.number}
              tabIndex={0}
              aria-label={`${piece.number}, ${own?.title ?? ''}, at ${piece.x}, ${piece.y} mm. Light: ${row.words} Arrows move it.`}
              style={{ left: (piece.x - piece.w / 2) * k + 'px', top: (inside.h - piece.y - piece.h / 2) * k + 'px', width: piece.w * k + 'px', height: piece.h * k + 'px' }}
              onPointerDown={take(piece)}
              onFocus={() => onChoose(piece.number)}
              onKeyDown={press(piece)}
            >
              {front ? <img draggable={false} src={photo(piece.number, 'front', piece.h * k * devicePixelRatio > 128 ? 256 : 128, front.v)} alt="" /> : <span class="nopicture">{piece.number}</span>}
              {burns({ share: row.share, state: row.light }) && <MiniCandle share={row.share} state={row.light} width={piece.w * k} />}
            </li>
          );
        })}
      </ol>
      <svg class="over-case" aria-hidden="true" width={inside.w * k + 2 * edge} height={inside.h * k + 2 * edge}>
        <Hatch id="hatch" />
        {care.fixtures.map((lamp, i) => (
          <rect key={i} x={edge + lamp.x_mm * k - 16} y="4" width="32" height="10" rx="2" fill="var(--brass-hi)" stroke="var(--brass-edge)" />
        ))}
        {shelves.map((shelf) => {
          const low = Math.min(...hung.filter((one) => placed(one.number).shelf === shelf).map((one) => one.y - one.h / 2));
          return <path key={shelf} d={`M${edge} ${edge + (inside.h - Math.max(0, low)) * k}h${inside.w * k}`} stroke="var(--ink-3)" stroke-width="2" />;
        })}
        {held && free && !still && (
          <g class="gaps" transform={`translate(${edge} ${edge + (inside.h - held.y) * k})`}>
            <Span from={(held.x - held.w / 2 - free.left) * k} to={(held.x - held.w / 2) * k} mm={free.left} left />
            <Span from={(held.x + held.w / 2) * k} to={(held.x + held.w / 2 + free.right) * k} mm={free.right} />
          </g>
        )}
      </svg>
    </div>
  );
}

export function Cases({ wanted }: { wanted: string }) {
  const all = useAsk('care', {});
  const table = useAsk('table', {});
  const key = wanted || all.data?.cases[0]?.case || '';
  const one = useAsk('care', { case: key }, key !== '');
  const size = useSize();
  const [chosen, choose] = useState('');
  const kept = one.data?.case === key ? one.data : null;
  const [trial, move] = useTrial(key, kept);
  const care = trial?.case === key ? trial : kept;
  const side = size.phone || size.tablet ? 0 : 366;
  const said = useSaid();
  const room = { w: size.w - side - 44 - 36, h: size.phone ? size.h - 300 - said - 60 : size.h - (size.tablet ? 400 : 200) };
  // The whole case, but a tall one is rather scrolled than drawn smaller than 1 : 8; on a phone it is
  // as high as there is room, and panned.
  const k = care ? Math.max(0.15, Math.min(2, size.phone ? Infinity : room.w / care.width_mm, Math.max(room.h / care.height_mm, size.phone ? 0.3 : 0.47))) : 0.5;
  const [at, scroll] = useState({ down: 0, over: 0 });
  useRule({
    axis: null,
    flag: null,
    words: '',
    top: care ? { unit: size.phone ? 'mm' : 'millimetres, inside of the case', pxmm: k, x0: (size.phone ? 12 : 22) + 18 - at.over, to: care.width_mm } : undefined,
    side: care ? { unit: 'mm', px: k, step: k > 0.9 ? 10 : k > 0.4 ? 20 : 50, label: k > 0.4 ? 100 : 500, off: said + 26 - at.down, to: care.height_mm } : null,
  });
  const problem = all.problem ?? one.problem;
  if (problem && !all.data) {
    return <ProblemSlip problem={problem} again={all.again} />;
  }
  if (!all.data || !table.data) {
    return <p class="waiting">Fetching the cases</p>;
  }
  const known = new Map(table.data.pieces.map((piece) => [piece.number, piece]));
  const seat = (number: string) => {
    const mm = sizeOf(known.get(number)!);
    const hung = care!.pieces.map((row) => ({ number: row.number, x: row.x_mm, y: row.y_mm, ...sizeOf(known.get(row.number)!) }));
    const at = freePlace(mm.w, mm.h, hung, { w: care!.width_mm, h: care!.height_mm });
    void put(number, key, at.x, at.y, 0);
  };
  const row = care?.pieces.find((piece) => piece.number === chosen);
  return (
    <div class={'showing case' + (care || !key ? ' ready' : '') + (care ? '' : ' none')}>
      <Sentence>
        {key ? (
          <>
            Case <Pick label={key} name="case" chosen={key} choices={all.data.cases.map((each) => ({ key: each.case, label: `${each.case}, ${each.pieces} pieces` }))} onPick={(next) => go(caseAddress(next))} /> from the front
            {care && `, ${care.pieces.length} pieces at 1\u00a0:\u00a0${Math.round(3.78 / k)}`}; or <a class="pick" href="/show">the sections</a>
          </>
        ) : (
          <>
            No case yet; or <a class="pick" href="/show">the sections</a>
          </>
        )}
      </Sentence>
      <div class="scroller" tabIndex={-1} onScroll={({ currentTarget: { scrollTop, scrollLeft } }) => scroll({ down: scrollTop, over: scrollLeft })}>
        {one.problem && <ProblemSlip problem={one.problem} again={one.again} />}
        {care && <Elevation care={care} known={known} k={k} chosen={chosen} still={size.phone} onChoose={choose} onMove={move} />}
        {care && <OfBars />}
        {care && <Waiting care={all.data} known={known} onSeat={seat} />}
        <NewCase first={!key} />
      </div>
      {care && (
        <aside class="slip side" aria-label="What this case must hold to" tabIndex={0}>
          <h2>What this case must hold to</h2>
          {row && <Chosen row={row} still={size.phone} onOut={() => void takeOut(row.number)} />}
          <ul class="checks">
            {care.checks.map((check, i) => (
              <Check key={check.what + i} check={check} />
            ))}
          </ul>
          <p class="row">
            <button class="btn soft" onClick={() => void undo()}>
              Undo <span class="key">Z</span>
            </button>
          </p>
          {care.notes.map((note) => (
            <p class="tiny" key={note}>
              {note}
            </p>
          ))}
        </aside>
      )}
    </div>
  );
}
