import {
  EXIF_DIRECTORY,
  GPS_DIRECTORY,
  type TiffEntry,
  withTiff,
} from '../../platform/node/pictures/tiff-file.js';

/** Tags that are read, of any directory: those of `TAGS` in exif.ts, by TIFF 6.0 and Exif 2.32. */
const WANTED = new Set([
  ...[0x010f, 0x0110, 0x0112, 0x0131, 0x0132],
  ...[0x9003, 0x9004, 0x9010, 0x9011, 0x9012, 0x9290, 0x9291, 0x9292, 0xa431],
]);
const WANTED_GPS = new Set([0x0001, 0x0002, 0x0003, 0x0004, 0x0007, 0x001d]);

/**
 * The wanted tags of a TIFF file as a small TIFF block of their own, so that one reader serves all pictures. Reads the
 * directories where they lie and nothing between, so that the size of the file does not matter. Undefined when the
 * file is no TIFF or its first directory is out of place.
 */
export function tiffTags(path: string): Uint8Array | undefined {
  return withTiff(path, (tiff) => {
    const main = tiff.directory(tiff.first, WANTED);
    const under = (tag: number, wanted: ReadonlySet<number>): TiffEntry[] => {
      const at = main.places.get(tag);
      return at === undefined ? [] : damagedAsEmpty(() => tiff.directory(at, wanted).entries);
    };
    return block(
      tiff.littleEndian,
      main.entries,
      under(EXIF_DIRECTORY, WANTED),
      under(GPS_DIRECTORY, WANTED_GPS),
    );
  });
}

/** A damaged directory costs its own tags only. */
function damagedAsEmpty(read: () => TiffEntry[]): TiffEntry[] {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** A classic TIFF of three directories, each followed by its values. */
function block(littleEndian: boolean, main: TiffEntry[], exif: TiffEntry[], gps: TiffEntry[]): Uint8Array {
  const number = (value: number, length: number): Buffer => {
    const bytes = Buffer.alloc(length);
    if (littleEndian) bytes.writeUIntLE(value, 0, length);
    else bytes.writeUIntBE(value, 0, length);
    return bytes;
  };
  const sizeOf = (entries: readonly TiffEntry[]): number =>
    6 + entries.reduce((sum, { value }) => sum + 12 + (value.length > 4 ? value.length : 0), 0);
  const place = (at: number): Buffer => number(at, 4);
  const exifAt = 8 + sizeOf(main) + 24;
  const pointers: TiffEntry[] = [
    { tag: EXIF_DIRECTORY, type: 4, count: 1, value: place(exifAt) },
    { tag: GPS_DIRECTORY, type: 4, count: 1, value: place(exifAt + sizeOf(exif)) },
  ];
  const directory = (entries: readonly TiffEntry[], at: number): Buffer => {
    let valueAt = at + 6 + 12 * entries.length;
    const values: Buffer[] = [];
    const rows = entries.map(({ tag, type, count, value }) => {
      const inline = value.length <= 4;
      const last = inline ? Buffer.concat([value, Buffer.alloc(4 - value.length)]) : place(valueAt);
      if (!inline) {
        values.push(value);
        valueAt += value.length;
      }
      return Buffer.concat([number(tag, 2), number(type, 2), number(count, 4), last]);
    });
    return Buffer.concat([number(entries.length, 2), ...rows, number(0, 4), ...values]);
  };
  return Buffer.concat([
    Buffer.from(littleEndian ? 'II' : 'MM', 'latin1'),
    number(42, 2),
    place(8),
    directory([...main, ...pointers], 8),
    directory(exif, exifAt),
    directory(gps, exifAt + sizeOf(exif)),
  ]);
}
