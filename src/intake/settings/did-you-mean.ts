import { ZONE_NAMES } from '../../core/model/zone-names.js';

/** Abbreviations that people write for a zone; each stands for more than one place, so it is only suggested. */
const SPOKEN: Record<string, string> = {
  EASTERN: 'America/New_York',
  CENTRAL: 'America/Chicago',
  MOUNTAIN: 'America/Denver',
  PACIFIC: 'America/Los_Angeles',
  EST: 'America/New_York',
  EDT: 'America/New_York',
  CST: 'America/Chicago',
  CDT: 'America/Chicago',
  MST: 'America/Denver',
  MDT: 'America/Denver',
  PST: 'America/Los_Angeles',
  PDT: 'America/Los_Angeles',
  CET: 'Europe/Paris',
  CEST: 'Europe/Paris',
};

/** The IANA zone that a wrong name most likely means, by its city. */
export function suggestZone(written: string): string | undefined {
  const spoken =
    SPOKEN[
      written
        .trim()
        .toUpperCase()
        .replace(/ (STANDARD |DAYLIGHT )?TIME$/, '')
    ];
  if (spoken !== undefined) return spoken;
  const wanted = plain(written);
  const city = wanted.split('/').at(-1) ?? wanted;
  return (
    ZONE_NAMES.find((name) => plain(name) === wanted) ??
    ZONE_NAMES.find((name) => plain(name).split('/').at(-1) === city) ??
    nearestWord(written, ZONE_NAMES)
  );
}

/** The word nearest to what was written, when a slip of the hand could explain it. */
export function nearestWord(written: string, words: readonly string[]): string | undefined {
  const wanted = plain(written);
  if (wanted.length > 80) return undefined;
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 4)) + 1;
  for (const word of words) {
    const d = editDistance(wanted, plain(word), least);
    if (d < least) {
      least = d;
      best = word;
    }
  }
  return best;
}

function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '_');
}

/** Letters left out, put in, changed, or swapped with their neighbour; gives up at `limit`. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (before[j - 2] ?? 0) + 1 : limit;
      next.push(Math.min((next[j - 1] ?? 0) + 1, (row[j] ?? 0) + 1, changed, swapped));
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? limit;
}
