import type { Delivery, Line } from '../../model/delivery.js';
import type { EvidenceId, InspectedDefect } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  GoodDelivery,
  InspectionDefect,
  InspectionRemark,
  InspectionResult,
} from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { knownMilliseconds } from '../../model/time.js';
import { defectNamed, isDecay, publishedCauses } from '../../reference/defects.js';
import { findGoods } from '../../reference/goods.js';
import type { Milestones } from '../milestones.js';
import { courseOf } from './course.js';
import { goodDelivery } from './good-delivery.js';
import { sumOf } from './percent.js';
import { sharesOf, tellsSerious, totalsOf } from './totals.js';

type Item = ItemOf<'inspection'>;

/**
 * What inspections state, one result for each lot of each certificate in the order of their times. Rows that name the
 * same stop, lot and certificate are one; what is dated after the moment of the milestones has not happened.
 */
export function inspectionsOf(state: RecordState, milestones: Milestones): InspectionResult[] {
  const groups = new Map<string, [Item, ...Item[]]>();
  for (const item of state.evidence) {
    if (item.kind !== 'inspection' || (knownMilliseconds(item.time) ?? 0) > milestones.now) continue;
    const { place, line, lot, certificate, appeal, time } = item;
    const key = JSON.stringify([place?.stop, line, lot, certificate ?? knownMilliseconds(time), appeal]);
    const before = groups.get(key);
    groups.set(key, before === undefined ? [item] : [...before, item]);
  }
  return [...groups.values()]
    .map((rows) => resultOf(rows, state, milestones))
    .sort((a, b) => (a.at ?? 0) - (b.at ?? 0));
}

function resultOf(
  rows: readonly [Item, ...Item[]],
  { delivery }: RecordState,
  milestones: Milestones,
): InspectionResult {
  const [first] = rows;
  const stop = delivery.stops.find(({ id }) => id === first.place?.stop);
  const line = delivery.lines.find(({ id }) => id === first.line);
  const defects = rows.flatMap((row) => row.defects.map((defect) => defectOf(defect, row.evidence, line)));
  const stated = rows.find(({ total }) => total !== undefined)?.total;
  const totals = totalsOf(defects, stated);
  const evidence = rows.map((row) => row.evidence);
  const { spans, remarks } = courseOf(first, milestones);
  const comparable = defects.length > 0 || stated !== undefined;
  return {
    lot: first.lot,
    ...omitUndefined({
      line: first.line,
      stop: stop?.id,
      side: stop?.does,
      certificate: first.certificate,
      appeal: first.appeal,
      at: knownMilliseconds(first.time),
      zone: first.time.is === 'known' ? first.time.zone : undefined,
    }),
    ...{ evidence, defects, totals },
    documents: [...new Set(rows.flatMap(({ documents }) => documents))],
    ...spans,
    goodDelivery: comparison(line, stop, delivery.sale, comparable, () => ({
      ...totals,
      of: (name: string) => sharesOf(defects, name),
    })),
    remarks: [...remarks, ...remarksOf(defects, stated, evidence)],
  };
}

function comparison(
  line: Line | undefined,
  stop: Delivery['stops'][number] | undefined,
  sale: Delivery['sale'],
  comparable: boolean,
  found: () => Parameters<typeof goodDelivery>[2],
): GoodDelivery {
  if (stop?.does === 'load') return { is: 'not-compared', why: 'at-origin' };
  if (line === undefined) return { is: 'not-compared', why: 'no-line' };
  return comparable ? goodDelivery(line, sale, found()) : { is: 'not-compared', why: 'no-defects' };
}

function defectOf(
  { name, percent, serious, nature }: InspectedDefect,
  evidence: EvidenceId,
  line: Line | undefined,
): InspectionDefect {
  const known = defectNamed(name);
  const goods = line && findGoods(line.goods)?.key;
  return {
    ...{ name, percent, evidence },
    nature: nature ?? known?.nature ?? 'not-known',
    ...omitUndefined({
      serious,
      natureBy: nature === undefined ? known?.natureBy : ('certificate' as const),
    }),
    decay: known !== undefined && isDecay(known),
    causes: known === undefined ? [] : publishedCauses(known.id, goods),
  };
}

function remarksOf(
  defects: readonly InspectionDefect[],
  stated: Item['total'],
  evidence: EvidenceId[],
): InspectionRemark[] {
  const sum = sumOf(defects.map(({ percent }) => percent));
  const differing = defects.filter((one) =>
    defects.some((other) => isNamed(other, one.name) && other.percent !== one.percent),
  );
  const unknown = defects.filter(({ nature }) => nature === 'not-known');
  const isDamage = defects.some(({ nature, decay }) => nature !== 'permanent' && !decay);
  const of = (list: readonly InspectionDefect[]) => [...new Set(list.map((one) => one.evidence))];
  return [
    ...(differing.length === 0 ? [] : [{ is: 'same-defect-differs' as const, evidence: of(differing) }]),
    ...(stated === undefined || defects.length === 0 || sum === stated.percent
      ? []
      : [{ is: 'total-differs' as const, evidence, percent: sum }]),
    ...(unknown.length === 0 ? [] : [{ is: 'nature-not-known' as const, evidence: of(unknown) }]),
    ...(isDamage && !tellsSerious(defects, stated) ? [{ is: 'serious-not-stated' as const, evidence }] : []),
  ];
}

const isNamed = ({ name }: InspectionDefect, other: string) => name.toLowerCase() === other.toLowerCase();
