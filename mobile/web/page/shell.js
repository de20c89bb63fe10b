// Around every page: where one is, whose tract it is, undo and redo, and what went wrong.
import { device, onDevice, onShape, setDevice, shape } from './device.js';
import { LightPage } from './light.js';
import { MarksPage } from './marks.js';
import { el, fit, fitAll, icon, tap, words } from './parts.js';
import { SetupPage } from './setup.js';
import { closeSheets, openSheet } from './sheet.js';
import { TallyPage } from './tally.js';
import { sentence, t } from './words.js';

const kPages = [
  { key: 'tally', name: () => t('AppModel', 'Tally'), symbol: 'tally', Page: TallyPage },
  { key: 'light', name: () => t('AppModel', 'Light'), symbol: 'light', Page: LightPage },
  { key: 'marks', name: () => t('AppModel', 'Marks'), symbol: 'marks', Page: MarksPage },
  { key: 'setup', name: () => t('AppModel', 'Setup'), symbol: 'setup', Page: SetupPage },
];

// A disk may recover, so what failed on it is kept for another try; all else is refused for good.
const kOfTheDisk = new Set(['disk_full', 'io_failed', 'busy']);

// Settings after which the page looks another way.
const kLook = ['light', 'gloves', 'leftHand', 'system', 'language', 'set'];

export class Shell {
  constructor(core, root) {
    this.core = core;
    this.tract = null;
    this.undo = { undo: null, redo: null };
    this.versions = { waits: false };
    this.refusal = '';
    this.unsaved = null; // {error, retry}
    this.lost = null;
    this.rail = el('nav.rail', {});
    this.bar = el('header.bar', {});
    this.notices = el('div.notices', {});
    this.main = el('main', { id: 'page', tabindex: '-1' });
    root.replaceChildren(this.rail, el('div.right', {}, this.bar, this.notices, this.main));
    core.onlost = (error) => {
      this.lost = error;
      this.showNotices();
    };
    onDevice((changes) => {
      if (kLook.some((one) => one in changes)) this.show();
    });
    onShape(() => this.show());
    addEventListener('hashchange', () => this.show());
    addEventListener('keydown', (event) => this.onKey(event));
  }

  /// What is asked for and changes nothing. Rejects with what core says.
  ask(name, args = {}) {
    return this.core.call(name, { system: device.system, ...args });
  }

  /// What changes the tract: resolves once it is stored. What the disk refused stays here until it is stored on another try,
  /// and nothing else is recorded before; what core refused is told, and answers null.
  async act(name, args = {}) {
    if (this.unsaved) {
      this.showNotices();
      return null;
    }
    try {
      const answer = await this.core.call(name, { system: device.system, ...args });
      if (answer?.undo) this.setUndo(answer.undo);
      if (this.refusal) this.refuse('');
      return answer ?? {};
    } catch (error) {
      if (kOfTheDisk.has(error.code) && name !== 'open') return this.waitForRetry(error, name, args);
      // The program began again: whether this step was stored is seen by what is there.
      if (error.code === 'lost' && !this.lost) await this.show();
      this.refuse(sentence(error));
      return null;
    }
  }

  waitForRetry(error, name, args) {
    return new Promise((resolve) => {
      const retry = async () => {
        this.unsaved = null;
        resolve(await this.act(name, args));
        this.showNotices();
      };
      this.unsaved = { error, retry };
      closeSheets(); // the notice and its button lie under them
      this.showNotices();
    });
  }

  /// Why the last step was not recorded, for a sheet that lies over the notices.
  get why() {
    return this.unsaved ? t('ProblemBar', 'NOT SAVED. %1', sentence(this.unsaved.error)) : this.refusal;
  }

  refuse(words) {
    this.refusal = words;
    this.showNotices();
  }

  setUndo(undo) {
    this.undo = undo;
    this.showBar();
  }

  setVersions(versions) {
    this.versions = versions;
    this.showRail();
    this.showNotices();
    this.page?.versionsChanged?.();
  }

  /// A plot is open on the page Tally: nothing of the program may change under the hands.
  get inPlot() {
    return this.entry.key === 'tally' && this.page?.inPlot === true;
  }

  /// Opens a tract file, or makes one, in place of the one that is open. What is refused leaves that open, and answers false.
  async takeTract(call, args) {
    const tract = await this.act(call, args);
    if (tract) await this.setTract(tract);
    return tract !== null;
  }

  async setTract(tract) {
    if (tract.file !== this.tract?.file) {
      this.card = null;
      this.stand = null;
      this.marksFilter = undefined;
    }
    this.tract = tract;
    this.undo = tract.undo;
    await setDevice(tract.file === device.file ? {} : { file: tract.file, plot: '' });
    this.core.askToKeep();
  }

  /// The tract that was open when the page was last closed.
  async openLast() {
    try {
      const { open, files } = await this.ask('files');
      const file = open ?? (files.some((one) => one.file === device.file) ? device.file : null);
      if (file) this.tract = await this.ask(open ? 'tract' : 'open', open ? {} : { file });
      this.undo = this.tract?.undo ?? this.undo;
    } catch (error) {
      this.refusal = `${sentence(error)} ${t('Web', 'Under Setup, Tract files, it can be taken out as it is for oaklight rescue.')}`;
    }
    if (!this.tract && location.hash !== '#setup') location.hash = '#setup';
    await this.show();
  }

