// What to look at next at a piece: bits and minutes.
import { useAsk } from './hooks';
import type { Look } from './types';

export const narrows = (years: number) => (years < 0.5 ? 'hardly moves the years' : `should narrow by ${Math.round(years) === 1 ? '1 year' : Math.round(years) + ' years'}`);
export const bitsOf = (bits: number) => (bits < 0.095 ? bits.toFixed(2) : bits.toFixed(1)) + ' bits';

function Line({ look, first }: { look: Look; first: boolean }) {
  return (
    <li class={first ? 'next' : ''}>
      <b>
        {first && 'Look next: '}
        {look.label}
      </b>
      <br />
      {Math.round(look.minutes)} min; {bitsOf(look.gain_bits)}; {narrows(look.gain_years)}
    </li>
  );
}

export function NextLooks({ of, most }: { of: string; most: number }) {
  const { data, problem } = useAsk('look', { number: [of] });
  if (problem) {
    return <p class="sub">What to look at cannot be said: {problem.what}.</p>;
  }
  if (!data) {
    return <p class="sub">Weighing what a look would settle</p>;
  }
  if (data.looks.length === 0) {
    return <p class="sub">No look would settle much here.</p>;
  }
  return (
    <ul class="next-looks">
      {data.looks.slice(0, most).map((look, i) => (
        <Line key={look.character} look={look} first={i === 0} />
      ))}
    </ul>
  );
}
