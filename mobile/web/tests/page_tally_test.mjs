// A morning of plots, tallied by touch at each size of glass; what the desk then reads in the file that was taken out.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readBack, untilStems } from './hand.mjs';
import { estimate, noNative, run, takeOut, trees } from './native.mjs';
import { launch, serve } from './site.mjs';
import { begin, beginDemo, choosePlot, goTo, newTract } from './steps.mjs';

// FIA codes of forms/species: white oak 802, northern red oak 833, red maple 316.
const kOak = { name: 'white oak', code: 802 };
const kRed = { name: 'northern red oak', code: 833 };
const kMaple = { name: 'red maple', code: 316 };

async function read(page, reading, stems) {
  await untilStems(page, stems);
  assert.deepEqual(await readBack(page), { reading, stems: String(stems) });
}

// Where the classes lie over the species, a species touched at once after a class is the same finger bouncing.
const walkOn = (hand) => hand.page.waitForTimeout(400);

async function tapTap(hand, species, size) {
  await walkOn(hand);
  await hand.tap(hand.cell('species', species.name));
  await hand.tap(hand.cell('class', `${size}, diameter class`));
}

async function slide(hand, species, size) {
  await walkOn(hand);
  await hand.slide(hand.cell('species', species.name), hand.cell('class', `${size}, diameter class`));
}

async function keypad(hand, page, digits) {
  await hand.tap(page.locator('.actions .tap[aria-label="Keypad"]'));
  for (const digit of digits) await hand.tap(page.locator('dialog .digit', { hasText: digit }));
  await hand.tap(hand.button('Record'));
  await page.locator('dialog').waitFor({ state: 'detached' });
}

async function firstPlot(page, hand) {
  await slide(hand, kOak, 14);
  await read(page, 'white oak 14.0 in', 1);
  await tapTap(hand, kMaple, 6);
  await read(page, 'red maple 6.0 in', 2);
  await tapTap(hand, kRed, 16);
  await read(page, 'northern red oak 16.0 in', 3);
  await hand.tap(hand.button('Undo: tally northern red oak 16.0 in'));
  await read(page, 'red maple 6.0 in', 2);
  await hand.tap(hand.button('Redo: tally northern red oak 16.0 in'));
  await read(page, 'northern red oak 16.0 in', 3);
  await page.waitForTimeout(400); // a second tree so soon would be a bounce
  await hand.tap(hand.button('Same again'));
  await read(page, 'northern red oak 16.0 in', 4);
  await keypad(hand, page, '123'); // the red oak is still pinned
  await read(page, 'northern red oak 12.3 in', 5);
}

async function secondPlot(page, hand) {
  await slide(hand, kOak, 10);
  await read(page, 'white oak 10.0 in', 1);
  await slide(hand, kOak, 12);
  await read(page, 'white oak 12.0 in', 2);
}

for (const size of ['tablet', 'upright', 'phone']) {
  test(`plots tallied by touch, ${size}`, { skip: noNative }, async (t) => {
    const server = await serve(t);
    const { page, faults } = await launch(t, { size });
    await page.goto(server.url);
    const hand = await begin(page);
    await newTract(page, hand, { tract: 'Laurel Run', stand: 'North slope', acres: '20', plots: '5' });
    await choosePlot(page, hand, 'North slope, plot 1');
    await firstPlot(page, hand);
    assert.match(await page.locator('.reading').innerText(), /50\.0\sft²\/ac/); // by hand: 5 trees at a factor of 10
    await choosePlot(page, hand, 'North slope, plot 2');
    await secondPlot(page, hand);
    await choosePlot(page, hand, 'North slope, plot 3');
    await hand.tap(page.locator('.actions .next, .actions .tap', { hasText: size === 'phone' ? 'More' : 'Next plot' }).first());
    if (size === 'phone') await hand.tap(page.locator('dialog .tap', { hasText: 'Next plot' }));
    await hand.tap(page.locator('dialog .foot .tap', { hasText: 'Empty plot' }));
    await page.locator('dialog .row', { hasText: 'plot 3' }).getByText('empty').waitFor();
    await hand.tap(hand.button('Close'));

    await goTo(page, 'Setup');
    const file = await takeOut(page, hand);
    const code = (species) => species.code;
    assert.deepEqual(trees(file), [
      `1 ${code(kOak)} 140`,
      `1 ${code(kMaple)} 60`,
      `1 ${code(kRed)} 160`,
      `1 ${code(kRed)} 160`,
      `1 ${code(kRed)} 123`,
      `2 ${code(kOak)} 100`,
      `2 ${code(kOak)} 120`,
    ]);
    run('check', file);
    const { figures } = estimate(file).stands[0];
    assert.equal(figures.plots, 3);
    assert.equal(figures.empty_plots, 1);
    assert.equal(figures.planned, 2);
    // By hand: 50, 20 and 0 ft2/ac. What the page says of the stand is what the desk says, to the digit that it shows.
    assert.ok(Math.abs(figures.live.ba_ft2_ac.mean - 70 / 3) < 1e-9);
    await goTo(page, 'Tally');
    await hand.tap(hand.button('More'));
    const told = (await page.locator('dialog .body').innerText()).replaceAll('\u00a0', ' ');
    const { mean, hi } = figures.live.ba_ft2_ac;
    const figure = `${mean.toFixed(1)} ± ${(hi - mean).toFixed(1)} ft`;
    assert.ok(told.includes(figure), told);
    await hand.tap(hand.button('Figures of this stand'));
    await page.locator('.figure-row').first().waitFor();
    const figured = (await page.locator('dialog .body').last().innerText()).replaceAll('\u00a0', ' ');
    assert.ok(figured.includes(`${mean.toFixed(1)} ft²/ac ± ${(hi - mean).toFixed(1)} (`), figured);
    const noUnit = page.locator('.figure-row b', { hasText: /^[\d.,]+$/ });
    assert.equal(await noUnit.count(), 0, 'a figure without its unit');
    assert.deepEqual(faults, []);
  });
}

