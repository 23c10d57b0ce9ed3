// Lays the Table out and draws its tiles, off the main thread. What is in sight comes first: a
// tile is drawn with the pictures that are there within a moment, and again when all have come.
import { photo } from '../core/api_photo';
import { xOf } from '../core/geometry';
import { readTable, type TableColumns } from '../core/table';
import type { TableAnswer } from '../core/types';
import { axisOf, layTable, packBoxes, type Layout, type Room, type Wish } from './table_layout';
import { drawTile, tileSize, wantsPicture, type Look, type Sprite } from './tiles_draw';
import { Pictures } from './tiles_pictures';

export interface Order {
  version: number;
  wish: Omit<Wish, 'table' | 'axis' | 'shown'> & { room: Room; shown: number[] | null }; // null: all
  look: Look;
  key: string; // comes back with the layout
  first?: Tile[]; // to be drawn as soon as it is laid
  table: number; // which of those that came; 0: whichever comes next
}
interface Scene {
  order: Order;
  table: TableAnswer;
  sprites: Sprite[];
  buckets: Map<string, Sprite[]>;
  addresses: Map<number, string>; // of the pictures, by place in the table
}
export interface Tile {
  tx: number;
  ty: number;
}
export interface Wanted {
  version: number;
  tiles: Tile[]; // first of all what is in sight
  drawn: string[]; // those of them that were drawn without all pictures
}
export interface Drawn extends Tile {
  version: number;
  bitmap: ImageBitmap;
  whole: boolean; // with every picture that there is
}
// What the main thread needs of a layout; boxes by seven numbers each (table_layout.ts).
export interface Laid extends Omit<Layout, 'boxes'> {
  version: number;
  boxes: Float32Array;
}

const here = self as unknown as DedicatedWorkerGlobalScope;
const patience = 60; // ms that a tile waits for its pictures before it is drawn without
const tables = new Map<number, TableAnswer>(); // the page may still be at an earlier one
let order: Order | null = null;
let scene: Scene | null = null;
let wanted: Wanted = { version: 0, tiles: [], drawn: [] };
let since = 0;
let drawn = new Set<string>(); // of those wanted, though without all pictures
let working = false;
const pictures = new Pictures(() => void work());

function spritesOf(table: TableAnswer, layout: Layout): Sprite[] {
  const { axis } = layout;
  return layout.boxes.map(({ at, x, y, w, h, bandY }) => {
    const { year, pick, torn } = table.pieces[at];
    const band = year && { y: bandY, x0: xOf(axis, year.from - 0.5), step: axis.k, p: year.p, p10: xOf(axis, year.p10), p50: xOf(axis, year.p50), p90: xOf(axis, year.p90) };
    return { at, x, y, w, h, picked: pick !== null, torn: torn !== null, band };
  });
}

// Every sprite lies in the tiles that its picture, shadow or band touches.
function sorted(sprites: Sprite[]): Map<string, Sprite[]> {
  const buckets = new Map<string, Sprite[]>();
  const to = (value: number) => Math.floor(value / tileSize);
  const put = (sprite: Sprite, x0: number, x1: number, y0: number, y1: number) => {
    for (let tx = to(x0); tx <= to(x1); tx++) {
      for (let ty = to(y0); ty <= to(y1); ty++) {
        const bucket = buckets.get(tx + ',' + ty);
        if (!bucket) {
          buckets.set(tx + ',' + ty, [sprite]);
        } else if (bucket[bucket.length - 1] !== sprite) {
          bucket.push(sprite);
        }
      }
    }
  };
  for (const sprite of sprites) {
    const { x, y, w, h, band } = sprite;
    put(sprite, x - 12, x + w + 12, y - 12, y + h + 12);
    if (band) {
      put(sprite, Math.min(band.x0, band.p50 - 3), Math.max(band.x0 + band.p.length * band.step, band.p50 + 3), band.y - 3, band.y + 8);
    }
  }
  return buckets;
}

