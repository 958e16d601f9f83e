import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import type { GapResult, RejectedEvidence } from '../../../../src/core/model/results.js';
import type { EvidenceItem } from '../../../../src/core/model/state.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import { at, HASH, instantAt, items, log, rulesOf, state } from '../made.js';

const F = (value: number) => ({ value, unit: '°F' as const });
const LOADING = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };
const opened = { kind: 'event', event: 'doors-opened', place: LOADING, time: at(0) } as const;
const closed = { kind: 'event', event: 'doors-closed', place: LOADING, time: at(2) } as const;
const departed = { kind: 'event', event: 'departed', place: LOADING, time: at(3) } as const;
const arrived = { kind: 'event', event: 'arrived', place: DROP, time: at(30) } as const;
const openedThere = { kind: 'event', event: 'doors-opened', place: DROP, time: at(31) } as const;
const refused = { kind: 'event', event: 'refused', place: DROP, time: at(32) } as const;
const pulp = (
  value: number,
  hour: number,
  position: 'nose' | 'middle' | 'tail' = 'nose',
  from = 'driver' as const,
) =>
  ({
    kind: 'pulp',
    temperature: F(value),
    from,
    line: 'romaine',
    place: { ...LOADING, position },
    time: at(hour),
  }) as const;
const photo = (is: 'drains' | 'pulp-display', sure: 'proposed' | 'confirmed' = 'confirmed') =>
  ({ kind: 'photo', subject: { is, sure }, place: LOADING, time: at(1) }) as const;

function hold(
  rule: object,
  evidence: EvidenceItem[],
  { now = 40, logs = [] as UnitLog[], change = {} as Partial<DeliveryInput> } = {},
): GapResult {
  const [gap] = assess({
    state: state(evidence, change),
    logs,
    ruleSet: { ruleSet: rulesOf(rule), sha256: HASH },
    at: instantAt(now),
  }).gaps;
  if (gap === undefined) throw new Error('no gap');
  return gap;
}

const THREE_PULPS = {
  needs: {
    reading: 'pulp',
    at: 'loading-stop',
    per: 'line',
    atLeast: 3,
    spread: { position: ['nose', 'middle', 'tail'] },
    before: 'doors-closed',
  },
  closes: 'doors-closed',
};
const WITHIN = {
  needs: { reading: 'pulp', at: 'loading-stop', per: 'line', withinInstruction: { tolerance: '2 °F' } },
};

describe('the six outcomes', () => {
  it.each<{
    what: string;
    rule: object;
    evidence: EvidenceItem[];
    now?: number;
    outcome: GapResult['outcome'];
    counted: number;
  }>([
    {
      what: 'enough pulps, spread, in time',
      rule: THREE_PULPS,
      evidence: items(pulp(36, 1), pulp(36, 1, 'middle'), pulp(36, 1, 'tail'), closed),
      outcome: 'met',
      counted: 3,
    },
    {
      what: 'one of three',
      rule: THREE_PULPS,
      evidence: items(pulp(36, 1), closed),
      outcome: 'short',
      counted: 1,
    },
    {
      what: 'three, but all at the nose',
      rule: THREE_PULPS,
      evidence: items(pulp(36, 1), pulp(36, 1), pulp(36, 1), closed),
      outcome: 'short',
      counted: 3,
    },
    { what: 'none', rule: THREE_PULPS, evidence: items(closed), outcome: 'missing', counted: 0 },
    {
      what: 'pulps outside the instruction',
      rule: WITHIN,
      evidence: items(pulp(36, 1), pulp(45, 1)),
      outcome: 'contradicted',
      counted: 2,
    },
    {
      what: 'before it can be had',
      rule: { ...THREE_PULPS, opens: 'doors-opened' },
      evidence: items(),
      outcome: 'not-yet-due',
      counted: 0,
    },
    {
      what: 'as soon as it can be had',
      rule: { ...THREE_PULPS, opens: 'doors-opened' },
      evidence: items(opened),
      now: 1,
      outcome: 'missing',
      counted: 0,
    },
    {
      what: 'nothing iced on board',
      rule: { ...THREE_PULPS, applies: { iced: true } },
      evidence: items(pulp(36, 1)),
      outcome: 'does-not-apply',
      counted: 0,
    },
    {
      what: 'a rule for refusals, and no refusal',
      rule: { ...THREE_PULPS, applies: { happened: 'refused' } },
      evidence: items(arrived),
      outcome: 'does-not-apply',
      counted: 0,
    },
    {
      what: 'a rule for refusals, and a refusal',
      rule: { needs: { document: 'rejection-notice' }, applies: { happened: 'refused' } },
      evidence: items(refused),
      outcome: 'missing',
      counted: 0,
    },
  ])('$outcome: $what', ({ rule, evidence, now, outcome, counted }) => {
    const gap = hold(rule, evidence, omitUndefined({ now }));
    expect(gap.outcome).toBe(outcome);
    expect(gap.counted).toHaveLength(counted);
    if (outcome === 'short' || outcome === 'contradicted') expect(gap.lacking).not.toEqual([]);
  });
});

