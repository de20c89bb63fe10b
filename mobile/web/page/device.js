// What a person chose once for this device. Records are never kept here.
import { setLanguage } from './words.js';

const kKey = 'oaklight';
const kStart = {
  light: 'day',
  gloves: true,
  leftHand: false,
  system: 'us',
  language: navigator.language?.startsWith('es') ? 'es' : 'en',
  typed: false, // each species asks for its diameter by keypad
  set: 'appalachian_mixed_oak', // which species come first, as in the app
  introSeen: false,
  file: '', // open at the next start
  plot: '', // where the person stood
};

// A browser may keep nothing for the page: then a choice lasts for this visit.
function kept() {
  try {
    return JSON.parse(localStorage.getItem(kKey) ?? '{}');
  } catch {
    return {};
  }
}
function keep() {
  try {
    localStorage.setItem(kKey, JSON.stringify(device));
  } catch {
    // It is told where the tract files cannot be kept either.
  }
}

export const device = { ...kStart, ...kept() };

const listeners = new Set();
export function onDevice(listener) {
  listeners.add(listener);
}

export async function setDevice(changes) {
  Object.assign(device, changes);
  keep();
  await applyDevice();
  for (const listener of listeners) listener(changes);
}

// A phone is held in one hand below 90 mm, as in the app; two columns need 150 mm. In a browser a millimetre is taken from
// the 160 dots in an inch that a handheld's pixel stands for: no page is told the true size of its glass.
const phone = matchMedia('(max-width: 566px), (max-height: 566px)');
const wide = matchMedia('(orientation: landscape) and (min-width: 886px)');
export const shape = { phone: false, wide: false };

export async function applyDevice() {
  const root = document.documentElement;
  root.dataset.light = device.light;
  root.dataset.gloves = device.gloves;
  root.dataset.hand = device.leftHand ? 'left' : 'right';
  shape.phone = phone.matches;
  shape.wide = wide.matches && !phone.matches;
  root.dataset.shape = shape.phone ? 'phone' : shape.wide ? 'wide' : 'upright';
  await setLanguage(device.language);
}

export function onShape(listener) {
  const changed = async () => {
    await applyDevice();
    listener();
  };
  phone.addEventListener('change', changed);
  wide.addEventListener('change', changed);
}
