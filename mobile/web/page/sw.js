// Keeps every file of a version on the device, so that the page starts with no network, and stays with that version
// until a person asks for the newer one: it may be standing in the middle of a plot.
// `kBuild` {version, files: {path: sha256}} is written above by assemble.

const kOwn = `oaklight-${kBuild.version}`;
const kChoice = 'oaklight-choice';
const kChosen = 'chosen';

let chosen = null; // name of the cache in use; read once from kChoice

async function inUse() {
  if (chosen) return chosen;
  const kept = await (await caches.open(kChoice)).match(kChosen);
  const name = kept ? await kept.text() : '';
  // A browser that ran short of room may have thrown the files away.
  if (name && (await caches.has(name))) chosen = name;
  return chosen ?? kOwn;
}

async function use(name) {
  await (await caches.open(kChoice)).put(kChosen, new Response(name));
  chosen = name;
}

async function hexDigest(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

// A site that is half old and half new while it is being replaced never becomes a version here.
async function fetchWhole(path, sha256) {
  const answer = await fetch(path, { cache: 'no-cache' });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  if ((await hexDigest(bytes)) !== sha256) throw new Error(`${path} is not of version ${kBuild.version}`);
  return new Response(bytes, { headers: answer.headers });
}

async function install() {
  const cache = await caches.open(kOwn);
  const put = async ([path, sha256]) => cache.put(path, await fetchWhole(path, sha256));
  try {
    await Promise.all(Object.entries(kBuild.files).map(put));
  } catch (error) {
    if ((await inUse()) !== kOwn) await caches.delete(kOwn);
    throw error;
  }
}

async function activate() {
  chosen = null; // while this one waited, another worker may have been told to use another version
  const name = await inUse();
  await use(name); // the first version is in use as soon as it is whole
  await dropOthers(name);
  await self.clients.claim();
}

async function dropOthers(name) {
  for (const cache of await caches.keys()) {
    if (cache.startsWith('oaklight-') && ![name, kOwn, kChoice].includes(cache)) await caches.delete(cache);
  }
}

async function answer(request) {
  const cache = await caches.open(await inUse());
  const wanted = request.mode === 'navigate' ? 'index.html' : request;
  return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}

async function reply(message) {
  // The version that is taken over may be that of a worker that still waits for its turn: what is served hangs on the choice
  // alone, and not on which worker serves it.
  if (message.use && (await caches.has(message.use))) await use(message.use);
  return { own: kOwn, inUse: await inUse() };
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('fetch', (event) => {
  const ours = new URL(event.request.url).origin === self.location.origin;
  if (ours && event.request.method === 'GET') event.respondWith(answer(event.request));
});
self.addEventListener('message', (event) => {
  event.waitUntil(reply(event.data).then((words) => event.ports[0].postMessage(words)));
});
