// Care, cases, new words and notes taken out of reach, in a real browser against the program itself.
// usage: node care.mjs BACKMARK; says "skipped" where there is no browser.
import { join } from 'node:path';
import assert from 'node:assert/strict';
import { accessible, end, folder, launch, open, run, serve, trouble } from './browser.mjs';

const show = join(folder, 'coast');
run('demo', show, '--undrawn');
run('infer', show);
const full = await serve(show);
const browser = await launch();
const textOf = (page, where) => page.locator(where).first().textContent();
const says = (page, where, words) => page.waitForFunction(([at, text]) => [...document.querySelectorAll(at)].some((one) => one.textContent.includes(text)), [where, words], { timeout: 200000 });
try {
  for (const size of [{ width: 1440, height: 900 }, { width: 1024, height: 768 }, { width: 390, height: 844 }]) {
    const context = await browser.newContext({ viewport: size, reducedMotion: 'reduce' });
    for (const [path, wait] of [['/sheet/ES%20003', '.care .check'], ['/show?see=case&case=tower', '.elevation'], ['/show?see=days', '.days.ready']]) {
      const page = await open(context, full.base, path, wait);
      await accessible(page, `${path} ${size.width}`);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${path} does not reach past the edge`);
      if (process.env.BACKMARK_SHOTS) {
        await page.screenshot({ path: join(process.env.BACKMARK_SHOTS, `care-${path.replace(/\W+/g, '-')}-${size.width}.png`) });
      }
      await page.close();
    }
    await context.close();
  }
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });

  // The Sheet says light, law and leave; an answer is logged by keyboard and taken back.
  const sheet = await open(context, full.base, '/sheet/ES%20118', '.care .check');
  assert.match(await textOf(sheet, '.check.is-broken'), /Light It reaches 364 of 100 by the last day/);
  assert.match(await textOf(sheet, '.care'), /Not to be printed yet/);
  assert.match(await textOf(sheet, '.care'), /not legal advice/);
  await sheet.locator('.leave .btn').focus();
  await sheet.keyboard.press('Enter');
  await says(sheet, '.check', 'May be shown, printed, put on the web.');
  await sheet.locator('.care h2').click();
  await sheet.keyboard.press('z');
  await says(sheet, '.check', 'Not to be printed yet');

  // Readings of the bench. Rock crystal: refractive index 1.544 to 1.553, density 2.65 (Handbook of
  // Mineralogy, quartz).
  await sheet.locator('.bench summary').focus();
  await sheet.keyboard.press('Enter');
  await sheet.locator('.bench input').fill('density=2.65; spot_ri=1.55; group=stone');
  await says(sheet, '.candidates', 'quartz');
  assert.match(await textOf(sheet, '.bench'), /Next at the bench/);
  assert.match(await textOf(sheet, '.bench'), /Never: /);
  await sheet.locator('.bench input').fill('density=heavy');
  await says(sheet, '.bench', 'heavy');

  // What to look at again, in minutes and bits.
  await says(sheet, '.next-looks, .below .sub', ' ');
  const looks = await open(context, full.base, '/sheet/ES%20011', '.next-looks');
  assert.match(await textOf(looks, '.next-looks .next'), /Look next: .+ min; [\d.]+ bits/);
  await looks.close();

  // A case: a conflict names who must waive; a piece moves by key, both windows show it, undo.
  const room = await open(context, full.base, '/show?see=case&case=table-1', '.elevation');
  assert.match(await textOf(room, '.side'), /No humidity serves all: at least 50 and at most 45 % are asked/);
  assert.match(await textOf(room, '.side'), /to be waived by the lender/);
  assert.match(await textOf(room, '.side'), /fabricator and the local code decide/);
  const piece = room.locator('.hung-in').first();
  const number = await piece.getAttribute('data-number');
  const label = (page) => page.locator(`[data-number="${number}"]`).getAttribute('aria-label');
  const before = await label(room);
  const beside = await open(context, full.base, '/show?see=case&case=table-1', '.elevation');
  await piece.focus();
  await room.keyboard.press('ArrowRight');
  const moved = ([number, old]) => document.querySelector(`[data-number="${number}"]`)?.getAttribute('aria-label') !== old;
  await beside.waitForFunction(moved, [number, before], { timeout: 200000 });
  const x = Number(before.match(/at ([\d.]+),/)[1]);
  assert.match(await label(beside), new RegExp(`at ${x + 5},`));
  await room.keyboard.press('z');
  await beside.waitForFunction(([number, old]) => !(document.querySelector(`[data-number="${number}"]`)?.getAttribute('aria-label') !== old), [number, before], { timeout: 200000 });
  await beside.close();

  // A new case, and what is wrong with one.
  await room.locator('.new-case summary').click();
  await room.locator('.new-case input[name=key]').fill('plinth');
  await room.locator('.new-case input[name=width]').fill('500');
  await room.locator('.new-case input[name=height]').fill('tall');
  await room.locator('.new-case input[name=depth]').fill('500');
  await room.locator('.new-case button').click();
  await says(room, '.told', 'tall');
  await room.locator('.new-case input[name=height]').fill('300');
  await room.locator('.new-case button').click();
  await room.waitForFunction(() => /case=plinth/.test(location.search));

  // The days to opening say the odds; the day plan prints.
  const days = await open(context, full.base, '/show?see=days', '.days.ready');
  assert.match(await textOf(days, '.side'), /chances? in 20/);
  assert.ok((await days.locator('.task').count()) > 20);
  await days.close();
  const plan = await open(context, full.base, '/looks', '.looks.ready');
  await plan.locator('.look-card').first().focus();
  await plan.keyboard.press('p');
  await says(plan, '.told', 'prints/look.pdf');
  const paper = await plan.request.get(full.base + '/prints/look.pdf');
  assert.equal((await paper.body()).subarray(0, 5).toString(), '%PDF-');
  await plan.close();

  // What would settle a claim: a look at a piece that carries it, or the plain word that none would.
  const sources = await open(context, full.base, '/sources', '.sources[data-weighed=true]');
  await sources.locator('[aria-label^="bearing on"]').click();
  await sources.locator('.choices button').nth(1).click();
  await says(sources, '.claims', 'What would settle it');
  await sources.waitForFunction(() => /Look next: ES|No look at these pieces should move it/.test(document.querySelector('.claims').textContent), null, { timeout: 200000 });
  await sources.close();

  // What a look would settle is a chip that begins the saying.
  const onward = await open(context, full.base, '/notes/ES%20011', '.line input');
  await onward.waitForFunction(() => /look next/.test(document.querySelector('.chips').textContent), null, { timeout: 200000 });
  const chip = onward.locator('.chip', { hasText: 'look next' }).first();
  const begins = (await chip.evaluate((button) => button.firstChild.textContent)).trim();
  await chip.click();
  assert.equal(await onward.locator('.line input').inputValue(), begins + ': ');
  assert.ok(await onward.evaluate(() => document.activeElement === document.querySelector('.line input')));
  assert.equal(await onward.locator('.chip', { hasText: 'look next' }).count(), 0);
  await onward.close();

  // A word that nobody has noted becomes a term of a group, by keyboard alone.
  const notes = await open(context, full.base, '/notes/ES%20118', '.line input');
  await notes.locator('.line input').focus();
  await notes.keyboard.type('herringbone plait');
  await notes.waitForSelector('.new-term .pick');
  await notes.keyboard.press('Alt+n');
  await notes.waitForSelector('.new-term .choices');
  await notes.keyboard.press('ArrowDown');
  await notes.keyboard.press('Enter');
  await says(notes, '.gloss', 'a new term');
  const line = await notes.locator('.line input').inputValue();
  assert.match(line, /^.+: herringbone plait$/);
  assert.ok(await notes.evaluate(() => document.activeElement === document.querySelector('.line input')), 'the hand stays on the line');
  if (await notes.locator('.why').count()) {
    await notes.locator('.why button').first().focus();
    await notes.keyboard.press('Enter');
    await notes.locator('.line input').focus();
  }
  await notes.keyboard.press('Enter');
  await says(notes, '.kept', 'herringbone plait');
  await notes.keyboard.type(line);
  await says(notes, '.gloss', 'herringbone plait');
  await notes.waitForFunction(() => !document.querySelector('.gloss').textContent.includes('a new term'));
  await notes.keyboard.press('Escape');

  // A character that the show does not have.
  await notes.keyboard.type('sheen of the back: dull');
  await says(notes, '.new-term', 'which part');
  await accessible(notes, 'a new word');
  await notes.keyboard.press('Alt+n');
  await notes.waitForSelector('.new-term .choices');
  await notes.keyboard.press('Enter');
  await says(notes, '.gloss', 'Sheen of the back: dull');
  await notes.keyboard.press('Enter');
  await says(notes, '.kept', 'Sheen of the back');

  // Out of reach: a note is kept here; meanwhile somebody writes of the same piece; both stand.
  const far = await browser.newContext({ viewport: { width: 1024, height: 768 }, reducedMotion: 'reduce' });
  const tablet = await far.newPage();
  await tablet.goto(full.base + '/notes/ES%20020');
  await tablet.waitForSelector('.kept dl .o');
  await far.setOffline(true);
  await tablet.locator('.line input').fill('height: 33.5');
  await tablet.locator('.line input').press('Enter');
  await says(tablet, '.kept', '1 note waits');
  const desk = await open(context, full.base, '/notes/ES%20020', '.kept dl .o');
  await desk.locator('.line input').fill('height: 34');
  await desk.waitForSelector('.why button');
  await desk.locator('.why button').first().click();
  await desk.locator('.line input').press('Enter');
  await says(desk, '.kept', '34 mm');
  await far.setOffline(false);
  await tablet.waitForSelector('.clash', { timeout: 200000 });
  const both = await textOf(tablet, '.clash .both');
  assert.match(both, /34/);
  assert.match(both, /33\.5/);
  await accessible(tablet, 'a note that meets a change');
  await tablet.locator('.clash .btn').last().click();
  await tablet.waitForFunction(() => !document.querySelector('.clash') && !/note waits/.test(document.querySelector('.kept').textContent), null, { timeout: 200000 });
  const history = await desk.evaluate(async () => {
    const { token } = await (await fetch('/api/hello')).json();
    const asked = await fetch('/api/history', { method: 'POST', headers: { 'Content-Type': 'application/json', 'Backmark-Token': token }, body: JSON.stringify({ number: 'ES 020' }) });
    return (await asked.json()).map((entry) => entry.summary).join('\n');
  });
  assert.match(history, /height: 34/);
  assert.equal(history.match(/height: 33\.5/g).length, 1, 'the note that waited is kept once');
  await far.close();

  // A page opened out of reach, from nothing: the last table is on the device, and so is the line.
  const cold = await browser.newContext({ viewport: { width: 820, height: 1180 }, reducedMotion: 'reduce' });
  const early = await cold.newPage();
  await early.goto(full.base + '/table');
  await early.evaluate(() => navigator.serviceWorker.ready);
  await early.reload();
  await early.waitForSelector('.chosen');
  await early.waitForFunction(async () => (await caches.match('/api/table')) !== undefined, null, { timeout: 30000 });
  await early.close();
  await cold.setOffline(true);
  const late = await cold.newPage();
  await late.goto(full.base + '/table');
  await late.waitForSelector('.chosen');
  await late.goto(full.base + '/notes/ES%20031');
  await late.locator('.line input').fill('remark: seen without a network');
  await late.locator('.line input').press('Enter');
  await says(late, '.kept', '1 note waits');
  await cold.setOffline(false);
  await late.waitForFunction(() => !/note waits/.test(document.querySelector('.kept').textContent) && /seen without a network/.test(document.querySelector('.kept').textContent), null, { timeout: 200000 });
  await cold.close();
} finally {
  await end(browser, full);
}
// Two questions were meant to be refused: a density and a height that are words.
const refused = trouble.filter((one) => /status of 400/.test(one));
assert.equal(refused.length, 2);
assert.deepEqual(trouble.filter((one) => !refused.includes(one)), []);
console.log('care: all as it should be');
