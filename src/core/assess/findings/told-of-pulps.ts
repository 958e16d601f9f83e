import type { Finding, PulpGroup } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { latestTimeOf } from '../milestones.js';
import { type FindingContext, finding, lineRef, temperature, time, zoneOf } from './make.js';

const BY = 'contacts between the pulps and departure';
/** Those who can answer for goods that were loaded warm; a dispatcher can't. */
const FOR_SHIPPER: readonly ItemOf<'contact'>['with'][] = ['shipper', 'broker'];
const FOR_CARRIER: readonly ItemOf<'contact'>['with'][] = ['dispatcher', 'carrier'];

interface Call {
  item: ItemOf<'contact'>;
  at: number;
}

/**
 * Who was told of pulps above the range, after the first of them and before departure. A contact counts by the subjects
 * that a person gave it, never by its words: one without a subject proves only that it took place.
 */
export function toldOfPulps(context: FindingContext, load: PulpGroup, high: number): Finding[] {
  const departed = latestTimeOf(context.milestones, load.stop, 'departed');
  const calls = callsBetween(
    context,
    Math.min(...load.readings.map(({ at }) => at ?? Number.POSITIVE_INFINITY)),
    departed?.at,
  );
  const evidence = load.readings.map((one) => one.evidence);
  const line = lineRef(load.line);
  const ofPulps = calls.filter(({ item }) => item.subjects?.includes('pulp-temperatures') === true);
  const shipper = ofPulps.find(({ item }) => FOR_SHIPPER.includes(item.with));
  const facts = ({ item, at }: Call) => ({
    line,
    with: item.with,
    at: time(at, zoneOf(context.state, load.stop)),
    about: item.about,
  });
  if (shipper !== undefined)
    return [finding('warm-at-loading-told', BY, [shipper.item.evidence, ...evidence], facts(shipper))];
  const unclear = calls.find(({ item }) => item.subjects === undefined && FOR_SHIPPER.includes(item.with));
  if (unclear !== undefined)
    return [
      finding('contact-subject-not-recorded', BY, [unclear.item.evidence, ...evidence], facts(unclear)),
    ];
  const own = ofPulps.find(({ item }) => FOR_CARRIER.includes(item.with));
  if (own !== undefined)
    return [finding('warm-at-loading-told', BY, [own.item.evidence, ...evidence], facts(own), 'open')];
  return departed === undefined
    ? []
    : [
        finding('warm-at-loading-nobody-told', BY, evidence, {
          line,
          max: temperature(load.max),
          high: temperature(high),
        }),
      ];
}

function callsBetween({ state }: FindingContext, first: number, departed: number | undefined): Call[] {
  return state.evidence
    .filter((item): item is ItemOf<'contact'> => item.kind === 'contact')
    .flatMap((item) => {
      const at = knownMilliseconds(item.time);
      const fits =
        at !== undefined &&
        (first === Number.POSITIVE_INFINITY || at >= first) &&
        (departed === undefined || at <= departed);
      return fits ? [{ item, at }] : [];
    });
}
