// Lays the Table out and draws its tiles, off the main thread: pieces, shadows, tears, hems.
import { photo } from '../core/api_photo';
import { xOf } from '../core/geometry';
import { readTable, type TableColumns } from '../core/table';
import type { TableAnswer } from '../core/types';
import { layTable, packBoxes, type Layout, type Wish } from './table_layout';

interface Sprite {
  x: number;
  y: number;
  w: number;
  h: number;
  url: string; // picture at the size wanted; empty: outline only
  picked: boolean;
  torn: boolean;
  band: { y: number; x0: number; step: number; p: string; p10: number; p50: number; p90: number } | null;
}
export interface Look {
  ink: string;
  rust: string;
  brass: string;
  paper: string;
  cast: string; // of shadows
  edge: string; // of brass
  rim: boolean; // vault: dark things get a light rim
  rimLight: string;
  ratio: number; // device pixels
}
export interface Order {
  version: number;
  wish: Omit<Wish, 'table'>;
  look: Look;
  key: string; // comes back with the layout
  table: number; // which of those that came
}
interface Scene extends Look {
  version: number;
  sprites: Sprite[];
}
export interface Wanted {
  version: number;
  tx: number;
  ty: number;
}
// What the main thread needs of a layout; boxes by seven numbers each (table_layout.ts).
export interface Laid extends Omit<Layout, 'boxes'> {
  version: number;
  boxes: Float32Array;
}
export const tileSize = 512;

const here = self as unknown as DedicatedWorkerGlobalScope;
const tables = new Map<number, TableAnswer>(); // the page may still be at an earlier one
let order: Order | null = null;
let scene: Scene | null = null;
let buckets = new Map<string, Sprite[]>();
let wanted: Wanted[] = [];
let working = false;
const pictures = new Map<string, Promise<ImageBitmap | null>>();

function picture(url: string): Promise<ImageBitmap | null> {
  let kept = pictures.get(url);
  if (kept) {
    pictures.delete(url);
  } else {
    kept = fetch(url)
      .then((answer) => (answer.ok ? answer.blob() : null))
      .then((blob) => (blob ? createImageBitmap(blob) : null))
      .catch(() => null);
  }
  pictures.set(url, kept);
  if (pictures.size > 2500) {
    const oldest = pictures.keys().next().value as string;
    void pictures.get(oldest)!.then((bitmap) => bitmap?.close());
    pictures.delete(oldest);
  }
  return kept;
}

const sizes = [32, 64, 128, 256, 512];
const pictureSize = (px: number): number | 'full' => sizes.find((size) => size >= px) ?? 'full';

function spritesOf(of: TableAnswer, layout: Layout, { wish, look }: Order): Sprite[] {
  return layout.boxes.map((box) => {
    const piece = of.pieces[box.at];
    const picture = piece.pictures.find((one) => one.view === wish.view);
    const year = piece.year;
    return {
      x: box.x,
      y: box.y,
      w: box.w,
      h: box.h,
      url: picture ? photo(piece.number, wish.view, pictureSize(Math.max(box.w, box.h) * look.ratio), picture.v) : '',
      picked: piece.pick !== null,
      torn: piece.torn !== null,
      band: year && {
        y: box.bandY,
        x0: xOf(wish.axis, year.from - 0.5),
        step: wish.axis.k,
        p: year.p,
        p10: xOf(wish.axis, year.p10),
        p50: xOf(wish.axis, year.p50),
        p90: xOf(wish.axis, year.p90),
      },
    };
  });
}

// Of several orders that came meanwhile only the last is laid.
function lay() {
  const table = order && tables.get(order.table);
  if (!table || !order || scene?.version === order.version) {
    return;
  }
  for (const id of tables.keys()) {
    if (id < order.table) {
      tables.delete(id);
    }
  }
  const layout = layTable({ ...order.wish, table });
  scene = { ...order.look, version: order.version, sprites: spritesOf(table, layout, order) };
  sort(scene);
  const boxes = packBoxes(layout.boxes);
  const laid: Laid = { ...layout, version: order.version, boxes };
  here.postMessage({ laid }, [boxes.buffer]);
}

// Every sprite lies in the tiles that its picture, shadow or band touches.
function sort(next: Scene) {
  buckets = new Map();
  for (const sprite of next.sprites) {
    const left = Math.min(sprite.x, sprite.band ? sprite.band.x0 : sprite.x) - 12;
    const right = Math.max(sprite.x + sprite.w, sprite.band ? sprite.band.x0 + sprite.band.p.length * sprite.band.step : 0) + 12;
    const bottom = Math.max(sprite.y + sprite.h, sprite.band ? sprite.band.y + 8 : 0) + 12;
    for (let tx = Math.floor(left / tileSize); tx <= Math.floor(right / tileSize); tx++) {
      for (let ty = Math.floor((sprite.y - 12) / tileSize); ty <= Math.floor(bottom / tileSize); ty++) {
        const key = tx + ',' + ty;
        buckets.get(key)?.push(sprite) ?? buckets.set(key, [sprite]);
      }
    }
  }
}

type Pen = OffscreenCanvasRenderingContext2D;

