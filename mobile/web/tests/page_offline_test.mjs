// The page without its server, and beside a newer version of itself.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { Hand, untilStems } from './hand.mjs';
import { beginDemo, kept, newerVersion } from './steps.mjs';
import { launch, serve, site } from './site.mjs';

const kMostBytes = 20_000_000;
const kMostMs = 5000;

function filesUnder(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}

/// Milliseconds from asking for the page to what it shows once core has started: whose tract it is, and the pages.
async function firstPicture(page, url) {
  const from = performance.now();
  await page.goto(url);
  await page.locator('.bar .whose').waitFor();
  return Math.round(performance.now() - from);
}

test('the download is small', (t) => {
  const all = filesUnder(site).map((path) => readFileSync(path));
  const raw = all.reduce((sum, bytes) => sum + bytes.length, 0);
  const compressed = all.reduce((sum, bytes) => sum + gzipSync(bytes, { level: 9 }).length, 0);
  t.diagnostic(`${all.length} files, ${raw} bytes, ${compressed} compressed (gzip -9, file by file)`);
  assert.ok(compressed < kMostBytes);
});

test('after the first visit it starts with no server, and records', async (t) => {
  const own = await serve(t);
  const first = await launch(t, { size: 'tablet' });
  t.diagnostic(`first picture of the first visit: ${await firstPicture(first.page, own.url)} ms`);
  await beginDemo(first.page);
  await kept(first.page);
  assert.deepEqual(first.faults, []);
  await first.context.close();
  await own.stop();

  const second = await launch(t, { size: 'tablet', folder: first.folder });
  const ms = await firstPicture(second.page, own.url);
  t.diagnostic(`first picture with no server: ${ms} ms`);
  assert.ok(ms < kMostMs);
  const hand = await Hand.at(second.page);
  const before = Number(await second.page.locator('#stems').innerText());
  await hand.slide(hand.cell('species', 'white oak'), hand.cell('class', '12, diameter class'));
  await untilStems(second.page, before + 1);
  assert.deepEqual(second.faults, []);
});

/// Waits for an answer that comes as a promise.
async function until(page, asks, given) {
  for (let tries = 0; tries < 60; tries += 1) {
    if (await page.evaluate(asks, given).catch(() => false)) return;
    await page.waitForTimeout(200);
  }
  assert.fail(`never: ${asks}`);
}

/// Lets the browser look for a newer version until the page tells of one: a look that began before is not joined by another.
async function lookUntilTold(page) {
  const look = async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    if (!registration.installing) await registration.update().catch(() => {});
  };
  for (let looks = 0; looks < 40 && (await page.locator('.tab.waits').count()) === 0; looks += 1) {
    await page.evaluate(look);
    await page.waitForTimeout(300);
  }
}

test('a newer version waits until a person takes it over', async (t) => {
  const next = newerVersion(site);
  let change = (path, bytes) => bytes;
  const own = await serve(t, site, (path, bytes) => change(path, bytes));
  const { context, page, folder, faults } = await launch(t, { size: 'tablet' });
  const mark = () => page.evaluate(async () => (await (await fetch('manifest.webmanifest')).json()).name);
  await page.goto(own.url);
  await beginDemo(page);
  await kept(page);

  // Half of the newer files are there: no version is made of them.
  change = next.half;
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update().catch(() => {}));
  await page.waitForTimeout(500);
  await page.reload();
  await page.locator('.cell.class').first().waitFor();
  assert.equal(await mark(), 'Oaklight');
  await until(page, async (name) => !(await caches.has(name)), `oaklight-${next.version}`);
  assert.equal(await page.locator('.tab.waits').count(), 0);

  // All are there: told, but not where a plot is open; a reload and a new start stay with the old one.
  change = next.whole;
  await lookUntilTold(page);
  await page.reload();
  await page.locator('.cell.class').first().waitFor();
  await page.locator('.tab.waits').waitFor();
  assert.equal(await page.locator('.notice').count(), 0, 'cells would move under the hands');
  assert.equal(await mark(), 'Oaklight');
  const hand = await Hand.at(page);
  await hand.tap(page.locator('.tab[href="#light"]'));
  await page.getByText('A newer version waits. Take it over under Setup.').waitFor();
  await hand.tap(page.locator('.tab[href="#setup"]'));
  await page.getByText('A newer version waits. The page starts again with it').waitFor();
  assert.equal(await mark(), 'Oaklight');

  await hand.tap(hand.button('Take it over'));
  await until(page, async () => (await (await fetch('manifest.webmanifest')).json()).name !== 'Oaklight');
  assert.equal(await mark(), 'Oaklight, newer');
  await page.locator('.bar .whose').waitFor();
  await page.waitForTimeout(500);
  assert.equal(await page.locator('.tab.waits').count(), 0);

  // The newer worker takes its turn when that page is closed, and must not go back to what it knew while it waited.
  const reopened = await context.newPage();
  await page.close();
  await reopened.waitForTimeout(500);
  await reopened.goto(own.url);
  await reopened.locator('.bar .whose').waitFor();
  assert.equal(await reopened.evaluate(async () => (await (await fetch('manifest.webmanifest')).json()).name), 'Oaklight, newer');

  // When all pages of it are closed the newer worker takes its turn and throws the older files away.
  await context.close();
  const later = await launch(t, { size: 'tablet', folder });
  await later.page.goto(own.url);
  await later.page.locator('.bar .whose').waitFor();
  await until(
    later.page,
    async (name) => (await caches.keys()).sort().join() === `${name},oaklight-choice`,
    `oaklight-${next.version}`,
  );
  assert.deepEqual(
    faults.filter((one) => !one.includes('sw.js') && !one.includes('is not of version')),
    [],
  );
});

test('what is kept is what the server hands out, byte by byte', async (t) => {
  const server = await serve(t);
  const { context, page } = await launch(t, { size: 'phone' });
  await page.goto(server.url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  const sums = await page.evaluate(async () => {
    const cache = await caches.open((await caches.keys()).find((name) => name !== 'oaklight-choice'));
    const hex = async (answer) =>
      [...new Uint8Array(await crypto.subtle.digest('SHA-256', await answer.arrayBuffer()))]
        .map((one) => one.toString(16).padStart(2, '0'))
        .join('');
    const all = {};
    for (const request of await cache.keys()) all[new URL(request.url).pathname.slice(1)] = await hex(await cache.match(request));
    return all;
  });
  const files = filesUnder(site)
    .map((path) => path.slice(site.length + 1))
    .filter((path) => path !== 'sw.js');
  assert.deepEqual(Object.keys(sums).sort(), files.sort());
  for (const path of files)
    assert.equal(
      sums[path],
      createHash('sha256')
        .update(readFileSync(join(site, path)))
        .digest('hex'),
      path,
    );
});
