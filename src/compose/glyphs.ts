import { createRequire } from 'node:module';
import { DRAWABLE } from './drawable-ranges.js';

const require = createRequire(import.meta.url);
const SHIPPED = [
  '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
  '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  '@expo-google-fonts/source-code-pro/400Regular/SourceCodePro_400Regular.ttf',
] as const;

/** The open fonts of every dossier, so that one record looks the same everywhere. */
export function fontFiles(): string[] {
  return SHIPPED.map((name) => require.resolve(name));
}

let shared: ReadonlySet<number> | undefined;
/** Code points that all shipped fonts have. */
export function drawableCodePoints(): ReadonlySet<number> {
  shared ??= new Set(
    DRAWABLE.trim()
      .split(/\s+/)
      .flatMap((range) => {
        const [first = 0, last = first] = range.split('-').map((point) => Number.parseInt(point, 16));
        return Array.from({ length: last - first + 1 }, (_, i) => first + i);
      }),
  );
  return shared;
}

const NEWLINE = 0x0a;
const BOX = '□';
/** Variation selectors: they choose a glyph's style and carry no text. */
const isVariationSelector = (point: number) => point === 0xfe0e || point === 0xfe0f;
/** Characters that are invisible or turn the reading direction: an invisible word falsifies a printed page. */
const UNSEEN =
  /^(?:[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]|\u034f|\u115f|\u1160|\u17b4|\u17b5|\u2028|\u2029|\u3164|\uffa0)$/u;
const SPACES = /^\p{Zs}$/u;

const named = (point: number) => `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;

export interface GlyphCleaner {
  /** The text, with visible replacements for characters that the fonts lack or that would not show. */
  clean(text: string): string;
  /** Replaced code points, in order. */
  replaced(): { point: string; count: number; shownAs: string }[];
}

/**
 * Makes text fit for typesetting; keeps line feeds. Private use, unassigned and surrogate code points are shown as
 * their number.
 */
export function glyphCleaner(points: ReadonlySet<number>): GlyphCleaner {
  const counts = new Map<number, { count: number; shownAs: string }>();
  const replace = (point: number, shownAs: string) => {
    const seen = counts.get(point) ?? { count: 0, shownAs };
    seen.count += 1;
    counts.set(point, seen);
    return shownAs;
  };
  return {
    clean(text) {
      let out = '';
      for (const character of text.normalize('NFC')) {
        const point = character.codePointAt(0) ?? 0;
        if (point === NEWLINE || (point >= 0x20 && point < 0x7f)) out += character;
        else if (point === 0x09) out += ' ';
        else if (isVariationSelector(point)) out += '';
        else if (UNSEEN.test(character)) out += replace(point, `[${named(point)}]`);
        else if (points.has(point)) out += character;
        else if (SPACES.test(character)) out += ' ';
        else out += replace(point, BOX);
      }
      return out;
    },
    replaced: () =>
      [...counts.entries()]
        .sort(([a], [b]) => a - b)
        .map(([point, { count, shownAs }]) => ({ point: named(point), count, shownAs })),
  };
}

/** Cleans every string in a value of plain data. */
export function cleanDeep<T>(value: T, cleaner: GlyphCleaner): T;
export function cleanDeep(value: unknown, cleaner: GlyphCleaner): unknown {
  if (typeof value === 'string') return cleaner.clean(value);
  if (Array.isArray(value)) return value.map((item: unknown) => cleanDeep(item, cleaner));
  if (value !== null && typeof value === 'object')
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, cleanDeep(item, cleaner)]));
  return value;
}
