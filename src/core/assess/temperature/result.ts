import type { Line } from '../../model/delivery.js';
import type { Channel } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  Band,
  ChannelSummary,
  Cycling,
  ExcursionTotals,
  Jump,
  LegResult,
  RunModeResult,
  TemperatureResult,
  TimeRange,
  TransitWindow,
} from '../../model/results.js';
import type { UnitLog } from '../../model/unit-log.js';
import { type Alarm, alarmsOf } from '../alarms.js';
import { commonBand } from '../bands.js';
import { instrumentOf } from '../logs/recorder-identity.js';
import type { Milestones } from '../milestones.js';
import { transitWindowOf } from '../transit-window.js';
import { causeFinder } from './causes.js';
import { channelSummaries, judgedChannel } from './channels.js';
import { cyclingOf } from './cycling.js';
import { differenceOf } from './difference.js';
import { findExcursions } from './excursions.js';
import { heatOfTrip } from './heat.js';
import { jumpsIn, withoutJumps } from './jumps.js';
import { legsInCustody } from './leg-custody.js';
import { type RecordedDoor, recordedDoors } from './recorded-doors.js';
import { runModeOf } from './run.js';
import { gapLimit } from './sampling-interval.js';
import { loggedSetPoints, loggedStates } from './states.js';

/** Jumps that are listed; all are counted. */
const LISTED_JUMPS = 100;
/**
 * Return and supply air farther apart than this disagree: a cooling unit holds them closer. Kelvin; common
 * practice, no source.
 */
const AIR_APART = 6;

export interface ResultOptions {
  /** Lines of the delivery, for legs and run mode. */
  lines?: readonly Line[];
  /** A window that someone asked for, instead of the transit window. */
  requestedWindow?: TimeRange;
  /** Jumps already excluded from the log; otherwise they are excluded here. */
  jumps?: readonly Jump[];
}

/**
 * What one log shows over the transit window, or over the window asked for. Undefined when that can't be bounded:
 * neither events nor planned times say when the goods were aboard.
 */
export function temperatureResult(
  given: UnitLog,
  milestones: Milestones,
  bands: readonly Band[],
  { lines = [], requestedWindow, jumps: taken }: ResultOptions = {},
): TemperatureResult | undefined {
  const { log, jumps } = taken === undefined ? withoutJumps(given) : { log: given, jumps: taken };
  const custody =
    requestedWindow === undefined ? transitWindowOf(milestones) : requestedCustody(requestedWindow);
  if (custody === undefined) return undefined;
  const window = { from: custody.from.at, to: custody.to.at };
  const { medianStepSeconds, gapLimitSeconds } = gapLimit(log.times);
  const doors = recordedDoors(milestones);
  const run = runModeOf(log, lines, window, gapLimitSeconds);
  const alarms = alarmsOf([log], []);
  const core = { log, doors, alarms, run, gapLimitSeconds, medianStepSeconds };
  const whole = stretch(core, custody, bands, `${nameOf(log)}-`);
  const within = jumpsIn(jumps, window);
  const difference =
    log.channels['return-air'] === undefined || log.channels['supply-air'] === undefined
      ? undefined
      : differenceOf({ log, channel: 'return-air' }, { log, channel: 'supply-air' }, window, AIR_APART);
  const legs = requestedWindow === undefined ? legResults(core, milestones, lines, bands) : [];
  const { band, logged, cycling, usual, ...rest } = whole;
  return {
    log: log.evidence,
    ...omitUndefined({ compartment: log.compartment }),
    instrument: instrumentOf(log),
    ...omitUndefined({ clockSteps: log.clockSteps, clockShifts: log.clockShifts }),
    transitWindow: custody,
    custody,
    gapLimitSeconds,
    medianStepSeconds,
    ...omitUndefined({ band, bands: bands.length > 1 ? [...bands] : undefined }),
    ...rest,
    logged,
    jumps: within.slice(0, LISTED_JUMPS),
    jumpCount: within.length,
    ...omitUndefined({ returnMinusSupply: difference, usualReturnMinusSupply: usual }),
    cycling,
    ...omitUndefined({ run, legs: legs.length === 0 ? undefined : legs }),
  };
}

/** `e5`, or `e5-front` for what a log has of one compartment. */
const nameOf = ({ evidence, compartment }: UnitLog) =>
  compartment === undefined ? evidence : `${evidence}-${compartment}`;

function requestedCustody({ from, to }: TimeRange): TransitWindow | undefined {
  return to > from ? { from: { at: from, basis: 'asked' }, to: { at: to, basis: 'asked' } } : undefined;
}

