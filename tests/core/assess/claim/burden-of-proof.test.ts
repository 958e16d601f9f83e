import { describe, expect, it } from 'vitest';
import { burdenOfProof, hasNoExceptedCause } from '../../../../src/core/assess/claim/burden-of-proof.js';
import { catalogue, type FindingId } from '../../../../src/core/assess/findings/catalogue.js';
import type { EvidenceId } from '../../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import type { Finding, GapResult, PositionRow } from '../../../../src/core/model/results.js';
import type { Element } from '../../../../src/core/model/rule-set.js';
import { amountStated, claimEntries, claimReceived, usd } from './notes.js';

const found = (
  id: FindingId,
  weighs = catalogue[id].weighs as Finding['weighs'],
  facts: Finding['facts'] = {},
) => {
  const { element, weight } = catalogue[id];
  return { id, weighs, element, weight, evidence: ['e7' as EvidenceId], by: 'test', facts } satisfies Finding;
};
const lacks = (rule: string, outcome: GapResult['outcome'], ...proves: Element[]): GapResult => ({
  rule,
  stage: 'loading',
  weight: 'supporting',
  title: rule,
  outcome,
  counted: ['e3' as EvidenceId],
  nearly: [],
  against: [],
  lacking: [],
  notes: [],
  closable: { is: 'now' },
  substitutes: [],
  wanted: [],
  proves,
  why: '',
  how: '',
  basis: '',
});
interface Given {
  findings?: Finding[];
  gaps?: GapResult[];
  notes?: Parameters<typeof claimEntries>;
}
const position = ({ findings = [], gaps = [], notes = [] }: Given) =>
  burdenOfProof({ findings, gaps, entries: claimEntries(...notes) });
const row = (rows: readonly PositionRow[], element: PositionRow['element'], cause?: PositionRow['cause']) => {
  const one = rows.find((row) => row.element === element && row.cause === cause);
  if (one === undefined) throw new Error(`no row ${element} ${cause ?? ''}`);
  return one;
};
const from = (points: PositionRow['weak']) =>
  points.map(({ from }) => (from.is === 'claim-entry' ? from.seq : from.id));

const line = { is: 'line', line: 'romaine' } as const;
const careful = [found('set-point-agrees'), found('air-in-band')];
const loadedWarm = found('pulps-at-loading-above-band', 'helps', { line });

