// The page's end of the worker: calls that are answered when what they recorded is on disk.
import { CoreError } from "./engine.mjs";

export { CoreError };

export class Core {
  #worker;
  #waiting = new Map();
  #next = 1;
  #lost = null;
  /** Told when the worker itself ended: everything that was answered before is on disk. */
  onlost = () => {};
  /** Whether the browser promised not to clear the files away by itself. */
  kept = false;

  /** Loads program and files. Errors: CoreError with code other_tab, no_storage or lost. */
  static async start() {
    const core = new Core();
    await core.#ask({ work: "start" });
    // A page that is kept to be gone back to would hold the files, and nobody could open them.
    addEventListener("pagehide", () => core.#worker.terminate());
    addEventListener("pageshow", (event) => event.persisted && location.reload());
    core.askToKeep();
    return core;
  }

  /** Asks the browser not to clear the files away. It may ask the person, who may take their time: nobody waits for it. */
  askToKeep() {
    navigator.storage?.persist?.().then((kept) => (this.kept = kept), () => {});
  }

  constructor() {
    this.#worker = new Worker(new URL("./worker.mjs", import.meta.url), { type: "module" });
    this.#worker.onmessage = ({ data }) => {
      const { resolve, reject } = this.#waiting.get(data.id);
      this.#waiting.delete(data.id);
      if (data.error) reject(new CoreError(data.error));
      else resolve(data.ok);
    };
    this.#worker.onerror = (event) => {
      const lost = new CoreError({
        code: "lost",
        what: "The part of the page that records stopped.",
        where: event.message ?? "",
        fix: "Load the page again; what was recorded is safe.",
      });
      this.#lost = lost; // nobody answers any more
      this.#worker.terminate();
      for (const { reject } of this.#waiting.values()) reject(lost);
      this.#waiting.clear();
      this.onlost(lost);
    };
  }

  #ask(message) {
    if (this.#lost) return Promise.reject(this.#lost);
    const id = this.#next++;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#worker.postMessage({ id, ...message });
    });
  }

  /** One call of core by its name (bridge/README.md). */
  call(name, given = {}) {
    return this.#ask({ work: "call", request: { ...given, call: name } });
  }
  /** Takes a tract file in. Errors: what is wrong with it; then nothing of it is kept. */
  putIn(blob, name) {
    return this.#ask({ work: "putIn", blob, name });
  }
  /** The open tract as one file: {name, blob}. */
  takeOut() {
    return this.#ask({ work: "takeOut" });
  }
  /** A tract file as it lies there and what lies beside it, [{name, blob}]: for one that does not open. */
  takeOutAsIs(name) {
    return this.#ask({ work: "takeOutAsIs", name });
  }
}
