import { inflate } from '#platform/inflate';
import { sha256OfLarge } from '../../ledger/tree.js';
import { latin1 } from '../../model/bytes.js';
import type { Sha256 } from '../../model/evidence.js';
import { refuse } from '../malformed.js';
import { type Drawing, drawingsIn, type Matrix } from './content.js';
import { type PdfFile, resolveReference } from './file.js';
import type { PdfObject } from './object.js';
import { pagesInOrder } from './pages.js';
import { nameOf, type PdfDict } from './value.js';

/** A picture of the file, and where the pages draw it. */
export interface PagePicture {
  /** Hash of its stream, which is left as it is packed. */
  sha256: Sha256;
  bytes: Uint8Array;
  /** Entries by which a program shows something else than the coded picture: /Decode, /Mask, /SMask. */
  altered: string[];
  places: PicturePlace[];
}

/** Where a picture is drawn. */
export interface PicturePlace {
  /** Page, from 1. */
  page: number;
  /** Lengths of the picture's lower and left edge, in points. */
  width: number;
  height: number;
  /** Whether all four corners are on the page. */
  onPage: boolean;
}

/** What changes a coded picture, or shows it as something else (ISO 32000-1 §8.9.5). */
const ALTERING = ['Decode', 'Mask', 'SMask', 'ImageMask', 'Intent', 'Interpolate', 'DecodeParms'];
const MOST_CONTENT = 64 * 1024 * 1024;

/**
 * Every picture of the file with the places where the pages draw it, in the order of the objects.
 * @throws Malformed for pages whose content cannot be read
 */
export async function picturesOf(file: PdfFile): Promise<PagePicture[]> {
  const found = new Map<number, PagePicture>();
  for (const [number, { value, stream }] of file.objects) {
    if (stream === undefined || value.is !== 'dict' || nameOf(value.get('Subtype')) !== 'Image') continue;
    const bytes = file.bytes.subarray(stream.from, stream.to);
    const altered = ALTERING.filter((key) => value.has(key)).map((key) => `/${key}`);
    found.set(number, { sha256: await sha256OfLarge(bytes), bytes, altered, places: [] });
  }
  if (found.size === 0) return [];
  let page = 0;
  for (const dict of pagesInOrder(file)) {
    page += 1;
    const objects = externalObjects(file, dict);
    if (objects === undefined) continue;
    for (const drawing of drawingsIn(await contentOf(file, dict))) {
      const target = objects.get(drawing.name);
      const picture = target?.is === 'ref' ? found.get(target.number) : undefined;
      picture?.places.push({ page, ...extent(drawing, boxOf(dict)) });
    }
  }
  return [...found.values()];
}

function externalObjects(file: PdfFile, page: PdfDict): PdfDict | undefined {
  const resources = resolveReference(file, page.get('Resources'));
  const objects = resources?.is === 'dict' ? resolveReference(file, resources.get('XObject')) : undefined;
  return objects?.is === 'dict' ? objects : undefined;
}

/** The parts of a page's content, one after the other (ISO 32000-1 §7.8.2). */
async function contentOf(file: PdfFile, page: PdfDict): Promise<string> {
  const content = page.get('Contents');
  const held = resolveReference(file, content);
  const parts = held?.is === 'array' ? held.items : content === undefined ? [] : [content];
  const texts: string[] = [];
  for (const part of parts) {
    const object = part.is === 'ref' ? file.objects.get(part.number) : undefined;
    texts.push(await unpacked(file, object ?? refuse('a page without its content')));
  }
  return texts.join('\n');
}

async function unpacked(file: PdfFile, { value, stream }: PdfObject): Promise<string> {
  if (stream === undefined || value.is !== 'dict') return refuse('a page without its content');
  const raw = file.bytes.subarray(stream.from, stream.to);
  const filter = resolveReference(file, value.get('Filter'));
  if (filter === undefined) return latin1(raw);
  if (nameOf(filter) !== 'FlateDecode' || value.has('DecodeParms'))
    return refuse('the content of a page is packed in a way that dossiers do not use');
  const content = await inflate(raw, MOST_CONTENT);
  return latin1(content ?? refuse('the content of a page cannot be unpacked, or is too long'));
}

/** Width and height of the page, in points; 0 where it does not say so itself. */
function boxOf(page: PdfDict): [width: number, height: number] {
  const box = page.get('MediaBox');
  const [, , x, y] = box?.is === 'array' ? box.items : [];
  return [x?.is === 'number' ? x.value : 0, y?.is === 'number' ? y.value : 0];
}

/** Points by which rounding may move a corner over the edge of the page. */
const OVER_EDGE = 0.5;

function extent({ matrix }: Drawing, [right, top]: [number, number]): Omit<PicturePlace, 'page'> {
  const [a, b, c, d] = matrix;
  const onPage = cornersOf(matrix).every(
    ([x, y]) => x >= -OVER_EDGE && y >= -OVER_EDGE && x <= right + OVER_EDGE && y <= top + OVER_EDGE,
  );
  return { width: Math.sqrt(a * a + b * b), height: Math.sqrt(c * c + d * d), onPage };
}

function cornersOf([a, b, c, d, e, f]: Matrix): [number, number][] {
  return [
    [e, f],
    [a + e, b + f],
    [c + e, d + f],
    [a + c + e, b + d + f],
  ];
}
