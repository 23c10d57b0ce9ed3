// The entry line: what is typed, what each part of it was taken for, and what the answer would
// be. Nothing is kept until one says so.
import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../core/api';
import { note } from '../core/later';
import type { Look, Thought } from '../core/types';
import { BeadChart } from '../core/shapes';
import { NewTerm } from './new_term';

const reasons = ['measured again', 'better light', 'typing slip', 'other'];

// Asks what the line would do with every key: one question at a time, the line as it then stands
// next. It is answered sooner than a rest between two keys would take.
function useThought(number: string, line: string, round: number): { thought: Thought | null; weighing: boolean } {
  const [thought, set] = useState<Thought | null>(null);
  const [weighing, weigh] = useState(false);
  const wish = useRef({ line: '' });
  const busy = useRef(false);
  const ask = async () => {
    busy.current = true;
    for (let asked; asked !== wish.current && wish.current.line.trim(); ) {
      asked = wish.current;
      const late = setTimeout(() => weigh(true), 250);
      const answer = await call('what-if', { number, line: asked.line }).catch(() => null);
      clearTimeout(late);
      if (answer && wish.current.line.trim()) {
        set(answer);
      }
    }
    weigh(false);
    busy.current = false;
  };
  useEffect(() => {
    wish.current = { line };
    if (!line.trim()) {
      set(null);
    } else if (!busy.current) {
      void ask();
    }
  }, [number, line, round]);
  useEffect(() => () => void (wish.current = { line: '' }), []);
  return { thought, weighing };
}

interface EntryProps {
  number: string;
  wide: boolean;
  parts: string[]; // kinds of parts that a new character may belong to
  replaces: (label: string) => boolean;
  onKept: () => void;
  next?: Look[]; // what a look at this piece would settle, most first
}
export function Entry({ number, wide, parts, replaces, onKept, next = [] }: EntryProps) {
  const [line, type] = useState('');
  const [before, remember] = useState('');
  const [reason, why] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const [round, again] = useState(0);
  const box = useRef<HTMLDivElement>(null);
  const { thought, weighing } = useThought(number, line, round);
  const read = thought?.read ?? [];
  const old = read.find((one) => one.label && replaces(one.label));
  const last = line.slice(line.lastIndexOf(';') + 1).trim();
  const chips = [...new Set(read.flatMap((one) => one.near))].slice(0, 6);
  const take = (chip: string) => {
    const wrong = read.find((one) => one.near.includes(chip))!;
    type(line.replace(wrong.text, chip) + '; ');
    field.current?.focus();
  };
  const forget = () => {
    type('');
    why('');
    field.current?.focus();
  };
  const keep = async () => {
    if (!line.trim() || (old && !reason)) {
      return;
    }
    remember(line);
    const text = line.trim().replace(/;+$/, '');
    forget();
    await note({ number, line: text, ...(reason ? { reason } : {}) });
    onKept();
  };
  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter') {
      event.preventDefault();
      void keep();
    } else if (event.key === 'Escape') {
      event.stopPropagation();
      forget();
    } else if (event.key === 'ArrowUp' && !line) {
      event.preventDefault();
      type(before);
    } else if (event.key === 'Tab' && !event.shiftKey && chips[0]) {
      event.preventDefault();
      take(chips[0]);
    } else if (event.altKey && event.code === 'KeyN') {
      event.preventDefault();
      box.current?.querySelector<HTMLElement>('.new-term .pick')?.click();
    } else if (event.altKey && chips[Number(event.key) - 1]) {
      event.preventDefault();
      take(chips[Number(event.key) - 1]);
    }
  };
  const specials = ['none', 'cannot tell'].map((value) => {
    const label = read.length ? read[read.length - 1].label || last.split(/[:=]/)[0] : last.split(/[:=]/)[0];
    return { value, label };
  });
  return (
    <div class="entry" ref={box}>
      {wide && thought && (
        <div class={'live' + (weighing ? ' weigh' : '')}>
          <p class="made">
            {thought.made}
            <small>{thought.by}</small>
          </p>
          <BeadChart made={thought.made} years={thought.year} width={320} />
        </div>
      )}
      <div class="line">
        <input ref={field} value={line} aria-label={`What you see on ${number}`} placeholder="cord: braided leather; height: 49.5; tips: none" onInput={(event) => type((event.target as HTMLInputElement).value)} onKeyDown={press} autocomplete="off" spellcheck={false} />
        <p class="gloss" aria-live="polite">
          {read.length === 0 && <span class="empty">nothing is kept until you say so</span>}
          {read.map((one, i) => (
            <span key={i} class={one.label ? '' : 'q'}>
              {one.text}
              <small>
                {one.label ? `${one.label}: ${one.value}` : one.trouble + '; kept as plain text'}
                {one.fresh.length > 0 && <b> · a new term</b>}
              </small>
            </span>
          ))}
        </p>
        {!wide && thought && (
          <p class={'would' + (weighing ? ' weigh' : '')}>
            It would be <b>{thought.made}</b>, {thought.by}.
          </p>
        )}
      </div>
      <NewTerm
        read={read}
        parts={parts}
        onTerm={(wrong, saying) => {
          type(line.replace(wrong, saying));
          setTimeout(() => field.current?.focus());
        }}
        onCharacter={() => {
          again(round + 1);
          setTimeout(() => field.current?.focus());
        }}
      />
      {old && (
        <p class="why">
          Why does this replace what was seen before ({old.label})?{' '}
          {reasons.map((one) => (
            <button key={one} class="btn soft" aria-pressed={reason === one} onClick={() => why(one)}>
              {one}
            </button>
          ))}
        </p>
      )}
      <div class="chips">
        {chips.map((chip) => (
          <button key={chip} class="chip" onClick={() => take(chip)}>
            {chip}
            <small>did you mean this</small>
          </button>
        ))}
        {!last &&
          next.map((look) => (
            <button
              key={look.character}
              class="chip"
              onClick={() => {
                type(`${line}${line ? ' ' : ''}${look.label}: `);
                field.current?.focus();
              }}
            >
              {look.label}
              <small>look next, {Math.round(look.minutes)} min</small>
            </button>
          ))}
        {specials.map(({ value, label }) => (
          <button
            key={value}
            class="chip"
            aria-disabled={!label}
            onClick={() => {
              if (label) {
                const head = line.slice(0, line.lastIndexOf(';') + 1);
                type(`${head}${head ? ' ' : ''}${label}: ${value}`);
                field.current?.focus();
              }
            }}
          >
            {value === 'none' ? 'Looked for, none' : 'Cannot read'}
            <small>{label || 'name the part first'}</small>
          </button>
        ))}
        <button class="chip" onClick={forget}>
          Forget
          <small>esc</small>
        </button>
        <button class="chip ok" aria-disabled={!line.trim() || (!!old && !reason)} onClick={() => void keep()}>
          Keep
          <small>{old && !reason ? 'say why first' : '↵'}</small>
        </button>
      </div>
    </div>
  );
}
