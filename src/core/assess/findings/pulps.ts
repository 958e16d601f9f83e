import type { Line } from '../../model/delivery.js';
import type { Finding, PulpGroup, PulpPair } from '../../model/results.js';
import { instructionFreezes } from '../instruction-freezes.js';
import { latestTimeOf } from '../milestones.js';
import { difference, type FindingContext, finding, lineRef, stopRef, temperature } from './make.js';
import { toldOfPulps } from './told-of-pulps.js';

const BY = 'pulps against the band of the line';

/**
 * What a line's pulps at one stop say of its range, with room for the thermometers: one clearly above wins over one
 * clearly below, because warm product is the commoner claim; within only where every one clearly is.
 */
type Lie = 'within' | 'above' | 'below' | 'undecided' | 'not-judged';
function lieOf({ band, answers, count }: PulpGroup): Lie {
  if (band === undefined || answers === undefined) return 'not-judged';
  if (answers.above > 0) return 'above';
  if (answers.below > 0) return 'below';
  return answers.within === count ? 'within' : 'undecided';
}

const ids = (...groups: (PulpGroup | undefined)[]) =>
  groups.flatMap((group) => group?.readings.map((one) => one.evidence) ?? []);

/** Findings of each line's pulps at loading and delivery, and of missing ones. */
export function pulpFindings(context: FindingContext): Finding[] {
  return context.state.delivery.lines.flatMap((line) => {
    const of = (does: PulpGroup['does']) =>
      context.pulps.find((group) => group.line === line.id && group.does === does);
    const load = of('load');
    const delivery = of('unload');
    return [
      ...(load === undefined ? missingAtLoading(context, line) : atLoading(context, load, delivery)),
      ...(delivery === undefined ? missingAtDelivery(context, line) : atDelivery(line, delivery)),
      ...bothEnds(context, line, load, delivery),
    ];
  });
}

function facts(group: PulpGroup, band: { low: number; high: number }) {
  return {
    line: lineRef(group.line),
    stop: stopRef(group.stop),
    count: group.count,
    min: temperature(group.min),
    max: temperature(group.max),
    mean: temperature(group.mean),
    low: temperature(band.low),
    high: temperature(band.high),
    guard: difference(guardOf(group)),
  };
}

const guardOf = ({ readings }: PulpGroup) =>
  Math.max(...readings.map(({ uncertainty }) => uncertainty.guardKelvin));

function undecidedFacts(group: PulpGroup, band: { low: number; high: number }) {
  return { ...facts(group, band), near: group.answers?.['not-decidable'] ?? 0, inRange: group.inBand };
}

function outFacts(group: PulpGroup, band: { low: number; high: number }, side: 'above' | 'below') {
  const outside = group.readings.filter((one) => one.answer === side);
  return {
    ...facts(group, band),
    outside: outside.length,
    beyond: difference(Math.max(...outside.map((one) => one.beyond))),
  };
}

/**
 * In range at loading: with good pulps at delivery it shows care throughout; with warm ones it proves the
 * claimant's first element and hurts the carrier.
 */
function atLoading(context: FindingContext, load: PulpGroup, delivery: PulpGroup | undefined): Finding[] {
  const { band } = load;
  const lie = lieOf(load);
  if (band === undefined || lie === 'not-judged') return [];
  switch (lie) {
    case 'within': {
      const later = delivery === undefined ? 'not-judged' : lieOf(delivery);
      const weighs = later === 'within' ? 'helps' : later === 'above' || later === 'below' ? 'hurts' : 'open';
      return [finding('pulps-at-loading-in-band', BY, ids(load), facts(load, band), weighs)];
    }
    case 'undecided':
      return [finding('pulps-at-loading-undecided', BY, ids(load), undecidedFacts(load, band))];
    case 'above':
    case 'below': {
      // An instruction that freezes the goods is no measure for warm ones.
      const weighs = lie === 'above' && instructionFreezes(lineOf(context, load)) ? 'open' : 'helps';
      return [
        finding(`pulps-at-loading-${lie}-band`, BY, ids(load), outFacts(load, band, lie), weighs),
        ...(lie === 'above' && weighs === 'helps' ? toldOfPulps(context, load, band.high) : []),
      ];
    }
  }
}

