// How soon the Table can be used, and how evenly it moves, in a real browser.
//
//   node bench/pages_bench.mjs PROGRAM SHOW [ROUNDS]
//
// Serves SHOW (a copy is best; 5,000 pieces for the figures of the contract) on a free port of loopback
// and opens it in Debian's Chromium, headless, 1440 by 900, without a cache. Prints, of ROUNDS (5):
// - usable: from the call of the address until the pieces in sight are drawn and a press on one of them,
//   made at that moment, has been answered in a frame; by the clock of the page, median and slowest;
// - whole: until every picture in sight is there as well;
// - frames while panning by wheel, while zooming by notches of the wheel, one every sixth frame, and while
//   spreading two fingers (a little every frame, then a rest, in which the Table is laid and drawn anew):
//   the 50th and 95th percentile of what passes between two frames, and the longest task of the main thread.
// - drag: from a movement of the mouse with a piece of the first case in hand until the piece, and until the
//   checks of its case as it then hangs, are in a frame;
// - what if: from a key typed on the Sheet of the first piece until what the line would do is in a frame.
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

// The page writes down when it stood, by its own clock: to be watched from outside costs it as much
// as all that it does.
const watch = () => {
  const named = () => document.querySelector('.chosen')?.getAttribute('aria-label');
  let before;
  const seen = new MutationObserver(() => {
    const board = document.querySelector('canvas.cloth');
    if (board?.dataset.drawn && !window.drawn) {
      window.drawn = performance.now();
      before = named();
      console.info('drawn');
    }
    if (window.drawn && !window.answered && named() !== before) {
      window.answered = performance.now();
      requestAnimationFrame(() => (window.usable = performance.now()));
    }
    if (board?.dataset.whole && !window.whole) {
      window.whole = performance.now();
    }
  });
  seen.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-drawn', 'data-whole', 'aria-label'] });
};

// Opens the Table, presses on a piece as soon as it is drawn, and says what took how long and what
// came over the wire. Without a point to press on it looks for one.
async function opened(browser, base, point) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.addInitScript(watch);
  const drawn = page.waitForEvent('console', { predicate: (told) => told.text() === 'drawn', timeout: 60000 });
  await page.goto(base + '/table', { waitUntil: 'commit' });
  await drawn;
  const points = point ? [point] : Array.from({ length: 400 }, (_, i) => ({ x: 260 + (i % 40) * 20, y: 140 + 12 * Math.floor(i / 40) }));
  const pressed = await answeredAt(page, points);
  await page.waitForFunction(() => window.usable && window.whole, null, { timeout: 60000 });
  const inside = await page.evaluate(() => {
    const asked = performance.getEntriesByType('resource');
    const table = asked.find((one) => one.name.endsWith('/api/table'));
    return {
      drawn: window.drawn,
      usable: window.usable,
      whole: window.whole,
      script: asked.filter((one) => one.name.endsWith('.js')).reduce((sum, one) => sum + one.encodedBodySize, 0),
      table: { from: table.startTime, to: table.responseEnd, bytes: table.encodedBodySize },
    };
  });
  return { page, context, pressed, ...inside };
}

