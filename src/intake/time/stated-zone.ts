import { type Zone, zone as zoneSchema } from '../../core/model/time.js';
import { type NamedZone, zoneOfWord } from './zone-words.js';

/** The zone of a clock, as a heading or a line of a table states it. */
export type StatedZone =
  /** One offset all year. */
  | { is: 'offset'; minutes: number; text: string }
  | { is: 'zone'; zone: Zone; text: string }
  /** Letters such as EST, or a name such as Pacific: an offset, or a zone that follows the season. */
  | { is: 'word'; named: NamedZone; text: string }
  /** Letters that mean more than one zone. */
  | { is: 'unclear'; text: string };

const OFFSET = /(?<![\p{L}])(?:UTC|GMT|Z)?\s*([+\-−–])\s*(\d{1,2})(?::?([0-5]\d))?(?![\d:.,/-])/iu;
const UNIVERSAL = /(?<!\p{L})(?:UTC|GMT|Zulu|Z)(?!\p{L})/iu;
/** Of a word that only one part of the world uses. */
const PLAIN_WORDS = ['edt', 'cdt', 'mdt', 'pdt', 'akst', 'akdt', 'cet', 'cest', 'eet', 'eest', 'wet'];
const LETTERS = /(?<!\p{L})([A-Z]{2,4}T)(?!\p{L})/u;
const EVERYWHERE = ['America/Chicago', 'Europe/Berlin'].map((name) => zoneSchema.parse(name));

/** The zone that a text states, where the stops lie in `near`; undefined for a text that states none. */
export function zoneIn(text: string, near: readonly Zone[]): StatedZone | undefined {
  const said = text.slice(0, 200);
  const offset = OFFSET.exec(said);
  // A bare `-5` in a heading is anything; with UTC or GMT, or in hours and minutes, it is an offset.
  if (offset !== null && (/UTC|GMT/i.test(offset[0]) || offset[3] !== undefined)) {
    const minutes = Number(offset[2]) * 60 + Number(offset[3] ?? 0);
    if (minutes <= 14 * 60)
      return { is: 'offset', minutes: offset[1] === '+' ? minutes : -minutes || 0, text: offset[0].trim() };
  }
  const named = said
    .split(/[\s,;:=()]+/)
    .map((word) => (word.includes('/') ? zoneSchema.safeParse(word) : undefined))
    .find((read) => read?.success === true);
  if (named?.success === true) return { is: 'zone', zone: named.data, text: named.data };
  const universal = UNIVERSAL.exec(said);
  if (universal !== null) return { is: 'offset', minutes: 0, text: universal[0] };
  return inLetters(said, near);
}

function inLetters(said: string, near: readonly Zone[]): StatedZone | undefined {
  const letters = LETTERS.exec(said)?.[1];
  const words = letters === undefined ? namesIn(said) : [letters];
  for (const word of words) {
    const plain = PLAIN_WORDS.includes(word.toLowerCase()) ? EVERYWHERE : [];
    for (const zone of [...near, ...plain]) {
      const named = zoneOfWord(word, zone);
      if (named !== undefined) return { is: 'word', named, text: word };
    }
  }
  // Letters that are a zone's somewhere and not here: CST of a log whose stops lie in Europe.
  const elsewhere =
    letters !== undefined && EVERYWHERE.some((zone) => zoneOfWord(letters, zone) !== undefined);
  return elsewhere ? { is: 'unclear', text: letters } : undefined;
}

/** `Eastern Time`, `Pacific Daylight Time`, `(Mountain)`. */
function namesIn(said: string): string[] {
  return [
    ...said.matchAll(/[\p{L}-]+(?: (?:standard|daylight|summer))? time\b|(?<=\()[\p{L} ]+(?=\))/giu),
  ].map(([word]) => word);
}

/** Zones of the IANA list that have kept one offset since 2010 and are no whole hours from UTC, by minutes. */
const FIXED: Readonly<Record<number, string>> = {
  [-570]: 'Pacific/Marquesas',
  270: 'Asia/Kabul',
  330: 'Asia/Kolkata',
  345: 'Asia/Kathmandu',
  390: 'Asia/Yangon',
  525: 'Australia/Eucla',
  570: 'Australia/Darwin',
};

/** The zone of a clock that keeps one offset all year; undefined where the IANA list has none. */
export function fixedZone(minutes: number): Zone | undefined {
  if (minutes === 0) return zoneSchema.parse('UTC');
  const hours = minutes / 60;
  const name = Number.isInteger(hours) ? `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}` : FIXED[minutes];
  const read = name === undefined ? undefined : zoneSchema.safeParse(name);
  return read?.success === true ? read.data : undefined;
}
