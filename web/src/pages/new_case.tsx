// A case begun by hand: its name and its inside.
import { useState } from 'preact/hooks';
import { asProblem, write } from '../core/api';
import { go } from '../core/route';
import { tell, tellProblem } from '../core/tell';
import { undo } from '../core/undo';
import { caseAddress } from './case_layout';

const fields = [
  { name: 'key', label: 'Name', like: 'wall' },
  { name: 'width', label: 'Width inside, mm', like: '1400' },
  { name: 'height', label: 'Height, mm', like: '700' },
  { name: 'depth', label: 'Depth, mm', like: '260' },
  { name: 'made-of', label: 'Made of and lined with', like: 'glass; aluminium; undyed cotton' },
  { name: 'hours', label: 'Hours of light a day', like: '8' },
  { name: 'rh', label: '% humidity to be held', like: '45' },
] as const;

export function NewCase({ first }: { first: boolean }) {
  const [open, setOpen] = useState(first);
  const begin = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const said = [...new FormData(form)].map(([name, value]) => [name, String(value).trim()]).filter(([, value]) => value !== '');
    const given = Object.fromEntries(said) as Record<string, string>;
    try {
      await write('case', given);
      tell(`The case ${given.key} is begun.`, { label: 'Undo', run: () => void undo() });
      form.reset();
      go(caseAddress(given.key));
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  return (
    <details class="new-case" open={open} onToggle={(event) => setOpen((event.target as HTMLDetailsElement).open)}>
      <summary>{first ? 'Begin a case: give its inside width, height and depth' : 'Another case'}</summary>
      <form onSubmit={begin}>
        {fields.map((field) => (
          <label key={field.name}>
            {field.label}
            <input name={field.name} placeholder={field.like} autocomplete="off" required={['key', 'width', 'height', 'depth'].includes(field.name)} />
          </label>
        ))}
        <button class="btn main">Begin it</button>
      </form>
    </details>
  );
}
