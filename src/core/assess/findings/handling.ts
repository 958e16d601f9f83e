import { inGravities } from '../../model/acceleration.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { AxleWeight, Finding, LegWeights, ShockResult } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { formatRows } from '../loading/format-rows.js';
import {
  acceleration,
  duration,
  type FindingContext,
  finding,
  stopRef,
  time,
  weightOf,
  zoneOf,
} from './make.js';

/** Findings on rough handling, on pallets as they were found, on the doors and on axle weights. */
export function handlingFindings(context: FindingContext): Finding[] {
  return [...shocks(context), ...pallets(context), ...doors(context), ...axles(context)];
}

function shocks(context: FindingContext): Finding[] {
  const all = context.shocks ?? [];
  const [hits, others] = [
    all.filter(({ what }) => what === 'shock'),
    all.filter(({ what }) => what !== 'shock'),
  ];
  const aboard = hits.filter(({ when }) => when === 'aboard');
  const over = aboard.filter((one) => one.over === true);
  const judged = aboard.filter((one) => one.over !== undefined);
  const open = aboard.filter((one) => one.over === undefined);
  return [
    ...(over.length === 0 ? [] : [shockFinding(context, 'shocks-over-threshold', over)]),
    ...(judged.length > 0 && over.length === 0
      ? [shockFinding(context, 'shocks-below-threshold', judged)]
      : []),
    ...(open.length === 0 ? [] : [shockFinding(context, 'shocks-recorded', open)]),
    ...outside(hits),
    ...braking(context, others),
  ];
}

const itemOf = ({ state }: FindingContext, { evidence }: ShockResult): ItemOf<'shock'> | undefined => {
  const item = state.evidence.find((one) => one.evidence === evidence);
  return item?.kind === 'shock' ? item : undefined;
};

/** The strongest of some shocks, with what the recorder was set to. */
function shockFinding(
  context: FindingContext,
  id: 'shocks-over-threshold' | 'shocks-below-threshold' | 'shocks-recorded',
  all: readonly ShockResult[],
): Finding {
  const strongest = all.reduce((most, one) => ((one.gravities ?? 0) > (most.gravities ?? 0) ? one : most));
  const item = itemOf(context, strongest);
  return finding(
    id,
    'peaks of the recorder against its stated threshold',
    all.map(({ evidence }) => evidence),
    {
      count: all.length,
      strongest: acceleration(item?.peak ?? { value: 0, unit: 'g' }),
      ...omitUndefined({
        threshold: item?.threshold && acceleration(item.threshold),
        milliseconds: item?.milliseconds,
        at: strongest.at === undefined ? undefined : time(strongest.at, zoneOf(context.state)),
      }),
    },
  );
}

/** Shocks that fell before the doors were closed or after they were opened. */
function outside(hits: readonly ShockResult[]): Finding[] {
  const [before, after] = [
    hits.filter(({ when }) => when === 'before'),
    hits.filter(({ when }) => when === 'after'),
  ];
  if (before.length + after.length === 0) return [];
  return [
    finding(
      'shocks-outside-transit',
      'times of the shocks against the transit window',
      [...before, ...after].map(({ evidence }) => evidence),
      { before: before.length, after: after.length },
    ),
  ];
}

function braking(context: FindingContext, all: readonly ShockResult[]): Finding[] {
  const aboard = all.filter(({ when, what }) => when === 'aboard' && what !== 'tilt');
  const [first] = aboard;
  if (first === undefined) return [];
  const peaks = aboard.flatMap((one) => itemOf(context, one)?.peak ?? []);
  const strongest = peaks.reduce<(typeof peaks)[number] | undefined>(
    (most, one) => (most === undefined || inGravities(one) > inGravities(most) ? one : most),
    undefined,
  );
  return [
    finding(
      'hard-braking-recorded',
      'events of the recorder while the goods were aboard',
      aboard.map(({ evidence }) => evidence),
      {
        count: aboard.length,
        what: [...new Set(aboard.map(({ what }) => what))].join(', '),
        ...omitUndefined({
          strongest: strongest && acceleration(strongest),
          at: first.at === undefined ? undefined : time(first.at, zoneOf(context.state)),
        }),
      },
    ),
  ];
}

