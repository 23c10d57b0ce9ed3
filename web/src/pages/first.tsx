// The first five minutes: an empty table, and three ways to put something on it.
import { useState } from 'preact/hooks';
import { asProblem, write } from '../core/api';
import { Sentence } from '../core/parts';
import { go } from '../core/route';
import { useRule } from '../core/square';
import { tellProblem } from '../core/tell';
import { SheetPick } from './spreadsheet';

function FirstPiece() {
  const [busy, set] = useState(false);
  const begin = async (event: Event) => {
    event.preventDefault();
    const typed = new FormData(event.target as HTMLFormElement);
    const number = String(typed.get('number') ?? '').trim();
    if (busy || !number) {
      return;
    }
    set(true);
    try {
      const title = String(typed.get('title') ?? '').trim();
      await write('add', { kind: 'piece', words: [`number=${number}`, ...(title ? [`title=${title}`] : [])] });
      go('/notes/' + encodeURIComponent(number));
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
    set(false);
  };
  return (
    <form class="row" onSubmit={begin}>
      <input class="field" name="number" required aria-label="Number of the first piece" placeholder="number, as ES 1" />
      <input class="field" name="title" aria-label="Title of the first piece" placeholder="title, as Scallop" />
      <button class="btn main">{busy ? 'Laying it down' : 'Start noting'}</button>
    </form>
  );
}

export function Empty() {
  useRule({ axis: null, flag: null, words: 'no years yet', side: { unit: 'mm', px: 0.75, step: 10, label: 50 } });
  return (
    <div class="first">
      <Sentence>The table is bare.</Sentence>
      <p class="lead">Three ways to lay something on it:</p>
      <ol>
        <li class="slip way">
          <h2>Look at the demo</h2>
          <p>The Ennet coast, 312 invented pieces with drawn photographs, in a folder of its own. Your show stays empty.</p>
          <code>backmark demo ennet && backmark infer ennet && backmark serve ennet</code>
        </li>
        <li class="slip way">
          <h2>Bring a spreadsheet</h2>
          <p>Drop a CSV anywhere, one row a piece. You see how each column was read before anything is taken in.</p>
          <SheetPick label="Choose a spreadsheet" />
        </li>
        <li class="slip way">
          <h2>Note the first piece</h2>
          <p>Lay it down, turn it over, type what you see in any order.</p>
          <FirstPiece />
        </li>
      </ol>
    </div>
  );
}
