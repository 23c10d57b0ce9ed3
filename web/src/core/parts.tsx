// Small parts of every page: the sentence and its picks, buttons, problems.
import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from './types';
import { Zigzag } from './shapes';

export interface Choice {
  key: string;
  label: string;
}
interface PickProps {
  label: string;
  name: string; // what is chosen, for a screen reader
  choices: Choice[] | (() => Choice[]); // as a function: made when they are first wanted
  chosen?: string;
  find?: string; // a field above the choices; what is typed is chosen as "find:TEXT"
  onPick: (key: string) => void;
}
// A word of the sentence that is also its control.
export function Pick({ label, name, choices, chosen, find, onPick }: PickProps) {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLSpanElement>(null);
  const [left, setLeft] = useState(0);
  useEffect(() => {
    if (!open) {
      return;
    }
    const away = (event: Event) => !box.current?.contains(event.target as Node) && setOpen(false);
    addEventListener('pointerdown', away);
    const edge = box.current!.getBoundingClientRect();
    setLeft(Math.min(0, innerWidth - edge.left - 260));
    const first = box.current!.querySelector<HTMLElement>('.choices input, .choices [aria-selected=true], .choices button');
    first?.focus();
    return () => removeEventListener('pointerdown', away);
  }, [open]);
  const close = (back: boolean) => {
    setOpen(false);
    if (back) {
      box.current?.querySelector<HTMLElement>('.pick')?.focus();
    }
  };
  const keys = (event: KeyboardEvent) => {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      close(true);
    }
    const down = event.key === 'ArrowDown';
    if (down || event.key === 'ArrowUp') {
      event.preventDefault();
      const all = [...box.current!.querySelectorAll<HTMLElement>('.choices input, .choices button')];
      const at = all.indexOf(document.activeElement as HTMLElement);
      all[(at + (down ? 1 : all.length - 1)) % all.length]?.focus();
    }
  };
  return (
    <span ref={box} style={{ position: 'relative', display: 'inline-block' }}>
      <button class="pick" aria-haspopup="listbox" aria-expanded={open} aria-label={`${name}: ${label}`} onClick={() => setOpen(!open)}>
        {label}
      </button>
      {open && (
        <div class="slip choices" style={{ left: left + 'px', top: '100%' }} onKeyDown={keys}>
          {find !== undefined && (
            <input
              aria-label={find}
              placeholder={find}
              onKeyDown={(event) => {
                if (event.key === 'Enter') {
                  onPick('find:' + (event.target as HTMLInputElement).value.trim());
                  close(true);
                }
              }}
            />
          )}
          <div role="listbox" aria-label={name}>
            {(typeof choices === 'function' ? choices() : choices).map((choice) => (
              <button
                key={choice.key}
                role="option"
                aria-selected={choice.key === chosen}
                onClick={() => {
                  onPick(choice.key);
                  close(true);
                }}
              >
                {choice.label}
              </button>
            ))}
          </div>
        </div>
      )}
    </span>
  );
}

// How high the sentence stands over the page: as many lines as its words need. What scrolls under
// it, and a rule that measures what scrolls, begin below.
let said = 58;
const hearSaid = new Set<(high: number) => void>();
export function useSaid(): number {
  const [high, set] = useState(said);
  useLayoutEffect(() => {
    hearSaid.add(set);
    set(said);
    return () => void hearSaid.delete(set);
  }, []);
  return high;
}

export function Sentence({ children }: { children: ComponentChildren }) {
  const words = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    const measure = () => {
      said = words.current!.offsetHeight;
      document.documentElement.style.setProperty('--said', said + 'px');
      hearSaid.forEach((hear) => hear(said));
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(words.current!);
    return () => watch.disconnect();
  }, []);
  return (
    <h1 class="say" ref={words}>
      {children}
    </h1>
  );
}

export function ProblemSlip({ problem, again }: { problem: Problem; again?: () => void }) {
  return (
    <div class="slip trouble" role="alert">
      <p class="torn">
        <Zigzag />
        <span>{problem.what}</span>
      </p>
      {problem.where && <p class="sub">{problem.where}</p>}
      {problem.fix && <p>{problem.fix}</p>}
      {again && (
        <p>
          <button class="btn soft" onClick={again}>
            Ask again
          </button>
        </p>
      )}
    </div>
  );
}

export const Key = ({ children }: { children: string }) => (
  <span class="key" aria-hidden="true">
    {children}
  </span>
);