test('drops of rain, bouncing fingers and sleeves make no tree', async (t) => {
  const server = await serve(t);
  const { page, faults } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await begin(page);
  await newTract(page, hand, { tract: 'Rain', stand: 'Hollow', acres: '5', plots: '5' });
  await choosePlot(page, hand, 'Hollow, plot 1');
  const cell = hand.cell('class', '10, diameter class');
  await tapTap(hand, kOak, 10);
  await read(page, 'white oak 10.0 in', 1);
  await page.waitForTimeout(400);

  const at = await hand.middle(cell);
  const now = Date.now() / 1000;
  await hand.touch('touchStart', [at], now); // a drop, whatever time this machine takes
  await hand.touch('touchEnd', [], now + 0.012);
  const side = (x, id) => ({ x: at.x + x, y: at.y, id });
  await hand.touch('touchStart', [at]); // a sleeve: three at once
  await hand.touch('touchStart', [at, side(-60, 1), side(60, 2)]);
  await page.waitForTimeout(60);
  await hand.touch('touchEnd', []);
  await hand.touch('touchStart', [at]); // a palm that rests
  await page.waitForTimeout(3200);
  await hand.touch('touchEnd', []);
  assert.deepEqual(await readBack(page), { reading: 'white oak 10.0 in', stems: '1' });

  await hand.tapAt(at); // one tree
  await hand.tapAt(at, 40); // the same finger, bouncing
  await untilStems(page, 2);
  await page.getByText('double?').waitFor();
  await page.waitForTimeout(400);
  assert.equal((await readBack(page)).stems, '2');

  const lock = await hand.middle(hand.button('Hold to lock'));
  await hand.tapAt(lock); // too short to be meant
  assert.equal(await page.locator('.lock-cover').isVisible(), false);
  await hand.tapAt(lock, 1200);
  await page.locator('.lock-cover').waitFor();
  await hand.tapAt(at);
  await hand.tapAt(await hand.middle(hand.button('Hold to unlock')), 1200);
  await page.locator('.lock-cover').waitFor({ state: 'hidden' });
  assert.equal((await readBack(page)).stems, '2');
  await hand.tapAt(at);
  await untilStems(page, 3);
  assert.deepEqual(faults, []);
});

test('a reload and a closed tab lose nothing that was read back', async (t) => {
  const server = await serve(t);
  const first = await launch(t, { size: 'phone' });
  await first.page.goto(server.url);
  const hand = await begin(first.page);
  await newTract(first.page, hand, { tract: 'Kept', stand: 'Hollow', acres: '5', plots: '5' });
  await choosePlot(first.page, hand, 'Hollow, plot 1');
  await slide(hand, kOak, 14);
  await untilStems(first.page, 1);
  await first.page.reload();
  await read(first.page, 'white oak 14.0 in', 1);
  await slide(hand, kOak, 16);
  await untilStems(first.page, 2);
  await first.context.close();
  const second = await launch(t, { size: 'phone', folder: first.folder });
  await second.page.goto(server.url);
  await read(second.page, 'white oak 16.0 in', 2);
});

test('a tap right after a slide counts: the browser must not take it for the end of a fling', async (t) => {
  const server = await serve(t);
  const { page } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await beginDemo(page);
  await hand.slide(page.locator('.cell.species').first(), page.locator('.cell.class').first());
  await hand.tap(page.locator('.rail .tab[href="#marks"]'));
  await page.locator('.row.mark').first().waitFor();
});

