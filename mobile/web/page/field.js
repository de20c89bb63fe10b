// The cells of species and diameters, and the one finger that counts: it presses a species, slides to a class and lifts, or
// taps one after the other.
//
// A second contact while one is down makes nothing; three at once are a wet sleeve and cancel. A contact under 30 ms is a drop
// of rain; one that rests for over 3 s without moving is a palm. (The same rules as mobile/items/touch_field.cpp.)
import { el, fit } from './parts.js';
import { isFar, pixels, roomOf } from './room.js';
import { say, t } from './words.js';

const kRainMs = 30;
const kPalmMs = 3000;
const kSleevePoints = 3;

// Where a name may break, as in the app: mobile/viewmodels/words.cpp.
const kBrackets = /\s*\([^)]*\)/g;
const kCompound = /(\p{L}{4,})(berry|beam|wood|nut|tooth|cherry|leaf|cedar|locust|gum)(?!\p{L})/gu;
const cellName = (name) => name.replace(kBrackets, '').replace(kCompound, '$1\u00ad$2');

export class Field {
  /// on  {tappedSpecies(row), chosen(speciesRow, classRow), other(), point(speciesRow, classRow), usable()}
  constructor(on) {
    this.on = on;
    this.box = el('div.field', {});
    this.down = null; // {id, species, x, y, at, slid}
    this.opened = false;
    this.points = new Set();
    this.box.addEventListener('pointerdown', (event) => this.press(event));
    this.box.addEventListener('pointermove', (event) => this.move(event));
    this.box.addEventListener('pointerup', (event) => this.lift(event));
    this.box.addEventListener('pointercancel', (event) => this.cancel(event));
    // The browser makes no gesture of its own of a slide: it would take the next tap, wherever that is, for the end of a fling.
    for (const kind of ['touchstart', 'touchmove']) {
      this.box.addEventListener(kind, (event) => event.cancelable && event.preventDefault(), { passive: false });
    }
    this.box.addEventListener('contextmenu', (event) => event.preventDefault());
  }

  get fingerHere() {
    return this.down !== null;
  }

  measure() {
    this.room = roomOf(this.box);
    this.slip = pixels(this.box, '--slip');
    return this.room.room;
  }

  /// Cells for what the plot shows; their order never moves while hands are on them.
  fill({ species, classes }) {
    const cell = (row, kind, text, spoken, act) =>
      el(
        `button.cell.${kind}`,
        { type: 'button', 'data-row': row, 'aria-label': spoken, onclick: (event) => this.byKey(event, act) },
        el('span', {}, text),
      );
    const names = species.map((one) => say(one.name));
    this.speciesCells = names.map((name, row) => cell(row, 'species', cellName(name), name, () => this.on.tappedSpecies(row)));
    const other = t('TallyField', 'Other');
    this.otherCell = cell(species.length, 'species', other, t('TallyField', 'Other species: search all'), () => this.on.other());
    this.classCells = classes.map((one, row) =>
      cell(row, 'class', say(one.label), t('TallyField', '%1, diameter class', one.label), () => this.on.chosen(-1, row)),
    );
    const { over, beside, share } = this.room;
    const back = el(
      'button.cell.back',
      {
        type: 'button',
        'aria-label': t('TallyField', 'Back to the species'),
        onclick: (event) => this.byKey(event, () => this.open(false)),
      },
      el('span', {}, t('TallyField', 'Species')),
    );
    this.speciesBox = this.grid('species', this.room.species, [...this.speciesCells, this.otherCell]);
    this.classBox = this.grid('classes', this.room.classes, over ? [...this.classCells, back] : this.classCells);
    this.box.dataset.over = over;
    this.box.dataset.beside = beside;
    this.box.style.setProperty('--share', `${share}px`);
    this.box.replaceChildren(this.speciesBox, this.classBox);
    this.open(false);
    for (const one of [...this.speciesCells, this.otherCell]) fit(one.firstChild);
  }

