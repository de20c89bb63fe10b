// A folder of files served to a real browser, which is driven by touch: what the tests of the page stand on.
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
export const site = process.env.OAKLIGHT_SITE ?? join(root, '.build', 'web', 'site');

// Installed by mobile/web/test beside the build, from the lock file here.
const driver = () => createRequire(join(root, '.build', 'web', 'browser', 'here.js'))('playwright-core').chromium;

/// The sizes at which the page is used: CSS pixels of a 10.1 in tablet both ways, and of a phone.
export const kSizes = {
  tablet: { width: 1280, height: 800 },
  upright: { width: 800, height: 1280 },
  phone: { width: 412, height: 915 },
};

const kTypes = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
};

/// As plain as a static server can be: no header that the page could come to lean on. `change(path, bytes)` may hand out other
/// bytes, as a newer version would.
/// Stops with the test t.
export async function serve(t, folder = site, change = (path, bytes) => bytes) {
  const asked = [];
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, 'http://here').pathname)).replace(/\/$/, '/index.html');
    asked.push(path);
    try {
      const bytes = change(path.slice(1), await readFile(join(folder, path)));
      response.writeHead(200, { 'content-type': kTypes[extname(path)] ?? 'application/octet-stream' });
      response.end(bytes);
    } catch {
      response.writeHead(404);
      response.end();
    }
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  const stop = () => {
    server.closeAllConnections();
    return new Promise((done) => server.close(done)); // also where it is closed already
  };
  t.after(stop);
  return { url: `http://localhost:${server.address().port}/`, asked, stop };
}

/// A browser with a folder of its own, as a device has: what it keeps outlives it when the folder is given again.
/// Closes with the test t.
export async function launch(
  t,
  { size = 'tablet', folder = mkdtempSync(join(tmpdir(), 'oaklight-browser-')), locale = 'en-US' } = {},
) {
  const context = await driver().launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    headless: true,
    args: ['--no-sandbox'], // the tests run as root in a container
    viewport: kSizes[size],
    hasTouch: true,
    isMobile: true,
    locale,
    acceptDownloads: true,
  });
  t.after(() => context.close());
  context.setDefaultTimeout(20_000);
  const page = context.pages()[0] ?? (await context.newPage());
  const faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  return { context, page, folder, faults };
}
