// Changed meanwhile: both values side by side, and the choice which shall stand.
import { useEffect, useRef, useState } from 'preact/hooks';
import { linesOf, onClash, timeOf, yourLines, type Clash } from './clash';

interface Open {
  clash: Clash;
  done: (mine: boolean) => void;
}

export function ClashSlip() {
  const [open, set] = useState<Open | null>(null);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    onClash((clash) => new Promise((done) => set({ clash, done })));
    return () => onClash(() => Promise.resolve(false));
  }, []);
  useEffect(() => {
    if (open) {
      const from = document.activeElement as HTMLElement | null;
      box.current?.querySelector('button')?.focus();
      return () => from?.focus();
    }
  }, [open]);
  if (!open) {
    return null;
  }
  const { clash } = open;
  const choose = (mine: boolean) => {
    set(null);
    open.done(mine);
  };
  return (
    <section ref={box} class="slip clash" role="alertdialog" aria-label={`${clash.where} changed meanwhile`} onKeyDown={(event) => event.key === 'Escape' && (event.stopPropagation(), choose(false))}>
      <h2>{clash.where} changed meanwhile</h2>
      <p class="sub">Somebody wrote while you did. Neither is lost: what gives way stays in the history.</p>
      <div class="both">
        <div>
          <h3>As it stands now</h3>
          {clash.theirs.map((one) => (
            <div class="saying" key={one.id}>
              <b>{one.what.length > 90 ? one.what.slice(0, 88) + ' …' : one.what}</b>
              <small>
                {' '}
                {one.who}, {timeOf(one.when)}
              </small>
              {linesOf(one.detail).slice(0, 6).map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          ))}
          {clash.theirs.length === 0 && <p class="sub">It was changed; what it was is in the history of the piece.</p>}
          <button class="btn soft" onClick={() => choose(false)}>
            Leave it so <span class="key">esc</span>
          </button>
        </div>
        <div>
          <h3>Yours</h3>
          <div class="saying">
            <b>
              {clash.operation} {clash.where}
            </b>
            {yourLines(clash.yours).map((line) => (
              <p key={line}>{line}</p>
            ))}
          </div>
          <button class="btn main" onClick={() => choose(true)}>
            Write mine as well
          </button>
        </div>
      </div>
    </section>
  );
}
