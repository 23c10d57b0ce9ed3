// One step back in the book of changes, and forward again.
import { asProblem, write } from './api';
import { tell, tellProblem } from './tell';

// Without a change: the newest that still holds of whoever sits here.
export async function undo(change?: number) {
  await step(change === undefined ? {} : { change });
}
export const redo = () => step({ again: true });

async function step(parameters: { change?: number; again?: boolean }) {
  try {
    const { by, words } = await write('undo', parameters);
    tell(words, { label: 'Take that back', run: () => void undo(by) });
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
}
