// What is marked and what it amounts to. What may hurt somebody stands first in each row.
import { shape } from './device.js';
import { cautionLines, chips, el, icon, words } from './parts.js';
import { closedTold } from './plots.js';
import { openSheet } from './sheet.js';
import { say, sentence, t } from './words.js';

const kMost = 60; // rows asked for at a time

/// A chip of the verdicts as what is asked for.
const filterOf = (word) => ({
  verdict: word === null || word === 'undecided' ? undefined : word,
  undecided: word === 'undecided' || undefined,
});

export class MarksPage {
  constructor(shell, box) {
    this.shell = shell;
    this.box = box;
    this.filter = shell.marksFilter ?? {};
    this.turn = 0;
  }

  async show() {
    if (!this.shell.tract) return this.box.replaceChildren(...closedTold(this.shell));
    this.list = el('div.rows', {});
    this.end = el('div.end', {}, ''); // when it comes into sight, more rows are asked for
    this.tag = el('input', {
      type: 'search',
      inputmode: 'text',
      placeholder: t('MarkFilters', 'Find a tag'),
      'aria-label': t('MarkFilters', 'Find a tag'),
      autocomplete: 'off',
      oninput: () => this.choose({ tag: this.tag.value.trim() || undefined }),
    });
    this.tag.value = this.filter.tag ?? '';
    this.verdicts = el('div', {});
    this.totals = el('div.totals', {});
    this.beside = el('div', {}); // before any tree
    const filters = el('div.filters', {}, this.tag, this.verdicts, this.totals);
    const rows = el('div.scroll', {}, this.beside, shape.wide ? null : filters, this.list, this.end);
    this.box.replaceChildren(shape.wide ? el('div.two-columns', {}, rows, el('div.scroll.column', {}, filters)) : rows);
    this.sight = new IntersectionObserver((seen) => seen.some((one) => one.isIntersecting) && this.askMore(), {
      root: rows,
      rootMargin: '600px',
    });
    await this.refresh();
  }

  leave() {
    this.sight?.disconnect();
  }

  choose(filter) {
    this.filter = { ...this.filter, ...filter };
    this.shell.marksFilter = this.filter;
    return this.refresh();
  }

  async refresh() {
    const turn = (this.turn += 1);
    this.sight.unobserve(this.end);
    const marks = await this.ask(0);
    if (turn !== this.turn) return; // another filter was chosen meanwhile
    this.fillFilters(marks);
    this.list.replaceChildren(...marks.rows.map((one) => this.row(one)));
    this.more = marks.more;
    if (marks.rows.length === 0) this.list.replaceChildren(words(t('Web', 'No tree of the walk is so.'), 'soft'));
    this.sight.observe(this.end);
  }

  ask(from) {
    return this.shell.ask('marks', { filter: this.filter, from, most: kMost });
  }

  async askMore() {
    if (!this.more) return;
    this.more = false; // until these have come
    const turn = this.turn;
    const marks = await this.ask(this.list.childElementCount);
    if (turn !== this.turn) return;
    this.list.append(...marks.rows.map((one) => this.row(one)));
    this.more = marks.more;
    this.sight.unobserve(this.end);
    this.sight.observe(this.end);
  }

  fillFilters(marks) {
    const chosen = this.filter.undecided ? 'undecided' : (this.filter.verdict ?? null);
    const options = marks.verdicts.map((one) => ({ ...one, text: say(one.label), on: one.word === chosen }));
    this.verdicts.replaceChildren(
      chips({ options, columns: shape.wide || shape.phone ? 'two' : 'three', act: (one) => this.choose(filterOf(one.word)) }),
    );
    this.beside.replaceChildren(...cautionLines([{ severity: 'extra_care', words: marks.beside }], say));
    const totals = (marks.totals ?? []).map((one) => el('p.boxed', {}, say(one)));
    this.totals.replaceChildren(words(say(marks.shown), 'strong'), ...totals);
  }

  row(one) {
    const cautions = one.cautions.filter((caution) => caution.severity !== 'note');
    const placed = one.placed ? t('MarkListModel', 'on the map') : t('MarkListModel', 'no position');
    return el(
      'button.row.mark',
      { type: 'button', onclick: () => this.open(one.tree) },
      cautions.length > 0 ? el('span.cautions', {}, cautionLines(cautions, say)) : null,
      el('b.lead', {}, one.tag),
      el(
        'span.what',
        {},
        el('b', {}, say(one.title)),
        el('span.sub', {}, one.work ? t('MarkRow', '%1; %2', one.work, placed) : placed),
      ),
      el('span.verdict-cell', {}, icon(one.icon), el('b', {}, say(one.verdictWords))),
    );
  }

  /// One marked tree: what may hurt somebody first, then what is decided and why.
  async open(tree) {
    let mark;
    try {
      mark = await this.shell.ask('mark', { tree });
    } catch (error) {
      this.shell.refuse(sentence(error));
      return;
    }
    openSheet({
      title: say(mark.title),
      fill: () => [
        cautionLines(mark.cautions, say),
        words(say(mark.beside)),
        el('p.verdict', {}, icon(mark.icon), el('b', {}, say(mark.verdictWords))),
        words(say(mark.reason)),
        ...mark.facts.map((one) => words(say(one))),
        words(say(mark.rules), 'sub'),
      ],
    });
  }
}
