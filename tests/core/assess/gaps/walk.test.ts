import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../../../src/core/assess/assess.js';
import { assessGaps } from '../../../../src/core/assess/assess-gaps.js';
import { moreUrgent } from '../../../../src/core/assess/gaps/closable.js';
import { isOpen } from '../../../../src/core/assess/gaps/gaps.js';
import type { GapResult } from '../../../../src/core/model/results.js';
import { ruleSet } from '../../../../src/core/model/rule-set.js';
import PRODUCE from '../../../../templates/rule-sets/produce.yaml?raw';
import { HASH, instantAt, state } from '../made.js';
import { CHANGE, evidenceWith, TIMES, unitLog } from './complete.js';

const produce = ruleSet.parse(parse(PRODUCE));

/** What the driver of this walk never got: what the check should have asked for in time. */
const NEVER = [
  'drains',
  'pulp-broccoli*',
  'pulp-display-broccoli',
  'air-path',
  'seal-photo',
  'seal-photo-there',
  'load-at-opening',
  'certificate',
  'answered',
];

const inputAt = (hour: number, drop: readonly string[] = NEVER) => ({
  state: state(evidenceWith(drop), CHANGE),
  // The unit is read out when the load is off: before that there is no log.
  logs: hour < TIMES.refused ? [] : [unitLog()],
  ruleSet: { ruleSet: produce, sha256: HASH },
  at: instantAt(hour),
});
const gapsAt = (hour: number, drop?: readonly string[]): GapResult[] =>
  assessGaps(inputAt(hour, drop)).filter(isOpen);
const closing = ({ closable }: GapResult) =>
  closable.is === 'until'
    ? `until ${closable.moment}`
    : closable.is === 'lost'
      ? `lost ${closable.since}`
      : 'now';
const told = (gaps: readonly GapResult[]) =>
  Object.fromEntries(
    [...gaps].sort((a, b) => moreUrgent(a.closable, b.closable)).map((gap) => [gap.rule, closing(gap)]),
  );

it.each([-0.5, 0.5, TIMES.refused, TIMES.refused + 24])(
  'gaps alone are those of the assessment, at %i h',
  (hour) => {
    expect(assessGaps(inputAt(hour))).toEqual(assess(inputAt(hour)).gaps);
  },
);

describe('one delivery, asked at eight moments', () => {
  it('at the dock with an empty trailer: everything of the trailer and the unit, nothing of later', () => {
    expect(told(gapsAt(-0.5))).toEqual({
      'trailer-clean': 'until loading-began',
      'box-pre-cooled': 'until loading-began',
      'floor-drains-open': 'until loading-ended',
      'air-chute-whole': 'until loading-ended',
      'unit-fuel': 'until departed',
      // 36 °F for broccoli is outside the published range: that can be seen from the bill alone.
      'temperature-in-published-range': 'until departed',
      'thermometer-checked': 'now',
    });
  });

  it('before the first pallet: the drains are still open, and now the goods on the dock', () => {
    expect(told(gapsAt(1.1))).toEqual({
      'floor-drains-open': 'until loading-ended',
      'count-and-condition': 'until doors-closed',
      'ice-at-loading': 'until doors-closed',
      'pallet-tags': 'until doors-closed',
      'pulp-before-loading': 'until doors-closed',
      'pulp-display-photo': 'until doors-closed',
      'pulp-within-instruction': 'until departed',
      'run-mode': 'until departed',
      'temperature-in-published-range': 'until departed',
    });
  });

  it('while the doors are open: one line has its pulps, the other has not', () => {
    const gaps = gapsAt(2.9);
    expect(told(gaps)).toEqual({
      'air-path-free': 'until doors-closed',
      'pulp-before-loading': 'until doors-closed',
      'pulp-display-photo': 'until doors-closed',
      'run-mode': 'until departed',
      'pulp-within-instruction': 'until departed',
      'floor-drains-open': 'lost loading-ended',
    });
    const pulps = gaps.find((gap) => gap.rule === 'pulp-before-loading');
    expect(pulps?.outcome).toBe('short');
    expect(pulps?.lacking).toEqual([{ is: 'none', facts: { thing: 'pulp', need: 3 }, line: 'broccoli' }]);
  });

  it('with the doors closed and the truck still there: the seal can still be photographed', () => {
    expect(told(gapsAt(3.3))).toEqual({
      'seal-photo': 'until departed',
      'pulp-within-instruction': 'until departed',
      'floor-drains-open': 'lost loading-ended',
      'air-path-free': 'lost doors-closed',
      'pulp-before-loading': 'lost doors-closed',
      'pulp-display-photo': 'lost doors-closed',
    });
  });

  it('on the way, five hours after the last look: the look can be made until arrival', () => {
    const late = gapsAt(12, [...NEVER, 'unit-checks']);
    expect(told(late)).toMatchObject({
      'unit-watched': 'until arrived',
      'fuel-on-the-way': 'until delivery-over',
      'first-look': 'lost departed',
      'seal-photo': 'lost departed',
    });
    expect(told(gapsAt(12))).not.toHaveProperty('unit-watched');
  });

  it('before the seal is cut: it can still be photographed, for a few minutes', () => {
    expect(told(gapsAt(40.5))).toMatchObject({
      'seal-photo-at-arrival': 'until doors-opened',
      'load-at-opening': 'until unloading-began',
      'set-point-kept': 'now',
      'unit-download': 'now',
    });
  });

  it('after the refusal: what the dossier will lack, and what is still worth getting', () => {
    const gaps = gapsAt(42.1);
    expect(told(gaps)).toMatchObject({
      'photos-of-what-is-wrong': 'until refused',
      'inspection-asked': 'until refused',
      'shipper-told': 'now',
      'insurer-told': 'now',
      'goods-disposed': 'now',
      'load-at-opening': 'lost unloading-began',
      'seal-photo-at-arrival': 'lost doors-opened',
      'pulp-before-loading': 'lost doors-closed',
    });
    // A day after the refusal, as the rule says, with the time.
    expect(gaps.find((gap) => gap.rule === 'inspection-asked')?.closable).toEqual({
      is: 'until',
      moment: 'refused',
      seconds: 86_400,
      stop: 'drop-1',
      at: instantAt(TIMES.refused + 24),
    });
    expect(gaps.find((gap) => gap.rule === 'pulp-before-loading')?.substitutes).toEqual([
      { what: { computed: 'pull-down' }, evidence: ['e900'] },
    ]);
  });

  it('with a claim on the table: only what can no longer be got, and the answer', () => {
    expect(told(gapsAt(TIMES.end))).toEqual({
      'claim-answered': 'now',
      'inspection-certificate': 'now',
      'pulp-within-instruction': 'lost departed',
      'floor-drains-open': 'lost loading-ended',
      'air-path-free': 'lost doors-closed',
      'pulp-before-loading': 'lost doors-closed',
      'pulp-display-photo': 'lost doors-closed',
      'seal-photo': 'lost departed',
      'load-at-opening': 'lost unloading-began',
      'seal-photo-at-arrival': 'lost doors-opened',
    });
  });

  it('says what is most urgent first', () => {
    const order = gapsAt(2.9)
      .filter((gap) => gap.stage === 'loading')
      .sort((a, b) => moreUrgent(a.closable, b.closable))
      .map(closing);
    expect(order).toEqual([...order].sort((a, b) => rank(a) - rank(b)));
    expect(order[0]).toBe('until doors-closed');
  });
});

const rank = (text: string) => ['until doors-closed', 'until departed', 'now'].indexOf(text);
