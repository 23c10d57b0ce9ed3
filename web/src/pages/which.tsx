// Asks for a piece by its number, with those that the day plan has next.
import { photo } from '../core/api_photo';
import { useAsk, useKept } from '../core/hooks';
import { go } from '../core/route';
import { useRule } from '../core/square';
import type { TableAnswer } from '../core/types';

// The first pieces of the day plan, each a button: most often one of them is on the table.
function Planned({ table, to }: { table: TableAnswer; to: string }) {
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
              <a href={`/${to}/` + encodeURIComponent(number)}>
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

// Where no piece was named, or one that is not there.
export function Which({ table, missing, to }: { table: TableAnswer | null; missing?: string; to: 'notes' | 'sheet' }) {
  useRule({ axis: null, flag: null, words: '', side: null });
  return (
    <div class="which ready">
      <h1>{to === 'notes' ? 'Which piece is on the table?' : 'Which piece shall it be?'}</h1>
      {missing && <p class="torn">There is no piece {missing} in this show.</p>}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          const typed = new FormData(event.target as HTMLFormElement).get('number') as string;
          const wanted = typed.trim().toLowerCase();
          const found = table?.pieces.find((piece) => piece.number.toLowerCase() === wanted || piece.number.replace(/\D+0*/, '') === wanted.replace(/\D+0*/, ''));
          go(`/${to}/` + encodeURIComponent(found?.number ?? typed.trim()));
        }}
      >
        <input name="number" aria-label="Number of the piece" autocomplete="off" autofocus placeholder="ES 118" list="numbers" />
        <datalist id="numbers">{(table?.pieces ?? []).slice(0, 2000).map((piece) => <option key={piece.number} value={piece.number} label={piece.title} />)}</datalist>
        <button class="btn main">{to === 'notes' ? 'Begin' : 'Open its sheet'}</button>
      </form>
      {table && table.pieces.length > 0 && <Planned table={table} to={to} />}
    </div>
  );
}