describe('what the claimant must show', () => {
  it('good pulps at loading show it for the claimant, even where they speak for care', () => {
    const rows = position({ findings: [found('pulps-at-loading-in-band', 'helps')] });
    const receipt = row(rows, 'good-condition-at-receipt');
    expect(receipt).toMatchObject({ by: 'claimant', stands: 'against-carrier', forCarrier: [] });
    expect(receipt.againstCarrier).toEqual([
      { from: { is: 'finding', id: 'pulps-at-loading-in-band' }, evidence: ['e7'] },
    ]);
  });

  it('warm pulps at loading speak against good condition at receipt', () => {
    expect(row(position({ findings: [loadedWarm] }), 'good-condition-at-receipt').stands).toBe('for-carrier');
  });

  it('one line loaded warm and one cold leave it disputed', () => {
    const rows = position({ findings: [loadedWarm, found('pulps-at-loading-in-band', 'hurts')] });
    expect(row(rows, 'good-condition-at-receipt').stands).toBe('disputed');
  });

  it('what is lacking decides nothing, and is named', () => {
    const rows = position({
      gaps: [
        lacks('pulp-at-delivery', 'missing', 'condition-at-delivery', 'care-in-transit'),
        lacks('signed-bill', 'met', 'good-condition-at-receipt'),
      ],
    });
    const delivery = row(rows, 'condition-at-delivery');
    expect(delivery.stands).toBe('open');
    expect(delivery.weak).toEqual([{ from: { is: 'gap', id: 'pulp-at-delivery' }, evidence: ['e3'] }]);
    expect(row(rows, 'good-condition-at-receipt').weak).toEqual([]);
  });

  it.each<[string, Parameters<typeof claimEntries>, Partial<Record<string, number[]>>, string]>([
    ['a claimed amount alone', [claimReceived({ amount: usd('900') })], { weak: [10] }, 'open'],
    [
      'an invoice',
      [claimReceived({ amount: usd('900') }), amountStated('invoice-value', '900')],
      { againstCarrier: [11] },
      'against-carrier',
    ],
    [
      'an invoice, and what a sale brought',
      [amountStated('invoice-value', '900'), amountStated('salvage', '300', 'carrier')],
      { againstCarrier: [10], forCarrier: [11] },
      'disputed',
    ],
    [
      'an amount without a paper',
      [amountStated('invoice-value', '900', 'claimant', { evidence: [] })],
      { weak: [10] },
      'open',
    ],
    [
      'an amount that was corrected',
      [
        amountStated('invoice-value', '900'),
        amountStated('invoice-value', '800', 'claimant', { replaces: 10 }),
      ],
      { againstCarrier: [11] },
      'against-carrier',
    ],
    [
      'an offer, which admits nothing',
      [{ is: 'offer', by: 'carrier', on: { date: '2026-08-03', zone: 'UTC' }, amount: usd('100') }],
      {},
      'open',
    ],
  ])('the amount: %s', (_, notes, sides, stands) => {
    const { forCarrier, againstCarrier, weak, ...rest } = row(position({ notes }), 'damages');
    expect({ forCarrier: from(forCarrier), againstCarrier: from(againstCarrier), weak: from(weak) }).toEqual({
      forCarrier: [],
      againstCarrier: [],
      weak: [],
      ...sides,
    });
    expect(rest.stands).toBe(stands);
  });

  it('counts of damaged and of accepted goods bear on the condition at delivery', () => {
    const count = (state: string) => ({
      is: 'quantity' as const,
      line: 'romaine',
      state,
      quantity: '12',
      unit: 'cartons',
      saidBy: 'receiver',
    });
    const delivery = row(
      position({ notes: [count('shipped'), count('accepted'), count('rejected')] }),
      'condition-at-delivery',
    );
    expect([from(delivery.forCarrier), from(delivery.againstCarrier)]).toEqual([[11], [12]]);
  });
});

