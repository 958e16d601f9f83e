import type { Delivery } from '../../model/delivery.js';
import type { Instrument } from '../../model/measurement.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { IceCheck, InstrumentRecord } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { celsius, kelvin, type Temperature, writtenTemperatureDifference } from '../../model/temperature.js';
import { meaningsOf, milliseconds, readLocal } from '../../model/time.js';

/** A thermometer by all that is on record of it. */
export interface KnownInstrument {
  name: string;
  accuracyKelvin?: number;
  resolutionKelvin?: number;
  record: InstrumentRecord;
}

/** Instruments of delivery.yaml and those that were recorded, each name once; what was recorded later counts. */
export function knownInstruments({ delivery, evidence }: RecordState): KnownInstrument[] {
  const known = new Map<string, KnownInstrument>();
  const add = (one: KnownInstrument) => {
    const before = known.get(spaced(one.name));
    known.set(spaced(one.name), before === undefined ? one : merged(before, one));
  };
  for (const one of delivery.instruments ?? []) add(ofFacts(one, delivery));
  for (const item of evidence) if (item.kind === 'instrument') add(ofEvidence(item));
  return [...known.values()];
}

/** The instrument that a reading names: the longest name whose words stand in the text. */
export function namedInstrument<I extends { name: string }>(
  instruments: readonly I[],
  text: string | undefined,
): I | undefined {
  if (text === undefined) return undefined;
  const words = spaced(text);
  return instruments
    .filter(({ name }) => words.includes(spaced(name)))
    .sort((a, b) => b.name.length - a.name.length)[0];
}

/** Words between single spaces, so that P-7 stands in `probe P-7` and not in `P-71`. */
const spaced = (text: string): string =>
  ` ${text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .join(' ')} `;

const errorOf = (shown: Temperature): number => Number(celsius(shown));

function ofFacts(one: Instrument, { stops }: Pick<Delivery, 'stops'>): KnownInstrument {
  const { name, serial, owner, certificate, accuracy, resolution } = one;
  const checks = one.checks.map(({ reads, at, stop }): IceCheck => {
    const zone = (stops.find(({ id }) => id === stop) ?? stops[0])?.zone;
    const time =
      at === undefined || zone === undefined ? undefined : milliseconds(meaningsOf(readLocal(at, zone))[0]);
    return { errorKelvin: errorOf(reads), ...omitUndefined({ at: time }) };
  });
  return {
    name,
    ...omitUndefined({
      accuracyKelvin: accuracy === undefined ? undefined : kelvin(accuracy),
      resolutionKelvin: resolution === undefined ? undefined : kelvin(resolution),
    }),
    record: withDrift({ name, ...omitUndefined({ serial, owner, certificate }), checks }),
  };
}

function ofEvidence(item: ItemOf<'instrument'>): KnownInstrument {
  const { name, serial, certificate, accuracy, iceBefore, iceAfter } = item;
  const owner = item.owner?.name ?? item.owner?.party;
  // As stated: `±1 °F`, `1 °F`. Other words say nothing that can be computed with.
  const read = writtenTemperatureDifference.safeParse(accuracy?.replace(/^[\s±+/−-]+/u, '') ?? '');
  const checks: IceCheck[] = [
    ...(iceBefore === undefined ? [] : [{ use: 'before' as const, errorKelvin: errorOf(iceBefore) }]),
    ...(iceAfter === undefined ? [] : [{ use: 'after' as const, errorKelvin: errorOf(iceAfter) }]),
  ];
  return {
    name,
    ...omitUndefined({ accuracyKelvin: read.success ? Number(kelvin(read.data)) : undefined }),
    record: withDrift({ name, ...omitUndefined({ serial, owner, certificate }), checks }),
  };
}

function merged(one: KnownInstrument, later: KnownInstrument): KnownInstrument {
  const checks = [...one.record.checks, ...later.record.checks];
  return {
    ...one,
    ...later,
    name: one.name,
    record: withDrift({ ...one.record, ...later.record, name: one.name, checks }),
  };
}

/** When a check was, in the order of time: before and after stand at the ends. */
export const timeOfCheck = ({ at, use }: IceCheck): number =>
  at ?? (use === 'after' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY);

function withDrift({ checks: all, driftKelvin: _, ...record }: InstrumentRecord): InstrumentRecord {
  const checks = [...all].sort((a, b) => {
    const [first, second] = [timeOfCheck(a), timeOfCheck(b)];
    return first === second ? 0 : first - second;
  });
  const [first, last] = [checks[0], checks.at(-1)];
  return {
    ...record,
    checks,
    ...omitUndefined({
      driftKelvin:
        first === undefined || last === undefined || checks.length < 2
          ? undefined
          : last.errorKelvin - first.errorKelvin,
    }),
  };
}
