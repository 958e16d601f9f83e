/** Fields of a record of a zip file in order, each with its size in bytes (PKWARE APPNOTE 6.3, §4.3). */
export type Layout = readonly (readonly [name: string, bytes: 2 | 4 | 8])[];

/** §4.3.7 */
export const LOCAL: Layout = [
  ['mark', 4],
  ['version', 2],
  ['flags', 2],
  ['method', 2],
  ['time', 2],
  ['date', 2],
  ['checksum', 4],
  ['packed size', 4],
  ['size', 4],
  ['length of the name', 2],
  ['length of extra fields', 2],
];
/** §4.3.9, with its mark, and the form for sizes or offsets beyond four bytes. */
export const AFTER: Layout = [
  ['mark', 4],
  ['checksum', 4],
  ['packed size', 4],
  ['size', 4],
];
export const AFTER_64: Layout = [
  ['mark', 4],
  ['checksum', 4],
  ['packed size', 8],
  ['size', 8],
];
/** §4.3.12 */
export const CENTRAL: Layout = [
  ['mark', 4],
  ['program', 2],
  ['version', 2],
  ['flags', 2],
  ['method', 2],
  ['time', 2],
  ['date', 2],
  ['checksum', 4],
  ['packed size', 4],
  ['size', 4],
  ['length of the name', 2],
  ['length of extra fields', 2],
  ['length of the comment', 2],
  ['disk', 2],
  ['inner attributes', 2],
  ['attributes', 4],
  ['offset', 4],
];
/** §4.5.3 */
export const EXTRA_64: Layout = [
  ['kind of extra field', 2],
  ['length of the extra field', 2],
  ['size', 8],
  ['packed size', 8],
  ['offset', 8],
];
/** §4.3.16; §4.3.14 and §4.3.15 in the 64-bit form. */
export const END: Layout = [
  ['mark', 4],
  ['disk', 2],
  ['disk of the directory', 2],
  ['entries on the disk', 2],
  ['entries', 2],
  ['size of the directory', 4],
  ['offset of the directory', 4],
  ['length of the comment', 2],
];
export const END_64: Layout = [
  ['mark', 4],
  ['size of the record', 8],
  ['program', 2],
  ['version', 2],
  ['disk', 4],
  ['disk of the directory', 4],
  ['entries on the disk', 8],
  ['entries', 8],
  ['size of the directory', 8],
  ['offset of the directory', 8],
  ['mark of the locator', 4],
  ['disk of the record', 4],
  ['offset of the record', 8],
  ['disks', 4],
];

export const sizeOf = (layout: Layout): number => layout.reduce((sum, [, bytes]) => sum + bytes, 0);

/** The bytes of a record; fields that are not given are zero. */
export function pack(layout: Layout, values: Readonly<Record<string, number>>): Buffer {
  const made = Buffer.alloc(sizeOf(layout));
  let at = 0;
  for (const [name, bytes] of layout) {
    // A number that has no room, as only a hostile file states it, differs all the same.
    const value = Math.min(values[name] ?? 0, bytes === 8 ? Number.MAX_SAFE_INTEGER : 2 ** (8 * bytes) - 1);
    if (bytes === 8) made.writeBigUInt64LE(BigInt(value), at);
    else made.writeUIntLE(value, at, bytes);
    at += bytes;
  }
  return made;
}

/** The values of a record that begins at an offset; all zero where the bytes run out. */
export function unpack(layout: Layout, from: Buffer, offset = 0): Record<string, number> {
  const values: Record<string, number> = {};
  let at = offset;
  for (const [name, bytes] of layout) {
    if (at + bytes > from.length) values[name] = 0;
    else values[name] = bytes === 8 ? Number(from.readBigUInt64LE(at)) : from.readUIntLE(at, bytes);
    at += bytes;
  }
  return values;
}

/** Names of the fields in which two records differ; what follows the fields is called `rest`. */
export function differences(layout: Layout, actual: Buffer, expected: Buffer, rest: string): string[] {
  const found: string[] = [];
  let at = 0;
  for (const [name, bytes] of layout) {
    if (!actual.subarray(at, at + bytes).equals(expected.subarray(at, at + bytes))) found.push(name);
    at += bytes;
  }
  if (!actual.subarray(at).equals(expected.subarray(at))) found.push(rest);
  return found;
}
