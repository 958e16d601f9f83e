export type RecordingType =
  | 'video/mp4'
  | 'video/quicktime'
  | 'video/3gpp'
  | 'video/webm'
  | 'audio/mp4'
  | 'audio/ogg'
  | 'audio/mpeg'
  | 'audio/wav'
  | 'audio/amr';

/** Brands of the `ftyp` box by their beginnings (ISO/IEC 14496-12 annex E, 3GPP TS 26.244, QuickTime). */
const FILM_BRANDS: readonly (readonly [RegExp, RecordingType])[] = [
  [/^M4[AB]/, 'audio/mp4'],
  [/^qt/, 'video/quicktime'],
  [/^3g/, 'video/3gpp'],
  [/^(?:isom|iso\d|mp4\d|avc1|M4V|MSNV|dash|f4v)/, 'video/mp4'],
];

/** Films and recorded sounds by the beginning of their containers; undefined for other files. */
export function recordingType(head: Uint8Array): RecordingType | undefined {
  const text = Buffer.from(head.subarray(0, 12)).toString('latin1');
  if (text.slice(4, 8) === 'ftyp') {
    const brand = text.slice(8, 12);
    return FILM_BRANDS.find(([begin]) => begin.test(brand))?.[1];
  }
  if (text.startsWith('OggS')) return 'audio/ogg';
  if (text.startsWith('#!AMR')) return 'audio/amr';
  if (text.startsWith('RIFF') && text.slice(8, 12) === 'WAVE') return 'audio/wav';
  // EBML, which Matroska and WebM begin with.
  if (text.startsWith('\x1aE\xdf\xa3')) return 'video/webm';
  return text.startsWith('ID3') ? 'audio/mpeg' : undefined;
}
