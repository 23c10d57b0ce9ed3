// Small pictures of pieces, fetched a few at a time in the order in which they are wanted: what
// has gone out of sight is not waited for.
const sizes = [32, 64, 128, 256, 512];
const most = 2500;
const atOnce = 6; // connections of a browser to one server

export class Pictures {
  private kept = new Map<string, ImageBitmap | null>(); // null: there is none
  private queue: string[] = [];
  private coming = new Set<string>();
  constructor(private came: () => void) {}

  static size = (px: number): number | 'full' => sizes.find((size) => size >= px) ?? 'full';

  at(address: string): ImageBitmap | null {
    return this.kept.get(address) ?? null;
  }
  knows(address: string): boolean {
    return this.kept.has(address);
  }

  // Those of an earlier call that are not among them are given up, but for the ones on their way.
  want(addresses: string[]) {
    this.queue = [];
    for (const address of new Set(addresses)) {
      const bitmap = this.kept.get(address);
      if (bitmap !== undefined) {
        this.kept.delete(address); // to the end: used last
        this.kept.set(address, bitmap);
      } else if (!this.coming.has(address)) {
        this.queue.push(address);
      }
    }
    this.go();
  }

  private go() {
    while (this.coming.size < atOnce && this.queue.length > 0) {
      void this.fetch(this.queue.shift()!);
    }
  }

  private async fetch(address: string) {
    this.coming.add(address);
    const bitmap = await fetch(address)
      .then((answer) => (answer.ok ? answer.blob() : null))
      .then((blob) => (blob ? createImageBitmap(blob) : null))
      .catch(() => null);
    this.coming.delete(address);
    this.kept.set(address, bitmap);
    for (const [oldest, old] of this.kept) {
      if (this.kept.size <= most) {
        break;
      }
      old?.close();
      this.kept.delete(oldest);
    }
    this.go();
    this.came();
  }
}
