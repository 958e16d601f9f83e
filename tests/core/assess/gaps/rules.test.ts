import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { GapResult } from '../../../../src/core/model/results.js';
import { ruleSet } from '../../../../src/core/model/rule-set.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import PRODUCE from '../../../../templates/rule-sets/produce.yaml?raw';
import { at, HASH, instantAt, type items, state } from '../made.js';
import {
  CHANGE,
  DROP,
  displayedSetPoint,
  documentOf,
  event,
  evidenceWith,
  LOAD,
  pulp,
  seal,
  TIMES,
  unitCheck,
  unitLog,
} from './complete.js';

const produce = ruleSet.parse(parse(PRODUCE));

interface Case {
  drop?: readonly string[];
  add?: Parameters<typeof items>;
  logs?: UnitLog[];
  change?: Partial<DeliveryInput>;
}
function judge({ drop, add, logs = [unitLog()], change = CHANGE }: Case = {}): Map<string, GapResult> {
  const { gaps } = assess({
    state: state(evidenceWith(drop, add), change),
    logs,
    ruleSet: { ruleSet: produce, sha256: HASH },
    at: instantAt(TIMES.end),
  });
  return new Map(gaps.map((gap) => [gap.rule, gap]));
}

const line = (id: string, more: object = {}) => ({
  ...CHANGE.lines.find((one) => one.id === id),
  id,
  goods: id,
  from: 'load-1',
  to: 'drop-1',
  ...more,
});
const COLD = { setPoint: '36 °F', tolerance: '2 °F' };
const WARM_LOG = [unitLog({ air: (hour) => (hour < 2 ? 60 : 36) })];

/**
 * For each rule of the produce set: what leaves it missing, what leaves it short, and what speaks against it, as far
 * as these can occur. The complete delivery meets every one of them.
 */
