import canonicalize from 'canonicalize';
import { utf8Bytes } from '../model/bytes.js';
import { DossierError } from '../model/error.js';

/** Deeper nesting is refused, so that a hostile line can't exhaust the stack. */
const DEEPEST = 64;
/** With the u flag a pair counts as one character, so only halves match. */
const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * The canonical bytes of a JSON value (RFC 8785): the same content gives the same bytes, whatever the order of
 * keys. Throws `DossierError` 'bad-value' for text that is not Unicode (a lone surrogate) and for nesting deeper
 * than 64. Anything that is not JSON (undefined, NaN, a Date …) is a bug of the caller and throws a plain Error,
 * because leaving it out silently would change what is recorded.
 */
export function canonicalBytes(value: unknown): Uint8Array {
  refuse(value, '', 0);
  const text = canonicalize(value);
  if (text === undefined) throw new Error('not JSON');
  return utf8Bytes(text);
}

/**
 * A value as JSON keeps it: properties that are undefined are left out, as `{caption: undefined}` means no caption,
 * and zero has no sign.
 */
export function asJsonKeeps(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(asJsonKeeps);
  if (typeof value === 'number') return value + 0;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, held]) => held !== undefined)
      .map(([key, held]) => [key, asJsonKeeps(held)]),
  );
}

function refuse(value: unknown, field: string, depth: number): void {
  if (depth > DEEPEST)
    throw new DossierError('bad-value', `nested more than ${DEEPEST} levels deep`, { where: { field } });
  switch (typeof value) {
    case 'boolean':
      return;
    case 'string':
      refuseText(value, field);
      return;
    case 'number':
      if (!Number.isFinite(value)) throw new Error(`not JSON: ${value} at ${field || 'the top'}`);
      return;
    case 'object':
      if (value === null) return;
      if (Array.isArray(value)) {
        // Array.from, because forEach would skip the holes of a sparse array.
        Array.from(value).forEach((item, i) => {
          refuse(item, join(field, String(i)), depth + 1);
        });
        return;
      }
      if (!isPlain(value)) throw new Error(`not JSON: an object of a class at ${field || 'the top'}`);
      for (const [key, held] of Object.entries(value)) {
        refuseText(key, field);
        refuse(held, join(field, key), depth + 1);
      }
      return;
    default:
      throw new Error(`not JSON: ${typeof value} at ${field || 'the top'}`);
  }
}

function refuseText(text: string, field: string): void {
  if (LONE_SURROGATE.test(text))
    throw new DossierError('bad-value', 'the text holds half a character (a lone surrogate)', {
      where: { field },
      fix: 'Type that text again.',
    });
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) return false;
  return !('toJSON' in value && typeof value.toJSON === 'function');
}

function join(field: string, key: string): string {
  return field === '' ? key : `${field}.${key}`;
}
