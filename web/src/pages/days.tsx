// The days to opening: each task where it may lie, what is likeliest to break the day, and until when
// a piece may be decided on.
import { useState } from 'preact/hooks';
import { asProblem, write } from '../core/api';
import { useAsk, useSize } from '../core/hooks';
import { ProblemSlip, Sentence } from '../core/parts';
import { sheetOf } from '../core/route';
import { useRule } from '../core/square';
import { tellProblem } from '../core/tell';
import type { ScheduleAnswer, Task } from '../core/types';

const day = 86400000;
export const dayOf = (iso: string) => Date.parse(iso + 'T00:00:00Z') / day;
export const inTwenty = (p: number) => (p < 0.025 ? 'less than 1 chance in 20' : `${Math.round(20 * p)} chances in 20`);
const short = (iso: string) => new Date(iso + 'T00:00:00Z').toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });

const ago = (days: number) => (Math.round(days) === 1 ? 'yesterday' : `${Math.round(days)} days ago`);

// The first of each month between two days, as days; January stands under its year.
export function months(from: number, to: number): { at: number; name: string }[] {
  const list = [];
  const one = new Date(from * day);
  for (let date = Date.UTC(one.getUTCFullYear(), one.getUTCMonth() + 1, 1); date / day <= to; ) {
    const now = new Date(date);
    list.push({ at: date / day, name: now.getUTCMonth() === 0 ? String(now.getUTCFullYear()) : now.toLocaleDateString('en-GB', { month: 'short', timeZone: 'UTC' }) });
    date = Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + 1, 1);
  }
  return list;
}

// A task's bar ends where it must be finished; what lies before today is torn off.
function Row({ task, x, today, breaks, width }: { task: Task; x: (at: number) => number; today: number; breaks: boolean; width: number }) {
  const from = dayOf(task.latest_start);
  const to = Math.max(dayOf(task.latest_finish), from + 0.6);
  const late = from < today && !task.done;
  return (
    <li class={'task' + (task.done ? ' done' : '')}>
      <p>
        <b>{task.title}</b>
        <small>
          {task.done ? 'done' : late ? `had to begin ${short(task.latest_start)}, ${ago(today - from)}` : `begin by ${short(task.latest_start)}`}
          {!task.done && task.float_days > 0 && `; ${Math.round(task.float_days)} days to spare`}
          {breaks && !task.done && '; likely to break the day'}
        </small>
      </p>
      <svg width={width} height="26" aria-hidden="true">
        <rect x={x(from)} y="9" width={Math.max(2, x(to) - x(from))} height="9" fill={late ? 'var(--rust)' : 'var(--ink)'} fill-opacity={task.done ? 0.25 : 0.8} />
        {breaks && !task.done && <path d={`M${x(to) + 5} 6l4 4l-4 4l4 4`} fill="none" stroke="var(--rust)" stroke-width="2" />}
        <path d={`M${x(today)} 0v26`} stroke="var(--ink)" stroke-dasharray="2 3" />
      </svg>
    </li>
  );
}

function Odds({ plan }: { plan: ScheduleAnswer }) {
  const [open, set] = useState(10);
  return (
    <aside class="slip side" aria-label="The odds and the pieces" tabIndex={0}>
      <h2>Opening on time</h2>
      <p class="made">{inTwenty(plan.p_open)}</p>
      <p class="sub">
        The book in hand: {inTwenty(plan.p_book)}; both: {inTwenty(plan.p_both)}. Half of the draws need {Math.round(plan.days.p50)} days, eight in ten {Math.round(plan.days.p80)}; {plan.days_left} are left.
      </p>
      {plan.pieces.length > 0 && (
        <>
          <h2>Last day to decide</h2>
          {plan.pieces.slice(0, open).map((piece) => (
            <div class="c" key={piece.number}>
              <a href={sheetOf(piece.number)}>{piece.number}</a>
              <p>
                {piece.decide_by ? `${short(piece.decide_by)}: ` : ''}
                {piece.because}
              </p>
            </div>
          ))}
          {open < plan.pieces.length && (
            <button class="btn soft" onClick={() => set(open + 40)}>
              {Math.min(40, plan.pieces.length - open)} more
            </button>
          )}
        </>
      )}
      {plan.notes.map((note) => (
        <p class="tiny" key={note}>
          {note}
        </p>
      ))}
    </aside>
  );
}

// Nothing can be reckoned back from before the day of opening is set.
function NoDay({ again }: { again: () => void }) {
  const begin = async (event: Event) => {
    event.preventDefault();
    try {
      await write('setting', { key: 'opens', value: String(new FormData(event.target as HTMLFormElement).get('day')) });
      again();
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  return (
    <div class="showing days none ready">
      <Sentence>
        The show has no opening day yet; or <a class="pick" href="/show">the sections</a>
      </Sentence>
      <div class="scroller">
        <form class="row" onSubmit={begin}>
          <label>
            It opens on <input class="field" type="date" name="day" required />
          </label>
          <button class="btn main">Set it</button>
        </form>
        <p class="sub">Every task is then drawn where it must lie for that day to hold.</p>
      </div>
    </div>
  );
}

export function Days() {
  const asked = useAsk('schedule', {});
  const size = useSize();
  useRule({ axis: null, flag: null, words: 'the days to opening', side: null });
  if (asked.problem?.fault === 'not_found' && !asked.data) {
    return <NoDay again={asked.again} />;
  }
  if (asked.problem && !asked.data) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  const plan = asked.data;
  if (!plan) {
    return <p class="waiting">Drawing the days to opening</p>;
  }
  const today = dayOf(plan.today);
  const first = Math.min(today, ...plan.tasks.map((task) => dayOf(task.latest_start)));
  const last = dayOf(plan.opening) + 3;
  const words = size.phone ? 0 : 330;
  const width = size.w - (size.phone || size.tablet ? 0 : 366) - words - (size.phone ? 24 : 60);
  const x = (at: number) => 4 + ((at - first) / (last - first)) * (width - 14);
  return (
    <div class="showing days ready">
      <Sentence>
        {plan.days_left} days to opening on {short(plan.opening)}; {plan.tasks.filter((task) => !task.done).length} tasks to do; or <a class="pick" href="/show">the sections</a>
      </Sentence>
      <div class="scroller" tabIndex={0} role="region" aria-label="Tasks, each where it must lie">
        <svg class="months" width={width} height="22" style={{ marginLeft: words + 'px' }} role="img" aria-label={`Months to opening; today is ${short(plan.today)}`}>
          {months(first, last).map((month, i) => (
            <g key={month.at}>
              <path d={`M${x(month.at)} 0v22`} stroke="var(--ink-3)" />
              {(!size.phone || i % 3 === 0) && (
                <text x={x(month.at) + 4} y="14">
                  {month.name}
                </text>
              )}
            </g>
          ))}
        </svg>
        <ol>
          {plan.tasks.map((task) => (
            <Row key={task.task} task={task} x={x} today={today} breaks={plan.breakers.includes(task.task)} width={width} />
          ))}
        </ol>
      </div>
      <Odds plan={plan} />
    </div>
  );
}
