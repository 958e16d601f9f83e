import type { Line } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, SetPointDifference, SetPointStatement } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { cite, findProduce, highestFreezingPoint, type Produce } from '../../reference/produce.js';
import { ROUNDING } from '../bands.js';
import { latestTimeOf } from '../milestones.js';
import {
  difference,
  duration,
  type FindingContext,
  finding,
  lineRef,
  temperature,
  time,
  zoneOf,
} from './make.js';

const BY = 'set points side by side';
/** Tolerance for rounding between °F and °C where published ranges are compared with the instruction. Kelvin. */
const ROUNDED = 0.06;

const evidenceOf = (words: readonly SetPointStatement[]) => words.flatMap((word) => word.evidence ?? []);

/**
 * Findings on the set points of bill, people, display and log, and on the bill's instruction against the published
 * range.
 */
export function setPointFindings(context: FindingContext): Finding[] {
  return [...agreement(context), ...steadiness(context), ...instructions(context)];
}

function agreement(context: FindingContext): Finding[] {
  const { words, differences, verdict } = context.setPoints;
  const sources = [...new Set(words.map((word) => word.source))];
  if (verdict === 'not-comparable') {
    if (
      latestTimeOf(context.milestones, context.state.delivery.lines[0]?.from ?? '', 'departed') === undefined
    )
      return [];
    return [
      finding('set-point-unproven', BY, evidenceOf(words), {
        sources: sources.join(', '),
        count: sources.length,
      }),
    ];
  }
  const [first] = words;
  if (verdict === 'agree' && first !== undefined)
    return [
      finding('set-point-agrees', BY, evidenceOf(words), {
        setPoint: temperature(first.celsius),
        sources: sources.join(', '),
        count: sources.length,
      }),
    ];
  return differences.flatMap((one) => differs(context, one));
}

/** The unit run differently from the bill hurts the carrier; other statements leave it open. */
function differs({ state }: FindingContext, one: SetPointDifference): Finding[] {
  const [first, second] = one.between;
  const ran = (word: SetPointStatement) => word.source === 'display' || word.source === 'log';
  const id =
    (ran(first) || ran(second)) && one.between.every((word) => word.source === 'bill' || ran(word))
      ? 'set-point-differs'
      : 'set-point-told-differs';
  return [
    finding(id, BY, [...evidenceOf(one.between), ...(one.told ?? []).map((call) => call.evidence)], {
      first: first.source,
      firstSetPoint: temperature(first.celsius),
      second: second.source,
      secondSetPoint: temperature(second.celsius),
      size: difference(one.kelvin),
      ...omitUndefined({
        slip: one.slip,
        since: one.since === undefined ? undefined : time(one.since, zoneOf(state)),
        lasted: one.seconds === undefined ? undefined : duration(one.seconds),
        told:
          one.told === undefined || one.told.length === 0
            ? undefined
            : [...new Set(one.told.map((call) => call.with))].join(', '),
      }),
    }),
  ];
}

function steadiness(context: FindingContext): Finding[] {
  return context.temperatures.flatMap((result) => {
    const [first, ...rest] = result.setPoints;
    if (first === undefined) return [];
    const changes = rest.filter((run, index) => {
      const before = index === 0 ? first : rest[index - 1];
      return before !== undefined && Math.abs(run.celsius - before.celsius) > ROUNDED;
    });
    const [change] = changes;
    const by = 'set point in the log';
    if (change === undefined) {
      const custody = duration((result.custody.to.at - result.custody.from.at) / 1000);
      return [
        finding('set-point-steady', by, [result.log], { setPoint: temperature(first.celsius), custody }),
      ];
    }
    const values = result.setPoints.map((run) => run.celsius);
    return [
      finding('set-point-changed', by, [result.log], {
        changes: changes.length,
        lowest: temperature(values.reduce((a, b) => Math.min(a, b))),
        highest: temperature(values.reduce((a, b) => Math.max(a, b))),
        firstChangeAt: time(change.from, zoneOf(context.state)),
      }),
    ];
  });
}

function instructions(context: FindingContext): Finding[] {
  const bills = context.state.evidence.filter(
    (item) => 'subject' in item && item.subject?.is === 'bill-of-lading',
  );
  const evidence = bills.map((item) => item.evidence);
  return context.state.delivery.lines.flatMap((line) => {
    if (line.instruction === undefined)
      return [finding('no-instruction-on-bill', BY, evidence, { line: lineRef(line.id) })];
    const produce = findProduce(line.goods);
    if (produce === undefined) return [];
    const { value: range, basis } = produce.range;
    const near = nearFreezing(line, produce, evidence);
    const instruction = celsius(line.instruction.setPoint);
    const facts = {
      line: lineRef(line.id),
      goods: produce.name,
      instruction: temperature(instruction),
      low: temperature(range.low),
      high: temperature(range.high),
      oneValue: range.low === range.high,
      source: cite(produce.range),
      fromMemory: basis === 'from memory',
    };
    const above = instruction - range.high;
    const below = range.low - instruction;
    const beyond = Math.max(above, below);
    const by = 'instruction against the published range';
    if (beyond <= ROUNDED + ROUNDING)
      return [finding('instruction-in-published-range', by, evidence, facts), ...near];
    return [
      finding('instruction-outside-published-range', by, evidence, {
        ...facts,
        beyond: difference(beyond),
        side: above > below ? 'above' : 'below',
      }),
      ...near,
    ];
  });
}

/** Supply air leaves a unit this much colder than the set point. Common practice, no source. Kelvin (3 °F). */
const BLOWN_COLDER = 5 / 3;

/** An instruction so near the freezing point that supply air can be below it. */
function nearFreezing(line: Line, produce: Produce, evidence: readonly EvidenceId[]): Finding[] {
  const freezing = highestFreezingPoint(produce);
  if (line.instruction === undefined || freezing === undefined) return [];
  const asked = celsius(line.instruction.setPoint);
  if (asked - BLOWN_COLDER >= freezing) return [];
  return [
    finding('instruction-near-freezing', 'instruction against the highest freezing point', evidence, {
      line: lineRef(line.id),
      instruction: temperature(asked),
      freezing: temperature(freezing),
      colder: difference(BLOWN_COLDER),
    }),
  ];
}
