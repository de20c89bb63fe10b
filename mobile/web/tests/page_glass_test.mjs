// What a gloved finger and a screen reader find on every screen: sizes, distances and names, at each size of glass.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { kSizes, launch, serve } from './site.mjs';
import { beginDemo } from './steps.mjs';

// Pixels of a millimetre: of a 10.1 in tablet, and of a phone (tests/app/app_fixture.hpp).
const kMm = { tablet: 5.9, upright: 5.9, phone: 6.3 };
const kTouch = 20; // mm, a control used at a tree, for gloves: row T1 of tests/app/field_rows.md
const kLeast = 12; // mm, anything: row T3
const kHair = 0.99; // shares of a length are seldom whole pixels: the app forgives as much (mobile/items/tally_layout.cpp)

/// Every control in sight or below the fold: its name, its size, and whether something else lies over it.
const controls = (page, within = 'body') =>
  page.evaluate((root) => {
    const top = document.querySelector('dialog:last-of-type') ?? document.querySelector(root);
    const seen = (one) => one.checkVisibility({ visibilityProperty: true });
    return [...top.querySelectorAll('button, a, input, select, [tabindex="0"]')].filter(seen).map((one) => {
      const { width, height } = one.getBoundingClientRect();
      const name = one.getAttribute('aria-label') ?? one.textContent.trim();
      return { name, kind: one.className || one.tagName, width, height };
    });
  }, within);

async function hold(page, size, where, least = kLeast) {
  await page.waitForTimeout(100);
  const all = await controls(page);
  assert.ok(all.length > 0, where);
  for (const one of all) {
    assert.ok(one.name !== '', `${where}, ${size}: a control without a name: ${one.kind}`);
    const mm = Math.min(one.width, one.height) / kMm[size];
    assert.ok(mm >= least * kHair, `${where}, ${size}: "${one.name}" is ${mm.toFixed(1)} mm`);
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
  assert.ok(!wide, `${where}, ${size}: wider than the glass`);
}

const shut = async (page) => {
  await page.keyboard.press('Escape');
  await page.locator('dialog').last().waitFor({ state: 'detached' });
};

async function go(page, key, first) {
  await page.evaluate((to) => (location.hash = to), key);
  await page.locator(first).first().waitFor();
}

for (const size of Object.keys(kSizes)) {
  test(`every control has its size and its name, ${size}`, async (t) => {
    const server = await serve(t);
    const { page, faults } = await launch(t, { size });
    await page.goto(server.url);
    const hand = await beginDemo(page);
    await hold(page, size, 'Tally', kTouch);
    await hand.tap(page.locator('.cell.species').first());
    await hold(page, size, 'Tally, its classes', kTouch);
    await hand.tap(page.locator('.actions .tap').first());
    await page.locator('dialog .digit').first().waitFor();
    await hold(page, size, 'Keypad', kTouch);
    await shut(page);
    await page.locator('.last .tap').first().tap();
    await page.locator('dialog .chips').first().waitFor();
    await hold(page, size, 'Tree');
    await shut(page);
    await page.locator('.actions .tap', { hasText: 'More' }).tap();
    await hold(page, size, 'More');
    await shut(page);

    await go(page, 'light', '.row');
    await hold(page, size, 'Light');
    await page.locator('.row').first().tap();
    await page.locator('.tree-row').first().waitFor();
    await hold(page, size, 'Card');
    await page.locator('.tree-row').nth(1).tap();
    await page.locator('dialog').waitFor();
    await hold(page, size, 'Decision');
    await shut(page);
    await page.locator('.side-button.N').tap();
    await page.locator('dialog .tap.main').tap();
    await page.locator('dialog input').first().waitFor();
    await hold(page, size, 'Neighbour');
    await shut(page);

    await go(page, 'marks', '.row.mark');
    await hold(page, size, 'Marks');
    await go(page, 'setup', '.settings');
    await hold(page, size, 'Setup');
    assert.deepEqual(faults, []);
  });
}

test('what removes is far from what tallies, and undo is large', async (t) => {
  const server = await serve(t);
  for (const size of Object.keys(kSizes)) {
    const { page } = await launch(t, { size });
    await page.goto(server.url);
    await beginDemo(page);
    const undo = await page.locator('.tap.undo').boundingBox();
    assert.ok(Math.max(undo.width, undo.height) / kMm[size] >= 25 * kHair, `${size}: undo`); // row T2
    const cells = await page.locator('.cell').first().boundingBox();
    assert.ok((cells.y - undo.y - undo.height) / kMm[size] >= 13, `${size}: undo beside the cells`); // row T6
  }
});
