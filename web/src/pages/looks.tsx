// Looks: the day in minutes, what to look at and what it should settle; what does not fit.
import { useState } from 'preact/hooks';
import { span, xOf, type Axis } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Pick, ProblemSlip, Sentence } from '../core/parts';
import { go, sheetOf } from '../core/route';
import { Zigzag } from '../core/shapes';
import { bitsOf, narrows } from '../core/next_looks';
import { useRule } from '../core/square';
import { asProblem, call } from '../core/api';
import { tell, tellProblem } from '../core/tell';
import type { Look, LookAnswer } from '../core/types';

interface Card {
  look: Look;
  at: string;
  first: boolean; // of its stop
  stopMinutes: number;
  start: number; // minutes after the day began
}

// The plan as cards on the clock: each look where its minutes fall, fetching and handling at the
// head of its stop.
export function cardsOf(answer: LookAnswer): Card[] {
  const cards: Card[] = [];
  let stopStart = 0;
  for (const stop of answer.plan) {
    const looks = stop.looks.flatMap((one) => answer.looks.find((look) => look.number === one.number && look.character === one.character) ?? []);
    const own = looks.reduce((sum, look) => sum + look.minutes, 0);
    let start = stopStart + Math.max(0, stop.minutes - own);
    looks.forEach((look, i) => {
      cards.push({ look, at: stop.at, first: i === 0, stopMinutes: stop.minutes, start });
      start += look.minutes;
    });
    stopStart += stop.minutes;
  }
  return cards;
}

export const clock = (minutes: number, begin = 9) => `${begin + Math.floor(minutes / 60)}:${String(Math.round(minutes % 60)).padStart(2, '0')}`;

// What the likeliest answers would leave, as years: the mean of their ends.
function after(look: Look): { p10: number; p50: number; p90: number } | null {
  const weight = look.answers.reduce((sum, one) => sum + one.p, 0);
  if (weight === 0) {
    return null;
  }
  const mean = (read: (one: Look['answers'][number]) => number) => look.answers.reduce((sum, one) => sum + one.p * read(one), 0) / weight;
  return { p10: mean((one) => one.p10), p50: mean((one) => one.p50), p90: mean((one) => one.p90) };
}

function Narrowing({ look, x, width }: { look: Look; x: (year: number) => number; width: number }) {
  const then = after(look);
  const band = (from: number, to: number, y: number, high: number, strong: number) => (
    <g>
      <rect x={from} y={y} width={Math.max(2, to - from)} height={high} fill="var(--ink)" fill-opacity={strong} />
      <path d={`M${from} ${y - 3}v${high + 6}M${to} ${y - 3}v${high + 6}`} stroke="var(--ink)" stroke-width="1.4" />
    </g>
  );
  return (
    <svg width={width} height="52" role="img" aria-label={`now ${look.p10} to ${look.p90}` + (then ? `; expected ${Math.round(then.p10)} to ${Math.round(then.p90)}` : '')}>
      {band(x(look.p10), x(look.p90), 10, 6, 0.35)}
      {then && (
        <g>
          <path d={`M${x(look.p10)} 16L${x(then.p10)} 34M${x(look.p90)} 16L${x(then.p90)} 34`} stroke="var(--ink)" stroke-opacity=".45" />
          {band(x(then.p10), x(then.p90), 34, 7, 0.85)}
        </g>
      )}
    </svg>
  );
}

function Conflicts({ answer }: { answer: LookAnswer }) {
  return (
    <aside class="slip side" aria-label="Pieces that disagree with themselves" tabIndex={0}>
      <h2>{answer.conflicts.length} things do not fit</h2>
      {answer.conflicts.slice(0, 12).map((one) => (
        <div class="c" key={one.number + one.odd_one}>
          <a href={sheetOf(one.number)}>{one.number}</a>
          <p>
            <b class="torn">
              <Zigzag />
              <span>{one.odd_one}</span>
            </b>
            {Math.round(20 * one.p)} chances in 20 that it is the odd one
          </p>
        </div>
      ))}
      {answer.notes.map((note) => (
        <p class="tiny" key={note}>
          {note}
        </p>
      ))}
    </aside>
  );
}

