// The files of a FilePool in the browser's origin-private file system. Handles are opened before they are needed,
// since opening one takes a promise and the program cannot wait for one.
import { CoreError } from "./engine.mjs";
import { FilePool } from "./file_pool.mjs";

const kFolder = "oaklight";
// As many names as one call may make: a new file, its journal and log, a lock, a copy, and some to spare.
const kSpare = 8;
const kPatienceMs = 4000; // the tab that was reloaded or killed lets go of its files within this time
const kBetweenMs = 100;

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

const noStorage = (problem) =>
  new CoreError({
    code: "no_storage",
    what: "This browser keeps no files for this page.",
    where: String(problem),
    fix: "Use a newer browser, and no private window; the page must come by https or from this device.",
  });

async function folderOf(storage) {
  try {
    const root = await storage.getDirectory();
    return await root.getDirectoryHandle(kFolder, { create: true });
  } catch (problem) {
    throw noStorage(problem);
  }
}

/** A handle of a file that nobody else holds. Errors: other_tab. */
async function handleOf(folder, name, deadline) {
  const file = await folder.getFileHandle(name, { create: true });
  if (!file.createSyncAccessHandle) throw noStorage("no synchronous files");
  for (;;) {
    try {
      const handle = await file.createSyncAccessHandle();
      // The first browsers that had such handles answered by promises.
      if (typeof handle.getSize() === "number") return handle;
      handle.close();
      throw noStorage("files that answer by promises");
    } catch (problem) {
      if (problem.name !== "NoModificationAllowedError" && problem.name !== "InvalidStateError") throw problem;
      if (Date.now() > deadline) {
        throw new CoreError({
          code: "other_tab",
          what: "Oaklight is open in another tab or window.",
          where: String(problem),
          fix: "Go on there, or close it and load this page again.",
        });
      }
      await pause(kBetweenMs);
    }
  }
}

/** The pool of this origin, and how it grows between two calls. */
export async function openPool(storage = navigator.storage) {
  const folder = await folderOf(storage);
  const names = [];
  for await (const name of folder.keys()) if (/^\d+$/.test(name)) names.push(Number(name));
  names.sort((a, b) => a - b);
  const deadline = Date.now() + kPatienceMs;
  const handles = [];
  try {
    for (const name of names) handles.push(await handleOf(folder, String(name), deadline));
  } catch (problem) {
    for (const handle of handles) handle.close();
    throw problem;
  }
  const pool = new FilePool(handles);
  let next = (names.at(-1) ?? -1) + 1;
  const grow = async () => {
    while (pool.spare < kSpare) pool.add(await handleOf(folder, String(next++), Date.now()));
  };
  return { pool, grow };
}
