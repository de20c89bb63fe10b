// The tract file, what a person chooses once for this device, and what the page is.
import { device, setDevice } from './device.js';
import { chips, el, icon, tap, words } from './parts.js';
import { openFiles, putIn, takeOut } from './files.js';
import { openNewPlots, openNewStand } from './new_work.js';
import { takeNewest } from './update.js';
import { say, t } from './words.js';

export class SetupPage {
  constructor(shell, box) {
    this.shell = shell;
    this.box = box;
  }

  async show() {
    this.versionBox = el('div', {}, this.version());
    this.aboutBox = el('div.about', {}, this.about());
    const parts = [this.versionBox, this.files(), this.work(), el('div.settings', {}, this.settings()), this.aboutBox];
    this.box.replaceChildren(el('div.scroll', {}, el('div.read-width', {}, parts)));
  }

  refresh() {
    return this.show();
  }

  /// Only what tells of versions: no button moves away from under a finger.
  versionsChanged() {
    this.versionBox.replaceChildren(...[this.version()].filter(Boolean));
    this.aboutBox.replaceChildren(...this.about().filter(Boolean));
  }

  version() {
    if (!this.shell.versions.waits) return null;
    return el(
      'div.notice',
      { role: 'status' },
      icon('caution'),
      words(t('Web', 'A newer version waits. The page starts again with it; the tract stays as it is.')),
      tap({ text: t('Web', 'Take it over'), look: 'large', act: takeNewest }),
    );
  }

  files() {
    const { shell } = this;
    const { tract } = shell;
    const again = () => shell.show();
    return [
      el('h2', {}, t('FilesSheet', 'Tract files')),
      tract
        ? words(t('Web', 'Open: %1', tract.name ? `${tract.name} (${tract.file})` : tract.file), 'strong')
        : words(t('NoTract', 'No tract is open'), 'strong'),
      el(
        'div.grid.two.files',
        {},
        tract
          ? tap({
              text: t('Web', 'Take the file out'),
              sub: t('Web', 'A copy of all of it for the office, another tablet or a card'),
              look: 'main',
              act: () => takeOut(shell),
            })
          : null,
        tap({
          text: t('Web', 'Put a file in'),
          sub: t('Web', 'A tract file of the office or of another tablet'),
          act: () => putIn(shell, again),
        }),
        tap({
          text: t('FilesSheet', 'Make a new tract'),
          sub: t('Web', 'With its first stand'),
          act: () => openNewStand(shell, { newTract: true, done: again }),
        }),
        tap({
          text: t('FilesSheet', 'Tract files'),
          sub: t('Web', 'All that are kept in this browser'),
          act: () => openFiles(shell, again),
        }),
        tap({
          text: t('FilesSheet', 'Open the demo tract'),
          sub: t('DeskBar', 'DEMO: invented trees'),
          act: () => this.openDemo(),
        }),
      ),
      words(this.keptWords(), 'soft'),
    ];
  }

  /// What the browser said of keeping files when it was asked.
  keptWords() {
    return this.shell.core.kept
      ? t(
          'Web',
          'The browser keeps the file on this device only, and promised not to clear it away by itself. Take the file out after every day.',
        )
      : t(
          'Web',
          'The browser keeps the file on this device only, and may clear it away when room is short. Take the file out after every day.',
        );
  }

  async openDemo() {
    const { files } = await this.shell.ask('files');
    const file = 'demo.gpkg';
    const kept = files.some((one) => one.file === file);
    await this.shell.takeTract(kept ? 'open' : 'create', { file, demo: true });
    await this.shell.show();
  }

  work() {
    const { shell } = this;
    if (!shell.tract) return null;
    const again = () => shell.show();
    const stand = (one) => {
      const { total, planned } = one.plots;
      const count = total === 1 ? t('StandWords', '1 plot') : t('StandWords', '%1 plots', total);
      const plots = t('Web', '%1, %2 to do', count, planned);
      return el('p', {}, el('b', {}, one.name), ` ${one.area ?? ''} `, el('span.soft', {}, plots));
    };
    return [
      el('h2', {}, t('LightPage', 'Stands')),
      ...shell.tract.stands.map(stand),
      el(
        'div.grid.two',
        {},
        tap({
          text: t('TractOverview', 'Add a stand'),
          symbol: 'plus',
          act: () => openNewStand(shell, { newTract: false, done: again }),
        }),
        tap({
          text: t('PlotsSheet', 'Add plots'),
          symbol: 'plus',
          enabled: shell.tract.stands.length > 0,
          act: () => openNewPlots(shell, again),
        }),
      ),
    ];
  }

  settings() {
    const choice = (title, key, options, columns = 'two') =>
      chips({
        title,
        columns,
        options: options.map(([value, text]) => ({ text, on: device[key] === value, value, look: '' })),
        act: (one) => setDevice({ [key]: one.value }),
      });
    const sets = (this.shell.tract?.sets ?? []).map((one) => [one.key, one.label]);
    return [
      choice(
        t('SetupPage', 'Light'),
        'light',
        [
          ['day', t('SetupPage', 'Day')],
          ['bright', t('SetupPage', 'Bright sun')],
          ['night', t('SetupPage', 'Night')],
        ],
        'three',
      ),
      choice(t('SetupPage', 'Size of buttons'), 'gloves', [
        [true, t('SetupPage', 'For gloves')],
        [false, t('SetupPage', 'For bare hands')],
      ]),
      choice(t('SetupPage', 'Side of the buttons'), 'leftHand', [
        [true, t('SetupPage', 'Left hand')],
        [false, t('SetupPage', 'Right hand')],
      ]),
      choice(t('SetupPage', 'Units'), 'system', [
        ['us', t('SetupPage', 'in, ac')],
        ['metric', t('SetupPage', 'cm, ha')],
      ]),
      choice(t('SetupPage', 'Language'), 'language', [
        ['en', 'English'],
        ['es', 'Español'],
      ]),
      sets.length > 0
        ? choice(
            t('SetupPage', 'Species first in the tally'),
            'set',
            sets.map(([key, label]) => [key, say(label)]),
            'one',
          )
        : null,
    ].filter(Boolean);
  }

  about() {
    const { versions } = this.shell;
    const kept = versions.none
      ? t(
          'Web',
          'This browser does not keep the page: it needs its server each time. Serve it by https, or from this device itself.',
        )
      : versions.inUse
        ? t('Web', 'Version %1 is kept on this device: it starts with no network.', versions.inUse.replace('oaklight-', ''))
        : '';
    return [
      el('h2', {}, t('SetupPage', 'About Oaklight')),
      words(t('SetupViewModel', kLookUp)),
      words(t('SetupViewModel', "Local codes, the product label, the saw's manual and licensed people always govern.")),
      words(kept),
      words(t('SetupViewModel', 'Typeface Noto Sans, under the SIL Open Font License, version 1.1.'), 'soft'),
    ];
  }
}

const kLookUp =
  'No app replaces looking up. Oaklight is a reminder and a record. It is not training, a permit, a survey, or a check that a tree is safe to fell.';
