import type { Delivery, Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { GoodDelivery, GoodDeliveryAnswer, PercentRange } from '../../model/results.js';
import { findGoods } from '../../reference/goods.js';
import { range, rounded } from './percent.js';

/** Percentages found in a lot. */
export interface FoundShares {
  condition: PercentRange;
  serious: PercentRange;
  decay: PercentRange;
  permanent: PercentRange;
  /** Of one defect by its name, where the contract specifies it. */
  of(defect: string): { damage: PercentRange; serious: PercentRange };
}

/** 7 CFR 46.44(a)(2): 15 percent damaged by condition defects, of it 9 serious, of which 5 decay. */
const NO_GRADE = { damage: 15, serious: 9, decay: 5 };
/** 46.44(a)(1): so much beyond the destination tolerances of the grade. */
const BEYOND_GRADE = { damage: 3, decay: 2 };
/** 46.44(a)(1), example: what the U.S. No. 1 grade of lettuce tolerates at destination, percent of damage. */
const US_NO_1 = { damage: 12 };
/** 46.44(a)(3)(i): one and one-half times; half of it serious, a quarter decay. */
const SPECIFIED = { times: 1.5, serious: 1 / 2, decay: 1 / 4 };

type Limits = Partial<Record<GoodDeliveryAnswer['of'], PercentRange>>;
type Compared = Extract<GoodDelivery, { is: 'compared' }>;

/**
 * A lot of a line held against what the contract agrees for the destination, else against 7 CFR 46.44(a), which speaks of
 * lettuce sold f.o.b.; the figures are the same for any number of days in transit. Percentages and limits that are
 * known between bounds give `undecided` where the bounds overlap.
 */
export function goodDelivery(line: Line, sale: Delivery['sale'], found: FoundShares): GoodDelivery {
  const sold = line.sold ?? {};
  if (sold.agreed !== undefined) {
    const { percent, serious, decay } = sold.agreed;
    return compared('agreed', '46.44(a)(5)', false, found, {
      damage: range(percent),
      ...omitUndefined({
        serious: serious === undefined ? undefined : range(serious),
        decay: decay === undefined ? undefined : range(decay),
      }),
    });
  }
  const goods = findGoods(line.goods)?.key;
  if (goods === 'lettuce-romaine' || goods === 'lettuce-leaf') return refusal('other-lettuce');
  if (goods !== 'lettuce-iceberg') return refusal('other-goods');
  if (sale === 'delivered') return refusal('delivered-sale');
  if (sale === 'fob-acceptance-final') return refusal('acceptance-final');
  if (sold.inferior === true) return refusal('inferior-quality');
  const ifFob = sale === undefined;
  if (sold.condition !== undefined) return specified(sold.condition, ifFob, found);
  // Sales on a percentage of a grade fall under (2).
  if (sold.grade === undefined || sold.grade.includes('%'))
    return compared('no-grade', '46.44(a)(2)', ifFob, found, fixed(NO_GRADE));
  const tolerance = sold.tolerance ?? (isUsNo1(sold.grade) ? US_NO_1.damage : undefined);
  if (tolerance === undefined) return refusal('tolerance-not-stated');
  const left = (permanent: number) => rounded(Math.max(0, tolerance - permanent) + BEYOND_GRADE.damage);
  return compared('grade', '46.44(a)(1)', ifFob, found, {
    damage: { low: left(found.permanent.high), high: left(found.permanent.low) },
    ...omitUndefined({
      decay: sold.decayTolerance === undefined ? undefined : range(sold.decayTolerance + BEYOND_GRADE.decay),
    }),
  });
}

const refusal = (why: Extract<GoodDelivery, { is: 'not-compared' }>['why']): GoodDelivery => ({
  is: 'not-compared',
  why,
});

const isUsNo1 = (grade: string) => /^u\.?\s?s\.?\s+no\.?\s*1$/i.test(grade.trim());

const fixed = ({ damage, serious, decay }: typeof NO_GRADE): Required<Limits> => ({
  damage: range(damage),
  serious: range(serious),
  decay: range(decay),
});

/**
 * 46.44(a)(3): one and one-half times what is specified, or 15, 9 and 5, whichever is greater. Which is greater is read
 * of the damage; a part that the other would allow more of lies between the two. Of one defect that is specified by
 * its name only (i) is compared, with that defect alone.
 */
function specified(
  { percent, serious, defect }: NonNullable<NonNullable<Line['sold']>['condition']>,
  ifFob: boolean,
  found: FoundShares,
): GoodDelivery {
  const damage = percent * SPECIFIED.times;
  const own = {
    damage: rounded(damage),
    serious: rounded(serious === undefined ? damage * SPECIFIED.serious : serious * SPECIFIED.times),
    decay: rounded(damage * SPECIFIED.decay),
  };
  if (defect !== undefined) {
    const { damage: condition, serious: share } = found.of(defect);
    const shares = { ...found, condition, serious: share };
    return { ...compared('specified', '46.44(a)(3)', ifFob, shares, fixed(own)), defect };
  }
  const [greater, other] = own.damage > NO_GRADE.damage ? [own, NO_GRADE] : [NO_GRADE, own];
  const between = (of: keyof typeof own) => ({
    low: greater[of],
    high: Math.max(greater[of], other[of]),
  });
  return compared('specified', '46.44(a)(3)', ifFob, found, {
    damage: range(greater.damage),
    serious: between('serious'),
    decay: between('decay'),
  });
}

function compared(
  rule: Compared['rule'],
  paragraph: Compared['paragraph'],
  ifFob: boolean,
  found: FoundShares,
  limits: Limits,
): Compared {
  const share = { damage: found.condition, serious: found.serious, decay: found.decay };
  const answers = (['damage', 'serious', 'decay'] as const).flatMap((of): GoodDeliveryAnswer[] => {
    const limit = limits[of];
    return limit === undefined ? [] : [{ of, found: share[of], limit, answer: answerOf(share[of], limit) }];
  });
  const all = answers.map(({ answer }) => answer);
  return {
    is: 'compared',
    ...{ rule, paragraph, ifFob, answers },
    answer: all.includes('exceeds') ? 'exceeds' : all.includes('undecided') ? 'undecided' : 'within',
  };
}

function answerOf(found: PercentRange, limit: PercentRange): GoodDeliveryAnswer['answer'] {
  if (found.low > limit.high) return 'exceeds';
  return found.high <= limit.low ? 'within' : 'undecided';
}
