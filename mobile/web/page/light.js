// Crop tree cards: stand at the oak, touch the four sides, name the neighbours; what goes is told at once.
import { showCard } from './card.js';
import { device, shape } from './device.js';
import { cautionLines, el, icon, problem, tap, words } from './parts.js';
import { openChoice, openSheet } from './sheet.js';
import { closedTold } from './plots.js';
import { openWalkTree } from './walk_tree.js';
import { say, t } from './words.js';

export class LightPage {
  constructor(shell, box) {
    this.shell = shell;
    this.box = box;
    this.allGuards = false;
    this.notice = '';
  }

  get stand() {
    const { stands } = this.shell.tract;
    return stands.find((one) => one.id === this.shell.stand) ?? stands.find((one) => one.cards > 0) ?? stands[0] ?? null;
  }

  async show() {
    if (!this.shell.tract) return this.box.replaceChildren(...closedTold(this.shell));
    if (this.shell.card) return showCard(this, this.shell.card);
    await this.showList();
  }

  /// After undo, redo and every change.
  async refresh() {
    const top = this.box.querySelector('.scroll')?.scrollTop ?? 0;
    this.shell.tract = await this.shell.ask('tract');
    await this.show();
    const scroll = this.box.querySelector('.scroll');
    if (scroll) scroll.scrollTop = top;
  }

  openCard(crop) {
    this.shell.card = crop;
    this.notice = '';
    return this.show();
  }

  async showList() {
    const stand = this.stand;
    if (!stand) {
      return this.box.replaceChildren(
        el('div.narrow', {}, words(t('Web', 'This tract has no stand. Add one under Setup.'), 'big')),
      );
    }
    const light = await this.shell.ask('light', { stand: stand.id });
    const row = (one) =>
      el(
        'button.row',
        { type: 'button', onclick: () => this.openCard(one.crop) },
        el('b.lead', {}, one.tag),
        el('span.what', {}, el('b', {}, say(one.tree)), el('span.sub', {}, say(one.sides))),
        one.before ? el('b.figure-cell', {}, t('CardRow', '%1 → %2', one.before, one.after)) : null,
      );
    // Before any list that sends somebody to a tree.
    const lookUp = {
      severity: 'extra_care',
      words: t('MarkedTreeViewModel', 'Look up and around yourself too: no record shows everything.'),
    };
    const list = el('div.rows', {}, cautionLines([lookUp], say), light.cards.map(row));
    const advice = el('div.advice', {}, this.advice(stand, light));
    this.box.replaceChildren(
      shape.wide
        ? el('div.two-columns', {}, el('div.scroll', {}, list), el('div.scroll.column', {}, advice))
        : el('div.scroll', {}, advice, list),
      el(
        'div.foot-buttons',
        {},
        tap({ text: t('CardList', 'New crop tree'), symbol: shape.phone ? undefined : 'plus', act: () => this.newCropTree() }),
        tap({
          text: t('CardList', 'Decide this stand'),
          help: t('CardList', 'Stores what is advised. What was decided by hand stays'),
          look: 'main',
          enabled: light.cards.length > 0,
          act: () => this.decide(stand),
        }),
      ),
    );
  }

  advice(stand, light) {
    const { stands } = this.shell.tract;
    const several = stands.length > 1;
    const none = light.cards.length === 0;
    const told = light.problem
      ? say(light.problem)
      : none
        ? t('StandAdvice', 'No crop tree cards in this stand. Stand at a good oak and make the first.')
        : '';
    return [
      tap({
        text: stand.name,
        sub: several ? t('StandAdvice', 'Stand. Tap for another') : t('StandAdvice', 'Stand'),
        act: () => several && this.chooseStand(),
      }),
      words(told),
      told ? null : words(say(light.advice)),
      light.unwalked ? this.askWalked(stand) : null,
      this.notice ? el('p.strong', { role: 'status' }, this.notice) : null,
      none || light.problem ? null : this.guards(light.guards),
    ].filter(Boolean);
  }