describe('what the carrier must show: both freedom from negligence and an excepted cause', () => {
  it('care alone is not enough (Missouri Pacific R. Co. v. Elmore & Stahl: honeydew melons)', () => {
    const rows = position({ findings: careful });
    expect(row(rows, 'freedom-from-negligence').stands).toBe('for-carrier');
    expect(row(rows, 'excepted-cause')).toMatchObject({
      by: 'carrier',
      stands: 'against-carrier',
      forCarrier: [],
    });
    expect(hasNoExceptedCause(rows)).toBe(true);
  });

  it('a cause alone is not enough either', () => {
    const rows = position({ findings: [loadedWarm, found('warmed-on-the-way'), ...careful] });
    expect(row(rows, 'excepted-cause', 'act-of-shipper').stands).toBe('for-carrier');
    expect(row(rows, 'freedom-from-negligence').stands).toBe('disputed');
    expect(hasNoExceptedCause(rows)).toBe(false);
  });

  it.each<[string, Finding[], PositionRow['stands']]>([
    ['instructions and care shown', careful, 'for-carrier'],
    ['only instructions shown', [found('set-point-agrees')], 'open'],
    ['only care shown', [found('air-in-band')], 'open'],
    ['nothing shown', [], 'against-carrier'],
    ['nothing decided', [found('alarms-seen')], 'open'],
    ['something against', [...careful, found('seal-differs')], 'disputed'],
    ['all against', [found('no-unit-log')], 'against-carrier'],
  ])('freedom from negligence with %s', (_, findings, stands) => {
    expect(row(position({ findings }), 'freedom-from-negligence').stands).toBe(stands);
  });

  it('a requirement that is contradicted weighs against care; one not met is only weak', () => {
    const rows = position({
      findings: careful,
      gaps: [
        lacks('pulp-within-instruction', 'contradicted', 'act-of-shipper', 'instructions-followed'),
        lacks('unit-pre-trip', 'short', 'care-in-transit', 'instructions-followed'),
        lacks('seal-photo', 'not-yet-due', 'care-in-transit'),
      ],
    });
    const freedom = row(rows, 'freedom-from-negligence');
    expect(from(freedom.againstCarrier)).toEqual(['pulp-within-instruction']);
    expect(from(freedom.weak)).toEqual(['unit-pre-trip']);
    expect(freedom.stands).toBe('disputed');
  });

  it.each<[string, Finding[], PositionRow['cause'], PositionRow['stands']]>([
    ['warm product at loading', [loadedWarm], 'act-of-shipper', 'for-carrier'],
    [
      'warm product that nobody was told of',
      [loadedWarm, found('warm-at-loading-nobody-told')],
      'act-of-shipper',
      'disputed',
    ],
    [
      'an instruction outside of the range',
      [found('instruction-outside-published-range')],
      'act-of-shipper',
      'open',
    ],
    [
      'an arrival that does not discriminate',
      [found('arrival-does-not-discriminate')],
      'act-of-shipper',
      'open',
    ],
    [
      'chilling air, as instructed',
      [found('air-in-chilling-range', 'open', { asInstructed: true })],
      'act-of-shipper',
      'open',
    ],
    ['goods that do not go together', [found('mixed-ethylene')], 'nature-of-goods', 'open'],
  ])('a cause is offered with %s', (_, findings, cause, stands) => {
    const rows = position({ findings });
    expect(row(rows, 'excepted-cause', cause).stands).toBe(stands);
    expect(rows.filter(({ element }) => element === 'excepted-cause')).toHaveLength(1);
  });

  it.each<[string, Given]>([
    ['what is lacking', { gaps: [lacks('load-pattern', 'missing', 'act-of-shipper', 'nature-of-goods')] }],
    ['what speaks against it', { findings: [found('warm-at-loading-nobody-told')] }],
    [
      'chilling air that nobody ordered',
      { findings: [found('air-in-chilling-range', 'hurts', { asInstructed: false })] },
    ],
  ])('none is offered with only %s', (_, given) => {
    const rows = position(given);
    expect(hasNoExceptedCause(rows)).toBe(true);
    expect(row(rows, 'excepted-cause').stands).toBe('against-carrier');
  });

  it('what is lacking for several causes is named once', () => {
    const rows = position({ gaps: [lacks('load-pattern', 'missing', 'act-of-shipper', 'nature-of-goods')] });
    expect(from(row(rows, 'excepted-cause').weak)).toEqual(['load-pattern']);
  });

  it('an arrival that supports warm at origin points to the shipper only where it discriminates', () => {
    const points = (weighs: Finding['weighs']) => {
      const supports = found('arrival-supports-origin', weighs, { line: { is: 'line', line: 'romaine' } });
      const rows = position({ findings: [supports] });
      return [
        from(row(rows, 'excepted-cause', 'act-of-shipper').forCarrier),
        from(row(rows, 'good-condition-at-receipt').forCarrier),
      ];
    };
    expect(points('helps')).toEqual([['arrival-supports-origin'], ['arrival-supports-origin']]);
    expect(points('open')).toEqual([[], []]);
  });

  it('freezing that the bill itself instructs points to the shipper', () => {
    const frozen = found('pulps-at-delivery-frozen', 'open', { instructed: true });
    expect(from(row(position({ findings: [frozen] }), 'excepted-cause', 'act-of-shipper').weak)).toEqual([
      'pulps-at-delivery-frozen',
    ]);
  });

  it('act of God, public enemy and public authority are never offered: nothing in a record says them', () => {
    const every = (Object.keys(catalogue) as FindingId[]).map((id) => found(id));
    const causes = position({ findings: every }).flatMap((one) => one.cause ?? []);
    expect(causes).toEqual(['act-of-shipper', 'nature-of-goods']);
  });
});

it('a point says which line its finding is about', () => {
  const outside = (name: string) =>
    found('instruction-outside-published-range', 'open', { line: { is: 'line', line: name } });
  const rows = position({ findings: [outside('romaine'), outside('celery')] });
  expect(row(rows, 'excepted-cause', 'act-of-shipper').weak.map((point) => point.from)).toEqual([
    { is: 'finding', id: 'instruction-outside-published-range', line: 'romaine' },
    { is: 'finding', id: 'instruction-outside-published-range', line: 'celery' },
  ]);
});

