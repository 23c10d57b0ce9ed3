// Care of one piece: light, air, weight, law and leave, each a check; what it may be made of.
import { useState } from 'preact/hooks';
import { asProblem, write } from '../core/api';
import { burns, Candle, Check } from '../core/check';
import { useAsk } from '../core/hooks';
import { Pick } from '../core/parts';
import { tell, tellProblem } from '../core/tell';
import { undo } from '../core/undo';
import { caseAddress } from './case_layout';
import { Bench } from './sheet_bench';

const uses = [
  { key: 'show', label: 'being shown' },
  { key: 'print', label: 'being printed' },
  { key: 'web', label: 'the web' },
  { key: 'all', label: 'all three' },
  { key: 'consent', label: 'what its community allows' },
];
const answers = [
  { key: 'asked', label: 'asked' },
  { key: 'given', label: 'given' },
  { key: 'refused', label: 'refused' },
];
const labelOf = (list: { key: string; label: string }[], key: string) => list.find((one) => one.key === key)?.label ?? key;

// An answer that came: one sentence, logged with its day.
function Leave({ number }: { number: string }) {
  const [use, setUse] = useState('print');
  const [answer, setAnswer] = useState('given');
  const log = async () => {
    try {
      await write('leave', { subject: number, use, answer });
      tell(`${number}: leave for ${labelOf(uses, use)} ${answer}.`, { label: 'Undo', run: () => void undo() });
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  return (
    <p class="leave">
      Leave for <Pick label={labelOf(uses, use)} name="leave for" chosen={use} choices={uses} onPick={setUse} /> was <Pick label={answer} name="answer" chosen={answer} choices={answers} onPick={setAnswer} />{' '}
      <button class="btn soft" onClick={() => void log()}>
        Log it
      </button>
    </p>
  );
}

export function Care({ number }: { number: string }) {
  const asked = useAsk('care', { number });
  const care = asked.data;
  const light = care?.checks.find((one) => one.what === 'Light');
  return (
    <section class="care" aria-label={`Care of ${number}`}>
      <h2>
        Care {care && <small>{care.case ? <a href={caseAddress(care.case)}>in the case {care.case}</a> : 'in no case yet'}</small>}
      </h2>
      {asked.problem && <p class="torn">{asked.problem.what}</p>}
      {!care && !asked.problem && <p class="sub">Reckoning light, air and leave</p>}
      {light && burns(light) && (
        <p class="spent">
          <Candle check={light} width={240} />
        </p>
      )}
      {care && (
        <ul class="checks">
          {care.checks.map((check, i) => (
            <Check key={check.what + i} check={check} />
          ))}
        </ul>
      )}
      {care && <Leave number={number} />}
      <Bench number={number} />
      {care?.notes.map((note) => (
        <p class="tiny" key={note}>
          {note}
        </p>
      ))}
    </section>
  );
}