function drawZigzag(pen: Pen, x0: number, x1: number, y: number, rise: number, step: number) {
  const n = Math.max(2, Math.round((x1 - x0) / step));
  pen.beginPath();
  pen.moveTo(x0, y);
  for (let i = 1; i <= n; i++) {
    pen.lineTo(x0 + ((x1 - x0) * i) / n, y + (i % 2 ? rise : 0));
  }
  pen.stroke();
}

function drawBand(pen: Pen, sprite: Sprite, now: Scene) {
  const band = sprite.band!;
  pen.fillStyle = sprite.torn ? now.rust : now.ink;
  const width = Math.max(band.step, 3 / band.p.length);
  for (let i = 0; i < band.p.length; i++) {
    pen.globalAlpha = (0.05 + (0.8 * Number(band.p[i])) / 9) * 0.9;
    pen.fillRect(band.x0 + i * band.step, band.y, width, 4);
  }
  pen.globalAlpha = 0.9;
  pen.fillRect(band.p10 - 0.6, band.y - 0.6, 1.1, 5.2);
  pen.fillRect(band.p90 - 0.6, band.y - 0.6, 1.1, 5.2);
  pen.beginPath();
  for (const [dx, dy] of [[0, -2.4], [2.4, 2], [0, 6.4], [-2.4, 2]]) {
    pen.lineTo(band.p50 + dx, band.y + dy);
  }
  pen.fill();
  pen.globalAlpha = 1;
  if (sprite.torn) {
    pen.strokeStyle = now.rust;
    pen.lineWidth = 1.1;
    drawZigzag(pen, band.p10, Math.max(band.p90, band.p10 + 8), band.y + 5.5, -2.2, 4);
  }
}

function drawPicture(pen: Pen, sprite: Sprite, bitmap: ImageBitmap | null, now: Scene) {
  const { x, y, w, h } = sprite;
  if (h < 9) {
    pen.fillStyle = now.ink;
    pen.beginPath();
    pen.arc(x + w / 2, y + h / 2, 2.5, 0, 7);
    pen.fill();
    return;
  }
  if (!bitmap) {
    pen.strokeStyle = now.ink;
    pen.lineWidth = 1;
    pen.setLineDash([3, 2]);
    pen.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
    pen.setLineDash([]);
    return;
  }
  pen.save();
  const drop = Math.min(4, 1 + h / 70) * now.ratio;
  pen.shadowColor = now.cast;
  pen.shadowOffsetX = drop * 0.7;
  pen.shadowOffsetY = drop;
  pen.drawImage(bitmap, x, y, w, h);
  if (now.rim) {
    pen.shadowColor = now.rimLight;
    pen.shadowOffsetX = -0.5 * now.ratio;
    pen.shadowOffsetY = -0.5 * now.ratio;
    pen.drawImage(bitmap, x, y, w, h);
  }
  pen.restore();
}

function drawMarks(pen: Pen, sprite: Sprite, now: Scene) {
  const { x, y, w, h } = sprite;
  if (h < 26) {
    return;
  }
  if (sprite.picked) {
    pen.fillStyle = now.brass;
    pen.strokeStyle = now.edge;
    pen.lineWidth = 0.9;
    pen.beginPath();
    pen.arc(x + Math.min(4, w * 0.12), y + Math.min(26, h * 0.3), 3.4, 0, 7);
    pen.fill();
    pen.stroke();
  }
  if (sprite.torn) {
    const middle = x + w / 2;
    for (const [colour, width] of [[now.paper, 4.6], [now.rust, 2]] as const) {
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      drawZigzag(pen, middle - 11, middle + 11, y + h * 0.7, -4, 3.7);
    }
  }
}

async function drawTile(tile: Wanted, now: Scene) {
  const sprites = buckets.get(tile.tx + ',' + tile.ty) ?? [];
  const bitmaps = await Promise.all(sprites.map((sprite) => (sprite.url && sprite.h >= 9 ? picture(sprite.url) : null)));
  if (scene !== now) {
    return;
  }
  const size = Math.round(tileSize * now.ratio);
  const canvas = new OffscreenCanvas(size, size);
  const pen = canvas.getContext('2d')!;
  pen.scale(now.ratio, now.ratio);
  pen.imageSmoothingQuality = 'high';
  pen.translate(-tile.tx * tileSize, -tile.ty * tileSize);
  sprites.forEach((sprite) => sprite.band && drawBand(pen, sprite, now));
  sprites.forEach((sprite, i) => drawPicture(pen, sprite, bitmaps[i], now));
  sprites.forEach((sprite) => drawMarks(pen, sprite, now));
  const bitmap = canvas.transferToImageBitmap();
  here.postMessage({ ...tile, bitmap }, [bitmap]);
}

async function work() {
  if (working) {
    return;
  }
  working = true;
  while (wanted.length > 0 && scene) {
    const tile = wanted.shift()!;
    if (tile.version === scene.version) {
      await drawTile(tile, scene);
    }
  }
  working = false;
}

here.onmessage = (event: MessageEvent<{ table?: ArrayBuffer; id?: number; order?: Order; wanted?: Wanted[] }>) => {
  if (event.data.table) {
    tables.set(event.data.id!, readTable(JSON.parse(new TextDecoder().decode(event.data.table)) as TableColumns));
  }
  if (event.data.order) {
    order = event.data.order;
    setTimeout(lay);
  }
  if (event.data.wanted) {
    wanted = event.data.wanted;
    void work();
  }
};
