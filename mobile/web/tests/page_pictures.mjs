// Pictures of every screen of the page at the three sizes, to be looked at: .build/web/pictures.
//   node mobile/web/tests/page_pictures.mjs [es] [night]
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { beginDemo } from './steps.mjs';
import { kSizes, launch, root, serve } from './site.mjs';

const until = [];
const run = { after: (done) => until.push(done) };
const folder = join(root, '.build', 'web', 'pictures');
const given = process.argv.slice(2);
const chosen = { ...(given.includes('night') ? { light: 'night' } : {}), language: given.includes('es') ? 'es' : 'en' };
mkdirSync(folder, { recursive: true });

async function through(size) {
  const server = await serve(run);
  const { page, faults } = await launch(run, { size });
  const shot = async (name) => {
    await page.waitForTimeout(150);
    await page.screenshot({ path: join(folder, `${[name, size, ...given].join('_')}.png`) });
  };
  const sheet = async (name) => {
    await page.locator('dialog').last().waitFor();
    await shot(name);
    await page.keyboard.press('Escape');
  };
  await page.goto(server.url);
  await page.locator('dialog').waitFor();
  await shot('caution');
  const hand = await beginDemo(page);
  await page.evaluate(
    (now) => localStorage.setItem('oaklight', JSON.stringify({ ...JSON.parse(localStorage.oaklight), ...now })),
    chosen,
  );
  await page.reload();
  await page.locator('.cell.class').first().waitFor({ state: 'attached' });
  await shot('tally');
  await hand.tap(page.locator('.cell.species').first());
  await shot('tally_species');
  await hand.tap(page.locator('.cell.class').nth(3));
  await page.waitForTimeout(300);
  await shot('tally_stored');
  await hand.tap(page.locator('.last .tap').first());
  await sheet('tree');
  await hand.tap(page.locator('.actions .tap').first());
  await sheet('keypad');
  await page.locator('.actions .tap').nth(2).tap();
  await sheet('more');
  await page.locator('.actions .tap').nth(2).tap();
  await page.locator('dialog .body .tap').last().tap();
  await page.locator('.figure-row').first().waitFor();
  await sheet('figures');
  await page.keyboard.press('Escape');
  const pages = ['light', 'marks', 'setup'];
  for (const key of pages) {
    await page.evaluate((to) => (location.hash = to), key);
    await page
      .locator(key === 'setup' ? '.settings' : '.row')
      .first()
      .waitFor();
    await shot(key);
    if (key === 'light') await card(page, shot, sheet);
    if (key === 'marks') {
      await page.locator('.row.mark').nth(2).tap();
      await sheet('mark');
    }
  }
  await page.locator('.settings').scrollIntoViewIfNeeded();
  await shot('settings');
  console.log(size, faults);
}

async function card(page, shot, sheet) {
  await page.locator('.foot-buttons .tap').last().tap();
  await page.locator('.advice [role=status]').waitFor({ timeout: 60_000 });
  await shot('decided');
  await page.locator('.row').first().tap();
  await page.locator('.crown').waitFor();
  await shot('card');
  await page.locator('.tree-row').nth(1).tap();
  await sheet('decision');
  await page.locator('.side-button.E').tap();
  await page.locator('dialog').waitFor();
  await shot('side');
  await page.locator('dialog .tap.main').tap();
  await page.locator('dialog').last().waitFor();
  await page.waitForTimeout(300);
  await sheet('neighbour');
}

for (const size of Object.keys(kSizes)) await through(size);
for (const done of until.reverse()) await done();
process.exit(0);
