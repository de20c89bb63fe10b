// Light, Marks and Setup by touch: what they show, in which order, and what is stored.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { untilStems } from './hand.mjs';
import { marks, nativeDemo, noNative, rows, run, takeOut, trees } from './native.mjs';
import { launch, serve } from './site.mjs';
import { begin, beginDemo, goTo, newTract, openDemo } from './steps.mjs';

const plain = async (box) => (await box.innerText()).replaceAll('\u00a0', ' ');

async function enterTree(page, hand, { species, digits }) {
  await hand.tap(hand.button('Species'));
  await page.locator('dialog input[type=search]').last().waitFor();
  await page.keyboard.type(species);
  await hand.tap(page.locator('dialog .rows .tap', { hasText: species }).first());
  await hand.tap(hand.button('Diameter (DBH)'));
  for (const digit of digits) await hand.tap(page.locator('dialog .digit', { hasText: digit }));
  await hand.tap(hand.button('Take it over'));
}

for (const size of ['tablet', 'phone']) {
  test(`a stand is decided, and marked as the desk decides it, ${size}`, { skip: noNative }, async (t) => {
    const server = await serve(t);
    const { page, faults } = await launch(t, { size });
    await page.goto(server.url);
    const hand = await begin(page);
    await openDemo(page, hand);
    await goTo(page, 'Light');
    await page.locator('.row').first().waitFor();
    assert.match(await plain(page.locator('.row').first()), /^101\n+white oak 16\.2 in\n+3 of 4 sides free/);
    await hand.tap(hand.button('Decide this stand'));
    await page.locator('.advice [role=status]').waitFor();
    await goTo(page, 'Marks');
    await page.locator('.row.mark').first().waitFor();
    const chip = await plain(page.locator('.filters .tap', { hasText: 'Take' }));
    await hand.tap(page.locator('.filters .tap', { hasText: 'Take' }));
    await page.waitForFunction(() => document.querySelector('.filters .tap[aria-pressed=true]')?.textContent.startsWith('Take'));
    const shown = await page.locator('.row.mark').count();
    assert.equal(chip.replace('\n', ' '), `Take (${shown})`);

    await goTo(page, 'Setup');
    const file = await takeOut(page, hand);
    run('check', file);
    assert.deepEqual(marks(file, 'Upland'), marks(nativeDemo(true), 'Upland'));
    assert.deepEqual(faults, []);
  });

  test(`a card is filled in and a tree decided by hand, ${size}`, async (t) => {
    const server = await serve(t);
    const { page, faults } = await launch(t, { size });
    await page.goto(server.url);
    const hand = await begin(page);
    await openDemo(page, hand);
    await goTo(page, 'Light');
    await hand.tap(page.locator('.row').first());
    await page.locator('.tree-row').first().waitFor();
    const before = await page.locator('.tree-row').count();
    await hand.tap(page.locator('.side-button.N'));
    await hand.tap(hand.button('A neighbour stands here'));
    assert.equal(await hand.button('Save').isDisabled(), true);
    await enterTree(page, hand, { species: 'red maple', digits: '82' });
    await hand.tap(hand.button('Save'));
    await page.locator('dialog').waitFor({ state: 'detached' });
    await page.waitForFunction((rows) => document.querySelectorAll('.tree-row').length === rows, before + 1);
    const row = page.locator('.tree-row', { hasText: 'red maple 8.2' });
    await hand.tap(row);
    await hand.tap(hand.button('Kill standing'));
    const decide = hand.button('Decide: Kill standing');
    assert.equal(await decide.isDisabled(), true, 'nothing is decided without a reason');
    await hand.tap(page.getByLabel('The reason, in your own words'));
    await page.keyboard.type('leans on the oak');
    await hand.tap(decide);
    await page.locator('dialog').waitFor({ state: 'detached' });
    await row.getByText('leans on the oak').waitFor();
    assert.match(await plain(row), /Kill standing[\s\S]*decided by hand[\s\S]*leans on the oak/);
    await hand.tap(page.locator('.tap.undo'));
    await page.waitForFunction(() => !document.body.innerText.includes('leans on the oak'));
    await hand.tap(page.locator('.tap.undo'));
    await page.waitForFunction((rows) => document.querySelectorAll('.tree-row').length === rows, before);
    assert.deepEqual(faults, []);
  });
}