describe('whether it can still be got', () => {
  it.each([
    {
      what: 'doors still open',
      evidence: items(opened),
      closable: { is: 'until', moment: 'doors-closed', stop: 'load-1' },
    },
    {
      what: 'doors closed',
      evidence: items(closed),
      closable: { is: 'lost', since: 'doors-closed', stop: 'load-1', at: instantAt(2) },
    },
    {
      what: 'the truck left, and nobody wrote down when the doors closed',
      evidence: items(departed),
      closable: { is: 'lost', since: 'doors-closed', stop: 'load-1' },
    },
    {
      what: 'a closing that is still to come',
      evidence: items(closed),
      now: 1,
      closable: { is: 'until', moment: 'doors-closed', stop: 'load-1' },
    },
  ])('$what', ({ evidence, now, closable }) => {
    expect(hold(THREE_PULPS, evidence, omitUndefined({ now })).closable).toEqual(closable);
  });

  it('a rule that never closes can be closed now', () => {
    expect(hold({ needs: { document: 'bill-of-lading' } }, items(departed)).closable).toEqual({ is: 'now' });
  });

  it('a refusal that did not happen is not taken to be past because the load was taken off', () => {
    const unloaded = { kind: 'event', event: 'unloaded', place: DROP, time: at(33) } as const;
    const rule = { stage: 'arrival', needs: { document: 'message' }, closes: 'refused' };
    expect(hold(rule, items(unloaded)).closable).toEqual({ is: 'until', moment: 'refused', stop: 'drop-1' });
  });
});

const DRAINS = {
  needs: { photo: 'drains', at: 'loading-stop', after: 'doors-opened', before: 'doors-closed' },
};
const around = [opened, closed];

describe('evidence that nearly counts', () => {
  it.each<{
    why: RejectedEvidence['why'];
    evidence: EvidenceItem[];
    rule?: object;
    change?: Partial<DeliveryInput>;
  }>([
    { why: 'wrong-stop', evidence: items({ ...photo('drains'), place: DROP }) },
    { why: 'no-stop', evidence: items({ ...photo('drains'), place: {} }) },
    {
      why: 'no-time',
      evidence: items({ ...photo('drains'), time: { is: 'none', why: 'none' } }, ...around),
    },
    { why: 'too-early', evidence: items({ ...photo('drains'), time: at(-1) }, ...around) },
    { why: 'too-late', evidence: items({ ...photo('drains'), time: at(2.5) }, ...around) },
    {
      why: 'withheld',
      evidence: items({ ...photo('drains') }).map((item) => ({ ...item, withheld: 'private' })),
    },
    {
      why: 'picture-unreadable',
      evidence: items({ ...photo('drains'), flags: [{ is: 'picture-unreadable', detail: 'cut off' }] }),
    },
    { why: 'wrong-line', rule: WITHIN, evidence: items({ ...pulp(36, 1), line: 'kale' }) },
    {
      why: 'wrong-source',
      rule: { needs: { ...WITHIN.needs, from: 'receiver' } },
      evidence: items(pulp(36, 1)),
    },
    {
      why: 'bad-value',
      rule: { needs: { reading: 'round', fuelAtLeast: 0.5 } },
      evidence: items({ kind: 'round', alarms: [], time: at(9) }),
    },
  ])('$why', ({ why, evidence, rule = DRAINS }) => {
    const gap = hold(rule, evidence);
    expect(gap.outcome).toBe('missing');
    expect(gap.nearly).toEqual([{ evidence: 'e1', why }]);
  });

  it('no-line, when there is more than one', () => {
    const two = ['romaine', 'kale'].map((id) => ({ id, goods: id, from: 'load-1', to: 'drop-1' }));
    const { line: _, ...lineless } = pulp(36, 1);
    const rule = { needs: { reading: 'pulp', per: 'line' } };
    expect(hold(rule, items(lineless), { change: { lines: two } }).nearly).toEqual([
      { evidence: 'e1', why: 'no-line' },
    ]);
    expect(hold(rule, items(lineless)).outcome).toBe('met');
  });

  it('a proposed subject counts, and the words say that nobody has confirmed it', () => {
    const gap = hold(DRAINS, items(photo('drains', 'proposed'), ...around));
    expect(gap.outcome).toBe('met');
    expect(gap.lacking).toEqual([]);
    expect(gap.notes).toEqual([{ is: 'subject-proposed', facts: { count: 1 } }]);
  });

  it('says when another event stands in for a moment that is not recorded', () => {
    const gap = hold(DRAINS, items(photo('drains'), opened, departed));
    expect(gap.outcome).toBe('met');
    expect(gap.notes).toEqual([{ is: 'stands-in', facts: { moment: 'doors-closed', standIn: 'departed' } }]);
  });

  it('a time within its own uncertainty of the window is inside', () => {
    const unsure = { ...at(2.1), uncertaintySeconds: 600 };
    expect(hold(DRAINS, items({ ...photo('drains'), time: unsure }, ...around)).outcome).toBe('met');
  });
});