  /// How near the stand is to each floor and ceiling, in words and as a bar; those that hold with room to spare on request.
  guards(guards) {
    if (guards.length === 0) {
      return words(t('GuardRows', 'Guards are not known yet: they need the plots of the stand, and how much of it was walked.'));
    }
    const calm = guards.filter((one) => one.state === 'holds');
    const shown = this.allGuards ? guards : guards.filter((one) => one.state !== 'holds');
    const row = (one) =>
      el(
        'div.guard',
        {},
        el(
          'p',
          {},
          icon(one.state === 'holds' ? 'tick' : 'caution'),
          el('b', {}, say(one.stateWords)),
          el('span.sub', {}, one.rule),
        ),
        words(say(one.words)),
        bar(one),
      );
    return [
      words(t('GuardRows', 'Guards of the stand, with the marked trees gone'), 'strong'),
      ...shown.map(row),
      tap({
        text: this.allGuards
          ? t('GuardRows', 'Show those near their limit only')
          : t('GuardRows', '%1 of %2 hold: show them', calm.length, guards.length),
        look: 'small',
        act: () => {
          this.allGuards = !this.allGuards;
          this.refresh();
        },
      }),
    ];
  }

  askWalked(stand) {
    return el(
      'div',
      {},
      el(
        'p.strong',
        { role: 'alert' },
        t(
          'WalkedAsk',
          'Nobody said how much ground the marking walk covered. Without it no tree can be put on a cutting list: each is to look at again.',
        ),
      ),
      tap({
        text: t('WalkedAsk', 'Say how much was walked'),
        look: 'main',
        act: () => openWalked(this.shell, stand, () => this.refresh()),
      }),
    );
  }

  chooseStand() {
    openChoice({
      title: t('LightPage', 'Stands'),
      options: this.shell.tract.stands.map((one) => ({ text: one.name, id: one.id, on: one.id === this.stand.id })),
      act: (one) => {
        this.shell.stand = one.id;
        this.notice = '';
        this.show();
      },
    });
  }

  newCropTree() {
    openWalkTree({ shell: this.shell, begin: { stand: this.stand.id }, saved: (crop) => this.openCard(crop) });
  }

  async decide(stand) {
    const done = await this.shell.act('decide', { stand: stand.id });
    if (done) this.notice = say(done.notice);
    await this.refresh();
  }
}

/// A bar of how much of the whole a guard uses, with its limit; `share` and `limit` are core's, of 0 to 1.
function bar({ share, limit, state }) {
  const made = el('div.share-bar', { 'aria-hidden': 'true' }, el(`i.share.${state}`), el('i.limit'));
  made.style.setProperty('--share', share);
  made.style.setProperty('--limit', limit);
  return made;
}

export function openWalked(shell, stand, changed) {
  const metric = device.system === 'metric';
  const label = metric ? t('StandSheet', 'Walked for marking, ha') : t('StandSheet', 'Walked for marking, acres');
  const line = el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', 'aria-label': label });
  const told = el('div', {});
  openSheet({
    title: stand.name,
    fill: () => [
      told,
      el('label', {}, label, line),
      words(t('StandSheet', 'Without it no tree of this stand is put on a cutting list'), 'soft'),
    ],
    foot: (sheet) =>
      tap({
        text: t('StandSheet', 'Save stand'),
        look: 'main large',
        act: async () => {
          const done = await shell.act('changeStand', {
            stand: stand.id,
            [metric ? 'walkedHectares' : 'walked']: numberTyped(line.value),
          });
          if (!done) return told.replaceChildren(problem(shell.why));
          sheet.close();
          await changed();
        },
      }),
  });
  line.focus();
}

/// A number as a person typed it, a comma being a point: core reads it, or refuses it in its own words.
export const numberTyped = (text) => text.trim().replace(',', '.');
