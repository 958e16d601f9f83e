import { omitUndefined } from '../../model/omit-undefined.js';
import type { InstrumentRecord, Uncertainty, UncertaintyPart } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { celsius, kelvin, type Temperature, type TemperatureDifference } from '../../model/temperature.js';
import { knownMilliseconds } from '../../model/time.js';
import { thermometerAccuracy } from './assumed.js';
import { knownInstruments, namedInstrument } from './instruments.js';
import { errorAt } from './thermometer-error.js';
import { uncertaintyOf } from './uncertainty.js';

/** A check in crushed ice and water is good to about this (a fact sheet of Wisconsin, at second hand). */
const ICE_BATH: TemperatureDifference = { difference: 0.1, unit: '°F' };
/** Share of the accuracy that one check in ice water leaves, for other temperatures and drift since. Convention of this project. */
const LEFT_BY_ONE_CHECK = 1 / 2;

/** A pulp as read and as corrected by the checks of its thermometer, °C, with its uncertainty. */
export interface MeasuredPulp {
  asRead: number;
  /** As read less the thermometer's error in ice water; as read where there was no check. */
  celsius: number;
  uncertainty: Uncertainty;
  /** Key of the thermometer: readings with the same one share its error; absent where none is named. */
  thermometer?: string;
  instrument?: InstrumentRecord;
}

/** How each pulp of a record was measured. */
export type MeasurePulp = (item: ItemOf<'pulp'>) => MeasuredPulp;

export function pulpMeasures(state: RecordState): MeasurePulp {
  const { delivery } = state;
  const known = knownInstruments(state);
  const nameOf = (item: ItemOf<'pulp'>) => namedInstrument(known, item.instrument)?.name ?? item.instrument;
  const digits = finestDigits(state, nameOf);
  return (item) => {
    const name = nameOf(item);
    const found = known.find((one) => one.name === name);
    const asRead = Number(celsius(item.temperature));
    const error = found === undefined ? undefined : errorAt(found.record, knownMilliseconds(item.time));
    const stated = found?.accuracyKelvin;
    const accuracy: UncertaintyPart =
      stated === undefined
        ? thermometerAccuracy(delivery, item.temperature.unit)
        : { is: 'accuracy', halfWidthKelvin: stated, from: 'stated' };
    const step = found?.resolutionKelvin;
    return {
      asRead,
      celsius: asRead - (error?.errorKelvin ?? 0),
      uncertainty: uncertaintyOf([
        ...errorParts(accuracy, error),
        step === undefined
          ? { is: 'resolution', halfWidthKelvin: digits(name, item.temperature) / 2, from: 'digits' }
          : { is: 'resolution', halfWidthKelvin: step / 2, from: 'stated' },
      ]),
      ...omitUndefined({ thermometer: name, instrument: found?.record }),
    };
  };
}

/** What is left of a thermometer's accuracy: all without a check, half after one, the drift between two. */
function errorParts(accuracy: UncertaintyPart, error: ReturnType<typeof errorAt>): UncertaintyPart[] {
  if (error === undefined) return [accuracy];
  const bath: UncertaintyPart = { is: 'ice-bath', halfWidthKelvin: kelvin(ICE_BATH), from: 'checks' };
  return error.driftKelvin === undefined
    ? [
        {
          is: 'residual',
          halfWidthKelvin: accuracy.halfWidthKelvin * LEFT_BY_ONE_CHECK,
          from: accuracy.from,
        },
        bath,
      ]
    : [{ is: 'drift', halfWidthKelvin: error.driftKelvin, from: 'checks' }, bath];
}

/** The step of a display, K, by the finest digits that its readings were written with: 36 may be 36.0 of one with tenths. */
function finestDigits(
  { evidence }: RecordState,
  nameOf: (item: ItemOf<'pulp'>) => string | undefined,
): (name: string | undefined, of: Temperature) => number {
  const finest = new Map<string, number>();
  for (const item of evidence)
    if (item.kind === 'pulp') {
      const key = `${nameOf(item)} ${item.temperature.unit}`;
      finest.set(key, Math.min(finest.get(key) ?? 1, stepOf(item.temperature.value)));
    }
  return (name, { unit, value }) =>
    kelvin({ difference: finest.get(`${name} ${unit}`) ?? stepOf(value), unit });
}

/** The place of the last digit written: 1, 0.1 or 0.01. */
function stepOf(value: number): number {
  if (Number.isInteger(value)) return 1;
  return Math.abs(value * 10 - Math.round(value * 10)) < 1e-6 ? 0.1 : 0.01;
}
