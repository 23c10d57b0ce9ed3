// What the Table asks its worker for, and the layout that came of it.
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { onTableCame, writtenOf } from '../core/api';
import { usualDots } from '../core/geometry';
import { keptAs, sizeNow, type Size } from '../core/hooks';
import type { TableAnswer } from '../core/types';
import type { LaidOut } from './table_cloth';
import type { Arrange } from './table_layout';
import { Tiles, type Wish } from './tiles';

export interface View {
  arrange: Arrange;
  n: number; // 1 : n
  zoom: number; // of the years
  view: 'front' | 'back';
  shown: number[] | null; // null: all
}

export const usualScale = () => (innerWidth <= 600 ? 8 : innerWidth <= 1100 ? 6 : 5);
export const keyOf = ({ arrange, n, zoom }: View) => [arrange, n, zoom].join();

// What tiles are drawn with, as the style sheet says it.
function lookNow() {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const rim = document.documentElement.dataset.mode === 'vault';
  return { ink: colour('--ink'), rust: colour('--rust'), brass: colour('--brass-hi'), paper: colour('--table'), cast: colour('--cast'), edge: colour('--brass-edge'), rimLight: colour('--rim'), rim, ratio: devicePixelRatio || 1 };
}

function wishOf(size: Size, view: View): Wish {
  const left = size.phone ? 14 : 190;
  const right = size.w - (size.phone ? 14 : size.tablet ? 30 : 372);
  const wish = { shown: view.shown, arrange: view.arrange, room: { left, right, zoom: view.zoom }, pxmm: usualDots / view.n, view: view.view, top: size.phone ? 78 : 56, head: size.phone ? 34 : 8, width: right };
  return { wish, look: lookNow(), key: keyOf(view) };
}

// The worker. It knows how the Table will be laid, and draws what will be in sight first, while
// the table itself is still on its way to it and to the page.
export function useTiles(usual: boolean): Tiles {
  const [tiles] = useState(() => new Tiles());
  useLayoutEffect(() => {
    if (usual) {
      const size = sizeNow();
      tiles.order(wishOf(size, { arrange: keptAs<Arrange>('arrange', 'maker'), n: keptAs('scale', usualScale()), zoom: 1, view: 'front', shown: null }), null, size);
    }
    const deaf = onTableCame((bytes) => tiles.read(bytes));
    return () => {
      deaf();
      tiles.close();
    };
  }, [tiles]);
  return tiles;
}

const none: LaidOut = { axis: { x0: 0, y0: 1950, y1: 2000, k: 1 }, boxes: [], lanes: [], width: 0, height: 0, pxmm: 1, version: 0, key: '' };

// The last layout that is there; another is on its way while its key is not that of the view.
export function useLayout(table: TableAnswer, tiles: Tiles, size: Size, view: View): LaidOut {
  const [layout, set] = useState<LaidOut>(() => tiles.at ?? none);
  const { mode } = document.documentElement.dataset;
  useEffect(() => {
    tiles.laid = set;
    tiles.at && set(tiles.at);
    tiles.order(wishOf(size, view), writtenOf(table));
  }, [tiles, table, size.w, view.arrange, view.n, view.zoom, view.shown, view.view, mode]);
  return layout;
}
