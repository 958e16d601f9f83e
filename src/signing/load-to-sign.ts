import { ParseSpeeds, PDFDocument, PDFInvalidObject, PDFRef } from '#pdf-lib';
import { plainPdf } from '../compose/plain-pdf.js';

const OPTIONS = { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest };

/**
 * Loads a PDF that is to be signed. Of one in one piece only the objects are read that a signature touches or that lead
 * there; streams, links and the elements of the structure, nearly all of a dossier, are carried over byte for byte.
 */
export async function loadToSign(pdf: Uint8Array): Promise<PDFDocument> {
  const plain = plainPdf(pdf);
  if (plain === undefined) return PDFDocument.load(pdf, OPTIONS);
  const view = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.length);
  const objects = plain.objects.map(({ number, from, to }) => ({ number, bytes: view.subarray(from, to) }));
  const top = topOfStructure(objects.map(({ bytes }) => bytes));
  const carried = objects.filter(({ number, bytes }) => number !== top && isCarried(bytes, top));
  const numbers = new Set(carried.map(({ number }) => number));
  const document = await PDFDocument.load(
    Buffer.concat([
      view.subarray(0, plain.objects[0]?.from ?? 0),
      ...objects.flatMap(({ number, bytes }) => (numbers.has(number) ? [] : [bytes])),
      view.subarray(plain.trailerAt),
    ]),
    OPTIONS,
  );
  for (const { number, bytes } of carried)
    document.context.assign(PDFRef.of(number), PDFInvalidObject.of(bodyOf(bytes)));
  return document;
}

/** The one element that a signature is added to: the root of the structure names it. */
function topOfStructure(objects: readonly Buffer[]): number | undefined {
  const root = objects.find((bytes) => typeOf(bytes) === 'StructTreeRoot');
  const [, number] = /\/K\s*\[?\s*(\d+) 0 R/.exec(root?.toString('latin1') ?? '') ?? [];
  return number === undefined ? undefined : Number(number);
}

/** Streams, which end so, and what says of itself that it is a link or an element of a known structure. */
function isCarried(bytes: Buffer, top: number | undefined): boolean {
  if (/endstream\s*endobj\s*$/.test(bytes.toString('latin1', Math.max(0, bytes.length - 40)))) return true;
  const type = typeOf(bytes);
  return type === 'Annot' || (type === 'StructElem' && top !== undefined);
}

/** The type that an object begins with; others are read, whatever they are. */
function typeOf(bytes: Buffer): string | undefined {
  return /^\d+ 0 obj\s*<<\s*\/Type\s*\/(\w+)\b/.exec(bytes.toString('latin1', 0, 60))?.[1];
}

/** What stands between `7 0 obj` and `endobj`, which are written anew. */
function bodyOf(bytes: Buffer): Buffer {
  const [start = ''] = /^\d+ 0 obj\s*/.exec(bytes.toString('latin1', 0, 40)) ?? [];
  return bytes.subarray(start.length, bytes.lastIndexOf('endobj'));
}
