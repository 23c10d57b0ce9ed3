// The menu of the square: all pages, the keys, the light, the plain table.
import { useEffect, useRef } from 'preact/hooks';
import { pages, type Page } from '../pages';
import { addressOf } from './route';
import { undo } from './undo';
import { weigh } from './weigh';

interface MenuProps {
  page: Page;
  keysOnly: boolean;
  piece: string;
  onClose: () => void;
  onVault: () => void;
  onPlain: () => void;
}
const everywhere: [string, string][] = [
  ['G then a letter', 'T S N Y L O W P: a page'],
  ['/', 'find'],
  ['Z', 'undoes the last thing you wrote; shift Z does it again'],
  ['V', 'vault or day light'],
  ['T', 'the page as a plain table'],
  ['?', 'these keys'],
  ['Esc', 'puts down what is in hand'],
];

export function Menu({ page, keysOnly, piece, onClose, onVault, onPlain }: MenuProps) {
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    const from = document.activeElement as HTMLElement | null;
    box.current!.querySelector<HTMLElement>('a,button')?.focus();
    const press = (event: KeyboardEvent) => {
      if (event.key === 'Escape') {
        event.preventDefault();
        onClose();
        from?.focus();
      }
    };
    const away = (event: Event) => {
      const target = event.target as Element;
      if (!box.current?.contains(target) && !target.closest('.corner,.more')) {
        onClose();
      }
    };
    addEventListener('keydown', press);
    addEventListener('pointerdown', away);
    return () => {
      removeEventListener('keydown', press);
      removeEventListener('pointerdown', away);
    };
  }, []);
  return (
    <section ref={box} class="slip menu" aria-label={keysOnly ? 'Keys' : 'Menu'}>
      <h2>{page.title}</h2>
      <p class="sub">{page.help}</p>
      <ul>
        {!keysOnly &&
          pages.map((one) => (
            <li key={one.key}>
              <a href={addressOf(one.key, piece)} onClick={onClose}>
                {one.title}
              </a>
            </li>
          ))}
        <li>
          <button onClick={() => void weigh()}>Weigh all evidence</button>
        </li>
        <li>
          <button onClick={() => void undo()}>
            Undo the last thing you wrote <span class="key">Z</span>
          </button>
        </li>
        <li>
          <button onClick={onVault}>
            Vault or day light <span class="key">V</span>
          </button>
        </li>
        <li>
          <button
            onClick={() => {
              onPlain();
              onClose();
            }}
          >
            This show as a plain table <span class="key">T</span>
          </button>
        </li>
      </ul>
      <h2>Keys</h2>
      <dl class="keys">
        {[...page.keys, ...everywhere].map(([key, does]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <button class="btn soft" onClick={onClose}>
        Close <span class="key">esc</span>
      </button>
    </section>
  );
}
