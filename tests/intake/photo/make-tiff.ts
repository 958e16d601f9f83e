/** A tag with its value: text, or whole numbers as LONG (SHORT where `short`), or unsigned rationals. */
export type TiffTag = readonly [
  tag: number,
  value: string | readonly number[] | { rationals: readonly [number, number][] },
];

export interface TiffFacts {
  width: number;
  height: number;
  /** Samples of a pixel, 8 bits each; the first three are red, green and blue where there are three or more. */
  samples: number;
  /** What the samples behind the colours are: 0 not said, 1 and 2 alpha (TIFF 6.0, ExtraSamples). */
  extra?: number;
  pixels: Uint8Array;
  big?: boolean;
  exif?: readonly TiffTag[];
  gps?: readonly TiffTag[];
  main?: readonly TiffTag[];
}

/**
 * A little-endian TIFF (6.0), or BigTIFF, of one strip: header, pixels, then the directories.
 * @returns the parts, so that a test can lay them far apart: all but the pixels is at `tail`
 */
export function makeTiff(facts: TiffFacts, tailAt?: number): { head: Buffer; tail: Buffer; tailAt: number } {
  const { width, height, samples, big = false, pixels } = facts;
  const headBytes = big ? 16 : 8;
  const at = tailAt ?? headBytes + pixels.length;
  const head = Buffer.alloc(headBytes + pixels.length);
  head.write('II', 0, 'latin1');
  head.writeUInt16LE(big ? 43 : 42, 2);
  if (big) {
    head.writeUInt16LE(8, 4);
    head.writeBigUInt64LE(BigInt(at), 8);
  } else head.writeUInt32LE(at, 4);
  head.set(pixels, headBytes);
  const colours = samples < 3 ? 1 : 3;
  const main: (readonly [number, number, number, Buffer])[] = [
    shorts(0x0100, [width]),
    shorts(0x0101, [height]),
    shorts(
      0x0102,
      Array.from({ length: samples }, () => 8),
    ),
    shorts(0x0103, [1]),
    shorts(0x0106, [colours === 1 ? 1 : 2]),
    ...(facts.main ?? []).map(entryOf),
    longs(0x0111, [headBytes]),
    shorts(0x0115, [samples]),
    longs(0x0116, [height]),
    longs(0x0117, [pixels.length]),
    ...(samples > colours
      ? [
          shorts(
            0x0152,
            Array.from({ length: samples - colours }, () => facts.extra ?? 0),
          ),
        ]
      : []),
  ];
  const exif = (facts.exif ?? []).map(entryOf);
  const gps = (facts.gps ?? []).map(entryOf);
  const sizeOf = (entries: readonly (readonly [number, number, number, Buffer])[]) =>
    (big ? 16 : 6) +
    entries.reduce(
      (sum, [, , , value]) => sum + (big ? 20 : 12) + (value.length > (big ? 8 : 4) ? value.length : 0),
      0,
    );
  const mainSize = sizeOf(main) + 2 * (big ? 20 : 12);
  const pointers = [longs(0x8769, [at + mainSize]), longs(0x8825, [at + mainSize + sizeOf(exif)])];
  const all = [...main, ...pointers].sort((a, b) => a[0] - b[0]);
  const tail = Buffer.concat([
    directory(all, at, big),
    directory(exif, at + mainSize, big),
    directory(gps, at + mainSize + sizeOf(exif), big),
  ]);
  return { head, tail, tailAt: at };
}

function directory(
  entries: readonly (readonly [number, number, number, Buffer])[],
  at: number,
  big: boolean,
): Buffer {
  const [countSize, rowSize, inline] = big ? [8, 20, 8] : [2, 12, 4];
  let valueAt = at + countSize + rowSize * entries.length + (big ? 8 : 4);
  const table = Buffer.alloc(countSize + rowSize * entries.length + (big ? 8 : 4));
  if (big) table.writeBigUInt64LE(BigInt(entries.length), 0);
  else table.writeUInt16LE(entries.length, 0);
  const values: Buffer[] = [];
  entries.forEach(([tag, type, count, value], i) => {
    const row = countSize + rowSize * i;
    table.writeUInt16LE(tag, row);
    table.writeUInt16LE(type, row + 2);
    if (big) table.writeBigUInt64LE(BigInt(count), row + 4);
    else table.writeUInt32LE(count, row + 4);
    const place = row + 4 + (big ? 8 : 4);
    if (value.length <= inline) table.set(value, place);
    else {
      if (big) table.writeBigUInt64LE(BigInt(valueAt), place);
      else table.writeUInt32LE(valueAt, place);
      values.push(value);
      valueAt += value.length;
    }
  });
  return Buffer.concat([table, ...values]);
}

function entryOf([tag, value]: TiffTag): readonly [number, number, number, Buffer] {
  if (typeof value === 'string') {
    const bytes = Buffer.from(value, 'latin1');
    return [tag, 2, bytes.length, bytes];
  }
  if ('rationals' in value) {
    const bytes = Buffer.alloc(8 * value.rationals.length);
    value.rationals.forEach(([over, under], i) => {
      bytes.writeUInt32LE(over, 8 * i);
      bytes.writeUInt32LE(under, 8 * i + 4);
    });
    return [tag, 5, value.rationals.length, bytes];
  }
  return shorts(tag, value);
}

function shorts(tag: number, numbers: readonly number[]): readonly [number, number, number, Buffer] {
  const bytes = Buffer.alloc(2 * numbers.length);
  numbers.forEach((n, i) => {
    bytes.writeUInt16LE(n, 2 * i);
  });
  return [tag, 3, numbers.length, bytes];
}

function longs(tag: number, numbers: readonly number[]): readonly [number, number, number, Buffer] {
  const bytes = Buffer.alloc(4 * numbers.length);
  numbers.forEach((n, i) => {
    bytes.writeUInt32LE(n, 4 * i);
  });
  return [tag, 4, numbers.length, bytes];
}
