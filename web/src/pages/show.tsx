// Show: the sections and their pieces in order, at one scale; moved by hand or by key.
import { useRef, useState } from 'preact/hooks';
import { asProblem, photo, write } from '../core/api';
import { usualDots } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { Pick, ProblemSlip, Sentence } from '../core/parts';
import { sheetOf, type Route } from '../core/route';
import { useRule } from '../core/square';
import { tell, tellProblem } from '../core/tell';
import { undo } from '../core/undo';
import { scaleWords } from '../core/geometry';
import type { TablePiece } from '../core/types';
import { chaptersOf, coverage, moved, placeAt, type Chapter } from './show_order';
import { sizeOf } from './table_layout';
import { caseAddress } from './case_layout';
import { Days } from './days';
import { Cases } from './show_case';
import { Photographs } from './photographs';
import { togglePick } from './picking';
import { Spreadsheet } from './spreadsheet';

// The whole section is written in its new order, so that ranks are 1, 2, 3 everywhere.
async function seat(chapter: Chapter, number: string, to: number) {
  const order = moved(
    chapter.pieces.map((piece) => piece.number),
    number,
    to,
  );
  try {
    await write('pick', { number: order, ...(chapter.key ? { section: chapter.key } : {}), rank: 1 });
    tell(`${number} is ${order.indexOf(number) + 1} of ${order.length} in "${chapter.title}".`);
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
}

interface Hand {
  number: string;
  x: number;
  y: number;
}

function Hanging({ piece, pxmm, hand, onTake, onKey }: { piece: TablePiece; pxmm: number; hand: Hand | null; onTake: (event: PointerEvent) => void; onKey: (event: KeyboardEvent) => void }) {
  const mm = sizeOf(piece);
  const front = piece.pictures.find((one) => one.view === 'front');
  const held = hand?.number === piece.number;
  return (
    <li
      class={'hanging' + (held ? ' held' : '')}
      data-number={piece.number}
      tabIndex={0}
      aria-label={`${piece.number}, ${piece.title}, ${piece.made}. Shift and arrows move it.`}
      onPointerDown={onTake}
      onKeyDown={onKey}
      style={held ? { transform: `translate(${hand!.x}px,${hand!.y}px)` } : {}}
    >
      {front ? <img draggable={false} src={photo(piece.number, 'front', mm.h * pxmm * devicePixelRatio > 128 ? 256 : 128, front.v)} width={mm.w * pxmm} height={mm.h * pxmm} alt="" /> : <span class="nopicture">{piece.number}</span>}
      <span class="plate-label">
        <b>{piece.number}</b>
        {piece.made}
      </span>
    </li>
  );
}

function Waiting({ waiting }: { waiting: TablePiece[] }) {
  const [open, set] = useState(12);
  if (waiting.length === 0) {
    return null;
  }
  return (
    <details>
      <summary>{waiting.length === 1 ? '1 piece waits' : waiting.length + ' pieces wait'} for a place</summary>
      <ul class="waits">
        {waiting.slice(0, open).map((piece) => (
          <li key={piece.number}>
            <a href={sheetOf(piece.number)}>{piece.number}</a> {piece.title}
            <button class="btn soft" onClick={() => void togglePick(piece)}>
              Pick
            </button>
          </li>
        ))}
      </ul>
      {open < waiting.length && (
        <button class="btn soft" onClick={() => set(open + 50)}>
          50 more
        </button>
      )}
    </details>
  );
}

function Sections() {
  const asked = useAsk('table', {});
  const size = useSize();
  const [n, setN] = useKept<number>('show-scale', 5);
  const [hand, hold] = useState<Hand | null>(null);
  const start = useRef({ x: 0, y: 0 });
  const pxmm = usualDots / n;
  useRule({ axis: null, flag: null, words: '', top: { unit: 'mm', pxmm }, side: { unit: 'mm', px: pxmm, step: 10, label: n > 4 ? 100 : 50 } });
  if (asked.problem && !asked.data) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  if (!asked.data) {
    return <p class="waiting">Fetching the show</p>;
  }
  const { chapters, waiting } = chaptersOf(asked.data);
  const take = (piece: TablePiece) => (event: PointerEvent) => {
    if (size.phone || event.button !== 0) {
      return;
    }
    start.current = { x: event.clientX, y: event.clientY };
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    const move = (next: PointerEvent) => hold({ number: piece.number, x: next.clientX - start.current.x, y: next.clientY - start.current.y });
    const drop = (last: PointerEvent) => {
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', drop);
      removeEventListener('pointercancel', drop);
      hold(null);
      if (last.type === 'pointerup' && Math.hypot(last.clientX - start.current.x, last.clientY - start.current.y) > 12) {
        letGo(piece, last.clientX, last.clientY);
      }
    };
    addEventListener('pointermove', move);
    addEventListener('pointerup', drop);
    addEventListener('pointercancel', drop);
  };
  const letGo = (piece: TablePiece, x: number, y: number) => {
    const target = [...document.querySelectorAll<HTMLElement>('[data-chapter]')].find((one) => {
      const edge = one.getBoundingClientRect();
      return y >= edge.top && y <= edge.bottom;
    });
    const chapter = chapters.find((one) => one.key === target?.dataset.chapter);
    if (!target || !chapter) {
      return;
    }
    const boxes = [...target.querySelectorAll<HTMLElement>('.hanging')]
      .filter((one) => one.dataset.number !== piece.number)
      .map((one) => {
        const edge = one.getBoundingClientRect();
        return { x: edge.x, y: edge.y, w: edge.width, h: edge.height };
      });
    void seat(chapter, piece.number, placeAt(boxes, x, y));
  };
  const press = (chapter: Chapter, piece: TablePiece, i: number) => async (event: KeyboardEvent) => {
    const at = chapters.indexOf(chapter);
    const sideways = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    const across = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    const focus = () => document.querySelector<HTMLElement>(`[data-number="${piece.number}"]`)?.focus();
    if (event.shiftKey && sideways) {
      event.preventDefault();
      await seat(chapter, piece.number, i + sideways);
      setTimeout(focus, 60);
    } else if (event.shiftKey && across && chapters[at + across]) {
      event.preventDefault();
      await seat(chapters[at + across], piece.number, chapters[at + across].pieces.length);
      setTimeout(focus, 400);
    } else if (sideways) {
      event.preventDefault();
      document.querySelector<HTMLElement>(`[data-number="${chapter.pieces[i + sideways]?.number}"]`)?.focus();
    } else if (event.key.toLowerCase() === 'p') {
      event.stopPropagation();
      void togglePick(piece);
    }
  };
  const picked = chapters.reduce((sum, chapter) => sum + chapter.pieces.length, 0);
  return (
    <div class="showing picks ready">
      <Sentence>
        {picked} pieces picked, in {chapters.length} sections, at about{' '}
        <Pick label={scaleWords(n)} name="scale" chosen={String(n)} choices={[8, 5, 3, 2].map((s) => ({ key: String(s), label: scaleWords(s) }))} onPick={(key) => setN(Number(key))} />; their{' '}
        <span class="keep">
          <a class="pick" href={caseAddress('')}>
            cases
          </a>
          ,
        </span>{' '}
        <span class="keep">
          <a class="pick" href="/show?see=days">
            days to opening
          </a>
          ,
        </span>{' '}
        <a class="pick" href="/show?see=photographs">
          photographs
        </a>{' '}
        or{' '}
        <a class="pick" href="/show?see=spreadsheet">
          more from a spreadsheet
        </a>
      </Sentence>
      <div class="scroller" tabIndex={-1}>
        {picked === 0 && <p class="note">Nothing is picked yet. On the Table, P picks the chosen piece.</p>}
        {chapters.map((chapter) => (
          <section key={chapter.key} class="chapter" data-chapter={chapter.key} aria-label={chapter.title}>
            <h2>{chapter.title}</h2>
            <p class="tiny">{chapter.pieces.length === 1 ? '1 piece' : chapter.pieces.length + ' pieces'}</p>
            <ol>
              {chapter.pieces.map((piece, i) => (
                <Hanging key={piece.number} piece={piece} pxmm={pxmm} hand={hand} onTake={take(piece)} onKey={press(chapter, piece, i)} />
              ))}
            </ol>
          </section>
        ))}
        <Waiting waiting={waiting} />
      </div>
      <aside class="slip side" aria-label="What the picks cover" tabIndex={0}>
        <h2>What the picks cover</h2>
        {picked === 0 && <p class="sub">Makers, decades and what disagrees are counted here, once something is picked.</p>}
        {(picked > 0 ? coverage(asked.data) : []).map((count) => (
          <div class="c" key={count.what}>
            <b>{count.what}</b>
            <p>{count.words}</p>
          </div>
        ))}
        <p class="tiny">Drag a piece to another place, or shift and an arrow. Labels, checklist and book follow the new order.</p>
        <p class="row">
          <button class="btn soft" onClick={() => void undo()}>
            Undo <span class="key">Z</span>
          </button>
        </p>
      </aside>
    </div>
  );
}

export function Show({ route }: { route: Route }) {
  const see = route.query.get('see');
  return see === 'case' ? <Cases wanted={route.query.get('case') ?? ''} /> : see === 'days' ? <Days /> : see === 'photographs' ? <Photographs /> : see === 'spreadsheet' ? <Spreadsheet /> : <Sections />;
}
