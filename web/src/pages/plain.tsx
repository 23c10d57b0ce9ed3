// The show as plain HTML: the same pieces, sortable by any column.
import { useState } from 'preact/hooks';
import { useAsk } from '../core/hooks';
import { ProblemSlip } from '../core/parts';
import { sheetOf } from '../core/route';
import type { TablePiece } from '../core/types';

const columns: [string, (piece: TablePiece) => string | number][] = [
  ['Number', (piece) => piece.number],
  ['Title', (piece) => piece.title],
  ['Made', (piece) => piece.made],
  ['Middle year', (piece) => piece.year?.p50 ?? ''],
  ['Maker', (piece) => piece.by],
  ['Tray', (piece) => piece.tray],
  ['Section', (piece) => piece.section ?? ''],
  ['Does not fit', (piece) => piece.torn ?? ''],
];

export function Plain({ onClose }: { onClose: () => void }) {
  const { data, problem, again } = useAsk('table', {});
  const [by, setBy] = useState(0);
  const [down, setDown] = useState(false);
  if (problem && !data) {
    return <ProblemSlip problem={problem} again={again} />;
  }
  const read = columns[by][1];
  const order = (a: TablePiece, b: TablePiece) => String(read(a)).localeCompare(String(read(b)), 'en', { numeric: true });
  const rows = [...(data?.pieces ?? [])].sort((a, b) => (down ? -order(a, b) : order(a, b)));
  return (
    <section class="over" tabIndex={0} aria-label="The show as a plain table">
      <h1>{rows.length} pieces</h1>
      <p>
        <button class="btn soft" onClick={onClose}>
          Back to the page <span class="key">T</span>
        </button>
      </p>
      <table class="plain">
        <thead>
          <tr>
            {columns.map(([name], i) => (
              <th key={name} scope="col" aria-sort={i === by ? (down ? 'descending' : 'ascending') : 'none'}>
                <button
                  onClick={() => {
                    setDown(i === by && !down);
                    setBy(i);
                  }}
                >
                  {name}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((piece) => (
            <tr key={piece.number}>
              {columns.map(([name, cell], i) => (
                <td key={name}>{i === 0 ? <a href={sheetOf(piece.number)}>{piece.number}</a> : cell(piece)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
