// One gesture, one tree: press a species, slide to the diameter, lift. Or tap the one, then the other. A tree is shown, and
// counts, when it is stored.
import { device, setDevice, shape } from './device.js';
import { Field } from './field.js';
import { el, fit, fitAll, tap, words } from './parts.js';
import { closedTold, openPlots, openSlope } from './plots.js';
import { openKeypad, openSheet } from './sheet.js';
import { openSpecies } from './species.js';
import { openFigures } from './stand.js';
import { openTree, openTrees } from './tree.js';
import { say, sentence, t } from './words.js';

const kDoubleTapMs = 350; // nobody measures a second tree so soon; a bouncing finger does
const kLateMs = 250; // longer than this a tree that is not stored yet is told
const kHoldMs = 1000; // rain does not hold a button so long

export class TallyPage {
  constructor(shell, box) {
    this.shell = shell;
    this.box = box;
    this.plot = null;
    this.pinned = null; // a species, as core told it
    this.reading = '';
    this.pointed = '';
    this.doubt = '';
    this.locked = false;
    this.lastTouch = null; // {place, species, size, at}
  }

  get inPlot() {
    return this.plot !== null;
  }

  get usable() {
    return this.plot !== null && !this.plot.closed && !this.locked;
  }

  async show() {
    if (!this.shell.tract) return this.box.replaceChildren(...closedTold(this.shell));
    this.field = new Field({
      tappedSpecies: (row) => this.tapSpecies(row),
      chosen: (species, row) => this.tapClass(species, row),
      other: () => this.askOther(),
      point: (species, row) => this.point(species, row),
      usable: () => this.usable,
    });
    this.readingBar = el('div.reading', {});
    this.lastBox = el('div.last', {});
    this.actions = el('div.actions', {});
    this.lockCover = el('div.lock-cover', { hidden: true }, t('TallyField', 'Locked against rain'));
    const fieldBox = el('div.field-box', {}, this.field.box, this.lockCover);
    if (shape.wide) {
      this.plotLine = el('b.plot-line', {});
      const side = el('div.side', {}, this.plotLine, this.lastBox, this.actions);
      this.box.replaceChildren(el('div.tally-main', {}, this.readingBar, fieldBox), side);
    } else {
      this.plotLine = null;
      const turn = el('p.turn', {}, t('Web', 'Hold the phone upright to tally.')); // shown on its side only
      this.box.replaceChildren(this.readingBar, fieldBox, this.lastBox, this.actions, turn);
    }
    await this.enter();
    this.sizes = new ResizeObserver(() => this.resized());
    this.sizes.observe(this.field.box);
  }

  leave() {
    this.sizes?.disconnect();
    clearTimeout(this.late);
  }

  async resized() {
    const before = JSON.stringify(this.field.room);
    this.field.measure();
    if (JSON.stringify(this.field.room) !== before && !this.field.fingerHere) await this.enter();
  }

  /// Asks for all that shows of the plot at which the person stands.
  async enter() {
    const room = this.field.measure();
    try {
      this.plot = device.plot ? await this.shell.ask('plot', { plot: device.plot, room, set: device.set || undefined }) : null;
    } catch (error) {
      this.plot = null;
      this.shell.refuse(sentence(error));
    }
    if (this.plot === null) return this.box.replaceChildren(...closedTold(this.shell, () => this.openPlots()));
    this.field.fill(this.plot);
    this.lastTouch = null;
    this.doubt = '';
    this.reading = this.plot.last.length > 0 ? say(this.plot.last[0].text) : '';
    this.showPin();
    this.showAll();
  }

  /// After undo, redo and changes to a tree: the cells stay where they are.
  async refresh() {
    if (!this.plot) return this.enter();
    const now = await this.shell.ask('plot', { plot: device.plot, room: this.field.room.room, set: device.set || undefined });
    this.lastTouch = null; // whoever undoes a tree does not bounce
    Object.assign(this.plot, { closed: now.closed, last: now.last, count: now.count, figures: now.figures, stand: now.stand });
    this.say(now.last.length > 0 ? say(now.last[0].text) : '', '');
    this.showAll();
  }

  showAll() {
    this.showReading();
    this.showLast();
    this.showActions();
    if (this.plotLine) this.plotLine.textContent = say(this.plot.name);
  }

  say(reading, doubt) {
    this.pointed = '';
    this.reading = reading;
    this.doubt = doubt;
    this.showReading();
  }

  get hint() {
    const { closed, counting, stand } = this.plot;
    if (closed) return say(closed);
    if (this.doubt) return this.doubt;
    if (shape.phone) return this.pinned ? say(this.pinned.name) : '';
    if (this.pinned) return stand?.text ? say(stand.text) : t('ReadingBar', 'Pinned: %1', this.pinned.name);
    return counting
      ? t('ReadingBar', 'Press a species, slide to Count, lift')
      : t('ReadingBar', 'Press a species, slide to the diameter, lift');
  }

