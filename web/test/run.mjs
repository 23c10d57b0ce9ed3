// Runs the tests of pure functions: each TypeScript test is bundled for node and run there.
import { build } from 'esbuild';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'backmark-web-'));
const entryPoints = readdirSync(here)
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => join(here, name));
await build({ entryPoints, bundle: true, platform: 'node', format: 'esm', outdir: out, outExtension: { '.js': '.mjs' }, logLevel: 'error' });
const done = spawnSync(process.execPath, ['--test', ...entryPoints.map((name) => join(out, name.split('/').pop().replace('.ts', '.mjs')))], { stdio: 'inherit' });
rmSync(out, { recursive: true });
process.exit(done.status ?? 1);
