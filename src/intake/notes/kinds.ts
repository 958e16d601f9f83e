import { quantityAt, temperatureAt } from './amounts.js';
import type { WordReading } from './word-reading.js';

/** The verdict of an outcome; `accepted with exceptions` takes three words. */
export function verdictAt(words: readonly string[], at: number): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  const one = (text: string, length = 1): WordReading => ({ field: 'outcome', text, length });
  if (plain === 'refusal' || plain === 'refused') return one('refused');
  if (plain === 'exception' || plain === 'excepted') return one('accepted-with-exceptions');
  if (plain !== 'acceptance' && plain !== 'accepted') return undefined;
  const excepted =
    /^with$/i.test(words[at + 1] ?? '') && /^exceptions?$/i.test((words[at + 2] ?? '').replace(/:$/, ''));
  return excepted ? one('accepted-with-exceptions', 3) : one('accepted');
}

/** Lot, count, samples, certificate and pulps; its defects are the free words. */
export function ofInspection(words: readonly string[], at: number): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  const next = words[at + 1];
  const named: Readonly<Record<string, string>> = { lot: 'word', cert: 'certificate', number: 'certificate' };
  const field = Object.hasOwn(named, plain) ? named[plain] : undefined;
  if (field !== undefined && next !== undefined) return { field, text: next, length: 2 };
  if (/^\d+$/.test(plain) && /^samples?$/i.test(next ?? ''))
    return { field: 'samples', text: plain, length: 2 };
  const degrees = temperatureAt(words, at);
  const second = /^(?:to|-|–)$/.test(words[at + (degrees?.length ?? 1)] ?? '')
    ? temperatureAt(words, at + (degrees?.length ?? 1) + 1)
    : undefined;
  if (degrees !== undefined && second !== undefined)
    return {
      field: 'pulps',
      text: `${degrees.text} to ${second.text}`,
      length: degrees.length + second.length + 1,
    };
  const much = quantityAt(words, at);
  return much === undefined ? undefined : { ...much, field: 'count' };
}

/** `serial 4471`, `cert C-12`, `ice 32.4F before`, `calibrated 2026-05-01`; a word with a figure is its name. */
export function ofInstrument(words: readonly string[], at: number): WordReading | undefined {
  const plain = (words[at] ?? '').toLowerCase();
  const next = words[at + 1];
  if (plain === 'ice') {
    const degrees = temperatureAt(words, at + 1);
    const when = (words[at + 1 + (degrees?.length ?? 0)] ?? '').toLowerCase();
    if (degrees === undefined) return undefined;
    const isAfter = when === 'after';
    const length = 1 + degrees.length + (isAfter || when === 'before' ? 1 : 0);
    return { field: isAfter ? 'iceAfter' : 'iceBefore', text: degrees.text, length };
  }
  const field = { serial: 'serial', cert: 'certificate', certificate: 'certificate', software: 'software' }[
    plain
  ];
  if (field !== undefined && next !== undefined) return { field, text: next, length: 2 };
  if ((plain === 'calibrated' || plain === 'serviced') && next !== undefined)
    return { field: plain, text: next, length: 2 };
  return /\d/.test(plain) ? { field: 'word', text: words[at] ?? '', length: 1 } : undefined;
}
