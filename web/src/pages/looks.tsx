// Looks: the day in minutes, what to look at and what it should settle; what does not fit.
import { useState } from 'preact/hooks';
import { span, xOf, type Axis } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Key, Pick, ProblemSlip, Sentence, useSaid } from '../core/parts';
import { photo } from '../core/api_photo';
import { go, sheetOf } from '../core/route';
import { Zigzag } from '../core/shapes';
import { useRule } from '../core/square';
import { asProblem, call } from '../core/api';
import { tell, tellProblem } from '../core/tell';
import type { LookAnswer, TablePiece } from '../core/types';
import { LookCard } from './looks_card';
import { clock, missedWords, stopsOf, type Stop } from './looks_plan';

type Pieces = Map<string, TablePiece>;

function Conflicts({ answer, pieces, onPrint }: { answer: LookAnswer; pieces: Pieces; onPrint: () => void }) {
  return (
    <aside class="slip side disagree" aria-label="Pieces that disagree with themselves" tabIndex={0}>
      <h2>{answer.conflicts.length === 0 ? 'Nothing disagrees with itself' : 'Pieces that disagree with themselves'}</h2>
      {answer.conflicts.length > 0 && <p class="sub">Each has one part or story of another age.</p>}
      {answer.conflicts.slice(0, 12).map((one) => {
        const front = pieces.get(one.number)?.pictures.find((picture) => picture.view === 'front');
        return (
          <div class="c" key={one.number + one.odd_one}>
            <span class="thumb">{front ? <img src={photo(one.number, 'front', 128, front.v)} alt="" /> : <Zigzag />}</span>
            <p>
              <a href={sheetOf(one.number)}>{one.number}</a> · {Math.round(20 * one.p)} in 20
              <b class="odd">{one.odd_one}</b>
            </p>
          </div>
        );
      })}
      {answer.notes.map((note) => (
        <p class="tiny" key={note}>
          {note}
        </p>
      ))}
      {answer.plan.length > 0 && (
        <p class="row">
          <button class="btn main" onClick={onPrint}>
            Print the list <Key>P</Key>
          </button>
        </p>
      )}
    </aside>
  );
}

const fetchWords = (stops: Stop[], i: number) => (i > 0 ? `put back ${stops[i - 1].at}, fetch ${stops[i].at}` : `fetch ${stops[i].at}`);

