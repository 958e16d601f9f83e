import type { InspectionDefect, InspectionResult } from '../../model/results.js';
import type { ItemOf } from '../../model/state.js';
import { defectNamed } from '../../reference/defects.js';
import { range, sumOf } from './percent.js';

type StatedTotal = ItemOf<'inspection'>['total'];

/** Whether the certificate says anywhere how much of the damage is serious. */
export const tellsSerious = (defects: readonly InspectionDefect[], stated: StatedTotal): boolean =>
  stated?.serious !== undefined || defects.some(({ serious }) => serious !== undefined);

/**
 * Sums by nature. A defect whose nature is not known counts on both sides at most. Where the certificate states serious
 * damage anywhere, a defect without has none; where it states it nowhere, it can be all of the damage. Decay is serious
 * damage whatever else is stated: 46.44(a) counts it within. A total without defects bounds every part of it.
 */
export function totalsOf(
  defects: readonly InspectionDefect[],
  stated: StatedTotal,
): InspectionResult['totals'] {
  if (defects.length === 0 && stated !== undefined) {
    const { percent, serious = percent } = stated;
    return {
      condition: range(0, percent),
      serious: range(0, serious),
      decay: range(0, serious),
      permanent: range(0, percent),
    };
  }
  const percents = (of: (defect: InspectionDefect) => boolean) =>
    sumOf(defects.filter(of).map(({ percent }) => percent));
  const unknown = percents(({ nature }) => nature === 'not-known');
  const condition = percents(({ nature }) => nature === 'condition');
  const permanent = percents(({ nature }) => nature === 'permanent');
  const decay = percents((one) => one.decay);
  const untold = tellsSerious(defects, stated) ? 0 : 1;
  const serious = (natures: readonly InspectionDefect['nature'][], untoldCounts: number) =>
    sumOf(
      defects
        .filter(({ nature }) => natures.includes(nature))
        .map((one) => (one.decay ? one.percent : (one.serious ?? untoldCounts * one.percent))),
    );
  return {
    condition: range(condition, condition + unknown),
    serious: range(serious(['condition'], 0), serious(['condition', 'not-known'], untold)),
    decay: range(decay),
    permanent: range(permanent, permanent + unknown),
  };
}

/** Damage and serious damage by one defect that the contract names. */
export function sharesOf(defects: readonly InspectionDefect[], name: string) {
  const key = (text: string) => defectNamed(text)?.id ?? text.toLowerCase();
  const found = defects.filter((one) => key(one.name) === key(name));
  const damage = sumOf(found.map(({ percent }) => percent));
  const serious = sumOf(found.map((one) => (one.decay ? one.percent : (one.serious ?? 0))));
  return {
    damage: range(damage),
    serious: range(serious, tellsSerious(defects, undefined) ? serious : damage),
  };
}
