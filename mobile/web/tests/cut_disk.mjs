// Files whose power is cut: what was not flushed is lost, torn or there, each write for itself, as a disk may
// have it. Of a disk that is full or fails, a write says so.

const kSector = 512;

/** Numbers that a seed repeats (a linear congruential generator, "Numerical Recipes", from memory). */
export function chanceOf(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export class PowerCut extends Error {}

export class CutDisk {
  constructor(chance) {
    this.chance = chance;
    this.files = [];
    this.calls = 0;
    this.cutAt = Infinity; // the call at which the power goes
    this.room = Infinity; // bytes that fit
  }
  get used() {
    return this.files.reduce((sum, file) => sum + file.now.length, 0);
  }
  step() {
    if (++this.calls >= this.cutAt) throw new PowerCut();
  }
  add() {
    const file = new CutHandle(this);
    this.files.push(file);
    return file;
  }
  /** The power went: what lies on the disk is what was flushed and some of the rest. */
  cut() {
    for (const file of this.files) file.settle(this.chance);
    this.cutAt = Infinity;
  }
}

class CutHandle {
  constructor(disk) {
    this.disk = disk;
    this.safe = new Uint8Array(0); // what was flushed
    this.now = new Uint8Array(0); // what the program sees
    this.waiting = []; // changes since
  }
  read(bytes, { at }) {
    const part = this.now.subarray(at, at + bytes.length);
    bytes.set(part);
    return part.length;
  }
  write(bytes, { at }) {
    this.disk.step();
    const grows = Math.max(0, at + bytes.length - this.now.length);
    if (grows > 0 && this.disk.used + grows > this.disk.room) {
      throw Object.assign(new Error('no room'), { name: 'QuotaExceededError' });
    }
    const change = { at, bytes: bytes.slice() };
    this.now = applied(this.now, change);
    this.waiting.push(change);
    return bytes.length;
  }
  truncate(size) {
    this.disk.step();
    this.now = applied(this.now, { size });
    this.waiting.push({ size });
  }
  getSize() {
    return this.now.length;
  }
  flush() {
    this.disk.step();
    this.safe = this.now.slice();
    this.waiting = [];
  }
  close() {}
  settle(chance) {
    let left = this.safe;
    for (const change of this.waiting) {
      const fate = chance();
      if (fate < 0.4) continue; // lost
      if (fate < 0.6 && change.bytes) left = applied(left, torn(change, chance));
      else left = applied(left, change);
    }
    this.safe = left;
    this.now = left.slice();
    this.waiting = [];
  }
}

function torn({ at, bytes }, chance) {
  const sectors = Math.floor(chance() * (bytes.length / kSector));
  return { at, bytes: bytes.subarray(0, sectors * kSector) };
}

function applied(bytes, { at, bytes: more, size }) {
  if (size !== undefined) {
    const cut = new Uint8Array(size);
    cut.set(bytes.subarray(0, size));
    return cut;
  }
  const grown = bytes.length < at + more.length ? applied(bytes, { size: at + more.length }) : bytes.slice();
  grown.set(more, at);
  return grown;
}
