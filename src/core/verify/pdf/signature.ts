import { latin1 } from '../../model/bytes.js';
import { refuse } from '../malformed.js';
import { type PdfFile, refersTo, resolveReference } from './file.js';
import { nameOf, type PdfDict, type PdfRef, textOf } from './value.js';

/** The one signature dictionary of a file, and the values that say what it covers. */
export interface PdfSignature {
  object: number;
  dict: PdfDict;
}

/**
 * Finds the signature by the file's structure, so that text inside attachments or pictures cannot pass for one.
 * @throws Malformed when there is none, more than one, or one that the form does not name
 */
export function findSignature(file: PdfFile): PdfSignature {
  const found = file.dictionaries.filter(isSignature);
  const fields = file.dictionaries.filter((dict) => nameOf(dict.get('FT')) === 'Sig');
  const [dict] = found;
  if (dict === undefined) refuse('the file has no signature');
  if (found.length > 1 || fields.length > 1)
    refuse('the file has more than one signature or signature field');
  if (file.objects.get(dict.object)?.value !== dict) refuse('the signature is not an object of its own');
  return { object: dict.object, dict };
}

function isSignature(dict: PdfDict): boolean {
  const type = nameOf(dict.get('Type'));
  return type === 'Sig' || type === 'DocTimeStamp' || dict.has('ByteRange') || dict.has('SubFilter');
}

/**
 * Form, field and permissions of a dossier: one field that holds the signature, and the signature as
 * certification that allows no change (ISO 32000-1 §12.7.2, §12.8.2.2, §12.8.4).
 * @throws Malformed naming what is not so
 */
export function requireCertification(file: PdfFile, { object, dict }: PdfSignature): void {
  const self: PdfRef = { is: 'ref', number: object };
  const names: [string, string][] = [
    ['Type', 'Sig'],
    ['Filter', 'Adobe.PPKLite'],
    ['SubFilter', 'ETSI.CAdES.detached'],
  ];
  for (const [key, name] of names)
    if (nameOf(dict.get(key)) !== name) refuse(`the signature's /${key} is not /${name}`);
  const form = resolveReference(file, file.catalog.get('AcroForm'));
  const fields = form?.is === 'dict' ? resolveReference(file, form.get('Fields')) : undefined;
  if (fields?.is !== 'array' || fields.items.length !== 1) refuse('the form does not hold exactly one field');
  const field = resolveReference(file, fields.items[0]);
  if (field?.is !== 'dict' || nameOf(field.get('FT')) !== 'Sig' || !refersTo(field.get('V'), self))
    refuse('the field of the form does not hold the signature');
  requirePlainWidget(file, field);
  const permissions = resolveReference(file, file.catalog.get('Perms'));
  if (permissions?.is !== 'dict' || !refersTo(permissions.get('DocMDP'), self))
    refuse('the signature is not the certification of the file');
  if (permitted(file, dict) !== 1) refuse('the signature does not forbid changes (DocMDP with P 1)');
}

/**
 * One widget in the whole file, which draws nothing: words over the pages that only some programs show, or a field to
 * fill in, would give the file two readings.
 */
function requirePlainWidget(file: PdfFile, field: PdfDict): void {
  for (const dict of file.dictionaries)
    if (nameOf(dict.get('Subtype')) === 'Widget' && dict !== field)
      refuse('there is a form field beside that of the signature');
  const appearance = resolveReference(file, field.get('AP'));
  if (appearance === undefined) return;
  const [normal] = appearance.is === 'dict' ? [...appearance] : [];
  const drawn = normal?.[1].is === 'ref' ? file.objects.get(normal[1].number)?.stream : undefined;
  const plain = appearance.is === 'dict' && appearance.size === 1 && normal?.[0] === 'N';
  if (!plain || drawn === undefined || drawn.to > drawn.from)
    refuse('the field of the signature draws something over the page');
}

function permitted(file: PdfFile, dict: PdfDict): number | undefined {
  const references = resolveReference(file, dict.get('Reference'));
  const only = references?.is === 'array' && references.items.length === 1 ? references.items[0] : undefined;
  const reference = resolveReference(file, only);
  if (reference?.is !== 'dict' || nameOf(reference.get('TransformMethod')) !== 'DocMDP') return undefined;
  const parameters = resolveReference(file, reference.get('TransformParams'));
  const p = parameters?.is === 'dict' ? parameters.get('P') : undefined;
  return p?.is === 'number' ? p.value : undefined;
}

/** The two covered ranges of the file, and the bytes of the signature between them. */
export interface Covered {
  first: Uint8Array;
  second: Uint8Array;
  contents: Uint8Array;
}

/**
 * What the signature covers: everything from the first byte to the last, but for one hex string, which is the
 * value of its own /Contents.
 * @throws Malformed for every other byte range
 */
export function coveredBytes(file: PdfFile, { dict }: PdfSignature): Covered {
  const range = dict.get('ByteRange');
  if (range?.is !== 'array' || range.items.length !== 4) refuse('/ByteRange is not four numbers');
  const numbers = range.items.map((one) =>
    one.is === 'number' && one.integer && one.value >= 0
      ? one.value
      : refuse('/ByteRange is not four whole numbers'),
  );
  const [start = -1, length = -1, second = -1, rest = -1] = numbers;
  const contents = dict.get('Contents');
  if (contents?.is !== 'string' || !contents.hex) refuse('/Contents is not a hex string');
  if (start !== 0) refuse('the signature does not cover the file from its first byte');
  if (second + rest !== file.bytes.length) refuse('the signature does not cover the file to its last byte');
  if (length !== contents.from || second !== contents.to)
    refuse('the signature leaves out more or something else than its own value');
  // Lower case only: upper case would give the same value in other bytes.
  if (!/^(?:[0-9a-f]{2})+$/.test(latin1(file.bytes, contents.from + 1, contents.to - 1)))
    refuse('/Contents is not written in lower-case hex digits without gaps');
  return {
    first: file.bytes.subarray(0, length),
    second: file.bytes.subarray(second),
    contents: contents.bytes,
  };
}

/** The signing time that the dictionary claims (ISO 32000-1 §7.9.4), undefined when there is none to read. */
export function claimedTime({ dict }: PdfSignature): Date | undefined {
  const text = textOf(dict.get('M')) ?? '';
  const match = /^D:(\d{4})(\d{2})(\d{2})(\d{2})(\d{2})(\d{2})Z$/.exec(text);
  if (match === null) return undefined;
  const [, year, month, day, hour, minute, second] = match;
  const at = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
  return Number.isNaN(at.getTime()) ? undefined : at;
}
