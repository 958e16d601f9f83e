// Typesets one document. Sources are constant files; everything else comes in as data.
import { Buffer } from 'node:buffer';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { answering } from '../platform/node/worker/answering.js';

/**
 * @typedef {object} Request
 * @property {string} pages folder of the page templates
 * @property {string | undefined} own folder whose files take the place of those of the same name
 * @property {string[]} fonts
 * @property {string} document JSON
 * @property {[string, Uint8Array][]} assets
 * @property {[string, Uint8Array][]} attachments
 * @property {number} createdSeconds
 * @property {'a-3a' | 'ua-1'} standard
 */

/**
 * @typedef {object} Place
 * @property {number} page counted from 1
 * @property {[left: number, bottom: number, right: number, top: number]} rectangle points from the lower left corner
 */

/**
 * @param {NodeCompiler} compiler
 * @param {import('@myriaddreamin/typst-ts-node-compiler').NodeError | null} found
 * @param {readonly string[]} own names of files of the carrier's own
 * @returns {{ words: string, own?: { name: string, row?: number } } | undefined}
 */
function messages(compiler, found, own) {
  if (found === null) return undefined;
  /** @type {{ message?: string, path?: string, range?: { start?: { line?: number } } }[]} */
  const list = compiler.fetchDiagnostics(found);
  if (list.length === 0) return undefined;
  const first = list.find((one) => own.some((name) => one.path?.replaceAll('\\', '/').endsWith(name)));
  const name = own.find((one) => first?.path?.replaceAll('\\', '/').endsWith(one));
  const line = first?.range?.start?.line;
  const words = list
    .slice(0, 5)
    .map((one) => {
      const line = one.range?.start?.line;
      const at =
        one.path === undefined || one.path === ''
          ? ''
          : ` (${one.path}${line === undefined ? '' : `:${line + 1}`})`;
      return `${one.message ?? 'unknown'}${at}`;
    })
    .join('; ');
  return {
    words,
    ...(name === undefined ? {} : { own: { name, ...(line === undefined ? {} : { row: line + 1 }) } }),
  };
}

/**
 * @param {Request} request
 * @returns {{ pdf: Uint8Array, pages: number, signature?: Place } | { error: string, at?: { file: string, row?: number } }}
 */
function typeset(request) {
  const compiler = NodeCompiler.create({
    workspace: request.pages,
    fontArgs: [{ fontBlobs: request.fonts.map((file) => readFileSync(file)) }],
  });
  const shadow = (/** @type {string} */ path, /** @type {Uint8Array} */ bytes) =>
    compiler.mapShadow(join(request.pages, path), Buffer.from(bytes));
  const { own } = request;
  const changed =
    own === undefined || !existsSync(own)
      ? []
      : readdirSync(own, { recursive: true, encoding: 'utf8' })
          .map((name) => name.replaceAll('\\', '/'))
          .filter((name) => name.endsWith('.typ'));
  if (own !== undefined) for (const name of changed) shadow(name, readFileSync(join(own, name)));
  shadow('document.json', Buffer.from(request.document));
  for (const [name, bytes] of request.assets) shadow(join('assets', name), bytes);
  for (const [name, bytes] of request.attachments) shadow(join('attachments', name), bytes);
  const compiled = compiler.compile({ mainFilePath: join(request.pages, 'main.typ') });
  // A warning, such as a missing font, means that the pages are not as intended.
  const trouble =
    messages(compiler, compiled.takeError(), changed) ?? messages(compiler, compiled.takeWarnings(), changed);
  if (trouble !== undefined) {
    const { words, own: mine } = trouble;
    if (mine === undefined || own === undefined) return { error: words };
    const at = { file: join(own, mine.name), ...(mine.row === undefined ? {} : { row: mine.row }) };
    return { error: words.replaceAll(/ \([^()]*\.typ(?::\d+)?\)/g, ''), at };
  }
  if (compiled.result === null) return { error: 'nothing was set' };
  const pages = compiled.result.numOfPages;
  /** @type {Place[]} */
  const places = compiler.query(compiled.result, { selector: '<signature-place>', field: 'value' });
  const pdf = compiler.pdf(compiled.result, {
    pdfStandard: /** @type {import('@myriaddreamin/typst-ts-node-compiler').PdfStandard} */ (
      request.standard
    ),
    creationTimestamp: request.createdSeconds,
  });
  return { pdf, pages, ...(places[0] === undefined ? {} : { signature: places[0] }) };
}

answering(typeset);
