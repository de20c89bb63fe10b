// One crop tree card: the crown, its sides, and each tree with its verdict.
import { crownSides, sideName } from './crown.js';
import { openDecision } from './decision.js';
import { shape } from './device.js';
import { cautionLines, el, icon, iconOf, tap, words } from './parts.js';
import { openSheet } from './sheet.js';
import { openWalkTree } from './walk_tree.js';
import { say, sentence, t } from './words.js';

export async function showCard(page, crop) {
  const { shell, box } = page;
  let card;
  try {
    card = await shell.ask('card', { crop });
  } catch (error) {
    shell.card = null; // it is no card any more
    shell.refuse(sentence(error));
    return page.show();
  }
  const back = tap({
    text: t('OpenCard', 'All cards'),
    act: () => {
      shell.card = null;
      page.show();
    },
  });
  const crown = crownSides(card, (side) => openSide(page, card, side));
  // What may hurt at the crop tree stands above its light already.
  const trees = card.trees.map((one) => treeRow(page, card, one, one.tree === card.crop ? [] : one.cautions));
  const head = el('div.card-head', {}, back, el('h2', {}, say(card.title)));
  const cautions = cautionLines(card.cautions, say);
  const light = el('div.light-now', {}, figure(card, 0), icon('arrow'), figure(card, 1));
  if (shape.wide) {
    box.replaceChildren(
      el('div.two-columns.card', {}, crown, el('div.card-trees', {}, head, el('div.scroll', {}, cautions, light, trees))),
    );
  } else {
    box.replaceChildren(head, el('div.scroll', {}, cautions, light, crown, trees));
  }
}

function figure(card, which) {
  return el('div', {}, el('p.figure', {}, say(card.light[which])), el('p.soft', {}, say(card.lightWords[which])));
}

/// One tree of a card: what may hurt first, then shape and word, why, and what would change it.
function treeRow(page, card, tree, cautions) {
  return el(
    'button.tree-row',
    { type: 'button', onclick: () => openDecision({ page, card, tree }) },
    cautionLines(cautions, say),
    el('p.verdict', {}, icon(iconOf(tree.verdict)), el('b', {}, say(tree.verdictWords))),
    el('b', {}, say(tree.title)),
    el('p.soft', {}, t('CardTreeRow', '%1; %2', tree.standing, tree.origin)),
    words(say(tree.reason)),
    words(say(tree.change), 'soft'),
    words(say(tree.rules), 'sub'),
  );
}

/// What a person sees on one side of the crown.
function openSide(page, card, side) {
  const { shell } = page;
  openSheet({
    title: t('SideSheet', '%1: %2', sideName(side.side), side.words),
    fill: (sheet) => {
      const act = async (call) => {
        await shell.act(call, { crop: card.crop, side: side.side });
        sheet.close();
        await page.refresh();
      };
      return [
        words(t('SideSheet', 'Stand at the stem, face this side, look up: what crowds the crown?')),
        tap({ text: t('SideSheet', 'Looked: it is open'), symbol: 'tick', act: () => act('lookOpen') }),
        tap({
          text: t('SideSheet', 'A neighbour stands here'),
          symbol: 'plus',
          look: 'main',
          act: () => {
            sheet.close();
            openWalkTree({ shell, begin: { crop: card.crop, side: side.side }, saved: () => page.refresh() });
          },
        }),
        side.looked ? tap({ text: t('SideSheet', 'Nobody looked after all'), act: () => act('unlook') }) : null,
      ].filter(Boolean);
    },
  });
}
