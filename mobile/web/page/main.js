// Starts the page: what the person chose, the core in its worker, the tract that was open, and keeps itself for no network.
import { Core } from './core/core.mjs';
import { applyDevice, device } from './device.js';
import { openIntro } from './intro.js';
import { el, problem } from './parts.js';
import { Shell } from './shell.js';
import { keepOffline } from './update.js';
import { sentence, t } from './words.js';

async function start() {
  await applyDevice();
  let core;
  try {
    core = await Core.start();
  } catch (error) {
    cannotStart(error);
    return;
  }
  const shell = new Shell(core, document.getElementById('app'));
  await shell.openLast();
  if (!device.introSeen) openIntro();
  keepOffline(shell);
}

function cannotStart(error) {
  const again = el('button.tap.main.large', { type: 'button', onclick: () => location.reload() }, t('ProblemBar', 'Try again'));
  document
    .getElementById('app')
    .replaceChildren(el('div.page.narrow', {}, el('h1', {}, 'Oaklight'), problem(sentence(error)), again));
}

start();
