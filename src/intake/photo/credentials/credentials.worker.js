// Checks the content credentials (C2PA) of a picture, in a thread that can be stopped; the library is large, and is
// loaded only here.
import { readFile } from 'node:fs/promises';
import { initSync, WasmReader } from '@contentauth/c2pa-wasm';
import { answering } from '../../../platform/node/worker/answering.js';

/** Bytes in the form in which browsers hand over a file. */
class Bytes {
  /** @param {Uint8Array} bytes */
  constructor(bytes) {
    this.bytes = bytes;
    this.size = bytes.length;
  }

  slice(begin = 0, end = this.size) {
    return new Bytes(this.bytes.subarray(begin, end));
  }
}

Object.assign(globalThis, {
  /** What the library reads files with; Node has none. */
  FileReaderSync: class {
    /** @param {Bytes} file */
    readAsArrayBuffer(file) {
      return new Uint8Array(file.bytes).buffer;
    }
  },
  /** Nothing is fetched for a picture: a stranger made it, and its addresses. */
  fetch: () => Promise.reject(new Error('nothing is fetched')),
});
initSync({ module: await readFile(new URL(import.meta.resolve('@contentauth/c2pa-wasm/c2pa.wasm'))) });

answering(async (/** @type {{ path: string, type: string }} */ { path, type }) => {
  const file = new Bytes(await readFile(path));
  const reader = await WasmReader.fromBlob(type, /** @type {any} */ (file));
  try {
    return JSON.parse(reader.json());
  } finally {
    reader.free();
  }
});
