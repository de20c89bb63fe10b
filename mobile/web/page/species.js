// All species, found by the beginning of any of their names.
import { el, tap } from './parts.js';
import { openSheet } from './sheet.js';
import { say, t } from './words.js';

export function openSpecies({ shell, act }) {
  let found = [];
  let asked = 0;
  const list = el('div.rows', {});
  const search = el('input', {
    type: 'search',
    placeholder: t('SpeciesSheet', 'Any name: chinkapin, tulip, Quercus'),
    'aria-label': t('SpeciesSheet', 'Search for a species'),
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    oninput: () => look(),
  });
  async function look() {
    const turn = (asked += 1);
    const answer = await shell.ask('search', { typed: search.value });
    if (turn !== asked) return; // somebody typed on
    found = answer.species;
    const row = (one) =>
      tap({
        text: say(one.name),
        sub: one.scientific,
        act: () => {
          sheet.close();
          act(one);
        },
      });
    const none = el('p', {}, t('SpeciesSheet', 'No species has a name that begins so. Fewer letters find more.'));
    list.replaceChildren(...(found.length > 0 ? found.map(row) : [none]));
  }
  const sheet = openSheet({ title: t('SpeciesSheet', 'Species'), atTree: true, fill: () => [search, list] });
  look();
  search.focus();
  return sheet;
}
