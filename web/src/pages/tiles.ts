// The main thread's side of the Table: has it laid out by the worker, asks for the tiles in
// sight, keeps 96, and blits them. A frame never lays out and never draws a piece.
import { unpackBoxes, type Layout } from './table_layout';
import { tileSize, type Laid, type Order, type Wanted } from './tiles_worker';

const most = 96;
type Told = { laid?: Laid } & Partial<Wanted & { bitmap: ImageBitmap }>;

export class Tiles {
  private worker = new Worker('/assets/tiles.js');
  private canvas: HTMLCanvasElement | null = null;
  private ready: () => void = () => undefined;
  private kept = new Map<string, ImageBitmap>();
  private asked = new Set<string>();
  private ordered = 0;
  private version = 0; // in sight
  private before: { bitmap: HTMLCanvasElement; x: number; y: number; scale: number } | null = null;
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
  // Told of a layout when it is there, unless something else was ordered since.
  laid: (layout: Layout, order: Order) => void = () => undefined;
  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<Told>) => {
      if (data.bitmap) {
        this.take(data as Wanted & { bitmap: ImageBitmap });
      } else if (data.laid && data.laid.version === this.latest?.version) {
        this.laid({ ...data.laid, boxes: unpackBoxes(data.laid.boxes) }, this.latest);
      }
    };
  }

  // `written` is the table that the wish is about.
  order(wish: Omit<Order, 'version' | 'table'>, written: ArrayBuffer) {
    this.read(written);
    this.latest = { ...wish, version: ++this.ordered, table: this.tables.get(written)! };
    this.worker.postMessage({ order: this.latest });
  }

  // The table as it came: the worker reads it while the page does. Twice the same is read once.
  read(written: ArrayBuffer) {
    if (!this.tables.has(written)) {
      const id = ++this.came;
      this.tables.set(written, id);
      const copy = written.slice(0);
      this.worker.postMessage({ table: copy, id }, [copy]);
    }
  }

  // Gives what ends it.
  onto(canvas: HTMLCanvasElement, ready: () => void): () => void {
    this.canvas = canvas;
    this.ready = ready;
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

  private take({ version, tx, ty, bitmap }: Wanted & { bitmap: ImageBitmap }) {
    if (version !== this.version) {
      bitmap.close();
      return;
    }
    this.kept.set(tx + ',' + ty, bitmap);
    this.forget();
    this.paint();
  }

  // The layout of that order comes into sight; what was there stays, stretched by `scale` about
  // its corner, until the new tiles have come.
  show(version: number, scale = 1) {
    const canvas = this.canvas!;
    if (canvas.width > 0 && this.kept.size > 0) {
      const copy = document.createElement('canvas');
      copy.width = canvas.width;
      copy.height = canvas.height;
      copy.getContext('2d')!.drawImage(canvas, 0, 0);
      this.before = { bitmap: copy, x: this.x, y: this.y, scale };
    }
    this.kept.forEach((bitmap) => bitmap.close());
    this.kept.clear();
    this.asked.clear();
    this.version = version;
    this.look(this.x, this.y);
  }

  look(x: number, y: number) {
    this.x = x;
    this.y = y;
    this.paint();
    const missing = this.inSight(1).filter((tile) => !this.kept.has(tile.tx + ',' + tile.ty));
    const middle = { x: x + this.width / 2, y: y + this.height / 2 };
    const far = (tile: Wanted) => Math.hypot((tile.tx + 0.5) * tileSize - middle.x, (tile.ty + 0.5) * tileSize - middle.y);
    missing.sort((a, b) => far(a) - far(b));
    const key = missing.map((tile) => tile.tx + ',' + tile.ty).join(' ');
    if (missing.length > 0 && !this.asked.has(key)) {
      this.asked = new Set([key]);
      this.worker.postMessage({ wanted: missing });
    }
  }

  private inSight(margin: number): Wanted[] {
    const list: Wanted[] = [];
    const to = (value: number) => Math.floor(value / tileSize);
    for (let ty = to(this.y) - margin; ty <= to(this.y + this.height) + margin; ty++) {
      for (let tx = to(this.x); tx <= to(this.x + this.width); tx++) {
        if (ty >= 0) {
          list.push({ version: this.version, tx, ty });
        }
      }
    }
    return list;
  }

  private forget() {
    for (const key of this.kept.keys()) {
      if (this.kept.size <= most) {
        return;
      }
      this.kept.get(key)!.close();
      this.kept.delete(key);
    }
  }

  private paint() {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.blit());
  }

  private blit() {
    const ratio = devicePixelRatio || 1;
    const { width: w, height: h } = this;
    if (this.canvas!.width !== Math.round(w * ratio) || this.canvas!.height !== Math.round(h * ratio)) {
      this.canvas!.width = Math.round(w * ratio);
      this.canvas!.height = Math.round(h * ratio);
    }
    const pen = this.canvas!.getContext('2d')!;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.canvas!.width, this.canvas!.height);
    const sight = this.inSight(0);
    const whole = sight.every((tile) => this.kept.has(tile.tx + ',' + tile.ty));
    if (this.before && !whole) {
      const { bitmap, x, y, scale } = this.before;
      pen.drawImage(bitmap, (x - this.x) * ratio, (y - this.y) * ratio, bitmap.width * scale, bitmap.height * scale);
    } else {
      this.before = null;
    }
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    for (const tile of sight) {
      const bitmap = this.kept.get(tile.tx + ',' + tile.ty);
      if (bitmap && (whole || !this.before)) {
        pen.drawImage(bitmap, tile.tx * tileSize - this.x, tile.ty * tileSize - this.y, tileSize, tileSize);
      }
    }
    if (whole) {
      this.ready();
    }
  }

  close() {
    this.worker.terminate();
    cancelAnimationFrame(this.frame);
    this.kept.forEach((bitmap) => bitmap.close());
  }
}