  grid(kind, { columns, rows }, cells) {
    const made = el(`div.cells.${kind}`, { role: 'group' }, cells);
    made.style.gridTemplateColumns = `repeat(${columns}, 1fr)`;
    made.style.gridTemplateRows = `repeat(${rows}, 1fr)`;
    return made;
  }

  /// A keyboard or a screen reader presses a cell; fingers and the mouse are followed from press to lift.
  byKey(event, act) {
    if (event.detail === 0 && this.on.usable()) act();
  }

  open(opened) {
    this.opened = opened;
    this.showCells();
  }

  showCells() {
    const shown = !this.room.over || this.opened || (this.down !== null && this.down.species >= 0);
    this.box.dataset.classes = shown;
  }

  pin(row, otherName) {
    this.speciesCells.forEach((one, at) => one.setAttribute('aria-pressed', String(at === row)));
    const other = row < 0 && otherName !== '';
    this.otherCell.setAttribute('aria-pressed', String(other));
    this.otherCell.firstChild.textContent = other ? cellName(otherName) : t('TallyField', 'Other');
    fit(this.otherCell.firstChild);
  }

  /// The row of the cell of a kind there; -1 when there is none.
  rowAt(event, kind) {
    const cell = document.elementFromPoint(event.clientX, event.clientY)?.closest(`.cell.${kind}`);
    return cell && this.box.contains(cell) ? Number(cell.dataset.row) : -1;
  }

  press(event) {
    if (event.isPrimary) this.points.clear(); // no other is down
    this.points.add(event.pointerId);
    if (this.points.size >= kSleevePoints) return this.drop();
    if (this.down || !event.isPrimary || event.button !== 0 || !this.on.usable()) return;
    event.preventDefault();
    this.box.setPointerCapture(event.pointerId); // also where the cell under the finger gives way to others
    const species = this.rowAt(event, 'species');
    this.back = Boolean(event.target.closest?.('.back'));
    this.down = {
      id: event.pointerId,
      touch: event.pointerType !== 'mouse',
      species,
      x: event.clientX,
      y: event.clientY,
      at: event.timeStamp,
      slid: false,
    };
    this.showPoint(species >= 0 ? -1 : this.rowAt(event, 'class'));
    this.showCells();
  }

  move(event) {
    if (event.pointerId !== this.down?.id) return;
    this.down.slid ||= isFar(this.down, event, this.slip);
    // Where the classes open under the finger, the place of the press means the species still.
    const counts = this.down.species < 0 || this.down.slid;
    this.showPoint(counts ? this.rowAt(event, 'class') : -1);
  }

  lift(event) {
    this.points.delete(event.pointerId);
    if (event.pointerId !== this.down?.id) return;
    this.move(event);
    const { touch, species, slid, at } = this.down;
    const held = event.timeStamp - at;
    const noFinger = touch && !slid && (held < kRainMs || held > kPalmMs);
    const touched = species < 0 || slid ? this.rowAt(event, 'class') : -1;
    const same = species >= 0 && (!slid || this.rowAt(event, 'species') === species);
    const back = this.back && Boolean(document.elementFromPoint(event.clientX, event.clientY)?.closest('.back'));
    this.drop();
    if (noFinger) return;
    if (back) this.open(false);
    else if (touched >= 0) this.on.chosen(species, touched);
    else if (same) this.tapSpecies(species);
  }

  tapSpecies(row) {
    if (row >= this.speciesCells.length) this.on.other();
    else this.on.tappedSpecies(row);
  }

  cancel(event) {
    this.points.delete(event.pointerId);
    if (event.pointerId === this.down?.id) this.drop();
  }

  drop() {
    if (!this.down) return;
    this.down = null;
    this.showPoint(-1);
    this.showCells();
  }

  showPoint(row) {
    const species = this.down?.species ?? -1;
    this.classCells.forEach((one, at) => one.classList.toggle('pointed', at === row));
    [...this.speciesCells, this.otherCell].forEach((one, at) => one.classList.toggle('pointed', at === species));
    this.on.point(species, row);
  }
}
