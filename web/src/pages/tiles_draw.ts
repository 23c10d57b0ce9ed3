// Draws a tile of the Table: bands, pieces, shadows, tears. Pure but for the canvas it is given.
export const tileSize = 512;

export interface Band {
  y: number;
  x0: number;
  step: number; // pixels a year
  p: string; // a digit a year
  p10: number;
  p50: number;
  p90: number;
}
export interface Sprite {
  at: number; // place in the table's pieces
  x: number;
  y: number;
  w: number;
  h: number;
  picked: boolean;
  torn: boolean;
  band: Band | null;
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
export type Pen = OffscreenCanvasRenderingContext2D;

const thick = 4;
const inkOf = (digit: number) => (0.05 + (0.8 * digit) / 9) * 0.9;

// A colour of six digits as a word of a picture's data, red first in memory.
export function wordOf(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return (b << 16) | (g << 8) | r;
}

// A band into the data of a picture `side` points wide and high whose corner lies at (left, top);
// from the middle of a year to that of the next the ink goes over. As a rectangle a year, 113,000
// of them in a show of 5,000 pieces, bands took longer than all else on the Table.
export function inkBand(data: Uint32Array, side: number, band: Band, left: number, top: number, ratio: number, word: number) {
  const step = Math.max(band.step, 3 / band.p.length) * ratio;
  const x0 = (band.x0 - left) * ratio;
  const y0 = Math.round((band.y - top) * ratio);
  const last = band.p.length - 1;
  const to = Math.min(side, Math.round(x0 + step * band.p.length));
  const rows = [Math.max(0, y0), Math.min(side, y0 + Math.round(thick * ratio))];
  for (let x = Math.max(0, Math.round(x0)); x < to; x++) {
    const at = (x + 0.5 - x0) / step - 0.5;
    const i = Math.floor(at);
    const here = band.p.charCodeAt(i < 0 ? 0 : i) - 48;
    const next = band.p.charCodeAt(i < last ? i + 1 : last) - 48;
    const dark = word | (Math.round(255 * inkOf(here + (next - here) * (at - i))) << 24);
    for (let y = rows[0]; y < rows[1]; y++) {
      data[y * side + x] = dark;
    }
  }
}

function drawZigzag(pen: Pen, x0: number, x1: number, y: number, rise: number, step: number) {
  const n = Math.max(2, Math.round((x1 - x0) / step));
  pen.moveTo(x0, y);
  for (let i = 1; i <= n; i++) {
    pen.lineTo(x0 + ((x1 - x0) * i) / n, y + (i % 2 ? rise : 0));
  }
}

// Strokes at the 10 and 90 points and the lozenge at the middle, of many bands at once.
function markBands(pen: Pen, bands: Band[], colour: string) {
  pen.fillStyle = colour;
  pen.globalAlpha = 0.9;
  pen.beginPath();
  for (const { y, p10, p50, p90 } of bands) {
    pen.rect(p10 - 0.6, y - 0.6, 1.1, 5.2);
    pen.rect(p90 - 0.6, y - 0.6, 1.1, 5.2);
    pen.moveTo(p50, y - 2.4);
    pen.lineTo(p50 + 2.4, y + 2);
    pen.lineTo(p50, y + 6.4);
    pen.lineTo(p50 - 2.4, y + 2);
    pen.closePath();
  }
  pen.fill();
  pen.globalAlpha = 1;
}

function drawBands(pen: Pen, sprites: Sprite[], look: Look, left: number, top: number) {
  const side = pen.canvas.width;
  const picture = new ImageData(side, side);
  const data = new Uint32Array(picture.data.buffer);
  const [ink, rust] = [wordOf(look.ink), wordOf(look.rust)];
  const whole: Band[] = [];
  const torn: Band[] = [];
  for (const sprite of sprites) {
    if (sprite.band) {
      inkBand(data, side, sprite.band, left, top, look.ratio, sprite.torn ? rust : ink);
      (sprite.torn ? torn : whole).push(sprite.band);
    }
  }
  pen.putImageData(picture, 0, 0);
  markBands(pen, whole, look.ink);
  markBands(pen, torn, look.rust);
  pen.strokeStyle = look.rust;
  pen.lineWidth = 1.1;
  pen.beginPath();
  torn.forEach(({ y, p10, p90 }) => drawZigzag(pen, p10, Math.max(p90, p10 + 8), y + 5.5, -2.2, 4));
  pen.stroke();
}

// Too small to be known by its shape.
const isDot = (sprite: Sprite) => sprite.h < 9;
export const wantsPicture = (sprite: Sprite) => !isDot(sprite);

function drawBare(pen: Pen, bare: Sprite[], look: Look) {
  pen.fillStyle = look.ink;
  pen.strokeStyle = look.ink;
  pen.lineWidth = 1;
  pen.beginPath();
  for (const { x, y, w, h } of bare.filter(isDot)) {
    pen.moveTo(x + w / 2 + 2.5, y + h / 2);
    pen.arc(x + w / 2, y + h / 2, 2.5, 0, 7);
  }
  pen.fill();
  pen.setLineDash([3, 2]);
  pen.beginPath();
  for (const { x, y, w, h } of bare.filter(wantsPicture)) {
    pen.rect(x + 0.5, y + 0.5, w - 1, h - 1);
  }
  pen.stroke();
  pen.setLineDash([]);
}

function drawPicture(pen: Pen, { x, y, w, h }: Sprite, bitmap: ImageBitmap, look: Look) {
  pen.save();
  const drop = Math.min(4, 1 + h / 70) * look.ratio;
  pen.shadowColor = look.cast;
  pen.shadowOffsetX = drop * 0.7;
  pen.shadowOffsetY = drop;
  pen.drawImage(bitmap, x, y, w, h);
  if (look.rim) {
    pen.shadowColor = look.rimLight;
    pen.shadowOffsetX = -0.5 * look.ratio;
    pen.shadowOffsetY = -0.5 * look.ratio;
    pen.drawImage(bitmap, x, y, w, h);
  }
  pen.restore();
}

function drawMarks(pen: Pen, sprites: Sprite[], look: Look) {
  const large = sprites.filter((sprite) => sprite.h >= 26);
  pen.fillStyle = look.brass;
  pen.strokeStyle = look.edge;
  pen.lineWidth = 0.9;
  pen.beginPath();
  for (const { x, y, w, h } of large.filter((sprite) => sprite.picked)) {
    const [cx, cy] = [x + Math.min(4, w * 0.12), y + Math.min(26, h * 0.3)];
    pen.moveTo(cx + 3.4, cy);
    pen.arc(cx, cy, 3.4, 0, 7);
  }
  pen.fill();
  pen.stroke();
  for (const [colour, width] of [[look.paper, 4.6], [look.rust, 2]] as const) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    large.filter((sprite) => sprite.torn).forEach(({ x, y, w, h }) => drawZigzag(pen, x + w / 2 - 11, x + w / 2 + 11, y + h * 0.7, -4, 3.7));
    pen.stroke();
  }
}

// The tile whose corner lies at (left, top). `pictureOf` gives nothing for a piece that is drawn
// in outline.
export function drawTile(pen: Pen, sprites: Sprite[], look: Look, left: number, top: number, pictureOf: (sprite: Sprite) => ImageBitmap | null) {
  pen.setTransform(look.ratio, 0, 0, look.ratio, -left * look.ratio, -top * look.ratio);
  pen.imageSmoothingQuality = 'high';
  drawBands(pen, sprites, look, left, top);
  const bare: Sprite[] = [];
  for (const sprite of sprites) {
    const bitmap = isDot(sprite) ? null : pictureOf(sprite);
    bitmap ? drawPicture(pen, sprite, bitmap, look) : bare.push(sprite);
  }
  drawBare(pen, bare, look);
  drawMarks(pen, sprites, look);
}