export function Looks() {
  const [hours, setHours] = useKept<number>('hours', 6);
  const [by, setBy] = useKept<string>('by', 'tray');
  const asked = useAsk('look', { hours, by });
  const table = useAsk('table', {});
  const size = useSize();
  const [at, walk] = useState(0);
  const [done, finish] = useState<string[]>([]);
  const [down, scroll] = useState(0);
  const said = useSaid();
  const answer = asked.data;
  const stops = answer ? stopsOf(answer) : [];
  const cards = stops.flatMap((stop) => stop.cards);
  const pieces: Pieces = new Map((table.data?.pieces ?? []).map((piece) => [piece.number, piece]));
  const torn = new Set(answer?.conflicts.map((one) => one.number));
  const dated = table.data?.pieces.some((piece) => piece.year) ?? false;
  const [y0, y1] = span((table.data?.pieces ?? []).map((piece) => piece.year));
  const left = size.phone ? 12 : 92; // of the cards
  const snug = !size.phone && !size.tablet && size.w < 1300;
  const x0 = size.phone ? 96 : size.tablet ? 430 : snug ? 410 : 470;
  const right = size.phone ? 30 : size.tablet ? 210 : snug ? 370 + 170 : 370 + 260; // the slip, minutes and buttons
  const axis: Axis = { x0, y0, y1, k: (size.w - right - x0) / (y1 - y0) };
  const k = size.phone ? 0 : 13; // pixels a minute: as much as the shortest needs to be read
  const key = (number: string) => `${number}/${by}`;
  const mark = (number: string) => finish(done.includes(key(number)) ? done.filter((one) => one !== key(number)) : [...done, key(number)]);
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
  useKeys({ ArrowDown: () => step(1), ArrowUp: () => step(-1), d: () => cards[at] && mark(cards[at].number), Enter: () => cards[at] && go(sheetOf(cards[at].number)), p: () => void print() });
  const side = { unit: '', px: k, step: 5, label: 30, off: said + 14 - down, to: hours * 60 + 30, text: (minutes: number) => clock(minutes) };
  useRule({
    axis: dated ? axis : null,
    flag: cards[at]?.looks[0].p50 ?? null,
    words: !dated ? 'no years yet' : size.phone || size.tablet ? '' : 'years as they stand, and as each look should leave them',
    side: answer && cards.length > 0 ? side : null,
  });
  if (asked.problem && !answer) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  const end = hours * 60;
  const spare = answer ? end - answer.planned_minutes : 0;
  let nth = -1;
  return (
    <div class={'looks' + (answer ? ' ready' : '')}>
      <Sentence>
        A day of <Pick label={hours + (hours === 1 ? ' hour' : ' hours')} name="hours" chosen={String(hours)} choices={[1, 2, 3.5, 6, 8].map((h) => ({ key: String(h), label: h + (h === 1 ? ' hour' : ' hours') }))} onPick={(h) => setHours(Number(h))} /> by{' '}
        <Pick label={by} name="planned by" chosen={by} choices={[{ key: 'tray', label: 'tray' }, { key: 'lender', label: 'lender' }]} onPick={setBy} />
        {answer && cards.length > 0 && `: ${cards.length} pieces to look at, ${Math.round(answer.planned_minutes)} minutes`}
        {answer && cards.length === 0 && ': nothing to look at'}
        {!answer && ': weighing what each look would settle'}
      </Sentence>
      {answer && (
        <div class="scroller" tabIndex={-1} onScroll={(event) => scroll((event.target as HTMLElement).scrollTop)}>
          {cards.length === 0 && <p class="note">Nothing would settle more. Weigh again after new evidence.</p>}
          <div class="day" style={size.phone ? {} : { height: cards.length > 0 ? Math.max(end, answer.planned_minutes) * k + 60 + 'px' : '0' }}>
            {!size.phone && table.data && cards.length > 0 && (
              <svg class="decades" aria-hidden="true">
                {[...Array(40)].map((_, i) => {
                  const year = Math.ceil(y0 / 10) * 10 + 10 * i;
                  return year <= y1 && <path key={year} d={`M${xOf(axis, year)} 0V9999`} stroke="var(--hair)" />;
                })}
              </svg>
            )}
            {stops.map((stop, i) => (
              <section key={stop.at + i} aria-label={stop.at}>
                <p class="stop" style={size.phone ? {} : { top: stop.start * k + 'px', height: stop.fetch * k + 'px' }}>
                  {fetchWords(stops, i)} <span>{Math.round(stop.fetch)} min</span>
                </p>
                {!size.phone && (
                  <p class="tray" aria-hidden="true" style={{ top: (stop.start + stop.fetch) * k + 'px', height: (stop.end - stop.start - stop.fetch) * k + 'px' }}>
                    {stop.at}
                  </p>
                )}
                {stop.cards.map((card) => {
                  const own = ++nth;
                  return (
                    <LookCard
                      key={card.number}
                      card={card}
                      piece={pieces.get(card.number)}
                      torn={torn.has(card.number)}
                      on={own === at}
                      done={done.includes(key(card.number))}
                      high={size.phone ? 88 : card.minutes * k - 4}
                      top={size.phone ? null : card.start * k}
                      axis={table.data ? axis : null}
                      off={left}
                      onFocus={() => walk(own)}
                      onDone={() => mark(card.number)}
                    />
                  );
                })}
              </section>
            ))}
            {cards.length > 0 && (
              <p class="day-ends" style={size.phone ? {} : { top: Math.max(end, answer.planned_minutes) * k + 'px' }}>
                <b>
                  The day ends at {clock(end)}
                  {spare >= 1 && ` · ${Math.round(spare)} ${Math.round(spare) === 1 ? 'minute' : 'minutes'} to pack`}
                </b>
                {answer.missed.length > 0 && (
                  <span class="missed">
                    Just missed:{' '}
                    {missedWords(answer).map((one, i) => (
                      <span key={one.number + one.words}>
                        {i > 0 && ' · '}
                        <a href={sheetOf(one.number)}>{one.number}</a> {one.words}
                      </span>
                    ))}
                  </span>
                )}
              </p>
            )}
          </div>
        </div>
      )}
      {answer && <Conflicts answer={answer} pieces={pieces} onPrint={() => void print()} />}
    </div>
  );
}
