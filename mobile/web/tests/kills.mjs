// Trees are tallied in Chromium while it is killed, reloaded, closed and runs full; each time what was acknowledged
// must be there again. By hand:
//   node mobile/web/tests/kills.mjs [kills, 50] [reloads, 10]
// The browser tells the server of each tree once its call was answered; what the server heard of was acknowledged.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';

import { call, launch, open, root, serve } from './browser.mjs';

const kills = Number(process.argv[2] ?? 50);
const reloads = Number(process.argv[3] ?? 10);
const rounds = kills + reloads + 1;
const kFile = 'kills.gpkg';
const profile = fs.mkdtempSync(path.join(os.tmpdir(), 'oaklight-kills-'));
const heard = new Map(); // plot: number of steps that were acknowledged
const server = await serve((words) => {
  const { plot, steps } = JSON.parse(words);
  heard.set(plot, Math.max(heard.get(plot) ?? 0, steps));
});

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** The step of a number: every seventh takes the tree before back. */
const tenths_of = (step) => (step % 7 === 6 ? null : 50 + (step % 250));
/** The trees of a plot after so many steps, as core writes their sizes. */
function trees_after(steps) {
  const trees = [];
  for (let step = 0; step < steps; ++step) {
    const tenths = tenths_of(step);
    if (tenths === null) trees.pop();
    else trees.push(`${Math.floor(tenths / 10)}.${tenths % 10} in`);
  }
  return trees.join(' ');
}

/** Begins to tally on a plot without end, and tells the server of each step that was answered. */
const begin_tally = (page, plot) =>
  page.evaluate(
    ([plot]) => {
      const tenths_of = (step) => (step % 7 === 6 ? null : 50 + (step % 250));
      window.stopped = null;
      (async () => {
        for (let step = 0; window.stopped === null; ++step) {
          const tenths = tenths_of(step);
          if (tenths === null) await window.core.call('undo');
          else await window.core.call('tally', { plot, species: 802, tenths });
          fetch('/heard', { method: 'POST', body: JSON.stringify({ plot, steps: step + 1 }), keepalive: true }).catch(() => {});
        }
      })().catch((problem) => (window.stopped = { code: problem.code, what: problem.what, fix: problem.fix }));
    },
    [plot],
  );

/** The plot must be as after some number of steps, none of those heard of missing. returns  trees on it */
async function check(page, plot, how) {
  const { trees } = await call(page, 'trees', { plot });
  const there = trees
    .reverse()
    .map((tree) => tree.text.a[1] ?? tree.text)
    .join(' ');
  const acknowledged = heard.get(plot) ?? 0;
  for (let steps = acknowledged; steps <= acknowledged + 400; ++steps) {
    if (there === trees_after(steps)) return trees.length;
  }
  assert.fail(`${how}: ${acknowledged} steps were acknowledged, and ${trees.length} trees are there`);
}

let browser = await launch(profile);
let page = await open(browser, server.url);
await call(page, 'create', { file: kFile });
const { stand } = await call(page, 'addStand', { name: 'Upper', acres: 12.5 });
const { cruise } = await call(page, 'addCruise', { name: 'Fall', design: { baf: 10 } });
await call(page, 'addPlots', { stand, cruise, count: rounds });
const plots = (await call(page, 'plots')).plots.map((plot) => plot.id);
const counts = [];
const begun = Date.now();

async function again(how, plot) {
  await call(page, 'open', { file: kFile }); // reads every record against its checksum
  counts.push(await check(page, plot, how));
}

for (let round = 0; round < kills; ++round) {
  await begin_tally(page, plots[round]);
  await pause(200 + Math.random() * 1800);
  const whole = round % 2 === 1;
  await browser.kill(whole);
  browser = await launch(profile);
  page = await open(browser, server.url);
  await again(`kill ${round + 1}`, plots[round]);
  if ((round + 1) % 10 === 0) console.log(`${round + 1} kills, ${counts.reduce((a, b) => a + b, 0)} trees, none lost`);
}

for (let round = kills; round < kills + reloads; ++round) {
  await begin_tally(page, plots[round]);
  await pause(200 + Math.random() * 800);
  if (round % 2 === 0) {
    await page.reload();
    await page.waitForFunction(() => window.ready);
    await page.evaluate(() => window.begin());
  } else {
    await page.close();
    page = await open(browser, server.url);
  }
  await again(`reload ${round + 1 - kills}`, plots[round]);
}
console.log(`${reloads} reloads and closed tabs, none lost`);

// A second tab is told so.
const second = await browser.page();
await second.goto(server.url);
await second.waitForFunction(() => window.ready);
const told = await second.evaluate(() =>
  window.begin().then(
    () => null,
    (problem) => problem.code,
  ),
);
assert.equal(told, 'other_tab');
await second.close();

// A full quota.
const last = plots[rounds - 1];
const session = await browser.session(page);
const origin = new URL(server.url).origin;
const { usage } = await session.send('Storage.getUsageAndQuota', { origin });
await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: usage + 200000 });
await begin_tally(page, last);
await page.waitForFunction(() => window.stopped !== null, null, { timeout: 120000 });
const full = await page.evaluate(() => window.stopped);
assert.equal(full.code, 'disk_full', JSON.stringify(full));
const before = await check(page, last, 'full quota');
await session.send('Storage.overrideQuotaForOrigin', { origin });
await call(page, 'tally', { plot: last, species: 802, tenths: 123 });
assert.equal((await call(page, 'trees', { plot: last })).trees.length, before + 1);
console.log(`full quota after ${before} trees: "${full.what} ${full.fix}"; with room it went on`);

// All plots are still there, in Chromium and for the native program.
await page.reload();
await page.waitForFunction(() => window.ready);
await page.evaluate(() => window.begin());
await call(page, 'open', { file: kFile });
for (const [round, plot] of plots.slice(0, -1).entries()) {
  assert.equal((await call(page, 'trees', { plot })).trees.length, counts[round]);
}
const bytes = await page.evaluate(async () => {
  const { blob } = await window.core.takeOut();
  return [...new Uint8Array(await blob.arrayBuffer())];
});
const file = path.join(profile, 'out.gpkg');
fs.writeFileSync(file, Uint8Array.from(bytes));
const native = path.join(root, '.build/main/bin/oaklight');
if (fs.existsSync(native)) execFileSync(native, ['check', file]);
else console.log('no native program in .build/main: the file was not shown to it');
await browser.close();
server.close();
fs.rmSync(profile, { recursive: true, force: true });
const trees = counts.reduce((a, b) => a + b, 0);
console.log(
  `${kills} kills, ${reloads} reloads: ${trees} trees, nothing acknowledged was lost (${Math.round((Date.now() - begun) / 1000)} s)`,
);
process.exit(0);
