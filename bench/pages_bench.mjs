// How soon the Table can be used, and how evenly it moves, in a real browser.
//
//   node bench/pages_bench.mjs PROGRAM SHOW [ROUNDS]
//
// Serves SHOW (a copy is best; 5,000 pieces for the figures of the contract) on a free port of loopback
// and opens it in Debian's Chromium, headless, 1440 by 900, without a cache. Prints, of ROUNDS (5):
// - open: from the call of the address until every tile in sight is drawn, by the clock of the page;
//   median and slowest;
// - frames while panning by wheel and while zooming by wheel, one step every sixth frame: the 50th and
//   95th percentile of what passes between two frames, and the longest task of the main thread.
// A figure and no test: it fails only if the Table does not come or does not move. Needs `npm ci` in web/.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { loadavg } from 'node:os';

const [program, show, rounds = '5'] = process.argv.slice(2);
const { chromium } = createRequire(new URL('../web/package.json', import.meta.url))('playwright-core');

function serve() {
  const server = spawn(program, ['serve', show, '--port', '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((ready, fail) => {
    server.stdout.on('data', (data) => {
      const at = String(data).match(/http:\/\/127\.0\.0\.1:\d+/);
      if (at) {
        ready({ server, base: at[0] });
      }
    });
    server.on('exit', () => fail(new Error('the server ended')));
  });
}

const sorted = (list) => [...list].sort((a, b) => a - b);
const at = (list, share) => sorted(list)[Math.min(list.length - 1, Math.floor(share * list.length))];
const ms = (value) => value.toFixed(0).padStart(5) + ' ms';

// Until the tiles stand, until the sentence above them can be used, and what came over the wire.
async function opened(browser, base) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  // The page looks at its own clock, from the call of the address on: to be watched from outside
  // costs it as much as all that it does.
  await page.addInitScript(() => {
    new MutationObserver((_, watch) => {
      if (document.querySelector('canvas.cloth[data-whole]')) {
        watch.disconnect();
        window.stoodAfter = performance.now();
        console.info('the table stands');
      }
    }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-whole'] });
  });
  const stands = page.waitForEvent('console', { predicate: (told) => told.text() === 'the table stands', timeout: 60000 });
  await page.goto(base + '/table', { waitUntil: 'commit' });
  await stands;
  const took = await page.evaluate(() => window.stoodAfter);
  const inside = await page.evaluate(() => {
    const asked = performance.getEntriesByType('resource');
    const table = asked.find((one) => one.name.endsWith('/api/table'));
    return {
      script: asked.filter((one) => one.name.endsWith('.js')).reduce((sum, one) => sum + one.encodedBodySize, 0),
      table: { from: table.startTime, to: table.responseEnd, bytes: table.encodedBodySize },
    };
  });
  return { page, context, took, ...inside };
}

// What passes between frames while `step` is done in every `each`th of them.
const moved = (page, count, each, wheel) =>
  page.evaluate(
    async ({ count, each, wheel }) => {
      const board = document.querySelector('canvas.cloth');
      const frames = [];
      let longest = 0;
      const tasks = new PerformanceObserver((list) => list.getEntries().forEach((one) => (longest = Math.max(longest, one.duration))));
      tasks.observe({ entryTypes: ['longtask'] });
      const frame = () => new Promise((done) => requestAnimationFrame(done));
      let last = await frame();
      for (let i = 0; i < count; i++) {
        if (i % each === 0) {
          const turn = Math.floor(i / each / 3) % 2 ? -1 : 1;
          board.dispatchEvent(new WheelEvent('wheel', { clientX: 700, clientY: 400, bubbles: true, cancelable: true, ...wheel, deltaY: wheel.deltaY * turn }));
        }
        const now = await frame();
        frames.push(now - last);
        last = now;
      }
      await new Promise((done) => setTimeout(done, 100));
      tasks.disconnect();
      return { frames, longest };
    },
    { count, each, wheel },
  );

const told = (name, { frames, longest }) =>
  console.log(`${name.padEnd(16)} p50 ${at(frames, 0.5).toFixed(1)} ms, p95 ${at(frames, 0.95).toFixed(1)} ms, slowest ${at(frames, 1).toFixed(0)} ms, longest task ${longest.toFixed(0)} ms of ${frames.length} frames`);

const { server, base } = await serve();
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  await (await opened(browser, base)).context.close(); // the server is warm from here on
  const all = [];
  for (let i = 0; i < Number(rounds); i++) {
    const one = await opened(browser, base);
    all.push(one);
    await one.context.close();
  }
  const of = (pick) => all.map(pick);
  console.log(`load of the machine ${loadavg()[0].toFixed(1)}`);
  console.log(`open             median ${ms(at(of((one) => one.took), 0.5))}, slowest ${ms(at(of((one) => one.took), 1))}`);
  console.log(`  table asked at ${ms(at(of((one) => one.table.from), 0.5))}, there at ${ms(at(of((one) => one.table.to), 0.5))}, ${all[0].table.bytes} bytes; script ${all[0].script} bytes`);
  const { page } = await opened(browser, base);
  told('rest', await moved(page, 60, 1000, { deltaY: 0 }));
  told('pan', await moved(page, 300, 1, { deltaY: 60 }));
  told('zoom', await moved(page, 300, 6, { deltaY: 70, ctrlKey: true }));
  told('years', await moved(page, 300, 6, { deltaY: 70, altKey: true }));
} finally {
  await browser.close();
  server.kill('SIGTERM');
}
