// Keeps the page on the device and tells when a newer version waits. It is taken over only when a person asks for it.

const kLookMs = 1_800_000; // half an hour between looks for a newer version while the page is in sight

let worker = null; // the registration

function askWorker(one, message) {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    one.postMessage(message, [channel.port2]);
  });
}

/// {inUse, newest}: names of versions; the newest may be that of a worker that waits for its turn.
async function versions() {
  const { own, inUse } = await askWorker(worker.active, {});
  const newest = worker.waiting ? (await askWorker(worker.waiting, {})).own : own;
  return { inUse, newest };
}

async function tellVersions(shell) {
  const { inUse, newest } = await versions();
  shell.setVersions({ inUse, waits: inUse !== newest });
}

export async function takeNewest() {
  const { newest } = await versions();
  await askWorker(worker.active, { use: newest });
  location.reload();
}

export async function keepOffline(shell) {
  if (!navigator.serviceWorker) {
    shell.setVersions({ none: true });
    return;
  }
  try {
    worker = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    await navigator.serviceWorker.ready;
    worker.addEventListener('updatefound', () => {
      worker.installing.addEventListener('statechange', (event) => event.target.state === 'installed' && tellVersions(shell));
    });
    await tellVersions(shell);
  } catch {
    shell.setVersions({ none: true }); // served without https: the page runs, but not without its server
    return;
  }
  const look = () => {
    if (!document.hidden && navigator.onLine) worker.update().catch(() => {}); // no network is no fault here
  };
  document.addEventListener('visibilitychange', look);
  setInterval(look, kLookMs);
}
