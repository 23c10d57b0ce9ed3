// The Table: everything one has, at one size, over the years.
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { scaleStep, scaleWords, xOf } from '../core/geometry';
import { useAsk, useKept, useSize } from '../core/hooks';
import { useKeys } from '../core/keys';
import { Key, Pick, ProblemSlip, Sentence, type Choice } from '../core/parts';
import { go, sheetOf, type Route } from '../core/route';
import { Zigzag } from '../core/shapes';
import { useRule } from '../core/square';
import type { TableAnswer, TablePiece } from '../core/types';
import { call, asProblem } from '../core/api';
import { tell, tellProblem } from '../core/tell';
import { Empty } from './first';
import { Lens } from './table_lens';
import { nextBox, scrollUnder, underPoint, type Arrange, type Box, type Under } from './table_layout';
import { filterChoices, shownBy } from './table_filter';
import { chosenOf, inSight, sideOf, stretchTo, within, zoomTo } from './table_sight';
import { TableSlip } from './table_slip';
import { Cloth, type Zoom } from './table_cloth';
import { keyOf, useLayout, useTiles, usualScale, type View } from './table_order';
import type { Tiles } from './tiles';
import { Beside } from './beside';
import { togglePick } from './picking';

const labels: Record<Arrange, string> = { maker: 'maker', fitting: 'fitting', section: 'section', material: 'material', tray: 'tray', form: 'form', none: 'nothing but year' };

const spoken = (piece: TablePiece) =>
  `${piece.number}, ${piece.title}, ${piece.made || 'no year'}, ${piece.by || 'maker not reckoned'}` + (piece.torn ? ', something does not fit' : '') + (piece.pick ? ', picked' : '');

export function Table({ route }: { route: Route }) {
  const asked = useAsk('table', {});
  const tiles = useTiles(route.query.size === 0);
  if (asked.problem && !asked.data) {
    return <ProblemSlip problem={asked.problem} again={asked.again} />;
  }
  if (!asked.data) {
    return <p class="waiting">Laying the pieces out</p>;
  }
  if (asked.data.pieces.length === 0) {
    return <Empty />;
  }
  const beside = route.query.get('beside');
  if (beside) {
    return <Beside table={asked.data} numbers={beside.split('|')} />;
  }
  return <Laid table={asked.data} tiles={tiles} chosenNumber={route.piece} first={route.query.has('handed') ? 'handed' : 'all'} />;
}

