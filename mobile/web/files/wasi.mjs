// The system calls of a WebAssembly program (WASI preview 1) over a FilePool: as many as core and SQLite make.
// Source of names, numbers and layouts: the WASI preview 1 specification ("wasi_snapshot_preview1").

const kOk = 0, kBadf = 8, kExist = 20, kInval = 28, kIo = 29, kIsdir = 31, kNfile = 41, kNoent = 44, kNosys = 52;
const kNospc = 51, kNotdir = 54;
const kDirectory = 3, kRegular = 4, kCharacter = 2;
const kCreate = 1, kOpenDirectory = 2, kExclusive = 4, kTruncate = 8; // of oflags
const kAppend = 1; // of fdflags
const kEverything = 0x1fffffffn; // of rights
const kRoot = 3; // the folder that the program finds open

/** The program ended by itself. */
export class Exit extends Error {
  constructor(code) {
    super(`exit ${code}`);
    this.code = code;
  }
}

const errnoOf = (problem) => {
  if (problem?.name === "QuotaExceededError" || problem?.code === "ENOSPC") return kNospc;
  return kIo;
};

/** A file that is memory, as SQLite's index of a log ("-shm"): it means nothing to whoever comes later. */
class MemoryFile {
  constructor(id) {
    this.id = id;
    this.bytes = new Uint8Array(0);
  }
  size() {
    return this.bytes.length;
  }
  read(bytes, at) {
    const part = this.bytes.subarray(at, at + bytes.length);
    bytes.set(part);
    return part.length;
  }
  write(bytes, at) {
    if (this.bytes.length < at + bytes.length) this.resize(at + bytes.length);
    this.bytes.set(bytes, at);
    return bytes.length;
  }
  resize(size) {
    const resized = new Uint8Array(size);
    resized.set(this.bytes.subarray(0, size));
    this.bytes = resized;
  }
  sync() {}
}
const kFirstMemoryId = 1_000_000;
const isMemory = (path) => path.endsWith("-shm");

