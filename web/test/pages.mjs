// The pages in a real browser, against the program itself on a port that is free: every page opens
// without an error, nothing serious by axe-core, and the way by keyboard alone.
// usage: node pages.mjs BACKMARK; says "skipped" where there is no browser.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import assert from 'node:assert/strict';
import { accessible, end, folder, launch, open, run, serve, trouble } from './browser.mjs';

const show = join(folder, 'coast');

// A grey picture of 8 by 8 points (PNG specification, chunks IHDR, IDAT, IEND).
function pngOf(shade) {
  const chunk = (name, data) => {
    const body = Buffer.concat([Buffer.from(name), data]);
    let crc = 0xffffffff;
    for (const byte of body) {
      crc ^= byte;
      for (let i = 0; i < 8; i++) {
        crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
      }
    }
    const ends = Buffer.alloc(8);
    ends.writeUInt32BE(data.length, 0);
    ends.writeUInt32BE((crc ^ 0xffffffff) >>> 0, 4);
    return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
  };
  const head = Buffer.from([0, 0, 0, 8, 0, 0, 0, 8, 8, 0, 0, 0, 0]);
  const rows = Buffer.alloc(72, shade);
  for (let row = 0; row < 8; row++) {
    rows[row * 9] = 0;
  }
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', head), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]);
}

// What begins under the sentence, where nothing was scrolled.
const covered = () => {
  const said = document.querySelector('.say')?.getBoundingClientRect();
  const first = document.querySelector('.scroller h2, .scroller li, .scroller .look-card, .elevation')?.getBoundingClientRect();
  return said && first && first.top < said.bottom - 10 && first.left < said.right ? `${first.top} < ${said.bottom}` : '';
};

// Boxes that can be scrolled sideways though nobody would look there.
const cutOff = () => [...document.querySelectorAll('.board, .slip, .slip.side, .ribbons, .makers, .kept')].filter((box) => box.scrollWidth > box.clientWidth + 1).map((box) => `${box.className} ${box.scrollWidth} > ${box.clientWidth}`).join(', ');

