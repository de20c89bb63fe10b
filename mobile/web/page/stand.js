// The figures of a stand, each with its unit and its error, as the app's page Stand has them.
import { el, words } from './parts.js';
import { openSheet } from './sheet.js';
import { say, sentence, t } from './words.js';

function row({ name, value, unit, error, remark }) {
  const figure = [value, unit, error].map(say).filter(Boolean).join(' ');
  return el('div.figure-row', {}, el('p', {}, say(name)), el('b', {}, figure), words(say(remark), 'sub'));
}

export async function openFigures(shell, stand) {
  let told;
  try {
    told = await shell.ask('standFigures', { stand });
  } catch (error) {
    shell.refuse(sentence(error));
    return;
  }
  openSheet({
    title: t('Web', 'Figures of this stand'),
    fill: () => [words(say(told.problem)), told.figures.map(row), words(say(told.need)), words(say(told.advice))],
  });
}