export function Looks() {
  const [hours, setHours] = useKept<number>('hours', 6);
  const [by, setBy] = useKept<string>('by', 'tray');
  const asked = useAsk('look', { hours, by });
  const pieces = useAsk('table', {});
  const size = useSize();
  const [at, walk] = useState(0);
  const [done, finish] = useState<string[]>([]);
  const answer = asked.data;
  const cards = answer ? cardsOf(answer) : [];
  const [y0, y1] = span((pieces.data?.pieces ?? []).map((piece) => piece.year));
  const right = size.phone ? 20 : size.tablet ? 170 : 530; // the slip and the buttons
  const words = size.phone ? 14 : 330;
  const axis: Axis = { x0: words + 20, y0, y1, k: (size.w - right - words - 40) / (y1 - y0) };
  const key = (card: Card) => card.look.number + '/' + card.look.character;
  const mark = (i: number) => cards[i] && finish(done.includes(key(cards[i])) ? done.filter((one) => one !== key(cards[i])) : [...done, key(cards[i])]);
  const step = (by: number) => {
    const next = Math.max(0, Math.min(cards.length - 1, at + by));
    walk(next);
    document.querySelectorAll<HTMLElement>('.look-card')[next]?.focus();
  };
  const print = async () => {
    try {
      await call('print', { what: 'look', hours, by });
      tell('The look list is made: prints/look.pdf', { label: 'Open it', run: () => void open('/prints/look.pdf') });
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  useKeys({ ArrowDown: () => step(1), ArrowUp: () => step(-1), d: () => mark(at), Enter: () => cards[at] && go(sheetOf(cards[at].look.number)), p: () => void print() });
  useRule({ axis: pieces.data ? axis : null, flag: cards[at]?.look.p50 ?? null, words: '', side: null });
  if (asked.problem && !answer) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  return (
    <div class={'looks' + (answer ? ' ready' : '')}>
      <Sentence>
        A day of <Pick label={hours + ' hours'} name="hours" chosen={String(hours)} choices={[1, 2, 3.5, 6, 8].map((h) => ({ key: String(h), label: h + ' hours' }))} onPick={(h) => setHours(Number(h))} /> by{' '}
        <Pick label={by} name="planned by" chosen={by} choices={[{ key: 'tray', label: 'tray' }, { key: 'lender', label: 'lender' }]} onPick={setBy} />
        {answer && `, ${cards.length} looks, ${Math.round(answer.planned_minutes)} minutes`}
        {!answer && ': weighing what each look would settle'}
      </Sentence>
      {answer && (
        <div class="scroller" tabIndex={-1}>
          {cards.length === 0 && <p class="note">Nothing would settle more. Weigh again after new evidence.</p>}
          <ol>
            {cards.map((card, i) => {
              const folded = done.includes(key(card));
              const title = pieces.data?.pieces.find((piece) => piece.number === card.look.number)?.title ?? '';
              return (
                <li key={key(card)}>
                  {card.first && (
                    <p class="stop">
                      {i > 0 && 'put back; '}fetch {card.at} <span>{Math.round(card.stopMinutes)} minutes</span>
                    </p>
                  )}
                  <div
                    class={'look-card' + (i === at ? ' on' : '') + (folded ? ' done' : '')}
                    tabIndex={0}
                    role="group"
                    aria-label={`${clock(card.start)}: ${card.look.number}, ${card.look.character}`}
                    onFocus={() => walk(i)}
                    style={{ minHeight: (folded ? 34 : Math.max(72, card.look.minutes * 12)) + 'px' }}
                  >
                    <div class="of">
                      <span class="time">{clock(card.start)}</span>
                      <p>
                        <b>
                          {card.look.number} · {card.look.label}
                        </b>
                        {!folded && (
                          <>
                            <br />
                            {title}
                            <br />
                            <small>
                              {card.look.part && card.look.part + ', '}
                              {Math.round(card.look.minutes)} min; {bitsOf(card.look.gain_bits)}; {narrows(card.look.gain_years)}
                            </small>
                          </>
                        )}
                      </p>
                    </div>
                    {!folded && !size.phone && <Narrowing look={card.look} x={(year) => xOf(axis, year) - words - 16} width={size.w - right - words} />}
                    <div class="do">
                      <button class="btn soft" aria-pressed={folded} onClick={() => mark(i)}>
                        {folded ? 'Done' : 'Do'}
                      </button>
                      <a class="btn soft" href={sheetOf(card.look.number)}>
                        Sheet
                      </a>
                    </div>
                  </div>
                </li>
              );
            })}
          </ol>
          <p class="row">
            <button class="btn main" onClick={() => void print()}>
              Print the list <span class="key">P</span>
            </button>
          </p>
        </div>
      )}
      {answer && <Conflicts answer={answer} />}
    </div>
  );
}
