// What pages share in asking and measuring.
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { asProblem, call, isEarlier, onChange } from './api';
import type { Asks, OperationName } from '../api';
import type { AnswerOf, Problem } from './types';
import { weighing } from './weighing';

export interface Asked<T> {
  data: T | null;
  problem: Problem | null;
  at: string; // when the data came
  earlier: boolean; // weighed before the show moved on; asked again until it is as the show stands
  again: () => void;
}

const soon = 1000; // ms until what is being weighed is asked for again

// Asks an operation, and again when the show changes; the last good answer stays in sight.
export function useAsk<N extends OperationName>(operation: N, parameters: Asks[N], when = true): Asked<AnswerOf<N>> {
  const [data, setData] = useState<AnswerOf<N> | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [at, setAt] = useState('');
  const [earlier, setEarlier] = useState(false);
  const wanted = JSON.stringify(parameters);
  const turn = useRef(0);
  const ask = useCallback(() => {
    const mine = ++turn.current;
    call(operation, JSON.parse(wanted)).then(
      (answer) => {
        if (mine === turn.current) {
          setData(answer);
          setProblem(null);
          setAt(new Date().toTimeString().slice(0, 5));
          const old = isEarlier(answer as object);
          setEarlier(old);
          weighing(turn, old);
          if (old) {
            setTimeout(() => mine === turn.current && ask(), soon);
          }
        }
      },
      (fault) => {
        if (mine === turn.current) {
          const problem = asProblem(fault);
          setProblem(problem);
          // Out of reach: it tries again by itself, as the page says.
          if (problem.fault === 'io') {
            setTimeout(() => mine === turn.current && ask(), 3 * soon);
          }
        }
      },
    );
  }, [operation, wanted]);
  useEffect(() => {
    if (!when) {
      return;
    }
    ask();
    return onChange(ask);
  }, [ask, when]);
  useEffect(
    () => () => {
      turn.current++;
      weighing(turn, false);
    },
    [],
  );
  return { data, problem, at, earlier, again: ask };
}

export interface Size {
  w: number;
  h: number;
  phone: boolean;
  tablet: boolean;
  tall: boolean; // a tablet held upright: what stands side by side elsewhere stands one over the other
}
export const sizeNow = (): Size => ({
  w: innerWidth - (innerWidth <= 600 ? 0 : 34),
  h: innerHeight - 44 - (innerWidth <= 600 ? 60 : 56),
  phone: innerWidth <= 600,
  tablet: innerWidth > 600 && innerWidth <= 1100,
  tall: innerWidth > 600 && innerWidth <= 900 && innerHeight > innerWidth,
});
export function useSize(): Size {
  const [size, set] = useState(sizeNow);
  useEffect(() => {
    const read = () => set(sizeNow());
    addEventListener('resize', read);
    return () => removeEventListener('resize', read);
  }, []);
  return size;
}

// A choice of this device: kept here, never in the show.
export function keptAs<T extends string | number>(name: string, first: T): T {
  const kept = localStorage.getItem('backmark.' + name);
  return kept === null ? first : ((typeof first === 'number' ? Number(kept) : kept) as T);
}
export function useKept<T extends string | number>(name: string, first: T): [T, (value: T) => void] {
  const [value, set] = useState<T>(() => keptAs(name, first));
  return [
    value,
    (next) => {
      localStorage.setItem('backmark.' + name, String(next));
      set(next);
    },
  ];
}
