import type { Delivery, Line } from '../../model/delivery.js';
import { axleGroup } from '../../model/evidence.js';
import { metres } from '../../model/length.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { AxleWeight, LegWeights, LoadPlan, LoadWeights, RowWeight } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { kilograms, type Weight } from '../../model/weight.js';
import { type Leg, legsOf } from '../legs.js';
import { latestTimeOf, type Milestones } from '../milestones.js';
import { type AxleGeometry, axleShares } from './axles.js';

/**
 * Weight of the load by row, and of the vehicle by axle group on each leg: by statics from the stated geometry, or as a
 * scale showed it, which counts in place of an estimate. Undefined where no weight is known and nothing was weighed.
 * Kilograms and metres.
 */
export function loadWeights(
  state: RecordState,
  plan: LoadPlan | undefined,
  milestones: Milestones,
): LoadWeights | undefined {
  const { delivery } = state;
  const rows = plan === undefined ? [] : rowWeights(state, plan);
  const scales = state.evidence.filter((item): item is ItemOf<'scale'> => item.kind === 'scale');
  if (rows.length === 0 && scales.length === 0) return undefined;
  const onFloor = new Set(plan?.rows.map(({ line }) => line));
  const unknown = delivery.lines
    .filter(({ id }) => onFloor.has(id) && !rows.some(({ line }) => line === id))
    .map(({ id }) => id);
  const heaviest = rows.reduce<RowWeight | undefined>(
    (most, row) => (most === undefined || each(row) > each(most) ? row : most),
    undefined,
  );
  return {
    rows,
    unknown,
    ...omitUndefined({
      heaviest: rows.some((row) => heaviest && each(row) < each(heaviest)) ? heaviest : undefined,
    }),
    legs: legsOf(delivery.stops, delivery.lines).flatMap(
      (leg) => legWeights(leg, { delivery, plan, rows, unknown, scales, milestones }) ?? [],
    ),
  };
}

const each = (row: RowWeight) => row.kilograms / row.pallets;

/** Noted weights of pallets, else what the bill says that the line weighs, spread evenly over its pallets. */
function rowWeights(state: RecordState, plan: LoadPlan): RowWeight[] {
  const noted = new Map(
    state.evidence.flatMap((item) =>
      item.kind === 'pattern' && item.palletWeight !== undefined
        ? [[item.evidence, item.palletWeight] as const]
        : [],
    ),
  );
  return plan.rows.flatMap((row): RowWeight[] => {
    const pallets = plan.pallets.filter((one) => one.row === row.row).length;
    const line = state.delivery.lines.find(({ id }) => id === row.line);
    const own = noted.get(row.evidence);
    const perPallet = own === undefined ? ofBill(line, plan) : kilograms(own);
    if (perPallet === undefined || pallets === 0) return [];
    return [
      {
        row: row.row,
        ...omitUndefined({ line: row.line }),
        pallets,
        kilograms: perPallet * pallets,
        from: own === undefined ? 'bill' : 'noted',
      },
    ];
  });
}

/** Weight of one pallet by the bill, kilograms. */
function ofBill(line: Line | undefined, plan: LoadPlan): number | undefined {
  const weight = shippedWeight(line);
  if (line === undefined || weight === undefined) return undefined;
  const rows = new Set(plan.rows.filter((row) => row.line === line.id).map(({ row }) => row));
  const pallets = line.pallets ?? plan.pallets.filter(({ row }) => rows.has(row)).length;
  return kilograms(weight) / pallets;
}

function shippedWeight(line: Line | undefined): Weight | undefined {
  const { kg, lb } = line?.shipped ?? {};
  if (kg !== undefined) return { value: kg, unit: 'kg' };
  return lb === undefined ? undefined : { value: lb, unit: 'lb' };
}

interface LegContext {
  delivery: Delivery;
  plan: LoadPlan | undefined;
  rows: readonly RowWeight[];
  unknown: readonly string[];
  scales: readonly ItemOf<'scale'>[];
  milestones: Milestones;
}