interface Core {
  log: UnitLog;
  doors: readonly RecordedDoor[];
  alarms: readonly Alarm[];
  run: RunModeResult | undefined;
  gapLimitSeconds: number;
  medianStepSeconds: number;
}

/** One leg against the ranges of the lines aboard. */
function stretch(
  { log, doors, alarms, run, gapLimitSeconds, medianStepSeconds }: Core,
  custody: TransitWindow,
  bands: readonly Band[],
  ids: string,
) {
  const window = { from: custody.from.at, to: custody.to.at };
  const band = commonBand(bands);
  const judged = judgedChannel(log);
  const values = judged === undefined ? undefined : log.channels[judged];
  const logged = loggedStates(log, window, gapLimitSeconds);
  const setPoints = loggedSetPoints(log, window, gapLimitSeconds);
  const cycling = cyclings(log, window, { band, setPoints }, gapLimitSeconds);
  const startsAndStops = (run?.logged ?? run?.asked) === 'start-stop';
  const heat = heatOfTrip({ log, window, gapLimitSeconds, band, logged, setPoints, startsAndStops });
  const periodSeconds = cycling.find(({ channel }) => channel === judged)?.periodSeconds;
  const causeOf =
    band === undefined
      ? () => ({ is: 'unexplained' }) as const
      : causeFinder({
          ...{ logged, setPoints, band, custody, stepSeconds: medianStepSeconds },
          ...{ doors, alarms, run, periodSeconds },
        });
  const { excursions, excursionTotals, gaps } =
    judged === undefined || values === undefined
      ? { excursions: [], excursionTotals: { count: 0, classes: [] }, gaps: [] }
      : findExcursions(
          judged,
          log.times,
          values,
          window,
          gapLimitSeconds,
          band,
          (index) => `${ids}x${index + 1}`,
          (one) => {
            const felt = judged === 'return-air' ? heat.during(one) : undefined;
            return { cause: causeOf(one, felt?.shows), ...omitUndefined({ heat: felt }) };
          },
        );
  const channels = channelSummaries(log, window, gapLimitSeconds, band);
  const inRangeOutsideNormal =
    band === undefined ? undefined : outsideNormal(channels, judged, excursionTotals);
  return {
    ...omitUndefined({ band }),
    channels,
    ...omitUndefined({ judged }),
    excursions,
    excursionTotals: { ...excursionTotals, ...omitUndefined({ inRangeOutsideNormal }) },
    gaps,
    setPoints,
    logged,
    cycling,
    ...omitUndefined({ usual: heat.usual }),
  };
}

/** Share of the known time in range, leaving out the excursions of normal operation. */
function outsideNormal(
  channels: readonly ChannelSummary[],
  judged: Channel | undefined,
  { classes }: ExcursionTotals,
): number | undefined {
  const air = channels.find(({ channel }) => channel === judged);
  const normal = classes.find((one) => one.class === 'normal-operation')?.seconds ?? 0;
  return air === undefined || air.knownSeconds <= normal
    ? undefined
    : air.inBandSeconds / (air.knownSeconds - normal);
}

function legResults(
  core: Core,
  milestones: Milestones,
  lines: readonly Line[],
  bands: readonly Band[],
): LegResult[] {
  return legsInCustody(milestones, lines, bands).map((leg) => {
    const {
      logged: _,
      cycling: __,
      usual: ___,
      ...found
    } = stretch(core, leg.custody, leg.bands, `${nameOf(core.log)}-l${leg.leg}-`);
    return {
      leg: leg.leg,
      from: { stop: leg.from, bound: leg.custody.from },
      to: { stop: leg.to, bound: leg.custody.to },
      lines: leg.lines.map(({ id }) => id),
      ...found,
    };
  });
}

/** Cycling of return and supply air about the logged set point, or about the instructed one where the log has none. */
function cyclings(
  log: UnitLog,
  window: TimeRange,
  { band, setPoints }: { band: Band | undefined; setPoints: (TimeRange & { celsius: number })[] },
  gapLimitSeconds: number,
): Cycling[] {
  if (band === undefined) return [];
  const from = setPoints.length > 0 ? 'log' : 'bill';
  const runs = from === 'log' ? setPoints : [{ ...window, celsius: band.setPoint }];
  return (['return-air', 'supply-air'] as const).flatMap((channel) => {
    const values = log.channels[channel];
    if (values === undefined) return [];
    return cyclingOf(channel, log.times, values, runs, gapLimitSeconds, band.tolerance, from) ?? [];
  });
}
