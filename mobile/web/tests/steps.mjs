// Steps that several tests go by touch, and what a newer version of the site looks like to a browser.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Hand } from './hand.mjs';

/// Past the caution with which every first use begins.
export async function begin(page) {
  const hand = await Hand.at(page);
  await hand.tap(hand.button('I look up. Begin'));
  return hand;
}

/// To the demo tract and its first plot, standing at the tally.
export async function beginDemo(page) {
  const hand = await begin(page);
  await openDemo(page, hand);
  await goTo(page, 'Tally');
  await hand.tap(hand.button('Choose a plot'));
  await hand.tap(page.locator('dialog .row').first());
  await page.locator('.cell.class').first().waitFor({ state: 'attached' });
  return hand;
}

export async function openDemo(page, hand) {
  await goTo(page, 'Setup');
  await hand.tap(page.getByRole('button', { name: 'Open the demo tract' }));
  await page.locator('.bar', { hasText: 'Whetrock Hollow' }).waitFor();
}

async function type(page, hand, label, text) {
  await hand.tap(page.getByLabel(label, { exact: true }).last());
  await page.keyboard.type(text);
}

/// A tract with one stand and plots to do, by prism of factor 10, as a person makes it under Setup.
export async function newTract(page, hand, { tract, stand, area = 'Area, acres', acres, plots }) {
  await goTo(page, 'Setup');
  await hand.tap(page.getByRole('button', { name: 'Make a new tract' }));
  await type(page, hand, 'Name of a new tract', tract);
  await type(page, hand, 'Name of the stand', stand);
  await type(page, hand, area, acres);
  await hand.tap(hand.button('Save stand'));
  await page.locator('.bar', { hasText: tract }).waitFor();
  await hand.tap(page.locator('main .tap', { hasText: 'Add plots' }));
  await hand.tap(page.locator('dialog .chips .tap', { hasText: new RegExp(`^${plots}$`) }));
  await hand.tap(page.locator('dialog .foot .tap', { hasText: 'Add plots' }));
  await page.locator('dialog').waitFor({ state: 'detached' });
}

export async function choosePlot(page, hand, name) {
  await goTo(page, 'Tally');
  const choose = page.locator('main .tap', { hasText: 'Choose a plot' });
  const next = page.locator('main .tap', { hasText: 'Next plot' });
  const more = page.locator('main .tap', { hasText: 'More' });
  await choose.or(more).first().waitFor();
  if (await choose.isVisible()) await hand.tap(choose);
  else if (await next.isVisible()) await hand.tap(next);
  else {
    await hand.tap(more);
    await hand.tap(page.locator('dialog .tap', { hasText: 'Next plot' }));
  }
  await hand.tap(page.locator('dialog .row', { hasText: new RegExp(`^${name}(?!\\d)`) }));
  await page.locator('dialog').waitFor({ state: 'detached' });
  await page.locator('.cell.class').first().waitFor({ state: 'attached' });
}

/// To a page by the rail, or by the button that opens the names of pages where there is no rail.
export async function goTo(page, name) {
  const hand = await Hand.at(page);
  const tab = page.locator('.rail .tab', { hasText: name });
  if (await tab.isVisible()) return hand.tap(tab);
  await hand.tap(page.locator('.pages-button'));
  return hand.tap(page.locator('dialog .tap', { hasText: name }));
}

/// Waits until all files are kept on the device.
export async function kept(page) {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

const kChanged = 'manifest.webmanifest';

/// The same site with another name in its manifest: `whole` hands out all of it, `half` only its list of files.
export function newerVersion(site) {
  const manifest = readFileSync(join(site, kChanged), 'utf8').replace('"name": "Oaklight"', '"name": "Oaklight, newer"');
  const version = '0123456789ab';
  const old = readFileSync(join(site, 'sw.js'), 'utf8');
  const build = JSON.parse(old.match(/^const kBuild = (\{[\s\S]*?\n\});\n/)[1]);
  const files = { ...build.files, [kChanged]: createHash('sha256').update(manifest).digest('hex') };
  const worker = old.replace(/^const kBuild = \{[\s\S]*?\n\};\n/, `const kBuild = ${JSON.stringify({ version, files })};\n`);
  const half = (path, bytes) => (path === 'sw.js' ? worker : bytes);
  const whole = (path, bytes) => (path === kChanged ? manifest : half(path, bytes));
  return { version, half, whole };
}
