/** Names of the months, January first, by language (BCP 47), in lower case without accents. */
const MONTHS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  en: [
    ['january'],
    ['february'],
    ['march'],
    ['april'],
    ['may'],
    ['june'],
    ['july'],
    ['august'],
    ['september'],
    ['october'],
    ['november'],
    ['december'],
  ],
  es: [
    ['enero'],
    ['febrero'],
    ['marzo'],
    ['abril'],
    ['mayo'],
    ['junio'],
    ['julio'],
    ['agosto'],
    ['septiembre', 'setiembre'],
    ['octubre'],
    ['noviembre'],
    ['diciembre'],
  ],
  fr: [
    ['janvier'],
    ['fevrier'],
    ['mars'],
    ['avril'],
    ['mai'],
    ['juin'],
    ['juillet'],
    ['aout'],
    ['septembre'],
    ['octobre'],
    ['novembre'],
    ['decembre'],
  ],
};

/** Beginnings of at least three letters that mean one month in all languages: `jui` is June and July in French. */
const BEGINNINGS: ReadonlyMap<string, number> = beginnings();

function beginnings(): Map<string, number> {
  const found = new Map<string, number>();
  for (const names of Object.values(MONTHS))
    names.forEach((forms, index) => {
      for (const form of forms)
        for (let length = 3; length <= form.length; length++) {
          const start = form.slice(0, length);
          const known = found.get(start);
          found.set(start, known === undefined || known === index + 1 ? index + 1 : 0);
        }
    });
  return found;
}

/** Number of a month from its name or the beginning of it, in English, Spanish or French, accents or not; undefined for any other word. */
export function monthOf(name: string): number | undefined {
  const plain = withoutAccents(name).toLowerCase().replace(/\.$/, '');
  const month = BEGINNINGS.get(plain) ?? 0;
  return month === 0 ? undefined : month;
}

/** Letters without their accents. */
export function withoutAccents(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '');
}
