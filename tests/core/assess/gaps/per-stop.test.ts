import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../../src/core/assess/assess.js';
import type { GapResult } from '../../../../src/core/model/results.js';
import { ruleSet } from '../../../../src/core/model/rule-set.js';
import PRODUCE from '../../../../templates/rule-sets/produce.yaml?raw';
import { at, HASH, instantAt, items, state } from '../made.js';

const produce = ruleSet.parse(parse(PRODUCE));
const TWO_DROPS = {
  stops: [
    { id: 'load-1', does: 'load' as const, place: 'Cooler A', zone: 'UTC' },
    { id: 'denver', does: 'unload' as const, place: 'Denver', zone: 'UTC' },
    { id: 'omaha', does: 'unload' as const, place: 'Omaha', zone: 'UTC' },
  ],
  lines: [
    { id: 'strawberries', goods: 'strawberry', from: 'load-1', to: 'denver', pallets: 18 },
    { id: 'celery', goods: 'celery', from: 'load-1', to: 'omaha', pallets: 6 },
  ],
};

const refusal = (line: string, stop: string, hour: number) => ({
  kind: 'outcome' as const,
  outcome: 'refused' as const,
  reasons: [],
  documents: [],
  line,
  place: { stop },
  time: at(hour),
});
const asked = (stop: string, hour: number) =>
  ({ kind: 'event', event: 'inspection-requested', place: { stop }, time: at(hour) }) as const;

function gap(rule: string, hours: number, ...evidence: Parameters<typeof items>): GapResult | undefined {
  return assess({
    state: state(items(...evidence), TWO_DROPS),
    logs: [],
    ruleSet: { ruleSet: produce, sha256: HASH },
    at: instantAt(hours),
  }).gaps.find((one) => one.rule === rule);
}

describe('what a refusal asks for', () => {
  it('can be got until its own time at the stop of the refusal, whatever happens at a later stop', () => {
    const refused = refusal('strawberries', 'denver', 10);
    expect(gap('inspection-asked', 20, refused)).toMatchObject({
      outcome: 'missing',
      closable: { is: 'until', stop: 'denver', at: instantAt(34) },
    });
    expect(gap('inspection-asked', 24 * 90, refused)).toMatchObject({
      outcome: 'missing',
      closable: { is: 'lost', since: 'refused', stop: 'denver', at: instantAt(34) },
    });
  });

  it('is asked for each stop on its own where two stops refused', () => {
    const both = [refusal('strawberries', 'denver', 10), refusal('celery', 'omaha', 30)];
    expect(gap('inspection-asked', 32, ...both, asked('denver', 11))).toMatchObject({
      outcome: 'short',
      parts: [
        { stop: 'denver', outcome: 'met' },
        { stop: 'omaha', outcome: 'missing', closable: { is: 'until', at: instantAt(54) } },
      ],
    });
  });

  it('is not asked for goods that were accepted', () => {
    const accepted = { ...refusal('celery', 'omaha', 30), outcome: 'accepted' as const };
    expect(gap('goods-disposed', 40, accepted)?.outcome).toBe('does-not-apply');
  });
});
