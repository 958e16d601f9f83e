import { open, stat } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import pLimit from 'p-limit';
import { z } from 'zod';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { Workers } from '../../platform/node/worker/workers.js';
import { plainText } from './pdf-text.js';

/** What a PDF's bytes show without rendering it. */
export interface PdfScan {
  pages?: number;
  encrypted: boolean;
  /** Active content and embedded files, in words. */
  active: string[];
  /** Why the file's structure is inconsistent. */
  damaged?: string;
  /** Text of its first pages, as far as letters are plainly coded. */
  text: string;
}

/** Of a longer file the first and the last half of this are scanned: page tree and catalogue are at the ends. */
const MOST_BYTES = 32 * 1024 * 1024;
/** A small stream can unpack to gigabytes (CWE-409). */
const MOST_UNPACKED = 8 * 1024 * 1024;
const MOST_UNPACKED_TOTAL = 48 * 1024 * 1024;

/** Names of ISO 32000-2 that make a reader run, open or fetch something (§12.6.4, §7.11.4, §12.7.8). */
const ACTIVE: readonly (readonly [RegExp, string])[] = [
  [/\/(?:JavaScript|JS)(?![A-Za-z])/, 'JavaScript'],
  [/\/Launch(?![A-Za-z])/, 'an action that starts a program'],
  [/\/EmbeddedFiles?(?![A-Za-z])/, 'embedded files'],
  [/\/(?:SubmitForm|ImportData)(?![A-Za-z])/, 'a form that sends or fetches data'],
  [/\/XFA(?![A-Za-z])/, 'an XFA form'],
  [/\/(?:RichMedia|Movie|Rendition)(?![A-Za-z])/, 'moving pictures or sound'],
  [/\/GoToE(?![A-Za-z])/, 'a jump into an embedded file'],
];

/** Larger files are scanned one at a time: unpacking takes several times their size in memory. */
const LARGE = 4 * 1024 * 1024;
const largeTurn = pLimit(1);

/**
 * Scans a PDF: pages, encryption, active content, signs of damage, plain text. Nothing in it is run or followed.
 * Never throws for the file's contents.
 */
export async function scanPdf(path: string): Promise<PdfScan> {
  if ((await stat(path)).size <= LARGE) return scan(path);
  return largeTurn(() => scan(path));
}

async function scan(path: string): Promise<PdfScan> {
  const { bytes, whole } = await ends(path);
  const raw = bytes.toString('latin1');
  const encrypted = /\/Encrypt\s*(?:\d+\s+\d+\s+R|<<)/.test(raw);
  const unpacked = encrypted ? [] : unpackStreams(bytes, raw);
  const objects = unpacked.filter((s) => s.is === 'objects').map((s) => s.bytes.toString('latin1'));
  // Any letter of a name may be written as #xx (§7.3.5), which hides it from a plain search.
  const names = [raw, ...objects].map((text) =>
    text.replaceAll(/#([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
  );
  const active = ACTIVE.filter(([name]) => names.some((text) => name.test(text))).map(([, what]) => what);
  const pages = await countPages(bytes, raw, objects, encrypted, whole);
  const ending = raw.slice(-64 * 1024);
  const damaged =
    !raw.includes('startxref') || !ending.includes('%%EOF')
      ? 'it ends before its table of contents: a part is missing'
      : !encrypted && whole && pages === undefined
        ? 'no page can be found in it'
        : undefined;
  return {
    encrypted,
    active,
    text: unpacked.flatMap((s) => (s.is === 'content' ? [plainText(s.bytes)] : [])).join('\n'),
    ...omitUndefined({ pages, damaged }),
  };
}

async function ends(path: string): Promise<{ bytes: Buffer; whole: boolean }> {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const length = Math.min(size, MOST_BYTES);
    const bytes = Buffer.alloc(length);
    const first = size > MOST_BYTES ? MOST_BYTES / 2 : length;
    await file.read(bytes, 0, first, 0);
    if (first < length) await file.read(bytes, first, length - first, size - (length - first));
    return { bytes, whole: size <= MOST_BYTES };
  } finally {
    await file.close();
  }
}

interface Unpacked {
  is: 'objects' | 'content';
  bytes: Buffer;
}