/** Pallets as they were found: at loading they are the shipper's loading, on arrival the condition of the load. */
function pallets({ state }: FindingContext): Finding[] {
  return state.evidence
    .filter((item): item is ItemOf<'pallets'> => item.kind === 'pallets')
    .map((item) => {
      const stop = state.delivery.stops.find(({ id }) => id === item.place?.stop);
      const rows = item.rows;
      return finding(
        'pallets-not-standing',
        'pallets as they were found',
        [item.evidence, ...item.documents],
        {
          state: item.state,
          photos: item.documents.length,
          ...omitUndefined({
            count: item.count,
            rows:
              rows === undefined
                ? undefined
                : formatRows(Array.from({ length: rows.to - rows.from + 1 }, (_, i) => rows.from + i)),
            position: item.place?.position,
            stop: stop === undefined ? undefined : stopRef(stop.id),
          }),
        },
        stop?.does === 'unload' ? 'hurts' : 'open',
      );
    });
}

function doors({ doors: openings = [], state }: FindingContext): Finding[] {
  const zone = zoneOf(state);
  const between = openings.filter(({ stop }) => stop === undefined);
  const unloading = state.delivery.stops.filter(({ does }) => does === 'unload').map(({ id }) => id);
  const way = unloading.slice(0, -1);
  return [
    ...between.map(({ logged, loggedSeconds }) =>
      finding(
        'doors-open-between-stops',
        'column of the doors in the log against arrivals and departures',
        logged.map(({ log }) => log),
        {
          count: logged.length,
          total: duration(loggedSeconds),
          ...omitUndefined({ at: logged[0] === undefined ? undefined : time(logged[0].from, zone) }),
        },
      ),
    ),
    ...openings
      .filter(({ stop }) => stop !== undefined && way.includes(stop))
      .map(({ stop = '', noted, logged, loggedSeconds }) => {
        const known = noted.filter((one) => one.from !== undefined && one.to !== undefined);
        const seconds = known.reduce((sum, one) => sum + ((one.to ?? 0) - (one.from ?? 0)) / 1000, 0);
        return finding(
          'doors-open-at-stop',
          'events at the stop, and the column of the doors in the log',
          [...noted.flatMap(({ evidence }) => evidence), ...logged.map(({ log }) => log)],
          {
            stop: stopRef(stop),
            ...omitUndefined({
              noted: known.length === 0 ? undefined : duration(seconds),
              logged: logged.length === 0 ? undefined : duration(loggedSeconds),
            }),
          },
        );
      }),
  ];
}

/** A scale counts as measured; an estimate leaves it open. */
function axles({ weights }: FindingContext): Finding[] {
  return (weights?.legs ?? []).flatMap((leg) => [
    ...leg.groups.flatMap((one) => axleFinding(leg, one)),
    ...within(leg),
  ]);
}

function axleFinding(leg: LegWeights, { group, scale, estimate, limit }: AxleWeight): Finding[] {
  const weight = scale ?? estimate;
  const by = 'axle weights against the limits that are given';
  const evidence = leg.weighed === undefined ? [] : [leg.weighed];
  const over: Finding[] =
    weight === undefined || limit === undefined || weight <= limit
      ? []
      : [
          finding(
            'axle-over-limit',
            by,
            evidence,
            {
              group,
              stop: stopRef(leg.from),
              weight: weightOf(weight),
              limit: weightOf(limit),
              over: weightOf(weight - limit),
              scale: scale !== undefined,
            },
            scale === undefined ? 'open' : 'hurts',
          ),
        ];
  const apart: Finding[] =
    scale === undefined || estimate === undefined || Math.abs(scale - estimate) <= APART * scale
      ? []
      : [
          finding('axle-estimate-differs', 'scale against the estimate by statics', evidence, {
            group,
            stop: stopRef(leg.from),
            scale: weightOf(scale),
            estimate: weightOf(estimate),
          }),
        ];
  return [...over, ...apart];
}

/** An estimate and a scale this share apart differ: a row, a weight or a dimension is wrong. Convention of this project. */
const APART = 0.1;

/** All groups with a limit were weighed, and none is above it. */
function within(leg: LegWeights): Finding[] {
  const limited = leg.groups.filter(({ limit }) => limit !== undefined);
  const weighed = limited.filter(({ scale }) => scale !== undefined);
  if (leg.weighed === undefined || weighed.length === 0 || weighed.length < limited.length) return [];
  if (weighed.some(({ scale = 0, limit = 0 }) => scale > limit)) return [];
  return [
    finding('axles-within-limits', 'scale against the limits that are given', [leg.weighed], {
      stop: stopRef(leg.from),
      groups: weighed.map(({ group }) => group).join(', '),
    }),
  ];
}
