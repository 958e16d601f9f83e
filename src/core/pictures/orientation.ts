/** How a picture is to be turned or mirrored to be upright (Exif 2.32 §4.6.4 A, tag 274); 1 is as it is. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

const TAG = 274;
const SHORT = 3;

/** Whether width and height change places. */
export const turnsSides = (orientation: Orientation): boolean => orientation >= 5;

/** What an Exif block (`Exif`, two zero bytes, TIFF) says in its first directory; 1 when it says nothing that counts. */
export function orientationOf(exif: Uint8Array): Orientation {
  const tiff = new DataView(exif.buffer, exif.byteOffset + 6, Math.max(0, exif.length - 6));
  if (tiff.byteLength < 8) return 1;
  const little = tiff.getUint16(0) === 0x4949;
  const directory = tiff.getUint32(4, little);
  if (directory + 2 > tiff.byteLength) return 1;
  for (let i = 0; i < tiff.getUint16(directory, little); i += 1) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.byteLength) return 1;
    if (tiff.getUint16(entry, little) !== TAG) continue;
    const [type, count] = [tiff.getUint16(entry + 2, little), tiff.getUint32(entry + 4, little)];
    return type === SHORT && count === 1 ? asOrientation(tiff.getUint16(entry + 8, little)) : 1;
  }
  return 1;
}

function asOrientation(value: number): Orientation {
  switch (value) {
    case 2:
    case 3:
    case 4:
    case 5:
    case 6:
    case 7:
    case 8:
      return value;
    default:
      return 1;
  }
}

/** A segment of a JPEG that says which way is up, and nothing else. */
export function orientationSegment(orientation: Orientation): Uint8Array {
  // Marker APP1 and its length; Exif; TIFF of the big end first; one directory at 8 with one entry, and none after it.
  return Uint8Array.from([
    ...[0xff, 0xe1, 0, 34],
    ...[0x45, 0x78, 0x69, 0x66, 0, 0],
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ...[0, 1, TAG >> 8, TAG & 0xff, 0, SHORT, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  ]);
}
