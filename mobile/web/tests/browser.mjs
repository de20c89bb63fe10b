// A Chromium of its own profile that a test drives and kills, and a server that gives it the files of the program.
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import http from 'node:http';
import { createRequire } from 'node:module';
import path from 'node:path';

export const root = path.resolve(path.dirname(new URL(import.meta.url).pathname), '../../..');
const { chromium } = createRequire(path.join(root, '.build/web/browser/'))('playwright-core');
const kTypes = { '.mjs': 'text/javascript', '.js': 'text/javascript', '.html': 'text/html', '.wasm': 'application/wasm' };
// A page with nothing on it but the client.
const kPage = `<!doctype html><title>Oaklight, storage</title><script type="module">
import { Core } from "./core/core.mjs";
window.begin = async () => { window.core = await Core.start(); };
window.ready = true;
</script>`;

/** Serves the page, core/ and what is posted: take(words) gets it. */
export async function serve(take = () => {}) {
  const folders = [path.join(root, 'mobile/web/files'), process.env.OAKLIGHT_WASM ?? path.join(root, '.build/web/bin')];
  const server = http.createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://localhost');
    if (request.method === 'POST') {
      let words = '';
      request.on('data', (part) => (words += part));
      request.on('end', () => {
        take(words);
        response.end();
      });
      return;
    }
    const name = path.basename(pathname);
    const file = folders.map((folder) => path.join(folder, name)).find((candidate) => fs.existsSync(candidate));
    response.setHeader('content-type', kTypes[path.extname(pathname)] ?? 'text/html');
    if (pathname === '/') return response.end(kPage);
    if (pathname.startsWith('/core/') && file) return fs.createReadStream(file).pipe(response);
    response.statusCode = 404;
    response.end();
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { url: `http://localhost:${server.address().port}/`, close: () => server.close() };
}

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** Starts Chromium on a profile: {page(): a page of it, kill(whole), close()}. */
export async function launch(profile) {
  fs.rmSync(path.join(profile, 'DevToolsActivePort'), { force: true });
  const binary = process.env.CHROMIUM ?? '/usr/lib/chromium/chromium';
  const child = spawn(
    binary,
    [
      '--headless=new',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { detached: true, stdio: 'ignore' },
  );
  const gone = new Promise((resolve) => child.on('exit', resolve));
  const port_file = path.join(profile, 'DevToolsActivePort');
  const deadline = Date.now() + 60000;
  let port;
  while (!port) {
    if (Date.now() > deadline || child.exitCode !== null) throw new Error('Chromium did not start');
    await pause(50);
    if (fs.existsSync(port_file)) port = fs.readFileSync(port_file, 'utf8').split('\n')[0];
  }
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  return {
    pid: child.pid,
    page: () => browser.contexts()[0].newPage(),
    session: (page) => browser.contexts()[0].newCDPSession(page),
    /** The browser process, or with `whole` every process of it at once. */
    async kill(whole) {
      process.kill(whole ? -child.pid : child.pid, 'SIGKILL');
      await gone;
      await browser.close().catch(() => {});
    },
    async close() {
      await browser.close().catch(() => {});
      process.kill(child.pid, 'SIGTERM');
      await gone;
    },
  };
}

/** Opens the page and starts core. */
export async function open(browser, url) {
  const page = await browser.page();
  await page.goto(url);
  await page.waitForFunction(() => window.ready);
  await page.evaluate(() => window.begin());
  return page;
}

export const call = (page, name, given = {}) => page.evaluate(([name, given]) => window.core.call(name, given), [name, given]);
