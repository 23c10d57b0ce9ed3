// The main thread's side of the Table: has it laid out by the worker, asks for the tiles in
// sight, keeps 96, and blits them. A frame never lays out and never draws a piece.
import type { LaidOut } from './table_cloth';
import { unpackBoxes } from './table_layout';
import { tileSize } from './tiles_draw';
import type { Drawn, Laid, Order, Tile, Wanted } from './tiles_worker';

const most = 96;
type Told = { laid?: Laid; drawn?: Drawn };
type Kept = Pick<Drawn, 'bitmap' | 'whole'>;
export type Wish = Omit<Order, 'version' | 'table' | 'first'>;

const keyOf = (tile: Tile) => tile.tx + ',' + tile.ty;

export class Tiles {
  private worker: Worker;
  private begun: Worker | null; // before this script was there
  private canvas: HTMLCanvasElement | null = null;
  private kept = new Map<string, Kept>();
  private ahead: Drawn[] = []; // of a layout that is not in sight yet
  private asked = '';
  private ordered = 0;
  private version = 0; // in sight
  // What the canvas shows of an earlier layout, or stretched by the hand: where it lay, and how
  // many times as large about which point it is shown.
  private held: { version: number; x: number; y: number; dx: number; dy: number; sx: number; sy: number; atX: number; atY: number } | null = null;
  private frame = 0;
  private x = 0;
  private y = 0;
  // Of the canvas, as it was last measured: to ask for it in a frame would have the page laid
  // out in that frame.
  width = 0;
  height = 0;
  private latest: Order | null = null;
  private tables = new WeakMap<ArrayBuffer, number>();
  private came = 0;
  at: LaidOut | null = null;
  // Told of a layout when it is there, unless something else was ordered since.
  laid: (layout: LaidOut) => void = () => undefined;
  constructor() {
    this.begun = window.ahead?.worker ?? null;
    this.worker = this.begun ?? new Worker('/assets/tiles.js');
    window.ahead && (window.ahead.worker = null);
    this.worker.onmessage = ({ data }: MessageEvent<Told>) => {
      if (data.drawn) {
        this.take(data.drawn);
      } else if (data.laid && data.laid.version === this.latest?.version) {
        const { key, wish } = this.latest;
        this.at = { ...data.laid, boxes: unpackBoxes(data.laid.boxes), pxmm: wish.pxmm, key };
        this.laid(this.at);
      }
    };
  }

  // `written` is the table that the wish is about; null: the one that comes first, which is drawn
  // as far as `sight` reaches without another word.
  order(wish: Wish, written: ArrayBuffer | null, sight = { w: 0, h: 0 }) {
    if (written) {
      this.read(written);
    }
    const table = written ? this.tables.get(written)! : 0;
    const { version, table: before, first, ...same } = this.latest ?? {};
    if (this.latest && JSON.stringify(same) === JSON.stringify(wish) && (before === table || (before === 0 && table === 1))) {
      return;
    }
    this.latest = { ...wish, version: ++this.ordered, table, ...(written ? {} : { first: tilesIn(0, 0, sight.w, sight.h, 0) }) };
    this.worker.postMessage({ order: this.latest });
  }

  // The table as it came: the worker reads it while the page does. Twice the same is read once.
  read(written: ArrayBuffer) {
    if (!this.tables.has(written)) {
      const id = ++this.came;
      this.tables.set(written, id);
      if (this.begun && written === window.ahead?.read) {
        return; // it was given that one itself
      }
      const copy = written.slice(0);
      this.worker.postMessage({ table: copy, id }, [copy]);
    }
  }

  // Gives what ends it.
  onto(canvas: HTMLCanvasElement): () => void {
    this.canvas = canvas;
    this.width = canvas.clientWidth;
    this.height = canvas.clientHeight;
    const measured = new ResizeObserver(([entry]) => {
      this.width = entry.contentRect.width;
      this.height = entry.contentRect.height;
      this.look(this.x, this.y);
    });
    measured.observe(canvas);
    return () => measured.disconnect();
  }

  private take(drawn: Drawn) {
    if (drawn.version === this.version) {
      this.keep(drawn);
      this.paint();
    } else if (drawn.version === this.latest?.version) {
      this.ahead.push(drawn);
    } else {
      drawn.bitmap.close();
    }
  }

  private keep({ bitmap, whole, ...tile }: Drawn) {
    const key = keyOf(tile);
    this.kept.get(key)?.bitmap.close();
    this.kept.delete(key);
    this.kept.set(key, { bitmap, whole });
    for (const [oldest, { bitmap }] of this.kept) {
      if (this.kept.size <= most) {
        return;
      }
      bitmap.close();
      this.kept.delete(oldest);
    }
  }