  showReading() {
    const { figures, name } = this.plot;
    this.readingBar.classList.toggle('doubted', this.doubt !== '');
    const ba = !shape.phone || this.doubt === '' ? figures.ba : '';
    this.readingBar.replaceChildren(
      el(
        'div.read',
        {},
        el('p.figure.one-line', { 'aria-live': 'polite', id: 'reading' }, this.pointed || this.reading || say(name)),
        el(
          'p.hint.one-line',
          {},
          ba && el('b', { 'aria-label': t('ReadingBar', 'Basal area: %1', ba) }, ba),
          el('span', {}, this.hint),
        ),
      ),
      el(
        'div.stems',
        { 'aria-label': `${figures.stems} ${t('ReadingBar', 'trees')}`, role: 'img' },
        el('p.figure', { id: 'stems' }, figures.stems),
        shape.phone ? null : el('p', {}, t('ReadingBar', 'trees')),
      ),
    );
    for (const line of this.readingBar.querySelectorAll('.one-line')) fit(line);
  }

  showLast() {
    const one = (line) =>
      tap({
        text: line.doubt ? t('TallyViewModel', '%1, large?', line.text) : say(line.text),
        look: shape.phone ? 'small-words' : '',
        help: t('LastTrees', 'Opens this tree'),
        atTree: true,
        act: () => this.openTree(line.tree),
      });
    this.lastBox.replaceChildren(...this.plot.last.map(one));
    fitAll(this.lastBox);
  }

  showActions() {
    const { counting, beyond, last } = this.plot;
    const keypad = {
      text: beyond ? t('TallyActions', 'Keypad: %1', beyond) : t('TallyActions', 'Keypad'),
      spoken: t('TallyActions', 'Keypad'),
      help: t('TallyActions', 'Type a measured diameter, or one that has no cell'),
      on: device.typed,
      enabled: this.usable,
      act: () => this.askDigits(),
    };
    const again = {
      text: t('TallyActions', 'Same again'),
      help: t('TallyActions', 'One more tree like the last'),
      enabled: this.usable && (last.length > 0 || counting),
      act: () => this.again(),
    };
    const more = { text: t('TallyActions', 'More'), act: () => this.openMore() };
    const next = { text: t('TallyActions', 'Next plot'), look: 'tall next', act: () => this.openPlots() };
    const rest = shape.phone ? [] : [tap({ ...next, atTree: true }), this.lockButton()];
    this.actions.replaceChildren(
      ...[counting ? null : keypad, again, more].filter(Boolean).map((one) => tap({ ...one, atTree: true })),
      ...rest,
    );
    fitAll(this.actions);
  }

  /// Locks the tally against rain and sleeves. Held for a second, so that rain cannot do it.
  lockButton() {
    const button = el(
      'button.tap.tall.still',
      { type: 'button', 'aria-pressed': String(this.locked) },
      el('span.label', {}, this.locked ? t('RainLock', 'Hold to unlock') : t('RainLock', 'Hold to lock')),
    );
    let timer = 0;
    button.addEventListener('pointerdown', () => (timer = setTimeout(() => this.lock(!this.locked), kHoldMs)));
    for (const end of ['pointerup', 'pointercancel', 'pointerleave']) button.addEventListener(end, () => clearTimeout(timer));
    button.addEventListener('contextmenu', (event) => event.preventDefault());
    button.addEventListener('click', (event) => event.detail === 0 && this.lock(!this.locked)); // a keyboard does not rain
    return button;
  }

  lock(locked) {
    this.locked = locked;
    this.lockCover.hidden = !locked;
    this.showActions();
    if (locked && shape.phone) this.more?.close();
  }

  pin(species) {
    this.pinned = species;
    this.showPin();
  }

  showPin() {
    const row = this.pinned ? this.plot.species.findIndex((one) => one.code === this.pinned.code) : -1;
    this.field.pin(row, this.pinned ? say(this.pinned.name) : '');
  }

  point(speciesRow, classRow) {
    if (!this.plot) return;
    const species = this.plot.species[speciesRow];
    const size = this.plot.classes[classRow];
    let text = species ? say(species.name) : '';
    if (size && !this.plot.counting)
      text = t('TallyViewModel', '%1 %2', (species ?? this.pinned)?.name ?? '', size.reading ?? size.label);
    if (text === this.pointed) return;
    this.pointed = text;
    this.showReading();
  }

