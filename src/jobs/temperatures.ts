import { bandsOf } from '../core/assess/bands.js';
import { isAround, logNamed } from '../core/assess/logs/compartments.js';
import { firstLoading, lastUnloading, readMilestones } from '../core/assess/milestones.js';
import { withoutJumps } from '../core/assess/temperature/jumps.js';
import { temperatureResult } from '../core/assess/temperature/result.js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Assessment, LegResult, TemperatureResult, TimeRange } from '../core/model/results.js';
import type { RecordState } from '../core/model/state.js';
import { type Instant, localTime, milliseconds, readLocal, type Zone } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import { type AssessedDelivery, assessDelivery } from './assess.js';
import type { OpenDelivery } from './delivery.js';

/** Which temperatures are asked for. */
export interface TemperaturesInput extends OpenDelivery {
  at: Instant;
  /** Ends of a window other than custody: with an offset from UTC, or wall time at the first or last stop. */
  from?: string | undefined;
  to?: string | undefined;
  /** Number of a leg, or its stops as `load-1..drop-1`. */
  leg?: string | undefined;
}

/** What the unit logs show, over custody or the window asked for. */
export interface TemperaturesReport {
  state: RecordState;
  assessment: Assessment;
  /** Over custody, or over the requested window or leg; one per log. */
  results: TemperatureResult[];
  /** The logs as computed with: implausible values are unknown. */
  logs: UnitLog[];
  /** Logs that cover the same time, and where downloads of one instrument disagree. */
  overlaps: AssessedDelivery['overlaps'];
  startZone: Zone;
  endZone: Zone;
}

/**
 * The temperatures of a delivery's unit logs over custody, a window or a leg. Throws DossierError `bad-usage` for
 * an impossible window or leg.
 */
export async function temperatures(input: TemperaturesInput): Promise<TemperaturesReport> {
  const assessed = await assessDelivery(input);
  const { state, assessment } = assessed;
  const { stops } = state.delivery;
  const startZone = firstLoading(stops)?.zone ?? ('UTC' as Zone);
  const endZone = lastUnloading(stops)?.zone ?? startZone;
  const report = { state, assessment, overlaps: assessed.overlaps, startZone, endZone };
  const cleaned = assessed.logs.map((log) => withoutJumps(log));
  const logs = cleaned.map(({ log }) => log);
  if (input.leg !== undefined) {
    const results = assessment.temperatures.map((result) => {
      const leg = legOf(result, state, input.leg ?? '');
      return leg === undefined ? result : legResult(assessed, result, leg);
    });
    const last = stops.find((stop) => stop.id === results[0]?.legs?.[0]?.to.stop);
    return { ...report, results, logs, ...omitUndefined({ endZone: last?.zone }) };
  }
  if (input.from === undefined && input.to === undefined)
    return { ...report, results: assessment.temperatures, logs };
  const from = input.from === undefined ? undefined : moment(input.from, startZone, '--from');
  const to = input.to === undefined ? undefined : moment(input.to, endZone, '--to');
  const results = assessed.logs.flatMap((log) => {
    const window = assessment.temperatures.find((one) => logNamed([log], one) !== undefined)?.custody;
    const asked = { from: from ?? window?.from.at, to: to ?? window?.to.at };
    if (asked.from === undefined || asked.to === undefined)
      throw new DossierError('bad-usage', 'nothing in the record says when the goods were aboard', {
        where: { field: asked.from === undefined ? '--from' : '--to' },
        fix: 'Give both --from and --to, or record when the doors were closed and opened.',
      });
    if (asked.to <= asked.from)
      throw new DossierError('bad-usage', 'the window ends before it begins', {
        where: { field: '--to' },
        fix: 'Give a --to that is later than --from.',
      });
    return over(assessed, log, { from: asked.from, to: asked.to }, undefined) ?? [];
  });
  return { ...report, results, logs };
}

