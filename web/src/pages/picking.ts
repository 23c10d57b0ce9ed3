// Taking a piece into the show and the book by hand, or dropping it.
import { asProblem, write } from '../core/api';
import { tell, tellProblem } from '../core/tell';
import type { TablePiece } from '../core/types';

export async function togglePick(piece: Pick<TablePiece, 'number' | 'pick'>) {
  try {
    await write('pick', { number: [piece.number], drop: piece.pick !== null });
    const back = piece.pick !== null ? 'Pick again' : 'Drop again';
    tell(`${piece.number} is ${piece.pick ? 'dropped' : 'picked'}.`, {
      label: back,
      run: () => void write('pick', { number: [piece.number], drop: piece.pick === null }).catch((fault) => tellProblem(asProblem(fault))),
    });
  } catch (fault) {
    tellProblem(asProblem(fault));
  }
}
