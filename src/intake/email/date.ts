const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const DATE =
  /^(?:[a-z]{3}\s*,\s*)?(\d{1,2})\s+([a-z]{3})[a-z]*\s+(\d{2,4})\s+(\d{1,2}):(\d{2})(?::(\d{2}))?\s+([+-]\d{4}|[a-z]{1,5})$/i;

/** Zone names that RFC 5322 §4.3 still defines; single letters and others mean an unknown offset. */
const NAMED: Record<string, number> = {
  UT: 0,
  GMT: 0,
  UTC: 0,
  Z: 0,
  EST: -300,
  EDT: -240,
  CST: -360,
  CDT: -300,
  MST: -420,
  MDT: -360,
  PST: -480,
  PDT: -420,
};

/**
 * Parses a Date header (RFC 5322 §3.3, with the older forms of §4.3): wall-clock milliseconds as if the wall clock
 * were UTC, and the offset in minutes. Undefined for another text or an unknown offset: by the standard `-0000`
 * means that the local offset is unknown, while the instant is UTC.
 */
export function readMailDate(header: string): { wall: number; offset: number } | undefined {
  const plain = withoutComments(header.slice(0, 200)).replaceAll(/\s+/g, ' ').trim();
  const match = DATE.exec(plain);
  if (match === null) return undefined;
  const [, day = '', month = '', year = '', hour = '', minute = '', second = '0', zone = ''] = match;
  const m = MONTHS.indexOf(month.toLowerCase());
  const offset = /^[+-]/.test(zone) ? signed(zone) : NAMED[zone.toUpperCase()];
  if (m < 0 || offset === undefined) return undefined;
  const [d, h, min, s] = [Number(day), Number(hour), Number(minute), Number(second)];
  if (h > 23 || min > 59 || s > 60) return undefined;
  const midnight = Date.UTC(fullYear(year), m, d);
  if (new Date(midnight).getUTCDate() !== d) return undefined;
  return { wall: midnight + ((h * 60 + min) * 60 + s) * 1000, offset };
}

/** Two digits below 50 are in this century; three count from 1900 (RFC 5322 §4.3). */
function fullYear(text: string): number {
  const year = Number(text);
  if (text.length === 2) return year < 50 ? 2000 + year : 1900 + year;
  return text.length === 3 ? 1900 + year : year;
}

function signed(zone: string): number | undefined {
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(3, 5));
  if (Number(zone.slice(3, 5)) > 59 || minutes > 14 * 60) return undefined;
  return zone.startsWith('-') ? -minutes : minutes;
}

/** Comments may nest: `(Central (USA))`. */
function withoutComments(text: string): string {
  let depth = 0;
  let plain = '';
  for (const letter of text) {
    if (letter === '(') depth += 1;
    else if (letter === ')' && depth > 0) depth -= 1;
    else if (depth === 0) plain += letter;
  }
  return plain;
}
