// A spreadsheet taken in: how each column was read, what was not understood, and only then in.
import { useEffect, useState } from 'preact/hooks';
import { asProblem, call, write } from '../core/api';
import { Pick, ProblemSlip, Sentence } from '../core/parts';
import { go } from '../core/route';
import { onSheetFile, putSheetFile, readSheet, type SheetFile } from '../core/sheet_file';
import { Zigzag } from '../core/shapes';
import { useRule } from '../core/square';
import { tell, tellProblem } from '../core/tell';
import type { ImportAnswer, Problem, Remark } from '../core/types';
import { columnChoices, glossOf, willDo } from './sheet_columns';

export async function offerSheet(file: File) {
  const { file: read, why } = await readSheet(file);
  if (read) {
    putSheetFile(read);
    go('/show?see=spreadsheet');
  } else {
    tellProblem({ fault: 'refused', what: why, where: '', fix: '' });
  }
}

export function SheetPick({ label }: { label: string }) {
  return (
    <label class="btn main file">
      {label}
      <input
        type="file"
        class="unseen"
        accept=".csv,.tsv,.txt"
        onChange={(event) => {
          const field = event.target as HTMLInputElement;
          const file = field.files?.[0];
          field.value = '';
          if (file) {
            void offerSheet(file);
          }
        }}
      />
    </label>
  );
}

type Mends = Record<string, string>; // "row:heading" to what stands there instead

const asked = (file: SheetFile, words: Mends, mends: Mends) => ({
  text: file.text,
  name: file.name,
  columns: Object.entries(words).map(([heading, word]) => `${heading}=${word}`),
  mend: Object.entries(mends).map(([cell, value]) => `${cell}=${value}`),
});

function FaultRow({ fault, answer, mends, onMend }: { fault: Remark; answer: ImportAnswer; mends: Mends; onMend: (cell: string, value: string) => void }) {
  const row = answer.sheet.faulty.find((one) => one.row === fault.row);
  const heading = fault.column || answer.sheet.columns[0].heading;
  const cell = `${fault.row}:${heading}`;
  const mend = (event: Event) => {
    event.preventDefault();
    onMend(cell, String(new FormData(event.target as HTMLFormElement).get('value') ?? ''));
  };
  return (
    <li>
      {row && (
        <p class="cells">
          <b>{fault.row}</b>
          {row.cells.map((value, i) => (
            <span key={i} class={answer.sheet.columns[i]?.heading === fault.column ? 'bad' : ''}>
              {value || '–'}
            </span>
          ))}
        </p>
      )}
      <p class="torn">
        <Zigzag />
        <span>
          Row {fault.row}
          {fault.column && `, column "${fault.column}"`}: {fault.what}; {fault.fix}.
        </span>
      </p>
      <form class="row" onSubmit={mend}>
        <input class="field" name="value" aria-label={`What stands in row ${fault.row}, ${heading}`} placeholder="type what it should say" defaultValue={mends[cell] ?? ''} />
        <button class="btn soft">Mend it</button>
      </form>
    </li>
  );
}

function ColumnLine({ answer, onWord }: { answer: ImportAnswer; onWord: (heading: string, word: string) => void }) {
  return (
    <ul class="columns-read">
      {answer.sheet.columns.map((column) => (
        <li key={column.heading} class={column.word === 'note' ? 'q' : ''}>
          <b class="typed">{column.heading}</b>
          <small class="typed">{column.example.slice(0, 24) || 'nothing'}</small>
          <Pick label={glossOf(column.word)} name={`column ${column.heading} is`} choices={columnChoices(column)} chosen={column.word} onPick={(word) => onWord(column.heading, word)} />
        </li>
      ))}
    </ul>
  );
}

// What is set aside is given back as a file, to be mended and brought again.
function giveBack(name: string, rest: string) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([rest], { type: 'text/csv' }));
  link.download = name.replace(/\.\w+$/, '') + '.set-aside.csv';
  link.click();
  URL.revokeObjectURL(link.href);
}

