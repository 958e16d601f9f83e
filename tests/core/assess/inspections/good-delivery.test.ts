import { describe, expect, it } from 'vitest';
import { type FoundShares, goodDelivery } from '../../../../src/core/assess/inspections/good-delivery.js';
import { type Line, line } from '../../../../src/core/model/delivery.js';
import regulation from './7-cfr-46.44.txt?raw';

const sold = (says: Line['sold'] = {}, goods = 'lettuce-iceberg') =>
  line.parse({ id: 'iceberg', goods, from: 'a', to: 'b', sold: says });
const exactly = (percent: number) => ({ low: percent, high: percent });
const found = (condition: number, serious: number, decay: number, permanent = 0): FoundShares => ({
  condition: exactly(condition),
  serious: exactly(serious),
  decay: exactly(decay),
  permanent: exactly(permanent),
  of: () => ({ damage: exactly(condition), serious: exactly(serious) }),
});
const limits = (says: Line['sold'], shares = found(0, 0, 0)) => {
  const result = goodDelivery(sold(says), 'fob', shares);
  return result.is === 'compared'
    ? Object.fromEntries(result.answers.map(({ of, limit }) => [of, [limit.low, limit.high]]))
    : result.why;
};
/** The number that follows some words of the regulation. */
const stated = (words: RegExp): number => Number(words.exec(regulation)?.[1]);

describe('the figures are those of 7 CFR 46.44(a)', () => {
  it('(2): no grade and no percentage in the contract', () => {
    const paragraph = /\(2\) If the contract does not specify[\s\S]*?maximum of (\d+) percent, by count/;
    expect(limits({})).toEqual({
      damage: exactlyPair(stated(paragraph)),
      serious: exactlyPair(stated(/\(2\)[\s\S]*?not more than (\d+) percent serious damage/)),
      decay: exactlyPair(stated(/\(2\)[\s\S]*?of which not more than (\d+) percent may be decay/)),
    });
    expect(limits({})).toEqual({ damage: [15, 15], serious: [9, 9], decay: [5, 5] });
  });

  it('(2): a percentage of a U.S. grade', () => {
    expect(regulation).toContain('Sales made on a percentage of a U.S. grade');
    expect(limits({ grade: '85% U.S. No. 1' })).toEqual(limits({}));
  });

  it('(1): the grade’s tolerance, less permanent defects, and 3 percent more: the example', () => {
    const tolerance = stated(/a (\d+) percent tolerance for damage at destination/);
    const permanent = stated(/contains (\d+) percent damage by permanent/);
    const more = stated(/additional (\d+) percent Good Delivery tolerance/);
    const allowed = stated(/allow a total of (\d+) percent damage by condition/);
    expect(tolerance - permanent + more).toBe(allowed);
    expect(limits({ grade: 'U.S. No. 1' }, found(0, 0, 0, permanent))).toEqual({
      damage: [allowed, allowed],
    });
    expect(allowed).toBe(10);
  });

  it('(1): decay 2 percent beyond the grade’s own tolerance, where that is stated', () => {
    const beyond = stated(/including not more than (\d+) percent decay/);
    expect(limits({ grade: 'U.S. No. 1', decayTolerance: 3 })).toMatchObject({
      decay: [3 + beyond, 3 + beyond],
    });
    expect(limits({ grade: 'U.S. No. 2' })).toBe('tolerance-not-stated');
  });

  it('(3): one and one-half times, half of it serious, a quarter decay: the example', () => {
    const [, specified, total, serious, decay] =
      /sold as ``(\d+) percent tipburn''[\s\S]*?total of (\d+) percent damage[\s\S]*?not more than (\d+) percent serious damage of which not more than (\d+) percent/
        .exec(regulation)
        ?.map(Number) ?? [];
    expect(limits({ condition: { percent: specified ?? Number.NaN, defect: 'tipburn' } })).toEqual({
      damage: [total, total],
      serious: [serious, serious],
      decay: [decay, decay],
    });
    expect([specified, total, serious, decay]).toEqual([16, 24, 12, 6]);
  });

  it('(3): whichever is greater', () => {
    expect(limits({ condition: { percent: 4 } })).toEqual(limits({}));
    expect(limits({ condition: { percent: 20, serious: 8 } })).toEqual({
      damage: [30, 30],
      serious: [12, 12],
      decay: [7.5, 7.5],
    });
  });

  it('(3): of 11 percent the total is the greater of (i), serious damage and decay of (ii), so that between them nothing is decided', () => {
    expect(limits({ condition: { percent: 11 } })).toEqual({
      damage: [16.5, 16.5],
      serious: [8.25, 9],
      decay: [4.13, 5],
    });
    const result = goodDelivery(sold({ condition: { percent: 11 } }), 'fob', found(16, 8.5, 3));
    expect(result).toMatchObject({ answer: 'undecided' });
  });

  it('(4): descriptive terms of inferior quality have no figure', () =>
    expect(limits({ inferior: true })).toBe('inferior-quality'));

  it('(5): what buyer and seller agree for the destination comes first, for other goods too', () => {
    expect(limits({ grade: 'U.S. No. 1', agreed: { percent: 20, decay: 3 } })).toEqual({
      damage: [20, 20],
      decay: [3, 3],
    });
    const celery = goodDelivery(sold({ agreed: { percent: 20 } }, 'celery'), 'delivered', found(21, 0, 0));
    expect(celery).toMatchObject({ is: 'compared', rule: 'agreed', answer: 'exceeds' });
  });
});

describe('a lot', () => {
  it.each([
    ['at every limit is within', found(15, 9, 5), 'within'],
    ['of 15.01 percent damage exceeds', found(15.01, 0, 0), 'exceeds'],
    ['of 9.5 percent serious damage exceeds', found(12, 9.5, 0), 'exceeds'],
    ['of 6 percent decay exceeds', found(6, 6, 6), 'exceeds'],
    [
      'whose damage is between 12 and 18 percent is undecided',
      { ...found(0, 0, 0), condition: { low: 12, high: 18 } },
      'undecided',
    ],
    [
      'of at least 16 percent exceeds, whatever else is open',
      { ...found(0, 0, 0), condition: { low: 16, high: 18 }, serious: { low: 0, high: 18 } },
      'exceeds',
    ],
  ])('%s', (_, shares, answer) =>
    expect(goodDelivery(sold(), 'fob', shares)).toMatchObject({ answer, ifFob: false }),
  );

  it.each([
    ['romaine', sold({}, 'lettuce-romaine'), undefined, 'other-lettuce'],
    ['celery', sold({}, 'celery'), undefined, 'other-goods'],
    ['goods sold delivered', sold(), 'delivered', 'delivered-sale'],
    ['goods sold f.o.b. acceptance final', sold(), 'fob-acceptance-final', 'acceptance-final'],
  ] as const)('of %s is not compared with 46.44', (_, of, sale, why) =>
    expect(goodDelivery(of, sale, found(0, 0, 0))).toEqual({ is: 'not-compared', why }),
  );

  it('is compared under a condition where no trade term is on record', () =>
    expect(goodDelivery(sold(), undefined, found(0, 0, 0))).toMatchObject({ ifFob: true }));
});

function exactlyPair(percent: number): [number, number] {
  return [percent, percent];
}
