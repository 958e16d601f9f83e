import type { Delivery } from '../../model/delivery.js';
import type { Instrument } from '../../model/measurement.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { InstrumentRecord } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { meaningsOf, milliseconds, readLocal } from '../../model/time.js';

/** The instrument that a reading names: the longest name whose words stand in the text. */
export function namedInstrument(
  instruments: readonly Instrument[],
  text: string | undefined,
): Instrument | undefined {
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

/** What is on record of an instrument, its checks in the order of time. */
export function instrumentRecord(
  { name, serial, owner, certificate, checks: all }: Instrument,
  { stops }: Pick<Delivery, 'stops'>,
): InstrumentRecord {
  const checks = all
    .map(({ reads, at, stop }) => {
      const zone = (stops.find(({ id }) => id === stop) ?? stops[0])?.zone;
      return {
        errorKelvin: Number(celsius(reads)),
        ...omitUndefined({
          at:
            at === undefined || zone === undefined
              ? undefined
              : milliseconds(meaningsOf(readLocal(at, zone))[0]),
        }),
      };
    })
    .sort((a, b) => (a.at ?? 0) - (b.at ?? 0));
  const [first, last] = [checks[0], checks.at(-1)];
  return {
    name,
    ...omitUndefined({
      serial,
      owner,
      certificate,
      driftKelvin:
        first === undefined || last === undefined || checks.length < 2
          ? undefined
          : last.errorKelvin - first.errorKelvin,
    }),
    checks,
  };
}
