/** How long a passphrase that a person chose may last against one who has the key file. */
export interface PassphraseStrength {
  /** Estimated entropy. */
  bits: number;
  /** Until half of all guesses are made by one machine at `GUESSES_PER_SECOND`. */
  seconds: number;
}

/** One machine with good graphics cards at the rounds of `sealKey`; an order of magnitude, from memory. */
const GUESSES_PER_SECOND = 20_000;

/**
 * The rule of NIST SP 800-63-1 (2011), appendix A.2.1, for passwords that people choose, from memory: 4 bits for the
 * first character, 2 for each up to the eighth, 1.5 up to the twentieth, 1 for each further one, and 6 for capitals
 * together with figures or signs. A character that repeats the one before counts nothing.
 */
export function passphraseStrength(passphrase: string): PassphraseStrength {
  const count = [...passphrase].filter((one, at, all) => one !== all[at - 1]).length;
  const between = (from: number, to: number) => Math.max(0, Math.min(count, to) - from);
  const mixed = /\p{Lu}/u.test(passphrase) && /[^\p{L}\s]/u.test(passphrase) ? 6 : 0;
  const bits = between(0, 1) * 4 + between(1, 8) * 2 + between(8, 20) * 1.5 + between(20, Infinity) + mixed;
  return { bits, seconds: 2 ** (bits - 1) / GUESSES_PER_SECOND };
}

const SPANS = [
  [365.25 * 86_400, 'years'],
  [86_400, 'days'],
  [3600, 'hours'],
  [60, 'minutes'],
] as const;

/** Such as `may be guessed in about 15 minutes by one machine that has the key file: take more words`. */
export function strengthWords({ seconds }: PassphraseStrength): string {
  const [span, unit] = SPANS.find(([length]) => seconds >= 2 * length) ?? [60, 'minutes'];
  const count = Math.max(1, Math.round(seconds / span));
  const time = count > 1000 && unit === 'years' ? 'more than a thousand years' : `about ${count} ${unit}`;
  const advice = seconds < 365.25 * 86_400 ? ': take more words' : '';
  return `may be guessed in ${time} by one machine that has the key file${advice}`;
}
