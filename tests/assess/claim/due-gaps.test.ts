import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../src/assess/assess.js';
import { ruleSet } from '../../../src/model/rule-set.js';
import type { Instant } from '../../../src/model/time.js';
import { HASH, state } from '../made.js';
import { clocks, received, said } from './made.js';

const produce = ruleSet.parse(parse(readFileSync('templates/rule-sets/produce.yaml', 'utf8')));
const judged = (at: string, ...notes: Parameters<typeof said>) =>
  assess({
    state: { ...state([]), claims: said(...notes) },
    logs: [],
    ruleSet: { ruleSet: produce, sha256: HASH },
    at: at as Instant,
    claimClocks: clocks(),
  });
const gap = (id: string, { gaps }: ReturnType<typeof judged>) => gaps.find(({ rule }) => rule === id);

describe('what a claim asks, among what is missing', () => {
  it('is asked for as soon as a claim is recorded, and says by when', () => {
    const found = gap('claim-acknowledged', judged('2025-02-01T00:00:00.000Z', received('2025-01-15')));
    expect(found).toMatchObject({ outcome: 'missing', closable: { is: 'now' } });
    expect(found?.due).toMatchObject([
      { claim: 'c1', state: 'running', source: '49 CFR 370.5(a)', at: { day: { date: '2025-02-14' } } },
    ]);
  });

  it('can still be got when it is overdue', () => {
    const found = gap('claim-answered', judged('2025-06-01T00:00:00.000Z', received('2025-01-15')));
    expect(found).toMatchObject({ closable: { is: 'now' }, due: [{ state: 'overdue' }] });
  });

  it('has no day where what governs has no such clock', () => {
    const under = judged('2025-02-01T00:00:00.000Z', received('2025-01-15'), { is: 'terms', governs: 'cmr' });
    expect(gap('claim-acknowledged', under)).not.toHaveProperty('due');
  });

  it('is not asked for before the claim came in', () => {
    const before = judged('2025-01-10T00:00:00.000Z', received('2025-01-15'));
    expect(gap('claim-acknowledged', before)?.outcome).toBe('does-not-apply');
    expect(before).not.toHaveProperty('claims');
  });

  it('names clocks that there are', () => {
    const ids = clocks().clocks.map(({ id }) => id);
    const named = produce.rules.flatMap(({ clock }) => clock ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(ids).toEqual(expect.arrayContaining(named));
  });
});