test('a second tab is told that the first has the file, and goes on when that is closed', async (t) => {
  const server = await serve(t);
  const { context, page } = await launch(t, { size: 'phone' });
  await page.goto(server.url);
  await beginDemo(page);
  const second = await context.newPage();
  await second.goto(server.url);
  const told = second.locator('.problem');
  await told.waitFor();
  assert.match(await told.innerText(), /tab/);
  await page.close();
  await second.getByRole('button', { name: 'Try again' }).tap();
  await second.locator('.cell.class').first().waitFor({ state: 'attached' });
  assert.equal(await second.locator('#stems').innerText(), '7');
});

test('metric is stored as metric, and hectares are not taken for acres', { skip: noNative }, async (t) => {
  const server = await serve(t);
  const { page, faults } = await launch(t, { size: 'tablet' });
  await page.goto(server.url);
  const hand = await begin(page);
  await goTo(page, 'Setup');
  await hand.tap(hand.button('cm, ha'));
  await page.locator('.tap[aria-pressed=true]', { hasText: 'cm, ha' }).waitFor();
  await newTract(page, hand, { tract: 'Metric', stand: 'Hollow', area: 'Area, hectares', acres: '4,5', plots: '5' });
  await choosePlot(page, hand, 'Hollow, plot 1');
  await slide(hand, kOak, 15);
  await read(page, 'white oak 15.0 cm', 1);
  assert.match(await page.locator('.reading').innerText(), /2\.0\sm²\/ha/); // by hand: one tree at a factor of 2
  await goTo(page, 'Setup');
  const file = await takeOut(page, hand);
  assert.deepEqual(trees(file), [`1 ${kOak.code} 150`]);
  const { figures } = estimate(file).stands[0];
  assert.ok(Math.abs(figures.acres - 11.12) < 0.005, String(figures.acres)); // by hand: 4.5 ha at 2.4711 acres
  assert.deepEqual(faults, []);
});

test('a tree is shown as stored only when core has answered that it is', async (t) => {
  const server = await serve(t);
  const { page } = await launch(t, { size: 'tablet' });
  // Every answer of the worker comes so much later.
  await page.addInitScript(() => {
    window.late = 0;
    window.Worker = class extends Worker {
      set onmessage(act) {
        super.onmessage = (event) => setTimeout(() => act(event), window.late);
      }
    };
  });
  await page.goto(server.url);
  const hand = await beginDemo(page);
  const before = await readBack(page);
  await page.evaluate(() => (window.late = 1500));
  await slide(hand, kOak, 14);
  assert.ok([before.reading, 'Storing …'].includes((await readBack(page)).reading)); // at once
  await page.waitForTimeout(600);
  assert.deepEqual(await readBack(page), { reading: 'Storing …', stems: before.stems });
  assert.equal(await page.locator('.last .tap', { hasText: 'white oak 14.0' }).count(), 0);
  await read(page, 'white oak 14.0 in', Number(before.stems) + 1);
});

test('what the disk refuses of a keypad is told over nothing, and after a fault the page shows what is there', async (t) => {
  const server = await serve(t);
  const { page } = await launch(t, { size: 'tablet' });
  // The disk refuses what comes by keypad, and one answer is lost.
  await page.addInitScript(() => {
    const error = (code, what) => ({ code, what, where: '', fix: 'Look again.' });
    window.Worker = class extends Worker {
      set onmessage(act) {
        this.tell = act;
        super.onmessage = (event) => {
          if (!window.fault) return act(event);
          window.fault = false;
          act({ data: { id: event.data.id, error: error('lost', 'It began again.') } });
        };
      }
      postMessage(message) {
        if (!window.full || message.request?.call !== 'tallyDigits') return super.postMessage(message);
        this.tell({ data: { id: message.id, error: error('disk_full', 'The disk is full.') } });
      }
    };
  });
  await page.goto(server.url);
  const hand = await beginDemo(page);
  const before = Number((await readBack(page)).stems);
  const type = async (digits) => {
    await hand.tap(page.locator('.actions .tap[aria-label="Keypad"]'));
    for (const digit of digits) await hand.tap(page.locator('dialog .digit', { hasText: digit }));
    await hand.tap(hand.button('Record'));
  };
  await hand.tap(hand.cell('species', kOak.name));
  await page.evaluate(() => (window.full = true));
  await type('123');
  await page.locator('.notice.strong').waitFor();
  await page.locator('dialog').waitFor({ state: 'detached' }); // or the notice would lie under it
  await type('99');
  await page.locator('dialog .head', { hasText: 'NOT SAVED. The disk is full. Look again.' }).waitFor();
  await hand.tap(hand.button('Close'));
  await page.evaluate(() => (window.full = false));
  await hand.tap(hand.button('Try again'));
  await read(page, 'white oak 12.3 in', before + 1);

  await page.evaluate(() => (window.fault = true));
  await slide(hand, kOak, 14); // it is stored, and its answer never comes
  await read(page, 'white oak 14.0 in', before + 2);
  await page.locator('.notice', { hasText: 'It began again. Look again.' }).waitFor();
});
