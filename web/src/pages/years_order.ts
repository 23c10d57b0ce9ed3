// Which characters the Years page shows, and where the beads of a row lie: pure.
import type { UseBead, UseGroup, YearsAnswer } from '../core/types';

export const idOf = (group: UseGroup) => (group.maker ? `${group.key}/${group.maker}` : group.key);
const partOf = (group: UseGroup) => (group.part && !group.label.toLowerCase().includes(group.part.toLowerCase()) ? `, ${group.part}` : '');
export const titleOf = (group: UseGroup) => (group.maker ? `${group.label} of ${group.maker}` : group.label + partOf(group));
const dated = (group: UseGroup) => group.rows.some((row) => row.start !== null);

// "lineages": what is ordered by descent; without any, the characters best known. One character
// by its id; "all": every one that has a dated row.
export function chosenGroups(answer: YearsAnswer, choice: string): UseGroup[] {
  const usable = answer.groups.filter(dated);
  const one = usable.filter((group) => idOf(group) === choice);
  if (one.length > 0 || choice === 'all') {
    return one.length > 0 ? one : usable;
  }
  const lineages = usable.filter((group) => group.ordered);
  return (lineages.length > 0 ? lineages : [...usable].sort((a, b) => b.known - a.known)).slice(0, 4);
}

export interface LaidBead {
  bead: UseBead;
  x: number;
  up: number; // how many lie below it
  of: number; // in its heap
}
// Beads that would touch are heaped, the known ones lowest; a heap stands at the middle of what
// lies in it.
export function heaps(beads: UseBead[], xOf: (year: number) => number, radius: number): LaidBead[] {
  const sorted = [...beads].sort((a, b) => a.y - b.y);
  const list: UseBead[][] = [];
  for (const bead of sorted) {
    const heap = list[list.length - 1];
    if (heap && xOf(bead.y) - xOf(heap[0].y) < radius * 1.8 && !heap[0].torn && !bead.torn) {
      heap.push(bead);
    } else {
      list.push([bead]);
    }
  }
  return list.flatMap((heap) => {
    const x = heap.reduce((sum, bead) => sum + xOf(bead.y), 0) / heap.length;
    const order = [...heap].sort((a, b) => Number(b.known) - Number(a.known));
    return order.map((bead, up) => ({ bead, x, up, of: heap.length }));
  });
}

// Said and seen of twenty, for each of the twenty steps; the last is certain.
export function stair(steps: { said: number; seen: number }[]): number[] {
  const of = [0];
  for (let i = 1; i <= 20; i++) {
    const step = steps.find((one) => Math.round(one.said * 20) === i);
    of.push(i === 20 ? 20 : step ? Math.round(step.seen * 20) : of[i - 1]);
  }
  return of;
}
