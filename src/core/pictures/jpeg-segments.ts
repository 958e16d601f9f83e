/** A piece of a JPEG file, from its marker on. */
export interface JpegSegment {
  /**
   * `picture`: quantization and Huffman tables, restart interval, and a scan with its coded data; `frame`: the head of
   * the picture; `exif`, `profile` and `adobe`: what can change how it looks; `other`: everything else.
   */
  is: 'picture' | 'frame' | 'exif' | 'profile' | 'adobe' | 'other';
  /** All of it. */
  bytes: Uint8Array;
  /** What follows marker and length. */
  content: Uint8Array;
}

const [SOI, EOI, SOS, DHT, DQT, DRI, COM] = [0xd8, 0xd9, 0xda, 0xc4, 0xdb, 0xdd, 0xfe];
/** Baseline and progressive. */
const FRAMES = new Set([0xc0, 0xc2]);

/**
 * The segments of a JPEG up to the end of its picture (ITU-T T.81 annex B), in the order of the file.
 * Undefined when they do not follow one another to the end of image, or when one is of another form of JPEG.
 */
export function jpegSegments(file: Uint8Array): JpegSegment[] | undefined {
  const segments: JpegSegment[] = [];
  if (file[0] !== 0xff || file[1] !== SOI) return undefined;
  for (let at = 2; at + 1 < file.length; ) {
    const marker = file[at + 1] ?? 0;
    if (file[at] !== 0xff || (marker === 0 && !hasScan(segments))) {
      const next = hasScan(segments) ? -1 : file.indexOf(0xff, at + 1);
      if (next < 0 || next - at > MOST_STRAY) return undefined;
      at = next;
      continue;
    }
    if (marker === 0xff) {
      // Any number of these may stand before a marker.
      at += 1;
      continue;
    }
    if (marker === EOI) {
      const has = (is: JpegSegment['is']) => segments.filter((one) => one.is === is).length;
      return has('frame') === 1 && hasScan(segments) ? segments : undefined;
    }
    const length = (file[at + 2] ?? 0) * 256 + (file[at + 3] ?? 0);
    const end = at + 2 + length;
    if (length < 2 || end > file.length) return undefined;
    const content = file.subarray(at + 4, end);
    const is = kindOf(marker, content);
    if (is === undefined) return undefined;
    const to = marker === SOS ? endOfScan(file, end) : end;
    segments.push({ is, bytes: file.subarray(at, to), content });
    at = to;
  }
  return undefined;
}

/** Bytes that belong to no segment, in the head of a picture: decoders pass them over, and they are left out here. */
const MOST_STRAY = 64 * 1024;

const hasScan = (segments: readonly JpegSegment[]) => segments.some(({ bytes }) => bytes[1] === SOS);

/** Undefined for what belongs to other forms of JPEG. */
function kindOf(marker: number, content: Uint8Array): JpegSegment['is'] | undefined {
  if (FRAMES.has(marker)) return 'frame';
  if (marker === SOS || marker === DHT || marker === DQT || marker === DRI) return 'picture';
  if (marker === 0xe1 && begins(content, 'Exif\0\0')) return 'exif';
  if (marker === 0xe2 && begins(content, 'ICC_PROFILE\0')) return 'profile';
  if (marker === 0xee && begins(content, 'Adobe')) return 'adobe';
  return (marker >= 0xe0 && marker <= 0xef) || marker === COM ? 'other' : undefined;
}

const begins = (content: Uint8Array, word: string) =>
  [...word].every((character, i) => content[i] === character.charCodeAt(0));

/** Where the marker behind coded data is: zero bytes and restart markers behind 0xFF belong to the data. */
function endOfScan(file: Uint8Array, begin: number): number {
  for (let at = file.indexOf(0xff, begin); at >= 0; at = file.indexOf(0xff, at + 2)) {
    const next = file[at + 1] ?? 0;
    if (next !== 0 && (next < 0xd0 || next > 0xd7)) return at;
  }
  return file.length;
}