function legWeights(leg: Leg, context: LegContext): LegWeights | undefined {
  const { delivery, rows, unknown } = context;
  const aboard = new Set(leg.lines.map(({ id }) => id));
  const isAboard = ({ line }: { line?: string }) => line === undefined || aboard.has(line);
  const known = leg.lines.every(({ id }) => !unknown.includes(id)) && rows.some(isAboard);
  const load = known ? centreOf(rows.filter(isAboard), context.plan) : undefined;
  const scale = scaleOn(leg, context);
  if (load === undefined && scale === undefined) return undefined;
  const geometry = geometryOf(delivery);
  const shares =
    load === undefined || geometry === undefined ? undefined : axleShares(load.weight, load.centre, geometry);
  const { empty, limits } = delivery.equipment;
  const groups = axleGroup.options.map((group): AxleWeight => {
    const [ofLoad, ofEmpty] = [shares?.[group], kilogramsOf(empty?.[group])];
    return {
      group,
      ...omitUndefined({
        load: ofLoad,
        empty: ofEmpty,
        estimate: ofLoad === undefined || ofEmpty === undefined ? undefined : ofLoad + ofEmpty,
        scale: kilogramsOf(scale?.[group]),
        limit: kilogramsOf(limits?.[group]),
      }),
    };
  });
  return {
    from: leg.from,
    to: leg.to,
    load: load?.weight ?? 0,
    centre: load?.centre ?? 0,
    groups: [...groups, grossOf(groups, kilogramsOf(scale?.gross), kilogramsOf(limits?.gross))].filter(
      isKnown,
    ),
    ...omitUndefined({ weighed: scale?.evidence }),
  };
}

const kilogramsOf = (weight: Weight | undefined): number | undefined =>
  weight === undefined ? undefined : kilograms(weight);

const isKnown = ({ load, estimate, scale }: AxleWeight) => (load ?? estimate ?? scale) !== undefined;

/** The whole vehicle: what its three groups weigh together, where each is known. */
function grossOf(
  groups: readonly AxleWeight[],
  scale: number | undefined,
  limit: number | undefined,
): AxleWeight {
  const sum = (of: (one: AxleWeight) => number | undefined): number | undefined => {
    const all = groups.map(of);
    return all.every((one) => one !== undefined) ? all.reduce((total, one) => total + one, 0) : undefined;
  };
  return {
    group: 'gross',
    ...omitUndefined({
      load: sum(({ load }) => load),
      empty: sum(({ empty }) => empty),
      estimate: sum(({ estimate }) => estimate),
      scale: scale ?? sum((one) => one.scale),
      limit,
    }),
  };
}

/** Weight of some rows together, and the middle of it behind the front wall. */
function centreOf(
  rows: readonly RowWeight[],
  plan: LoadPlan | undefined,
): { weight: number; centre: number } | undefined {
  let [weight, moment] = [0, 0];
  for (const row of rows)
    for (const pallet of plan?.pallets.filter((one) => one.row === row.row) ?? []) {
      const own = row.kilograms / row.pallets;
      weight += own;
      moment += own * (pallet.y + pallet.length / 2);
    }
  return weight === 0 ? undefined : { weight, centre: moment / weight };
}

function geometryOf({ equipment }: Delivery): AxleGeometry | undefined {
  const { axles } = equipment.trailer;
  const tractor = equipment.tractor?.axles;
  return axles === undefined
    ? undefined
    : {
        kingpin: metres(axles.kingpin),
        group: metres(axles.group),
        ...omitUndefined({
          tractor: tractor && {
            wheelbase: metres(tractor.wheelbase),
            fifthWheel: metres(tractor.fifthWheel),
          },
        }),
      };
}

/** The last scale reading of a leg: at its first stop once the doors were closed or where no time says, or before the next. */
function scaleOn({ from, to }: Leg, { scales, milestones }: LegContext): ItemOf<'scale'> | undefined {
  const closed = latestTimeOf(milestones, from, 'doors-closed')?.at;
  const next = latestTimeOf(milestones, to, 'doors-opened')?.at ?? Number.POSITIVE_INFINITY;
  return scales.findLast((item) => {
    const at = knownMilliseconds(item.time);
    if (at === undefined) return item.place?.stop === from;
    if (closed === undefined) return item.place?.stop === from && at < next;
    return at >= closed && at < next;
  });
}
