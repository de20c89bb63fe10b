// Files with names for a program that opens them synchronously, where a browser gives only handles that were
// opened before. A pool holds so many open files; the name of each stands in the file itself.
//
// A file begins with two slots, of which each write of a name takes the older one, so that a torn write leaves
// the name it had. A slot is valid when its checksum is right; the valid one with the higher number counts. The
// number rises through the whole pool: of two files of one name, as a rename leaves them when it is broken off,
// the one that was named last is the file. What follows the slots is the file as the program knows it.
//
// A handle is a FileSystemSyncAccessHandle, or anything that reads, writes and flushes as one.

const kSlotBytes = 4096; // the least that a disk writes at once
const kSlots = 2;
export const kHeadBytes = kSlots * kSlotBytes;
const kMagic = 0x4f414b46; // "OAKF"
const kFixedBytes = 14; // magic, number, length of the name, checksum
const kMostNameBytes = 400;

function checksum(bytes) {
  let crc = -1; // CRC-32 of ISO 3309
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; ++bit) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

function slotOf(number, name) {
  const text = new TextEncoder().encode(name);
  if (text.length > kMostNameBytes) throw new RangeError("The name is too long.");
  const bytes = new Uint8Array(kFixedBytes + text.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, kMagic);
  view.setUint32(4, number);
  view.setUint16(8, text.length);
  bytes.set(text, 10);
  view.setUint32(10 + text.length, checksum(bytes.subarray(0, 10 + text.length)));
  return bytes;
}

function readSlot(handle, place) {
  const bytes = new Uint8Array(kFixedBytes + kMostNameBytes);
  const read = handle.read(bytes, { at: place * kSlotBytes });
  const view = new DataView(bytes.buffer);
  if (read < kFixedBytes || view.getUint32(0) !== kMagic) return null;
  const length = view.getUint16(8);
  if (length > kMostNameBytes || 10 + length + 4 > read) return null;
  if (view.getUint32(10 + length) !== checksum(bytes.subarray(0, 10 + length))) return null;
  return { number: view.getUint32(4), name: new TextDecoder().decode(bytes.subarray(10, 10 + length)) };
}

/** One file of the pool: its bytes as the program sees them. */
class PoolFile {
  constructor(handle, id) {
    this.handle = handle;
    this.id = id; // the file's number for whoever asks whether two names are one file
    this.users = 0;
    this.name = "";
    this.place = 0; // of the slot that counts
  }
  size() {
    return Math.max(0, this.handle.getSize() - kHeadBytes);
  }
  read(bytes, at) {
    return this.handle.read(bytes, { at: at + kHeadBytes });
  }
  write(bytes, at) {
    return this.handle.write(bytes, { at: at + kHeadBytes });
  }
  resize(size) {
    this.handle.truncate(size + kHeadBytes);
  }
  sync() {
    this.handle.flush();
  }
}

export class FilePool {
  #files = [];
  #names = new Map();
  #free = [];
  #number = 0;

  constructor(handles) {
    for (const handle of handles) this.add(handle);
  }

  /** Takes an open file into the pool, one that holds a name or a new one. */
  add(handle) {
    const file = new PoolFile(handle, this.#files.length + 1);
    this.#files.push(file);
    let found = null;
    for (let place = 0; place < kSlots; ++place) {
      const slot = readSlot(handle, place);
      if (!slot || (found && found.number > slot.number)) continue;
      found = slot;
      file.place = place;
    }
    this.#number = Math.max(this.#number, found?.number ?? 0);
    file.number = found?.number ?? 0;
    const name = found?.name ?? "";
    const rival = name === "" ? undefined : this.#names.get(name);
    if (name === "" || (rival && rival.number > file.number)) return this.#clear(file);
    if (rival) this.#clear(rival);
    file.name = name;
    this.#names.set(name, file);
  }

  /** How many files may still be made. */
  get spare() {
    return this.#free.length;
  }
  get names() {
    return [...this.#names.keys()].sort();
  }
  get(name) {
    return this.#names.get(name);
  }

  /** Makes an empty file; undefined when the pool has none left. */
  make(name) {
    const file = this.#free.pop();
    if (!file) return undefined;
    try {
      this.#name(file, name);
    } catch (problem) {
      this.#free.push(file);
      throw problem;
    }
    this.#names.set(name, file);
    return file;
  }

  /** Takes a name away; who has the file open keeps its bytes until it is closed. */
  remove(name) {
    const file = this.#names.get(name);
    if (!file) return false;
    this.#name(file, "");
    this.#names.delete(name);
    if (file.users === 0) this.#clear(file);
    return true;
  }

  rename(from, to) {
    const file = this.#names.get(from);
    if (!file) return false;
    if (from === to) return true;
    const before = this.#names.get(to);
    this.#name(file, to);
    this.#names.delete(from);
    this.#names.set(to, file);
    if (before) {
      this.#name(before, "");
      if (before.users === 0) this.#clear(before);
    }
    return true;
  }

  /** A file was opened or closed once more by the program. */
  opened(file) {
    ++file.users;
  }
  closed(file) {
    if (--file.users === 0 && file.name === "") this.#clear(file);
  }

  close() {
    for (const file of this.#files) file.handle.close();
  }

  /** Writes a name so that it is on disk when this returns. */
  #name(file, name) {
    const place = (file.place + 1) % kSlots;
    const bytes = slotOf(this.#number + 1, name);
    if (file.handle.getSize() < kHeadBytes) file.handle.truncate(kHeadBytes);
    if (file.handle.write(bytes, { at: place * kSlotBytes }) !== bytes.length) throw new Error("short write");
    file.handle.flush();
    file.number = ++this.#number;
    file.place = place;
    file.name = name;
  }

  /** Gives a file back to the pool. Whose name was not taken away yet loses it here. */
  #clear(file) {
    if (file.name !== "" || (file.number > 0 && readSlot(file.handle, file.place)?.name)) this.#name(file, "");
    if (file.handle.getSize() > kHeadBytes) file.handle.truncate(kHeadBytes);
    this.#free.push(file);
  }
}
