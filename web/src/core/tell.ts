// One line at the near edge, and the same words to a screen reader.
import type { Problem } from './types';

export interface Told {
  text: string;
  fix: string;
  bad: boolean;
  act?: { label: string; run: () => void };
}
let listener: (told: Told | null) => void = () => undefined;
export const onTold = (tell: (told: Told | null) => void) => void (listener = tell);
export const tell = (text: string, act?: Told['act']) => listener({ text, fix: '', bad: false, act });
export const tellProblem = (problem: Problem) =>
  listener({ text: problem.what + (problem.where ? ' (' + problem.where + ')' : ''), fix: problem.fix, bad: problem.fault !== 'left' });
export const tellNothing = () => listener(null);