  // The layout of that order comes into sight; what was there stays, as the hand left it, until
  // the new tiles have come.
  show(version: number) {
    if (this.kept.size > 0) {
      this.hold();
    }
    this.kept.forEach(({ bitmap }) => bitmap.close());
    this.kept.clear();
    this.asked = '';
    this.version = version;
    this.ahead.forEach((drawn) => (drawn.version === version ? this.keep(drawn) : drawn.bitmap.close()));
    this.ahead = [];
    this.look(this.x, this.y);
  }

  private hold() {
    return (this.held ??= { version: this.version, x: this.x, y: this.y, dx: 0, dy: 0, sx: 1, sy: 1, atX: 0, atY: 0 });
  }

  // The hand stretches what is there, about a point of the canvas, until `show`.
  stretch(sx: number, sy: number, atX: number, atY: number) {
    this.held = { ...this.hold(), sx, sy, atX, atY };
    this.canvas!.parentElement!.classList.add('zooming');
    this.place();
  }

  // The hand let go and nothing comes of it.
  rest() {
    this.held = null;
    this.paint();
  }

  private place() {
    const held = this.held!;
    // It is panned with its own layout alone; in another the same scroll means another place.
    if (held.version === this.version) {
      held.dx = held.x - this.x;
      held.dy = held.y - this.y;
    }
    this.canvas!.style.transformOrigin = `${held.atX}px ${held.atY}px`;
    this.canvas!.style.transform = `translate(${held.dx}px,${held.dy}px) scale(${held.sx},${held.sy})`;
  }

  look(x: number, y: number) {
    this.x = x;
    this.y = y;
    this.paint();
    const missing = this.inSight(1).filter((tile) => !this.kept.get(keyOf(tile))?.whole);
    const middle = { x: x + this.width / 2, y: y + this.height / 2 };
    const near = new Set(this.inSight(0).map(keyOf));
    const far = (tile: Tile) => (near.has(keyOf(tile)) ? 0 : 1e6) + Math.hypot((tile.tx + 0.5) * tileSize - middle.x, (tile.ty + 0.5) * tileSize - middle.y);
    missing.sort((a, b) => far(a) - far(b));
    const asked = missing.map(keyOf).join(' ');
    if (missing.length > 0 && asked !== this.asked) {
      this.asked = asked;
      const wanted: Wanted = { version: this.version, tiles: missing, drawn: missing.map(keyOf).filter((key) => this.kept.has(key)) };
      this.worker.postMessage({ wanted });
    }
  }

  private inSight = (margin: number) => tilesIn(this.x, this.y, this.width, this.height, margin);

  private paint() {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.blit());
  }

  private blit() {
    const canvas = this.canvas!;
    const sight = this.inSight(0).map((tile) => ({ ...tile, ...this.kept.get(keyOf(tile)) }));
    const drawn = sight.every(({ bitmap }) => bitmap);
    if (this.held && (!drawn || this.held.version === this.version)) {
      this.place();
      return;
    }
    this.held = null;
    canvas.style.transform = '';
    canvas.parentElement!.classList.remove('zooming');
    const ratio = devicePixelRatio || 1;
    const [w, h] = [Math.round(this.width * ratio), Math.round(this.height * ratio)];
    if (canvas.width !== w || canvas.height !== h) {
      canvas.width = w;
      canvas.height = h;
    }
    const pen = canvas.getContext('2d')!;
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    pen.clearRect(0, 0, this.width, this.height);
    for (const { tx, ty, bitmap } of sight) {
      if (bitmap) {
        pen.drawImage(bitmap, tx * tileSize - this.x, ty * tileSize - this.y, tileSize, tileSize);
      }
    }
    this.say(drawn, drawn && sight.every(({ whole }) => whole));
  }

  // For whoever waits for the Table: all in sight is drawn; and with all its pictures.
  private say(drawn: boolean, whole: boolean) {
    for (const [name, now] of [['drawn', drawn], ['whole', whole]] as const) {
      if (now && !(name in this.canvas!.dataset)) {
        this.canvas!.dataset[name] = 'yes';
        performance.mark('table ' + name);
      } else if (!now) {
        delete this.canvas!.dataset[name];
      }
    }
  }

  close() {
    this.worker.terminate();
    cancelAnimationFrame(this.frame);
    this.kept.forEach(({ bitmap }) => bitmap.close());
  }
}

// The tiles that lie within a window of the world, `margin` more above and below.
function tilesIn(x: number, y: number, w: number, h: number, margin: number): Tile[] {
  const list: Tile[] = [];
  const to = (value: number) => Math.floor(value / tileSize);
  for (let ty = Math.max(0, to(y) - margin); ty <= to(y + h) + margin; ty++) {
    for (let tx = to(x); tx <= to(x + w); tx++) {
      list.push({ tx, ty });
    }
  }
  return list;
}