async function answeredAt(page, points) {
  for (const point of points) {
    await page.mouse.click(point.x, point.y);
    if (points.length === 1 || (await page.waitForFunction(() => window.answered, null, { timeout: 200 }).catch(() => null))) {
      return point;
    }
  }
  throw new Error('no piece answers a press');
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
  console.log(`${name.padEnd(16)} p50 ${at(frames, 0.5).toFixed(1)} ms, p95 ${at(frames, 0.95).toFixed(1)} ms, slowest ${at(frames, 1).toFixed(0)} ms, longest task ${longest.toFixed(0)} ms, of ${frames.length} frames`);

// Two fingers spread and closed, a little every frame, resting between; what passes between frames.
const pinched = (page) =>
  page.evaluate(async () => {
    const board = document.querySelector('canvas.cloth');
    const frames = [];
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    let last = await frame();
    for (let i = 0; i < 360; i++) {
      if (i % 60 < 20) {
        board.dispatchEvent(new WheelEvent('wheel', { clientX: 700, clientY: 400, bubbles: true, cancelable: true, ctrlKey: true, deltaY: Math.floor(i / 60) % 2 ? 12 : -12 }));
      }
      const now = await frame();
      frames.push(now - last);
      last = now;
    }
    return { frames, longest: 0 };
  });

// From what the hand did to the frame that shows it, counted by the page: until `where` reads
// otherwise, or until the answer to what was `asked` for it has been read (a case's checks most often
// say the same of the next place), and a frame has been drawn after that.
const watchHand = ({ on, where, asked }) => {
  window.took = [];
  let from = 0;
  const shown = (since) => requestAnimationFrame(() => setTimeout(() => window.took.push(performance.now() - since)));
  addEventListener(on, (event) => (from = event.timeStamp), true);
  if (asked) {
    const ask = window.fetch;
    window.fetch = async (address, options) => {
      const since = from;
      const answer = await ask(address, options);
      if (String(address).endsWith(asked) && since > 0) {
        const read = answer.json.bind(answer);
        answer.json = () => read().finally(() => setTimeout(() => shown(since)));
      }
      return answer;
    };
    return;
  }
  new MutationObserver(() => {
    if (from > 0) {
      shown(from);
      from = 0;
    }
  }).observe(document.querySelector(where), { subtree: true, childList: true, characterData: true, attributes: true });
};
const spent = (name, list) => console.log(`${name.padEnd(16)} p50 ${ms(at(list, 0.5))}, p95 ${ms(at(list, 0.95))}, slowest ${ms(at(list, 1))}, of ${list.length}`);

async function handled(context, path, wait, watched, hand) {
  const page = await context.newPage();
  await page.goto(base + path);
  await page.waitForSelector(wait, { timeout: 60000 });
  await page.waitForTimeout(1500);
  await page.evaluate(watchHand, watched);
  await hand(page);
  await page.waitForTimeout(300);
  const took = await page.evaluate(() => window.took);
  await page.close();
  return took;
}

// Forty movements of 5 mm and more; the last is not let go over the case, so that nothing is written.
const drag = async (page) => {
  const box = await page.locator('.hung-in').nth(4).boundingBox();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  for (let i = 1; i <= 40; i++) {
    await page.mouse.move(box.x + box.width / 2 + 6 * i, box.y + box.height / 2 + (i % 2) * 8);
    await page.waitForTimeout(120);
  }
};
const type = async (page) => {
  await page.keyboard.press('w');
  await page.locator('.whatif .line input').focus();
  await page.keyboard.type('cord: braided leather; height: 49.5', { delay: 120 });
};

const { server, base } = await serve();
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  const first = await opened(browser, base); // the server is warm from here on
  await first.context.close();
  const all = [];
  for (let i = 0; i < Number(rounds); i++) {
    const one = await opened(browser, base, first.pressed);
    all.push(one);
    await one.context.close();
  }
  const of = (pick) => all.map(pick);
  console.log(`load of the machine ${loadavg()[0].toFixed(1)}`);
  for (const name of ['drawn', 'usable', 'whole']) {
    console.log(`${name.padEnd(16)} median ${ms(at(of((one) => one[name]), 0.5))}, slowest ${ms(at(of((one) => one[name]), 1))}`);
  }
  console.log(`  table asked at ${ms(at(of((one) => one.table.from), 0.5))}, there at ${ms(at(of((one) => one.table.to), 0.5))}, ${all[0].table.bytes} bytes; script ${all[0].script} bytes`);
  const { page } = await opened(browser, base, first.pressed);
  told('rest', await moved(page, 60, 1000, { deltaY: 0 }));
  told('pan', await moved(page, 300, 1, { deltaY: 60 }));
  told('zoom', await moved(page, 300, 6, { deltaY: 70, ctrlKey: true }));
  told('years', await moved(page, 300, 6, { deltaY: 70, altKey: true }));
  told('pinch', await pinched(page));
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  const named = await page.locator('.chosen').getAttribute('aria-label');
  spent('drag, the piece', await handled(context, '/show?see=case', '.elevation', { on: 'pointermove', where: '.elevation' }, drag));
  spent('drag, checks', await handled(context, '/show?see=case', '.elevation', { on: 'pointermove', asked: '/api/care' }, drag));
  spent('what if', await handled(context, '/sheet/' + encodeURIComponent(named.split(',')[0]), '.sheet.ready', { on: 'keydown', where: '.sheet' }, type));
} finally {
  await browser.close();
  server.kill('SIGTERM');
}
