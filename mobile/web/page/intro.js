// The caution that every use of the page begins with, once; as the app's last first picture says it.
import { setDevice } from './device.js';
import { el, icon, tap, words } from './parts.js';
import { t } from './words.js';

const kCaution =
  'No app replaces looking up. Dead limbs, hung trees and leaning stems kill people: look at every tree again before you work under it.';

export function openIntro() {
  const dialog = el('dialog.sheet.intro', { 'aria-label': t('Intro', 'Caution') });
  const begin = async () => {
    await setDevice({ introSeen: true });
    dialog.close();
  };
  dialog.addEventListener('cancel', (event) => event.preventDefault());
  dialog.addEventListener('close', () => dialog.remove());
  dialog.append(
    el('h1', {}, icon('caution'), t('Intro', 'Caution')),
    words(t('Intro', kCaution), 'big'),
    tap({ text: t('Intro', 'I look up. Begin'), look: 'main large', act: begin }),
  );
  document.body.append(dialog);
  dialog.showModal();
}