  get entry() {
    return kPages.find((one) => `#${one.key}` === location.hash) ?? kPages[0];
  }

  go(key) {
    if (location.hash === `#${key}`) this.show();
    else location.hash = `#${key}`;
  }

  async show() {
    document.title = `Oaklight: ${this.entry.name()}`;
    this.showRail();
    this.showBar();
    this.page?.leave?.();
    this.page = new this.entry.Page(this, this.main);
    this.main.className = `page ${this.entry.key}`;
    this.main.setAttribute('aria-label', this.entry.name());
    const page = this.page;
    try {
      await page.show();
    } catch (error) {
      if (page === this.page) this.main.replaceChildren(el('p.problem', { role: 'alert' }, icon('caution'), sentence(error)));
      if (!error.code) console.error(error); // a fault of the page itself
    }
    fitAll(this.main);
    this.showNotices();
  }

  showRail() {
    // A tab under a finger is not replaced by itself.
    const now = [this.entry.key, this.versions.waits, device.language].join();
    if (this.railShown === now) return;
    this.railShown = now;
    // In the middle of a plot a newer version is told so quietly that no cell moves.
    const waits = (one) => (this.versions.waits && one.key === 'setup' ? el('span.sub', {}, t('Web', 'newer version')) : null);
    const tab = (one) =>
      el(
        `a.tab${waits(one) ? '.waits' : ''}`,
        { href: `#${one.key}`, 'aria-current': one === this.entry ? 'page' : null },
        icon(one.symbol),
        el('span', {}, one.name()),
        waits(one),
      );
    this.rail.replaceChildren(...kPages.map(tab));
    this.rail.setAttribute('aria-label', t('PageSheet', 'Pages'));
  }

  showBar() {
    const mode = this.tract?.demo ? t('DeskBar', 'DEMO: invented trees') : '';
    const title = this.tract?.name || this.tract?.file || 'Oaklight';
    const whose = shape.phone && mode ? t('DeskBar', 'DEMO. %1', title) : title;
    const undo = this.undo.undo ?? '';
    const redo = this.undo.redo ?? '';
    this.bar.replaceChildren(
      tap({
        text: this.entry.name(),
        symbol: shape.phone ? undefined : 'pages',
        look: 'pages-button',
        help: t('DeskBar', 'Shows the names of all pages'),
        atTree: true,
        act: () => this.openPages(),
      }),
      el('div.whose', {}, el('b', {}, whose), shape.phone ? null : mode && el('span', {}, mode)),
      tap({
        text: t('DeskBar', 'Undo'),
        symbol: 'undo',
        look: shape.phone ? 'large bare undo' : 'large undo',
        spoken: undo ? t('Web', 'Undo: %1', undo) : t('DeskBar', 'Undo'),
        enabled: undo !== '',
        atTree: true,
        act: () => this.step('undo'),
      }),
      tap({
        text: t('DeskBar', 'Redo'),
        symbol: 'redo',
        look: 'bare redo',
        spoken: redo ? t('Web', 'Redo: %1', redo) : t('DeskBar', 'Redo'),
        enabled: redo !== '',
        atTree: true,
        act: () => this.step('redo'),
      }),
    );
    for (const line of this.bar.querySelectorAll('.whose > *')) fit(line);
  }

  async step(which) {
    const done = await this.act(which);
    if (done) await (this.page.refresh?.() ?? this.show());
  }

  openPages() {
    openSheet({
      title: t('PageSheet', 'Pages'),
      fill: (sheet) =>
        kPages.map((one) =>
          tap({
            text: one.name(),
            symbol: one.symbol,
            on: one === this.entry,
            act: () => {
              sheet.close();
              this.go(one.key);
            },
          }),
        ),
    });
  }

  showNotices() {
    const row = (text, button, look = '') =>
      el(`div.notice${look}`, { role: 'alert' }, icon('caution'), words(text), button && tap({ look: 'large', ...button }));
    const all = [];
    if (this.lost) {
      const text = t('Web', 'Oaklight stopped: %1 What was acknowledged is stored.', sentence(this.lost));
      all.push(row(text, { text: t('Web', 'Start again'), act: () => location.reload() }));
    } else if (this.unsaved) {
      all.push(row(this.why, { text: t('ProblemBar', 'Try again'), act: () => this.unsaved.retry() }, '.strong'));
    }
    if (this.refusal) all.push(row(this.refusal, { text: t('ProblemBar', 'All right'), act: () => this.refuse('') }));
    if (this.versions.waits && this.entry.key !== 'setup' && !this.inPlot) {
      all.push(
        row(t('Web', 'A newer version waits. Take it over under Setup.'), {
          text: t('AppModel', 'Setup'),
          act: () => this.go('setup'),
        }),
      );
    }
    this.notices.replaceChildren(...all);
  }

  onKey(event) {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || document.querySelector('dialog')) return;
    event.preventDefault();
    const which = event.shiftKey ? 'redo' : 'undo';
    if (this.undo[which]) this.step(which);
  }
}
