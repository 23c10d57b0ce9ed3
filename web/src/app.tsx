// The frame of every page: square, page, drawers, menu, what is told.
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { hello as askHello, listen, onChange } from './core/api';
import { ClashSlip } from './core/clash_slip';
import { onDrop } from './core/drop';
import { isPicture, takePhotographs } from './core/intake';
import { useKeys } from './core/keys';
import { addressOf, followLinks, go, useRoute } from './core/route';
import { Square } from './core/square';
import { isSheet } from './core/sheet_file';
import { onTold, tell, type Told } from './core/tell';
import type { Hello } from './core/types';
import { Menu } from './core/menu';
import { weigh } from './core/weigh';
import { redo, undo } from './core/undo';
import { useWeighing } from './core/weighing';
import { pages, type Page } from './pages';
import { offerSheet } from './pages/spreadsheet';
import { Plain } from './pages/plain';

function useVault(): [boolean, () => void] {
  const kept = localStorage.getItem('backmark.mode');
  const [vault, set] = useState(kept ? kept === 'vault' : matchMedia('(prefers-color-scheme: dark)').matches);
  document.documentElement.dataset.mode = vault ? 'vault' : '';
  return [
    vault,
    () => {
      localStorage.setItem('backmark.mode', vault ? 'day' : 'vault');
      set(!vault);
    },
  ];
}

// Who and what is served; and whether the desk can be reached.
function useHello(piece: string): { hello: Hello | null; there: boolean } {
  const [hello, set] = useState<Hello | null>(null);
  const [there, reach] = useState(true);
  const here = useRef(piece);
  here.current = piece;
  useEffect(() => {
    const ask = () => askHello().then(set, () => reach(false));
    ask().then(() =>
      listen((heard) => {
        ask();
        const mine = heard.changes.find((change) => change.pieces.includes(here.current));
        if (mine) {
          tell(`${here.current} changed elsewhere: ${mine.what}`);
        }
      }, reach),
    );
    return onChange(ask);
  }, []);
  return { hello, there };
}

// Pictures, or a spreadsheet, may be let go over any page; what becomes of them is seen on the
// Show page.
function useDrops(): boolean {
  const [over, set] = useState(false);
  useEffect(
    () =>
      onDrop((offered) => {
        const sheet = offered.find(({ file }) => isSheet(file.name));
        if (sheet && !offered.some(({ file }) => isPicture(file.name))) {
          void offerSheet(sheet.file);
          return;
        }
        void takePhotographs(offered);
        go('/show?see=photographs');
      }, set),
    [],
  );
  return over;
}

function Drawers({ page, piece, hello, there, onAll }: { page: Page; piece: string; hello: Hello | null; there: boolean; onAll: () => void }) {
  const days = hello?.days_to_opening;
  const weighing = useWeighing();
  return (
    <nav class="drawers" aria-label="Pages">
      {pages.map((one) => (
        <a key={one.key} href={addressOf(one.key, piece)} aria-current={one === page ? 'page' : undefined} class={one === page || (one.near && (page.near || one.key !== 'looks')) ? '' : 'rest'}>
          {one.title}
          <small>{hello ? one.count(hello, piece) : ''}</small>
        </a>
      ))}
      <button class="more" onClick={onAll}>
        All {pages.length}
        <small>pages</small>
      </button>
      <div class="state">
        <span>
          <b>{hello?.title || hello?.show || 'Backmark'}</b>
          {days !== null && days !== undefined && (days >= 0 ? ` · opens in ${days} days` : ` · opened ${-days} days ago`)}
        </span>
        {weighing ? (
          <span role="status">What changed is being weighed</span>
        ) : hello && hello.counts.pieces > 0 && (!hello.inferred || hello.stale) && hello.role === 'curate' ? (
          <button class="weigh-now" onClick={() => void weigh()}>
            {hello.inferred ? 'Changed since it was weighed: weigh again' : 'Not weighed yet: weigh the evidence'}
          </button>
        ) : (
        <span>
          {there ? 'Kept on this machine · ' : 'The desk is out of reach · '}
          <b>{there ? 'no network needed' : 'the page stays'}</b>
        </span>
        )}
      </div>
    </nav>
  );
}

