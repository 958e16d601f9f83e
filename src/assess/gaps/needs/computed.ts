import type { SimpleNeed } from '../../../model/rule-set.js';
import { kelvin } from '../../../model/temperature.js';
import { differencesOf } from '../../agreement.js';
import { type Known, notBefore, pastBy, sideOf, stopsOf } from '../../moments.js';
import { knownShare } from '../../temperature/coverage.js';
import type { RuleContext } from '../context.js';
import { type NeedVerdict, nothing } from '../verdict.js';
import { standInNote } from '../window.js';

type AgreementNeed = Extract<SimpleNeed, { agreement: unknown }>;
type LogNeed = Extract<SimpleNeed, { log: unknown }>;

/** Whether every line has a temperature on the bill. The bill itself is what counts. */
export function instructionVerdict(context: RuleContext): NeedVerdict {
  const { delivery, evidence } = context.state;
  const silent = delivery.lines.filter((line) => line.instruction === undefined);
  const bills = evidence.filter(
    (item) =>
      (item.kind === 'document' || item.kind === 'photo') &&
      item.subject?.is === 'bill-of-lading' &&
      item.withheld === undefined,
  );
  const stated = delivery.lines.length - silent.length;
  return {
    ...nothing(),
    outcome: silent.length === 0 ? 'met' : stated > 0 ? 'short' : 'missing',
    counted: stated > 0 ? bills.map((item) => item.evidence) : [],
    lacking: silent.map((line) => `${line.name ?? line.id}: no temperature on the bill`),
  };
}

/** Whether the sources asked for know the set point and agree within the tolerance. */
export function agreementVerdict(context: RuleContext, need: AgreementNeed): NeedVerdict {
  const words = context.setPoints.words.filter((word) =>
    need.between.some((source) => source === word.source),
  );
  const lacking = need.between
    .filter((source) => !words.some((word) => word.source === source))
    .map((source) => `no set point from the ${source}`);
  const ids = [...new Set(words.flatMap((word) => word.evidence ?? []))];
  const differences = differencesOf(words, kelvin(need.tolerance) + 1e-9);
  if (differences.length > 0)
    return {
      ...nothing(),
      outcome: 'contradicted',
      counted: ids,
      against: [...new Set(differences.flatMap((one) => one.between.flatMap((word) => word.evidence ?? [])))],
      lacking: [
        ...lacking,
        ...differences.map((one) => `${one.between[0].source} and ${one.between[1].source} differ`),
      ],
    };
  const outcome = lacking.length === 0 ? 'met' : words.length > 0 ? 'short' : 'missing';
  return { ...nothing(), outcome, counted: ids, lacking };
}

/** Whether the unit logs together know enough of the time asked for; until its end has come, up to now. */
export function logVerdict(context: RuleContext, need: LogNeed): NeedVerdict {
  const { moments, stage, logs, now } = context;
  const usable = logs.filter((log) => log.times.length > 1);
  if (usable.length === 0) return { ...nothing(), lacking: ['no unit log'] };
  const start = edge(moments, sideOf(need.from, undefined, stage), need.from, 'from');
  const end = edge(moments, sideOf(need.to, undefined, 'arrival'), need.to, 'to');
  const counted = usable.map((log) => log.evidence);
  if (start === undefined)
    return {
      ...nothing(),
      outcome: 'short',
      counted,
      lacking: ['the time from which the log should run is not recorded'],
    };
  const to = end?.at ?? now;
  const share = knownShare(usable, { from: start.at, to });
  const notes = [...standInNote(need.from, start), ...standInNote(need.to, end)];
  const enough = share + 1e-9 >= need.coverage;
  return {
    ...nothing(),
    outcome: enough ? 'met' : share > 0 ? 'short' : 'missing',
    counted: share > 0 ? counted : [],
    nearly: share > 0 ? [] : counted.map((evidence) => ({ evidence, why: 'bad-value' })),
    lacking: [
      ...(enough ? [] : [`the log knows ${percent(share)} of the time, ${percent(need.coverage)} needed`]),
      ...notes,
    ],
  };
}

function edge(
  moments: RuleContext['moments'],
  side: 'load' | 'unload',
  moment: LogNeed['from'],
  end: 'from' | 'to',
): Known | undefined {
  const stops = stopsOf(moments, side);
  const stop = (side === 'load' ? stops[0] : stops.at(-1))?.id;
  if (stop === undefined) return undefined;
  return end === 'from' ? notBefore(moments, stop, moment) : pastBy(moments, stop, moment);
}

const percent = (share: number) => `${Math.floor(share * 100)} %`;
