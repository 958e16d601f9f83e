// Renders the first pages of one PDF after another, so that a hostile file's time, memory or crash in native code
// stays out of the caller. Nothing in a PDF is run, followed or fetched.
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { answering } from '../../platform/node/worker/answering.js';

/** @typedef {{ bytes: Uint8Array, pages: number, longest: number }} Asked */
/** @typedef {{ bytes: Uint8Array, width: number, height: number }} Drawn */
/** @typedef {{ is: 'drawn', pages: Drawn[], of: number } | { is: 'missing' }} Answer */

// PDF.js halves the precision of points where the engine can (Node 24), and renders lines slightly elsewhere: the
// same record would look different on another machine.
Reflect.deleteProperty(globalThis, 'Float16Array');

// For engines before V8 12.2 PDF.js puts a slow `push` of its own in the place of every array's.
const { push } = Array.prototype;

/** Samples of one picture inside a page; larger ones are left blank (CWE-409). */
const MOST_SAMPLES = 60_000_000;

/**
 * @param {Asked} asked
 * @returns {Promise<Answer>}
 */
async function draw({ bytes, pages, longest }) {
  const { createCanvas } = await import('@napi-rs/canvas');
  const root = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));
  const folder = (/** @type {string} */ name) => `${join(root, name)}/`;
  const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const task = getDocument({
    data: new Uint8Array(bytes),
    isEvalSupported: false,
    enableXfa: false,
    disableFontFace: true,
    useSystemFonts: false,
    useWorkerFetch: false,
    maxImageSize: MOST_SAMPLES,
    standardFontDataUrl: folder('standard_fonts'),
    cMapUrl: folder('cmaps'),
    wasmUrl: folder('wasm'),
    iccUrl: folder('iccs'),
    verbosity: VerbosityLevel.ERRORS,
  });
  try {
    const document = await task.promise;
    Reflect.set(Array.prototype, 'push', push);
    /** @type {Drawn[]} */
    const drawn = [];
    for (let number = 1; number <= Math.min(pages, document.numPages); number += 1) {
      const page = await document.getPage(number);
      const natural = page.getViewport({ scale: 1 });
      const scale = Math.min(longest / Math.max(natural.width, natural.height), 4);
      const viewport = page.getViewport({ scale });
      const width = Math.max(1, Math.round(viewport.width));
      const height = Math.max(1, Math.round(viewport.height));
      const canvas = createCanvas(width, height);
      const context = canvas.getContext('2d');
      context.fillStyle = '#ffffff';
      context.fillRect(0, 0, width, height);
      /** @typedef {Parameters<typeof page.render>[0]['canvasContext']} Context */
      await page.render({
        canvas: null,
        canvasContext: /** @type {Context} */ (/** @type {unknown} */ (context)),
        viewport,
      }).promise;
      drawn.push({ bytes: await canvas.encode('jpeg', 85), width, height });
      page.cleanup();
    }
    return { is: 'drawn', pages: drawn, of: document.numPages };
  } finally {
    await task.destroy();
  }
}

/**
 * @param {unknown} error
 * @returns {Answer}
 */
function withoutPrograms(error) {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ERR_MODULE_NOT_FOUND' || code === 'MODULE_NOT_FOUND') return { is: 'missing' };
  throw error;
}

answering((/** @type {Asked} */ asked) => draw(asked).catch(withoutPrograms));
