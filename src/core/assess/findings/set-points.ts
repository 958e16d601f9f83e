import type { Line } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, SetPointDifference, SetPointStatement } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { findGoods, type Goods } from '../../reference/goods.js';
import {
  compareWithSources,
  distanceOutside,
  freezingPoints,
  recommendedTemperatures,
} from '../../reference/limits.js';
import { instructionFreezes } from '../instruction-freezes.js';
import { latestTimeOf } from '../milestones.js';
import { isSecondary, publishedLimit, publishedTemperatures } from '../published-limits.js';
import {
  difference,
  duration,
  type FindingContext,
  finding,
  inCompartment,
  lineRef,
  temperature,
  time,
  zoneOf,
} from './make.js';

const BY = 'set points side by side';
/** Changes of a set point that are rounding between °F and °C. Kelvin. */
const ROUNDED = 0.06;

const evidenceOf = (words: readonly SetPointStatement[]) => words.flatMap((word) => word.evidence ?? []);

/**
 * Findings on the set points of bill, people, display and log, and on the bill's instruction against what each source
 * recommends.
 */
export function setPointFindings(context: FindingContext): Finding[] {
  return [...agreement(context), ...steadiness(context), ...instructions(context)];
}

/** An instruction that the carrier typed is no bill. */
const sourceOf = ({ source, asEntered }: SetPointStatement): string =>
  asEntered === true ? 'as-entered' : source;

function agreement(context: FindingContext): Finding[] {
  const { words, differences } = context.setPoints;
  const { compartments } = context.state.delivery.equipment.trailer;
  const ofNone = differences.filter(({ between: [first] }) => first.compartment === undefined);
  const places = compartments?.map(({ id }) => id) ?? (ofNone.length === 0 ? [undefined] : []);
  return [
    ...ofNone.flatMap((one) => differs(context, one)),
    ...places.flatMap((compartment) => {
      const found = differences.filter(({ between: [first] }) => first.compartment === compartment);
      const here = words.filter((word) => word.compartment === compartment);
      const said =
        found.length > 0 ? found.flatMap((one) => differs(context, one)) : agreementIn(context, here);
      return said.map((one) => inCompartment(compartment, one));
    }),
  ];
}

/** Statements of one compartment, or of the whole trailer, that do not differ. */
function agreementIn(context: FindingContext, all: readonly SetPointStatement[]): Finding[] {
  const words = all.filter(({ putRight }) => putRight === undefined);
  const sources = [...new Set(words.map(sourceOf))];
  // What the carrier typed speaks for nobody.
  const shown = new Set(words.filter(({ asEntered }) => asEntered === undefined).map(({ source }) => source));
  const weighs = shown.size < 2 ? 'open' : 'helps';
  const [first] = words;
  if (first === undefined || sources.length < 2) {
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
  const wrong = all.find(({ putRight }) => putRight !== undefined);
  if (wrong?.putRight !== undefined)
    return [
      finding(
        'set-point-put-right',
        BY,
        evidenceOf([wrong, ...words]),
        {
          source: sourceOf(wrong),
          wrong: temperature(wrong.celsius),
          by: wrong.putRight.source,
          setPoint: temperature(first.celsius),
          rightAt: time(wrong.putRight.at, zoneOf(context.state)),
          sources: sources.join(', '),
          count: sources.length,
        },
        weighs,
      ),
    ];
  return [
    finding(
      'set-point-agrees',
      BY,
      evidenceOf(words),
      {
        setPoint: temperature(first.celsius),
        sources: sources.join(', '),
        count: sources.length,
      },
      weighs,
    ),
  ];
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
      first: sourceOf(first),
      firstSetPoint: temperature(first.celsius),
      second: sourceOf(second),
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
        inCompartment(
          result.compartment,
          finding('set-point-steady', by, [result.log], { setPoint: temperature(first.celsius), custody }),
        ),
      ];
    }
    const values = result.setPoints.map((run) => run.celsius);
    return [
      inCompartment(
        result.compartment,
        finding('set-point-changed', by, [result.log], {
          changes: changes.length,
          lowest: temperature(values.reduce((a, b) => Math.min(a, b))),
          highest: temperature(values.reduce((a, b) => Math.max(a, b))),
          firstChangeAt: time(change.from, zoneOf(context.state)),
        }),
      ),
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
    const goods = findGoods(line.goods);
    return goods === undefined
      ? []
      : [
          ...againstSources(line, goods, evidence),
          ...belowFreezing(line, goods, evidence),
          ...nearFreezing(line, goods, evidence),
        ];
  });
}

/**
 * The bill's instruction against what each source recommends, never against a join of them: within all of them it
 * speaks for the carrier who follows it, within some it is open, within none the shipper chose otherwise.
 */
function againstSources(line: Line, goods: Goods, evidence: readonly EvidenceId[]): Finding[] {
  const ranges = recommendedTemperatures(goods.key);
  if (line.instruction === undefined || ranges.length === 0) return [];
  const instruction = celsius(line.instruction.setPoint);
  const { within, outside } = compareWithSources(ranges, instruction);
  const by = 'instruction against what each source recommends';
  const facts = {
    line: lineRef(line.id),
    goods: goods.name,
    instruction: temperature(instruction),
    published: publishedTemperatures(within.length === 0 ? ranges : within),
    secondary: isSecondary(ranges.map(publishedLimit)),
  };
  if (outside.length === 0) return [finding('instruction-in-published-range', by, evidence, facts)];
  if (within.length > 0)
    return [
      finding('instruction-where-sources-differ', by, evidence, {
        ...facts,
        outside: publishedTemperatures(outside),
      }),
    ];
  const beyond = distanceOutside(ranges, instruction);
  if (beyond === undefined) return [];
  return [
    finding('instruction-outside-published-range', by, evidence, {
      ...facts,
      beyond: difference(beyond.kelvin),
      side: beyond.side,
    }),
  ];
}

/** An instruction below every published freezing point: whoever follows it freezes the goods. */
function belowFreezing(line: Line, goods: Goods, evidence: readonly EvidenceId[]): Finding[] {
  if (line.instruction === undefined || !instructionFreezes(line)) return [];
  const points = freezingPoints(goods.key);
  const recommended = recommendedTemperatures(goods.key);
  return [
    finding('instruction-below-freezing', 'instruction against every freezing point', evidence, {
      line: lineRef(line.id),
      goods: goods.name,
      instruction: temperature(celsius(line.instruction.setPoint)),
      recommended: recommended.length === 0 ? undefined : publishedTemperatures(recommended),
      published: publishedTemperatures(points),
      secondary: isSecondary(points.map(publishedLimit)),
    }),
  ];
}

/** Supply air leaves a unit this much colder than the set point. Common practice, no source. Kelvin (3 °F). */
const BLOWN_COLDER = 5 / 3;

/** An instruction so near the highest freezing point that supply air can be below it. */
function nearFreezing(line: Line, goods: Goods, evidence: readonly EvidenceId[]): Finding[] {
  const [highest] = freezingPoints(goods.key);
  if (line.instruction === undefined || highest === undefined) return [];
  const asked = celsius(line.instruction.setPoint);
  if (asked - BLOWN_COLDER >= highest.high || instructionFreezes(line)) return [];
  const { source, secondary } = publishedLimit(highest);
  return [
    finding('instruction-near-freezing', 'instruction against the highest freezing point', evidence, {
      line: lineRef(line.id),
      instruction: temperature(asked),
      freezing: temperature(highest.high),
      colder: difference(BLOWN_COLDER),
      source,
      secondary,
    }),
  ];
}