test('a metric tree of the walk stays metric, a dead one dead, and what was walked is told', { skip: noNative }, async (t) => {
  const server = await serve(t);
  const { page, faults } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await begin(page);
  await goTo(page, 'Setup');
  await hand.tap(hand.button('cm, ha'));
  await newTract(page, hand, { tract: 'Metric', stand: 'Hollow', area: 'Area, hectares', acres: '4,5', plots: '5' });
  const save = async () => {
    await hand.tap(hand.button('Save'));
    await page.locator('dialog').waitFor({ state: 'detached' });
  };
  await goTo(page, 'Light');
  await hand.tap(hand.button('New crop tree'));
  await enterTree(page, hand, { species: 'white oak', digits: '352' });
  await save();
  await hand.tap(page.locator('.side-button.N'));
  await hand.tap(hand.button('A neighbour stands here'));
  await enterTree(page, hand, { species: 'red maple', digits: '201' });
  await hand.tap(hand.button('Dead'));
  await save();
  await hand.tap(page.locator('.tree-row', { hasText: 'red maple 20.1' }));
  await hand.tap(hand.button('Look at this tree again'));
  await page.locator('dialog input').first().waitFor();
  assert.match(await page.locator('dialog .body').innerText(), /^(STOP|Extra care)\. /, 'what may hurt comes first');
  assert.equal(await hand.button('Dead').getAttribute('aria-pressed'), 'true');
  await save();

  await hand.tap(hand.button('All cards'));
  await hand.tap(hand.button('Say how much was walked'));
  const area = page.getByLabel('Walked for marking, ha', { exact: true });
  await hand.tap(hand.button('Save stand'));
  await page.locator('dialog .problem').waitFor(); // nothing was typed
  await hand.tap(area);
  await page.keyboard.type('2,5');
  await hand.tap(hand.button('Save stand'));
  await page.locator('dialog').waitFor({ state: 'detached' });
  await page.waitForFunction(() => !document.body.innerText.includes('how much was walked'));

  await goTo(page, 'Setup');
  const file = await takeOut(page, hand);
  run('check', file);
  assert.deepEqual(rows(file, 'SELECT units, dbh_tenths, status FROM walk_tree WHERE NOT deleted ORDER BY uid;'), [
    'metric | 352 | live',
    'metric | 201 | dead',
  ]);
  assert.deepEqual(rows(file, 'SELECT round(walked_ac, 2) FROM stand WHERE NOT deleted;'), ['6.18']); // by hand: 2.5 ha at 2.4711
  assert.deepEqual(faults, []);
});

test('what may hurt stands before all else that is said of a tree', async (t) => {
  const server = await serve(t);
  const { page } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await begin(page);
  await openDemo(page, hand);
  await goTo(page, 'Marks');
  const row = page.locator('.row.mark', { has: page.locator('.caution.stop') }).first();
  await row.waitFor();
  assert.match(await page.locator('.scroll').first().innerText(), /^Look up and around yourself/);
  assert.match(await row.innerText(), /^STOP\. /);
  await hand.tap(row);
  const sheet = page.locator('dialog .body');
  await sheet.waitFor();
  assert.match(await sheet.innerText(), /^STOP\. /);
  await hand.tap(hand.button('Close'));
  await goTo(page, 'Light');
  await page.locator('.row:not(.mark)').first().waitFor(); // not those of Marks any more
  assert.match(await page.locator('.rows').innerText(), /^Look up and around yourself/);
  await hand.tap(page.locator('.row').first());
  await page.locator('.tree-row').first().waitFor();
  assert.match(await page.locator('.card-trees .scroll').innerText(), /^STOP\. /);
  const firsts = await page
    .locator('.tree-row', { has: page.locator('.caution') })
    .evaluateAll((rows) => rows.map((one) => one.firstElementChild.classList.contains('caution')));
  assert.ok(firsts.length > 0 && firsts.every(Boolean), String(firsts));
});

test('a file of the desk goes in and comes out whole; one that is none changes nothing', { skip: noNative }, async (t) => {
  const server = await serve(t);
  const { page, folder, faults } = await launch(t, { size: 'upright' });
  await page.goto(server.url);
  const hand = await begin(page);
  const putIn = async (path) => {
    const asked = page.waitForEvent('filechooser');
    await hand.tap(page.getByRole('button', { name: 'Put a file in' }));
    await (await asked).setFiles(path);
  };
  const made = nativeDemo(false);
  await putIn(made);
  await page.locator('.bar', { hasText: 'Whetrock Hollow' }).waitFor();
  const out = await takeOut(page, hand);
  assert.deepEqual(trees(out), trees(made));
  run('check', out);

  const none = join(folder, 'none.gpkg');
  writeFileSync(none, 'This is no tract.');
  await putIn(none);
  await page.locator('.notice').waitFor();
  assert.match(await page.locator('.notice').innerText(), /\. \S/, 'what is wrong, and how to mend it');
  await hand.tap(hand.button('All right'));
  assert.match(await plain(page.locator('.bar')), /Whetrock Hollow/);
  await hand.tap(page.locator('main .tap', { hasText: 'All that are kept in this browser' }));
  await page.locator('.file-row').first().waitFor();
  assert.deepEqual(await page.locator('.file-row').allInnerTexts(), ['hollow.gpkg']);
  assert.deepEqual(faults, []);
});

