import type { Line } from '../model/delivery.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Band, PulpGroup, PulpReading, PulpSample } from '../model/results.js';
import type { RuleSet } from '../model/rule-set.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import { bandOf, ROUNDING } from './bands.js';
import { type MeasuredPulp, pulpMeasures } from './measurement/thermometers.js';
import { judgeAgainst } from './measurement/uncertainty.js';
import { byPosition, instrumentsOf } from './pulp-details.js';
import { shareBounds } from './sampling/share-bounds.js';

/** The line that evidence concerns: its own, or the only line. */
export function lineOfEvidence(
  item: { line?: string | undefined },
  lines: readonly Line[],
): Line | undefined {
  if (item.line !== undefined) return lines.find((line) => line.id === item.line);
  return lines.length === 1 ? lines[0] : undefined;
}

/** The side of a range that a temperature is on, and its distance beyond the limit, kelvin. */
export function judgePulp(
  value: number,
  band: Pick<Band, 'low' | 'high'> | undefined,
): Pick<PulpReading, 'verdict' | 'beyond'> {
  if (band === undefined) return { verdict: 'no-instruction', beyond: 0 };
  if (value > band.high + ROUNDING) return { verdict: 'above', beyond: value - band.high };
  if (value < band.low - ROUNDING) return { verdict: 'below', beyond: band.low - value };
  return { verdict: 'in-band', beyond: 0 };
}

/**
 * Pulp readings by line and stop, each compared with the line's range, in the order of lines, then stops. Readings
 * without a known line or stop are in no group, because their product is unknown.
 */
export function pulpGroups(state: RecordState, ruleSet: RuleSet): PulpGroup[] {
  const { lines, stops } = state.delivery;
  const pulps = state.evidence.filter((item): item is ItemOf<'pulp'> => item.kind === 'pulp');
  const measure = pulpMeasures(state);
  return lines.flatMap((line) => {
    const band = bandOf(line, ruleSet);
    return stops.flatMap((stop) => {
      const readings = pulps
        .filter((item) => item.place?.stop === stop.id && lineOfEvidence(item, lines) === line)
        .map((item) => pulpReading(item, measure(item), band));
      if (readings.length === 0) return [];
      const values = readings.map((one) => one.celsius);
      return [
        {
          line: line.id,
          stop: stop.id,
          does: stop.does,
          ...omitUndefined({ band: band === undefined ? undefined : { low: band.low, high: band.high } }),
          readings,
          count: values.length,
          min: Math.min(...values),
          max: Math.max(...values),
          mean: values.reduce((sum, value) => sum + value, 0) / values.length,
          inBand: inBandOf(readings),
          ...(band === undefined ? {} : { answers: answersOf(readings), sample: sampleOf(line, readings) }),
          spread: Math.max(...values) - Math.min(...values),
          byPosition: byPosition(readings),
          instruments: instrumentsOf(state, readings),
        },
      ];
    });
  });
}

const inBandOf = (readings: readonly PulpReading[]) =>
  readings.filter((one) => one.verdict === 'in-band').length;

function answersOf(readings: readonly PulpReading[]): NonNullable<PulpGroup['answers']> {
  const of = (answer: PulpReading['answer']) => readings.filter((one) => one.answer === answer).length;
  return {
    within: of('within'),
    above: of('above'),
    below: of('below'),
    'not-decidable': of('not-decidable'),
  };
}

/** Of each bound on its own; what courts and standards commonly take (common practice, no source). */
const CONFIDENCE = 0.95;

function sampleOf({ cartons }: Line, readings: readonly PulpReading[]): PulpSample {
  const taken = readings.length;
  const { least, most, by } = shareBounds(
    { taken, beyond: taken - inBandOf(readings), ...omitUndefined({ of: cartons }) },
    CONFIDENCE,
  );
  return {
    confidence: CONFIDENCE,
    least,
    most,
    by,
    ...omitUndefined({ cartons: by === 'hypergeometric' ? cartons : undefined }),
  };
}

function pulpReading(item: ItemOf<'pulp'>, measured: MeasuredPulp, band: Band | undefined): PulpReading {
  const { asRead, celsius, uncertainty, instrument, thermometer } = measured;
  const at = knownMilliseconds(item.time);
  return {
    evidence: item.evidence,
    celsius: asRead,
    ...omitUndefined({
      at,
      position: item.place?.position,
      pallet: item.place?.pallet,
      height: item.place?.height,
      carton: item.place?.carton,
    }),
    from: item.from,
    ...omitUndefined({ instrument: item.instrument }),
    ...judgePulp(asRead, band),
    ...omitUndefined({ corrected: (instrument?.checks.length ?? 0) > 0 ? celsius : undefined }),
    uncertainty,
    ...omitUndefined({ thermometer }),
    answer: band === undefined ? 'no-instruction' : judgeAgainst(celsius, uncertainty.guardKelvin, band),
  };
}