const CASES: Record<string, { missing?: Case; short?: Case; contradicted?: Case }> = {
  'previous-loads': {
    missing: { drop: ['previous-load*'] },
    short: { drop: ['previous-load-more'] },
  },
  'sensors-calibrated': { missing: { drop: ['calibration'] } },
  'who-loaded-and-counted': {
    missing: { drop: ['loaded-by', 'counted-by'] },
    short: { drop: ['counted-by'] },
  },
  'cooling-history': { missing: { drop: ['harvest'] } },
  'origin-inspection': { missing: { drop: ['origin'] } },
  'recorders-placed': { missing: { drop: ['recorder'] } },
  'unit-settings': { missing: { drop: ['defrost', 'vent'] }, short: { drop: ['vent'] } },
  'duty-record': { missing: { drop: ['duty'] } },
  'pulps-at-the-doors': { missing: { drop: ['pulp-there*', 'receiver-*'] } },
  'thermometer-known': { missing: { drop: ['ice-after'] } },
  'native-download': { missing: { drop: ['native', 'controller'] }, short: { drop: ['native'] } },
  'recorder-downloads': { contradicted: { drop: ['recorder-download'] } },
  'counts-at-each-end': { missing: { drop: ['count', 'count-there'] }, short: { drop: ['count-there'] } },
  'disposal-instruction': { missing: { drop: ['instruction'] } },
  'market-price': { missing: { drop: ['market'] } },
  'payment-and-title': { missing: { drop: ['payment'] } },
  'trailer-clean': { missing: { drop: ['trailer-inside*'] } },
  'trailer-sound': {
    missing: { drop: ['statement-before', 'trailer-inside*'] },
    short: { drop: ['statement-before', 'trailer-inside-more'] },
  },
  'floor-drains-open': { missing: { drop: ['drains'] } },
  'air-chute-whole': { missing: { drop: ['air-chute'] } },
  'unit-pre-trip': { missing: { drop: ['pre-trip'] } },
  'no-alarm-before-loading': {
    missing: { drop: ['unit-check-before'], logs: [] },
    contradicted: {
      drop: ['unit-check-before'],
      logs: [unitLog({ alarm: (hour) => (hour < 1 ? 'A63' : '') })],
    },
  },
  'box-pre-cooled': {
    missing: { drop: ['display-before', 'unit-check-before'], logs: [] },
    contradicted: { drop: ['display-before', 'unit-check-before'], logs: WARM_LOG },
  },
  'thermometer-checked': { missing: { drop: ['ice-check'] } },
  'unit-fuel': {
    missing: { drop: ['unit-check-before', 'fuel-gauge'] },
    contradicted: {
      drop: ['unit-check-before', 'fuel-gauge'],
      add: [unitCheck(0.7, { at: LOAD, fuel: 0.25 })],
    },
  },
  'dock-times': { short: { drop: ['opened'] } },
  'loading-account': { missing: { drop: ['account', 'statement-before'] } },
  'pulp-before-loading': {
    missing: { drop: ['pulp-romaine*', 'pulp-broccoli*'] },
    short: { drop: ['pulp-romaine-tail'] },
  },
  'pulp-display-photo': {
    missing: { drop: ['pulp-display-romaine', 'pulp-display-broccoli'] },
    short: { drop: ['pulp-display-romaine'] },
  },
  'pulp-within-instruction': {
    missing: { drop: ['pulp-romaine*', 'pulp-broccoli*', 'contact-shipper'] },
    short: { drop: ['pulp-romaine*', 'contact-shipper'] },
    contradicted: { drop: ['contact-shipper'], add: [pulp('romaine', LOAD, 1.2, 'nose', 45)] },
  },
  'count-and-condition': { missing: { drop: ['dock-*'] } },
  'pallet-tags': {
    missing: { drop: ['tag-*', 'pulp-display-romaine', 'pulp-display-broccoli'] },
    short: { drop: ['tag-romaine', 'pulp-display-romaine'] },
  },
  'ice-at-loading': { missing: { drop: ['dock-broccoli', 'pulp-display-broccoli'] } },
  'temperature-on-the-bill': {
    missing: { change: { lines: [line('romaine', { instruction: undefined })] } },
    short: { change: { lines: [line('romaine'), line('broccoli', { instruction: undefined })] } },
  },
  'temperature-in-published-range': {
    contradicted: {
      drop: ['contact-shipper'],
      change: {
        lines: [line('romaine', { goods: 'lettuce-romaine', instruction: { ...COLD, setPoint: '48 °F' } })],
      },
    },
  },
  'one-temperature-for-all': {
    contradicted: {
      drop: ['contact-shipper'],
      change: {
        lines: [
          line('romaine', { instruction: COLD }),
          line('limes', { instruction: { ...COLD, setPoint: '48 °F' } }),
        ],
      },
    },
  },
  'mixed-goods': { missing: { drop: ['contact-shipper', 'bill'] } },
  'signed-bill': { missing: { drop: ['bill'] } },
  'set-point-display': { missing: { drop: ['display', 'display-photo', 'display-before'] } },
  'run-mode': {
    missing: { drop: ['display'] },
    contradicted: { drop: ['display'], add: [displayedSetPoint(3.2, 36, 'start-stop')] },
  },
  'set-point-agreement': {
    short: { drop: ['display'] },
    contradicted: { drop: ['display'], add: [displayedSetPoint(3.2, 46)] },
  },
  'load-pattern': { missing: { drop: ['load-pattern'] } },
  'air-path-free': { missing: { drop: ['air-path'] } },
  bracing: { missing: { drop: ['bracing', 'bracing-photo'] } },
  'tall-pallets-braced': { missing: { drop: ['bracing'] } },
  'iced-goods-placed': { missing: { drop: ['load-pattern'] } },
  'seal-applied': { missing: { drop: ['seal'] } },
  'seal-photo': { missing: { drop: ['seal-photo'] } },
  'first-look': { missing: { drop: ['unit-checks'] } },
  'unit-watched': {
    missing: { drop: ['unit-checks'], logs: [] },
    short: { drop: ['unit-checks'], add: [unitCheck(6)] },
  },
  'fuel-on-the-way': {
    missing: { drop: ['unit-checks'] },
    contradicted: { add: [unitCheck(20, { fuel: 0.25 })] },
  },
  'set-point-kept': {
    short: { logs: [] },
    contradicted: { logs: [unitLog({ setPoint: (hour) => (hour > 3.5 ? 46 : 36) })] },
  },
  'alarms-answered': {
    missing: { drop: ['unit-checks'], logs: [] },
    short: { logs: [unitLog({ alarm: (hour) => (hour >= 23 && hour < 25 ? 'A63' : '') })] },
  },
  'delays-explained': {
    missing: { drop: ['arrived', 'opened', 'began', 'ended', 'closed', 'departed'] },
    short: { drop: ['unit-checks', 'rested'], add: [event('stopped', LOAD, 12), event('resumed', LOAD, 17)] },
  },
  'arrival-times': { short: { drop: ['there'] } },
  'notice-of-arrival': { missing: { drop: ['notice'] } },
  'seal-at-arrival': {
    missing: { drop: ['seal-there'] },
    short: { drop: ['seal'] },
    contradicted: { drop: ['seal-there'], add: [seal('AB 124', 'intact', 40.2)] },
  },
  'seal-photo-at-arrival': { missing: { drop: ['seal-photo-there'] } },
  'display-at-arrival': { missing: { drop: ['display-there'] } },
  'load-at-opening': { missing: { drop: ['load-at-opening'] } },
  'pulp-at-delivery': {
    missing: { drop: ['pulp-there-*'] },
    short: { drop: ['pulp-there-romaine-nose'] },
  },
  'pulp-display-at-delivery': { missing: { drop: ['pulp-display-there'] } },
  'receiver-pulps': {
    missing: { drop: ['receiver-*', 'pulp-there-*'] },
    short: { drop: ['receiver-romaine'] },
    contradicted: {
      drop: ['receiver-romaine'],
      add: [pulp('romaine', DROP, 41.5, 'tail', 45, 'receiver')],
    },
  },
  'unit-download': { missing: { logs: [] }, short: { logs: [unitLog({ from: 20 })] } },
  'pre-cooling-in-the-log': {
    missing: { logs: [unitLog({ from: 3 })] },
    short: { logs: [unitLog({ from: 1 })] },
  },
  'proof-of-delivery': { missing: { drop: ['pod'] } },
  'written-rejection': { missing: { drop: ['rejection'] } },
  'photos-of-what-is-wrong': { missing: { drop: ['damage*'] }, short: { drop: ['damage-more'] } },
  'inspection-asked': { missing: { drop: ['inspection'] } },
  'inspection-certificate': { missing: { drop: ['certificate'] } },
  'shipper-told': { missing: { drop: ['contact-shipper-refused'] } },
  'insurer-told': { missing: { drop: ['contact-insurer', 'contact-insurer-claim'] } },
  'goods-kept': { missing: { drop: ['unit-check-refused'], logs: [] } },
  'goods-disposed': { missing: { drop: ['sale'] } },
  'claim-letter': { missing: { drop: ['claim'], add: [documentOf('claim-letter')] } },
  'value-of-goods': { missing: { drop: ['invoice'] } },
  'account-of-sale': { missing: { drop: ['sale'] } },
  'claim-acknowledged': { missing: { drop: ['acknowledged'] } },
  'claim-answered': { missing: { drop: ['answered'] } },
  'insurer-has-the-claim': { missing: { drop: ['contact-insurer', 'contact-insurer-claim'] } },
};