export class Wasi {
  /** pool: its files; print(line): what the program writes for a person; args: of a program with a main */
  constructor(pool, { print = (line) => console.log(line), args = [], random, now } = {}) {
    this.pool = pool;
    this.print = print;
    this.args = args.map((arg) => new TextEncoder().encode(`${arg}\0`));
    this.random = random ?? ((bytes) => crypto.getRandomValues(bytes));
    this.now = now ?? (() => Date.now());
    this.open = new Map([[kRoot, { folder: "" }]]);
    this.memoryFiles = new Map();
    this.memoryFilesMade = 0;
    this.line = "";
    this.imports = Object.fromEntries(
      Object.entries(calls).map(([name, call]) => [name, (...values) => this.#answer(call, values)]),
    );
  }

  attach(instance) {
    this.memory = instance.exports.memory;
  }

  /** Gives back what the program left open, when it will not go on. */
  abandon() {
    for (const [, opened] of this.open) this.close(opened);
    this.open.clear();
  }

  #answer(call, values) {
    try {
      return call.apply(this, values) ?? kOk;
    } catch (problem) {
      if (problem instanceof Exit) throw problem;
      this.failure = problem; // for whoever wants to know more than its number
      return errnoOf(problem);
    }
  }

  get view() {
    return new DataView(this.memory.buffer);
  }
  bytes(at, size) {
    return new Uint8Array(this.memory.buffer, at, size);
  }
  text(at, size) {
    return new TextDecoder().decode(this.bytes(at, size));
  }
  *buffers(list, count) {
    for (let i = 0; i < count; ++i) {
      const view = this.view;
      yield this.bytes(view.getUint32(list + 8 * i, true), view.getUint32(list + 8 * i + 4, true));
    }
  }
  /** A path of the program as the pool names it: without what only leads about. */
  path(folder, at, size) {
    const parts = `${this.open.get(folder)?.folder ?? ""}/${this.text(at, size)}`.split("/");
    return parts.filter((part) => part !== "" && part !== ".").join("/");
  }
  close(opened) {
    if (opened.file && !(opened.file instanceof MemoryFile)) this.pool.closed(opened.file);
  }
  find(path) {
    return this.memoryFiles.get(path) ?? this.pool.get(path);
  }
  make(path) {
    if (!isMemory(path)) return this.pool.make(path);
    const file = new MemoryFile(kFirstMemoryId + this.memoryFilesMade++);
    this.memoryFiles.set(path, file);
    return file;
  }
  isFolder(path) {
    return path === "" || path === "tmp";
  }

  /** Moves bytes between a file and the program; move(bytes, at) says how many it took. */
  transfer(opened, list, count, at, move) {
    let total = 0;
    for (const bytes of this.buffers(list, count)) {
      let done = 0;
      while (done < bytes.length) {
        const moved = move(bytes.subarray(done), at + total);
        if (moved === 0) return total;
        done += moved;
        total += moved;
      }
    }
    return total;
  }
  say(list, count) {
    let total = 0;
    for (const bytes of this.buffers(list, count)) {
      this.line += new TextDecoder().decode(bytes.slice());
      total += bytes.length;
    }
    const lines = this.line.split("\n");
    this.line = lines.pop();
    for (const line of lines) this.print(line);
    return total;
  }
  putStat(out, opened) {
    const view = this.view;
    for (let i = 0; i < 8; ++i) view.setBigUint64(out + 8 * i, 0n, true);
    view.setBigUint64(out, 1n, true);
    view.setBigUint64(out + 8, BigInt(opened.file ? opened.file.id : 0), true);
    view.setUint8(out + 16, opened.file ? kRegular : opened.folder === undefined ? kCharacter : kDirectory);
    view.setBigUint64(out + 24, 1n, true);
    view.setBigUint64(out + 32, BigInt(opened.file ? opened.file.size() : 0), true);
  }
  put(entry) {
    let descriptor = kRoot + 1;
    while (this.open.has(descriptor)) ++descriptor;
    this.open.set(descriptor, entry);
    return descriptor;
  }
}

/** The calls, each with `this` as the Wasi; a number other than 0 is an error, nothing is none. */
const calls = {
  args_sizes_get(count, size) {
    this.view.setUint32(count, this.args.length, true);
    this.view.setUint32(size, this.args.reduce((sum, arg) => sum + arg.length, 0), true);
  },
  args_get(list, out) {
    for (const [i, arg] of this.args.entries()) {
      this.view.setUint32(list + 4 * i, out, true);
      this.bytes(out, arg.length).set(arg);
      out += arg.length;
    }
  },
  environ_sizes_get(count, size) {
    this.view.setUint32(count, 0, true);
    this.view.setUint32(size, 0, true);
  },
  environ_get() {},
  clock_res_get(_clock, out) {
    this.view.setBigUint64(out, 1000000n, true);
  },
  clock_time_get(_clock, _precision, out) {
    this.view.setBigUint64(out, BigInt(Math.floor(this.now() * 1000)) * 1000n, true);
  },
  random_get(at, size) {
    for (let done = 0; done < size; done += 65536) {
      const some = new Uint8Array(Math.min(65536, size - done)); // as many as a browser gives at once
      this.random(some);
      this.bytes(at + done, some.length).set(some);
    }
  },
  proc_exit(code) {
    throw new Exit(code);
  },
  sched_yield() {},
  poll_oneoff(_in, out, count, events) {
    // Somebody sleeps. There is nobody to wait for; the events say that the time is over.
    for (let i = 0; i < count; ++i) this.bytes(out + 32 * i, 32).fill(0);
    this.view.setUint32(events, count, true);
  },

  fd_prestat_get(descriptor, out) {
    if (descriptor !== kRoot) return kBadf;
    this.view.setUint32(out, 0, true);
    this.view.setUint32(out + 4, 1, true);
  },
  fd_prestat_dir_name(descriptor, at) {
    if (descriptor !== kRoot) return kBadf;
    this.bytes(at, 1)[0] = "/".charCodeAt(0);
  },
  fd_close(descriptor) {
    const opened = this.open.get(descriptor);
    if (!opened) return kBadf;
    this.open.delete(descriptor);
    this.close(opened);
  },
  fd_fdstat_get(descriptor, out) {
    const opened = this.open.get(descriptor);
    if (!opened && descriptor > 2) return kBadf;
    const view = this.view;
    view.setUint8(out, opened?.file ? kRegular : opened ? kDirectory : kCharacter);
    view.setUint16(out + 2, opened?.append ? kAppend : 0, true);
    view.setBigUint64(out + 8, kEverything, true);
    view.setBigUint64(out + 16, kEverything, true);
  },
  fd_fdstat_set_flags(descriptor, flags) {
    const opened = this.open.get(descriptor);
    if (!opened) return kBadf;
    opened.append = (flags & kAppend) !== 0;
  },
  fd_filestat_get(descriptor, out) {
    const opened = this.open.get(descriptor) ?? (descriptor <= 2 ? {} : null);
    if (!opened) return kBadf;
    this.putStat(out, opened);
  },
  fd_filestat_set_size(descriptor, size) {
    const opened = this.open.get(descriptor);
    if (!opened?.file) return kBadf;
    opened.file.resize(Number(size));
  },
  fd_filestat_set_times() {},
  fd_advise() {},
  fd_allocate() {
    return kNosys;
  },
  fd_sync(descriptor) {
    const opened = this.open.get(descriptor);
    if (!opened) return kBadf;
    opened.file?.sync(); // a name is on disk as soon as it is given
  },
  fd_datasync(descriptor) {
    return calls.fd_sync.call(this, descriptor);
  },
  fd_read(descriptor, list, count, out) {
    const opened = this.open.get(descriptor);
    if (!opened) return descriptor === 0 ? void this.view.setUint32(out, 0, true) : kBadf;
    if (!opened.file) return opened.chance ? calls.fd_pread.call(this, descriptor, list, count, 0n, out) : kIsdir;
    const read = this.transfer(opened, list, count, opened.at, (bytes, at) => opened.file.read(bytes, at));
    opened.at += read;
    this.view.setUint32(out, read, true);
  },
  fd_pread(descriptor, list, count, at, out) {
    const opened = this.open.get(descriptor);
    if (!opened) return kBadf;
    const move = opened.chance
      ? (bytes) => (this.random(bytes), bytes.length)
      : (bytes, place) => opened.file.read(bytes, place);
    if (!opened.chance && !opened.file) return kIsdir;
    this.view.setUint32(out, this.transfer(opened, list, count, Number(at), move), true);
  },
  fd_write(descriptor, list, count, out) {
    if (descriptor === 1 || descriptor === 2) return void this.view.setUint32(out, this.say(list, count), true);
    const opened = this.open.get(descriptor);
    if (!opened?.file) return kBadf;
    if (opened.append) opened.at = opened.file.size();
    const written = this.transfer(opened, list, count, opened.at, (bytes, at) => opened.file.write(bytes, at));
    opened.at += written;
    this.view.setUint32(out, written, true);
  },
  fd_pwrite(descriptor, list, count, at, out) {
    const opened = this.open.get(descriptor);
    if (!opened?.file) return kBadf;
    const written = this.transfer(opened, list, count, Number(at), (bytes, place) => opened.file.write(bytes, place));
    this.view.setUint32(out, written, true);
  },
  fd_seek(descriptor, offset, whence, out) {
    const opened = this.open.get(descriptor);
    if (!opened?.file) return kBadf;
    const from = [0, opened.at, opened.file.size()][whence];
    if (from === undefined || from + Number(offset) < 0) return kInval;
    opened.at = from + Number(offset);
    this.view.setBigUint64(out, BigInt(opened.at), true);
  },
  fd_tell(descriptor, out) {
    return calls.fd_seek.call(this, descriptor, 0n, 1, out);
  },
  fd_readdir(descriptor, at, size, cookie, out) {
    const opened = this.open.get(descriptor);
    if (opened?.folder === undefined) return kNotdir;
    const inside = opened.folder === "" ? "" : `${opened.folder}/`;
    const names = this.pool.names
      .filter((name) => name.startsWith(inside))
      .map((name) => [name.slice(inside.length), this.pool.get(name)])
      .filter(([name]) => !name.includes("/"));
    let used = 0;
    for (let i = Number(cookie); i < names.length && used < size; ++i) {
      const text = new TextEncoder().encode(names[i][0]);
      const entry = new Uint8Array(24 + text.length);
      const view = new DataView(entry.buffer);
      view.setBigUint64(0, BigInt(i + 1), true);
      view.setBigUint64(8, BigInt(names[i][1].id), true);
      view.setUint32(16, text.length, true);
      view.setUint8(20, kRegular);
      entry.set(text, 24);
      const part = entry.subarray(0, size - used);
      this.bytes(at + used, part.length).set(part);
      used += part.length;
    }
    this.view.setUint32(out, used, true);
  },

  path_open(folder, _lookup, at, size, flags, _base, _inheriting, fdflags, out) {
    const path = this.path(folder, at, size);
    const give = (entry) => this.view.setUint32(out, this.put(entry), true);
    if (path === "dev/urandom") return void give({ chance: true });
    if (this.isFolder(path)) return flags & kCreate ? kIsdir : void give({ folder: path });
    let file = this.find(path);
    if (flags & kOpenDirectory) return file ? kNotdir : kNoent;
    if (file && flags & kCreate && flags & kExclusive) return kExist;
    if (!file) {
      if (!(flags & kCreate)) return kNoent;
      file = this.make(path);
      if (!file) return kNfile;
    } else if (flags & kTruncate) {
      file.resize(0);
    }
    if (!(file instanceof MemoryFile)) this.pool.opened(file);
    give({ file, at: 0, append: (fdflags & kAppend) !== 0 });
  },
  path_filestat_get(folder, _flags, at, size, out) {
    const path = this.path(folder, at, size);
    const file = this.find(path);
    if (!file && !this.isFolder(path)) return kNoent;
    this.putStat(out, file ? { file } : { folder: path });
  },
  path_filestat_set_times() {},
  path_unlink_file(folder, at, size) {
    const path = this.path(folder, at, size);
    return this.memoryFiles.delete(path) || this.pool.remove(path) ? kOk : kNoent;
  },
  path_rename(folder, at, size, newFolder, newAt, newSize) {
    const renamed = this.pool.rename(this.path(folder, at, size), this.path(newFolder, newAt, newSize));
    return renamed ? kOk : kNoent;
  },
  path_create_directory(folder, at, size) {
    return this.isFolder(this.path(folder, at, size)) ? kExist : kNosys;
  },
  path_remove_directory() {
    return kNosys;
  },
  path_readlink() {
    return kInval; // nothing is a link
  },
  path_symlink() {
    return kNosys;
  },
  path_link() {
    return kNosys;
  },
};
