import { FULL_QUALITY, type PictureQuality } from '../../compose/pictures.js';
import { DossierError } from '../../core/model/error.js';

/** Default size of a dossier that is to be e-mailed, in bytes. */
const DEFAULT_MOST = 20_000_000;
/** From full quality to the coarsest that still shows a display's digits across half a page. */
export const QUALITIES: readonly PictureQuality[] = [
  FULL_QUALITY,
  { longest: 1200, quality: 78 },
  { longest: 900, quality: 72 },
  { longest: 700, quality: 64 },
];
/** Share of the size for exhibit images; the rest is for originals. */
const IMAGES_SHARE = 0.5;

/** Choices that keep the dossier to a size. */
export interface Sizing {
  mostBytes: number;
  picture: PictureQuality;
  originalsInside: number;
  originalsNotInside: number;
}

/** Whether images of this size leave enough room; the coarsest quality always does. */
export function fits(platesBytes: number, mostBytes: number, quality: PictureQuality): boolean {
  return platesBytes <= mostBytes * IMAGES_SHARE || quality === QUALITIES.at(-1);
}

const WRITTEN = /^\s*(\d+(?:[.,]\d+)?)\s*(kB|MB|GB)\s*$/i;
const UNITS: Record<string, number> = { kb: 1e3, mb: 1e6, gb: 1e9 };

/** Parses `20MB`, in bytes. Throws DossierError `bad-usage` for anything else, or for less than 1 MB. */
export function readSize(text: string | undefined): number {
  if (text === undefined) return DEFAULT_MOST;
  const [, digits = '', unit = ''] = WRITTEN.exec(text) ?? [];
  const bytes = Number(digits.replace(',', '.')) * (UNITS[unit.toLowerCase()] ?? Number.NaN);
  if (bytes >= 1e6 && bytes <= 2e9) return bytes;
  throw new DossierError('bad-usage', `"${text}" is not a size for a dossier`, {
    where: { field: '--max-size' },
    fix: 'Write it like 20MB; from 1MB to 2GB.',
  });
}