run('new', join(folder, 'empty'));
run('demo', show, '--undrawn');
run('infer', show);
const [full, empty] = [await serve(show), await serve(join(folder, 'empty'))];
const browser = await launch();
try {
  // With BACKMARK_SHOTS=FOLDER every page is photographed at the three sizes, to be looked at.
  for (const [size, mode] of [[{ width: 1440, height: 900 }, 'day'], [{ width: 1024, height: 768 }, 'day'], [{ width: 820, height: 1180 }, 'vault'], [{ width: 390, height: 844 }, 'vault']]) {
    const context = await browser.newContext({ viewport: size, bypassCSP: false, reducedMotion: 'reduce' });
    await context.addInitScript((light) => localStorage.setItem('backmark.mode', light), mode);
    for (const [path, wait] of [['/table', '.chosen'], ['/sheet/ES%20118', '.sheet.ready'], ['/years', '.years.ready'], ['/looks', '.looks.ready'], ['/sources', '.sources[data-weighed=true]'], ['/show', '.showing.ready'], ['/prints', '.prints.ready']]) {
      const page = await open(context, full.base, path, wait);
      await accessible(page, `${path} ${mode}`);
      if (process.env.BACKMARK_SHOTS) {
        await page.screenshot({ path: join(process.env.BACKMARK_SHOTS, `${path.split('/')[1]}-${size.width}.png`) });
      }
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${path} does not reach past the edge`);
      assert.equal(await page.evaluate(covered), '', `${path} ${size.width}: the sentence covers nothing at rest`);
      assert.equal(await page.evaluate(cutOff), '', `${path} ${size.width}: nothing is cut off by its own box`);
      await page.close();
    }
    await context.close();
  }

  // The empty show greets with three ways in.
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const bare = await open(context, empty.base, '/', '.first');
  assert.equal(await bare.locator('.way').count(), 3);
  await accessible(bare, 'empty');
  for (const path of ['/sheet', '/notes', '/years', '/looks', '/sources', '/show', '/show?see=case', '/show?see=days', '/prints']) {
    const page = await open(context, empty.base, path, '.first, .ready');
    await accessible(page, 'empty ' + path);
    await page.close();
  }

  // By keyboard alone: choose, pick, undo the pick, open the sheet, lift a ribbon, lay it back.
  const page = await open(context, full.base, '/table', '.chosen');
  const chosen = () => page.locator('.chosen').getAttribute('aria-label');
  const before = await chosen();
  await page.keyboard.press('ArrowDown');
  await page.waitForFunction((old) => document.querySelector('.chosen')?.getAttribute('aria-label') !== old, before);
  const wasPicked = /, picked$/.test(await chosen());
  await page.keyboard.press('p');
  await page.waitForFunction((was) => /, picked$/.test(document.querySelector('.chosen').getAttribute('aria-label')) !== was, wasPicked);
  await page.keyboard.press('p');
  await page.waitForFunction((was) => /, picked$/.test(document.querySelector('.chosen').getAttribute('aria-label')) === was, wasPicked);
  // A zoom follows the hand, settles on a step, and what lay under the hand lies there again.
  const [x, y] = await page.locator('.chosen').boundingBox().then((box) => [box.x + box.width / 2, box.y + box.height / 2]);
  await page.mouse.move(x, y);
  await page.evaluate(() => {
    const board = document.querySelector('.cloth');
    new MutationObserver(() => (window.stretched ||= /scale\(1\.\d+, 1\.\d+\)/.test(board.style.transform))).observe(board, { attributes: true });
  });
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -100);
  await page.keyboard.up('Control');
  await page.waitForFunction(() => window.stretched);
  await page.waitForFunction(() => /1 : 3/.test(document.querySelector('.say').textContent) && document.querySelector('.cloth').dataset.drawn && !document.querySelector('.cloth').style.transform);
  const after = await page.locator('.chosen').boundingBox();
  assert.ok(Math.abs(after.y + after.height / 2 - y) < 12 && Math.abs(after.x + after.width / 2 - x) < 12, 'the piece lies under the hand');
  await page.keyboard.press('-');
  await page.keyboard.press('0');

  await page.keyboard.press('Enter');
  await page.waitForSelector('.sheet.ready', { timeout: 200000 });
  assert.equal(await page.locator('.walked').count(), 0, 'no ribbon is marked before a hand walks them');
  await page.keyboard.press('1');
  await page.waitForSelector('.ribbons li.up');
  await page.keyboard.press('Escape');
  await page.waitForFunction(() => !document.querySelector('.ribbons li.up'));
  await page.keyboard.press('g');
  await page.keyboard.press('w');
  await page.waitForSelector('.showing.ready');

  // Two windows: what one picks, the other shows without being asked.
  const other = await open(context, full.base, '/show', '.showing.ready');
  const first = await page.locator('.hanging').first().getAttribute('data-number');
  await page.locator('.hanging').first().focus();
  await page.keyboard.press('Shift+ArrowRight');
  await other.waitForFunction((number) => document.querySelector('.hanging')?.getAttribute('data-number') !== number, first, { timeout: 30000 });

  // What one undoes goes back, by key, and both windows show it.
  await page.keyboard.press('z');
  await other.waitForFunction((number) => document.querySelector('.hanging')?.getAttribute('data-number') === number, first, { timeout: 30000 });

  // Two windows that write of the same piece: the second sees both values, and may leave it so.
  const deaf = await context.newPage();
  await deaf.route('**/api/changes*', (route) => route.abort());
  await deaf.goto(full.base + '/table/' + encodeURIComponent(first));
  await deaf.waitForSelector('.chosen');
  const pick = () => deaf.locator('.chosen').getAttribute('aria-label');
  const told = await pick();
  await other.locator(`[data-number="${first}"]`).focus();
  await other.keyboard.press('Shift+ArrowRight');
  await other.waitForFunction((number) => document.querySelector('.hanging')?.getAttribute('data-number') !== number, first, { timeout: 30000 });
  await deaf.locator('.chosen').focus();
  await deaf.keyboard.press('p');
  await deaf.waitForSelector('.clash', { timeout: 30000 });
  assert.match(await deaf.locator('.clash .both').textContent(), new RegExp(first));
  assert.match(await deaf.locator('.clash .both').textContent(), /Yourspick ES \d+drop/);
  await accessible(deaf, 'clash');
  await deaf.keyboard.press('Escape');
  await deaf.waitForFunction(() => /left as it stands/.test(document.querySelector('.told')?.textContent ?? ''));
  assert.equal(await pick(), told, 'what was left stands');
  assert.equal(await deaf.locator('.clash').count(), 0);
  await deaf.close();

  // Years by keyboard: the next row, known years hidden, only one character, and its pieces.
  const years = await open(context, full.base, '/years', '.years.ready');
  const row = () => years.locator('.variant.on').textContent();
  const top = await row();
  await years.keyboard.press('ArrowDown');
  assert.notEqual(await row(), top);
  const solid = await years.locator('.variant circle[fill="var(--ink)"]').count();
  await years.keyboard.press('h');
  assert.ok((await years.locator('.variant circle[fill="var(--ink)"]').count()) < solid, 'a known year that is hidden is no solid bead');
  const sections = await years.locator('.years section').count();
  await years.locator('.cal .btn.soft').first().click();
  await years.waitForFunction((n) => document.querySelectorAll('.years section').length < n, sections);
  const many = Number((await years.locator('.cal .btn.main').textContent()).match(/\d+/)?.[0] ?? 1);
  await years.locator('.cal .btn.main').click();
  await years.waitForSelector('.chosen');
  assert.equal(await years.locator('.chosen').getAttribute('aria-setsize'), String(many));

  // Sources: a claim shows who speaks for and against; a source opens by keyboard.
  const sources = await open(context, full.base, '/sources', '.sources[data-weighed=true]');
  await sources.locator('[aria-label^="bearing on"]').click();
  await sources.locator('.choices button').nth(1).click();
  await sources.waitForSelector('.sides');
  const voices = await sources.locator('.voice').count();
  assert.ok(voices > 0 && (await sources.locator('.hung.for[aria-pressed], .hung.against[aria-pressed]').count()) <= voices);
  await sources.keyboard.press('Escape');
  await sources.locator('.hung[aria-pressed]').first().focus();
  await sources.keyboard.press('ArrowDown');
  await sources.keyboard.press('Enter');
  await sources.waitForSelector('.hung.on');
  assert.match(await sources.locator('.claims').textContent(), /Believed/);

  // A spreadsheet: read, mended on the page, and only then taken in.
  const sheet = join(folder, 'harbour-list.csv');
  writeFileSync(sheet, 'id,title,made,h (cm),shelf\nH 12,Herring slide,1941,3.0,top\n,Tern,1960s,3.8,\n');
  await bare.locator('.way input[type=file]').setInputFiles(sheet);
  await bare.waitForSelector('.reading');
  await accessible(bare, 'spreadsheet');
  assert.equal(await bare.locator('.reading .btn.main').textContent(), 'Take in 1, set 1 aside');
  await bare.locator('.faulty input').fill('H 13');
  await bare.locator('.faulty button').click();
  await bare.waitForFunction(() => document.querySelector('.reading .btn.main')?.textContent === 'Take in 2');
  await bare.locator('.reading .btn.main').click();
  await bare.waitForSelector('.chosen');
  assert.equal(await bare.locator('.chosen').getAttribute('aria-setsize'), '2');

  // An address that is no page's, a piece that is not there, nonsense in a note, a show without a day.
  await bare.goto(empty.base + '/nonsense/page');
  await bare.waitForSelector('.chosen');
  assert.match(await bare.locator('.drawers').textContent(), /Sheetone piece/);
  await bare.goto(empty.base + '/sheet/H%2099');
  await bare.waitForSelector('.which');
  assert.match(await bare.locator('.which').textContent(), /There is no piece H 99/);
  await bare.locator('.which input').fill('h 12');
  await bare.locator('.which button').click();
  await bare.waitForSelector('.sheet.ready');
  await bare.goto(empty.base + '/notes/H%2012');
  await bare.locator('.line input').fill(`; <b>${'quay'.repeat(60)}</b>; :`);
  await bare.locator('.line input').press('Enter');
  await bare.waitForFunction(() => /As it was typed.*<b>quayquay/.test(document.querySelector('.kept').textContent), null, { timeout: 30000 });
  assert.equal(await bare.evaluate(cutOff), '', 'a long word is broken');
  await accessible(bare, 'nonsense');
  await bare.goto(empty.base + '/show?see=days');
  await bare.locator('.days input').fill('2031-05-17');
  await bare.locator('.days button').click();
  await bare.waitForSelector('.task');

  // Photographs: a folder with a name that fits, one known by its folder, one that says nothing.
  const pictures = join(folder, 'pictures');
  mkdirSync(join(pictures, 'ES 004'), { recursive: true });
  writeFileSync(join(pictures, 'es_003_back (2).PNG'), pngOf(1));
  writeFileSync(join(pictures, 'ES 004', 'front.png'), pngOf(2));
  writeFileSync(join(pictures, 'DSC_1021.png'), pngOf(3));
  writeFileSync(join(pictures, 'ES-005.jpg'), 'no picture');
  writeFileSync(join(pictures, 'read me.txt'), 'no picture at all');
  const photos = await open(context, full.base, '/show?see=photographs', '.taking.ready');
  const missing = Number((await photos.locator('.side h2').textContent()).match(/\d+/)[0]);
  await photos.locator('input[webkitdirectory]').setInputFiles(pictures);
  const counted = (words) => photos.waitForFunction((text) => document.querySelector('.lot p[role=status]')?.textContent === text, words, { timeout: 30000 });
  await counted('2 taken in · 0 were there already · 2 did not match');
  assert.equal(await photos.locator('.unread form').count(), 1, 'only a name that says nothing can be given a number');
  await accessible(photos, 'photographs');
  // The lot is one change, and one step back takes all of it out of the record.
  const lots = () =>
    photos.evaluate(async () => {
      const { token } = await (await fetch('/api/hello')).json();
      const asked = await fetch('/api/history', { method: 'POST', headers: { 'Content-Type': 'application/json', 'Backmark-Token': token }, body: '{}' });
      return (await asked.json()).filter((entry) => entry.operation === 'photographs').map((entry) => entry.summary);
    });
  assert.deepEqual(await lots(), ['2 photographs']);
  await photos.locator('.unread input').fill('ES 005 front');
  await photos.locator('.unread form button').click();
  await counted('3 taken in · 0 were there already · 1 did not match');
  // The same picture let go over another page is known again by its content.
  await photos.goto(full.base + '/prints');
  await photos.waitForSelector('.prints.ready');
  const drop = await photos.evaluateHandle((bytes) => {
    const hand = new DataTransfer();
    hand.items.add(new File([new Uint8Array(bytes)], 'ES-003.png', { type: 'image/png' }));
    return hand;
  }, [...pngOf(1)]);
  await photos.dispatchEvent('main', 'drop', { dataTransfer: drop });
  await counted('0 taken in · 1 were there already · 0 did not match');
  assert.equal(missing, 312);
} finally {
  await end(browser, full, empty);
}
assert.deepEqual(trouble, []);
console.log('pages: all as they should be');
