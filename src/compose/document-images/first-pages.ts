import { readFile } from 'node:fs/promises';
import type { Sha256 } from '../../core/model/evidence.js';
import type { PictureFile, PreparedPicture, ReadOriginal } from '../pictures.js';
import { PageRenderer } from './painter.js';

/** What can be shown of a document. */
export type DocumentImage =
  /** Its first pages as pictures, of `of` pages. */
  | { is: 'pages'; pages: PreparedPicture[]; of: number }
  /** The beginning of a text file; `cut` when the file continues. */
  | { is: 'text'; text: string; cut: boolean }
  | { is: 'unreadable'; why: string };

export interface DocumentImageOptions {
  /** Pages of each PDF; 2 by default. */
  pages?: number;
  /** Longer side in pixels: 200 per inch at 8 inches. */
  longest?: number;
  /** Seconds for one document. */
  seconds?: number;
  /** Once aborted, no other document is started. */
  signal?: AbortSignal;
}

const MOST_BYTES = 64 * 1024 * 1024;
const MOST_LINES = 60;
const MOST_CHARACTERS = 6_000;

/**
 * The first pages of documents: PDFs rendered by a process of its own, text as plain text. Other types are not in
 * the result. A document that can't be rendered never stops the others.
 */
export async function firstPages(
  files: readonly PictureFile[],
  readOriginal: ReadOriginal,
  { pages = 2, longest = 1600, seconds, signal }: DocumentImageOptions = {},
): Promise<Map<Sha256, DocumentImage>> {
  const plates = new Map<Sha256, DocumentImage>();
  const renderer = new PageRenderer(seconds);
  try {
    for (const file of new Map(files.map((f) => [f.sha256, f])).values()) {
      if (signal?.aborted) break;
      const plate = await imageOf(file, readOriginal, renderer, pages, longest);
      if (plate !== undefined) plates.set(file.sha256, plate);
    }
  } finally {
    renderer.close();
  }
  return plates;
}

async function imageOf(
  { sha256, type }: PictureFile,
  readOriginal: ReadOriginal,
  renderer: PageRenderer,
  pages: number,
  longest: number,
): Promise<DocumentImage | undefined> {
  if (type !== 'application/pdf' && type !== 'text/plain') return undefined;
  let bytes: Uint8Array;
  try {
    const original = await readOriginal(sha256);
    bytes = typeof original === 'string' ? await readFile(original) : original;
  } catch (cause) {
    return { is: 'unreadable', why: cause instanceof Error ? cause.message : 'it cannot be read' };
  }
  if (type === 'text/plain') return textImage(bytes);
  if (bytes.length > MOST_BYTES) return { is: 'unreadable', why: 'it is too large to be drawn' };
  const painted = await renderer.paint(bytes, pages, longest);
  switch (painted.is) {
    case 'drawn':
      return {
        is: 'pages',
        of: painted.of,
        pages: painted.pages.map((page) => ({ is: 'picture', damaged: false, ...page })),
      };
    case 'failed':
      return { is: 'unreadable', why: failureText(painted.why) };
    case 'missing':
      return { is: 'unreadable', why: 'the programs that draw pages are not installed on this machine' };
  }
}

function textImage(bytes: Uint8Array): DocumentImage {
  const head = bytes.subarray(0, 8 * MOST_CHARACTERS);
  const text = new TextDecoder(encodingOf(head)).decode(head).replaceAll(/\r\n?/g, '\n');
  // Control and bidirectional characters make text read differently than it is (CVE-2021-42574).
  const plain = text.replaceAll(/(?![\t\n])[\p{Cc}\p{Cf}]/gu, '\uFFFD');
  const lines = plain.split('\n');
  const shown = lines.slice(0, MOST_LINES).join('\n').slice(0, MOST_CHARACTERS).trimEnd();
  return {
    is: 'text',
    text: shown,
    cut: shown.length < plain.trimEnd().length || head.length < bytes.length,
  };
}

function encodingOf(head: Uint8Array): string {
  const [a, b] = head;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

function failureText(why: string): string {
  return /password/i.test(why)
    ? 'it is encrypted'
    : `it cannot be drawn: ${why.split('\n')[0]?.slice(0, 200)}`;
}
