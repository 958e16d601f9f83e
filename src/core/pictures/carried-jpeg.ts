import { jpegSegments } from './jpeg-segments.js';
import { orientationOf, orientationSegment, turnsSides } from './orientation.js';

/** A JPEG as pages carry it: the coded picture of a file, and nothing that was written beside it. */
export interface CarriedJpeg {
  bytes: Uint8Array;
  /** As it is seen, turned upright. */
  width: number;
  height: number;
}

/**
 * The tables and coded data of a JPEG file as they are, without camera data, positions, previews, comments and what
 * lies behind the end of the picture. Two things are kept of the rest because the picture looks otherwise without them:
 * which way is up, alone in an Exif block of its own, and a colour profile.
 * Undefined for a file that a PDF reader could show otherwise than a picture viewer: coded otherwise than in baseline
 * or progressive form (ITU-T T.81) with eight bits, in grey or the colours of JFIF, or with a profile that says of
 * itself that it is for something else. What is said about the file's own order of bytes is not that it is whole.
 */
export function carriedJpeg(file: Uint8Array): CarriedJpeg | undefined {
  const segments = jpegSegments(file);
  if (segments === undefined) return undefined;
  const frame = segments.find(({ is }) => is === 'frame')?.content;
  if (frame === undefined) return undefined;
  const view = new DataView(frame.buffer, frame.byteOffset, frame.length);
  const [bits, height, width, components] = [
    view.getUint8(0),
    view.getUint16(1),
    view.getUint16(3),
    view.getUint8(5),
  ];
  if (bits !== 8 || width === 0 || height === 0 || frame.length !== 6 + 3 * components) return undefined;
  if (components !== 1 && components !== 3) return undefined;
  if (components === 3 && !isOfJfif(frame, segments.find(({ is }) => is === 'adobe')?.content))
    return undefined;
  const profile = segments.filter(({ is }) => is === 'profile');
  if (
    !isPlainProfile(
      profile.map(({ content }) => content),
      components,
    )
  )
    return undefined;
  const exif = segments.find(({ is }) => is === 'exif');
  const orientation = exif === undefined ? 1 : orientationOf(exif.content);
  const kept = segments.filter(({ is }) => is === 'picture' || is === 'frame');
  const bytes = joined([
    START,
    ...(orientation === 1 ? [] : [orientationSegment(orientation)]),
    ...profile.map((one) => one.bytes),
    ...kept.map((one) => one.bytes),
    END,
  ]);
  return turnsSides(orientation) ? { bytes, width: height, height: width } : { bytes, width, height };
}

const START = Uint8Array.of(0xff, 0xd8);
const END = Uint8Array.of(0xff, 0xd9);

/** Brightness and two differences of colour: the names of components, or Adobe's mark, can say red, green and blue. */
function isOfJfif(frame: Uint8Array, adobe: Uint8Array | undefined): boolean {
  const names = String.fromCharCode(frame[6] ?? 0, frame[9] ?? 0, frame[12] ?? 0);
  return names !== 'RGB' && (adobe === undefined || adobe[11] === 1);
}

/** Of a screen, camera or printer, for as many colours: what PDF/A allows (ISO 19005-3 §6.2.4.2). None is plain. */
function isPlainProfile(parts: readonly Uint8Array[], components: 1 | 3): boolean {
  if (parts.length === 0) return true;
  const ordered = parts.every((part, i) => part[12] === i + 1 && part[13] === parts.length);
  const profile = joined(parts.map((part) => part.subarray(14)));
  if (!ordered || profile.length < 132 || profile.length > MOST_PROFILE) return false;
  const view = new DataView(profile.buffer, profile.byteOffset, profile.length);
  const text = (at: number) => String.fromCharCode(...profile.subarray(at, at + 4));
  return (
    view.getUint32(0) === profile.length &&
    (profile[8] === 2 || profile[8] === 4) &&
    ['mntr', 'scnr', 'prtr', 'spac'].includes(text(12)) &&
    text(16) === (components === 1 ? 'GRAY' : 'RGB ') &&
    text(36) === 'acsp'
  );
}

/** Bytes of a profile. One of a screen or camera has 500 to 4,000; those with tables for printing are larger. */
const MOST_PROFILE = 64 * 1024;

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