function Laid({ table, tiles, chosenNumber, first: firstFilter }: { table: TableAnswer; tiles: Tiles; chosenNumber: string; first: string }) {
  const [arrange, setArrange] = useKept<Arrange>('arrange', 'maker');
  const [n, setN] = useKept<number>('scale', usualScale());
  const [zoom, setZoom] = useState(1);
  const [filter, setFilter] = useState(firstFilter);
  const [found, setFound] = useState<string[]>([]);
  const [view, setView] = useState<'front' | 'back'>('front');
  const [lens, setLens] = useState(false);
  const [scroll, setScroll] = useState({ x: 0, y: 0 });
  const [aside, setAside] = useState<string[]>([]);
  const shown = useMemo(() => shownBy(table, filter, found), [table, filter, found]);
  const size = useSize();
  const asWished: View = { arrange, n, zoom, view, shown: filter === 'all' ? null : shown };
  const layout = useLayout(table, tiles, size, asWished);
  const boxes = layout.boxes;
  const bottom = size.h - (size.phone ? 238 : size.tablet ? 200 : 40);
  const right = size.w - (size.phone || size.tablet ? 0 : 340);
  const chosen = useMemo(() => chosenOf(boxes, table, chosenNumber, bottom), [boxes, chosenNumber]);
  const box: Box | undefined = boxes[chosen];
  const piece = box ? table.pieces[box.at] : undefined;
  const option = useRef<HTMLDivElement>(null);

  const choose = (i: number, focus = true) => {
    if (boxes[i]) {
      go('/table/' + encodeURIComponent(table.pieces[boxes[i].at].number), true);
      if (focus) {
        requestAnimationFrame(() => option.current?.focus({ preventScroll: true }));
      }
    }
  };
  // What lay under the hand that zoomed comes to lie there again; else whoever chooses, or lays
  // anew, has the chosen brought into sight. Both once the layout is there.
  const due = useRef('');
  const under = useRef<Under | null>(null);
  useLayoutEffect(() => {
    const wish = [chosenNumber, keyOf(asWished)].join();
    if (box && layout.key === keyOf(asWished) && due.current !== wish) {
      due.current = wish;
      const to = under.current && scrollUnder(layout, under.current);
      under.current = null;
      setScroll((at) => (to ? within(to, layout, bottom, right) : inSight(at, box, layout, bottom, size.w - (size.phone || size.tablet ? 20 : 360))));
    }
  }, [chosenNumber, arrange, n, zoom, layout]);
  const zoomed = (by: Zoom, x: number, y: number) => {
    const to = zoomTo({ n, zoom }, by);
    if (to.n === n && to.zoom === zoom) {
      tiles.rest();
      return;
    }
    under.current = underPoint(layout, scroll, x, y);
    setN(to.n);
    setZoom(to.zoom);
  };
  const step = (by: number) => setN(scaleStep(n, by));
  const move = (dx: number, dy: number) => choose(nextBox(boxes, chosen, dx, dy));
  const setBeside = () => {
    if (!piece) {
      return;
    }
    const list = aside.includes(piece.number) ? aside : [...aside, piece.number].slice(-6);
    setAside(list);
    if (list.length < 2) {
      tell(`${piece.number} is set beside. Choose another and press C.`);
    } else {
      go('/table?beside=' + encodeURIComponent(list.join('|')));
    }
  };
  useKeys({
    ArrowRight: () => move(1, 0),
    ArrowLeft: () => move(-1, 0),
    ArrowDown: () => move(0, 1),
    ArrowUp: () => move(0, -1),
    Enter: () => piece && go(sheetOf(piece.number)),
    b: () => setView(view === 'front' ? 'back' : 'front'),
    l: () => setLens(!lens),
    c: setBeside,
    p: () => piece && togglePick(piece),
    '+': () => step(1),
    '=': () => step(1),
    '-': () => step(-1),
    '[': () => setZoom(Math.max(0.4, zoom / 1.5)),
    ']': () => setZoom(Math.min(12, zoom * 1.5)),
    '0': () => setZoom(1),
    a: () => document.querySelector<HTMLElement>('[aria-label^="laid by"]')?.click(),
    Escape: () => setLens(false),
  });
  useRule({
    axis: { ...layout.axis, x0: layout.axis.x0 - scroll.x },
    flag: piece?.year?.p50 ?? null,
    words: 'the year rule',
    side: sideOf(layout.pxmm, scroll.y),
  });
  const pickFilter = async (key: string) => {
    if (!key.startsWith('find:')) {
      setFilter(key);
      return;
    }
    const words = key.slice(5);
    try {
      const list = words ? await call('find', { words: words.split(/\s+/) }) : [];
      setFound(list.map((one) => one.number));
      setFilter(words ? key : 'all');
      tell(words ? `${list.length} pieces for "${words}"` : 'All pieces are shown.');
    } catch (fault) {
      tellProblem(asProblem(fault));
    }
  };
  // Made when the list is opened: it looks at every piece.
  const choices = useMemo(() => {
    let made: Choice[] | null = null;
    return () => (made ??= filterChoices(table));
  }, [table]);
  const what = filter === 'all' ? `${shown.length} pieces` : `${shown.length} ${shown.length === 1 ? 'piece' : 'pieces'} ${choices().find((one) => one.key === filter)?.label ?? `with "${filter.slice(5)}"`}`;
  // What does not move with a pan is not drawn anew by it.
  const slip = useMemo(() => piece && <TableSlip piece={piece} table={table} size={size} onBeside={setBeside} onTurn={() => setView(view === 'front' ? 'back' : 'front')} view={view} />, [piece, table, size, view, aside]);
  const sentence = useMemo(
    () => (
      <Sentence>
        The <Pick label={what} name="shown" choices={() => [{ key: 'all', label: 'all pieces' }, ...choices()]} chosen={filter} find="find words, marks, places, years" onPick={pickFilter} /> laid by{' '}
        <Pick label={labels[arrange]} name="laid by" chosen={arrange} choices={Object.entries(labels).map(([key, label]) => ({ key, label }))} onPick={(key) => setArrange(key as Arrange)} /> over{' '}
        <span class="keep">
          <Pick label="years" name="years" choices={[{ key: '1', label: 'all years' }, { key: '2', label: 'half of them' }, { key: '5', label: 'a decade or two' }]} onPick={(key) => setZoom(Number(key))} />,
        </span>{' '}
        <span class="keep">
          <Pick label={view === 'front' ? 'fronts up' : 'backs up'} name="side" chosen={view} choices={[{ key: 'front', label: 'fronts up' }, { key: 'back', label: 'backs up' }]} onPick={(key) => setView(key as 'front')} />,
        </span>{' '}
        at about{' '}
        <Pick label={scaleWords(n)} name="scale" chosen={String(n)} choices={[12, 8, 5, 3, 2, 1, 0.5].map((s) => ({ key: String(s), label: scaleWords(s) }))} onPick={(key) => setN(Number(key))} />
      </Sentence>
    ),
    [what, choices, arrange, view, n],
  );
  return (
    <>
      <Cloth tiles={tiles} layout={layout} scroll={scroll} setScroll={setScroll} onHit={(i) => choose(i)} onOpen={(i) => go(sheetOf(table.pieces[boxes[i].at].number))} stretch={(by) => stretchTo({ n, zoom }, by)} onZoom={zoomed} bottom={bottom} right={right} />
      {sentence}
      <div class="twin" role="listbox" aria-label="Pieces on the table" tabIndex={-1}>
        {piece && box && (
          <div
            ref={option}
            role="option"
            tabIndex={0}
            aria-selected="true"
            aria-setsize={boxes.length}
            aria-posinset={chosen + 1}
            aria-label={spoken(piece)}
            class="chosen"
            style={{ transform: `translate(${box.x - scroll.x - 3}px,${box.y - scroll.y - 3}px)`, width: box.w + 6 + 'px', height: box.h + 6 + 'px' }}
            onKeyDown={(event) => {
              if (event.key === 'Enter') {
                go(sheetOf(piece.number));
              }
              if (event.key === 'Tab' && !event.shiftKey) {
                const next = boxes.findIndex((one) => one.lane === box.lane + 1);
                if (next >= 0) {
                  event.preventDefault();
                  choose(next);
                }
              }
            }}
          />
        )}
      </div>
      {piece?.year && box && <Hairline x={xOf(layout.axis, piece.year.p50) - scroll.x} y={box.bandY - scroll.y} />}
      {lens && piece && box && <Lens piece={piece} view={view} x={box.x + box.w / 2 - scroll.x} y={box.y + box.h * 0.42 - scroll.y} pxmm={layout.pxmm} size={size} />}
      <Legend />
      {slip}
    </>
  );
}

