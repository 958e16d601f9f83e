import type { Shortfall } from '../../../model/results.js';
import type { MilestoneOffset, SimpleNeed } from '../../../model/rule-set.js';
import { kelvin } from '../../../model/temperature.js';
import type { UnitLog } from '../../../model/unit-log.js';
import { ROUNDING } from '../../bands.js';
import {
  earliestTimeOf,
  type KnownMilestone,
  latestTimeOf,
  type StopSide,
  sideOfMilestone,
  stopsOf,
} from '../../milestones.js';
import { judgedChannel } from '../../temperature/channels.js';
import { knownShare } from '../../temperature/coverage.js';
import type { RuleContext } from '../context.js';
import { nearestInstruction } from '../instructed.js';
import { shortfall } from '../shortfalls.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';
import { stopOfLine, substituteEventNote } from '../window.js';

type LogNeed = Extract<SimpleNeed, { log: unknown }>;

/**
 * Whether the unit logs together cover enough of the window (until its end, or to now), and whether their last
 * known air is near the instructed temperature.
 */
export function logVerdict(context: RuleContext, need: LogNeed): NeedVerdict {
  const usable = context.logs.filter((log) => log.times.length > 1 && (log.times.at(0) ?? 0) <= context.now);
  if (usable.length === 0) return { ...emptyVerdict(), lacking: [shortfall('no-log', {})] };
  const start = edge(context, need.from, undefined, 'from');
  const end = edge(context, need.to, 'arrival', 'to');
  const counted = usable.map((log) => log.evidence);
  if (start === undefined)
    return {
      ...emptyVerdict(),
      outcome: 'short',
      counted,
      lacking: [shortfall('log-start-unknown', { moment: need.from.moment })],
    };
  const from = start.at + need.from.seconds * 1000;
  const to = end === undefined ? context.now : Math.min(context.now, end.at + need.to.seconds * 1000);
  const share = knownShare(usable, { from, to });
  const enough = share > 0 && share + 1e-9 >= need.coverage;
  const air = airShortfalls(context, need, usable, from, to);
  const lacking = [...(enough ? [] : [shortOf(share, need.coverage)]), ...air];
  return {
    ...emptyVerdict(),
    outcome:
      share > 0 && air.some((one) => one.is === 'air-off')
        ? 'contradicted'
        : lacking.length === 0
          ? 'met'
          : share > 0
            ? 'short'
            : 'missing',
    counted: share > 0 ? counted : [],
    rejected: share > 0 ? [] : counted.map((evidence) => ({ evidence, why: 'bad-value' })),
    against: share > 0 && air.some((one) => one.is === 'air-off') ? counted : [],
    lacking,
    notes: [...substituteEventNote(need.from.moment, start), ...substituteEventNote(need.to.moment, end)],
  };
}

/** Shares are truncated to whole hundredths, so that 94.9 % never reads as the required 95 %. */
const shortOf = (share: number, need: number): Shortfall =>
  shortfall('log-short', {
    known: { is: 'share', of: Math.floor(share * 100) / 100 },
    need: { is: 'share', of: need },
  });

function airShortfalls(
  context: RuleContext,
  need: LogNeed,
  logs: readonly UnitLog[],
  from: number,
  to: number,
): Shortfall[] {
  if (need.airWithin === undefined) return [];
  const last = logs.map((log) => lastAir(log, from, to)).filter((one) => one !== undefined);
  const latest = last.reduce<{ at: number; celsius: number } | undefined>(
    (best, one) => (best === undefined || one.at > best.at ? one : best),
    undefined,
  );
  if (latest === undefined) return [shortfall('no-air-in-log', {})];
  const far = nearestInstruction(context, latest.celsius);
  if (far === undefined || far.kelvin <= kelvin(need.airWithin) + ROUNDING) return [];
  return [
    shortfall('air-off', {
      air: { is: 'temperature', celsius: latest.celsius },
      asked: { is: 'temperature', celsius: far.asked },
      allowed: { is: 'difference', kelvin: kelvin(need.airWithin) },
    }),
  ];
}

/** Last known value of the judged channel in the window. */
function lastAir(log: UnitLog, from: number, to: number): { at: number; celsius: number } | undefined {
  const channel = judgedChannel(log);
  const values = channel === undefined ? undefined : log.channels[channel];
  if (values === undefined) return undefined;
  for (let i = log.times.length - 1; i >= 0; i--) {
    const at = log.times.at(i) ?? Number.NaN;
    const celsius = values.at(i) ?? Number.NaN;
    if (at < from) return undefined;
    if (at <= to && Number.isFinite(celsius)) return { at, celsius };
  }
  return undefined;
}

/**
 * One end of the log window: at the rule's own stop or line where there is one, else at the outermost stop of its
 * side.
 */
function edge(
  context: RuleContext,
  point: MilestoneOffset,
  stage: RuleContext['stage'] | undefined,
  end: 'from' | 'to',
): KnownMilestone | undefined {
  const { milestones, scope } = context;
  const loadingRule = context.stage === 'before-loading' || context.stage === 'loading';
  const side: StopSide = sideOfMilestone(
    point.moment,
    undefined,
    loadingRule ? context.stage : (stage ?? context.stage),
  );
  const stops = stopsOf(milestones, side);
  const own = [scope.stop?.id, stopOfLine(scope.line, side)].find((id) =>
    stops.some((stop) => stop.id === id),
  );
  const stop = own ?? (side === 'load' ? stops[0] : stops.at(-1))?.id;
  if (stop === undefined) return undefined;
  return end === 'from'
    ? earliestTimeOf(milestones, stop, point.moment)
    : latestTimeOf(milestones, stop, point.moment);
}
