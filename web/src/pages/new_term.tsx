// A word that the show does not know becomes a term of a character, or a character of a part. A term
// is kept with the note that brought it; a character is a change of its own. Both are undone like any
// other.
import { asProblem, write } from '../core/api';
import { Pick } from '../core/parts';
import { tell, tellProblem } from '../core/tell';
import { undo } from '../core/undo';
import type { Reading } from '../core/types';

const groupOf = (saying: string) => saying.slice(0, saying.indexOf(':'));

// What `add` takes to make a character of "sheen: dull" or "tip length: 24 mm".
export function characterWords(text: string, part: string): string[] {
  const at = text.search(/[:=]/);
  const name = text.slice(0, at).trim();
  const number = text.slice(at + 1).trim().match(/^-?\d+(?:\.\d+)?\s*([a-z%]*)$/i);
  const key = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_|_$/g, '');
  return [`key=${key}`, `label=${name[0].toUpperCase() + name.slice(1)}`, ...(part ? [`part=${part}`] : []), ...(number ? ['shape=number', ...(number[1] ? [`unit=${number[1]}`] : [])] : [])];
}

interface Props {
  read: Reading[];
  parts: string[];
  onTerm: (wrong: string, saying: string) => void;
  onCharacter: () => void;
}

export function NewTerm({ read, parts, onTerm, onCharacter }: Props) {
  const unknown = read.find((one) => one.groups.length > 0 && !one.label);
  const nameless = read.find((one) => one.new_character && /\p{L}/u.test(one.text.slice(0, one.text.search(/[:=]/))));
  const add = async (text: string, part: string) => {
    const words = characterWords(text, part);
    try {
      await write('add', { kind: 'character', words });
      tell(`${words[1].slice(6)} can be noted now.`, { label: 'Undo', run: () => void undo() });
      onCharacter();
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  if (nameless) {
    const name = nameless.text.slice(0, nameless.text.search(/[:=]/)).trim();
    return (
      <p class="new-term">
        Nothing here is called "{name}". Note it from now on, of <Pick label="which part" name={`"${name}" is noted of`} choices={[{ key: '', label: 'the piece as a whole' }, ...parts.map((part) => ({ key: part, label: 'the ' + part }))]} onPick={(part) => void add(nameless.text, part)} /> <small>alt N</small>
      </p>
    );
  }
  if (unknown) {
    return (
      <p class="new-term">
        Nobody has noted "{unknown.text}" yet. Make it a term of <Pick label="which group" name={`"${unknown.text}" is a term of`} choices={unknown.groups.map((saying) => ({ key: saying, label: groupOf(saying) }))} onPick={(saying) => onTerm(unknown.text, saying)} /> <small>alt N</small>
      </p>
    );
  }
  return null;
}