function Hairline({ x, y }: { x: number; y: number }) {
  return (
    <svg class="hairline" aria-hidden="true" style={{ transform: `translateX(${x}px)` }} width="1" height={Math.max(0, y)}>
      <path d={`M.5 0V${Math.max(0, y)}`} stroke="var(--ink)" stroke-width=".9" stroke-dasharray="2 3" opacity=".6" />
    </svg>
  );
}

function Legend() {
  return (
    <div class="legend">
      <span>
        <svg width="44" height="14" aria-hidden="true">
          <rect x="2" y="5" width="40" height="5" fill="var(--ink)" opacity=".3" />
          <path d="M8 2v11M36 2v11" stroke="var(--ink)" stroke-width="1.3" />
          <path d="M22 2l3 5l-3 5l-3 -5z" fill="var(--ink)" />
        </svg>
        where the year may lie: middle, and 16 chances in 20
      </span>
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle cx="6" cy="6" r="4.5" fill="var(--brass-hi)" stroke="var(--brass-edge)" />
        </svg>
        picked
      </span>
      <span>
        <Zigzag />
        evidence disagrees
      </span>
      <span>
        <Key>B</Key> turn all over
      </span>
      <span>
        <Key>L</Key> lens
      </span>
      <span>
        <Key>?</Key> all keys
      </span>
    </div>
  );
}
