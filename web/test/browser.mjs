// What the tests of the pages share: the program on a free port, a real browser, and a list of what
// went wrong. Says "skipped" and ends where there is no browser.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import assert from 'node:assert/strict';

const browserPath = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => existsSync(path));
const program = process.argv[2];
const require = createRequire(import.meta.url);
let playwright;
try {
  playwright = require('playwright-core');
} catch {
  playwright = null;
}
if (!browserPath || !playwright) {
  console.log('skipped: no chromium or no playwright-core here');
  process.exit(0);
}

export const folder = mkdtempSync(join(tmpdir(), 'backmark-pages-'));
export const run = (...args) => {
  const done = spawnSync(program, args, { encoding: 'utf8' });
  assert.equal(done.status, 0, done.stderr);
};
export function serve(path) {
  const server = spawn(program, ['serve', path, '--port', '0']);
  return new Promise((ready, fail) => {
    let said = '';
    server.stdout.on('data', (data) => {
      said += data;
      const at = said.match(/http:\/\/127\.0\.0\.1:\d+/);
      if (at) {
        ready({ server, base: at[0] });
      }
    });
    server.on('exit', () => fail(new Error('the server ended: ' + said)));
  });
}

export const trouble = [];
export async function open(context, base, path, wait) {
  const page = await context.newPage();
  page.on('pageerror', (fault) => trouble.push(`${path}: ${fault.message}`));
  page.on('console', (line) => line.type() === 'error' && !/404|service ?worker/i.test(line.text()) && trouble.push(`${path}: ${line.text()}`));
  page.on('request', (asked) => {
    const url = new URL(asked.url());
    if (!['data:', 'blob:'].includes(url.protocol) && url.origin !== base) {
      trouble.push(`${path} asks an outside address: ${asked.url()}`);
    }
  });
  await page.goto(base + path, { timeout: 200000 });
  await page.waitForSelector(wait, { timeout: 200000 });
  return page;
}

export async function accessible(page, name) {
  await page.evaluate(readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8'));
  const found = await page.evaluate(() => window.axe.run());
  for (const one of found.violations.filter((each) => ['serious', 'critical'].includes(each.impact))) {
    trouble.push(`${name}: ${one.id}: ${one.nodes.map((node) => node.target + ' ' + (node.any[0]?.message ?? '')).slice(0, 3).join(' | ')}`);
  }
}

export const launch = () => playwright.chromium.launch({ executablePath: browserPath, args: ['--no-sandbox'] });

// The folder goes once nobody writes in it.
export async function end(browser, ...servers) {
  await browser.close();
  await Promise.all(
    servers.map(({ server }) => {
      server.removeAllListeners('exit');
      const gone = new Promise((done) => server.once('exit', done));
      server.kill();
      return gone;
    }),
  );
  rmSync(folder, { recursive: true, force: true });
}