const unitCheck = (hour: number, fuel = 0.8) => ({
  kind: 'round' as const,
  alarms: [],
  fuel,
  time: at(hour),
});
const EVERY = {
  stage: 'in-transit',
  needs: { reading: 'round', everyHours: 4, after: 'departed', before: 'arrived' },
};
const seal = (number: string, state: 'applied' | 'intact' | 'broken', place = DROP) =>
  ({ kind: 'seal', number, state, place, time: at(30) }) as const;
const SEAL = { needs: { reading: 'seal', state: 'intact', sameAsApplied: true, at: 'unloading-stop' } };
const display = (value: number, run?: 'continuous' | 'start-stop') =>
  ({
    kind: 'set-point',
    temperature: F(value),
    shownBy: 'display',
    time: at(1),
    ...omitUndefined({ run: run ? run : undefined }),
  }) as const;
const AGREE = { needs: { agreement: 'set-point', between: ['bill', 'display'], tolerance: '1 °F' } };
const CALL = { kind: 'contact', with: 'shipper', how: 'call', about: 'warm', time: at(2) } as const;
const EITHER = {
  needs: { any: [WITHIN.needs, { all: [{ reading: 'pulp' }, { reading: 'contact', with: 'shipper' }] }] },
};

describe('each kind of need', () => {
  it.each<{
    what: string;
    rule: object;
    evidence: EvidenceItem[];
    outcome: GapResult['outcome'];
    change?: Partial<DeliveryInput>;
  }>([
    {
      what: 'looks every 4 h',
      rule: EVERY,
      evidence: items(departed, ...[7, 11, 15, 19, 23, 27].map((h) => unitCheck(h)), arrived),
      outcome: 'met',
    },
    {
      what: 'looks too far apart',
      rule: EVERY,
      evidence: items(departed, unitCheck(7), arrived),
      outcome: 'short',
    },
    {
      what: 'a way shorter than the time between looks',
      rule: EVERY,
      evidence: items(departed, { ...arrived, time: at(6) }),
      outcome: 'met',
    },
    {
      what: 'low fuel',
      rule: { needs: { reading: 'round', fuelAtLeast: 0.5 } },
      evidence: items(unitCheck(5, 0.3)),
      outcome: 'contradicted',
    },
    {
      what: 'the same seal, written otherwise',
      rule: SEAL,
      evidence: items(seal('ab-123', 'applied', LOADING), seal('AB 123', 'intact')),
      outcome: 'met',
    },
    {
      what: 'another seal',
      rule: SEAL,
      evidence: items(seal('AB123', 'applied', LOADING), seal('AB124', 'intact')),
      outcome: 'contradicted',
    },
    {
      what: 'a broken seal',
      rule: SEAL,
      evidence: items(seal('AB123', 'applied', LOADING), seal('AB123', 'broken')),
      outcome: 'contradicted',
    },
    {
      what: 'no applied seal to compare',
      rule: SEAL,
      evidence: items(seal('AB123', 'intact')),
      outcome: 'short',
    },
    { what: 'set points agree', rule: AGREE, evidence: items(display(36)), outcome: 'met' },
    { what: 'set points differ', rule: AGREE, evidence: items(display(46)), outcome: 'contradicted' },
    { what: 'only the bill knows', rule: AGREE, evidence: items(), outcome: 'short' },
    {
      what: 'run mode other than asked',
      rule: { needs: { reading: 'set-point', run: 'continuous' } },
      evidence: items(display(36, 'start-stop')),
      outcome: 'contradicted',
    },
    {
      what: 'a temperature for each line',
      rule: { needs: { instruction: 'on-the-bill' } },
      evidence: items(),
      outcome: 'met',
    },
    {
      what: 'a silent bill',
      rule: { needs: { instruction: 'on-the-bill' } },
      evidence: items(),
      outcome: 'missing',
      change: { lines: [{ id: 'kale', goods: 'kale', from: 'load-1', to: 'drop-1' }] },
    },
    {
      what: 'an event',
      rule: { needs: { event: 'arrived', at: 'unloading-stop' } },
      evidence: items(arrived),
      outcome: 'met',
    },
    {
      what: 'an event at the other end',
      rule: { needs: { event: 'arrived', at: 'loading-stop' } },
      evidence: items(arrived),
      outcome: 'missing',
    },
    {
      what: 'a paper that was photographed',
      rule: { needs: { document: 'bill-of-lading' } },
      evidence: items({ kind: 'photo', subject: { is: 'bill-of-lading', sure: 'confirmed' } }),
      outcome: 'met',
    },
    { what: 'warm, and somebody was told', rule: EITHER, evidence: items(pulp(45, 1), CALL), outcome: 'met' },
    {
      what: 'warm, and nobody was told',
      rule: EITHER,
      evidence: items(pulp(45, 1)),
      outcome: 'contradicted',
    },
    {
      what: 'what should not be there',
      rule: { needs: { none: [{ photo: 'damage' }] } },
      evidence: items({ kind: 'photo', subject: { is: 'damage', sure: 'confirmed' } }),
      outcome: 'contradicted',
    },
    {
      what: 'what should not be there is not',
      rule: { needs: { none: [{ photo: 'damage' }] } },
      evidence: items(),
      outcome: 'met',
    },
  ])('$outcome: $what', ({ rule, evidence, outcome, change }) => {
    const gap = hold(rule, evidence, omitUndefined({ change }));
    expect(gap.outcome).toBe(outcome);
    expect(gap.against.length > 0).toBe(outcome === 'contradicted');
  });

  const LOG = {
    stage: 'arrival',
    needs: { log: 'unit-log', coverage: 0.95, from: 'doors-closed', to: 'doors-opened' },
  };
  const hours = Array.from({ length: 30 }, (_, i) => 2 + i);
  it.each([
    { what: 'covers the way', logs: [log(hours, { 'return-air': hours.map(() => 36) })], outcome: 'met' },
    {
      what: 'covers half of it',
      logs: [log(hours.slice(0, 15), { 'return-air': hours.slice(0, 15).map(() => 36) })],
      outcome: 'short',
    },
    {
      what: 'two logs together cover it',
      logs: [
        log(hours.slice(0, 16), { 'return-air': hours.slice(0, 16).map(() => 36) }),
        log(hours.slice(14), { 'supply-air': hours.slice(14).map(() => 35) }),
      ],
      outcome: 'met',
    },
    {
      what: 'is of another week',
      logs: [log([200, 201, 202], { 'return-air': [36, 36, 36] })],
      outcome: 'missing',
    },
    { what: 'is not there', logs: [], outcome: 'missing' },
  ])('log $what: $outcome', ({ logs, outcome }) => {
    expect(hold(LOG, items(closed, arrived, openedThere), { logs }).outcome).toBe(outcome);
  });
});

describe('substitutes', () => {
  it('are named with their evidence when the rule is open, and not when it is met', () => {
    const rule = {
      ...THREE_PULPS,
      substitutes: [{ document: 'shipper-pulp-sheet' }, { statement: 'person' }],
    };
    const sheet = { kind: 'document', subject: { is: 'shipper-pulp-sheet', sure: 'confirmed' } } as const;
    expect(hold(rule, items(sheet, closed)).substitutes).toEqual([
      { what: { document: 'shipper-pulp-sheet' }, evidence: ['e1'] },
    ]);
    expect(
      hold(rule, items(sheet, pulp(36, 1), pulp(36, 1, 'middle'), pulp(36, 1, 'tail'))).substitutes,
    ).toEqual([]);
  });
});
