// A person decides one tree of a card: what, and why.
import { cautionLines, el, icon, iconOf, tap, words } from './parts.js';
import { openSheet } from './sheet.js';
import { openWalkTree } from './walk_tree.js';
import { say, t } from './words.js';

const kVerdicts = ['take', 'keep', 'kill_standing', 'look_again'];
const kNames = { take: 'Take', keep: 'Keep', kill_standing: 'Kill standing', look_again: 'Look again' };
const nameOf = (verdict) => t('Marks', kNames[verdict]);

export function openDecision({ page, card, tree }) {
  const { shell } = page;
  const crop = tree.tree === card.crop;
  let verdict = null;
  let reasons = [];
  const why = el('input', {
    type: 'text',
    placeholder: t('DecisionSheet', 'Or in your own words'),
    'aria-label': t('DecisionSheet', 'The reason, in your own words'),
    autocomplete: 'off',
    oninput: () => sheet.refill(),
  });
  const act = async (call, args) => {
    await shell.act(call, args);
    sheet.close();
    await page.refresh();
  };
  const choose = async (chosen) => {
    verdict = chosen;
    ({ reasons } = await shell.ask('reasons', { verdict }));
    sheet.refill();
  };
  const takeReason = (text) => {
    why.value = text;
    sheet.refill();
  };
  const remove = () => (crop ? act('removeCard', { crop: card.crop }) : act('removeNeighbour', { contact: tree.contact }));
  const sheet = openSheet({
    title: say(tree.title),
    fill: () => [
      cautionLines(tree.cautions, say),
      el('p.verdict', {}, icon(iconOf(tree.verdict)), el('b', {}, t('DecisionSheet', 'Now: %1', tree.verdictWords))),
      words(say(tree.reason)),
      tree.byHand
        ? tap({
            text: t('DecisionSheet', 'Take my decision back'),
            help: t('DecisionSheet', 'The rules decide this tree again'),
            symbol: 'undo',
            act: () => act('takeBack', { tree: tree.tree }),
          })
        : null,
      words(t('DecisionSheet', 'Decide it yourself'), 'strong'),
      el(
        'div.grid.two',
        {},
        kVerdicts.map((one) => tap({ text: nameOf(one), symbol: iconOf(one), on: verdict === one, act: () => choose(one) })),
      ),
      verdict
        ? [
            words(t('DecisionSheet', 'Why?'), 'strong'),
            ...reasons.map(say).map((text) => tap({ text, look: 'small', on: why.value === text, act: () => takeReason(text) })),
            why,
          ]
        : null,
      tap({
        text: t('DecisionSheet', 'Look at this tree again'),
        help: t('DecisionSheet', 'Correct its species, size, crown and how it stands'),
        symbol: 'look',
        act: () => {
          sheet.close();
          const begin = { tree: tree.tree, contact: tree.contact };
          openWalkTree({ shell, begin, cautions: tree.cautions, saved: () => page.refresh() });
        },
      }),
      crop
        ? null
        : tap({
            text: t('DecisionSheet', 'Give it a card of its own'),
            symbol: 'light',
            act: () => act('makeCropTree', { tree: tree.tree }),
          }),
      el('div.apart', {}),
      tap({
        text: crop ? t('DecisionSheet', 'Remove this card') : t('DecisionSheet', 'Take it off this card'),
        help: t('DecisionSheet', 'Undo brings it back'),
        symbol: 'minus',
        act: remove,
      }),
    ],
    // Below all that scrolls: whoever told why finds at once how to go on.
    foot: () =>
      verdict
        ? tap({
            text: t('DecisionSheet', 'Decide: %1', nameOf(verdict)),
            look: 'main large',
            enabled: why.value.trim() !== '',
            act: () => act('overrule', { tree: tree.tree, verdict, reason: why.value.trim() }),
          })
        : null,
  });
}