  tapSpecies(row) {
    // Where the species came back under the finger that chose a class, it is the same finger bouncing.
    if (this.field.room.over && this.lastTouch?.place === 'classes' && this.soon())
      return this.say(this.reading, t('TallyViewModel', 'double?'));
    this.pin(this.plot.species[row]);
    this.askSize();
    this.showReading();
  }

  /// After a species, its size: by the class field, or by keypad.
  askSize() {
    this.field.open(!device.typed || this.plot.counting);
    if (device.typed && !this.plot.counting) this.askDigits();
  }

  tapClass(speciesRow, classRow) {
    const species = this.plot.species[speciesRow];
    if (species) this.pin(species);
    this.field.open(false); // where the classes lie over the species: on to the next tree's species
    if (!this.pinned) return this.say(this.reading, t('TallyViewModel', 'Choose a species first.'));
    if (this.plot.counting) this.record('classes', 'count', { species: this.pinned.code, step: 1 });
    else this.record('classes', 'tally', { species: this.pinned.code, tenths: this.plot.classes[classRow].tenths });
  }

  again() {
    if (this.field.fingerHere) return;
    if (!this.plot.counting) this.record('again', 'again', {});
    else if (this.pinned) this.record('again', 'count', { species: this.pinned.code, step: 1 });
  }

  soon() {
    return performance.now() - this.lastTouch.at < kDoubleTapMs;
  }

  /// Whether this is the same touch again, by a bouncing finger; says so.
  isBounce(place, size) {
    const twice = this.lastTouch?.place === place && this.lastTouch.size === size && this.soon();
    if (twice) this.say(this.reading, t('TallyViewModel', 'double?'));
    return twice;
  }

  async record(place, call, args) {
    const size = `${args.species} ${args.tenths}`;
    if (this.isBounce(place, size)) return;
    this.lastTouch = { place, size, at: performance.now() };
    const plot = this.plot;
    clearTimeout(this.late);
    this.late = setTimeout(() => this.say(t('Web', 'Storing …'), ''), kLateMs);
    const stored = await this.shell.act(call, { plot: plot.plot, ...args });
    clearTimeout(this.late);
    if (plot !== this.plot) return;
    if (stored) this.showStored(stored);
    else this.say(plot.last.length > 0 ? say(plot.last[0].text) : '', '');
  }

  showStored({ reading, doubt, last, count, figures, stand }) {
    Object.assign(this.plot, { last, count, figures, stand });
    this.say(say(reading), say(doubt));
    this.showLast();
    this.showActions();
  }

  askOther() {
    openSpecies({
      shell: this.shell,
      act: (species) => {
        this.pin(species);
        this.askSize();
        this.showReading();
      },
    });
  }

  askDigits() {
    openKeypad({
      title: this.pinned ? say(this.pinned.name) : t('TallyPage', 'No species is pinned'),
      note: this.reading,
      enterText: t('KeypadSheet', 'Record'),
      corner: {
        text: t('TallyPage', 'Always keypad'),
        on: device.typed,
        act: (sheet) => {
          setDevice({ typed: !device.typed });
          sheet.refill();
        },
      },
      read: async (digits) => say((await this.shell.ask('readDigits', { digits })).text),
      entered: async (digits) => {
        if (!this.pinned) return t('TallyViewModel', 'Choose a species first.');
        const stored = await this.shell.act('tallyDigits', { plot: this.plot.plot, species: this.pinned.code, digits });
        if (stored) this.showStored(stored);
        return stored ? '' : this.shell.why;
      },
    });
  }

  openTree(tree) {
    openTree({ shell: this.shell, tree, changed: () => this.refresh() });
  }

  openPlots() {
    openPlots({
      shell: this.shell,
      current: this.plot?.plot ?? '',
      chosen: async (plot) => {
        this.pinned = null;
        await setDevice({ plot });
      },
      changed: () => this.shell.show(),
    });
  }

  openMore() {
    this.more = openSheet({
      title: say(this.plot.name),
      atTree: true,
      fill: (sheet) => {
        const go = (text, help, act) => tap({ text, help, act: () => (sheet.close(), act()) });
        return [
          words(say(this.plot.stand?.text)),
          words(say(this.plot.stand?.need), 'soft'),
          go(t('Web', 'Trees of this plot'), '', () =>
            openTrees({ shell: this.shell, plot: this.plot.plot, changed: () => this.refresh() }),
          ),
          go(t('Web', 'Slope of this plot'), '', () =>
            openSlope({ shell: this.shell, plot: this.plot.plot, changed: () => this.refresh() }),
          ),
          ...(shape.phone ? [go(t('TallyActions', 'Next plot'), '', () => this.openPlots()), this.lockButton()] : []),
          go(t('Web', 'Figures of this stand'), '', () => openFigures(this.shell, this.plot.standId)),
        ];
      },
    });
  }
}
