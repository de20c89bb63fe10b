// The worker in which all of core runs. It answers one message after the other.
import { CoreError, Engine, writeFailure } from "./engine.mjs";
import { openPool } from "./opfs_files.mjs";

let engine;
let grow;
let turn = Promise.resolve();

async function compile(url) {
  const answer = await fetch(url);
  if (!answer.ok) throw new CoreError({ code: "lost", what: "The program could not be loaded.", fix: "Load the page again." });
  return WebAssembly.compile(await answer.arrayBuffer()); // whatever type the server calls it
}

const asBlob = ({ name, bytes }) => ({ name, blob: new Blob([bytes], { type: "application/geopackage+sqlite3" }) });

const works = {
  async start() {
    const [module, opened] = await Promise.all([compile(new URL("./oaklight.wasm", import.meta.url)), openPool()]);
    grow = opened.grow;
    await grow();
    engine = new Engine(module, opened.pool);
    engine.clearDesk();
    return {};
  },
  call: ({ request }) => engine.call(request),
  putIn: async ({ blob, name }) => engine.putIn(new Uint8Array(await blob.arrayBuffer()), name),
  takeOut: () => asBlob(engine.takeOut()),
  takeOutAsIs: ({ name }) => engine.takeOutAsIs(name).map(asBlob),
};

async function answer({ id, work, ...given }) {
  try {
    // What the program may need next is opened before it runs; without room it says so when it needs it.
    await grow?.().catch(() => {});
    postMessage({ id, ok: await works[work](given) });
  } catch (problem) {
    const known = problem instanceof CoreError ? problem.plain : writeFailure(problem);
    postMessage({ id, error: known });
  }
}

onmessage = ({ data }) => {
  turn = turn.then(() => answer(data));
};