const lineOf = ({ state }: FindingContext, { line }: PulpGroup): Line | undefined =>
  state.delivery.lines.find(({ id }) => id === line);

function atDelivery(line: Line, delivery: PulpGroup): Finding[] {
  const { band } = delivery;
  const lie = lieOf(delivery);
  if (band === undefined || lie === 'not-judged') return [];
  switch (lie) {
    case 'within':
      return [finding('pulps-at-delivery-in-band', BY, ids(delivery), facts(delivery, band))];
    case 'undecided':
      return [finding('pulps-at-delivery-undecided', BY, ids(delivery), undecidedFacts(delivery, band))];
    case 'above':
    case 'below': {
      const weighs = lie === 'above' && instructionFreezes(line) ? 'open' : 'hurts';
      return [
        finding(`pulps-at-delivery-${lie}-band`, BY, ids(delivery), outFacts(delivery, band, lie), weighs),
      ];
    }
  }
}

/**
 * A line that was not clearly warm at loading and clearly is at delivery. Whether it rose is told of the same places,
 * else of every reading against every other, with room for the thermometers. Of one that was warm at both ends the
 * counterfactual speaks.
 */
function bothEnds(
  context: FindingContext,
  line: Line,
  load: PulpGroup | undefined,
  delivery: PulpGroup | undefined,
): Finding[] {
  const band = delivery?.band;
  if (delivery === undefined || band === undefined || lieOf(delivery) !== 'above') return [];
  if (instructionFreezes(line)) return [];
  const high = temperature(band.high);
  if (load === undefined)
    return [
      finding('warm-at-delivery-no-loading-pulps', BY, ids(delivery), {
        line: lineRef(line.id),
        deliveryMax: temperature(delivery.max),
        high,
      }),
    ];
  const compared = context.pulpComparisons?.find(
    (one) => one.line === line.id && one.is === 'delivery-against-loading' && one.stop === delivery.stop,
  );
  if (lieOf(load) === 'above' || compared === undefined) return [];
  const { pairs, leastRise, guardKelvin, answer } = compared;
  const most = pairs.reduce<PulpPair | undefined>(
    (found, one) => (found === undefined || one.change > found.change ? one : found),
    undefined,
  );
  return [
    finding(
      'warmed-on-the-way',
      BY,
      ids(load, delivery),
      {
        line: lineRef(line.id),
        loadMin: temperature(load.min),
        loadMax: temperature(load.max),
        deliveryMin: temperature(delivery.min),
        deliveryMax: temperature(delivery.max),
        low: temperature(band.low),
        high,
        change: difference(most?.change ?? leastRise),
        guard: difference(most?.guardKelvin ?? guardKelvin),
        samePlaces: pairs.length,
        loadWithin: lieOf(load) === 'within',
        decided: answer === 'rose',
      },
      answer === 'rose' ? 'hurts' : 'open',
    ),
  ];
}

function missingAtLoading(context: FindingContext, line: Line): Finding[] {
  const over = latestTimeOf(context.milestones, line.from, 'doors-closed');
  if (over === undefined) return [];
  return [
    finding('no-pulps-at-loading', BY, [over.evidence], { line: lineRef(line.id), stop: stopRef(line.from) }),
  ];
}

function missingAtDelivery(context: FindingContext, line: Line): Finding[] {
  const over = latestTimeOf(context.milestones, line.to, 'delivery-over');
  if (over === undefined) return [];
  return [
    finding('no-pulps-at-delivery', BY, [over.evidence], { line: lineRef(line.id), stop: stopRef(line.to) }),
  ];
}
