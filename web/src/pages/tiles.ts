// The main thread's side of the tiles: asks for those in sight, keeps 96, and blits them. A frame
// never draws a piece.
import { tileSize, type Scene, type Wanted } from './tiles_worker';

const most = 96;

export class Tiles {
  private worker = new Worker('/assets/tiles.js');
  private kept = new Map<string, ImageBitmap>();
  private asked = new Set<string>();
  private version = 0;
  private before: { bitmap: HTMLCanvasElement; x: number; y: number; scale: number; since: number } | null = null;
  private frame = 0;
  private x = 0;
  private y = 0;
  constructor(
    private canvas: HTMLCanvasElement,
    private ready: () => void,
  ) {
    this.worker.onmessage = (event: MessageEvent<Wanted & { bitmap: ImageBitmap }>) => {
      const { version, tx, ty, bitmap } = event.data;
      if (version !== this.version) {
        bitmap.close();
        return;
      }
      this.kept.set(tx + ',' + ty, bitmap);
      this.forget();
      this.paint();
    };
  }

  // A new scene; what was in sight stays, stretched by `scale` about its corner, until the new
  // tiles have come.
  show(scene: Omit<Scene, 'version'>, scale = 1) {
    if (this.canvas.width > 0 && this.kept.size > 0) {
      const copy = document.createElement('canvas');
      copy.width = this.canvas.width;
      copy.height = this.canvas.height;
      copy.getContext('2d')!.drawImage(this.canvas, 0, 0);
      this.before = { bitmap: copy, x: this.x, y: this.y, scale, since: performance.now() };
    }
    this.kept.forEach((bitmap) => bitmap.close());
    this.kept.clear();
    this.asked.clear();
    this.version++;
    this.worker.postMessage({ scene: { ...scene, version: this.version } });
    this.look(this.x, this.y);
  }

  look(x: number, y: number) {
    this.x = x;
    this.y = y;
    this.paint();
    const missing = this.inSight(1).filter((tile) => !this.kept.has(tile.tx + ',' + tile.ty));
    const middle = { x: x + this.canvas.clientWidth / 2, y: y + this.canvas.clientHeight / 2 };
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
    for (let ty = to(this.y) - margin; ty <= to(this.y + this.canvas.clientHeight) + margin; ty++) {
      for (let tx = to(this.x); tx <= to(this.x + this.canvas.clientWidth); tx++) {
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
    const { clientWidth: w, clientHeight: h } = this.canvas;
    if (this.canvas.width !== Math.round(w * ratio) || this.canvas.height !== Math.round(h * ratio)) {
      this.canvas.width = Math.round(w * ratio);
      this.canvas.height = Math.round(h * ratio);
    }
    const pen = this.canvas.getContext('2d')!;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.canvas.width, this.canvas.height);
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
