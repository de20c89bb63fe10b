// Opens the hello page in headless Chromium, presses its button and looks whether the text changed.
//   node look.mjs BUILD PICTURES     in a folder where npm has put playwright-core; BUILD holds hello.html
import assert from 'node:assert';
import { createReadStream, existsSync, mkdirSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { extname, join } from 'node:path';

const [build, pictures] = process.argv.slice(2);
const { chromium } = createRequire(join(process.cwd(), 'package.json'))('playwright-core');
const kinds = { '.html': 'text/html', '.js': 'text/javascript', '.wasm': 'application/wasm', '.svg': 'image/svg+xml' };

const server = createServer((request, response) => {
  const file = join(build, new URL(request.url, 'http://page').pathname);
  if (!existsSync(file)) return void response.writeHead(404).end();
  response.writeHead(200, { 'content-type': kinds[extname(file)] ?? 'application/octet-stream' });
  createReadStream(file).pipe(response);
});
await new Promise((listening) => server.listen(0, '127.0.0.1', listening));

mkdirSync(pictures, { recursive: true });
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
});
const page = await browser.newPage({ viewport: { width: 400, height: 300 } });
const said = [];
page.on('console', (line) => (said.push(line.text()), console.log('page:', line.text())));
page.on('pageerror', (error) => console.log('fault:', error.message));

async function until(words, seconds) {
  const end = Date.now() + seconds * 1000;
  while (!said.some((line) => line.includes(words))) {
    assert(Date.now() < end, `the page did not say '${words}' in ${seconds} s`);
    await page.waitForTimeout(100);
  }
}

try {
  const start = Date.now();
  await page.goto(`http://127.0.0.1:${server.address().port}/hello.html`);
  await until('hello: shown', 300);
  console.log(`shown after ${Date.now() - start} ms`);
  await page.waitForTimeout(3000);
  const before = await page.screenshot({ path: join(pictures, 'before.png') });
  await page.mouse.click(200, 182);
  await until('hello: Tapped 1', 60);
  await page.waitForTimeout(3000);
  const after = await page.screenshot({ path: join(pictures, 'after.png') });
  assert(!before.equals(after), 'the picture did not change');
  console.log('the text changed');
} finally {
  await browser.close();
  server.close();
}
