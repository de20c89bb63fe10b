// The WebAssembly program over a pool of files: text in, text out. It runs in one thread, and nothing else may
// run there meanwhile; a call is over when what it recorded is on disk.
import { Wasi } from "./wasi.mjs";

/** What the page is told when something went wrong: as the Error of core, or with a code of this layer. */
export class CoreError extends Error {
  constructor({ code, what, where = "", fix = "" }) {
    super(what);
    Object.assign(this, { name: "CoreError", code, what, where, fix });
  }
  get plain() {
    return { code: this.code, what: this.what, where: this.where, fix: this.fix };
  }
}

const kFault = {
  code: "lost",
  what: "Oaklight met a fault of its own and began again.",
  fix: "What was saved before is safe. Look whether the last step is there, and do it again if not.",
};

// What throws in core ends the program here, which cannot unwind (../no_exceptions.cpp). In a tract that is a form
// which somebody edited by hand so that it no longer reads.
const kFaultInFile = {
  code: "lost",
  what: "Oaklight stopped while it read this file.",
  fix: "Open it with the app, which says what is wrong in it: most likely a form that was edited by hand.",
};

export class Engine {
  #module;
  #pool;
  #options;
  #exports;
  #wasi;
  #file = null; // of the tract that is open

  constructor(module, pool, options = {}) {
    this.#module = module;
    this.#pool = pool;
    this.#options = options;
    this.#begin();
  }

  get pool() {
    return this.#pool;
  }

  #begin() {
    this.#wasi = new Wasi(this.#pool, this.#options);
    const instance = new WebAssembly.Instance(this.#module, { wasi_snapshot_preview1: this.#wasi.imports });
    this.#wasi.attach(instance);
    this.#exports = instance.exports;
    this.#exports._initialize();
  }

  /** Answers a request, an object with its `call`; throws a CoreError. */
  call(request) {
    let answer;
    try {
      answer = this.#run(request);
    } catch (problem) {
      this.#again(problem);
      const fault = ["open", "keep"].includes(request.call) ? kFaultInFile : kFault;
      throw new CoreError({ ...fault, where: String(problem) });
    }
    if (answer.error) throw new CoreError(answer.error);
    if (["open", "create"].includes(request.call)) this.#file = answer.ok.file;
    if (request.call === "close") this.#file = null;
    return answer.ok;
  }

  #run(request) {
    const bytes = new TextEncoder().encode(JSON.stringify(request));
    const room = this.#exports.oaklight_room(bytes.length);
    new Uint8Array(this.#exports.memory.buffer, room, bytes.length).set(bytes);
    const size = this.#exports.oaklight_call();
    const at = this.#exports.oaklight_answer();
    return JSON.parse(new TextDecoder().decode(new Uint8Array(this.#exports.memory.buffer, at, size)));
  }

  /** The program stopped in the middle: its memory is worth nothing any more, its files are as after any end. */
  #again(problem) {
    this.#options.print?.(`fault: ${problem?.stack ?? problem}`);
    this.#wasi.abandon();
    this.#begin();
    if (this.#file === null) return;
    const file = this.#file;
    this.#file = null;
    try {
      if (this.#run({ call: "open", file }).ok) this.#file = file;
    } catch {
      this.#wasi.abandon(); // twice in a row: the page opens what it wants
      this.#begin();
    }
  }

  /** Takes a tract file in. bytes: all of it. Nothing of it is kept when it is not sound. */
  putIn(bytes, name) {
    this.clearDesk();
    try {
      const file = this.#pool.make("tmp/coming.gpkg");
      if (!file) throw new CoreError({ code: "disk_full", what: "There is no room for the file.", fix: "Try again." });
      for (let at = 0; at < bytes.length; ) {
        const written = file.write(bytes.subarray(at), at);
        if (written === 0) throw Object.assign(new Error("nothing was written"), { name: "QuotaExceededError" });
        at += written;
      }
      file.sync();
      return this.call({ call: "keep", file: name });
    } catch (problem) {
      throw problem instanceof CoreError ? problem : new CoreError(writeFailure(problem));
    } finally {
      this.clearDesk();
    }
  }

  /** The open tract as one compact file: its bytes. */
  takeOut() {
    this.clearDesk();
    try {
      const { file: name } = this.call({ call: "copy" });
      return { name, bytes: this.#bytesOf("tmp/copy.gpkg") };
    } finally {
      this.clearDesk();
    }
  }

  /** A tract file as it lies there, with what lies beside it: for one that does not open, to be rescued elsewhere. */
  takeOutAsIs(name) {
    const beside = ["", "-wal", "-journal"].map((ending) => name + ending);
    return beside.filter((file) => this.#pool.get(file)).map((file) => ({ name: file, bytes: this.#bytesOf(file) }));
  }

  #bytesOf(name) {
    const file = this.#pool.get(name);
    const bytes = new Uint8Array(file.size());
    for (let at = 0; at < bytes.length; ) {
      const read = file.read(bytes.subarray(at), at);
      if (read === 0) throw new CoreError({ code: "io_failed", what: "The file could not be read.", fix: "Try again." });
      at += read;
    }
    return bytes;
  }

  /** Takes away what only lies about between two files. */
  clearDesk() {
    for (const name of this.#pool.names.filter((name) => name.startsWith("tmp/"))) {
      try {
        this.#pool.remove(name);
      } catch {
        // It is in nobody's way, and goes another time.
      }
    }
  }
}

export function writeFailure(problem) {
  if (problem?.name === "QuotaExceededError" || problem?.code === "ENOSPC") {
    return {
      code: "disk_full",
      what: "The browser has no room left for this.",
      fix: "Take a tract out and remove it here, or free some room on the device.",
    };
  }
  return { code: "io_failed", what: "The browser could not write the file.", where: String(problem), fix: "Try again." };
}