/** Object streams (§7.5.7) and the first content streams, unpacked within bounds; pictures and fonts are passed over. */
function unpackStreams(bytes: Buffer, raw: string): Unpacked[] {
  const found: Unpacked[] = [];
  let total = 0;
  let contents = 0;
  const keyword = /(?<!end)stream\r?\n/g;
  for (let match = keyword.exec(raw); match !== null; match = keyword.exec(raw)) {
    const from = match.index + match[0].length;
    const head = raw.slice(Math.max(0, match.index - 1000), match.index);
    const dictionary = head.slice(Math.max(head.lastIndexOf(' obj'), head.lastIndexOf('endobj')));
    const is = /\/ObjStm(?![A-Za-z])/.test(dictionary) ? 'objects' : 'content';
    const end = raw.indexOf('endstream', from);
    keyword.lastIndex = end < 0 ? raw.length : end;
    if (
      is === 'content' &&
      (contents >= 6 || /\/(?:Subtype|Type|Length1|FunctionType|ICCBased|N)(?![A-Za-z])/.test(dictionary))
    )
      continue;
    const part = bytes.subarray(from, end < 0 ? bytes.length : end);
    const unpacked = /\/FlateDecode|\/Fl(?![A-Za-z])/.test(dictionary) ? inflate(part) : part;
    if (unpacked === undefined) continue;
    total += unpacked.length;
    if (total > MOST_UNPACKED_TOTAL) break;
    if (is === 'content') contents += 1;
    found.push({ is, bytes: unpacked });
  }
  return found;
}

function inflate(part: Buffer): Buffer | undefined {
  try {
    return inflateSync(part, { maxOutputLength: MOST_UNPACKED });
  } catch {
    return undefined;
  }
}

/** Time after which a file is given up. */
const pageCounter = new Workers<Uint8Array, number>({
  script: new URL('./pdf-pages.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 3,
  megabytes: 512,
  answer: z.number(),
  reused: true,
});

async function countPages(
  bytes: Buffer,
  raw: string,
  objects: readonly string[],
  encrypted: boolean,
  whole: boolean,
): Promise<number | undefined> {
  const linear = /\/Linearized\s/.test(raw.slice(0, 2048)) ? /\/N\s+(\d+)/.exec(raw.slice(0, 2048)) : null;
  const revisions = (raw.match(/startxref/g)?.length ?? 0) - (linear === null ? 0 : 1);
  const texts = [raw, ...objects];
  const counted = texts.reduce(
    (sum, text) => sum + (text.match(/\/Type\s*\/Page(?![A-Za-z])/g)?.length ?? 0),
    0,
  );
  const stated = linear === null ? statedPages(texts) : Number(linear[1]);
  if (!whole) return atLeastOne(stated ?? counted);
  if (revisions <= 1 && counted > 0 && counted === stated) return atLeastOne(counted);
  // Pages that were taken out, or put in by a later revision, are still in the file; some are packed, or stand in a
  // text. Then only the page tree has the count, and walking it takes a full reader. A truncated file has none.
  const unsure = counted !== 1 || stated !== undefined || revisions > 1;
  if (encrypted || !unsure || revisions === 0) return atLeastOne(counted);
  try {
    return atLeastOne(await pageCounter.ask(bytes));
  } catch {
    return atLeastOne(counted);
  }
}

/** Longest page-tree node that is looked at for its count, bytes on either side of its type. */
const NODE = 4096;

/** The largest count that a node of the page tree states (§7.7.3.2); undefined where none does. */
function statedPages(texts: readonly string[]): number | undefined {
  let most: number | undefined;
  for (const text of texts)
    for (const { index } of text.matchAll(/\/Type\s*\/Pages(?![A-Za-z])/g)) {
      const before = text.slice(Math.max(0, index - NODE), index);
      const behind = text.slice(index, index + NODE);
      const node =
        before.slice(before.lastIndexOf('<<') + 2) + behind.slice(0, behind.indexOf('>>') + 1 || NODE);
      const [, count] = /\/Count\s+(\d{1,9})/.exec(node) ?? [];
      if (count !== undefined) most = Math.max(most ?? 0, Number(count));
    }
  return most;
}

function atLeastOne(count: number): number | undefined {
  return count > 0 && Number.isSafeInteger(count) ? count : undefined;
}
