// The first five minutes: an empty table, and three ways to put something on it.
import { Sentence } from '../core/parts';
import { useRule } from '../core/square';

const ways: { title: string; text: string; line: string }[] = [
  {
    title: 'Look at the demo',
    text: 'The Ennet coast, 312 invented pieces with drawn photographs, in a folder of its own. Your show stays empty.',
    line: 'backmark demo ennet && backmark infer ennet && backmark serve ennet',
  },
  {
    title: 'Bring a spreadsheet',
    text: 'One row a piece. A small map says what each column means; columns it does not name are kept as notes. Nothing is taken in if one row is not understood, and every fault is listed.',
    line: 'backmark import SHOW pieces.csv --map map.toml',
  },
  {
    title: 'Begin with one piece',
    text: 'A spreadsheet of one row does it: a number, a title, and what you see. Everything else can follow, piece by piece.',
    line: 'number,title,fitting,cord_type,tip_form',
  },
];

export function Empty() {
  useRule({ axis: null, flag: null, words: 'no years yet', side: { unit: 'mm', px: 0.75, step: 10, label: 50 } });
  return (
    <div class="first">
      <Sentence>The table is bare.</Sentence>
      <p class="lead">Three ways to lay something on it. The commands are typed at the terminal that serves this page; what they do shows here at once.</p>
      <ol>
        {ways.map((way) => (
          <li key={way.title} class="slip way">
            <h2>{way.title}</h2>
            <p>{way.text}</p>
            <code>{way.line}</code>
          </li>
        ))}
      </ol>
    </div>
  );
}
