// Prints: what will leave the house, and whether it still agrees with the record.
import { useState } from 'preact/hooks';
import { asProblem, call } from '../core/api';
import { useAsk } from '../core/hooks';
import { useKeys } from '../core/keys';
import { ProblemSlip, Sentence } from '../core/parts';
import { useRule } from '../core/square';
import { Zigzag } from '../core/shapes';
import { tell, tellProblem } from '../core/tell';
import type { Paper } from '../core/types';

const state = (paper: Paper) => (!paper.made ? 'not made yet' : paper.changed.length === 0 ? 'agrees' : paper.changed.length === 1 ? '1 thing changed' : paper.changed.length + ' things changed');

// A sheet of paper, small; a pile where there is more than one file.
function SheetOfPaper({ paper }: { paper: Paper }) {
  const stale = paper.changed.length > 0;
  return (
    <svg width="132" height="168" aria-hidden="true">
      {paper.stays && <rect x="2" y="6" width="9" height="150" fill="url(#stays)" />}
      {paper.files.length > 1 && <path d="M22 16h104v144H22z" fill="var(--sheet)" stroke="var(--hair)" />}
      <path d="M16 10h104v144H16z" fill={paper.made ? 'var(--sheet)' : 'none'} stroke={paper.made ? 'var(--hair)' : 'var(--ink-3)'} stroke-dasharray={paper.made ? undefined : '5 4'} />
      {paper.made && [...Array(11)].map((_, i) => <path key={i} d={`M28 ${34 + i * 10}h${i % 4 === 3 ? 48 : 80}`} stroke="var(--print)" stroke-opacity={i ? 0.35 : 0.9} stroke-width={i ? 2 : 4} />)}
      {stale && <path d="M44 84l5 -9l5 9l5 -9l5 9l5 -9l5 9l5 -9" fill="none" stroke="var(--print-rust)" stroke-width="2.6" />}
    </svg>
  );
}

// Whom a paper is written for: it decides what it says of lenders, values and places.
const readers: Record<string, string> = {
  public: 'For everybody: without values and places of keeping',
  designer: 'For the designer',
  printer: 'For the printer',
  lender: 'For a lender: of his own pieces alone',
  registrar: 'For the registrar',
  courier: 'For the courier',
  insurer: 'For the insurer',
  curator: 'For the curator',
};

function Chosen({ paper, busy, onMake }: { paper: Paper; busy: string; onMake: (name: string) => void }) {
  return (
    <aside class="slip side" aria-label="Chosen paper" tabIndex={0}>
      <h2>{paper.title}</h2>
      <p class="sub">
        {readers[paper.for] ?? `For ${paper.for}`}
        {paper.stays && '; it stays in the house.'}
        {!paper.stays && '.'}
      </p>
      {paper.caution && <p class="next">{paper.caution}</p>}
      {!paper.made && <p>Not made yet.</p>}
      {paper.made && paper.changed.length === 0 && (
        <p class="holds">
          <svg width="18" height="18" aria-hidden="true">
            <circle cx="9" cy="9" r="7.5" fill="none" stroke="var(--moss)" stroke-width="1.6" />
            <path d="M5.5 9.5l2.5 2.5l5 -6" fill="none" stroke="var(--moss)" stroke-width="1.6" />
          </svg>
          Agrees: {paper.facts} printed facts are as the record stands.
        </p>
      )}
      {paper.changed.slice(0, 6).map((one) => (
        <div class="was" key={one.number + one.printed}>
          <p class="torn">
            <Zigzag />
            <span>{one.number}</span>
          </p>
          <p>
            printed <u>{one.printed}</u>
            <br />
            now <u class="new">{one.now}</u>
          </p>
        </div>
      ))}
      {paper.changed.length > 6 && <p class="tiny">and {paper.changed.length - 6} more</p>}
      <p class="row">
        {paper.files.map((file) => (
          <a key={file} class="btn soft" href={'/prints/' + file} target="_blank" rel="noopener">
            {file}
          </a>
        ))}
      </p>
      <p class="row">
        <button class="btn main" aria-disabled={busy !== ''} onClick={() => !busy && onMake(paper.name)}>
          {busy === paper.name ? 'Making it' : paper.made ? 'Make it again' : 'Make it'} <span class="key">M</span>
        </button>
      </p>
    </aside>
  );
}

export function Prints() {
  const asked = useAsk('papers', {});
  const [at, choose] = useState(0);
  const [busy, setBusy] = useState('');
  useRule({ axis: null, flag: null, words: '', top: { unit: 'mm of paper', pxmm: 0.5 }, side: { unit: 'mm', px: 0.5, step: 20, label: 100, off: 70 } });
  const papers = asked.data?.papers ?? [];
  const make = async (name: string) => {
    setBusy(name);
    try {
      const answer = await call('print', { what: name });
      const findings = answer.printed.flatMap((one) => one.findings);
      tell(`Made: ${answer.printed.flatMap((one) => one.files).join(', ')}` + (findings.length ? `; ${findings.length} things to see to, first: ${findings[0].what}` : ''));
      asked.again();
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
    setBusy('');
  };
  const step = (by: number) => {
    const next = Math.max(0, Math.min(papers.length - 1, at + by));
    choose(next);
    document.querySelectorAll<HTMLElement>('.paper')[next]?.focus();
  };
  useKeys({
    ArrowRight: () => step(1),
    ArrowLeft: () => step(-1),
    m: () => papers[at] && !busy && void make(papers[at].name),
    Enter: () => papers[at]?.files[0] && void open('/prints/' + papers[at].files[0]),
  });
  if (asked.problem && !asked.data) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  const stale = papers.filter((paper) => paper.changed.length > 0).length;
  const made = papers.filter((paper) => paper.made).length;
  return (
    <div class={'prints' + (asked.data ? ' ready' : '')}>
      <svg width="0" height="0" aria-hidden="true">
        <pattern id="stays" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--ink)" stroke-width="1.6" />
        </pattern>
      </svg>
      <Sentence>
        {papers.length} papers, {made} made{stale > 0 ? `, ${stale} of them no longer as the record stands` : made > 0 ? ', all of them as the record stands' : ''}
      </Sentence>
      <div class="scroller" tabIndex={-1}>
        <ul class="papers">
          {papers.map((paper, i) => (
            <li key={paper.name}>
              <button class="paper" aria-pressed={i === at} onClick={() => choose(i)}>
                <SheetOfPaper paper={paper} />
                <b>{paper.title}</b>
                <small class={paper.changed.length ? 'rusty' : ''}>{state(paper)}</small>
              </button>
            </li>
          ))}
        </ul>
      </div>
      {papers[at] && <Chosen paper={papers[at]} busy={busy} onMake={make} />}
    </div>
  );
}
