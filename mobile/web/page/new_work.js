// What a tract needs before its first tree: a stand, the design of the cruise, plots.
import { device } from './device.js';
import { chips, el, problem, tap, words } from './parts.js';
import { numberTyped } from './light.js';
import { openSheet } from './sheet.js';
import { say, t } from './words.js';

const kFactors = { us: [5, 10, 20], metric: [1, 2, 4] }; // basal area factors, ft²/ac and m²/ha: common practice
const kCircles = { us: [0.05, 0.1, 0.2], metric: [0.02, 0.04, 0.1] }; // acres, hectares: common practice
const kCounts = [5, 10, 15, 20];

const line = (label, props = {}) => {
  const input = el('input', { type: 'text', autocomplete: 'off', 'aria-label': label, ...props });
  return { input, box: el('label', {}, label, input) };
};

/// "Laurel Run" becomes laurel_run.gpkg.
const fileNameOf = (name) =>
  `${
    name
      .trim()
      .toLowerCase()
      .normalize('NFD')
      .replace(/\p{M}/gu, '') // "Cañón" becomes canon
      .replace(/[^a-z0-9]+/g, '_')
      .replace(/^_|_$/g, '') || 'tract'
  }.gpkg`;

export function openNewStand(shell, { newTract, done }) {
  const tract = line(t('FilesSheet', 'Name of a new tract'));
  const stand = line(t('StandSheet', 'Name of the stand'));
  const metric = device.system === 'metric';
  const area = line(metric ? t('StandSheet', 'Area, hectares') : t('StandSheet', 'Area, acres'), { inputmode: 'decimal' });
  const told = el('div', {});
  async function save(sheet) {
    if (newTract && !(await makeTract(shell, tract.input.value))) return told.replaceChildren(problem(shell.why));
    newTract = false; // it is made; what is refused below does not make it twice
    const size = { [metric ? 'hectares' : 'acres']: numberTyped(area.input.value) };
    const added = await shell.act('addStand', { name: stand.input.value.trim(), ...size });
    if (!added) return told.replaceChildren(problem(shell.why));
    shell.stand = added.stand;
    await shell.setTract(await shell.ask('tract'));
    sheet.close();
    await done();
  }
  openSheet({
    title: newTract ? t('FilesSheet', 'Make a new tract') : t('StandSheet', 'New stand'),
    fill: () => [told, newTract ? tract.box : null, stand.box, area.box],
    foot: (sheet) => tap({ text: t('StandSheet', 'Save stand'), look: 'main large', act: () => save(sheet) }),
  });
}

async function makeTract(shell, name) {
  if (!(await shell.takeTract('create', { file: fileNameOf(name) }))) return false;
  return Boolean(await shell.act('setTract', { name: name.trim() }));
}

export function openNewPlots(shell, done) {
  const { tract } = shell;
  const { system } = device;
  const state = {
    stand: tract.stands[0].id,
    cruise: tract.cruises.at(-1)?.id ?? '',
    kind: 'point',
    size: kFactors[system][1],
    count: 10,
  };
  const told = el('div', {});
  const choose = (title, key, options, sheet, columns = 'two') =>
    chips({
      title,
      columns,
      options: options.map(([value, text]) => ({ text, value, on: state[key] === value, look: '' })),
      act: (one) => {
        state[key] = one.value;
        if (key === 'kind') state.size = (one.value === 'point' ? kFactors : kCircles)[system][1];
        sheet.refill();
      },
    });
  const unitsOf = { us: ['ft²/ac', 'ac'], metric: ['m²/ha', 'ha'] }[system];
  function design(sheet) {
    const point = state.kind === 'point';
    const sizes = (point ? kFactors : kCircles)[system].map((one) => [one, `${one} ${unitsOf[point ? 0 : 1]}`]);
    return [
      choose(
        t('DesignSheet', 'Which trees are in'),
        'kind',
        [
          ['point', t('DesignViewModel', 'By prism or gauge')],
          ['circle', t('DesignViewModel', 'Circles of one size')],
        ],
        sheet,
      ),
      choose('', 'size', sizes, sheet, 'three'),
    ];
  }
  const keys = { us: { point: 'baf', circle: 'acres' }, metric: { point: 'baf_m2', circle: 'ha' } }[system];
  async function save(sheet) {
    if (!state.cruise) {
      const made = await shell.act('addCruise', { name: t('Web', 'Cruise'), design: { [keys[state.kind]]: state.size } });
      if (!made) return told.replaceChildren(problem(shell.why));
      state.cruise = made.cruise;
    }
    const added = await shell.act('addPlots', { stand: state.stand, cruise: state.cruise, count: state.count });
    if (!added) return told.replaceChildren(problem(shell.why));
    await shell.setTract(await shell.ask('tract'));
    sheet.close();
    await done();
  }
  openSheet({
    title: t('PlotsSheet', 'Add plots'),
    fill: (sheet) => [
      told,
      choose(
        t('LightPage', 'Stands'),
        'stand',
        tract.stands.map((one) => [one.id, one.name]),
        sheet,
      ),
      tract.cruises.length > 0 ? words(tract.cruises.map((one) => `${one.name}: ${say(one.design)}`).at(-1)) : design(sheet),
      choose(
        t('PlotsSheet', 'How many to add'),
        'count',
        kCounts.map((one) => [one, String(one)]),
        sheet,
        'four',
      ),
    ],
    foot: (sheet) => tap({ text: t('PlotsSheet', 'Add plots'), look: 'main large', act: () => save(sheet) }),
  });
}
