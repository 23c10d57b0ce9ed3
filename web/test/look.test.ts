// The look by its tokens: contrast computed by WCAG 2.2 (relative luminance; 4.5 for text, 1.4.3;
// 3 for marks that carry meaning, 1.4.11), and no colour, size or face outside them.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';

const css = readFileSync('src/style/tokens.css', 'utf8');
type Tokens = Record<string, string>;
const block = (head: string): Tokens => Object.fromEntries([...css.split(head)[1].split('}')[0].matchAll(/--([\w-]+):([^;}]+)/g)].map((found) => [found[1], found[2]]));
const modes: Record<string, Tokens> = { day: block(':root{'), vault: block(':root[data-mode=vault]{') };

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

test('black on white is 21, and grey #767676 on white is the well-known 4.54', () => {
  // WCAG 2.2, definition of contrast ratio: 21 is its greatest value; #767676: from memory.
  assert.equal(contrast('#000000', '#ffffff'), 21);
  assert.equal(contrast('#767676', '#ffffff').toFixed(2), '4.54');
});

const grounds = ['table', 'table-2', 'table-hi', 'paper', 'paper-2', 'steel-1', 'steel-2'];
const texts: [string, string[]][] = [
  ['ink', grounds],
  ['ink-2', grounds],
  ['ink-3', ['paper', 'paper-2']],
  ['brass', ['table', 'table-hi', 'paper', 'paper-2']],
  ['rust', ['table', 'table-2', 'table-hi', 'paper', 'paper-2']],
  ['moss', ['paper', 'paper-2']],
  ['tide', grounds],
  ['print', ['sheet']],
];
const marks: [string, string[]][] = [
  ['ink-3', grounds],
  ['rust', grounds],
  ['moss', grounds],
  ['tide-2', ['paper', 'paper-2']],
  ['print-rust', ['sheet']],
];
for (const [mode, token] of Object.entries(modes)) {
  for (const [pairs, least] of [[texts, 4.5], [marks, 3]] as const) {
    test(`${mode}: every ${least === 3 ? 'mark' : 'text'} has ${least} to 1 on every ground it stands on`, () => {
      for (const [ink, on] of pairs) {
        for (const ground of on) {
          const ratio = contrast(token[ink], token[ground]);
          assert.ok(ratio >= least, `${ink} on ${ground}: ${ratio.toFixed(2)}`);
        }
      }
    });
  }
}

const files = readdirSync('src', { recursive: true })
  .map(String)
  .filter((name) => /\.(tsx?|css)$/.test(name) && !/tokens\.css$/.test(name));
const rest = (name: string) => readFileSync(join('src', name), 'utf8');

test('no colour stands outside the tokens', () => {
  const found = files.flatMap((name) => [...rest(name).matchAll(/#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|oklch|lab)a?\(|(?:fill|stroke|color|background)(?:=|:|\s*=\s*)["']?(?:black|white|red|green|blue|gr[ae]y)\b/gi)].map((one) => `${name}: ${one[0]}`));
  assert.deepEqual(found, []);
});

test('nothing is set smaller than 12.5 px, and every face is one of the three voices', () => {
  const sizes = files.flatMap((name) => [...rest(name).matchAll(/(?:font-size:|fontSize: '|font:[^;}]*?)\b(\d+(?:\.\d+)?)px/g)].map((one) => [name, Number(one[1])] as const));
  assert.ok(sizes.length > 50);
  assert.deepEqual(sizes.filter(([, size]) => size < 12.5), []);
  const faces = files.flatMap((name) => [...rest(name).matchAll(/font(?:-family)?:[^;}{]*?(var\(--\w+\)|inherit|serif|sans|mono)/g)].map((one) => one[1]));
  assert.deepEqual([...new Set(faces)].sort(), ['var(--hand)', 'var(--say)', 'var(--word)']);
});

test('every token that is asked for is there, in both lights where it is a colour', () => {
  const asked = new Set(files.flatMap((name) => [...rest(name).matchAll(/var\(--([\w-]+)\)|colour\('--([\w-]+)'\)/g)].map((one) => one[1] ?? one[2])));
  assert.deepEqual([...asked].filter((name) => !(name in modes.day)), []);
  const colours = Object.keys(modes.day).filter((name) => /^(#|rgb|transparent)/.test(modes.day[name]));
  assert.deepEqual(colours.filter((name) => !(name in modes.vault)), []);
});

test('no page is longer than 300 lines', () => {
  assert.deepEqual(files.filter((name) => name.startsWith('pages/') && rest(name).split('\n').length > 301), []);
});