describe('a claim that names its lines', () => {
  const of = (id: FindingId, name: string) => found(id, undefined, { line: { is: 'line', line: name } });
  const findings = [
    of('pulps-at-loading-above-band', 'romaine'),
    of('pulps-at-loading-in-band', 'celery'),
    of('instruction-outside-published-range', 'celery'),
    found('mixed-ethylene', 'open', { giver: { is: 'line', line: 'celery' }, feeler: line }),
    ...careful,
  ];
  const valued = (...lines: (string | undefined)[]) =>
    lines.map((name) => amountStated('market-value', '900', 'claimant', omitUndefined({ line: name })));

  it('leaves out what is about other lines alone', () => {
    const rows = position({ findings, notes: [...valued('romaine'), amountStated('freight-paid', '100')] });
    expect(row(rows, 'good-condition-at-receipt').stands).toBe('for-carrier');
    expect(from(row(rows, 'excepted-cause', 'act-of-shipper').weak)).toEqual([]);
    expect(from(row(rows, 'excepted-cause', 'nature-of-goods').weak)).toEqual(['mixed-ethylene']);
    expect(row(rows, 'freedom-from-negligence').stands).toBe('for-carrier');
  });

  it.each<[string, Parameters<typeof claimEntries>]>([
    ['nothing names a line', [claimReceived({ amount: usd('900') })]],
    ['a value is of the whole', valued('romaine', undefined)],
    ['the line is one of several', valued('romaine', 'celery')],
  ])('leaves out nothing where %s', (_, notes) => {
    expect(row(position({ findings, notes }), 'good-condition-at-receipt').stands).toBe('disputed');
  });

  it('leaves out requirements that are open for other lines only', () => {
    const part = (name: string, outcome: GapResult['outcome']) => ({
      line: name,
      outcome,
      lacking: [],
      closable: { is: 'now' as const },
    });
    const gap = (...parts: ReturnType<typeof part>[]) => ({ ...lacks('pulps', 'missing', 'damages'), parts });
    const weak = (...parts: ReturnType<typeof part>[]) =>
      from(row(position({ gaps: [gap(...parts)], notes: valued('romaine') }), 'damages').weak);
    expect(weak(part('romaine', 'met'), part('celery', 'missing'))).toEqual([]);
    expect(weak(part('romaine', 'short'), part('celery', 'missing'))).toEqual(['pulps']);
  });
});

/** CMR, articles 17 and 18. */
describe('where the CMR governs', () => {
  const terms = { is: 'terms' as const, governs: 'cmr' };
  const decay = { is: 'cause' as const, cause: 'nature-of-goods', evidence: ['e7'] };

  it('every row is of its articles', () => {
    const rows = position({ notes: [claimReceived({}), terms] });
    expect(rows.map(({ under }) => under)).toEqual(rows.map(() => 'cmr'));
    expect(position({ notes: [claimReceived({})] }).some(({ under }) => under === 'cmr')).toBe(false);
  });

  it('18(4): decay relieves only where choice, maintenance and use of the equipment are shown', () => {
    const stands = (findings: Finding[]) =>
      row(
        position({ findings, notes: [claimReceived({}), terms, decay] }),
        'excepted-cause',
        'nature-of-goods',
      ).stands;
    expect(stands([])).toBe('open');
    expect(stands(careful)).toBe('for-carrier');
  });
});

describe('a cause that a person ties evidence to', () => {
  const flood = { is: 'cause' as const, cause: 'act-of-god', evidence: ['e7'], note: 'Road closed' };
  it('is offered, beside those that findings stand behind', () => {
    const rows = position({ notes: [claimReceived({}), flood] });
    expect(row(rows, 'excepted-cause', 'act-of-god')).toMatchObject({ by: 'carrier', stands: 'for-carrier' });
    expect(row(rows, 'excepted-cause', 'act-of-god').forCarrier[0]?.evidence).toEqual(['e7']);
  });
  it('is not kept without evidence', () => {
    expect(() => position({ notes: [claimReceived({}), { ...flood, evidence: [] }] })).toThrow(
      /evidence behind it/,
    );
  });
});
