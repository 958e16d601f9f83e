import { omitUndefined } from '../model/omit-undefined.js';
import type { PulpGroup, PulpReading } from '../model/results.js';
import type { EvidenceItem, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import { knownInstruments, namedInstrument } from './measurement/instruments.js';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Count and spread per part of the load, from the nose to the tail. */
export function byPosition(readings: readonly PulpReading[]): NonNullable<PulpGroup['byPosition']> {
  return (['nose', 'middle', 'tail', 'not-stated'] as const).flatMap((position) => {
    const values = readings
      .filter((one) => (one.position ?? 'not-stated') === position)
      .map((one) => one.celsius);
    if (values.length === 0) return [];
    return [
      {
        position,
        count: values.length,
        min: Math.min(...values),
        max: Math.max(...values),
        mean: mean(values),
      },
    ];
  });
}

const plain = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');

/** Ice-water checks of a thermometer: documents and photos that show one. */
function iceChecks(state: RecordState): EvidenceItem[] {
  return state.evidence.filter(
    (item) =>
      'subject' in item &&
      (item.subject?.is === 'thermometer-check' || item.subject?.is === 'thermometer-in-ice'),
  );
}

/**
 * Each thermometer of the readings, with its last ice-water check before the first of them. A check whose caption
 * or file name contains the thermometer's name is its own; otherwise the last check on file is given, with the note
 * that it does not name the thermometer.
 */
export function instrumentsOf(
  state: RecordState,
  readings: readonly PulpReading[],
): NonNullable<PulpGroup['instruments']> {
  const checks = iceChecks(state)
    .map((item) => ({ item, at: knownMilliseconds(item.time) }))
    .sort((a, b) => (a.at ?? 0) - (b.at ?? 0));
  const instruments = knownInstruments(state);
  const names = [...new Set(readings.map((one) => one.instrument))];
  return names.map((instrument) => {
    const own = readings.filter((one) => one.instrument === instrument);
    const first = Math.min(...own.map((one) => one.at ?? Number.POSITIVE_INFINITY));
    const before = checks.filter(({ at }) => at === undefined || at <= first);
    const saysWhich = ({ item }: { item: EvidenceItem }) =>
      instrument !== undefined && plain(wordsOf(item)).includes(plain(instrument));
    const named = before.findLast(saysWhich);
    const check = named ?? before.at(-1);
    const known = namedInstrument(instruments, instrument);
    return {
      ...omitUndefined({
        instrument,
        record: known?.record,
      }),
      count: own.length,
      guardKelvin: Math.max(...own.map((one) => one.uncertainty.guardKelvin)),
      ...omitUndefined({
        check:
          check === undefined
            ? undefined
            : {
                evidence: check.item.evidence,
                ...omitUndefined({ at: check.at }),
                names: named !== undefined,
              },
      }),
    };
  });
}

const wordsOf = (item: EvidenceItem) => `${item.caption ?? ''} ${'file' in item ? item.file.name : ''}`;
