// The handles of a FilePool over node's own files: what a browser gives a worker, for tests without one.
import fs from 'node:fs';
import path from 'node:path';

import { FilePool } from '../files/file_pool.mjs';

export class NodeHandle {
  #descriptor;
  constructor(name) {
    this.#descriptor = fs.openSync(name, fs.constants.O_RDWR | fs.constants.O_CREAT, 0o600);
  }
  read(bytes, { at }) {
    return fs.readSync(this.#descriptor, bytes, 0, bytes.length, at);
  }
  write(bytes, { at }) {
    return fs.writeSync(this.#descriptor, bytes, 0, bytes.length, at);
  }
  truncate(size) {
    fs.ftruncateSync(this.#descriptor, size);
  }
  getSize() {
    return fs.fstatSync(this.#descriptor).size;
  }
  flush() {
    fs.fsyncSync(this.#descriptor);
  }
  close() {
    fs.closeSync(this.#descriptor);
  }
}

/** A pool of so many files in a folder. */
export function openNodePool(folder, count = 12) {
  fs.mkdirSync(folder, { recursive: true });
  return new FilePool(Array.from({ length: count }, (_, i) => new NodeHandle(path.join(folder, String(i)))));
}