function Reading({ file }: { file: SheetFile }) {
  const [words, setWords] = useState<Mends>({});
  const [mends, setMends] = useState<Mends>({});
  const [answer, set] = useState<ImportAnswer | null>(null);
  const [problem, say] = useState<Problem | null>(null);
  const [busy, work] = useState(false);
  useEffect(() => {
    let mine = true;
    call('import', { ...asked(file, words, mends), look: true }).then(
      (read) => mine && (set(read), say(null)),
      (fault) => mine && say(asProblem(fault)),
    );
    return () => void (mine = false);
  }, [file, words, mends]);
  const take = async () => {
    if (busy || !answer || problem) {
      return;
    }
    work(true);
    try {
      const done = await write('import', { ...asked(file, words, mends), 'skip-faulty': true });
      if (done.sheet.rest) {
        giveBack(file.name, done.sheet.rest);
      }
      tell(`${done.pieces_new} new, ${done.pieces_changed} changed, ${done.pieces_same} as before.` + (done.sheet.rest ? ' What was set aside is saved beside your downloads.' : ''));
      putSheetFile(null);
      go('/table');
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
    work(false);
  };
  if (!answer) {
    return problem ? <ProblemSlip problem={problem} /> : <p class="waiting">Reading {file.name}</p>;
  }
  return (
    <section class="slip reading" aria-label={file.name}>
      <p class="tiny">{file.name} · nothing is taken in yet</p>
      <h2>
        {answer.sheet.rows} rows read, {answer.faults.length === 0 ? 'all understood' : `${answer.faults.length} not understood`}
      </h2>
      <p class="sub" role="status">
        New {answer.pieces_new} · already here {answer.pieces_same} · changed {answer.pieces_changed}
      </p>
      {problem && <ProblemSlip problem={problem} />}
      <h3>How each column was read</h3>
      <ColumnLine answer={answer} onWord={(heading, word) => setWords({ ...words, [heading]: word })} />
      {answer.faults.length > 0 && <h3>What was not understood</h3>}
      <ul class="faulty">
        {answer.faults.slice(0, 20).map((fault) => (
          <FaultRow key={`${fault.row}${fault.column}`} fault={fault} answer={answer} mends={mends} onMend={(cell, value) => setMends({ ...mends, [cell]: value })} />
        ))}
      </ul>
      {answer.faults.length > 20 && <p class="tiny">and {answer.faults.length - 20} more</p>}
      {answer.notes.length > 0 && (
        <details>
          <summary>{answer.notes.length === 1 ? '1 cell is' : `${answer.notes.length} cells are`} kept as written, to be looked at</summary>
          <ul>
            {answer.notes.slice(0, 60).map((one, i) => (
              <li key={i} class="saying">
                Row {one.row}, {one.column}: {one.what}; {one.fix}.
              </li>
            ))}
          </ul>
        </details>
      )}
      <p class="row">
        <button class="btn main" aria-disabled={busy || !!problem} onClick={() => void take()}>
          {busy ? 'Taking it in' : willDo(answer)}
        </button>
        <button class="btn soft" onClick={() => putSheetFile(null)}>
          Leave it all
        </button>
        <span class="sub">The same file twice changes nothing.</span>
      </p>
    </section>
  );
}

export function Spreadsheet() {
  const [file, set] = useState<SheetFile | null>(null);
  useEffect(() => onSheetFile(set), []);
  useRule({ axis: null, flag: null, words: '', side: null });
  return (
    <div class="showing taking ready">
      <Sentence>
        A spreadsheet into <a class="pick" href="/show">the show</a>
      </Sentence>
      <div class="scroller wide" tabIndex={-1}>
        {file ? (
          <Reading file={file} key={file.name + file.text.length} />
        ) : (
          <div class="ground">
            <p class="lead">Drop a CSV anywhere on the page.</p>
            <p class="sub">One row a piece, headings in the first row. You see how each column was read before anything is taken in.</p>
            <p class="row">
              <SheetPick label="Choose a spreadsheet" />
            </p>
          </div>
        )}
      </div>
    </div>
  );
}
