import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type Zone, zone as zoneSchema } from '../../core/model/time.js';

/** A zone as people name it, and the offset in minutes where the word itself states one. */
export interface NamedZone {
  zone: Zone;
  /** Minutes east of UTC of `PDT`; left out for `PT` and `Pacific`, which follow the season. */
  offset?: number;
}

type Row = readonly [
  zone: string,
  names: readonly string[],
  standard: readonly [string, number],
  summer?: readonly [string, number],
];

/** 15 U.S.C. 263 has the names in the United States; the letters are common practice, no source. */
const NORTH_AMERICA: readonly Row[] = [
  ['America/St_Johns', ['newfoundland'], ['nst', -210], ['ndt', -150]],
  ['America/Halifax', ['atlantic'], ['ast', -240], ['adt', -180]],
  ['America/New_York', ['eastern', 'et'], ['est', -300], ['edt', -240]],
  ['America/Chicago', ['central', 'ct'], ['cst', -360], ['cdt', -300]],
  ['America/Denver', ['mountain', 'mt'], ['mst', -420], ['mdt', -360]],
  ['America/Los_Angeles', ['pacific', 'pt'], ['pst', -480], ['pdt', -420]],
  ['America/Anchorage', ['alaska', 'akt'], ['akst', -540], ['akdt', -480]],
  ['Pacific/Honolulu', ['hawaii', 'hawaii-aleutian'], ['hst', -600]],
];

const EUROPE: readonly Row[] = [
  ['Europe/London', ['uk', 'british'], ['gmt', 0], ['bst', 60]],
  ['Europe/Lisbon', ['western european'], ['wet', 0], ['west', 60]],
  ['Europe/Berlin', ['central european'], ['cet', 60], ['cest', 120]],
  ['Europe/Athens', ['eastern european'], ['eet', 120], ['eest', 180]],
];

/**
 * The zone that a word such as `ET`, `PDT`, `Pacific` or `Mountain Time` means to people near a zone: CST is Chicago's
 * in America, and nothing is assumed elsewhere. Undefined for other words.
 */
export function zoneOfWord(word: string, near: Zone): NamedZone | undefined {
  return zoneIn(word, wordsNear(near));
}

/** Whether a word names a zone to people somewhere. */
export function isZoneWord(word: string): boolean {
  return zoneIn(word, [...NORTH_AMERICA, ...EUROPE]) !== undefined;
}

function zoneIn(word: string, rows: readonly Row[]): NamedZone | undefined {
  const plain = word
    .trim()
    .toLowerCase()
    .replace(/\.$/, '')
    .replace(/\s+(?:(standard|daylight|summer)\s+)?time$/, (_, season: string | undefined) =>
      season === undefined ? '' : ` ${season}`,
    );
  for (const [zone, names, standard, summer] of rows) {
    const offset =
      plain === standard[0] || names.some((name) => plain === `${name} standard`)
        ? standard[1]
        : summer !== undefined &&
            (plain === summer[0] ||
              names.some((name) => new RegExp(`^${name} (daylight|summer)$`).test(plain)))
          ? summer[1]
          : undefined;
    if (offset !== undefined || names.includes(plain))
      return { zone: zoneSchema.parse(zone), ...omitUndefined({ offset }) };
  }
  return undefined;
}

function wordsNear(zone: Zone): readonly Row[] {
  if (/^(?:America|US|Canada|Mexico)\/|^Pacific\/Honolulu$/.test(zone)) return NORTH_AMERICA;
  return /^(?:Europe|Atlantic)\//.test(zone) ? EUROPE : [];
}