function over(
  { state, ruleSet, assessment }: AssessedDelivery,
  log: UnitLog,
  requestedWindow: TimeRange,
  aboard: readonly string[] | undefined,
): TemperatureResult | undefined {
  const lines = state.delivery.lines.filter(
    (line) => isAround(log, line) && (aboard?.includes(line.id) ?? true),
  );
  return temperatureResult(
    log,
    readMilestones(state, milliseconds(assessment.at)),
    bandsOf(lines, ruleSet.ruleSet),
    { lines, requestedWindow },
  );
}

/** The requested leg; undefined when the delivery has only one and that is requested. */
function legOf({ legs = [] }: TemperatureResult, state: RecordState, wanted: string): LegResult | undefined {
  const found = legs.find(
    (leg) => String(leg.leg) === wanted || `${leg.from.stop}..${leg.to.stop}` === wanted,
  );
  if (found !== undefined) return found;
  const [first, last] = [state.delivery.stops[0]?.id, state.delivery.stops.at(-1)?.id];
  if (legs.length === 0 && (wanted === '1' || wanted === `${first}..${last}`)) return undefined;
  throw new DossierError('bad-usage', `there is no leg "${wanted}"`, {
    where: { field: '--leg' },
    fix:
      legs.length === 0
        ? 'This delivery has one leg: leave --leg out.'
        : `Use one of: ${legs.map((leg) => `${leg.leg} (${leg.from.stop}..${leg.to.stop})`).join(', ')}.`,
  });
}

function legResult(assessed: AssessedDelivery, result: TemperatureResult, leg: LegResult): TemperatureResult {
  const asked = { from: leg.from.bound.at, to: leg.to.bound.at };
  const log = logNamed(assessed.logs, result);
  const found = (log === undefined ? undefined : over(assessed, log, asked, leg.lines)) ?? result;
  return {
    ...found,
    transitWindow: { from: leg.from.bound, to: leg.to.bound },
    custody: { from: leg.from.bound, to: leg.to.bound },
    excursions: leg.excursions,
    excursionTotals: leg.excursionTotals,
    legs: [leg],
  };
}

/** `2026-07-14T05:00-07:00`, `…Z`, or `2026-07-14T05:00` at a place. */
function moment(text: string, zone: Zone, field: string): number {
  if (/(?:Z|[+-]\d{2}:?\d{2})$/i.test(text) && !Number.isNaN(Date.parse(text))) return Date.parse(text);
  const local = localTime.safeParse(text);
  const read = local.success ? readLocal(local.data, zone) : undefined;
  if (read?.is === 'one') return milliseconds(read.instant);
  throw new DossierError(
    'bad-usage',
    read === undefined
      ? `"${text}" is not a moment`
      : `"${text}" ${read.is === 'twice' ? 'happened twice' : 'did not happen'} in ${zone}`,
    {
      where: { field },
      fix: 'Write it like 2026-07-14T05:00 (time at the place) or with its offset, 2026-07-14T05:00-07:00.',
    },
  );
}

/**
 * The dossier's chart of one log, as SVG.
 * Throws DossierError `bad-template` when the words of the delivery's language can't be read.
 */
export async function temperatureSvg(report: TemperaturesReport, result: TemperatureResult): Promise<string> {
  const [{ temperatureChart }, { drawingWords }] = await Promise.all([
    import('../core/charts/temperature.js'),
    import('./drawing-words.js'),
  ]);
  const { state, assessment, logs, startZone, endZone } = report;
  const { format, labels } = await drawingWords(state.delivery.show);
  const log = logNamed(logs, result);
  if (log === undefined) throw new Error(`no log ${result.log}`);
  return temperatureChart(
    {
      result,
      log,
      zone: startZone,
      ...omitUndefined({ otherZone: endZone === startZone ? undefined : endZone }),
      marks: assessment.timeline.items.flatMap((item) =>
        item.event === undefined ? [] : [{ at: item.at, label: labels(`event.${item.event}`) }],
      ),
      numbered: new Map(result.excursions.map((one, i) => [one.id, i + 1])),
    },
    format,
    labels,
  );
}
