// Bundles the pages into dist/: index.html, ahead.js, app.js, app.css, tiles.js, sw.js and fonts/.
import { build } from 'esbuild';
import { cpSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const dist = join(here, 'dist');
const faces = [
  ['Brygada', 'brygada-1918', '400 700', ['normal', 'italic']],
  ['Hyper', 'atkinson-hyperlegible-next', '200 800', ['normal']],
  ['HyperMono', 'atkinson-hyperlegible-mono', '200 800', ['normal']],
];
const ranges = {
  latin:
    'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  'latin-ext':
    'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+0300-0303,U+0305-0307,U+0309-0328,U+032A-036F,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
};

function fonts() {
  mkdirSync(join(dist, 'fonts'), { recursive: true });
  let css = '';
  for (const [family, pack, weights, styles] of faces) {
    for (const style of styles) {
      for (const [subset, range] of Object.entries(ranges)) {
        const file = `${pack}-${subset}-wght-${style}.woff2`;
        cpSync(join(here, 'node_modules/@fontsource-variable', pack, 'files', file), join(dist, 'fonts', file));
        css += `@font-face{font-family:${family};font-style:${style};font-weight:${weights};font-display:swap;src:url(/assets/fonts/${file}) format("woff2");unicode-range:${range}}\n`;
      }
    }
  }
  return css;
}

rmSync(dist, { recursive: true, force: true });
mkdirSync(dist, { recursive: true });
const css = fonts();
const shared = { bundle: true, minify: true, target: 'es2021', legalComments: 'none', absWorkingDir: here };
await build({
  ...shared,
  entryPoints: { ahead: 'src/ahead.ts', app: 'src/main.tsx', tiles: 'src/pages/tiles_worker.ts', sw: 'src/sw.ts' },
  format: 'iife',
  jsx: 'automatic',
  jsxImportSource: 'preact',
  outdir: 'dist',
});
await build({ ...shared, entryPoints: { app: 'src/style/app.css' }, outdir: 'dist', external: ['/assets/*'] });
writeFileSync(join(dist, 'app.css'), css + readFileSync(join(dist, 'app.css'), 'utf8'));
for (const name of readdirSync(join(here, 'static'))) {
  cpSync(join(here, 'static', name), join(dist, name));
}
