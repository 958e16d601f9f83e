import type { Line } from '../../model/delivery.js';
import type { Finding, PulpGroup } from '../../model/results.js';
import { latestTimeOf } from '../milestones.js';
import { difference, type FindingContext, finding, lineRef, stopRef, temperature } from './make.js';
import { toldOfPulps } from './told-of-pulps.js';

const BY = 'pulps against the band of the line';

/**
 * Side of the range of a line's pulps at one stop: above wins over below, because warm product is the commoner
 * claim.
 */
type Lie = 'in-band' | 'above' | 'below' | 'not-judged';
function lieOf(group: PulpGroup): Lie {
  if (group.band === undefined) return 'not-judged';
  if (group.readings.some((one) => one.verdict === 'above')) return 'above';
  return group.inBand === group.count ? 'in-band' : 'below';
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
      ...(delivery === undefined ? missingAtDelivery(context, line) : atDelivery(delivery)),
      ...bothEnds(line, load, delivery),
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
  };
}

function outFacts(group: PulpGroup, band: { low: number; high: number }, side: 'above' | 'below') {
  const outside = group.readings.filter((one) => one.verdict === side);
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
  if (lie === 'in-band') {
    const later = delivery === undefined ? 'not-judged' : lieOf(delivery);
    const weighs = later === 'in-band' ? 'helps' : later === 'not-judged' ? 'open' : 'hurts';
    return [finding('pulps-at-loading-in-band', BY, ids(load), facts(load, band), weighs)];
  }
  return [
    finding(`pulps-at-loading-${lie}-band`, BY, ids(load), outFacts(load, band, lie)),
    ...(lie === 'above' ? toldOfPulps(context, load, band.high) : []),
  ];
}

function atDelivery(delivery: PulpGroup): Finding[] {
  const { band } = delivery;
  const lie = lieOf(delivery);
  if (band === undefined || lie === 'not-judged') return [];
  return [
    lie === 'in-band'
      ? finding('pulps-at-delivery-in-band', BY, ids(delivery), facts(delivery, band))
      : finding(`pulps-at-delivery-${lie}-band`, BY, ids(delivery), outFacts(delivery, band, lie)),
  ];
}

/** Where a line warmed: before custody, during custody, or undetermined. */
function bothEnds(line: Line, load: PulpGroup | undefined, delivery: PulpGroup | undefined): Finding[] {
  const band = delivery?.band;
  if (delivery === undefined || band === undefined || lieOf(delivery) !== 'above') return [];
  const high = temperature(band.high);
  if (load === undefined)
    return [
      finding('warm-at-delivery-no-loading-pulps', BY, ids(delivery), {
        line: lineRef(line.id),
        deliveryMax: temperature(delivery.max),
        high,
      }),
    ];
  const id = lieOf(load) === 'above' ? 'warm-at-loading-and-delivery' : 'warmed-on-the-way';
  return [
    finding(id, BY, ids(load, delivery), {
      line: lineRef(line.id),
      loadMin: temperature(load.min),
      loadMax: temperature(load.max),
      deliveryMin: temperature(delivery.min),
      deliveryMax: temperature(delivery.max),
      low: temperature(band.low),
      high,
      change: difference(delivery.mean - load.mean),
    }),
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
