import {
  ParseSpeeds,
  PDFBool,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFInvalidObject,
  PDFName,
  PDFString,
} from '#pdf-lib';
import { DossierError } from '../core/model/error.js';
import { type Instant, milliseconds } from '../core/model/time.js';
import { addWidget, type VisiblePlace } from './widget.js';

export type { VisiblePlace } from './widget.js';

/** Bytes reserved for the signature: an EC signature takes 1.4 KB, an RSA one with a time stamp 4.2 KB (measured). */
export const CONTENTS_BYTES = 16 * 1024;
const CONTENTS_DIGITS = CONTENTS_BYTES * 2;
/** Ten digits each: what a classic cross-reference table can address. */
const RANGE_ROOM = '[0 0000000000 0000000000 0000000000]';

export interface SignatureWords {
  /** The signer's own claim of the time. */
  at: Instant;
  reason?: string;
  location?: string;
  /** Where a reader sees the block of the signature, which compose has drawn there; nowhere when left out. */
  visible?: VisiblePlace;
}

/** A PDF that is complete but for its signature, and where that goes. */
export interface PreparedPdf {
  bytes: Uint8Array;
  /** Offset of the byte after `<` and of the `>` that ends the room. */
  contentsFrom: number;
  contentsTo: number;
}

/**
 * Adds an empty certifying signature (DocMDP, no changes allowed) with its field and a widget, invisible on the
 * first page or over the block that the pages have for it, saves, and fills in the byte range. The same input and marker give the same bytes.
 * @param marker 32 hex digits that nobody could foresee: evidence inside the PDF may hold any text, also one
 *   that looks like a placeholder, so that the place is found by the marker alone
 * @throws DossierError unsupported-file when the PDF has a form or a signature already
 */
export async function preparePdf(
  pdf: Uint8Array,
  words: SignatureWords,
  marker: string,
): Promise<PreparedPdf> {
  if (!/^[0-9a-f]{32}$/.test(marker)) throw new Error('the marker must be 32 hex digits');
  const document = await PDFDocument.load(pdf, {
    updateMetadata: false,
    // Without limit on objects a tick: pausing for browsers, here and in saving, takes three quarters of the time.
    parseSpeed: ParseSpeeds.Fastest,
  });
  const { context, catalog } = document;
  if (catalog.has(PDFName.of('AcroForm')) || catalog.has(PDFName.of('Perms')))
    throw new DossierError('unsupported-file', 'The PDF has a form or a signature already.');
  const { text, rangeBeforeContents } = dictionaryText(words, marker);
  const signature = context.register(PDFInvalidObject.of(Buffer.from(text, 'latin1')));
  const field = addWidget(document, signature, words.visible);
  catalog.set(
    PDFName.of('AcroForm'),
    // SigFlags 3 (ISO 32000-1 table 219): signatures exist, append only.
    context.obj({ Fields: [field], SigFlags: 3 }),
  );
  // /Suspects false is the default (ISO 32000-1 table 321), and Poppler up to 22.12 complains of it.
  const marks = catalog.lookupMaybe(PDFName.of('MarkInfo'), PDFDict);
  if (marks?.get(PDFName.of('Suspects')) === PDFBool.False) marks.delete(PDFName.of('Suspects'));
  catalog.set(PDFName.of('Perms'), context.obj({ DocMDP: signature }));
  const bytes = await document.save({
    useObjectStreams: false,
    addDefaultPage: false,
    updateFieldAppearances: false,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
  return fillRange(bytes, marker, rangeBeforeContents);
}

/** ISO 32000-1 §12.8.1 and §12.8.2.2; no /DigestMethod, which ISO 19005-3 §6.1.12 forbids there. */
function dictionaryText(words: SignatureWords, marker: string) {
  const said = (key: string, value: string | undefined) =>
    value === undefined ? '' : ` /${key} ${PDFHexString.fromText(value).toString()}`;
  const head = '<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached /ByteRange ';
  const between = `${RANGE_ROOM} /Contents `;
  const tail =
    ` /M ${PDFString.of(pdfDate(words.at)).toString()}${said('Reason', words.reason)}${said('Location', words.location)}` +
    ' /Reference [ << /Type /SigRef /TransformMethod /DocMDP' +
    ' /TransformParams << /Type /TransformParams /P 1 /V /1.2 >> >> ] >>';
  const contents = `<${marker.padEnd(CONTENTS_DIGITS, '0')}>`;
  return { text: head + between + contents + tail, rangeBeforeContents: between.length };
}

function fillRange(bytes: Uint8Array, marker: string, rangeBeforeContents: number): PreparedPdf {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const open = view.indexOf(`<${marker}`, 0, 'latin1');
  if (open < 0 || view.indexOf(marker, open + 2, 'latin1') >= 0)
    throw new Error('the marker of the signature must stand in the PDF exactly once');
  const close = open + 1 + CONTENTS_DIGITS;
  const after = close + 1;
  const range = `[0 ${open} ${after} ${bytes.length - after}`.padEnd(RANGE_ROOM.length - 1, ' ');
  view.write(`${range}]`, open - rangeBeforeContents, 'latin1');
  view.fill('0', open + 1, close, 'latin1');
  return { bytes, contentsFrom: open + 1, contentsTo: close };
}

/** ISO 32000-1 §7.9.4, in UTC. */
function pdfDate(at: Instant): string {
  const digits = new Date(milliseconds(at)).toISOString().replace(/\D/g, '').slice(0, 14);
  return `D:${digits}Z`;
}
