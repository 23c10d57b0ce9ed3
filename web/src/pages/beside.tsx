// Two to six pieces side by side: fronts over backs, tops level, one scale, what differs as rows.
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { span, usualDots, xOf, type Axis } from '../core/geometry';
import { useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Sentence, useSaid } from '../core/parts';
import { go, sheetOf } from '../core/route';
import { FadeBand } from '../core/shapes';
import { useRule } from '../core/square';
import { photo } from '../core/api';
import type { TableAnswer, TablePiece } from '../core/types';
import { sizeOf } from './table_layout';
import { sideOf } from './table_sight';

const rowNames: Record<string, string> = { fitting: 'Fitting', metal: 'Metal', material: 'Materials', motif: 'Motif', height: 'Height, mm', width: 'Width, mm' };

function Differences({ pieces }: { pieces: TablePiece[] }) {
  const keys = Object.keys(rowNames).filter((key) => pieces.some((piece) => piece.seen?.[key]));
  const values = (key: string) => pieces.map((piece) => piece.seen?.[key] || 'not recorded');
  const differ = keys.filter((key) => new Set(values(key)).size > 1);
  const same = keys.filter((key) => !differ.includes(key));
  return (
    <>
      {differ.map((key) => (
        <tr key={key}>
          <th scope="row">{rowNames[key]}</th>
          {values(key).map((value, i, all) => (
            <td key={i} class={i > 0 && value !== all[i - 1] ? 'cut' : ''}>
              {value}
            </td>
          ))}
        </tr>
      ))}
      {same.length > 0 && (
        <tr>
          <th scope="row">Agree on all</th>
          <td colSpan={pieces.length}>
            {same.length}: {same.map((key) => `${rowNames[key].toLowerCase()} ${pieces[0].seen?.[key]}`).join(' · ')}
          </td>
        </tr>
      )}
    </>
  );
}

export function Beside({ table, numbers }: { table: TableAnswer; numbers: string[] }) {
  const size = useSize();
  const [turned, turn] = useState(false);
  const pieces = numbers.flatMap((number) => table.pieces.find((piece) => piece.number === number) ?? []).slice(0, 6);
  const room = (size.w - (size.phone ? 80 : 170)) / Math.max(1, pieces.length);
  const sides = turned ? ['back', 'front'] : ['front', 'back'];
  const tallest = Math.max(...pieces.map((piece) => sizeOf(piece).h), 1);
  const widest = Math.max(...pieces.map((piece) => sizeOf(piece).w), 1);
  const pxmm = Math.min((size.h - 250) / 2 / tallest, (room - 18) / widest, usualDots);
  const [y0, y1] = span(pieces.map((piece) => piece.year));
  const axis: Axis = { x0: size.phone ? 14 : 150, y0: y0 - 5, y1: y1 + 5, k: (size.w - (size.phone ? 28 : 180)) / (y1 - y0 + 10) };
  const said = useSaid();
  // The zero of the side rule lies where the uppermost pieces begin.
  const body = useRef<HTMLTableSectionElement>(null);
  const [zero, setZero] = useState(0);
  const measure = () => setZero((body.current?.querySelector('td')?.getBoundingClientRect().top ?? 0) + 5 - 44);
  useLayoutEffect(measure, [pieces.length, pxmm, said, size.w]);
  useRule({ axis, flag: null, words: '', side: { ...sideOf(pxmm, 0), off: zero } });
  useKeys({ Escape: () => go('/table/' + encodeURIComponent(numbers[0] ?? '')), b: () => turn(!turned) });
  return (
    <div class="beside">
      <Sentence>
        {pieces.length} pieces side by side, {sides[0]}s over {sides[1]}s, at one scale
      </Sentence>
      <svg class="threads" width={size.w} height={said + pieces.length * 11} aria-hidden="true">
        {pieces.map((piece, i) => piece.year && <FadeBand key={piece.number} years={piece.year} x={(year) => xOf(axis, year)} y={said - 4 + i * 11} high={5} torn={piece.torn !== null} />)}
      </svg>
      <div class="scroller" tabIndex={0} role="region" aria-label="The pieces and what differs" onScroll={measure}>
        <table style={{ minWidth: 58 + 100 * pieces.length + 'px' }}>
          <thead>
            <tr>
              <td />
              {pieces.map((piece) => (
                <th key={piece.number} scope="col">
                  <a href={sheetOf(piece.number)}>{piece.number}</a>
                  <span class="clamp" title={piece.title}>
                    {piece.title}
                  </span>
                  <span class="made">{piece.made}</span>
                  <span class="by">{piece.by}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody ref={body}>
            {sides.map((view) => (
              <tr key={view}>
                <th scope="row">{view}</th>
                {pieces.map((piece) => {
                  const mm = sizeOf(piece, view);
                  const picture = piece.pictures.find((one) => one.view === view);
                  return (
                    <td key={piece.number}>
                      {picture ? <img src={photo(piece.number, view, 512, picture.v)} width={mm.w * pxmm} height={mm.h * pxmm} alt={`${piece.title}, ${view}`} /> : `no picture of the ${view}`}
                    </td>
                  );
                })}
              </tr>
            ))}
            <Differences pieces={pieces} />
          </tbody>
        </table>
        <p class="row">
          <a class="btn soft" href={'/table/' + encodeURIComponent(numbers[0] ?? '')}>
            Back to the table <span class="key">esc</span>
          </a>
          <button class="btn soft" onClick={() => turn(!turned)}>
            Turn all <span class="key">B</span>
          </button>
        </p>
      </div>
    </div>
  );
}
