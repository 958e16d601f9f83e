import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../../src/core/assess/assess.js';
import { ruleSet, stage } from '../../../../src/core/model/rule-set.js';
import PRODUCE from '../../../../templates/rule-sets/produce.yaml?raw';
import { HASH, instantAt, items, state } from '../made.js';

const shipped = ruleSet.parse(parse(PRODUCE));

describe('the shipped rule set for produce', () => {
  it('has rules for every stage', () => {
    expect(shipped.rules.length).toBeGreaterThanOrEqual(25);
    expect(new Set(shipped.rules.map((rule) => rule.stage))).toEqual(new Set(stage.options));
  });

  it.each(shipped.rules)('$id is said in short sentences, and lawyers can see its basis', (rule) => {
    for (const sentence of `${rule.why} ${rule.how}`.split(/(?<=[.?!])\s/))
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(26);
    expect(rule.basis.length).toBeGreaterThan(5);
  });

  it.each([
    'trailer-clean',
    'air-chute-whole',
    'unit-pre-trip',
    'bracing',
    'load-at-opening',
    'unit-download',
  ])('%s warns where people can be hurt', (id) => {
    expect(shipped.rules.find((rule) => rule.id === id)?.how).toMatch(
      /follow the site's rules|site's own rules|follows the site's rules/,
    );
  });

  it('calls decisive what a dispute turns on, at each end and in the log, and no picture of good practice', () => {
    const ofWeight = (weight: string) =>
      shipped.rules.filter((rule) => rule.weight === weight).map(({ id }) => id);
    expect(ofWeight('decisive')).toEqual(
      expect.arrayContaining(['pulp-before-loading', 'unit-download', 'pulp-at-delivery', 'claim-letter']),
    );
    expect(ofWeight('good-practice')).toEqual(expect.arrayContaining(['floor-drains-open', 'unit-fuel']));
    for (const name of stage.options)
      expect(
        shipped.rules.filter((one) => one.stage === name && one.weight === 'decisive').length,
      ).toBeLessThan(8);
  });

  it('on a fresh delivery asks for what is before loading, and for nothing of later stages', () => {
    const { gaps } = assess({
      state: state(items()),
      logs: [],
      ruleSet: { ruleSet: shipped, sha256: HASH },
      at: instantAt(0),
    });
    const open = gaps.filter((gap) => gap.outcome === 'missing' || gap.outcome === 'short');
    expect(new Set(open.map((gap) => gap.stage))).toEqual(new Set(['before-loading']));
    for (const gap of open) expect(gap.closable.is).not.toBe('lost');
  });
});