const complete = judge();

describe('each rule of the produce set', () => {
  it('has its cases here, and nothing else does', () => {
    expect(Object.keys(CASES).sort()).toEqual(produce.rules.map((rule) => rule.id).sort());
  });

  it.each(produce.rules.map((rule) => rule.id))('%s is met by the complete delivery', (id) => {
    const gap = complete.get(id);
    expect(gap?.lacking).toEqual([]);
    expect(gap?.outcome).toBe('met');
  });

  const rows = Object.entries(CASES).flatMap(([id, cases]) =>
    Object.entries(cases).map(([outcome, one]: [string, Case]) => ({ id, outcome, one })),
  );
  it.each(rows)('$id: $outcome', ({ id, outcome, one }) => {
    const gap = judge(one).get(id);
    expect(gap?.outcome).toBe(outcome);
    expect(gap?.lacking).not.toEqual([]);
    expect(gap?.counted.length === 0 || outcome !== 'missing').toBe(true);
  });

  it('takes a blurred or dark picture for none, and says why', () => {
    const gap = judge({
      drop: ['drains'],
      add: [
        {
          kind: 'photo',
          subject: { is: 'drains', sure: 'confirmed' },
          place: LOAD,
          time: at(0.5),
          flags: [{ is: 'blurred', detail: 'soft' }],
        },
      ],
    }).get('floor-drains-open');
    expect(gap?.outcome).toBe('missing');
    expect(gap?.nearly.map((miss) => miss.why)).toEqual(['blurred']);
  });

  it('asks for the run mode of the bill, not for the usual one', () => {
    const lines = [line('romaine', { instruction: { ...COLD, run: 'start-stop' } })];
    expect(judge({ change: { lines } }).get('run-mode')?.outcome).toBe('contradicted');
    const add = [displayedSetPoint(3.2, 36, 'start-stop')] as const;
    expect(judge({ drop: ['display'], add: [...add], change: { lines } }).get('run-mode')?.outcome).toBe(
      'met',
    );
  });

  it.each([
    [0.25, 'met'],
    [0.125, 'contradicted'],
  ])('of a tank low on the way, %d of it left at the receiver: %s', (fuel, outcome) => {
    const add = [unitCheck(20, { fuel: 0.25 }), unitCheck(41, { fuel, at: DROP })];
    expect(judge({ add }).get('fuel-on-the-way')?.outcome).toBe(outcome);
  });

  it('asks for claim papers only when a claim is in the record, and then whether or not the load was refused', () => {
    const claim = ['claim', 'acknowledged', 'answered'];
    expect(judge({ drop: claim }).get('value-of-goods')?.outcome).toBe('does-not-apply');
    expect(judge({ drop: ['refused', 'invoice'] }).get('value-of-goods')?.outcome).toBe('missing');
  });

  it.each([
    ['floor-drains-open', { equipment: { trailer: { number: 'T', drains: 'none' as const } } }],
    ['floor-drains-open', { lines: [line('romaine')] }],
    ['air-chute-whole', { equipment: { trailer: { number: 'T', airChute: false } } }],
    ['iced-goods-placed', { lines: [line('romaine')] }],
    ['mixed-goods', { lines: [line('romaine')] }],
    ['tall-pallets-braced', { lines: [line('romaine', { stackHeight: '60 in' })] }],
    ['pulp-before-loading', { lines: [line('romaine', { instruction: undefined })] }],
  ])('%s does not apply where there is nothing of the kind', (id, change) => {
    expect(judge({ change: { ...CHANGE, ...change } }).get(id)?.outcome).toBe('does-not-apply');
  });
});
