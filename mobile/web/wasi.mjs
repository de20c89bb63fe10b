// Runs a WebAssembly program of this build under node: wasi.mjs PROGRAM [argument...]
import { readFile } from "node:fs/promises";
import { argv } from "node:process";
import { WASI } from "node:wasi";

const wasi = new WASI({ version: "preview1", args: argv.slice(2), preopens: { "/": "/" }, returnOnExit: true });
const program = await WebAssembly.compile(await readFile(argv[2]));
const instance = await WebAssembly.instantiate(program, { wasi_snapshot_preview1: wasi.wasiImport });
process.exitCode = wasi.start(instance);
