// Which plot the person stands at, and what can be said of it beside its trees.
import { el, icon, tap, words } from './parts.js';
import { openKeypad, openSheet } from './sheet.js';
import { sentence, t } from './words.js';

const kStatusWords = { planned: 'to do', measured: 'done', empty: 'empty', skipped: 'skipped' };

/// Said where there are any: on a plot that is still to do no tree is not a count of 0.
const treesOf = ({ trees }) => (trees === 0 ? '' : trees === 1 ? t('Web', '1 tree') : t('Web', '%1 trees', trees));

/// What stands where the cells would be while no plot is chosen.
export function closedTold(shell, choose) {
  if (!shell.tract) {
    return [
      el(
        'div.narrow',
        {},
        words(t('NoTract', 'No tract is open'), 'big'),
        tap({ text: t('AppModel', 'Setup'), look: 'main', symbol: 'setup', act: () => shell.go('setup') }),
      ),
    ];
  }
  return [
    el(
      'div.narrow',
      {},
      words(t('Web', 'No plot is chosen.'), 'big'),
      tap({ text: t('Web', 'Choose a plot'), look: 'main large', act: choose }),
    ),
  ];
}

/// All plots by stand and label, each with its status as a shape and a word; the one that is chosen can be called empty, skipped
/// or planned again.
export async function openPlots({ shell, current, chosen, changed }) {
  let plots = [];
  let at = current;
  const here = () => plots.find((one) => one.id === at);

  async function load() {
    ({ plots } = await shell.ask('plots'));
  }
  async function choose(plot, sheet) {
    at = plot.id;
    await chosen(plot.id);
    sheet.close();
  }
  async function change(call, args, sheet) {
    const done = await shell.act(call, { plot: at, ...args });
    if (!done) return sheet.close(); // why stands above the page
    await load();
    sheet.refill();
  }
  const row = (plot, sheet) =>
    el(
      'button.row',
      { type: 'button', 'aria-pressed': String(plot.id === at), onclick: () => choose(plot, sheet) },
      icon(`plot_${plot.status}`),
      el(
        'span.what',
        {},
        el('b', {}, t('Plot', '%1, plot %2', plot.standName, plot.label)),
        el('span.sub', {}, treesOf(plot), plot.note ? ` ${plot.note}` : ''),
      ),
      el('span.status', {}, t('Plot', kStatusWords[plot.status])),
    );

  try {
    await load();
  } catch (error) {
    shell.refuse(sentence(error));
    return;
  }
  openSheet({
    title: t('WalkPage', 'All plots'),
    atTree: true,
    fill: (sheet) => [
      plots.length === 0 ? words(t('Web', 'This tract has no plots. Add some under Setup.')) : null,
      el(
        'div.rows',
        {},
        plots.map((plot) => row(plot, sheet)),
      ),
    ],
    foot: (sheet) => {
      const plot = here();
      if (!plot) return [];
      return [
        words(t('Plot', '%1, plot %2', plot.standName, plot.label), 'strong'),
        el(
          'div.grid.three',
          {},
          tap({
            text: t('WalkActions', 'Empty plot'),
            help: t('WalkActions', 'Visited, no tree to tally: it counts as zero'),
            enabled: plot.status === 'planned' && plot.trees === 0,
            act: () => change('callEmpty', {}, sheet),
          }),
          tap({
            text: t('WalkActions', 'Skip'),
            help: t('WalkActions', 'Not visited, for a reason: not in the sample'),
            enabled: plot.status !== 'skipped' && plot.trees === 0,
            act: () =>
              openSkip(t('Plot', '%1, plot %2', plot.standName, plot.label), (reason) => change('skipPlot', { reason }, sheet)),
          }),
          tap({
            text: t('WalkActions', 'Plan again'),
            help: t('WalkActions', 'Not visited after all'),
            enabled: plot.status === 'skipped' || plot.status === 'empty',
            act: () => change('planAgain', {}, sheet),
          }),
        ),
      ];
    },
    closed: changed,
  });
}

function openSkip(name, act) {
  const reason = el('input', { type: 'text', 'aria-label': t('SkipSheet', 'Why?'), autocomplete: 'off' });
  openSheet({
    title: t('SkipSheet', 'Skip %1', name),
    fill: () => [
      words(
        t(
          'SkipSheet',
          'A plot with no tree on it is not skipped: call it empty, and it counts as zero. Skip only what cannot be worked.',
        ),
      ),
      el('label', {}, t('SkipSheet', 'Why?'), reason),
    ],
    foot: (sheet) =>
      tap({
        text: t('SkipSheet', 'Skip for this reason'),
        look: 'main large',
        act: () => {
          sheet.close();
          act(reason.value.trim());
        },
      }),
  });
}

/// The slope of the ground, in percent: core reads distances on it.
export function openSlope({ shell, plot, changed }) {
  openKeypad({
    title: t('Web', 'Slope of this plot'),
    note: t('Web', 'In percent, along the steepest line through the centre'),
    prompt: t('Web', 'Type the slope'),
    enterText: t('KeypadSheet', 'Record'),
    read: async (digits) => `${Number(digits)} %`,
    entered: async (digits) => {
      const done = await shell.act('startPlot', { plot, slope: Number(digits), day: today() });
      if (done) await changed();
      return done ? '' : shell.why;
    },
  });
}

/// The person's own calendar day, as 2026-12-01: core in the browser knows no time zone.
const today = () => new Date().toLocaleDateString('sv-SE');
