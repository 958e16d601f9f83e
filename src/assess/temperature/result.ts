import type { Channel } from '../../model/evidence.js';
import type { Band, Excursion, Span, TemperatureResult } from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { commonBand } from '../bands.js';
import { custodyOf } from '../custody.js';
import type { Moments } from '../moments.js';
import { causeFinder } from './causes.js';
import { findExcursions } from './excursions.js';
import { loggedSetPoints, loggedStates } from './states.js';
import { gapLimit } from './steps.js';
import { summarise } from './summary.js';

/** The band is held against the first of these that the log has: return air stands for the load as a whole. */
const PROBES: readonly Channel[] = ['probe', 'probe-2', 'probe-3', 'probe-4'];
const JUDGED: readonly Channel[] = ['return-air', 'supply-air', ...PROBES];
const ALL: readonly Channel[] = [...JUDGED, 'ambient', 'set-point'];

/** The channel of a log that the band is held against. */
export function judgedChannel(log: UnitLog): Channel | undefined {
  return JUDGED.find((channel) => log.channels[channel]?.some(Number.isFinite));
}

/** First and last row of a log; undefined when it has none. */
export function extent(log: UnitLog): Span | undefined {
  const [from] = log.times;
  const to = log.times.at(-1);
  return from === undefined || to === undefined ? undefined : { from, to };
}

/**
 * What one log shows over the carrier's custody. Undefined when the custody can't be bounded: a log of one row
 * or none, and no events.
 */
export function temperatureResult(
  log: UnitLog,
  moments: Moments,
  bands: readonly Band[],
): TemperatureResult | undefined {
  const custody = custodyOf(moments, extent(log));
  if (custody === undefined) return undefined;
  const window = { from: custody.from.at, to: custody.to.at };
  const { medianStepSeconds, gapLimitSeconds } = gapLimit(log.times);
  const band = commonBand(bands);
  const judged = judgedChannel(log);
  const values = judged === undefined ? undefined : log.channels[judged];
  const logged = loggedStates(log, window, gapLimitSeconds);
  const setPoints = loggedSetPoints(log, window, gapLimitSeconds);
  const { outside, gaps } =
    judged === undefined || values === undefined
      ? { outside: [], gaps: [] }
      : findExcursions(judged, log.times, values, window, gapLimitSeconds, band);
  const causeOf =
    band === undefined
      ? undefined
      : causeFinder({ logged, setPoints, band, custody, stepSeconds: medianStepSeconds });
  const excursions: Excursion[] = outside.map((one, index) => ({
    id: `${log.evidence}-x${index + 1}`,
    ...one,
    cause: causeOf?.(one) ?? { is: 'unexplained' },
  }));
  return {
    log: log.evidence,
    custody,
    gapLimitSeconds,
    medianStepSeconds,
    ...(band === undefined ? {} : { band }),
    ...(bands.length > 1 ? { bands: [...bands] } : {}),
    channels: ALL.flatMap((channel) => {
      const column = log.channels[channel];
      if (column === undefined) return [];
      const held = JUDGED.includes(channel) ? band : undefined;
      return [summarise(channel, log.times, column, window, gapLimitSeconds, held)];
    }),
    ...(judged === undefined ? {} : { judged }),
    excursions,
    gaps,
    logged,
    setPoints,
  };
}
