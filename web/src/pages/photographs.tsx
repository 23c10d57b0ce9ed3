// Photographs into the show: drop a folder or choose files; what did not match; what is missing.
import { useEffect, useState } from 'preact/hooks';
import { asProblem, photo } from '../core/api';
import { chosenFiles } from '../core/drop';
import { usualDots } from '../core/geometry';
import { useAsk } from '../core/hooks';
import { busy, onIntake, takeAs, takePhotographs, type Intake } from '../core/intake';
import { ProblemSlip, Sentence } from '../core/parts';
import { sheetOf } from '../core/route';
import { Zigzag } from '../core/shapes';
import { useRule } from '../core/square';
import { tellProblem } from '../core/tell';
import { sizeOf } from './table_layout';
import type { Missing, TableAnswer } from '../core/types';

const many = (n: number, one: string) => (n === 1 ? `1 ${one}` : `${n} ${one}s`);
const scale = 5;

function FilePick({ label, folder }: { label: string; folder?: boolean }) {
  return (
    <label class="btn soft file">
      {label}
      <input
        type="file"
        multiple
        class="unseen"
        accept={folder ? undefined : 'image/jpeg,image/png'}
        {...(folder ? { webkitdirectory: true } : {})}
        onChange={(event) => {
          const field = event.target as HTMLInputElement;
          void takePhotographs(chosenFiles(field.files));
          field.value = '';
        }}
      />
    </label>
  );
}

function Unread({ one }: { one: Intake['unmatched'][number] }) {
  const [words, type] = useState('');
  const [why, say] = useState('');
  const take = async (event: Event) => {
    event.preventDefault();
    try {
      const left = words.trim() ? await takeAs(one, words.trim()) : null;
      say(left ? `${left.what}; ${left.fix}` : '');
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  return (
    <li>
      <p>
        <b class="typed">{one.name}</b> {one.what}; {one.fix}.
      </p>
      {!one.number && (
        <form class="row" onSubmit={take}>
          <input class="field" aria-label={`Number and side of ${one.name}`} placeholder="number and side, as ES 118 back" value={words} onInput={(event) => type((event.target as HTMLInputElement).value)} />
          <button class="btn soft">Take in as this</button>
        </form>
      )}
      {why && (
        <p class="torn" role="alert">
          <Zigzag /> {why}
        </p>
      )}
    </li>
  );
}

function Taken({ intake, table }: { intake: Intake; table: TableAnswer | null }) {
  const byNumber = new Map(table?.pieces.map((piece) => [piece.number, piece]));
  const pxmm = usualDots / scale;
  return (
    <ol class="took">
      {intake.taken.slice(-60).map((one) => {
        const piece = byNumber.get(one.number);
        const picture = piece?.pictures.find((each) => each.view === one.view);
        return (
          <li key={one.name}>
            {picture ? <img src={photo(one.number, one.view, 128, picture.v)} height={sizeOf(piece!, one.view).h * pxmm} alt="" /> : <span class="nopicture">{one.view}</span>}
            <a href={sheetOf(one.number)}>{one.number}</a>
            <small>{one.view}</small>
          </li>
        );
      })}
    </ol>
  );
}

function Lot({ intake, table }: { intake: Intake; table: TableAnswer | null }) {
  if (intake.of === 0 && intake.passed.length === 0) {
    return null;
  }
  const words = [`${intake.taken.length} taken in`, `${intake.same.length} were there already`, `${intake.unmatched.length} did not match`];
  return (
    <section class="lot" aria-label="This lot">
      <h2>{busy() ? `${intake.done} of ${intake.of} sent` : many(intake.of, 'picture')}</h2>
      <p role="status">{words.join(' · ')}</p>
      <progress max={Math.max(1, intake.of)} value={intake.of ? intake.done : 1} aria-label="Pictures sent" />
      {intake.problem && <ProblemSlip problem={{ ...intake.problem, fix: `${intake.problem.fix}; the ${intake.of - intake.done} left were not sent, bring the same folder again` }} />}
      {intake.unmatched.length > 0 && (
        <>
          <h3>Did not match</h3>
          <ul class="unread">
            {intake.unmatched.map((one) => (
              <Unread key={one.name} one={one} />
            ))}
          </ul>
        </>
      )}
      {intake.passed.length > 0 && (
        <p class="tiny">
          Passed over, no pictures: <span class="typed">{intake.passed.slice(0, 12).join(', ')}</span>
          {intake.passed.length > 12 && ` and ${intake.passed.length - 12} more`}
        </p>
      )}
      {intake.taken.length > 0 && (
        <>
          <h3>Taken in</h3>
          <Taken intake={intake} table={table} />
        </>
      )}
    </section>
  );
}

function MissingViews({ missing }: { missing: Missing['missing'] }) {
  const [open, set] = useState(40);
  return (
    <aside class="slip side" aria-label="Missing views" tabIndex={0}>
      <h2>{missing.length ? `${many(missing.length, 'piece')} miss${missing.length === 1 ? 'es' : ''} a view` : 'Every piece has a front and a back'}</h2>
      {missing.slice(0, open).map((one) => (
        <div class="c" key={one.number}>
          <a href={sheetOf(one.number)}>{one.number}</a>
          <p>{one.missing.join(' and ')}</p>
        </div>
      ))}
      {open < missing.length && (
        <button class="btn soft" onClick={() => set(open + 200)}>
          {Math.min(200, missing.length - open)} more of {missing.length - open}
        </button>
      )}
    </aside>
  );
}

export function Photographs() {
  const asked = useAsk('photographs', {});
  const table = useAsk('table', {});
  const [intake, set] = useState<Intake | null>(null);
  useEffect(() => onIntake(set), []);
  const pxmm = usualDots / scale;
  useRule({ axis: null, flag: null, words: '', top: { unit: 'mm', pxmm }, side: { unit: 'mm', px: pxmm, step: 10, label: 50 } });
  if (asked.problem && !asked.data) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  if (!asked.data || !intake) {
    return <p class="waiting">Counting the photographs</p>;
  }
  return (
    <div class="showing taking ready">
      <Sentence>
        The photographs of <a class="pick" href="/show">the show</a>, each matched to its piece by the name of its file
      </Sentence>
      <div class="scroller" tabIndex={-1}>
        <div class="ground">
          <p class="lead">Drop pictures or a folder of them anywhere on the page.</p>
          <p class="sub">
            Named after their pieces: <span class="typed">ES-118.jpg</span>, <span class="typed">es_118_back (2).png</span>, or a folder <span class="typed">ES 118</span> with <span class="typed">back.jpg</span> in it. JPEG and PNG. They are copied byte for byte and never changed.
          </p>
          <p class="row">
            <FilePick label="Choose pictures" />
            <FilePick label="Choose a folder" folder />
          </p>
        </div>
        <Lot intake={intake} table={table.data} />
      </div>
      <MissingViews missing={asked.data.missing} />
    </div>
  );
}
