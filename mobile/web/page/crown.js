// A crown from above with its four sides to touch, as a person stands at the stem and looks up. The side of a crown is a quarter
// of its edge; which are open now, open after and closed is core's word, and nothing is measured in this drawing.
import { el } from './parts.js';
import { say, t } from './words.js';

const kSvg = 'http://www.w3.org/2000/svg';
const kSides = {
  N: { name: () => t('CrownSides', 'North'), arc: 'M -42.4 -42.4 A 60 60 0 0 1 42.4 -42.4', at: [0, -78] },
  E: { name: () => t('CrownSides', 'East'), arc: 'M 42.4 -42.4 A 60 60 0 0 1 42.4 42.4', at: [78, 6] },
  S: { name: () => t('CrownSides', 'South'), arc: 'M 42.4 42.4 A 60 60 0 0 1 -42.4 42.4', at: [0, 90] },
  W: { name: () => t('CrownSides', 'West'), arc: 'M -42.4 42.4 A 60 60 0 0 1 -42.4 -42.4', at: [-78, 6] },
};

export const sideName = (side) => kSides[side].name();

function drawn(kind, attributes, text = '') {
  const made = document.createElementNS(kSvg, kind);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.textContent = text;
  return made;
}

function kindOf({ state, after }) {
  if (state === 'free') return 'open';
  if (after === 'free') return 'opens';
  return state === 'unknown' ? 'unknown' : 'closed';
}

function picture(card) {
  const said = card.sides.map((one) => t('SideButton', '%1: %2', sideName(one.side), one.words)).join('; ');
  const svg = drawn('svg', { viewBox: '-100 -100 200 200', role: 'img', 'aria-label': said, class: 'crown' });
  for (const one of card.sides) {
    const { arc, at } = kSides[one.side];
    svg.append(drawn('path', { d: arc, class: `edge ${kindOf(one)}` }));
    svg.append(
      drawn('text', { x: at[0], y: at[1], 'text-anchor': 'middle', 'aria-hidden': 'true' }, sideName(one.side).slice(0, 1)),
    );
  }
  svg.append(drawn('circle', { r: 5, class: 'stem' }));
  return svg;
}

function key() {
  const one = (kind, text) => {
    const sample = drawn('svg', { viewBox: '0 0 40 16', 'aria-hidden': 'true', class: 'sample' });
    sample.append(drawn('path', { d: 'M 2 8 H 38', class: `edge ${kind}` }));
    return el('span', {}, sample, text);
  };
  return el(
    'p.key',
    {},
    one('open', t('Web', 'open now')),
    one('opens', t('Web', 'opens after')),
    one('closed', t('Web', 'closed')),
    one('unknown', t('Web', 'not looked')),
  );
}

export function crownSides(card, touched) {
  const button = (one) => {
    const words = say(one.words);
    return el(
      `button.side-button.${one.side}`,
      { type: 'button', 'aria-label': t('SideButton', '%1: %2', sideName(one.side), words), onclick: () => touched(one) },
      el('b', {}, sideName(one.side)),
      el('span.sub', {}, words),
    );
  };
  return el('div.crown-sides', {}, el('div.crown-box', {}, key(), picture(card)), card.sides.map(button));
}
