// Naming a tree of the marking walk: a crop tree, a neighbour and how it stands, or one that is looked at again. Nothing is
// recorded before it is saved.
import { device } from './device.js';
import { cautionLines, chips, el, problem, tap, words } from './parts.js';
import { openKeypad, openSheet } from './sheet.js';
import { openSpecies } from './species.js';
import { say, sentence, t } from './words.js';

/// begin     {stand}: a new crop tree; {crop, side}: a neighbour there; {tree, contact}: look again
/// cautions  of a tree that is looked at again: before all else
export async function openWalkTree({ shell, begin, cautions = [], saved }) {
  let tree;
  try {
    tree = await shell.ask('walkTree', begin);
  } catch (error) {
    shell.refuse(sentence(error));
    return;
  }
  const system = tree.facts?.system ?? device.system; // a tree that is looked at again stays as it was read
  const state = {
    tag: tree.tag,
    species: tree.facts?.species ?? null,
    name: say(tree.name),
    tenths: tree.facts?.tenths ?? null,
    size: say(tree.dbh),
    known: '',
    refused: '',
  };
  const on = (list) => (tree.choices[list] ?? []).filter((one) => one.on).map((one) => one.word);

  const tag = el('input', {
    type: 'text',
    value: state.tag,
    'aria-label': t('WalkTreeSheet', 'Tag'),
    autocomplete: 'off',
    oninput: () => typedTag(),
  });
  async function typedTag() {
    state.tag = tag.value.trim();
    const { known } = begin.tree ? { known: '' } : await shell.ask('wearer', { tag: state.tag });
    if (state.tag !== tag.value.trim()) return;
    state.known = say(known);
    sheet.refill();
  }
  function missing() {
    if (state.tag === '') return t('WalkTreeViewModel', 'Give it the number that hangs on it.');
    if (state.known !== '') return '';
    if (state.species === null) return t('WalkTreeViewModel', 'Choose its species.');
    return state.size === '' ? t('WalkTreeViewModel', 'Enter its diameter.') : '';
  }
  const list = (name, title, one) => {
    const options = (tree.choices[name] ?? []).map((chip) => ({ ...chip, text: say(chip.label), help: say(chip.help), chip }));
    if (options.length === 0) return null;
    const act = ({ chip }) => {
      const was = chip.on;
      if (one) for (const other of tree.choices[name]) other.on = false;
      chip.on = one === 'always' ? true : !was;
      sheet.refill();
    };
    return chips({ title, options, columns: name === 'side' ? 'four' : 'two', act });
  };
  const askSize = () =>
    openKeypad({
      title: t('WalkTreeSheet', 'Diameter (DBH)'),
      enterText: t('WalkTreeSheet', 'Take it over'),
      read: async (digits) => say((await shell.ask('readDigits', { digits, system })).text),
      entered: async (digits) => {
        const { text, tenths } = await shell.ask('readDigits', { digits, system });
        if (tenths === null) return say(text);
        Object.assign(state, { tenths, size: say(text) });
        sheet.refill();
        return '';
      },
    });
  const askSpecies = () =>
    openSpecies({
      shell,
      act: (species) => {
        Object.assign(state, { species: species.code, name: say(species.name) });
        sheet.refill();
      },
    });
  async function save() {
    const answer = await shell.act('saveWalkTree', {
      ...begin,
      tag: state.tag,
      facts: {
        species: state.species,
        tenths: state.tenths,
        system,
        status: on('condition').includes('dead') ? 'dead' : 'live',
        crown_class: on('crown_class')[0] ?? null,
        conditions: on('condition').filter((word) => word !== 'dead'),
      },
      sides: on('side'),
      seen: on('seen')[0] ?? null,
    });
    if (!answer) {
      state.refused = shell.why;
      sheet.refill();
      return;
    }
    sheet.close();
    await saved(answer.crop);
  }
  const neighbour = Boolean(begin.crop || begin.contact);
  const sheet = openSheet({
    title: say(tree.title),
    fill: () => [
      cautionLines(cautions, say),
      problem(state.refused),
      el('label.beside', {}, el('span', {}, t('WalkTreeSheet', 'Tag')), tag),
      state.known ? words(t('WalkTreeSheet', 'This tag hangs on %1 already: that tree is meant.', state.known)) : null,
      state.known
        ? null
        : [
            tap({ text: state.name || t('WalkTreeSheet', 'Species'), on: state.species !== null, act: askSpecies }),
            tap({ text: state.size || t('WalkTreeSheet', 'Diameter (DBH)'), on: state.size !== '', act: askSize }),
          ],
      neighbour ? list('seen', t('WalkTreeSheet', 'Its crown, looking up'), 'always') : null,
      neighbour ? list('side', t('WalkTreeSheet', 'On these sides of the crop tree')) : null,
      state.known ? null : list('crown_class', t('WalkTreeSheet', 'Crown class'), 'one'),
      state.known ? null : list('condition', t('WalkTreeSheet', 'What is seen on it')),
    ],
    foot: () => [
      words(missing(), 'soft'),
      tap({ text: t('WalkTreeSheet', 'Save'), look: 'main large', enabled: missing() === '', act: save }),
    ],
  });
}