// Of several orders that came meanwhile only the last is laid.
function lay() {
  const table = order && tables.get(order.table || Math.max(0, ...tables.keys()));
  if (!table || !order || scene?.order.version === order.version) {
    return;
  }
  for (const id of tables.keys()) {
    if (id < order.table) {
      tables.delete(id);
    }
  }
  const { wish, version } = order;
  const layout = layTable({ ...wish, table, axis: axisOf(table, wish.room), shown: wish.shown ?? table.pieces.map((_, i) => i) });
  const sprites = spritesOf(table, layout);
  scene = { order, table, sprites, buckets: sorted(sprites), addresses: new Map() };
  const boxes = packBoxes(layout.boxes);
  const laid: Laid = { ...layout, version, boxes };
  here.postMessage({ laid }, [boxes.buffer]);
  if (order.first) {
    want({ version, tiles: order.first, drawn: [] });
  }
}

const keyOf = (tile: Tile) => tile.tx + ',' + tile.ty;
const spritesIn = (tile: Tile, now: Scene) => now.buckets.get(keyOf(tile)) ?? [];

function addressOf(sprite: Sprite, { table, order, addresses }: Scene): string {
  const known = addresses.get(sprite.at);
  if (known !== undefined) {
    return known;
  }
  const piece = table.pieces[sprite.at];
  const { view } = order.wish;
  const picture = wantsPicture(sprite) && piece.pictures.find((one) => one.view === view);
  const size = Pictures.size(Math.max(sprite.w, sprite.h) * order.look.ratio);
  const address = picture ? photo(piece.number, view, size, picture.v) : '';
  addresses.set(sprite.at, address);
  return address;
}
const addressesIn = (tile: Tile, now: Scene) => spritesIn(tile, now).map((sprite) => addressOf(sprite, now)).filter(Boolean);
const isWhole = (tile: Tile, now: Scene) => addressesIn(tile, now).every((address) => pictures.knows(address));

let canvas = new OffscreenCanvas(1, 1);
function draw(tile: Tile, now: Scene, whole: boolean) {
  const { look, version } = now.order;
  const side = Math.round(tileSize * look.ratio);
  if (canvas.width !== side) {
    canvas = new OffscreenCanvas(side, side);
  }
  drawTile(canvas.getContext('2d')!, spritesIn(tile, now), look, tile.tx * tileSize, tile.ty * tileSize, (sprite) => pictures.at(addressOf(sprite, now)));
  const bitmap = canvas.transferToImageBitmap();
  here.postMessage({ drawn: { version, tx: tile.tx, ty: tile.ty, bitmap, whole } satisfies Drawn }, [bitmap]);
}

// What is due next: the first whose pictures are there, or have been waited for long enough. A tile
// that was drawn without some of them comes again when it has them all.
function due(now: Scene): Tile | undefined {
  const late = performance.now() - since > patience;
  return wanted.tiles.find((tile) => (late && !drawn.has(keyOf(tile))) || isWhole(tile, now));
}

const turn = new MessageChannel();
const others = () =>
  new Promise((done) => {
    turn.port1.onmessage = done;
    turn.port2.postMessage(0);
  });

// One tile after the other; messages are heard in between.
async function work() {
  if (working) {
    return;
  }
  working = true;
  for (let tile; scene && wanted.version === scene.order.version && (tile = due(scene)); await others()) {
    const whole = isWhole(tile, scene);
    draw(tile, scene, whole);
    drawn.add(keyOf(tile));
    if (whole) {
      wanted.tiles.splice(wanted.tiles.indexOf(tile), 1);
    }
  }
  working = false;
}

function want(next: Wanted) {
  if (next.version !== scene?.order.version) {
    return;
  }
  wanted = next;
  since = performance.now();
  drawn = new Set(next.drawn);
  const now = scene;
  pictures.want(next.tiles.flatMap((tile) => addressesIn(tile, now)));
  setTimeout(work, patience + 1);
  void work();
}

here.onmessage = (event: MessageEvent<{ table?: ArrayBuffer; id?: number; order?: Order; wanted?: Wanted }>) => {
  const { table, id, wanted } = event.data;
  if (table) {
    tables.set(id!, readTable(JSON.parse(new TextDecoder().decode(table)) as TableColumns));
    lay();
  }
  if (event.data.order) {
    order = event.data.order;
    setTimeout(lay);
  }
  if (wanted) {
    want(wanted);
  }
};
