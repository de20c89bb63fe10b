// One tallied tree: what was measured, what was seen, and mending it. Every tap is stored by itself, and undo reverses it.
import { chips, el, tap, words } from './parts.js';
import { openKeypad, openSheet } from './sheet.js';
import { openSpecies } from './species.js';
import { say, sentence, t } from './words.js';

const kLists = [
  ['status', () => t('Form', 'Tree')],
  ['crown_class', () => t('WalkTreeSheet', 'Crown class')],
  ['condition', () => t('WalkTreeSheet', 'What is seen on it')],
];

function byGroup(choices) {
  const groups = {};
  for (const one of choices) (groups[one.group ?? ''] ??= []).push(one);
  return groups;
}

export async function openTree({ shell, tree, changed }) {
  let shown;
  try {
    shown = await shell.ask('tree', { tree });
  } catch (error) {
    shell.refuse(sentence(error));
    return;
  }
  async function change(call, args, sheet) {
    const now = await shell.act(call, { tree, ...args });
    if (!now) return shell.why;
    shown = now;
    sheet.refill();
    await changed();
    return '';
  }
  const list = ([name, title], sheet) => {
    const chip = (one) => ({ ...one, text: say(one.label), sub: say(one.help), look: '', symbol: one.on ? 'tick' : 'empty' });
    const groups = Object.entries(byGroup(shown.choices[name]));
    return groups.map(([group, options]) =>
      chips({
        title: group ? t('Form', group) : title(),
        options: options.map(chip),
        columns: 'two.told',
        act: (one) => change('toggle', { word: one.word }, sheet),
      }),
    );
  };
  const reading = (one, sheet) =>
    tap({
      text: say(one.value),
      sub: say(one.name),
      spoken: t('TreeSheet', '%1: %2', one.name, one.value),
      act: () =>
        openKeypad({
          title: say(one.name),
          prompt: say(one.name),
          enterText: t('KeypadSheet', 'Record'),
          read: async (digits) => say((await shell.ask('readReading', { reading: one.reading, digits })).text),
          entered: (digits) => change('enterReading', { reading: one.reading, digits }, sheet),
        }),
    });
  openSheet({
    title: () => say(shown.title),
    fill: (sheet) => [
      ...kLists.map((one) => list(one, sheet)),
      words(t('TreeSheet', 'Measured'), 'strong'),
      el(
        'div.grid.two',
        {},
        shown.readings.map((one) => reading(one, sheet)),
      ),
      tap({
        text: t('TreeSheet', 'Another species'),
        act: () => openSpecies({ shell, act: (species) => change('correctTree', { facts: { species: species.code } }, sheet) }),
      }),
      el('div.apart', {}),
      tap({
        text: t('TreeSheet', 'Take this tree out'),
        help: t('TreeSheet', 'Undo brings it back'),
        symbol: 'minus',
        act: async () => {
          const done = await shell.act('removeTree', { tree });
          sheet.close();
          if (done) await changed();
        },
      }),
    ],
  });
}

/// All trees of a plot, newest first; each opens by one tap.
export async function openTrees({ shell, plot, changed }) {
  let trees = [];
  const load = async () => ({ trees } = await shell.ask('trees', { plot }));
  await load();
  openSheet({
    title: t('Web', 'Trees of this plot'),
    atTree: true,
    fill: (sheet) => {
      const again = async () => {
        await load();
        sheet.refill();
        await changed();
      };
      const row = (one) =>
        tap({
          text: one.doubt ? t('TallyViewModel', '%1, large?', one.text) : say(one.text),
          help: t('LastTrees', 'Opens this tree'),
          act: () => openTree({ shell, tree: one.tree, changed: again }),
        });
      return trees.length > 0 ? el('div.rows', {}, trees.map(row)) : words(t('Web', 'No trees yet.'));
    },
  });
}