test('a file that is not open comes out as it is, and is thrown away by typing its name only', { skip: noNative }, async (t) => {
  const server = await serve(t);
  const { page, folder, faults } = await launch(t, { size: 'phone' });
  await page.goto(server.url);
  const hand = await begin(page);
  await openDemo(page, hand);
  await newTract(page, hand, { tract: 'Other', stand: 'Hollow', acres: '5', plots: '5' });
  await hand.tap(page.locator('main .tap', { hasText: 'All that are kept in this browser' }));
  const coming = page.waitForEvent('download');
  await hand.tap(hand.button('Take demo.gpkg out as it is'));
  const out = join(folder, 'demo.gpkg');
  await (await coming).saveAs(out);
  run('check', out);
  await hand.tap(hand.button('Throw away demo.gpkg'));
  const gone = page.locator('dialog').last().locator('.foot .tap');
  assert.equal(await gone.isDisabled(), true);
  await hand.tap(page.getByLabel('Name of the file'));
  await page.keyboard.type('demo.gpkg');
  await hand.tap(gone);
  await page.waitForFunction(() => document.querySelectorAll('.file-row').length === 1);
  assert.deepEqual(await page.locator('.file-row').allInnerTexts(), ['other.gpkg']);
  assert.deepEqual(faults, []);
});

test('the page speaks Spanish where a person asks for it', async (t) => {
  const server = await serve(t);
  const { page, faults } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await beginDemo(page);
  await goTo(page, 'Setup');
  await hand.tap(hand.button('Español'));
  await page.locator('.rail .tab', { hasText: 'Conteo' }).waitFor();
  assert.deepEqual(await page.locator('.rail .tab').allInnerTexts(), ['Conteo', 'Luz', 'Marcas', 'Ajustes']);
  await goTo(page, 'Conteo');
  await page.locator('.cell.class').first().waitFor();
  const before = Number(await page.locator('#stems').innerText());
  await hand.slide(page.locator('.cell.species').first(), page.locator('.cell.class').nth(3));
  await untilStems(page, before + 1);
  assert.match(await plain(page.locator('#reading')), /^roble blanco \d/);
  await goTo(page, 'Marcas');
  await page.locator('.row.mark').first().waitFor();
  assert.match(await plain(page.locator('.filters')), /Sin decidir/);
  assert.deepEqual(faults, []);
});

test('where the browser keeps no choices they last for the visit', async (t) => {
  const server = await serve(t);
  const { page, faults } = await launch(t, { size: 'tablet' });
  await page.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('Nothing is kept here.', 'SecurityError');
    };
    Object.assign(Storage.prototype, { getItem: refuse, setItem: refuse });
  });
  await page.goto(server.url);
  const hand = await begin(page);
  await openDemo(page, hand);
  await hand.tap(hand.button('Español'));
  await page.locator('.rail .tab', { hasText: 'Ajustes' }).waitFor();
  assert.deepEqual(faults, []);
});

test('what the disk refuses is told, kept, and stored on another try', async (t) => {
  const server = await serve(t);
  const { page } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await beginDemo(page);
  const glass = await page.context().newCDPSession(page);
  const room = (quotaSize) => glass.send('Storage.overrideQuotaForOrigin', { origin: server.url, quotaSize });
  const again = async () => {
    await page.waitForTimeout(400);
    await hand.tap(hand.button('Same again'));
    await page.waitForTimeout(100);
  };
  await room(1);
  let stems = Number(await page.locator('#stems').innerText());
  const unsaved = page.locator('.notice.strong');
  for (let trees = 0; trees < 300 && (await unsaved.count()) === 0; trees += 1) await again();
  await unsaved.waitFor();
  stems = Number(await page.locator('#stems').innerText()); // those that were acknowledged before
  assert.match(await unsaved.innerText(), /^NOT SAVED\. .+\. .+/);
  await room(1_000_000_000);
  await again(); // nothing more is recorded before this one is
  await page.waitForTimeout(500);
  assert.equal(Number(await page.locator('#stems').innerText()), stems);
  await hand.tap(hand.button('Try again'));
  await untilStems(page, stems + 1);
  await unsaved.waitFor({ state: 'detached' });
  await page.reload();
  await untilStems(page, stems + 1);
});