function ToldLine({ told, onClose }: { told: Told; onClose: () => void }) {
  useEffect(() => {
    const timer = setTimeout(onClose, told.bad ? 20000 : 6000);
    return () => clearTimeout(timer);
  }, [told]);
  return (
    <div class={'slip told' + (told.bad ? ' bad' : '')} role={told.bad ? 'alert' : undefined}>
      <span>
        {told.text} {told.fix && <span class="fix">{told.fix}</span>}
      </span>
      {told.act && (
        <button
          class="btn soft"
          onClick={() => {
            told.act!.run();
            onClose();
          }}
        >
          {told.act.label}
        </button>
      )}
    </div>
  );
}

export function App() {
  const asked = useRoute();
  const known = pages.find((one) => one.key === asked.page);
  // An address that is none of a page's leads to the Table, and names no piece.
  const route = known ? asked : { ...asked, page: pages[0].key, piece: '' };
  const page = known ?? pages[0];
  const [piece, setPiece] = useState('');
  const { hello, there } = useHello(piece);
  const [menu, setMenu] = useState<'' | 'menu' | 'keys'>('');
  const [plain, setPlain] = useState(false);
  const [told, setTold] = useState<Told | null>(null);
  const [, vault] = useVault();
  const over = useDrops();
  const letter = useRef(0);
  useEffect(() => {
    if (route.piece) {
      setPiece(route.piece);
    }
  }, [route.piece]);
  useEffect(() => {
    onTold(setTold);
    addEventListener('click', followLinks);
    return () => removeEventListener('click', followLinks);
  }, []);
  useEffect(() => {
    document.title = `${page.title}${page.key === 'sheet' && piece ? ' ' + piece : ''} · ${hello?.title || 'Backmark'}`;
    setPlain(false);
  }, [page, piece, hello?.title]);
  const open = useCallback((key: string) => go(addressOf(key, piece)), [piece]);
  const jump: Record<string, () => void> = {};
  pages.forEach((one) => {
    jump[one.key[0]] = jump[one.key[0]] ?? (() => open(one.key));
  });
  useKeys({
    v: vault,
    z: () => void undo(),
    'shift+z': () => void redo(),
    t: () => setPlain(!plain),
    '?': () => setMenu(menu === 'keys' ? '' : 'keys'),
    '/': () => document.querySelector<HTMLElement>('[aria-label^="shown"]')?.click(),
    g: () => void (letter.current = Date.now()),
  });
  useEffect(() => {
    // After G the next letter is a page; this hears it before the page does.
    const second = (event: KeyboardEvent) => {
      if (Date.now() - letter.current < 1500 && event.key !== 'g' && letter.current) {
        letter.current = 0;
        const target = { t: 'table', s: 'sheet', n: 'notes', y: 'years', l: 'looks', o: 'sources', w: 'show', p: 'prints' }[event.key];
        const to = pages.find((one) => one.key === target) ?? pages[Number(event.key) - 1];
        if (to) {
          event.preventDefault();
          event.stopImmediatePropagation();
          open(to.key);
        }
      }
    };
    addEventListener('keydown', second, true);
    return () => removeEventListener('keydown', second, true);
  }, [open]);
  const Draw = page.draw;
  return (
      <div class="frame">
        <a class="skip" href="#page" onClick={() => document.getElementById('page')?.focus()}>
          To the page
        </a>
        <header style={{ display: 'contents' }}>
          <Square title={hello?.title || 'Backmark'} menuOpen={menu !== ''} onMenu={() => setMenu(menu ? '' : 'menu')} />
        </header>
        <main class={'page on-' + page.key} id="page" tabIndex={-1}>
          {plain ? <Plain onClose={() => setPlain(false)} /> : <Draw route={route} key={page.key} />}
          {menu && <Menu page={page} keysOnly={menu === 'keys'} onClose={() => setMenu('')} onVault={vault} onPlain={() => setPlain(!plain)} piece={piece} />}
          <ClashSlip />
          {over && <p class="letgo">Let go: pictures are matched to their pieces by name, a spreadsheet is read</p>}
          {told && <ToldLine told={told} onClose={() => setTold(null)} />}
        </main>
        <Drawers page={page} piece={piece} hello={hello} there={there} onAll={() => setMenu(menu ? '' : 'menu')} />
        <div class="unseen" role="status" aria-live="polite">
          {told && !told.bad ? told.text : ''}
        </div>
      </div>
  );
}
